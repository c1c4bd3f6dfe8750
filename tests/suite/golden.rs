//! Whole sheets as text: every row, every figure with its working, every judgement of three jobs.
//!
//! The texts in `tests/golden/` were looked at before they were kept; figures that someone else has worked out stand in
//! `published_*` and `figures_by_hand`. A figure that moves is listed in CHANGELOG under "Numbers that changed".

use std::fmt::Write;

use layshaft::gearing::speeds::Selected;
use layshaft::gearing::{Layout, Place};
use layshaft::job::choice::{HeardGear, Wheels};
use layshaft::job::{
    Bench, Build, Chosen, EndPlay, Faults, Fits, Gearbox, Inside, Job, Measure, Noise, Setting, Setup, SetupId, Stage, demo,
};
use layshaft::questions::{Place as Asked, build};
use layshaft::sheet::{Cell, Figure, Piece, Rest, Row, Section, Tone, Words};
use layshaft::sound::{Kind, Load};
use layshaft::speedometer::Hand;
use layshaft::units::{System, Typed};

use crate::any_job::figures;
use crate::nth;

#[test]
fn demo_in_us_words_and_inches() {
    compare("demo-us-inch", &written(&demo::job(), Words::Us));
}

#[test]
fn demo_in_uk_words_and_metric() {
    let job = Job { units: System::Metric, ..demo::job() };
    compare("demo-uk-metric", &written(&job, Words::Uk));
}

#[test]
fn every_layout_reverse_and_stage() {
    compare("layouts", &written(&layouts(), Words::Us));
}

#[test]
fn what_lies_on_the_bench() {
    compare("bench", &written_where(&bench(), Words::Uk, |section| section.place == Asked::Bench));
}

#[test]
fn a_noise_of_the_demo_box() {
    compare("noise", &written_where(&noise(), Words::Us, |section| section.id == "noise"));
}

#[test]
fn what_the_teeth_of_the_demo_boxes_bear() {
    compare("teeth", &written_where(&teeth(), Words::Us, |section| section.id == "teeth"));
}

/// The demo job with teeth: 10 DP, 25° and 3/4 in wide, right-hand on the clusters; in B 1st is narrower and 3rd left-hand, C is coarser.
pub(crate) fn teeth() -> Job {
    let mut job = demo::job();
    for (setup, (pitch, pairs)) in job.setups.iter_mut().zip([("10", ""), ("10", "1st face 16 mm; 3rd left"), ("9", "")]) {
        setup.inside = Inside {
            pitch: Typed::new(pitch, System::Inch),
            helix: Typed::new("25", System::Inch),
            face: Typed::new("0.75", System::Inch),
            pair_cuts: Typed::new(pairs, System::Inch),
            hand: Chosen::of(Hand::Right),
            ..Inside::default()
        };
    }
    job
}

#[test]
fn a_five_speed_for_the_coupe() {
    compare("swap", &written_where(&crate::swap_by_hand::five_speed(), Words::Uk, |section| section.id == "swap"));
}

#[test]
fn a_fault_of_the_demo_box() {
    compare("faults", &written_where(&fault(), Words::Uk, |section| section.id == "faults"));
}

/// The demo job that jumps out of third on the overrun; its mounts were tried and hold.
fn fault() -> Job {
    let mounts = "[x] Box and engine lifted a little with a bar and a block: does a mount part, or does metal touch? | got no | by JB";
    let faults = Faults { said: "jumps-out; g3; overrun".into(), tried: mounts.into(), ..Faults::default() };
    Job { bench: Bench { faults, ..Bench::default() }, ..demo::job() }
}

/// The demo job with a whine in third at 40 mph, only pulling, and a bearing whose geometry is known.
pub(crate) fn noise() -> Job {
    let noise = Noise {
        kind: Chosen::of(Kind::Whine),
        gear: Chosen::of(HeardGear(Selected::Gear(nth(3)))),
        load: Chosen::of(Load::Pulling),
        at: Typed::new("40", System::Inch),
        bearings: Typed::new("cluster front: 9 x 7.94 on 38.5 mm", System::Inch),
        ..Noise::default()
    };
    Job { bench: Bench { noise, ..Bench::default() }, ..demo::job() }
}

/// The bench alone: two gears counted, an axle turned with one wheel held, printed ratios, parts of two sets together, a stack to be
/// shimmed, a worn seat.
pub(crate) fn bench() -> Job {
    let bench = Bench {
        first: "37/18".into(),
        second: "32/?".into(),
        shaft_turns: "20".into(),
        wheel_turns: "10 1/4".into(),
        wheel: Chosen::of(Wheels::OneHeld),
        ladder: "2.47 1.67 1.24 1.00".into(),
        fewest: "15".into(),
        mix_cluster: "Curlew four, wide".into(),
        mix_input: "Curlew four, close".into(),
        endplay: EndPlay {
            stack: Typed::new(
                "case depth 112.40 ±0.02\n+ gasket 0.30\n- cluster 106.21 ±0.02\n- thrust washer 3.05 ±0.01 x2",
                System::Metric,
            ),
            wanted: Typed::new("2 to 6 thou", System::Inch),
            kit: Typed::new("0.10 x3, 0.15, 0.20 x2", System::Metric),
            ..EndPlay::default()
        },
        fits: Fits {
            bore: Typed::new("25.018 25.022; 25.020 25.026", System::Metric),
            shaft: Typed::new("0.9827 0.9828", System::Inch),
            wanted: Typed::new("H7/g6", System::Inch),
            ..Fits::default()
        },
        setting: setting(),
        measure: measured(),
        build: Build {
            steps: "Cluster:\n[x] needles, both rows | got 40 | by JB | on 28 Nov 2026\n[x] end play | want as End play | got 0.008 in; 0.0045 in\n\
                [x] first gear, float | want 0.15 to 0.45 mm | got 0.5\ncase bolts | want 15 to 20 lbf·ft"
                .into(),
            parts: "2 x front bearing, B-205: 14.50 EUR\n[x] rear seal: 8.20 EUR\ngasket set".into(),
            by: "JB".into(),
        },
        ..Bench::default()
    };
    Job { title: "Bench (invented)".into(), bench, ..demo::empty(System::Inch) }
}

/// The setting of its bearings.
fn setting() -> Setting {
    Setting {
        shim_in: Typed::new("1.50 mm", System::Metric),
        float: Typed::new("0.10 0.11 0.10", System::Metric),
        wanted: Typed::new("preload 0.05 to 0.10 mm", System::Metric),
        span: Typed::new("180", System::Metric),
        cups: Typed::new("62 72", System::Metric),
        pull: Typed::new("4", System::Inch),
        radius: Typed::new("3", System::Inch),
        depth: Typed::new("0.060", System::Inch),
        mark: Typed::new("+2 thou", System::Inch),
        lash: Typed::new("1/16", System::Inch),
        dial_radius: Typed::new("7", System::Inch),
        pitch_radius: Typed::new("0.75", System::Inch),
        bore: Typed::new("0 0.002 0.010 0.008", System::Inch),
        face: Typed::new("0 0.001 0.003 0.002", System::Inch),
        fasteners: "rear cover M8 8.8 in aluminium 12 mm\nM16 8.8".into(),
        oil: "SAE 80 GL-4, 1.6 l".into(),
        ..Setting::default()
    }
}

/// A gear that was measured.
fn measured() -> Measure {
    Measure {
        teeth: "32".into(),
        over_tips: Typed::new("3.120", System::Inch),
        span: Typed::new("1.1652", System::Inch),
        span_more: Typed::new("1.4112", System::Inch),
        print: Typed::new("25.5", System::Inch),
        mate_teeth: "23".into(),
        centre: Typed::new("2.525", System::Inch),
        hand: Chosen::of(Hand::Right),
        ..Measure::default()
    }
}

/// An invented job: output-reduced with a compound idler and an overdrive, two-shaft with hub reduction, and one left half typed.
pub(crate) fn layouts() -> Job {
    let gearbox = |name: &str, layout, constant: &str, gears: &[&str], reverse: &str, idler: &str| Gearbox {
        name: name.into(),
        altered: false,
        layout,
        constant: constant.into(),
        gears: gears.iter().map(|gear| (*gear).into()).collect(),
        reverse: reverse.into(),
        idler: idler.into(),
    };
    let stage = |name: &str, place, drive: &str| Stage { name: name.into(), place, drive: drive.into(), ..Stage::default() };
    let setup = |id, name: &str, gearbox, final_drive: &str, stages, tyre: &str| Setup {
        id: SetupId(id),
        name: name.into(),
        gearbox,
        final_drive: final_drive.into(),
        stages,
        tyre: Typed::new(tyre, System::Metric),
        ..Setup::default()
    };
    let output = gearbox(
        "Invented, reduced at the output",
        Layout::OutputReduced,
        "36/20",
        &["20/36", "25/31", "30/26", "direct"],
        "18/32",
        "20/16",
    );
    let two_shaft = gearbox("Invented, two shafts", Layout::TwoShaft, "", &["38/11", "35/18", "32/25", "31/30", "27/33"], "37/12", "23");
    let half = gearbox("Invented, half typed", Layout::InputReduced, "22/33", &["36/19", "31/24", "27", "direct", "direct"], "", "");
    Job {
        title: "Every layout (invented)".into(),
        units: System::Metric,
        shift: Typed::new("5,500", System::Metric),
        cruise: Typed::new("60 mph", System::Metric),
        setups: vec![
            setup(
                1,
                "Output-reduced, overdrive",
                output,
                "4.1",
                vec![stage("overdrive", Place::BeforeAxle, "0.79")],
                "1.994 m circumference",
            ),
            setup(
                2,
                "Two-shaft, hubs",
                two_shaft,
                "4,11",
                vec![stage("hubs", Place::BehindAxle, "31/27"), stage("drop gears", Place::BeforeAxle, "33/32")],
                "165R13",
            ),
            setup(3, "Half typed", half, "43/11", Vec::new(), ""),
        ],
        next_setup: 4,
        ..demo::empty(System::Metric)
    }
}

/// The letters of the columns.
const LETTERS: [char; 6] = ['A', 'B', 'C', 'D', 'E', 'F'];

/// Compares a text with the one kept; where every change is meant, `UPDATE_EXPECT=1 cargo test` keeps the new one.
pub(crate) fn compare(name: &str, text: &str) {
    expect_test::expect_file![format!("../golden/{name}.txt")].assert_eq(text);
}

/// A sheet as text: what is read, below each cell the figures with their values and workings, at the end the formulas and sources.
fn written(job: &Job, words: Words) -> String {
    written_where(job, words, |_| true)
}

fn written_where(job: &Job, words: Words, keep: impl Fn(&Section) -> bool) -> String {
    let mut sheet = build(job, words);
    sheet.sections.retain(keep);
    let sheet = &sheet;
    let mut text = String::new();
    if sheet.sections.iter().any(|section| section.place == Asked::Compare) {
        write_row(&mut text, &sheet.short, &LETTERS, words);
    }
    for section in &sheet.sections {
        writeln!(text, "\n== {} ({}): {}", section.title, section.id, section.ask).unwrap();
        if !section.answer.is_empty() {
            writeln!(text, "\n{}", section.answer.marked()).unwrap();
        }
        let letters: &[char] = if section.place == Asked::Bench { &['='] } else { &LETTERS };
        let (deciding, others) = section.rows.split_at(section.decide);
        for row in deciding {
            write_row(&mut text, row, letters, words);
        }
        if !deciding.is_empty() && !others.is_empty() {
            text.push_str("\n-- All figures\n");
        }
        for row in others {
            write_row(&mut text, row, letters, words);
        }
        write_rests(&mut text, &section.rests);
    }
    text.push_str("\n== Formulas and sources\n");
    let columns = sheet.short.cells.len();
    let workings = (0..columns).flat_map(|column| figures(sheet, column)).filter_map(|figure| Some(figure.working.clone()?.said(words)));
    let mut formulas: Vec<String> = workings.map(|working| format!("{}\n    {}\n", working.formula, working.source)).collect();
    formulas.sort();
    formulas.dedup();
    text + &formulas.concat()
}

fn write_rests(text: &mut String, rests: &[Rest]) {
    if !rests.is_empty() {
        text.push_str("\n-- What this rests on\n");
    }
    for Rest { label, value, source, is_typed } in rests {
        writeln!(text, "{label}: {value} ({}{source})", if *is_typed { "" } else { "usual: " }).unwrap();
    }
}

fn write_row(text: &mut String, row: &Row, letters: &[char], words: Words) {
    writeln!(text, "\n{} ({})", row.label, row.key).unwrap();
    assert!(row.cells.len() <= letters.len(), "{}", row.key);
    for (letter, cell) in letters.iter().zip(&row.cells) {
        writeln!(text, "  {letter} {}", cell_line(cell)).unwrap();
        for piece in cell.pieces() {
            if let Piece::Figure(figure) = piece {
                writeln!(text, "      {}", figure_line(figure, words)).unwrap();
            }
        }
    }
}

fn cell_line(cell: &Cell) -> String {
    let lines = cell.lines.iter().map(|line| line.iter().map(piece).collect::<Vec<_>>().join(" "));
    let entries = cell.entries.iter().map(|entry| format!("[{}: {}]", entry.label, entry.text));
    let offer = cell.offer.iter().map(|part| format!("[use {}: {}]", part.kind.word(1), part.title()));
    lines.chain(entries).chain(offer).collect::<Vec<_>>().join(" | ")
}

fn piece(piece: &Piece) -> String {
    match piece {
        Piece::Figure(figure) => figure.text() + &figure.difference.as_ref().map_or_else(String::new, |by| format!(" ({by})")),
        Piece::Words(words) | Piece::Open(_, words) => words.clone(),
        Piece::Absent(why) | Piece::Needed(why) => format!("({why})"),
        Piece::Verdict(verdict) => match verdict.tone {
            Tone::Good => format!("+ {}", verdict.text),
            Tone::Caution => format!("! {}", verdict.text),
            Tone::Driving => format!("driving: {}", verdict.text),
            Tone::Stop => format!("!! {}", verdict.text),
        },
    }
}

/// Key, value to six figures, and how it came about.
fn figure_line(figure: &Figure, words: Words) -> String {
    let filled = figure.working.clone().map_or_else(String::new, |working| working.said(words).filled());
    format!("{} = {:.5e}  {filled}", figure.key, figure.value).trim_end().to_owned()
}

#[test]
fn no_two_figures_of_a_setup_share_a_key() {
    for sheet in [build(&demo::job(), Words::Us), build(&layouts(), Words::Uk), build(&bench(), Words::Us)] {
        for column in 0..sheet.short.cells.len() {
            let mut keys: Vec<_> = figures(&sheet, column).map(|figure| figure.key.as_str()).collect();
            let many = keys.len();
            keys.sort_unstable();
            keys.dedup();
            assert_eq!(many, keys.len());
        }
        for section in &sheet.sections {
            let columns = if section.place == Asked::Bench { 1 } else { sheet.short.cells.len() };
            assert!(section.rows.iter().all(|row| row.cells.len() == columns), "{}", section.id);
        }
    }
}
