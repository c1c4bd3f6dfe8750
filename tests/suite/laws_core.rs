//! What holds for every job: exact ratios, speeds and their inverse, columns that do not touch each other, texts that are kept.

use layshaft::gearing::{FinalDrive, Layout, Ratio, Teeth, read};
use layshaft::job::{Job, WishKind, file};
use layshaft::problem::Severity;
use layshaft::questions::build;
use layshaft::questions::read_all;
use layshaft::questions::road::answer::{engine_speed, road_speed};
use layshaft::sheet::{Place, Words, export};
use layshaft::units::common::{in_rpm, metres, rpm};
use layshaft::units::{Limits, System, Typed, limits, number, unit};
use proptest::prelude::*;
use proptest::test_runner::Config;
use serde_json::Value;

use crate::any_gearbox::{gearbox, mesh};
use crate::any_job::{self, figures, text};

fn config(cases: u32) -> Config {
    Config { cases, failure_persistence: None, ..Config::default() }
}

proptest! {
    #![proptest_config(config(256))]

    #[test]
    fn a_ratio_times_its_inverse_is_exactly_one(gearbox in gearbox(), axle in mesh()) {
        let one = Ratio::from_integer(1);
        for ratio in gearbox.ratios().into_iter().chain(gearbox.reverse_ratio()) {
            prop_assert_eq!(ratio * ratio.recip(), one);
            let overall = ratio * axle.ratio();
            prop_assert_eq!(overall * overall.recip(), one);
        }
        let back = read::drive(&format!("{}/{}", axle.driver, axle.driven)).unwrap();
        prop_assert_eq!(axle.ratio() * back.ratio(), one);
    }

    #[test]
    fn road_speed_and_its_inverse_agree(gearbox in gearbox(), axle in mesh(), engine in 100.0..20_000.0, around in 0.5..6.0) {
        for gear in gearbox.numbers() {
            let overall = (gearbox.ratio(gear).unwrap() * axle.ratio()).reduced();
            let overall = if overall < Ratio::from_integer(0) { -overall } else { overall };
            let back = in_rpm(engine_speed(road_speed(rpm(engine), overall, metres(around)), overall, metres(around)));
            prop_assert!((back / engine - 1.0).abs() < 1e-12, "{} came back as {}", engine, back);
        }
    }

    #[test]
    fn a_shown_number_reads_as_it_is_shown(value in -1e9..1e9_f64, decimals in 0_usize..6) {
        let rounded: f64 = format!("{value:.decimals$}").parse().unwrap();
        let shown = number::show(value, decimals);
        let (readings, rest) = number::leading(&shown).unwrap();
        prop_assert!(readings.contains(&Some(rounded)) && rest.is_empty(), "{} is read as {:?}", shown, readings);
        let allowed = Limits { word: "number", unit: &unit::RPM, least: -2e9, greatest: 2e9, why: "a test" };
        let found = Typed::new(shown.clone(), System::Metric).read(&allowed).map(in_rpm).unwrap();
        prop_assert!((found - rounded).abs() <= 1e-12 * rounded.abs(), "{} is read as {}", shown, found);
    }

    /// The standard library's reading is the measure: correctly rounded, by its documentation.
    #[test]
    fn a_decimal_is_read_to_the_nearest_value(digits in "[0-9]{1,24}", at in 0_usize..25) {
        let at = at.min(digits.len());
        let (whole, behind) = digits.split_at(at);
        let text = format!("{whole}.{behind}");
        prop_assert_eq!(number::read_decimal(&text), text.parse().ok(), "{}", text);
        prop_assert_eq!(number::read_decimal(&digits), digits.parse().ok(), "{}", digits);
    }

    #[test]
    fn every_limit_reads_its_own_bounds(at in 0..limits::ALL.len(), share in 0.0..=1.0_f64) {
        let row = limits::ALL[at];
        for system in [System::Inch, System::Metric] {
            let reads = |share: f64| row.check(&format!("{:.12}", row.value_at(share, system)), system);
            prop_assert!(reads(share).is_ok() && reads(1.01).is_err() && reads(-0.01).is_err(), "{:?}", row);
        }
        prop_assert!(row.check("NaN", System::Inch).is_err() && !row.word().is_empty());
    }

    #[test]
    fn typed_gears_are_the_teeth_typed(first in 8_u16..=150, second in 8_u16..=150, sign in "/|:|-| |×|  / ") {
        let typed = format!("{first}{sign}{second}");
        let found = read::counts(&typed).unwrap();
        prop_assert_eq!(found, (Teeth::new(first).unwrap(), Teeth::new(second).unwrap()), "{}", typed);
    }

    /// A second mark is a digit lost or a slip: nothing is guessed.
    #[test]
    fn two_marks_between_counts_are_refused(first in 8_u16..=150, second in 8_u16..=150, marks in "[/:x,.×-][ ]?[/:x,.×-]{1,2}") {
        let typed = format!("{first}{marks}{second}");
        prop_assert!(read::counts(&typed).is_err() && read::drive(&typed).is_err(), "{}", typed);
        prop_assert!(read::gear(&typed, Layout::InputReduced).is_err(), "{}", typed);
    }

    /// No ratio is larger than 20, so what a number pad types with a point is a pair, and it is told.
    #[test]
    fn a_point_between_counts_is_a_slash_where_no_ratio_is_so_large(first in 21_u16..=150, second in 10_u16..=150, comma in any::<bool>()) {
        let (typed, slash) = (format!("{first}{}{second}", if comma { ',' } else { '.' }), format!("{first}/{second}"));
        for layout in Layout::ALL {
            prop_assert_eq!(read::gear(&typed, layout), read::gear(&slash, layout));
            prop_assert_eq!(read::constant(&typed, layout), read::constant(&slash, layout));
        }
        prop_assert_eq!(read::final_drive(&typed), read::final_drive(&slash));
        prop_assert_eq!(read::point_for_slash(&typed).map(|taken| taken.to_string()), Some(format!("taken as {slash}")));
        prop_assert_eq!(read::point_for_slash(&slash), None);
    }

    #[test]
    fn a_typed_ratio_is_the_exact_fraction(thousandths in 100_u32..=20_000, comma in any::<bool>(), one in any::<bool>()) {
        let text = format!("{}.{:03}{}", thousandths / 1_000, thousandths % 1_000, if one { ":1" } else { "" });
        let text = if comma { text.replace('.', ",") } else { text };
        match read::drive(&text) {
            Ok(drive) => prop_assert_eq!(drive, FinalDrive::Plain(Ratio::new(i128::from(thousandths), 1_000)), "{}", text),
            Err(why) => prop_assert!(comma && matches!(why, read::GearTextError::PairOrRatio { .. }), "{}: {:?}", text, why),
        }
    }

    #[test]
    fn a_typed_text_is_kept(text in text(), metric in any::<bool>()) {
        let units = if metric { System::Metric } else { System::Inch };
        let typed = Typed::new(text.clone(), units);
        prop_assert_eq!(&serde_json::from_str::<Typed>(&serde_json::to_string(&typed).unwrap()).unwrap(), &typed);
        prop_assert_eq!(typed.text, text);
    }

    #[test]
    fn readers_of_gears_answer_any_text(text in text()) {
        let _answers = (read::counts(&text), read::count(&text), read::idler(&text), read::drive(&text), read::final_drive(&text));
        prop_assert!(number::clip(&text).chars().count() <= 41);
    }
}

/// The wishes that are about the parts of setup A.
const OF_SETUP_A: [WishKind; 5] = [WishKind::KeepTyre, WishKind::KeepAxle, WishKind::KeepGearSet, WishKind::FewParts, WishKind::SameCase];

/// A job as its rows read, by the name of the setup: letters and differences left out, which follow the columns.
fn by_name(job: &Job) -> Vec<(String, Vec<String>)> {
    let mut job = job.clone();
    // Those wishes are about setup A by its letter.
    job.wishes.rows.retain(|wish| !OF_SETUP_A.contains(&wish.kind));
    // So is what the cable tells of an axle, and whether mixed parts go into a case.
    (job.bench.cable, job.bench.dial) = Default::default();
    job.bench.mix_cluster.clear();
    // A noise is asked of a setup by its letter; which gear is the direct one of a box that has a fault, of setup A.
    (job.bench.noise, job.bench.faults) = Default::default();
    let mut sheet = build(&job, Words::Us);
    let (bench, compared): (Vec<_>, Vec<_>) = sheet.sections.into_iter().partition(|section| section.place == Place::Bench);
    sheet.sections = compared;
    // Whether a box goes in is asked in place of setup A's.
    sheet.sections.retain(|section| section.id != "swap");
    let of = |column: usize| {
        figures(&sheet, column).map(|figure| format!("{} {} {:?} {:?}", figure.key, figure.text(), figure.value.to_bits(), figure.working))
    };
    let mut all: Vec<_> = job.setups.iter().enumerate().map(|(column, setup)| (format!("{:?}", setup.id), of(column).collect())).collect();
    // What lies on the bench belongs to no setup.
    all.push(("bench".into(), vec![format!("{bench:?}")]));
    all.sort();
    all
}

/// Every text in a job's file, by its path.
fn leaves(value: &Value, path: &str, into: &mut Vec<String>) {
    match value {
        Value::String(_) => into.push(path.to_owned()),
        Value::Array(items) => items.iter().enumerate().for_each(|(at, item)| leaves(item, &format!("{path}/{at}"), into)),
        Value::Object(fields) => fields.iter().for_each(|(name, field)| leaves(field, &format!("{path}/{name}"), into)),
        _ => {}
    }
}

proptest! {
    #![proptest_config(config(24))]

    #[test]
    fn order_of_setups_never_changes_a_figure(job in any_job::job(), turn in 0_usize..6, swap in any::<bool>()) {
        let mut turned = job.clone();
        let many = turned.setups.len();
        turned.setups.rotate_left(turn % many);
        if swap { turned.setups.reverse(); }
        prop_assert_eq!(by_name(&job), by_name(&turned));
    }

    #[test]
    fn a_kept_job_is_the_same_job(job in any_job::job()) {
        prop_assert_eq!(file::from_text(&file::to_text(&job)), Ok(job));
    }

    /// Any text of at most 4 kB in any text of the file: the sheet, its exports and its sentences are made, the text stays,
    /// and no figure of another setup moves.
    #[test]
    fn any_text_in_any_field(job in any_job::job(), at in any::<prop::sample::Index>(), text in text()) {
        let mut value = serde_json::to_value(&job).unwrap();
        let mut paths = Vec::new();
        leaves(&value, "", &mut paths);
        let path = at.get(&paths);
        *value.pointer_mut(path).unwrap() = Value::String(text.clone());
        // A layout or a system of units is one of a few words and no text.
        let Ok(typed) = serde_json::from_value::<Job>(value) else { return Ok(()) };
        let (us, uk) = (build(&typed, Words::Us), build(&typed, Words::Uk));
        prop_assert_eq!(us.sections.len(), uk.sections.len());
        let (_, _) = (export::csv(&typed, &us), export::figures(&typed, &us));
        for problem in read_all(&typed).iter().flat_map(|setup| &setup.problems) {
            prop_assert!(problem.sentence().ends_with('.') && problem.sentence().chars().count() < 500, "{}", problem.sentence());
        }
        let kept = serde_json::to_value(&typed).unwrap();
        // A blank text may be left out of the file: it is read back as blank.
        let blank = Value::String(String::new());
        prop_assert_eq!(kept.pointer(path).unwrap_or(&blank), &Value::String(text));
        let edited = path.strip_prefix("/setups/").and_then(|rest| rest.split('/').next()?.parse::<usize>().ok());
        if let Some(edited) = edited {
            let name = format!("{:?}", job.setups[edited].id);
            let others = |all: &[(String, Vec<String>)]| all.iter().filter(|(setup, _)| *setup != name).cloned().collect::<Vec<_>>();
            prop_assert_eq!(others(&by_name(&job)), others(&by_name(&typed)), "{}", path);
        }
    }

    #[test]
    fn what_stops_a_field_stops_only_what_needs_it(mut job in any_job::job(), bad in "[a-z]{4,9}") {
        let first = job.setups[0].clone();
        job.setups = vec![first];
        job.shift.text = bad;
        let sheet = build(&job, Words::Us);
        prop_assert!(figures(&sheet, 0).all(|figure| !figure.key.contains("at_shift") && !figure.key.contains("lands_at")));
        let gears = read_all(&job)[0].gears.iter().flatten().count();
        // A gear with a stage switched in has a ratio of its own beside these.
        let at_rest = |key: &str| key.strip_prefix("gear_").and_then(|key| key.strip_suffix(".ratio")?.parse::<usize>().ok()).is_some();
        let ratios = figures(&sheet, 0).filter(|figure| at_rest(&figure.key)).count();
        let stopped = read_all(&job)[0].problems.iter().any(|problem| problem.field.path() == "constant" && problem.severity == Severity::Stop);
        prop_assert!(stopped || ratios == gears);
    }
}
