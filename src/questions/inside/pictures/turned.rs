//! The gear train turned by hand: how its parts turn together, and how often the same two teeth of a pair meet.

use num_integer::Integer;

use super::{drawn, shaft_of, train_with_parts};
use crate::chart::train::Train;
use crate::chart::train::turned::{Marked, Turned};
use crate::gearing::Layout;
use crate::gearing::hunting::Hunting;
use crate::gearing::part::Part;
use crate::gearing::speeds::Turning;
use crate::gearing::teeth::{Mesh, Ratio, decimal};
use crate::questions::Source;

/// The train of the setup that is drawn, at the start of its first turn; none where its gears are not all counted.
pub fn turned(source: Source<'_>, focus: Option<usize>) -> Option<Turned> {
    let analysis = source.setups.get(drawn(source, focus))?;
    let turning = analysis.inside().turning.as_ref()?;
    let (train, parts) = train_with_parts(source, focus);
    let rate = |part: Part| turning.part(part).map(|turns| turns.speed.of_input);
    let wheels = parts.iter().map(|part| rate(*part).map_or(0.0, decimal)).collect();
    let say = |part: Part| source.reader.words.say(&name(part, analysis.setup.layout));
    let (marked, every): (Vec<Marked>, Vec<Ratio>) = marked(&train, &parts, turning, &say).unzip();
    let of_shaft = |at: usize| {
        let is_it = |part: &Part| matches!(part, Part::Shaft(axis) if shaft_of(*axis) == at);
        let turns = turning.parts.iter().find(|turns| is_it(&turns.part))?;
        train.shafts.get(at).filter(|shaft| !shaft.name.is_empty()).map(|_| decimal(turns.speed.of_input))
    };
    let shafts = (0..train.shafts.len()).map(of_shaft).collect();
    let all_meet = every.into_iter().try_fold(Ratio::from_integer(0), common_multiple).map(decimal);
    (!train.wheels.is_empty()).then_some(Turned { train, wheels, shafts, marked, all_meet, turns: 0.0 })
}

/// The pairs that carry the power, and after how many turns of the input the same two teeth of each meet again.
fn marked<'a>(
    train: &'a Train,
    parts: &'a [Part],
    turning: &'a Turning,
    name: &'a dyn Fn(Part) -> String,
) -> impl Iterator<Item = (Marked, Ratio)> + 'a {
    train.meshes.iter().filter_map(move |(driver, driven)| {
        let carries = |at: &usize| train.wheels.get(*at).is_some_and(|wheel| wheel.is_on_path);
        let part = parts.get(*driver)?;
        let teeth = |at: &usize| turning.part(*parts.get(*at)?)?.teeth;
        let hunting = Hunting::of(Mesh { driver: teeth(driver)?, driven: teeth(driven)? });
        let rate = turning.part(*part)?.speed.of_input;
        if !carries(driver) || !carries(driven) || rate == Ratio::from_integer(0) {
            return None;
        }
        let every = Ratio::from_integer(hunting.driver_turns.into()) / rate;
        let every = if every < Ratio::from_integer(0) { -every } else { every };
        let marked = Marked {
            wheels: (*driver, *driven),
            name: name(*part),
            every: decimal(every),
            driver_turns: hunting.driver_turns,
            common_factor: hunting.common_factor.into(),
        };
        Some((marked, every))
    })
}

/// The least number that is a whole multiple of both; nothing of it where it is beyond counting. 0 stands for no number yet.
fn common_multiple(one: Ratio, other: Ratio) -> Option<Ratio> {
    if *one.numer() == 0 {
        return Some(other);
    }
    let numerator = (one.numer() / one.numer().gcd(other.numer())).checked_mul(*other.numer())?;
    Some(Ratio::new(numerator, one.denom().gcd(other.denom())))
}

fn name(part: Part, layout: Layout) -> String {
    match part {
        Part::Driver(gear) | Part::Driven(gear) => gear.to_string(),
        Part::ConstantDriver | Part::ConstantDriven => layout.constant_pair().into(),
        _ => "reverse".into(),
    }
}
