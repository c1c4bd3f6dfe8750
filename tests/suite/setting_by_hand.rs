//! Bearings and torque beside figures worked by hand and published rows, the slips of the trade, and what cannot be used.

use layshaft::fits::clock::Clock;
use layshaft::fits::fastener::Fastener;
use layshaft::fits::tapered::{Mounting, Pair};
use layshaft::fits::{Material, drills};
use layshaft::job::{BenchField, Choice, Field, Job, JobChoice, JobField, SettingField as F, demo};
use layshaft::questions::{Shelves, Source, analyse_job, bench};
use layshaft::sheet::{Reader, Words};
use layshaft::units::{System, unit};

use crate::any_job::{near, sheet};

fn with(units: System, fields: &[(F, &str)]) -> Job {
    let mut job = demo::empty(units);
    for (field, text) in fields {
        job.type_text(Field::Job(JobField::Bench(BenchField::Setting(*field))), (*text).into());
    }
    job
}

fn said(job: &Job) -> String {
    sheet(job).sections.into_iter().find(|section| section.id == "setting").unwrap().answer.plain()
}

/// Every text of the question's rows.
fn told(job: &Job) -> String {
    format!("{:?}", sheet(job).sections.into_iter().find(|section| section.id == "setting").unwrap().rows)
}

/// A pair of 180 mm in aluminium (22.0) on steel (11.7), cups of 62 and 72 mm, K 1.6, 80 K warmer. By hand: along the shaft 0.148320 mm, by the cups 0.226494 mm; face to face they add to
/// 0.374814, back to back they oppose, 0.078174.
#[test]
fn what_heat_does_to_a_pair_adds_or_opposes() {
    let mm = |value| unit::MM.of(value);
    let pair = |mounting| Pair { span: mm(180.0), cups: [mm(62.0), mm(72.0)], k: 1.6, mounting, case: Material::Aluminium };
    for (mounting, opens) in [(Mounting::FaceToFace, 0.374_814), (Mounting::BackToBack, 0.078_174)] {
        let pair = pair(mounting);
        let is = [pair.along(80.0), pair.across(80.0), pair.opens_when_hot(80.0)].map(|length| unit::MM.number(length));
        for (is, by_hand) in is.into_iter().zip([0.148_320, 0.226_494, opens]) {
            assert!((is - by_hand).abs() < 1e-6, "{mounting:?}: {is}, not {by_hand}");
        }
    }
}

/// Makers' manuals: installed shim + measured float + preload. 1.50 + (0.10 + 0.11 + 0.12) ÷ 3 + 0.05 to 0.10 = 1.66 to 1.71 mm.
#[test]
fn the_shim_is_what_was_in_and_the_float_and_the_preload() {
    let fields = [(F::ShimIn, "1.50"), (F::Float, "0.10 0.11 0.12"), (F::Wanted, "preload 0.05 to 0.10")];
    let mut job = with(System::Metric, &fields);
    near(&job, "setting.shim_least_mm", 1.66, 1e-9);
    near(&job, "setting.shim_greatest_mm", 1.71, 1e-9);
    near(&job, "setting.shim_mm", 1.685, 1e-9);
    assert_eq!(said(&job), "Fit a shim of 1.685 mm.");
    // 70 K warmer, 180 mm apart, without the cups: 10.3e-6 × 70 × 180 = 0.129780 mm more, so that 0.075 mm of preload is gone.
    job.type_text(Field::Job(JobField::Bench(BenchField::Setting(F::Span))), "180".into());
    near(&job, "setting.hot_mm", 0.129_78 - 0.075, 1e-9);
    assert!(told(&job).contains("the preload is gone when hot") && told(&job).contains("without the cups"));
    job.choose(Choice::Job(JobChoice::PairMounting), "back-to-back");
    near(&job, "setting.hot_mm", -0.129_78 - 0.075, 1e-9);
}

/// 4 lbf on 3 in is 12 lbf·in = 1.355820 N·m. Makers' manuals: 20 to 32 lbf·in with new bearings, 8 to 15 with used ones.
#[test]
fn turning_torque_is_pull_by_radius() {
    let mut job = with(System::Inch, &[(F::Pull, "4"), (F::Radius, "3")]);
    near(&job, "setting.turning_lbfin", 12.0, 1e-9);
    assert_eq!(said(&job), "It takes 12.0 lbf·in to turn; 20 to 32 lbf·in is wanted.");
    job.choose(Choice::Job(JobChoice::BearingState), "used");
    assert_eq!(said(&job), "It takes 12.0 lbf·in to turn, as wanted.");
    job.choose(Choice::Job(JobChoice::BearingState), "used-sealed");
    assert_eq!(said(&job), "It takes 12.0 lbf·in to turn, the seal included.");
    // 10 to 15 lbf·ft is wanted where lbf·in is meant: twelve times off.
    job.type_text(Field::Job(JobField::Bench(BenchField::Setting(F::Torque))), "10 to 15 lb ft".into());
    assert!(told(&job).contains("twelve times off: is lbf·in meant, not lbf·ft?"));
    near(&Job { units: System::Metric, ..job }, "setting.turning_nm", 1.355_820, 5e-6);
}

/// Plus: subtract from the measured shim (a maker's manual). Backlash: 1/16 in at a radius of 7 in, on a pitch radius of 0.448 in, is
/// 0.0625 × 0.448 ÷ 7 = 0.0040 in.
#[test]
fn ring_and_pinion() {
    let mut job = with(
        System::Inch,
        &[(F::Depth, "0.060"), (F::Mark, "+2 thou"), (F::Lash, "1/16"), (F::DialRadius, "7"), (F::PitchRadius, "0.448")],
    );
    near(&job, "setting.depth_in", 0.058, 1e-9);
    near(&job, "setting.lash_in", 0.004, 1e-9);
    assert!(told(&job).contains("less than is usual for cars"));
    job.choose(Choice::Job(JobChoice::MarkSense), "plus-on");
    near(&job, "setting.depth_in", 0.062, 1e-9);
    job.type_text(Field::Job(JobField::Bench(BenchField::Setting(F::Mark))), "-0.05 mm".into());
    near(&job, "setting.depth_in", 0.060 - 0.05 / 25.4, 1e-9);
}

/// A run-out is twice the offset. 0 at twelve, 0.002 at three, 0.010 at six, 0.008 at nine: the bore stands 0.003 in to the right and 0.005 above, √(9 + 25) = 5.83
/// thousandths, atan(3/5) = 31°: one o'clock.
#[test]
fn a_bore_read_round_the_clock() {
    let clock = Clock([0.0, 2.0, 10.0, 8.0].map(|thou| unit::THOU.of(thou)));
    let [right, up] = clock.offset().map(|length| unit::THOU.number(length));
    assert!((right - 3.0).abs() < 1e-9 && (up - 5.0).abs() < 1e-9);
    assert!((unit::THOU.number(clock.off()) - 34.0_f64.sqrt()).abs() < 1e-9);
    assert_eq!(clock.hour(), Some(1));
    let straight = Clock([0.0, 3.0, 6.0, 3.0].map(|thou| unit::THOU.of(thou)));
    assert!((unit::THOU.number(straight.run_out()) - 2.0 * unit::THOU.number(straight.off())).abs() < 1e-9);
    assert_eq!((straight.hour(), Clock([unit::THOU.of(1.0); 4]).hour()), (Some(12), None));
    let job = with(System::Inch, &[(F::Bore, "0 0.002 0.010 0.008"), (F::Face, "0 1 9 2 thou")]);
    assert_eq!(said(&job), "Move the clutch housing 0.0058 in, towards 7 o’clock.");
    assert!(told(&job).contains("the face is warped, or the crank moved"));
    near(&job, "setting.bore_run_out_in", 0.010, 1e-12);
}

/// M16 8.8 at 75 % of proof, K 0.2: A 156.67 mm², proof 91 kN, 218.08 N·m (a general bolt page). M10 8.8 proof 33.634 kN, M8 21.233
/// (ISO 898-1: 580 N/mm² up to M16; tables that round the area up print 33.7).
#[test]
fn published_bolts() {
    let bolt = |line: &str| Fastener::read(line).unwrap();
    // The page takes 580 N/mm² at M16, which is not over M16.
    assert!((unit::N_M.number(bolt("M16 8.8").torque()) - 218.08).abs() < 0.005);
    for (line, area, proof) in [
        ("M16 8.8", 156.668, 90.868),
        ("M10 8.8", 57.990, 33.634),
        ("M8 8.8", 36.609, 21.233),
        ("M10 10.9", 57.990, 48.131),
        ("M12 8.8", 84.266, 48.874),
    ] {
        let bolt = bolt(line);
        assert!((unit::SQ_MM.number(bolt.thread.stress_area()) - area).abs() < 1e-3, "{line}");
        assert!((unit::KN.number(bolt.proof_load()) - proof).abs() < 1e-3, "{line}");
    }
    // M20 is over M16: 600 N/mm² × 244.794 = 146.876 kN.
    assert!((unit::KN.number(bolt("M20 8.8").proof_load()) - 146.876).abs() < 1e-3);
    // 5/16-18, 0.0524 in² (ASME B1.1), grade 5: 85 kpsi × 0.0524 = 4,454 lbf.
    assert!((unit::LBF.number(bolt("cover 5/16 UNC gr5").proof_load()) - 4_454.0).abs() < 5.0);
    let fine = bolt("rear cover M8x1 10.9 in alloy 12 mm oiled");
    assert_eq!((fine.name.as_str(), fine.thread.name.as_str(), fine.friction()), ("rear cover", "M8 × 1", 0.15));
    assert_eq!(fine.engaged.map(|length| unit::MM.number(length)), Some(12.0));
    assert!((unit::MM.number(fine.engagement()) - 16.0).abs() < 1e-9);
}

/// ASME B94.11M; 5/16 is 7.9375 mm, letter F 0.257, No. 7 0.201.
#[test]
fn published_drills() {
    let names = |length, is_metric| drills::next_in(length, is_metric).map(|drill| drill.map(|drill| drill.name));
    let some = |below: &str, above: &str| [Some(below.to_owned()), Some(above.to_owned())];
    assert_eq!(names(unit::MM.of(7.9375), false), some("5/16 in", "5/16 in"));
    assert_eq!(names(unit::INCH.of(0.2), false), some("No. 8", "No. 7"));
    assert_eq!(names(unit::INCH.of(0.255), false), some("1/4 in", "letter F"));
    assert_eq!(names(unit::INCH.of(1.255), false), some("1 1/4 in", "1 17/64 in"));
    assert_eq!(names(unit::MM.of(8.2706), true), some("8.2 mm", "8.3 mm"));
    assert_eq!(drills::next(unit::MM.of(900.0))[1], None);
}

#[test]
fn what_cannot_be_read_is_said_and_kept() {
    let rows = [
        (F::Bore, "0 0.002 0.006", "3 of the four clock readings are there. Read the dial at twelve"),
        (F::Float, "loose", "“loose” is not a diameter."),
        (F::Mark, "+2", "“+2” is outside what the mark on the pinion can be. Type"),
        (F::Radius, "3 furlongs", "“furlongs” is no unit for the radius."),
        (F::Torque, "tight", "“tight” is not a range."),
        (F::Fasteners, "cover bolts", "“cover bolts” names no thread known here. Type it as M8"),
        (F::Fasteners, "M8", "“M8” names no grade known here."),
        (F::Span, "180", "“180” is outside what the distance between the bearings can be."),
    ];
    for (field, text, says) in rows {
        let job = with(System::Inch, &[(field, text)]);
        let problems = bench::problems(&job);
        assert!(problems.len() == 1 && problems[0].sentence().starts_with(says), "{text}: {problems:?}");
        assert_eq!(job.text(Field::Job(JobField::Bench(BenchField::Setting(field)))), Some(text));
    }
}

/// Makers' manuals of axles, from memory: backlash moves the pattern along the tooth, the pinion's depth up and down it; at opposite
/// ends of drive and coast side it is the depth.
#[test]
fn a_contact_pattern_asks_for_backlash_or_depth() {
    let mut job = demo::empty(System::Metric);
    for (drive, coast, asks) in [
        ("heel", "heel", "less backlash"),
        ("toe", "good", "more backlash"),
        ("high", "high", "a thicker depth shim"),
        ("low", "good", "a thinner depth shim"),
        ("toe", "heel", "a thinner depth shim"),
        ("heel", "toe", "a thicker depth shim"),
        ("high", "low", "the sides disagree"),
        ("good", "good", "check the backlash once more"),
    ] {
        job.choose(Choice::Job(JobChoice::PatternDrive), drive);
        job.choose(Choice::Job(JobChoice::PatternCoast), coast);
        assert!(said(&job).contains(asks) && told(&job).contains(asks), "{drive} and {coast}: {}", said(&job));
    }
}

/// Whatever is made of a job with every answer.
fn source_of<T>(job: &Job, make: impl FnOnce(Source<'_>) -> T) -> T {
    let answers = analyse_job(job, Shelves::default());
    make(Source::new(job, &answers, Shelves::default(), Reader { units: job.units, words: Words::Us }))
}

/// Pressed in the picture, the third flank from the left is the toe's; the picture says which one was chosen.
#[test]
fn a_pattern_is_chosen_from_its_picture() {
    let question = layshaft::questions::of_id("setting").unwrap();
    let mut job = demo::empty(System::Metric);
    let drawn = &question.pictures[0];
    let (choice, word) = source_of(&job, |source| drawn.press.unwrap()(source, None, 2.5)).unwrap();
    assert_eq!((choice, word.as_str()), (JobChoice::PatternDrive, "toe"));
    job.choose(Choice::Job(choice), &word);
    let words = source_of(&job, |source| (drawn.draw)(source, None).map(|picture| picture.describe())).unwrap();
    assert!(words[2].starts_with("toe, as it is here"), "{words:?}");
}

#[test]
fn the_order_of_tightening_stands_with_the_fastener() {
    let fastener = Fastener::read("rear cover M8 8.8 in aluminium 18 mm order 1-4-2-3").unwrap();
    assert_eq!((fastener.name.as_str(), fastener.order.as_str()), ("rear cover", "1-4-2-3"));
    assert!(fastener.engaged.is_some_and(|length| (unit::MM.number(length) - 18.0).abs() < 1e-9));
    let job = with(System::Metric, &[(F::Fasteners, "rear cover M8 8.8 in aluminium 18 mm order 1-4-2-3")]);
    assert!(told(&job).contains("tighten in the order 1-4-2-3"));
}
