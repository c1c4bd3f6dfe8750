//! What the sheet says is true of what it stands beside, in words of the trade.

use layshaft::job::{Field, InsideField, Job, JobField, SetupField, demo};
use layshaft::questions::build;
use layshaft::sheet::{Row, Sheet, Words};

fn typed(fields: &[(Field, &str)]) -> Sheet {
    let mut job: Job = demo::job();
    for (field, text) in fields {
        job.type_text(*field, (*text).into());
    }
    build(&job, Words::Us)
}

fn row<'a>(sheet: &'a Sheet, section: &str, id: &str) -> &'a Row {
    let section = sheet.sections.iter().find(|each| each.id == section).unwrap();
    section.rows.iter().find(|row| row.key.ends_with(id)).unwrap()
}

fn of_first(field: SetupField) -> Field {
    Field::Setup(demo::job().setups[0].id, field)
}

#[test]
fn words_of_the_trade_are_left_what_they_are() {
    assert_eq!(Words::Uk.say("the sum of the profile shifts; profile shift of 0.5"), "the sum of the profile shifts; profile shift of 0.5");
    assert_eq!(Words::Us.say("no synchroniser: double-clutch"), "no synchronizer: double-clutch");
    assert_eq!(Words::Uk.say("no synchroniser: double-clutch"), "no synchroniser: double-declutch");
    let sheet = typed(&[(of_first(SetupField::Unsynchronised), "1")]);
    assert!(format!("{:?}", row(&sheet, "inside", "sync-2-1").cells[0]).contains("no synchronizer: double-clutch"));
}

/// At 250 mph the demo's engine turns beyond 6,500 rpm in every gear of the four-speed boxes.
#[test]
fn gears_over_the_limit_leave_no_empty_cell() {
    let sheet = typed(&[(Field::Job(JobField::Cruise), "240 mph")]);
    let cell = &row(&sheet, "inside", "cruise-downshifts").cells[0];
    assert!(format!("{cell:?}").contains("every gear turns the engine over its limit at that speed"), "{cell:?}");
}

#[test]
fn a_typed_inertia_has_no_working() {
    let working =
        |fields: &[(Field, &str)]| format!("{:?}", row(&typed(fields), "inside", "inertia").cells[0]).contains("solid steel discs");
    let of = |field| of_first(SetupField::Inside(field));
    assert!(working(&[(of(InsideField::Pitch), "10 DP"), (of(InsideField::Face), "20 mm")]));
    assert!(!working(&[(of(InsideField::Inertia), "0.01 kg·m²")]));
}

#[test]
fn a_speed_in_a_label_has_its_unit() {
    let sheet = typed(&[]);
    assert_eq!(row(&sheet, "road", "gear-1").label, "1st at 6,500 rpm");
    assert_eq!(row(&sheet, "inside", "fastest").label, "Fastest at 6,500 rpm");
    let inside = sheet.sections.iter().find(|section| section.id == "inside").unwrap();
    let downshifts: Vec<&str> = inside.rows.iter().map(|row| row.label.as_str()).filter(|label| label.starts_with("Downshift")).collect();
    assert_eq!(downshifts.first(), Some(&"Downshift at 6,500 rpm"), "{downshifts:?}");
    let idle = format!("{:?}", row(&sheet, "inside", "idle").cells[0]);
    assert!(
        idle.contains("\"turns ") && idle.split("\"turns ").skip(1).all(|rest| rest.split('"').next().unwrap().ends_with(" rpm")),
        "{idle}"
    );
}
