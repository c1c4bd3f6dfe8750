//! What is typed of a setup, of engine, car and run, is either used or complained about, and what stands in for it is said.

use layshaft::job::{Choice, Field, InsideField, Job, JobChoice, JobField, PullField, SetupField, demo};
use layshaft::problem::{Problem, Severity};
use layshaft::questions::{Conditions, Setup, read_all};
use layshaft::units::common::in_rpm;

use crate::nth;

fn with(fields: &[(Field, &str)]) -> Job {
    let mut job = demo::job();
    for (field, text) in fields {
        job.type_text(*field, (*text).into());
    }
    job
}

fn pull(field: PullField) -> Field {
    Field::Job(JobField::Pull(field))
}

fn of_first(field: SetupField) -> Field {
    Field::Setup(demo::job().setups[0].id, field)
}

fn inside(field: InsideField) -> Field {
    of_first(SetupField::Inside(field))
}

fn first(job: &Job) -> Setup {
    read_all(job).remove(0)
}

/// What is said of the job's first setup and of what all share, at one path.
fn said(job: &Job, path: &str) -> Vec<(Severity, String)> {
    let all = Conditions::of(job).problems.into_iter().chain(first(job).problems);
    all.filter(|problem| problem.field.path() == path).map(|problem| (problem.severity, Problem::sentence(&problem))).collect()
}

#[track_caller]
fn check(fields: &[(Field, &str)], path: &str, severity: Severity, sentence: &str) {
    let said = said(&with(fields), path);
    assert!(said.iter().any(|(weight, says)| *weight == severity && says.contains(sentence)), "{path}: {said:?}");
}

#[test]
fn what_stands_in_for_an_unreadable_text_is_said() {
    use PullField as F;
    let rows = [
        (F::DragArea, "drag area: 9.69 ft² is taken."),
        (F::Grip, "grip: 0.8 is taken."),
        (F::Rolling, "rolling resistance: 0.01 is taken."),
        (F::Wheelbase, "wheelbase: 102 in is taken."),
        (F::GravityHeight, "centre of gravity: 22.4 in is taken."),
        (F::DrivenShare, "share: 50 % is taken."),
        (F::MeshEfficiency, "share: 98 % is taken."),
        (F::AxleEfficiency, "share: 96 % is taken."),
        (F::BandShare, "share: 90 % is taken."),
        (F::Launch, "engine rpm: 2,500 rpm is taken."),
        (F::ShiftTime, "shift time: 0.5 s is taken."),
        (F::Trailer, "trailer mass: no trailer is taken."),
        (F::BoxInertia, "rotating parts are taken by the usual rule."),
        (F::Limit, "engine rpm: the run ends with the torque curve, and downshifts are judged by the shift rpm."),
        (F::AirHumidity, "relative humidity: nothing is corrected."),
    ];
    for (field, sentence) in rows {
        check(&[(pull(field), "abc")], &field.path(), Severity::Caution, sentence);
        assert!(said(&with(&[(pull(field), "abc")]), &field.path()).iter().all(|(severity, _)| *severity == Severity::Caution));
    }
    let shared = [(JobField::SyncTime, "synchronising time: 0.25 s is taken."), (JobField::LiningLimits, "the usual limits of brass")];
    for (field, sentence) in shared {
        check(&[(Field::Job(field), "abc")], &field.path(), Severity::Caution, sentence);
    }
    let of_setup = [
        (InsideField::Centre, "centre distance: the one that the counts give is taken."),
        (InsideField::Face, "face width: overlap and the estimate of inertia are left out."),
        (InsideField::Inertia, "inertia: an estimate is taken where pitch and face width are given."),
    ];
    for (field, sentence) in of_setup {
        check(&[(inside(field), "abc")], &field.path(), Severity::Caution, sentence);
    }
}

#[test]
fn an_unreadable_angle_or_peak_takes_no_value() {
    let pitch = (inside(InsideField::Pitch), "10 DP");
    assert!(first(&with(&[pitch])).inside.cut.is_some());
    for field in [InsideField::Helix, InsideField::Pressure] {
        let job = with(&[pitch, (inside(field), "abc")]);
        assert!(first(&job).inside.cut.is_none(), "{field:?}");
        assert!(said(&job, &field.path()).iter().any(|(severity, _)| *severity == Severity::Stop));
        let sheet = layshaft::questions::build(&job, layshaft::sheet::Words::Us);
        let rows = sheet.sections.iter().flat_map(|section| &section.rows);
        let fit = rows.into_iter().find(|row| row.label == "Fit of the pairs").unwrap();
        assert!(format!("{fit:?}").contains("needs pitch, helix and pressure angle that can be read"), "{fit:?}");
    }
    for field in [PullField::PeakTorque, PullField::PeakTorqueAt, PullField::PeakPower, PullField::PeakPowerAt] {
        assert!(Conditions::of(&with(&[(pull(field), "abc")])).pull.curve.is_none(), "{field:?}");
    }
    // Rows that were measured are corrected; a brochure's peaks are at its standard already.
    let rows = "rpm,lbf·ft\n1000,100\n3000,160\n6000,140";
    let mut job =
        with(&[(pull(PullField::Rows), rows), (pull(PullField::AirPressure), "1,000 mbar"), (pull(PullField::AirTemperature), "25 °C")]);
    job.choose(Choice::Job(JobChoice::PowerStandard), "sae-j1349");
    assert!(Conditions::of(&job).pull.correction.is_some());
    let mut peaks = job.clone();
    peaks.type_text(pull(PullField::Rows), String::new());
    assert!(Conditions::of(&peaks).pull.correction.is_none());
    job.type_text(pull(PullField::AirHumidity), "damp".into());
    assert!(Conditions::of(&job).pull.correction.is_none());
}

#[test]
fn what_is_half_typed_is_said() {
    use PullField as F;
    let caution = |fields: &[(Field, &str)], path: &str, sentence: &str| check(fields, path, Severity::Caution, sentence);
    let roll = |from: &'static str, to: &'static str, gear: &'static str| {
        [(pull(F::RollFrom), from), (pull(F::RollTo), to), (pull(F::RollGear), gear)]
    };
    caution(&roll("30", "", ""), "roll-from", "The rolling start is not timed: the speed it ends at is not given");
    caution(&roll("", "60", "3"), "roll-to", "the speed it begins at is not given");
    caution(&roll("", "", "3"), "roll-gear", "the speeds it begins and ends at are not given");
    for field in [F::AirPressure, F::AirTemperature, F::AirHumidity] {
        let text = if field == F::AirPressure { "1,000 mbar" } else { "20" };
        caution(&[(pull(field), text)], &field.path(), "no standard to correct to. Choose the standard");
    }
    caution(&[(pull(F::PeakPower), "")], "peak-power-at", "The rpm of peak power is not used: peak power is not given");
    caution(&[(pull(F::PeakTorque), "")], "peak-torque-at", "The rpm of peak torque is not used: peak torque is not given");
    let rows = (pull(F::Rows), "2000 100\n4000 120");
    caution(&[rows], "peak-torque", "The peak torque is not used: the curve is drawn from the pasted rows");
    caution(&[rows], "peak-power-at", "The rpm of peak power is not used");
    check(&[rows, (pull(F::PeakPower), "strong")], "peak-power", Severity::Stop, "cannot be read as the power");
    caution(
        &[(inside(InsideField::ConeDiameter), "60 mm")],
        "cone-diameter",
        "The lining is not judged: the width of the lining is not given",
    );
    caution(&[(inside(InsideField::ConeWidth), "9 mm")], "cone-width", "the mean diameter of the cones is not given");
    caution(&[(inside(InsideField::Helix), "20")], "helix", "The helix angle is not used: module or pitch is not given");
    caution(&[(inside(InsideField::Pressure), "20")], "pressure-angle", "The pressure angle is not used");
    caution(&[(of_first(SetupField::Reverse), "")], "idler", "The idler is not used: the outer gears of reverse are not given");
}

#[test]
fn gears_without_a_synchroniser_are_gears_of_the_box() {
    let field = of_first(SetupField::Unsynchronised);
    let read = |text: &str| (first(&with(&[(field, text)])).inside.unsynchronised, said(&with(&[(field, text)]), "unsynchronised").len());
    assert_eq!(read("1 2"), (vec![nth(1), nth(2)], 0));
    assert_eq!(read("1st, 4"), (vec![nth(1), nth(4)], 0));
    assert_eq!(read("first"), (vec![], 1));
    assert_eq!(read("1-3"), (vec![], 1));
    assert_eq!(read("1 12"), (vec![nth(1)], 1));
    assert_eq!(read("5"), (vec![], 1), "a box of four");
    check(&[(field, "first")], "unsynchronised", Severity::Caution, "“first” is no gear of this box, which has 4: it is left out");
}

#[test]
fn each_speed_is_called_by_its_name() {
    use PullField as F;
    for field in [F::Limit, F::PeakTorqueAt, F::PeakPowerAt, F::Launch] {
        let said = said(&with(&[(pull(field), "abc")]), &field.path());
        assert!(said[0].1.starts_with("“abc” cannot be read as the engine rpm"), "{said:?}");
    }
    for field in [F::RollFrom, F::RollTo, F::Speeds] {
        let said = said(&with(&[(pull(field), "abc")]), &field.path());
        assert!(said[0].1.starts_with("“abc” cannot be read as the road speed"), "{said:?}");
    }
    let at = Field::Job(JobField::InsideAt);
    check(&[(at, "abc")], "inside-at", Severity::Stop, "cannot be read as the engine rpm");
    check(&[(at, "0.1 km/h")], "inside-at", Severity::Stop, "outside what the road speed can be");
}

/// Power peaks at 2,600 rpm, so that the cubic law has peak torque at 1,300 rpm; 100 N·m there are enough for 20 kW at 2,600 rpm (73.5 N·m).
#[test]
fn no_sentence_names_a_speed_that_nobody_typed() {
    use PullField as F;
    let slow =
        [(pull(F::PeakTorque), "100 Nm"), (pull(F::PeakTorqueAt), ""), (pull(F::PeakPower), "20 kW"), (pull(F::PeakPowerAt), "2,600")];
    let conditions = Conditions::of(&with(&slow));
    assert!(conditions.problems.is_empty(), "{:?}", conditions.problems);
    assert!((in_rpm(conditions.pull.curve.unwrap().peak_torque().speed) - 1_300.0).abs() < 1.0);

    let fast = [(pull(F::PeakTorqueAt), "13,000"), (pull(F::PeakPower), ""), (pull(F::PeakPowerAt), ""), (pull(F::Limit), "")];
    let conditions = Conditions::of(&with(&fast));
    assert!(conditions.problems.is_empty() && conditions.pull.curve.is_some(), "{:?}", conditions.problems);
}
