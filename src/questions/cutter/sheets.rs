//! A whole gear set as one file of sheets: the data block of every gear with its mate, each on a page of its own, the gear at its own size.
//!
//! The counts are the set's; pitch, helix, face and centre are the setup's it goes into; material, hardening, quality, tool and backlash are
//! what For the cutter has typed. A page with no script, that any browser opens and prints.

use crate::sheet::markup::escaped;
use std::fmt::Write;

use super::answer::{Order, mate};
use super::{QUESTION, pictures};
pub use crate::gearing::Gearbox;
use crate::gearing::geometry::Hand;
use crate::gearing::geometry::pair_cuts::PairAt;
use crate::gearing::part::Part;
use crate::gearing::{GearNumber, Mesh, Teeth};
use crate::job::{Choice, Cutter, Job, JobChoice, Measure};
use crate::questions::teeth::bearings::shaft_of;
use crate::questions::teeth::rows::shaft_name;
use crate::questions::{Analysis, Source};
use crate::sheet::export::cell_text;
use crate::sheet::words;
use crate::units::common::{in_millimetres, millimetres};
use crate::units::{Length, System, Typed, unit};

/// Why there is no file of sheets.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NoSheets {
    /// The setup does not say how its gears are cut.
    NoPitch(char),
    /// The set has no pair whose counts are known.
    NoPairs,
}

explain! { NoSheets:
    Self::NoPitch(letter) => format!("the teeth of setup {letter} have no pitch yet"),
        "type module or pitch, helix and face width in Teeth and bearings";
    Self::NoPairs => "no pair of this gear set is counted", "type its tooth counts";
}

/// A pair of the set, and what it is called.
struct Pair {
    at: PairAt,
    mesh: Mesh,
    parts: [Part; 2],
    called: String,
}

/// The sheets of a gear set, cut as a setup's gears are.
///
/// # Errors
/// When the setup has no pitch, or no pair is counted.
pub fn of_set(source: Source<'_>, setup: &Analysis, gearbox: &Gearbox, name: &str) -> Result<String, NoSheets> {
    if setup.setup.inside.cut.is_none() {
        return Err(NoSheets::NoPitch(setup.setup.letter));
    }
    let pairs = pairs(gearbox);
    if pairs.is_empty() {
        return Err(NoSheets::NoPairs);
    }
    let title = source.reader.words.say(&format!("For the cutter: {name}"));
    let mut page = String::from("<!doctype html>\n<html lang=\"en\"><head><meta charset=\"utf-8\"><title>");
    // Writing to a text does not fail.
    let _ = writeln!(page, "{}</title>\n<style>{STYLE}</style></head><body>", escaped(&title));
    for pair in &pairs {
        for job in sheets_of(source.job, setup, gearbox, pair).into_iter().flatten() {
            write_sheet(&mut page, Source { job: &job, ..source }, &title);
        }
    }
    page.push_str("</body></html>\n");
    Ok(page)
}

/// One gear on each page.
const STYLE: &str = "body{font:11pt sans-serif}section{break-after:page;margin:0 0 2em}table{border-collapse:collapse}\
th{text-align:left;font-weight:400;padding-right:1.5em}th,td{border-bottom:1px solid #bbb;padding:.2em .6em .2em 0;vertical-align:top}";

fn pairs(gearbox: &Gearbox) -> Vec<Pair> {
    let constant = gearbox.constant().map(|mesh| {
        let parts = [Part::ConstantDriver, Part::ConstantDriven];
        Pair { at: PairAt::Constant, mesh, parts, called: "Constant pair".into() }
    });
    let of_gear = |(gear, mesh): (GearNumber, Mesh)| {
        let parts = [Part::Driver(gear), Part::Driven(gear)];
        Pair { at: PairAt::Gear(gear), mesh, parts, called: gear.to_string() }
    };
    let own = GearNumber::each(gearbox.gears()).filter_map(|(gear, kind)| Some((gear, kind.mesh()?)));
    constant.into_iter().chain(own.map(of_gear)).collect()
}

/// A job for each gear of a pair, as it would be typed in For the cutter; none where the pair cannot be cut so.
fn sheets_of(job: &Job, setup: &Analysis, gearbox: &Gearbox, pair: &Pair) -> Option<[Job; 2]> {
    let inside = &setup.setup.inside;
    let [driver, driven] = pair.parts;
    // The hand is told of the gear on the countershaft, of a two-shaft box of that on the input shaft.
    let is_told = driver.shaft(gearbox.layout()) == shaft_of(gearbox.layout());
    let hand = inside.hand_of(pair.at).filter(|_| inside.cut_of(pair.at).is_some_and(|cut| cut.helix_rad() > 0.0));
    let hands = [is_told, !is_told].map(|is_told| hand.map(|hand| if is_told { hand } else { hand.of_mate() }));
    let typed = |part: Part, [own, mate]: [Teeth; 2], hand: Option<Hand>, shift: Option<f64>| {
        let (_, shaft) = shaft_name(part.shaft(gearbox.layout()));
        let cutter = Cutter { part: format!("{}, on the {shaft}", pair.called), ..cutter_of(job, setup, pair.at, [own, mate], shift)? };
        let mut sheet = job.clone();
        sheet.bench.measure = Measure::default();
        sheet.bench.cutter = cutter;
        sheet.choose(Choice::Job(JobChoice::CutterHand), hand.map_or("", Hand::word));
        Some(sheet)
    };
    let [first, second] = hands;
    let one = typed(driver, [pair.mesh.driver, pair.mesh.driven], first, inside.driver_shift(pair.at))?;
    // What the driver does not take of the sum is the driven gear's.
    let rest = inside.driver_shift(pair.at).and_then(|_| Some(mate(Order::of(&one.bench)?.pair.as_ref()?).shift));
    let other = typed(driven, [pair.mesh.driven, pair.mesh.driver], second, rest)?;
    Some([one, other])
}

fn cutter_of(job: &Job, setup: &Analysis, at: PairAt, [own, mate]: [Teeth; 2], shift: Option<f64>) -> Option<Cutter> {
    let (inside, typed) = (&setup.setup.inside, &job.bench.cutter);
    let cut = inside.cut_of(at)?;
    let mm = |length: Length| Typed::new(format!("{} mm", in_millimetres(length)), System::Metric);
    let degrees = |angle| Typed::new(format!("{}°", unit::DEGREE.number(angle)), System::Metric);
    let by_counts = millimetres(in_millimetres(cut.transverse_module()) * f64::from(own.count() + mate.count()) / 2.0);
    Some(Cutter {
        teeth: own.to_string(),
        pitch: mm(cut.normal_module()),
        pressure: degrees(cut.pressure()),
        helix: degrees(cut.helix()),
        profile_shift: shift.map_or_else(String::new, |shift| shift.to_string()),
        face: inside.face_of(at).map(mm).unwrap_or_default(),
        mate_teeth: mate.to_string(),
        centre: mm(inside.centre.unwrap_or(by_counts)),
        pin: Typed::default(),
        relief_from: Typed::default(),
        ..typed.clone()
    })
}

/// The data block of the gear that a job orders, and its outline.
fn write_sheet(page: &mut String, source: Source<'_>, title: &str) {
    let section = QUESTION.section(source);
    let _ = writeln!(
        page,
        "<section><h1>{}</h1>\n<h2>{}</h2>",
        escaped(title),
        escaped(&source.reader.words.say(&source.job.bench.cutter.part))
    );
    let _ = writeln!(page, "<p>{}</p>\n<table>", escaped(&source.reader.words.say(&section.answer.plain())));
    for mut row in section.rows {
        words::row(&mut row, source.reader.words);
        let text: Vec<String> = row.cells.iter().map(cell_text).collect();
        let _ = writeln!(page, "<tr><th>{}</th><td>{}</td></tr>", escaped(&row.label), escaped(&text.join(" ")));
    }
    page.push_str("</table>\n");
    if let Some(outline) = pictures::tooth(source).and_then(|picture| picture.own_size) {
        page.push_str(&outline.svg());
    }
    page.push_str("</section>\n");
}
