//! Jobs for the tests of the core: a small one made of typed texts, random ones, and a figure found by its key.

use layshaft::gearing::{Layout, Place};
use layshaft::job::inputs::{Blank, Kind, Row};
use layshaft::job::wishes::MOST_WISHES;
use layshaft::job::{
    BenchField, Choice, Field, Gearbox, Job, JobField, PullField, Setup, SetupField, SetupId, ShaftField, Stage, Wish, WishKind, Wishes,
    demo,
};
use layshaft::questions::build;
use layshaft::sheet::{self, Figure, Piece, Sheet, Words};
use layshaft::units::{System, Typed};
use proptest::prelude::*;

/// A job of one setup from typed texts: constant pair, gears, reverse and idler, final drive, tyre; bare numbers metric.
pub(crate) fn typed(layout: Layout, constant: &str, gears: &[&str], reverse: [&str; 2], final_drive: &str, tyre: &str) -> Job {
    let mut job = demo::empty(System::Metric);
    let setup = &mut job.setups[0];
    setup.gearbox = Gearbox {
        layout,
        constant: constant.into(),
        gears: gears.iter().map(|gear| (*gear).into()).collect(),
        reverse: reverse[0].into(),
        idler: reverse[1].into(),
        ..Gearbox::default()
    };
    setup.final_drive = final_drive.into();
    setup.tyre = Typed::new(tyre, System::Metric);
    job
}

/// One setup with an axle of 4.10 whose tyre was measured to roll 2.105 m a turn, and its shaft, judged at 110 mph.
pub(crate) fn long_box(shaft: &[(ShaftField, &str)]) -> Job {
    let mut job = demo::empty(System::Inch);
    let id = job.setups[0].id;
    let texts = [(SetupField::FinalDrive, "4.10"), (SetupField::Tyre, "rolls 2.105 m")];
    let shaft = shaft.iter().map(|(field, text)| (SetupField::Shaft(*field), *text));
    for (field, text) in texts.into_iter().chain(shaft) {
        job.type_text(Field::Setup(id, field), text.into());
    }
    job.type_text(Field::Job(JobField::DrivelineAt), "110 mph".into());
    job
}

/// The sheet of a job in US words.
pub(crate) fn sheet(job: &Job) -> Sheet {
    build(job, Words::Us)
}

/// Every row of a sheet, the short one first.
pub(crate) fn rows(sheet: &Sheet) -> impl Iterator<Item = &sheet::Row> {
    std::iter::once(&sheet.short).chain(sheet.sections.iter().flat_map(|section| &section.rows))
}

/// The figures of one column, in the order of the rows.
pub(crate) fn figures(sheet: &Sheet, column: usize) -> impl Iterator<Item = &Figure> {
    rows(sheet).filter_map(move |row| row.cells.get(column)).flat_map(layshaft::sheet::Cell::pieces).filter_map(|piece| match piece {
        Piece::Figure(figure) => Some(&**figure),
        _ => None,
    })
}

/// A figure of one column by its key.
#[track_caller]
pub(crate) fn figure<'a>(sheet: &'a Sheet, column: usize, key: &str) -> &'a Figure {
    let known: Vec<_> = figures(sheet, column).map(|figure| figure.key.as_str()).collect();
    assert!(known.contains(&key), "no figure {key}; there are {}", known.join(", "));
    figures(sheet, column).find(|figure| figure.key == key).unwrap()
}

/// Texts as they come into a field: tooth counts, ratios, sizes and speeds, good and nearly good, and anything at all.
pub(crate) fn text() -> impl Strategy<Value = String> {
    let near = proptest::collection::vec(
        prop_oneof![
            "[0-9]{1,4}",
            r"[/:,. x×\-'\t\n]",
            proptest::sample::select(vec!["R", "mm", "mph", "rpm", "direct", "circumference", "turns/mile", "e9", "∞", "²", "“", "👍"])
                .prop_map(str::to_owned),
        ],
        0..12,
    );
    prop_oneof![
        2 => (8_u16..160, 8_u16..160).prop_map(|(first, second)| format!("{first}/{second}")),
        1 => (0.05_f64..25.0).prop_map(|ratio| format!("{ratio:.5}")),
        1 => (100_u16..400, 25_u16..95, 10_u16..22).prop_map(|(width, aspect, rim)| format!("{width}/{aspect}R{rim}")),
        3 => near.prop_map(|parts| parts.concat()),
        2 => any::<String>(),
        1 => ("\\PC{1,8}", 1_usize..500).prop_map(|(part, times)| clipped(part.repeat(times))),
    ]
}

/// At most 4 kB, cut between characters.
fn clipped(mut text: String) -> String {
    let end = (0..=4_096.min(text.len())).rev().find(|at| text.is_char_boundary(*at)).unwrap_or(0);
    text.truncate(end);
    text
}

fn system() -> impl Strategy<Value = System> {
    prop_oneof![Just(System::Inch), Just(System::Metric)]
}

fn pair() -> impl Strategy<Value = String> {
    prop_oneof![6 => (8_u16..60, 8_u16..60).prop_map(|(first, second)| format!("{first}/{second}")), 1 => Just("direct".to_owned())]
}

/// A text that an input may well take.
fn sensible(field: Field, row: &Row) -> BoxedStrategy<String> {
    match row.kind {
        // Mostly in the unit of the field, sometimes in one of its own.
        Kind::Quantity(limits) => (0.0..=1.0_f64, system(), any::<bool>())
            .prop_map(move |(share, system, named)| {
                let unit = if named { limits.symbol(system) } else { "" };
                format!("{:.6}{unit}", limits.value_at(share * share, system))
            })
            .boxed(),
        Kind::Quantities(limits) => proptest::collection::vec(0.0..=1.0_f64, 0..4)
            .prop_map(move |shares| {
                let each = |share: &f64| format!("{:.1}", limits.value_at(*share, System::Metric));
                shares.iter().map(each).collect::<Vec<String>>().join(";")
            })
            .boxed(),
        Kind::Number(_, (least, greatest)) if least.is_finite() => (least..=greatest).prop_map(|value| format!("{value:.3}")).boxed(),
        Kind::Whole((least, greatest)) => (least..=greatest).prop_map(|value| format!("{value:.0}")).boxed(),
        Kind::Teeth => pair().boxed(),
        _ => match field {
            Field::Setup(_, SetupField::Tyre) => Just("185/70R14".to_owned()).boxed(),
            Field::Job(JobField::Pull(PullField::Rows)) => Just("rpm,lbf·ft\n1000,100\n3000,160\n6000,140".to_owned()).boxed(),
            _ => Just(row.example.unwrap_or_default().to_owned()).boxed(),
        },
    }
}

/// A text for an input: sensible, none, or anything at all.
fn text_for(job: &Job, field: Field) -> BoxedStrategy<String> {
    let row = field.row_in(job);
    let blank = match (field, row.blank) {
        // The search for the teeth of printed ratios takes its time.
        (Field::Job(JobField::Bench(BenchField::Ladder)), _) => 60,
        (_, Blank::Needed) => 1,
        _ => 4,
    };
    prop_oneof![4 => sensible(field, &row), blank => Just(String::new()), 1 => text()].boxed()
}

/// A word for a choice: one of its options, rarely one that it does not have.
fn word_for(choice: Choice) -> BoxedStrategy<String> {
    let words: Vec<String> = choice.options().into_iter().map(|(word, _)| word.to_owned()).collect();
    prop_oneof![8 => proptest::sample::select(words), 1 => "[a-z-]{0,9}"].boxed()
}

fn setup() -> impl Strategy<Value = Setup> {
    let layout = proptest::sample::select(Layout::ALL.to_vec());
    let place = prop_oneof![Just(Place::BeforeAxle), Just(Place::BehindAxle)];
    (layout, 1..=8_usize, proptest::collection::vec(place, 0..=4)).prop_map(|(layout, gears, places)| Setup {
        gearbox: Gearbox { layout, gears: vec![String::new(); gears], ..Gearbox::default() },
        stages: places.into_iter().map(|place| Stage { place, ..Stage::default() }).collect(),
        ..Setup::default()
    })
}

fn wish() -> impl Strategy<Value = Wish> {
    (proptest::sample::select(WishKind::ALL.to_vec()), proptest::sample::select(Layout::ALL.to_vec()), any::<bool>())
        .prop_map(|(kind, layout, must)| Wish { layout, must, ..Wish::new(kind, System::Inch) })
}

/// A job with nothing typed: one to six setups of any shape, wishes of any kind.
fn blank() -> impl Strategy<Value = Job> {
    (system(), proptest::collection::vec(setup(), 1..=6), proptest::collection::vec(wish(), 0..=MOST_WISHES)).prop_map(
        |(units, mut setups, rows)| {
            for (at, setup) in (1..).zip(&mut setups) {
                setup.id = SetupId(at);
            }
            let wishes = Wishes { rows, ..Wishes::default() };
            Job { setups, wishes, next_setup: 7, ..demo::empty(units) }
        },
    )
}

/// Any job, as a file can hold it: any text in any field, each typed in either units, and any word in any choice.
pub(crate) fn job() -> impl Strategy<Value = Job> {
    blank().prop_flat_map(|job| {
        let fields = Field::all(&job);
        let choices = Choice::all(&job);
        let texts: Vec<_> = fields.iter().map(|field| (text_for(&job, *field), system())).collect();
        let words: Vec<_> = choices.iter().map(|choice| word_for(*choice)).collect();
        (Just(job), Just(fields), texts, Just(choices), words).prop_map(|(mut job, fields, texts, choices, words)| {
            let units = job.units;
            for (field, (text, system)) in fields.into_iter().zip(texts) {
                // A file leaves out what is blank, and with it the units nothing was typed in.
                if !text.trim().is_empty() {
                    job.units = system;
                    job.type_text(field, text);
                }
            }
            job.units = units;
            for (choice, word) in choices.into_iter().zip(words) {
                job.choose(choice, &word);
            }
            job
        })
    })
}

/// A figure of a job's first column is what was worked out by hand, within so much.
#[track_caller]
pub(crate) fn near(job: &Job, key: &str, by_hand: f64, within: f64) {
    near_on(&sheet(job), key, by_hand, within);
}

/// As [`near`], on a sheet that is looked at more than once.
#[track_caller]
pub(crate) fn near_on(sheet: &Sheet, key: &str, by_hand: f64, within: f64) {
    let is = figure(sheet, 0, key).value;
    assert!((is - by_hand).abs() <= within, "{key} is {is}, not {by_hand} ± {within}");
}
