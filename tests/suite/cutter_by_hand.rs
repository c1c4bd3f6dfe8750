//! For the cutter beside figures worked by hand and published rows: the split of profile shifts, limits from a backlash, drawings at 1:1.

use dxf::Drawing;
use dxf::entities::EntityType;
use dxf::enums::{AcadVersion, Units};
use layshaft::chart::own_size::OwnSize;
use layshaft::gearing::Teeth;
use layshaft::gearing::geometry::Cut;
use layshaft::job::{BenchField, Choice, CutterField, Field, Job, JobChoice, JobField, MeasureField, demo};
use layshaft::questions::cutter::pictures;
use layshaft::questions::{Shelves, Source, analyse_job, bench, build};
use layshaft::sheet::{Reader, Section, Sheet, Words};
use layshaft::toothform::CutGear;
use layshaft::toothform::lewis::form_factor_of_helical;
use layshaft::toothform::split::{Shared, Split, by_rule};
use layshaft::units::common::millimetres;
use layshaft::units::{System, unit};

use crate::any_job::near;

fn job(units: System, texts: &[(CutterField, &str)]) -> Job {
    let mut job = demo::empty(units);
    for (field, text) in texts {
        job.type_text(Field::Job(JobField::Bench(BenchField::Cutter(*field))), (*text).into());
    }
    job
}

fn section(sheet: &Sheet) -> &Section {
    sheet.sections.iter().find(|section| section.id == "cutter").unwrap()
}

fn said(job: &Job) -> String {
    section(&build(job, Words::Us)).answer.plain()
}

use CutterField as F;

/// A centre distance at which spur gears of module 2.5 ask for that sum of profile shifts.
fn pair(counts: [u16; 2], sum: f64, rule: Split) -> Shared {
    let cut = Cut::new(millimetres(2.5), unit::DEGREE.of(0.0), unit::DEGREE.of(20.0)).unwrap();
    let counts = counts.map(|count| Teeth::new(count).unwrap());
    let [one, two] = counts.map(|teeth| CutGear { teeth, cut, shift: sum / 2.0 });
    let centre = layshaft::toothform::pair::tightest_centre([one, two]).unwrap();
    by_rule(cut, counts, centre, rule, 0.379_951).unwrap()
}

/// Equal sliding at both roots, tips lowered by k = Σx − y (constructed; recomputed apart from the program): x₁, ζ and the contact ratio.
#[test]
fn profile_shifts_split_by_equal_sliding() {
    for (counts, sum, first, sliding, contact) in [
        ([20, 50], 0.0, 0.290_226, -1.738_956, 1.603_219),
        ([20, 50], 0.5, 0.390_127, -1.315_618, 1.502_745),
        ([15, 45], 0.6, 0.470_598, -1.607_502, 1.406_162),
        ([24, 36], 0.4, 0.281_073, -1.409_697, 1.533_750),
    ] {
        let shared = pair(counts, sum, Split::EqualSliding);
        let [one, two] = shared.sliding;
        assert!((shared.gears[0].shift - first).abs() < 2e-6, "{counts:?}: {}", shared.gears[0].shift);
        assert!((one - sliding).abs() < 5e-6 && (two - sliding).abs() < 5e-6, "{one} {two}");
        assert!((shared.geometry.transverse_contact_ratio - contact).abs() < 2e-6);
        assert!((shared.gears[0].shift + shared.gears[1].shift - shared.geometry.shift_sum).abs() < 1e-12);
    }
    // 12 teeth are whole from x = 1 − 6 sin² 20° = 0.298133 on; 20 of them share alike.
    assert!((pair([12, 50], 0.2, Split::NoUndercut).gears[0].shift - 0.298_133).abs() < 1e-6);
    assert!((pair([20, 50], 0.2, Split::NoUndercut).gears[0].shift - 0.1).abs() < 1e-9);
    assert!((pair([20, 50], 0.2, Split::Halves).gears[0].shift - 0.1).abs() < 1e-9);
}

/// Roots as strong as one another bear the same under the same load: σ = F ÷ (b m Y) with equal Y. Like counts share alike; of unlike ones the
/// smaller gets more, 20 of 50 by Lewis's table Y of 0.322 and 0.409 where nothing is shifted.
#[test]
fn profile_shifts_split_by_equal_strength() {
    let factor = |gear: &CutGear| form_factor_of_helical(gear, 0.379_951).unwrap();
    assert!((pair([30, 30], 0.4, Split::EqualStrength).gears[0].shift - 0.2).abs() < 1e-6);
    for (counts, sum) in [([20, 50], 0.0), ([20, 50], 0.5), ([15, 45], 0.6), ([36, 24], 0.4)] {
        let [one, two] = pair(counts, sum, Split::EqualStrength).gears;
        assert!((factor(&one) / factor(&two) - 1.0).abs() < 1e-4, "{counts:?}: {} {}", factor(&one), factor(&two));
        assert!((one.shift > two.shift) == (counts[0] < counts[1]), "{counts:?}: {} {}", one.shift, two.shift);
    }
    let mut gear = job(System::Metric, &[(F::Teeth, "20"), (F::Pitch, "2.5"), (F::MateTeeth, "51"), (F::Centre, "88.75")]);
    gear.choose(Choice::Job(JobChoice::CutterSplit), "equal-strength");
    let rows = format!("{:?}", section(&build(&gear, Words::Us)).rows);
    assert!(rows.contains("split so that both roots are equally strong"), "{rows}");
}

/// DIN 3966-1's spur gear: 17 teeth, module 3.5, x 0.518. With 0.04 + 0.04 mm thinner teeth, square to the flanks 0.04 cos 20° off each span:
/// 27.904645 − 0.037588 = 27.867, the limit it prints. Backlash on the reference circle 0.08 mm; `d_a` = 59.5 + 7 × 1.518 = 70.126.
#[test]
fn the_gear_of_din_3966() {
    let gear = job(
        System::Metric,
        &[(F::Teeth, "17"), (F::Pitch, "3.5"), (F::ProfileShift, "0.518"), (F::BacklashLeast, "0.08"), (F::BacklashMost, "0.2")],
    );
    near(&gear, "cutter.span_upper_mm", 27.867_057, 1e-5);
    near(&gear, "cutter.span_lower_mm", 27.810_675, 1e-5);
    near(&gear, "cutter.tip_diameter_mm", 70.126, 1e-6);
    near(&gear, "cutter.base_diameter_mm", 55.911_711, 1e-5);
    near(&gear, "cutter.tooth_thickness_mm", 6.817_543, 1e-5);
    assert!(
        said(&gear).starts_with(
            "17 teeth, module 3.5, 20°, straight teeth, profile shift +0.518: 70.126 mm over the tips, 27.811 mm to 27.867 mm over 3 teeth."
        ),
        "{}",
        said(&gear)
    );
}

/// ISO/TR 6336-30:2022, annex A, example 1: 17 and 103 teeth, module 8, 15.8°, 500 mm. Everything is shifted into the pinion: x₁ = 0.145222,
/// `α_wt` 21.0661°; its root lies 1.4 modules deep.
#[test]
fn a_pair_of_iso_tr_6336() {
    let mut pair = job(
        System::Metric,
        &[
            (F::Teeth, "17"),
            (F::Pitch, "8 mm"),
            (F::Helix, "15.8"),
            (F::MateTeeth, "103"),
            (F::Centre, "500"),
            (F::ProfileShift, "0.145222"),
        ],
    );
    pair.choose(Choice::Job(JobChoice::CutterRack), "D");
    near(&pair, "cutter.shift_sum", 0.145_222, 1e-6);
    near(&pair, "cutter.mate_profile_shift", 0.0, 1e-6);
    near(&pair, "cutter.working_angle_deg", 21.066_1, 1e-4);
    near(&pair, "cutter.base_diameter_mm", 132.198_569, 1e-5);
}

/// A gear that was measured needs nothing typed again: its sheet follows.
#[test]
fn a_measured_gear_is_ordered() {
    let mut job = demo::empty(System::Inch);
    for (field, text) in [
        (MeasureField::Teeth, "32"),
        (MeasureField::OverTips, "3.120"),
        (MeasureField::Span, "1.1652"),
        (MeasureField::SpanMore, "1.4112"),
        (MeasureField::Print, "25.5"),
    ] {
        job.type_text(Field::Job(JobField::Bench(BenchField::Measure(field))), text.into());
    }
    let text = said(&job);
    assert!(text.starts_with("32 teeth, 12 DP, 20°, 24° helix, profile shift +0.206: 3.12"), "{text}");
    near(&job, "cutter.lead_in", 20.597, 1e-3);
    // d_f = 2.9190 − 2 × (1.25 − 0.206) ÷ 12
    near(&job, "cutter.root_diameter_in", 2.745, 5e-4);
}

/// What is wrong with a gear is said before it is cut.
#[test]
fn faults_are_said() {
    let rows = |job: &Job| format!("{:?}", section(&build(job, Words::Us)).rows);
    let few = job(System::Metric, &[(F::Teeth, "10"), (F::Pitch, "2.5")]);
    // 1 − 5 sin² 20° = 0.415.
    assert!(rows(&few).contains("the 10-tooth gear is undercut: +0.42 of profile shift would do"), "{}", said(&few));
    let pointed = job(System::Metric, &[(F::Teeth, "10"), (F::Pitch, "2.5"), (F::ProfileShift, "0.9")]);
    assert!(rows(&pointed).contains("too narrow to harden"), "{}", said(&pointed));
    let far = job(System::Metric, &[(F::Teeth, "20"), (F::Pitch, "2.5"), (F::MateTeeth, "30"), (F::Centre, "80")]);
    assert!(said(&far).contains("No profile shift brings it to its mate") && said(&far).contains("62.500 mm"), "{}", said(&far));
    let pin = job(System::Metric, &[(F::Teeth, "20"), (F::Pitch, "2.5"), (F::Pin, "10")]);
    assert!(rows(&pin).contains("sits on the tips: lay in one of about 4.32 mm"), "{}", rows(&pin));
    let shift = job(System::Metric, &[(F::ProfileShift, "lots")]);
    let sentences: Vec<String> = bench::problems(&shift).iter().map(layshaft::problem::Problem::sentence).collect();
    assert_eq!(sentences, ["“lots” is not a number from −1 to 1.5. Type the profile shift in modules, as +0.2."]);
}

/// The gear of DIN 3966 as its file has it: half between its span limits, (27.867057 + 27.810675) ÷ 2 = 27.838866 mm.
fn drawn() -> OwnSize {
    drawn_of(&job(
        System::Metric,
        &[(F::Teeth, "17"), (F::Pitch, "3.5"), (F::ProfileShift, "0.518"), (F::BacklashLeast, "0.08"), (F::BacklashMost, "0.2")],
    ))
}

fn drawn_of(gear: &Job) -> OwnSize {
    let answers = analyse_job(gear, Shelves::default());
    let source = Source::new(gear, &answers, Shelves::default(), Reader { units: gear.units, words: Words::Us });
    pictures::tooth(source).unwrap().own_size.unwrap()
}

/// The corners of the one closed outline in a file, as a general reader of DXF finds them; it refuses what is not well-formed.
fn corners_of_dxf(text: &str) -> Vec<(f64, f64)> {
    let drawing = Drawing::load(&mut text.as_bytes()).unwrap();
    assert_eq!((drawing.header.version, drawing.header.default_drawing_units), (AcadVersion::R12, Units::Millimeters));
    let entities: Vec<_> = drawing.entities().collect();
    assert_eq!(entities.len(), 1);
    let polyline =
        entities.iter().find_map(|entity| if let EntityType::Polyline(line) = &entity.specific { Some(line) } else { None }).unwrap();
    assert!(polyline.is_closed() && entities.iter().all(|entity| entity.common.layer == "OUTLINE"));
    let corners: Vec<(f64, f64)> = polyline.vertices().map(|vertex| (vertex.location.x, vertex.location.y)).collect();
    // The header's extents are those of the outline, to the last digit that is written.
    let (least, most) = (&drawing.header.minimum_drawing_extents, &drawing.header.maximum_drawing_extents);
    let end = |of: fn(&(f64, f64)) -> f64, pick: fn(f64, f64) -> f64| corners.iter().map(of).reduce(pick).unwrap();
    let ends = [end(|at| at.0, f64::min), end(|at| at.1, f64::min), end(|at| at.0, f64::max), end(|at| at.1, f64::max)];
    for (written, drawn) in [least.x, least.y, most.x, most.y].into_iter().zip(ends) {
        assert!((written - drawn).abs() <= 1e-6, "{written} {drawn}");
    }
    corners
}

/// Jaws over three teeth of the saved file read the middle of the limits; its tips lie on 70.126 mm.
#[test]
fn the_saved_gear_measures_as_it_should() {
    let file = drawn();
    let corners = corners_of_dxf(&file.dxf());
    assert_eq!(corners.len(), file.outline.len());
    let off =
        corners.iter().zip(&file.outline).map(|(read, drawn)| (read.0 - drawn.0).abs().max((read.1 - drawn.1).abs())).fold(0.0, f64::max);
    assert!(off <= 1e-6, "{off} mm off");
    let reach = corners.iter().map(|(x, y)| x.hypot(*y)).fold(0.0, f64::max);
    assert!((reach - 35.063).abs() < 1e-5, "{reach}");
    // The middle tooth stands straight up, and so the outline is as high as its tip: 35.063 mm above the axis.
    assert!((corners.iter().map(|corner| corner.1).fold(0.0, f64::max) - 35.063).abs() < 1e-6);
    // The jaws press from left and right on those within one and a half pitches of it, and touch
    // on a radius of √(55.912² + 27.839²) ÷ 2 = 31.2 mm, far above the roots.
    let reached = 1.5 * std::f64::consts::TAU / 17.0;
    let three: Vec<f64> = corners.iter().filter(|(x, y)| x.atan2(*y).abs() < reached && x.hypot(*y) > 30.0).map(|(x, _)| *x).collect();
    let span = three.iter().copied().fold(f64::MIN, f64::max) - three.iter().copied().fold(f64::MAX, f64::min);
    assert!((span - 27.838_866).abs() < 1e-3, "{span}");
    assert!(file.title.starts_with("17 teeth, across the shaft, 27.839 mm over 3 teeth"), "{}", file.title);
}

/// The file says its size in mm and carries the lines that check the printer.
#[test]
fn the_paper_is_of_the_gears_own_size() {
    let square = OwnSize { title: "20 & 21".into(), outline: vec![(-40.0, -40.0), (40.0, -40.0), (40.0, 40.0), (-40.0, 40.0)] };
    let svg = square.svg();
    // 80 + 2 × 2 wide; 16 higher for the foot.
    assert!(svg.contains("width=\"84.000mm\" height=\"100.000mm\" viewBox=\"-42.000 -42.000 84.000 100.000\""), "{svg}");
    assert!(svg.contains("h50m") && svg.contains("h50.8m") && svg.contains("20 &amp; 21") && !svg.contains("20 & 21"), "{svg}");
}

/// DIN 3967's 25cd on 20 and 41 teeth of module 2, 40 and 82 mm: 54 and 70 µm thinner at least, 84 and 110 at most. Spans lose cos 20° of
/// it: 15.320879 − 0.050743 and − 0.078934; the backlash at the nominal centre is their sum: 0.124 to 0.194 mm.
#[test]
fn an_allowance_by_its_name() {
    let texts =
        [(F::Teeth, "20"), (F::Pitch, "2 mm"), (F::ProfileShift, "0"), (F::MateTeeth, "41"), (F::Centre, "61"), (F::Allowance, "25cd")];
    let gear = job(System::Metric, &texts);
    near(&gear, "cutter.span_upper_mm", 15.270_136, 1e-6);
    near(&gear, "cutter.span_lower_mm", 15.241_945, 1e-6);
    near(&gear, "cutter.thickness_upper_mm", std::f64::consts::PI - 0.054, 1e-6);
    near(&gear, "cutter.backlash_least_mm", 0.124, 1e-6);
    near(&gear, "cutter.backlash_most_mm", 0.194, 1e-6);
    let wrong = job(System::Metric, &[(F::Allowance, "25x")]);
    let sentences: Vec<String> = bench::problems(&wrong).iter().map(layshaft::problem::Problem::sentence).collect();
    assert_eq!(sentences, ["“25x” is no row of DIN 3967. Type a series from 21 to 30 and letters from a to h, such as 25cd."]);
    let large = job(System::Metric, &[(F::Teeth, "120"), (F::Pitch, "10 mm"), (F::Allowance, "25cd")]);
    let rows = format!("{:?}", section(&build(&large, Words::Us)).rows);
    assert!(rows.contains("go to a pitch diameter of 1,000.000 mm, this one is 1,200.000 mm"), "{rows}");
}

/// 20 teeth of module 2 relieved by 20 µm at the tip from a diameter of 42 mm: ρ = √(42² − 37.5877²) ÷ 2 = 9.370 mm, 28.565° of roll, to
/// 34.866° at the tip. The tip's land, 1.389760 mm, loses 44 × 0.02 ÷ 18.7939 = 0.046824 mm; the saved outline as much.
#[test]
fn a_relieved_tip() {
    let texts = [(F::Teeth, "20"), (F::Pitch, "2 mm"), (F::Relief, "0.02 mm"), (F::ReliefFrom, "42 mm"), (F::Allowance, "21h")];
    let gear = job(System::Metric, &texts);
    near(&gear, "cutter.tip_width_mm", 1.342_936, 1e-6);
    near(&gear, "cutter.relief_roll_deg", 28.564_860, 1e-5);
    near(&gear, "cutter.relief_roll_tip_deg", 34.865_503, 1e-5);
    let land = |job: &Job| {
        let corners = drawn_of(job).outline;
        let tip = corners.iter().filter(|(x, y)| (x.hypot(*y) - 22.0).abs() < 1e-9 && x.atan2(*y).abs() < 0.15);
        let angles: Vec<f64> = tip.map(|(x, y)| x.atan2(*y)).collect();
        44.0 * angles.iter().copied().fold(0.0, f64::max)
    };
    let mut whole = gear.clone();
    whole.type_text(Field::Job(JobField::Bench(BenchField::Cutter(F::Relief))), String::new());
    assert!((land(&whole) - land(&gear) - 0.046_824).abs() < 1e-6, "{} {}", land(&whole), land(&gear));
    // A start off the flank is said, and nothing is relieved.
    let off = job(System::Metric, &[(F::Teeth, "20"), (F::Pitch, "2 mm"), (F::Relief, "0.02 mm"), (F::ReliefFrom, "30 mm")]);
    assert!(said(&off).contains("Tip relief cannot begin there"), "{}", said(&off));
}
