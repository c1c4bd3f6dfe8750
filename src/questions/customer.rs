//! The customer's page: one setup on one sheet of paper, in the figures a customer asks for.
//!
//! Every figure is taken from the rows of the sheet, so that the page and the comparison behind it cannot differ.

use crate::gearing::Step;
use crate::gearing::teeth::decimal;
use crate::job::{Gearbox, Job, Setup};
use crate::problem::capital;
use crate::questions::Source;
use crate::questions::alike::rounded;
use crate::questions::entries::kind_words;
use crate::questions::quote::{Offer, offer};
use crate::questions::road::rows::past_top_speed;
use crate::questions::short;
use crate::questions::swap::oil::SUMPS;
use crate::sheet::said::{Bit, mark};
use crate::sheet::{Cell, Figure, Piece, Row, Said, Sheet};
use crate::units::common::{in_rpm, show_rpm};
use crate::units::number;

/// What a cell of the gear table says where there is no figure.
const NONE: &str = "–";

/// How many sentences say why.
const MOST_REASONS: usize = 3;

/// What stands beneath every page of figures.
pub const USUAL_CAUTION: &str = "Figures are calculated, not measured on the car. Check tyre speed rating, driveshaft and rotating parts before use, and follow local road law and a qualified engineer where either applies.";

/// The customer's page.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct CustomerPage {
    /// The letter of the setup.
    pub letter: char,
    /// What the setup is called.
    pub setup: String,
    /// What is fitted: a part and what it is.
    pub fitted: Vec<(String, String)>,
    /// Why it is this setup: what the answers say of it, setups by their names.
    pub why: Vec<String>,
    /// The heads of the gear table.
    pub heads: Vec<String>,
    /// The gears, lowest first, reverse last: as many cells as heads.
    pub gears: Vec<Vec<String>>,
    /// What to expect: a question and its answer.
    pub expect: Vec<(String, String)>,
    /// The speedometer: a question and its answer.
    pub speedometer: Vec<(String, String)>,
    /// What wants attention.
    pub cautions: Vec<String>,
    /// Words to the customer, a line each.
    pub note: Vec<String>,
    /// What is charged.
    pub offer: Offer,
}

/// The page of the setup that the job names for the customer; none where the job has no setup.
pub fn page(source: Source<'_>, sheet: &Sheet) -> Option<CustomerPage> {
    let setup = source.job.setup_for_customer()?;
    let column = source.job.setups.iter().position(|each| each.id == setup.id)?;
    let seen = Seen { source, sheet, column };
    Some(CustomerPage {
        letter: Job::letter(column),
        setup: setup.name.clone(),
        fitted: seen.fitted(setup),
        heads: seen.heads(),
        gears: seen.gears(),
        expect: seen.expectations(),
        speedometer: seen.speedometer(),
        cautions: seen.cautions(),
        why: seen.why(),
        note: source.job.quote.note.lines().map(str::trim).filter(|line| !line.is_empty()).map(str::to_owned).collect(),
        offer: offer(&source.job.quote),
    })
}

/// One column of the sheet.
#[derive(Clone, Copy)]
struct Seen<'a> {
    source: Source<'a>,
    sheet: &'a Sheet,
    column: usize,
}

impl Seen<'_> {
    fn figure(&self, section: &str, key: &str) -> Option<&Figure> {
        let cells = self.rows(section).filter_map(|row| row.cells.get(self.column));
        cells.flat_map(Cell::pieces).find_map(|piece| match piece {
            Piece::Figure(figure) if figure.key == key => Some(figure.as_ref()),
            _ => None,
        })
    }

    /// The figure whose key begins so, whatever unit stands behind.
    fn measured(&self, section: &str, key: &str) -> Option<String> {
        let cells = self.rows(section).filter_map(|row| row.cells.get(self.column));
        cells.flat_map(Cell::pieces).find_map(|piece| match piece {
            Piece::Figure(figure) if figure.key.starts_with(key) => Some(figure.text()),
            _ => None,
        })
    }

    fn rows(&self, section: &str) -> impl Iterator<Item = &Row> {
        self.sheet.sections.iter().filter(move |each| each.id == section).flat_map(|section| &section.rows)
    }

    /// The rows of a section that have an answer, in the order of the sheet; those whose key begins with one of `keys`.
    fn answers(&self, section: &str, keys: &[&str]) -> Vec<(String, String)> {
        let asked = self.rows(section).filter(|row| keys.iter().any(|key| row.key.starts_with(key)));
        asked.filter_map(|row| Some((row.label.clone(), answer(row.cells.get(self.column)?)?))).collect()
    }

    /// What is fitted, what it reads, and the one best thing to fit; the rest is in the comparison.
    fn speedometer(&self) -> Vec<(String, String)> {
        let mut answers = self.answers("speedometer", &["fitted", "reads", "odometer", "fit"]);
        for (_, answer) in &mut answers {
            if let Some(end) = answer.find("; ") {
                answer.truncate(end);
            }
        }
        answers
    }

    fn fitted(&self, setup: &Setup) -> Vec<(String, String)> {
        let axle = self.source.setups.get(self.column).and_then(|analysis| analysis.setup.final_drive);
        let axle = axle.map_or_else(String::new, |axle| format!(" = {}", number::show(decimal(axle.ratio()), 3)));
        let has_gears = setup.gearbox.gears.iter().any(|gear| !gear.trim().is_empty());
        let gearbox = if has_gears { gear_set(&setup.gearbox) } else { String::new() };
        let named = |part: &str, text: String| (self.source.reader.words.say(part), text);
        let mut fitted = vec![named("Gear set", gearbox), named("Ring and pinion", format!("{}{axle}", setup.final_drive))];
        fitted.extend(setup.stages.iter().map(|stage| {
            let name = if stage.name.is_empty() { capital(kind_words(&stage.kind)) } else { stage.name.clone() };
            named(&name, stage.drive.clone())
        }));
        fitted.push(named("Tyre", setup.tyre.text.clone()));
        fitted.extend(SUMPS.iter().map(|sump| named(sump.fitted, (sump.oil)(&setup.swap).to_owned())));
        fitted.retain(|(_, text)| !text.trim().is_empty());
        fitted
    }

    fn heads(&self) -> Vec<String> {
        let shift = self.source.conditions.shift.map_or_else(|| "the shift".to_owned(), |shift| format!("{} rpm", show_rpm(shift)));
        let heads = ["Gear", "Ratio", "With the axle", &format!("Speed at {shift}"), "Speed per 1,000 rpm", "Next gear picks up at"];
        heads.into_iter().map(|head| self.source.reader.words.say(head)).collect()
    }

    fn gears(&self) -> Vec<Vec<String>> {
        let gear = |step: &Step| {
            let key = |what: &str| format!("gear_{}.{what}", step.key());
            let plain = |what: &str| self.figure("gears", &key(what)).map_or_else(|| NONE.to_owned(), Figure::text);
            let road = |what: &str| self.measured("road", &key(what)).unwrap_or_else(|| NONE.to_owned());
            let lands = self.figure("road", &key("lands_at_rpm")).map_or_else(|| NONE.to_owned(), |figure| format!("{} rpm", figure.shown));
            vec![
                step.name(),
                plain("ratio"),
                plain("overall"),
                self.past_reach(step).unwrap_or_else(|| road("at_shift")),
                road("per_1000"),
                lands,
            ]
        };
        let steps = self.source.setups.get(self.column).into_iter().flat_map(|analysis| &analysis.setup.steps);
        let mut gears: Vec<Vec<String>> = steps.map(gear).collect();
        if let Some(reverse) = self.figure("gears", "reverse.ratio") {
            let mut line = vec!["Reverse".to_owned(), reverse.text()];
            line.resize(self.heads().len(), NONE.to_owned());
            gears.push(line);
        }
        gears
    }

    /// What stands in the place of a speed that the car does not reach: `past its top speed, 116.5 mph`.
    fn past_reach(&self, step: &Step) -> Option<String> {
        let analysis = self.source.setups.get(self.column).filter(|_| step.stages_in.is_empty())?;
        past_top_speed(self.source, analysis, step.gear).map(|top| format!("past its top speed, {top}"))
    }

    /// What the answers say of this setup, in sentences; whose case is whose is a matter of the shop.
    fn why(&self) -> Vec<String> {
        const ASKED: [&str; 3] = ["gears", "road", "pull"];
        let own = mark(self.column);
        let answers = ASKED.iter().filter_map(|id| self.sheet.sections.iter().find(|section| section.id == *id));
        let said = answers.flat_map(|section| sentences(section.answer.marked()));
        let is_told = |sentence: &&str| sentence.contains(&own) && !sentence.contains("]’s case") && !asks(sentence);
        said.filter(is_told).take(MOST_REASONS).map(|sentence| self.named(sentence)).collect()
    }

    /// A sentence with the setups by their names.
    fn named(&self, sentence: &str) -> String {
        let name = |column: usize| match self.source.job.setups.get(column).map(|setup| setup.name.trim()) {
            Some("") | None => format!("setup {}", Job::letter(column)),
            Some(name) => format!("“{name}”"),
        };
        let said = Said::new(sentence);
        let bits = said.bits().into_iter().map(|bit| match bit {
            Bit::Words(words) | Bit::Open { words, .. } => words.to_owned(),
            Bit::Setup(column) => name(column),
        });
        bits.collect()
    }

    fn expectations(&self) -> Vec<(String, String)> {
        let mut expect = Vec::new();
        let cruise = short::cruise_text(self.source);
        if let Some(figure) = self.figure("road", "cruise_rpm") {
            expect.push((format!("Engine at {cruise} in top gear"), format!("{} rpm{}", figure.shown, self.against_first(figure.value))));
        }
        if let Some((gear, drop)) = self.source.setups.get(self.column).and_then(|analysis| analysis.gears().deepest_drop()) {
            let words = format!("{} % of the rpm, {gear} to {}", number::show(drop * 100.0, 0), gear.next());
            expect.push(("Deepest drop on an upshift".to_owned(), words));
        }
        let say = |(question, answer): (String, String)| (self.source.reader.words.say(&question), answer);
        expect = expect.into_iter().map(say).collect();
        expect.extend(self.answers("pull", &["to-speed", "distance-1", "roll"]));
        expect
    }

    /// How the engine speed at the cruise differs from the first setup's.
    fn against_first(&self, rpm: f64) -> String {
        let first = self.source.setups.first().and_then(|first| first.road().cruise_in_top()).map(in_rpm);
        // Of the figures as both are shown, so that a reader who subtracts them finds the same.
        let difference = first.filter(|_| self.column > 0).map_or(0.0, |first| rounded(rpm, 0) - rounded(first, 0));
        if difference == 0.0 {
            return String::new();
        }
        let way = if difference < 0.0 { "fewer" } else { "more" };
        format!(", {} {way} than with {}", number::show(difference.abs(), 0), self.named(&mark(0)))
    }

    fn cautions(&self) -> Vec<String> {
        let all = self.sheet.sections.iter().flat_map(|section| section.cautions().map(move |caution| (section, caution)));
        let own = all.filter(|(_, (column, _, _))| *column == Some(self.column));
        own.map(|(section, (_, row, verdict))| format!("{}, {}: {}", section.title, row.label, verdict.text)).collect()
    }
}

/// Whether a sentence asks the shop for something: `Type the tyre of [B] to get road speeds.`
fn asks(sentence: &str) -> bool {
    ["Type ", "Choose "].iter().any(|ask| sentence.starts_with(ask))
}

/// The sentences of a text: each ends in a full stop before a blank and a capital letter, or a setup.
fn sentences(text: &str) -> Vec<&str> {
    let mut found = Vec::new();
    let mut rest = text.trim();
    let begins = |after: &str| after.starts_with(|c: char| c.is_uppercase() || c == '[');
    while let Some(at) = rest.match_indices(". ").map(|(at, _)| at).find(|at| rest.get(at + 2..).is_some_and(begins)) {
        found.extend(rest.get(..=at));
        rest = rest.get(at + 2..).unwrap_or_default();
    }
    if !rest.is_empty() {
        found.push(rest);
    }
    found
}

/// What a gear set is called to a customer.
pub(super) fn gear_set(gearbox: &Gearbox) -> String {
    match (gearbox.name.as_str(), gearbox.altered) {
        ("", _) => "as counted".to_owned(),
        (name, true) => format!("{name}, altered"),
        (name, false) => name.to_owned(),
    }
}

/// A cell's figures and words as one text, without what is typed in it; none where it only says why there is no figure.
fn answer(cell: &Cell) -> Option<String> {
    let lines = cell.lines.iter().filter(|line| line.iter().any(Piece::says));
    let said: Vec<String> = lines.map(|line| line_text(line)).collect();
    (!said.is_empty()).then(|| said.join("; "))
}

/// The pieces of a line; a figure that no word leads up to stands behind a comma.
fn line_text(line: &[Piece]) -> String {
    const LEADING: [&str; 10] = ["at", "to", "over", "from", "gear", "than", "and", "of", "on", "·"];
    let mut said = String::new();
    // What is missing is the shop's to fill in, and no word for the customer.
    for piece in line.iter().filter(|piece| !matches!(piece, Piece::Absent(_) | Piece::Needed(_))) {
        let is_led = said.ends_with(':') || LEADING.contains(&said.rsplit(' ').next().unwrap_or_default());
        match piece {
            _ if said.is_empty() => {}
            Piece::Figure(_) if !is_led => said.push_str(", "),
            Piece::Verdict(_) => said.push_str("; "),
            _ => said.push(' '),
        }
        match piece {
            Piece::Figure(figure) => said.push_str(&figure.text()),
            Piece::Words(text) | Piece::Open(_, text) | Piece::Absent(text) | Piece::Needed(text) => said.push_str(text),
            Piece::Verdict(verdict) => said.push_str(&verdict.text),
        }
    }
    said
}
