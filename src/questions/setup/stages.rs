//! The extra stages of a setup, read and checked: what each is, its ratio, and in which gears it can be switched.

use super::{gears_of, keep, keep_or};
use crate::gearing::stage::{MOST_SWITCHED, Switch, UsedIn};
use crate::gearing::{Ratio, Stage, StageKind, read};
use crate::job::choice::Picked;
use crate::job::choice::UnknownOption;
use crate::job::{self, InputProblem, SetupField};
use crate::problem::Problem;
use crate::questions::gap::Gap;

/// Every stage; nothing where one of them has no ratio.
pub(super) fn read(setup: &job::Setup, problems: &mut Vec<InputProblem>) -> Option<Vec<Stage>> {
    let stages: Vec<Option<Stage>> = setup.stages.iter().enumerate().map(|(at, typed)| stage(setup, (at, typed), problems)).collect();
    let stages = stages.into_iter().collect::<Option<Vec<Stage>>>()?;
    let switched = stages.iter().enumerate().filter(|(_, stage)| stage.changes());
    for (at, _) in switched.skip(MOST_SWITCHED) {
        problems.push(Problem::caution((setup.id, SetupField::StageGears(at)).into(), &Gap::TooManySwitched(MOST_SWITCHED)));
    }
    Some(stages)
}

fn stage(setup: &job::Setup, (at, typed): (usize, &job::Stage), problems: &mut Vec<InputProblem>) -> Option<Stage> {
    let kind = kind(setup, (at, typed), problems);
    let drive = keep(problems, (setup.id, SetupField::Stage(at)), read::drive(&typed.drive));
    let rest = rest(setup, (at, typed), problems);
    let switch = used_in(setup, (at, typed), kind, problems).map(|used_in| Switch { rest, used_in });
    if switch.is_none() && !typed.rest.trim().is_empty() {
        problems.push(Problem::caution((setup.id, SetupField::StageRest(at)).into(), &Gap::RestOfFixedStage));
    }
    Some(Stage { kind, place: typed.place, drive: drive?, switch })
}

/// What it is; a word of a file that is no option is said, and the stage is taken as one that is always in.
fn kind(setup: &job::Setup, (at, typed): (usize, &job::Stage), problems: &mut Vec<InputProblem>) -> Option<StageKind> {
    if let Picked::Unknown(word) = typed.kind.picked() {
        let why = UnknownOption { word: word.to_owned(), label: "what the stage is" };
        problems.push(Problem::defaulted((setup.id, SetupField::Stage(at)).into(), &why, "an extra stage is taken"));
    }
    typed.kind.value()
}

/// The ratio at rest; straight through where nothing is typed.
fn rest(setup: &job::Setup, (at, typed): (usize, &job::Stage), problems: &mut Vec<InputProblem>) -> Ratio {
    let straight = Ratio::from_integer(1);
    if typed.rest.trim().is_empty() {
        return straight;
    }
    let rest = keep_or(problems, (setup.id, SetupField::StageRest(at)), read::drive(&typed.rest), "straight through is taken");
    rest.map_or(straight, crate::gearing::FinalDrive::ratio)
}

/// The gears it can be put in; none where it is always in.
fn used_in(
    setup: &job::Setup,
    (at, typed): (usize, &job::Stage),
    kind: Option<StageKind>,
    problems: &mut Vec<InputProblem>,
) -> Option<UsedIn> {
    let text = typed.gears.trim();
    match text.to_ascii_lowercase().as_str() {
        "" => return kind.is_some_and(StageKind::is_switched).then_some(UsedIn::ALL),
        "all" => return Some(UsedIn::ALL),
        "always" => return None,
        _ => {}
    }
    let why = |text, gears| Gap::NotSwitchedIn { text, gears };
    Some(UsedIn::gears(&gears_of(setup, SetupField::StageGears(at), text, problems, why)))
}
