//! The table: what, the target, what was measured, and how that stands beside the peers.

use std::fmt::Write;

use super::{
    module::Module,
    native::Native,
    page::{Key, OnPage},
    peers::Peers,
    rival::Rival,
    sizes::Sizes,
};

/// Everything that was measured.
pub(crate) struct Measured {
    pub(crate) machine: String,
    pub(crate) native: Native,
    pub(crate) peers: Peers,
    pub(crate) module: Module,
    pub(crate) rival: Rival,
    pub(crate) page: OnPage,
    pub(crate) sizes: Sizes,
}

/// One row.
struct Row {
    what: String,
    target: String,
    measured: String,
    /// Whether the target is met; nothing where there is none.
    is_met: Option<bool>,
    beside: String,
}

impl Row {
    fn new(what: impl Into<String>, measured: String) -> Self {
        Self { what: what.into(), target: String::new(), measured, is_met: None, beside: String::new() }
    }

    /// At most so many seconds.
    fn within(what: &str, seconds: f64, target_s: f64) -> Self {
        Self { target: format!("< {}", time(target_s)), is_met: Some(seconds < target_s), ..Self::new(what, time(seconds)) }
    }

    fn beside(self, words: String) -> Self {
        Self { beside: words, ..self }
    }
}

/// The whole file.
pub(crate) fn written(measured: &Measured) -> String {
    let mut text = String::from("# How fast\n\n");
    let _ =
        writeln!(text, "Measured in one run on: {}. Beside it: {}, {}.\n", measured.machine, measured.peers.words, measured.rival.words);
    text.push_str("| What | Target | Measured | Target met | Beside what a person would otherwise use |\n|---|---|---|---|---|\n");
    for row in rows(measured) {
        let met = row.is_met.map_or("", |is_met| if is_met { "yes" } else { "**missed**" });
        let _ = writeln!(text, "| {} | {} | {} | {met} | {} |", row.what, row.target, row.measured, row.beside);
    }
    text.push_str("\nThe numpy peer answered the same best hundred, and scipy the same times to within ");
    let _ = writeln!(
        text,
        "{}. Times on this machine are criterion's medians; nothing here is a test, and nothing fails on a time.",
        time(measured.peers.run_off_s)
    );
    text
}

fn rows(measured: &Measured) -> Vec<Row> {
    let native = |name: &str| measured.native.get(name).copied().unwrap_or(f64::NAN);
    let (peers, module, page) = (&measured.peers, &measured.module, &measured.page);
    let each = native("search/ten-million-each-judged");
    let runs = native("search/forty-thousand-runs");
    let mut rows = vec![
        Row::within("10 million combinations, each judged with its best speedometer pair, one thread", each, 0.3).beside(format!(
            "numpy, vectorised: {} ({})",
            time(peers.search_s),
            times(peers.search_s / each)
        )),
        Row::within("the same in the browser", module.each_s, 0.6)
            .beside(format!("numpy outside the browser: {}", times(peers.search_s / module.each_s))),
        Row::new("the same combinations, what cannot be better passed over with proof", time(native("search/ten-million-preferences"))),
        Row::within("a typical wish list over the same catalogue", native("search/ten-million-typical"), 0.02),
        Row::within("the same in the browser", module.typical_s, 0.02),
        Row::within("40,000 runs from rest to 100 km/h, ranked", runs, 2.0).beside(format!(
            "scipy: {} a run to our {} ({})",
            time(peers.run_s),
            time(runs / 40_000.0),
            times(peers.run_s * 40_000.0 / runs)
        )),
        Row::new("reading the built-in catalogue into numbers", time(native("search/built-in-catalogue-read"))),
        Row::new("one setup's whole analysis", time(native("sheet/analysis-of-one-setup"))),
        Row::new("all rows of one setup of four steps", time(native("sheet/setup-of-four-steps"))),
        Row::new(
            "the same of eight gears, overdrive and range box: 32 steps, every run planned through them",
            time(native("sheet/setup-of-32-steps")),
        ),
        Row::new("all rows of a sheet of three setups", time(native("sheet/rows-of-three-setups"))),
    ];
    rows.extend(on_page(page, &measured.rival));
    rows.extend(visits(page));
    let sizes = &measured.sizes;
    let kilobytes = |bytes: usize| format!("{} kB", bytes.div_ceil(1000));
    rows.push(Row::new("every file there is, the later ones too, after brotli", kilobytes(sizes.brotli)));
    rows.push(Row::new(
        "the same after gzip; its program alone after brotli; unpacked",
        format!("{}; {}; {}", kilobytes(sizes.gzip), kilobytes(sizes.program_brotli), kilobytes(sizes.raw)),
    ));
    rows
}

/// The first visit, and what stays of many edits.
fn visits(page: &OnPage) -> Vec<Row> {
    let kilobytes = |bytes: f64| format!("{:.0} kB", bytes / 1000.0);
    let slow = &page.slow;
    let both = |[before, after]: [f64; 2]| format!("{} before, {} after", kilobytes(before), kilobytes(after));
    vec![
        Row {
            target: "< 340 kB".into(),
            is_met: Some(slow.bytes < 340_000.0),
            ..Row::new(
                "a first visit at 1.6 Mbit/s and 150 ms, the machine slowed four times: bytes until the first figure",
                kilobytes(slow.bytes),
            )
        },
        Row::new(
            "the same: until the first figure, and until everything is there",
            format!("{}; {}", time(slow.figure_ms / 1e3), time(slow.whole_ms / 1e3)),
        ),
        Row::new(format!("memory of the program, {} edits with six setups", super::page::EDITS), both(page.memory.program)),
        Row::new("the page's objects, the same edits, as the browser rounds them", both(page.memory.page)),
    ]
}

fn on_page(page: &OnPage, rival: &Rival) -> Vec<Row> {
    let both = |[median, most]: [f64; 2]| format!("{} median, {} 95th percentile", milli(median), milli(most));
    let longest = if page.longest_ms > 0.0 { milli(page.longest_ms) } else { "none of 50 ms or more".into() };
    let key = |key: &Key, setups: &str| {
        let what = format!(
            "an edit of {} with {setups}: until every figure in view is new, and until they and the pictures are painted",
            key.what
        );
        let measured = format!("{}; {}", both(key.figures_ms), both(key.painted_ms));
        let is_met = key.figures_ms[1] < 8.0 && key.painted_ms[1] < 16.7;
        let target = Row { target: "95th percentile 8 ms, and a frame (16.7 ms)".into(), is_met: Some(is_met), ..Row::new(what, measured) };
        [target, Row::new("the longest of what follows once the typing pauses", both(key.after_ms))]
    };
    let keys =
        page.keys.iter().zip(["one setup", "six setups"]).flat_map(|(keys, setups)| keys.iter().flat_map(move |each| key(each, setups)));
    let mut rows = vec![
        Row::new("from opening the page to its first figure", milli(page.first_figure_ms)),
        Row {
            target: "< 50 ms".into(),
            is_met: Some(page.longest_ms < 50.0),
            ..Row::new("the page's longest task while wishes are typed and searched for", longest)
        },
        Row::new("that search, from beginning to end in slices", milli(page.search_ms)),
    ];
    rows.extend(keys);
    rows.extend(page.slowed.iter().map(|key| Row {
        target: "< 50 ms".into(),
        is_met: Some(key.painted_ms[1] < 50.0),
        ..Row::new(
            format!("an edit of {} with six setups on a machine slowed four times", key.what),
            format!("{}; {}", both(key.figures_ms), both(key.painted_ms)),
        )
    }));
    let shift = page.pictures_ms.get(SHIFT_CHART).copied();
    rows.extend(page.pictures_ms.iter().map(|(name, took)| {
        let row = Row::new(format!("picture drawn again: {}", name.replace('-', " ")), milli(*took));
        let is_shift = shift.is_some() && name == SHIFT_CHART;
        if is_shift {
            row.beside(format!("the same picture by the library: {} ({})", milli(rival.redraw_ms), times(rival.redraw_ms / took)))
        } else {
            row
        }
    }));
    rows
}

/// The picture that the library draws too.
const SHIFT_CHART: &str = "gear-shifts";

/// A time with about three digits in the unit that suits it.
fn time(seconds: f64) -> String {
    let milliseconds = seconds * 1e3;
    match milliseconds {
        ms if ms.is_nan() => "not measured".into(),
        ms if ms >= 1e3 => format!("{seconds:.2} s"),
        ms if ms >= 100.0 => format!("{ms:.0} ms"),
        ms if ms >= 10.0 => format!("{ms:.1} ms"),
        ms if ms >= 1.0 => format!("{ms:.2} ms"),
        ms => format!("{ms:.3} ms"),
    }
}

fn milli(milliseconds: f64) -> String {
    format!("{milliseconds:.1} ms")
}

fn times(ratio: f64) -> String {
    if ratio >= 1.0 { format!("ours takes 1/{ratio:.0} of that") } else { format!("ours takes {:.1} times that", 1.0 / ratio) }
}
