//! Bad input, field by field: the text stays, a plain sentence says what is wrong and what to do, every other setup's figures stand.
//!
//! The sentences stand in `tests/golden/bad-input.txt`, which was looked at before it was kept.

use std::fmt::Write;

use layshaft::gearing::Place;
use layshaft::job::{Field, InputId, InputProblem, Job, JobField, SetupField, Stage, demo};
use layshaft::problem::Severity;
use layshaft::questions::build;
use layshaft::questions::{Conditions, read_all};
use layshaft::sheet::Words;

use crate::any_job::figures;
use crate::golden::{compare, layouts};

/// What a hand on a phone, a slip or a paste brings.
const BAD: &[&str] = &[
    "",
    " ",
    "abc",
    "-",
    "0",
    "-5",
    "1e9",
    "1/0",
    "37/18/22",
    "37/7",
    "37/151",
    "7",
    "999999999999999999999",
    "11,43",
    "11.43",
    "37.18",
    "24/x9",
    "24//29",
    "3.",
    "gear\t37\n18\t22",
    "👍",
    "“”",
    "NaN",
];

fn long() -> String {
    "37/18 ".repeat(700)
}

/// The demo job's second setup, with an extra stage; every field that is read as a figure.
fn job() -> (Job, Vec<Field>) {
    let mut job = demo::job();
    job.setups[1].stages = vec![Stage { name: "overdrive".into(), place: Place::BeforeAxle, drive: "0.79".into(), ..Stage::default() }];
    let id = job.setups[1].id;
    let setup = [
        SetupField::Constant,
        SetupField::Gear(1),
        SetupField::Reverse,
        SetupField::Idler,
        SetupField::FinalDrive,
        SetupField::Stage(0),
        SetupField::Tyre,
    ];
    let fields = [Field::Job(JobField::Shift), Field::Job(JobField::Cruise)].into_iter().chain(setup.map(|field| Field::Setup(id, field)));
    (job, fields.collect())
}

/// What is said beside a field.
fn problems(job: &Job, field: Field) -> Vec<InputProblem> {
    let all = match field {
        Field::Setup(id, _) => read_all(job).into_iter().filter(|setup| setup.id == id).flat_map(|setup| setup.problems).collect(),
        _ => Conditions::of(job).problems,
    };
    all.into_iter().filter(|problem| problem.field == InputId::from(field)).collect()
}

fn others(job: &Job) -> Vec<Vec<layshaft::sheet::Figure>> {
    let sheet = build(job, Words::Us);
    let of = |column| {
        let mut figures: Vec<_> = figures(&sheet, column).cloned().collect();
        figures.sort_by(|one, other| one.key.cmp(&other.key));
        figures
    };
    [0, 2].map(of).into()
}

#[test]
fn every_field_says_what_is_wrong_and_leaves_the_others_standing() {
    let (good, fields) = job();
    let untouched = others(&good);
    let mut said = String::new();
    for field in fields {
        writeln!(said, "== {}", field.path()).unwrap();
        for text in BAD.iter().map(|text| (*text).to_owned()).chain([long()]) {
            let mut typed = good.clone();
            typed.type_text(field, text.clone());
            assert_eq!(typed.text(field), Some(text.as_str()));
            writeln!(said, "{:?}", layshaft::units::number::clip(&text)).unwrap();
            for problem in problems(&typed, field) {
                let mark = if problem.severity == Severity::Stop { "stop" } else { "caution" };
                writeln!(said, "    {mark}: {}", problem.sentence()).unwrap();
            }
            if let Field::Setup(..) = field {
                assert_eq!(others(&typed), untouched, "{} {text:?}", field.path());
            }
        }
    }
    compare("bad-input", &said);
}

#[test]
fn a_bad_shift_speed_leaves_ratios_and_cruise_standing() {
    let mut job = demo::job();
    job.type_text(Field::Job(JobField::Shift), "quickly".into());
    let sheet = build(&job, Words::Us);
    let keys: Vec<_> = figures(&sheet, 0).map(|figure| figure.key.as_str()).collect();
    for key in ["gear_1.ratio", "gear_1.per_1000_mph", "cruise_rpm", "short.first_overall"] {
        assert!(keys.contains(&key), "{key}");
    }
    assert!(!keys.contains(&"gear_1.at_shift_mph"));
}

#[test]
fn mixed_parts_and_swapped_gears_are_a_caution_in_their_row_and_not_a_stop() {
    let sentences = |job: &Job, at: usize| {
        assert_eq!(read_all(job)[at].problems, []);
        let sheet = build(job, Words::Us);
        let gears = sheet.sections.iter().find(|section| section.id == "gears").unwrap();
        gears.cautions().filter(|(column, ..)| *column == Some(at)).map(|(_, _, verdict)| verdict.text.clone()).collect::<Vec<_>>()
    };
    assert!(sentences(&layouts(), 1).contains(
        &"12 teeth apart: pairs of one pitch cannot share one centre distance; count again, look for mixed parts, or say under Inside which \
          pairs are cut otherwise".replace("centre", "center")
    ));
    let mut job = demo::job();
    job.setups[0].gearbox.gears.swap(0, 1);
    assert_eq!(sentences(&job, 0), ["2nd is not faster than 1st: check the counts"]);
}

/// Four stages and a final drive of all the digits that are taken, behind the lowest and the highest gears there can be:
/// 19.99999⁵ = 3,199,992 by 149²/64 = 346.8906 is 1.110047e9; 0.10001⁵ = 1.000500e-5 by 64/22,201 = 2.882753e-3 is 2.884195e-8.
#[test]
fn the_longest_ratios_stay_exact() {
    for (ratio, pair, constant, by_hand) in [("19.99999", "149/8", "8/149", 1.110_047e9), ("0.10001", "8/149", "149/8", 2.884_195e-8)] {
        let mut job = demo::job();
        let setup = &mut job.setups[0];
        setup.stages = vec![Stage { place: Place::BehindAxle, drive: ratio.into(), ..Stage::default() }; 4];
        setup.final_drive = ratio.into();
        setup.gearbox.constant = constant.into();
        setup.gearbox.gears = vec![pair.into()];
        let sheet = build(&job, Words::Us);
        let overall = crate::any_job::figure(&sheet, 0, "gear_1.overall").value;
        assert!((overall / by_hand - 1.0).abs() < 1e-6, "{overall}");
    }
}
