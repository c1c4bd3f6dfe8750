//! Whatever comes from outside is answered: mutilated files of every kind, as the fuzz targets try them at length.

use layshaft::catalogue::import::Differing;
use layshaft::catalogue::{Catalogue, saved};
use layshaft::job::incoming::{self, Incoming};
use layshaft::job::{Field, SetupField, SetupId, demo, file};
use layshaft::motion::curve::rows;
use layshaft::questions;
use layshaft::sheet::{Words, export};
use layshaft::units::System;
use proptest::prelude::*;
use std::sync::LazyLock;

static SHELF: LazyLock<Catalogue> = LazyLock::new(Catalogue::built_in);
static JOB: LazyLock<String> = LazyLock::new(|| file::to_text(&demo::job()));

/// A text with a piece of it put in place of another, and something typed in between.
fn mutilated(text: &str, (from, to, many): (usize, usize, usize), junk: &str) -> String {
    let chars: Vec<char> = text.chars().collect();
    let (from, to) = (from % chars.len(), to % chars.len());
    let piece: String = chars.iter().skip(from).take(many).collect();
    let before: String = chars.iter().take(to).collect();
    let after: String = chars.iter().skip(to + many).collect();
    format!("{before}{junk}{piece}{after}")
}

fn cut() -> impl Strategy<Value = (usize, usize, usize)> {
    (any::<usize>(), any::<usize>(), 0_usize..40)
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 128, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn a_mutilated_job_is_refused_or_has_a_sheet(cut in cut(), junk in "[0-9/,.\"a-z-]{0,4}") {
        if let Ok(Incoming::Job(job)) = incoming::read(&mutilated(&JOB, cut, &junk)) {
            prop_assert_eq!(file::from_text(&file::to_text(&job)).unwrap(), *job.clone());
            let sheet = questions::build(&job, Words::Us);
            prop_assert!(export::csv(&job, &sheet).starts_with("section,row"));
        }
    }

    #[test]
    fn any_text_in_the_fields_of_a_setup_leaves_a_sheet(gear in any::<String>(), axle in ".{0,12}", tyre in "[0-9./xRDr ]{0,14}") {
        let mut job = demo::job();
        job.type_text(Field::Setup(SetupId(1), SetupField::Gear(0)), gear);
        job.type_text(Field::Setup(SetupId(1), SetupField::FinalDrive), axle);
        job.type_text(Field::Setup(SetupId(1), SetupField::Tyre), tyre);
        prop_assert!(!questions::build(&job, Words::Uk).sections.is_empty());
    }

    #[test]
    fn a_mutilated_catalogue_file_is_refused_or_kept_whole(cut in cut(), junk in "[0-9/,;\"a-z\n-]{0,4}") {
        let text = mutilated(include_str!("../../src/catalogue/data/gear_sets.csv"), cut, &junk);
        if let Ok(plan) = SHELF.plan(&text) {
            let kept = saved::to_text(&SHELF.apply(&plan, Differing::Replace));
            prop_assert_eq!(saved::from_text(&kept).map(|again| saved::to_text(&again)).unwrap(), kept);
        }
    }

    #[test]
    fn mutilated_rows_of_an_engine_make_a_curve_or_say_why(cut in cut(), junk in "[0-9,;.\t\n -]{0,4}") {
        let text = mutilated("rpm\tlbf·ft\n1,000\t120\n2500\t165.5\n4000\t170\n6000\t140\n", cut, &junk);
        let pasted = rows::read(&text, System::Inch);
        if let Ok(curve) = pasted.curve {
            let range = curve.range();
            prop_assert!(curve.torque(range.to).is_some_and(|torque| torque.value.is_finite()));
        }
    }
}
