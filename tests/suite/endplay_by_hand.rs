//! End play and shims beside figures worked by hand, the ways people write a stack, and what cannot be used.

use layshaft::catalogue::{Catalogue, Column, Entry, PartKind};
use layshaft::fits::{read, wanted};
use layshaft::job::{BenchField, Choice, EndPlayField, Field, Job, JobChoice, JobField, demo};
use layshaft::problem::Explain;
use layshaft::questions::{OnShelf, Source, analyse_job, bench, build, sheet_of};
use layshaft::sheet::{Reader, Section, Sheet, Words};
use layshaft::units::common::in_millimetres;
use layshaft::units::{System, Typed};

use crate::any_job::near;

/// A cluster between two thrust washers in a case (invented).
const CLUSTER: &str = "case depth 112.40 ±0.02\n- cluster 105.91 ±0.02\n- thrust washer 3.05 ±0.01 x2";

fn job(units: System, texts: &[(EndPlayField, &str)]) -> Job {
    let mut job = demo::empty(units);
    for (field, text) in texts {
        job.type_text(Field::Job(JobField::Bench(BenchField::EndPlay(*field))), (*text).into());
    }
    job
}

fn typed(wanted: &str, kit: &str) -> Job {
    job(System::Metric, &[(EndPlayField::Stack, CLUSTER), (EndPlayField::Wanted, wanted), (EndPlayField::Kit, kit)])
}

fn section(sheet: &Sheet) -> &Section {
    sheet.sections.iter().find(|section| section.id == "endplay").unwrap()
}

fn said(job: &Job) -> String {
    section(&build(job, Words::Us)).answer.plain()
}

fn rows(job: &Job) -> Vec<String> {
    section(&build(job, Words::Us)).rows.iter().map(|row| row.label.clone()).collect()
}

/// 112.40 − 105.91 − 2 × 3.05 = 0.39 mm; at worst 0.02 + 0.02 + 2 × 0.01 = 0.06, likely √(0.02² + 0.02² + 2 × 0.01²) = 0.0316. From 20 to
/// 90 °C the case grows by 112.40 × 22·10⁻⁶ × 70 = 0.1731, the parts by 112.01 × 11.7·10⁻⁶ × 70 = 0.0917: 0.0814 more.
#[test]
fn the_play_of_a_cluster() {
    let job = typed("", "");
    near(&job, "endplay.gap_mm", 0.39, 1e-9);
    near(&job, "endplay.worst_off_mm", 0.06, 1e-9);
    near(&job, "endplay.likely_off_mm", 0.001_f64.sqrt(), 1e-9);
    near(&job, "endplay.gap_hot_mm", 0.4714, 5e-5);
    assert_eq!(said(&job), "Without shims the play is 0.390 mm at the bench, 0.471 mm at 90 °C. Type the end play wanted to choose shims.");
    let mut magnesium = job.clone();
    magnesium.choose(Choice::Job(JobChoice::EndPlayCase), "magnesium");
    // 112.40 × 25.2·10⁻⁶ × 70 = 0.1983; less 0.0917: 0.1065 more.
    near(&magnesium, "endplay.gap_hot_mm", 0.4965, 5e-5);
}

/// 0.05 to 0.15 leaves 0.24 to 0.34 to fill, best 0.29. Of 0.10 × 3, 0.15 and 0.20 × 2 no single one does; 0.20 + 0.10 = 0.30 and
/// 0.15 + 0.10 = 0.25 do, and 3 × 0.10 = 0.30. With the first 0.09 is left, hot 0.4714 − 0.30 × 1.000819 = 0.1711.
#[test]
fn shims_for_a_range_of_play() {
    let job = typed("0.05 to 0.15", "0.10 x3, 0.15, 0.20 x2");
    near(&job, "endplay.needed_least_mm", 0.24, 1e-9);
    near(&job, "endplay.needed_greatest_mm", 0.34, 1e-9);
    near(&job, "endplay.best_mm", 0.29, 1e-9);
    near(&job, "endplay.choice_1.bench_mm", 0.09, 1e-9);
    near(&job, "endplay.choice_1.hot_mm", 0.1711, 5e-5);
    near(&job, "endplay.choice_2.bench_mm", 0.14, 1e-9);
    let fits: Vec<String> = rows(&job).into_iter().filter(|label| label.starts_with("Fit")).collect();
    assert_eq!(fits[..3], ["Fit 0.20 + 0.10 mm", "Fit 0.15 + 0.10 mm", "Fit 3 × 0.10 mm"]);
    assert_eq!(
        said(&job),
        "Fit 0.20 + 0.10 mm: 0.090 mm of end play at the bench, 0.171 mm at 90 °C. At worst it lies outside: measure again once assembled."
    );
}

/// The drawer lies on the shelf: the same shims as entries, a bearing among them, one size counted down to none and one not counted.
#[test]
fn shims_of_the_shelf_are_there_where_none_are_typed() {
    let entry = |name: &str, units: &str, thickness: &str, quantity: &str| {
        let entry = Entry::new(PartKind::SmallPart).with(Column::Name, name).with(Column::Units, units).with(Column::InStock, "yes");
        entry.with(Column::Thickness, thickness).with(Column::Quantity, quantity)
    };
    let entries = [
        entry("front bearing", "mm", "", "4"),
        entry("thin", "mm", "0.10", "3"),
        entry("middling", "in", "0.15 mm", ""),
        entry("thick", "mm", "0,20", "2"),
        entry("gone", "mm", "0.29", "0"),
    ];
    let catalogue = entries.into_iter().fold(Catalogue::empty(), |catalogue, entry| catalogue.add(entry).0);
    let shelf = OnShelf::of(&catalogue);
    let answer = |job: &Job| {
        let answers = analyse_job(job, shelf.shelves());
        let sheet = sheet_of(Source::new(job, &answers, shelf.shelves(), Reader { units: job.units, words: Words::Us }));
        (section(&sheet).answer.plain(), section(&sheet).rests.iter().any(|rest| rest.value == "3 × 0.10 mm, 1 × 0.15 mm, 2 × 0,20 mm"))
    };
    let typed_in = typed("0.05 to 0.15", "0.10 x3, 0.15, 0.20 x2");
    let (said_of_shelf, is_named) = answer(&typed("0.05 to 0.15", ""));
    // As each is written on its bag: one of them with a decimal comma.
    assert_eq!((said_of_shelf.replace("0,20", "0.20"), is_named), (said(&typed_in), true));
    // What is typed counts alone.
    assert!(!answer(&typed("0.05 to 0.15", "0.29")).1);
}

/// The same box measured in mm by a reader of inches who wants thousandths: 0.39 mm = 0.0154 in; 2 to 6 thou leave 0.0094 to 0.0134 in.
#[test]
fn mm_and_thousandths_on_one_sheet() {
    let stack = CLUSTER.replace(" ±", " mm ±");
    let job = job(
        System::Inch,
        &[(EndPlayField::Stack, &stack), (EndPlayField::Wanted, "2-6 thou"), (EndPlayField::Kit, "0.10 mm x3, 0.15 mm, 12 thou")],
    );
    near(&job, "endplay.gap_in", 0.39 / 25.4, 1e-9);
    near(&job, "endplay.needed_least_in", 0.39 / 25.4 - 0.006, 1e-9);
    // One shim of 12 thou leaves 0.0154 − 0.012 = 0.0034 in; from 68 to 194 °F.
    near(&job, "endplay.choice_1.bench_in", 0.39 / 25.4 - 0.012, 1e-9);
    assert!(said(&job).starts_with("Fit 12 thou: 0.0034 in of end play at the bench, 0.0065 in at 194 °F."), "{}", said(&job));
}

/// The sum of an idler's shims as builders work it (common practice, no published source): 1.008 deep + 0.030 of crushed gasket − 0.686
/// of gear − 0.080 of straight-edge = 0.272, less 0.004 of float = 0.268 in.
#[test]
fn an_idlers_shims() {
    let stack = "depth 1.008\n+ gasket 0.032 crushed to 0.030\n- gear 0.686\n- straight-edge 0.080";
    let job = job(System::Inch, &[(EndPlayField::Stack, stack), (EndPlayField::Wanted, "0.003 to 0.005")]);
    near(&job, "endplay.gap_in", 0.272, 1e-9);
    near(&job, "endplay.best_in", 0.268, 1e-9);
    assert_eq!(
        said(&job),
        "For 0.003 to 0.005 in it takes 0.267 to 0.269 in of shims. Type what is left in the drawer, or put the shims on Shelf, to choose."
    );
}

/// Shim = installed shim + measured float + preload (a maker's manual): 1.20 + 0.10 + 0.05 to 0.10 = 1.35 to 1.40 mm.
#[test]
fn a_taper_pair_wants_preload() {
    let stack = "float by dial 0.10\n+ installed shim 1.20";
    for wanted in ["preload 0.05 to 0.10", "-0.10 to -0.05", "−0.05 to −0.10 mm", "0.05-0.10 preload"] {
        let job =
            job(System::Metric, &[(EndPlayField::Stack, stack), (EndPlayField::Wanted, wanted), (EndPlayField::Kit, "1.30, 1.36, 1.40")]);
        near(&job, "endplay.needed_least_mm", 1.35, 1e-9);
        near(&job, "endplay.needed_greatest_mm", 1.40, 1e-9);
        near(&job, "endplay.choice_1.bench_mm", -0.06, 1e-9);
    }
}

/// Under the cover a shim gives play: 0.02 with 0.10 makes 0.12.
#[test]
fn shims_under_the_cover_give_play() {
    let mut job = job(
        System::Metric,
        &[(EndPlayField::Stack, "float 0.02"), (EndPlayField::Wanted, "0.10 to 0.15"), (EndPlayField::Kit, "0.10 0.20")],
    );
    assert!(said(&job).starts_with("No shim helps: without any the play is 0.020 mm, and 0.1 to 0.15 mm is wanted."), "{}", said(&job));
    job.choose(Choice::Job(JobChoice::ShimsGo), "cover");
    near(&job, "endplay.choice_1.bench_mm", 0.12, 1e-9);
}

/// Nothing of the kit lands: what it takes is said, and what comes nearest. 0.24 to 0.34 mm: 0.20 is 0.04 short and leaves 0.19.
#[test]
fn the_nearest_is_named() {
    assert_eq!(
        said(&typed("0.05 to 0.15", "0.20")),
        "Nothing in the drawer lands in 0.05 to 0.15 mm: it takes 0.24 to 0.34 mm of shims. 0.20 mm comes nearest and leaves 0.190 mm."
    );
}

#[track_caller]
fn reads(text: &str, system: System, gap_mm: f64) {
    let (stack, errors) = read::stack(&Typed::new(text, system));
    assert!(errors.is_empty(), "{text}: {errors:?}");
    assert!((in_millimetres(stack.gap()) - gap_mm).abs() < 1e-9, "{text}: {}", in_millimetres(stack.gap()));
}

/// A stack as people write it.
#[test]
fn stacks_as_they_are_written() {
    for text in [
        "case depth 112.40\ncluster 105.91\nthrust washer 3.05 x2",
        "case depth 112.40; - cluster 105.91; - washer 3.05; - washer 3.05",
        "112.40 case depth\n105.91 cluster\n2 x 3.05 washers",
        "case: 112,40 mm\ncluster: 105,91 mm\n2 off washer 3,05 mm",
        "case depth 112.40±0.02 mm\ncluster −105.91\n3rd gear washer −3.05 ×2",
        "case depth 112.40 +/- 0.02\n-cluster 105.91 +- 0.02\n-washer 3.05mm (x2)",
    ] {
        reads(text, System::Metric, 0.39);
    }
    reads("depth 4 1/4\ngear 4.246\"", System::Inch, 0.004 * 25.4);
    reads("depth .126\n- washer .120 in ±1 thou", System::Inch, 0.006 * 25.4);
    // A tolerance in thousandths leaves the length what it is.
    let (stack, _) = read::stack(&Typed::new("gear 4.246 ±2 thou", System::Inch));
    assert!((in_millimetres(stack.parts[0].length) - 4.246 * 25.4).abs() < 1e-9);
    assert!((in_millimetres(stack.parts[0].tolerance) - 0.0508).abs() < 1e-9);
    assert_eq!(stack.parts[0].name, "gear");
}

/// A range as people write it: all of these are 0.0508 to 0.1524 mm.
#[test]
fn ranges_as_they_are_written() {
    for text in [
        "0.002 to 0.006",
        "0.002-0.006 in",
        ".002\" – .006\"",
        "2 to 6 thou",
        "2-6 thou",
        "0.004 ±0.002",
        "6 thou to 2 thou",
        "0.0508 … 0.1524 mm",
    ] {
        let range = wanted::play(&Typed::new(text, System::Inch)).unwrap();
        assert!(
            (in_millimetres(range.least) - 0.0508).abs() < 1e-9 && (in_millimetres(range.greatest) - 0.1524).abs() < 1e-9,
            "{text}: {range:?}"
        );
    }
}

/// A kit as people write it.
#[test]
fn kits_as_they_are_written() {
    let read = |text: &str, system| {
        let (kit, errors) = read::kit(&Typed::new(text, system));
        assert!(errors.is_empty(), "{text}: {errors:?}");
        kit.iter().map(|shim| format!("{} × {} ({:.4})", shim.left, shim.label, in_millimetres(shim.thickness))).collect::<Vec<_>>()
    };
    let three = ["3 × 0.10 mm (0.1000)", "1 × 0.15 mm (0.1500)", "2 × 0.20 mm (0.2000)"];
    for text in ["0.10 x3, 0.15, 0.20 x2", "0.10 ×3; 0.15; 0.20 x 2", "0.10 mm x3\n0.15 mm\n0.20 mm x2", "0.10, 0.10 x2, 0.15, 0.20 x2"] {
        assert_eq!(read(text, System::Metric), three, "{text}");
    }
    assert_eq!(read("0.10 x3, 0.15, 0.20 x2 mm", System::Inch), three);
    assert_eq!(read("0,10 x3, 0,15, 0,20 x2", System::Metric), ["3 × 0,10 mm (0.1000)", "1 × 0,15 mm (0.1500)", "2 × 0,20 mm (0.2000)"]);
    assert_eq!(read("4, 6 and 8 thou", System::Metric), ["1 × 4 thou (0.1016)", "1 × 6 thou (0.1524)", "1 × 8 thou (0.2032)"]);
}

fn problems(field: EndPlayField, text: &str) -> Vec<String> {
    bench::problems(&job(System::Inch, &[(field, text)])).iter().map(layshaft::problem::Problem::sentence).collect()
}

/// What cannot be used is said beside its field, with what to do, and what was typed stays.
#[test]
fn what_cannot_be_used_is_said() {
    use EndPlayField as F;
    for (field, text, part) in [
        (F::Stack, "case depth", "“case depth” has no length. Type each part on a line of its own"),
        (F::Stack, "case 4.4 in 112.4 mm", "has two lengths. Type the one that was measured"),
        // Millimetres in a place of inches.
        (
            F::Stack,
            "case depth 112.40",
            "“112.40” is outside what the length of a part can be. Type 0.0004 to 39 in (longer than any gearbox: a figure in mm or thou needs its unit behind it)",
        ),
        (F::Stack, "gear 4.246 ±0.2", "“0.2” is outside what the tolerance can be"),
        (F::Stack, "- gear 4.246", "every part is taken off and nothing makes room"),
        (F::Wanted, "0.004", "“0.004” is not a range of end play. Type both ends, as 0.002 to 0.006"),
        // Thousandths without their name are inches.
        (F::Wanted, "2 to 6", "“2” is outside what the end play can be"),
        (F::Kit, "some", "“some” is not the thickness of a shim. Type thicknesses, each with how many are left"),
        (F::Kit, "10, 15", "“10” is outside what the thickness of a shim can be"),
    ] {
        let said = problems(field, text);
        assert!(said.iter().any(|said| said.to_lowercase().contains(&part.to_lowercase())), "{text}: {said:?}");
    }
    let mut hot = demo::empty(System::Inch);
    hot.type_text(Field::Job(JobField::Bench(BenchField::WarmsTo)), "900".into());
    let said: Vec<String> = bench::problems(&hot).iter().map(layshaft::problem::Problem::sentence).collect();
    assert!(said.len() == 1 && said[0].starts_with("“900” is outside what the working temperature can be: 194 °F is taken."), "{said:?}");
    let (_, errors) = read::kit(&Typed::new((1..40).map(|at| format!("0.{at:02}")).collect::<Vec<_>>().join(" "), System::Metric));
    assert_eq!(errors.last().unwrap().what(), "only the first 24 sizes of shims are looked at");
}

/// A stack that does not close names the one figure that may be a slip: the case in inches, 4.425 in = 112.395 mm, leaves 0.385; a
/// washer whose point stands one place off, 30.5 for 3.05, leaves 0.39.
#[test]
fn a_stack_that_does_not_close() {
    let stack = |text: &str| job(System::Metric, &[(EndPlayField::Stack, text), (EndPlayField::Wanted, "0.05 to 0.15")]);
    assert_eq!(
        said(&stack("case depth 4.425\n- cluster 105.91\n- washer 3.05 x2")),
        "The stack does not close: the parts are 107.585 mm longer than what they go into; if “case depth” is in inches, 0.385 mm would be left: is it?"
    );
    assert!(
        said(&stack("case depth 112.40\n- cluster 105.91\n- washer 3.05\n- washer 30.5"))
            .ends_with("if the point of “washer” stands one place off, 0.390 mm would be left: does it?")
    );
    assert!(said(&stack("case depth 112.40\n- cluster 60")).ends_with("whether a part is missing or typed twice."));
}

/// Tenfold and wrong-unit slips of the other two are doubted, not refused.
#[test]
fn slips_are_doubted() {
    let doubts = |job: &Job| {
        let sheet = build(job, Words::Us);
        section(&sheet)
            .rows
            .iter()
            .filter(|row| row.label == "Read right?")
            .map(|row| format!("{:?}", row.cells[0]))
            .collect::<Vec<_>>()
            .join(" ")
    };
    assert!(doubts(&typed("0.5 to 1.5", "")).contains("no usual gearbox is set to: is the point in its place"));
    assert_eq!(doubts(&typed("0.05 to 0.15", "0.10 x3, 0.15")), "");
    // In inches the kit is 2.54 mm and more; in mm it lands.
    let stack = CLUSTER.replace(" ±", " mm ±");
    let texts = [(EndPlayField::Stack, stack.as_str()), (EndPlayField::Wanted, "2-6 thou"), (EndPlayField::Kit, "0.10 x3, 0.15, 0.20 x2")];
    assert!(doubts(&job(System::Inch, &texts)).contains("read in mm it would: type mm behind the sizes if they are"));
}
