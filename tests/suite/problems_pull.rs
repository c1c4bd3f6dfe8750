//! Nothing typed of engine, car and run is passed over without a word.

use layshaft::job::{Choice, Field, Job, JobChoice, JobField, PullField, demo};
use layshaft::problem::{Problem, Severity};
use layshaft::questions::Conditions;
use layshaft::questions::build;
use layshaft::sheet::Words;

fn typed(fields: &[(PullField, &str)], standard: &str) -> Job {
    let mut job = demo::job();
    job.choose(Choice::Job(JobChoice::PowerStandard), standard);
    for (field, text) in fields {
        job.type_text(Field::Job(JobField::Pull(*field)), (*text).into());
    }
    job
}

/// What is typed, the standard chosen, and the field, weight and words of what is said.
type Row = (&'static [(PullField, &'static str)], &'static str, PullField, Severity, &'static str);

/// A measured curve: only such a one is corrected.
const ROWS: &str = "rpm;Nm\n1000;100\n6000;120";

#[test]
fn what_cannot_be_used_alone_says_so_at_its_field() {
    use PullField as F;
    let rows: [Row; 8] = [
        (
            &[(F::Rows, ""), (F::PeakTorque, "200 Nm"), (F::PeakPower, "100 kW"), (F::PeakPowerAt, "")],
            "",
            F::PeakPower,
            Severity::Caution,
            "rpm of peak power",
        ),
        (&[(F::EngineInertia, "0.2 kg·m²"), (F::WheelInertia, "")], "", F::EngineInertia, Severity::Caution, "for some of them only"),
        (
            &[(F::EngineInertia, ""), (F::WheelInertia, ""), (F::BoxInertia, "0.01 kg·m²")],
            "",
            F::BoxInertia,
            Severity::Caution,
            "for some of them only",
        ),
        (
            &[(F::Rows, ROWS), (F::AirPressure, ""), (F::AirTemperature, "25 °C")],
            "sae-j1349",
            F::AirPressure,
            Severity::Caution,
            "Nothing is corrected",
        ),
        (
            &[(F::Rows, ROWS), (F::AirPressure, "700 mbar"), (F::AirTemperature, "25 °C")],
            "iso-1585",
            F::AirPressure,
            Severity::Caution,
            "outside what its standard allows",
        ),
        (&[(F::RollGear, "9")], "", F::RollGear, Severity::Stop, "no gear from 1 to 8"),
        (&[(F::RollGear, "abc")], "", F::RollGear, Severity::Stop, "no gear from 1 to 8"),
        (&[(F::Speeds, "10; 20; 30; 40; 50; 60; 70")], "", F::Speeds, Severity::Caution, "only the first 6"),
    ];
    for (fields, standard, field, severity, words) in rows {
        let problems = Conditions::of(&typed(fields, standard)).problems;
        let here = problems.iter().filter(|problem| problem.field.path() == field.path());
        let said: Vec<String> = here.filter(|problem| problem.severity == severity).map(Problem::sentence).collect();
        assert!(said.iter().any(|said| said.to_lowercase().contains(&words.to_lowercase())), "{fields:?}: {said:?} of {problems:?}");
    }
}

#[test]
fn a_speed_that_cannot_be_read_leaves_the_others_timed() {
    let conditions = Conditions::of(&typed(&[(PullField::Speeds, "30; fast; 60")], ""));
    assert_eq!(conditions.pull.run.speeds.len(), 2);
    assert_eq!(conditions.problems.iter().filter(|problem| problem.field.path() == PullField::Speeds.path()).count(), 1);
}

#[test]
fn engine_speeds_outside_the_curve_are_a_caution_at_the_standing_start() {
    let typed = typed(&[(PullField::Limit, "9900"), (PullField::Launch, "9000")], "");
    let sheet = build(&typed, Words::Us);
    let section = sheet.sections.iter().find(|section| section.id == "pull").unwrap();
    let said: Vec<String> =
        section.cautions().filter(|(column, _, _)| *column == Some(0)).map(|(_, _, verdict)| verdict.text.clone()).collect();
    for words in ["limit of 9,900 rpm lies above the end", "launch at 9,000 rpm lies outside"] {
        assert!(said.iter().any(|said| said.contains(words)), "{words}: {said:?}");
    }
}

#[test]
fn a_job_that_leaves_nothing_half_typed_is_told_nothing() {
    let problems = Conditions::of(&demo::job()).problems;
    assert!(problems.is_empty(), "{problems:?}");
}
