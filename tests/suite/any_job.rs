//! Jobs for the tests of the core: a small one made of typed texts, random ones, and a figure found by its key.

use layshaft::gearing::{Layout, Place};
use layshaft::job::{Gearbox, Job, Setup, SetupId, Stage, demo};
use layshaft::questions::build;
use layshaft::sheet::{Figure, Piece, Row, Sheet, Words};
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

/// The sheet of a job in US words.
pub(crate) fn sheet(job: &Job) -> Sheet {
    build(job, Words::Us)
}

/// Every row of a sheet, the short one first.
pub(crate) fn rows(sheet: &Sheet) -> impl Iterator<Item = &Row> {
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

fn quantity(good: &'static str) -> impl Strategy<Value = Typed> {
    (prop_oneof![3 => Just(good.to_owned()), 1 => text()], system()).prop_map(|(text, units)| Typed::new(text, units))
}

fn pair() -> impl Strategy<Value = String> {
    prop_oneof![6 => (8_u16..60, 8_u16..60).prop_map(|(first, second)| format!("{first}/{second}")), 1 => Just("direct".to_owned()), 1 => text()]
}

fn stage() -> impl Strategy<Value = Stage> {
    let place = prop_oneof![Just(Place::BeforeAxle), Just(Place::BehindAxle)];
    (text(), place, pair()).prop_map(|(name, place, drive)| Stage { name, place, drive })
}

fn gearbox() -> impl Strategy<Value = Gearbox> {
    let layout = prop_oneof![Just(Layout::InputReduced), Just(Layout::OutputReduced), Just(Layout::TwoShaft)];
    let idler = prop_oneof![Just(String::new()), Just("19".to_owned()), pair()];
    (text(), any::<bool>(), layout, pair(), proptest::collection::vec(pair(), 1..=8), pair(), idler).prop_map(
        |(name, altered, layout, constant, gears, reverse, idler)| Gearbox { name, altered, layout, constant, gears, reverse, idler },
    )
}

fn setup() -> impl Strategy<Value = Setup> {
    (text(), gearbox(), pair(), proptest::collection::vec(stage(), 0..=4), quantity("185/70R14"))
        .prop_map(|(name, gearbox, final_drive, stages, tyre)| Setup { name, gearbox, final_drive, stages, tyre, ..Setup::default() })
}

/// Any job of one to six setups, as a file can hold it.
pub(crate) fn job() -> impl Strategy<Value = Job> {
    let texts = (text(), text(), text(), text());
    (texts, system(), quantity("6,500"), quantity("70"), proptest::collection::vec(setup(), 1..=6)).prop_map(
        |((title, customer, car, notes), units, shift, cruise, mut setups)| {
            for (at, setup) in (1..).zip(&mut setups) {
                setup.id = SetupId(at);
            }
            Job { title, customer, car, notes, units, shift, cruise, setups, next_setup: 7, ..demo::empty(units) }
        },
    )
}
