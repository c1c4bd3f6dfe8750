//! The rows: the parts that fit, each with its tone, its orders and the test that tells it from the next; then every other tone.

use super::answer::Noise;
use super::names;
use super::read::Told;
use super::sentence::Asked;
use crate::gearing::hunting::Hunting;
use crate::job::document::Blank;
use crate::problem::capital;
use crate::questions::Source;
use crate::questions::bench::unusable;
use crate::questions::deciding::MOST;
use crate::sheet::{Cell, Figure, Piece, Row, Worked};
use crate::sound::by_ear::{LEAST_FIT, Suspect};
use crate::sound::tone::Times;
use crate::sound::{Origin, Tone};
use crate::units::{number, unit};

/// How many parts that fit are shown.
const MOST_SUSPECTS: usize = 4;
const MESH: &str = "f = z · n (any textbook of machine elements); its side tones stand one turn of a gear apart";
const ORDERS: &str = "elementary kinematics: unbalance once, a Hooke’s joint twice a turn of its shaft, firing once for each cylinder in two turns (service manuals and textbooks of machine diagnosis)";
const BEARING: &str = "pure rolling, outer ring standing: cage ½(1 − r), outer N/2 (1 − r), inner N/2 (1 + r), balls (1 − r²)/r, with r = d/D · cos α (any textbook of machine diagnosis); a worn bearing runs up to 2 % lower";
/// Source where the geometry is not known.
const ANY: &str = "0.4 strikes a turn for each ball of an outer race (a balancer’s manual, ± 20 %), nine balls assumed (common practice, no published source)";
/// The usual caution.
pub const CAUTION: &str = "Have a passenger listen, on a clear road within its limits. Never lie under a car whose wheels turn; on a lift or rolling road a qualified workshop tries it.";

/// The rows that decide.
pub fn deciding(source: Source<'_>) -> Vec<Row> {
    let told = Told::of(source.job);
    let Ok(noise) = Noise::of(source, &told) else { return all(source) };
    let fit = shown(&noise).into_iter().filter(|suspect| !noise.heard.says_something() || suspect.points >= LEAST_FIT);
    let suspects: Vec<String> = fit.take(MOST_SUSPECTS).map(row_key).collect();
    let mut rows = all(source);
    rows.retain(|row| suspects.contains(&row.key) || !["tone-", "recording-"].iter().any(|start| row.key.starts_with(start)));
    rows.truncate(MOST);
    rows
}

/// All rows.
pub fn rows(source: Source<'_>) -> Vec<Row> {
    all(source)
}

fn all(source: Source<'_>) -> Vec<Row> {
    let told = Told::of(source.job);
    let mut rows = unusable(told.problems.iter().take(2));
    let noise = match Noise::of(source, &told) {
        Ok(noise) => noise,
        Err(_) if source.job.bench.noise.is_blank() => return rows,
        Err(why) => {
            rows.push(Row::of_one("missing", "Still needed", Cell::needed(why)));
            return rows;
        }
    };
    let asked = Asked { source, told: &told, noise: &noise };
    rows.extend(asked.kept_rows());
    let suspects = shown(&noise);
    let ranked = noise.heard.says_something();
    for (at, suspect) in suspects.iter().enumerate() {
        let next = suspects.get(at + 1).filter(|_| ranked && at < MOST_SUSPECTS && suspect.points >= LEAST_FIT);
        rows.push(asked.row(suspect, next.copied(), ranked.then_some(at)));
    }
    if ranked {
        rows.push(Row::of_one("caution", "Take care", Cell::line([Piece::words(CAUTION)])));
    }
    rows
}

/// The tones that are shown: the release bearing where the clutch makes it speak, one of several that nothing tells apart.
fn shown<'a>(noise: &'a Noise<'_>) -> Vec<&'a Suspect> {
    let is_shown = |suspect: &&Suspect| suspect.tone.origin != Origin::ReleaseBearing || suspect.points > 0.0;
    noise.suspects.iter().filter(is_shown).collect()
}

fn row_key(suspect: &Suspect) -> String {
    format!("tone-{}", names::key(suspect.tone.origin).replace('_', "-"))
}

impl Asked<'_> {
    fn row(&self, suspect: &Suspect, next: Option<&Suspect>, place: Option<usize>) -> Row {
        let tone = &suspect.tone;
        let name = capital(&names::bare(self.source, self.told, self.noise, tone.origin));
        let fits = suspect.points >= LEAST_FIT;
        let label =
            place.filter(|place| *place < MOST_SUSPECTS && fits).map_or_else(|| name.clone(), |place| format!("{}. {name}", place + 1));
        let mut cell = Cell::line(self.figures(suspect));
        let about = match tone.origin {
            Origin::AnyBearing(_) => "geometry not given".to_owned(),
            _ => self.load(tone),
        };
        if !about.is_empty() {
            cell = cell.and([Piece::words(about)]);
        }
        if let Some(next) = next {
            cell = cell.and([Piece::words(format!("From the next: {}", self.tell(suspect, next)))]);
        } else {
            let sides = self.side_tones(tone);
            if !sides.is_empty() {
                cell = cell.and([Piece::words(sides)]);
            }
            cell = cell.and_maybe(teeth(suspect).map(Piece::words));
        }
        Row::of_one(row_key(suspect), label, cell)
    }

    fn figures(&self, suspect: &Suspect) -> Vec<Piece> {
        let tone = &suspect.tone;
        let key = names::key(tone.origin);
        let value = unit::HERTZ.number(suspect.frequency);
        let hertz = Figure::quantity(&format!("noise.{key}"), &suspect.frequency, &unit::HERTZ, names::decimals(value)).big();
        let (formula, source) = formula(tone);
        let times = tone.times.value();
        let turns = value / times;
        let worked = Worked::of(times, times_decimals(tone.times)).times(turns, 3);
        let mut pieces: Vec<Piece> = vec![hertz.worked(formula, worked, source).into()];
        if matches!(tone.origin, Origin::AnyBearing(_)) {
            pieces.insert(0, Piece::words("about"));
        }
        for (of, name, words) in
            [(Origin::Engine, "per_engine", "of the engine"), (Origin::Driveshaft, "per_driveshaft", "of the driveshaft")]
        {
            pieces.extend(self.order(suspect, &key, of, (name, words)).into_iter().flatten());
        }
        pieces
    }

    /// How often it repeats in one turn of engine or driveshaft.
    fn order(&self, suspect: &Suspect, key: &str, of: Origin, (name, words): (&str, &str)) -> Option<Vec<Piece>> {
        let other = self.noise.orders.tone(self.noise.heard.selected, of)?;
        let order = suspect.tone.per(other).filter(|_| suspect.tone.origin != of)?;
        let value = unit::HERTZ.number(suspect.frequency);
        let turns = unit::HERTZ.number(other.frequency(self.noise.moment));
        let shown = Figure::number(format!("noise.{key}.{name}"), order, 3).small();
        let worked = Worked::of(value, 2).in_unit("Hz").over(turns, 3).in_unit("turns a second");
        let before = if of == Origin::Engine { "order" } else { "and" };
        Some(vec![Piece::words(before), shown.worked("order = frequency ÷ turns a second", worked, ORDERS).into(), Piece::words(words)])
    }
}

/// How often the same two teeth of a pair meet, at its mesh frequency over the least common multiple of its counts; and what its assembly
/// phases make of it. Source: as [`Hunting`].
fn teeth(suspect: &Suspect) -> Option<String> {
    let mesh = suspect.tone.mesh?;
    let (hunting, hertz) = (Hunting::of(mesh), unit::HERTZ.number(suspect.frequency));
    let same = number::show(hertz / f64::from(hunting.meshes(mesh)), 2);
    let phases = hunting.common_factor;
    let phased = (phases > 1).then(|| format!("; {phases} assembly phases, {} Hz", number::show(hertz / f64::from(phases), 1)));
    Some(format!("the same two teeth meet {same} times a second{}", phased.unwrap_or_default()))
}

fn formula(tone: &Tone) -> (&'static str, &'static str) {
    match tone.origin {
        Origin::Pair(_) | Origin::Stage(_) => ("f = teeth of the driving gear × its turns a second", MESH),
        Origin::FinalDrive => ("f = teeth of the pinion × its turns a second", MESH),
        Origin::Bearing(..) => ("f = strikes a turn × turns of the shaft a second", BEARING),
        Origin::AnyBearing(_) => ("f = strikes a turn × turns of the shaft a second", ANY),
        Origin::Firing => ("f = half the cylinders × turns of the engine a second", ORDERS),
        _ => ("f = times a turn × turns a second", ORDERS),
    }
}

fn times_decimals(times: Times) -> usize {
    match times {
        Times::Counted(times) => usize::from(!times.is_integer()),
        Times::Measured(_) => 4,
        Times::About(_) => 1,
    }
}
