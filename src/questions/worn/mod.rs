//! Worn or usable: how far each part on the bench is worn, and what is renewed with it.

pub mod pictures;
pub mod read;
pub mod rests;
pub mod rows;
pub mod sentence;

use super::checklists::Steps;
use super::{Drawn, Group, Input, Place, Question, boxed};
use crate::job::{BenchField, BuildField, FaultsField, JobField};

/// The parts, with what was measured.
const MEASURED: Steps = Steps {
    field: JobField::Bench(BenchField::Faults(FaultsField::Worn)),
    by: JobField::Bench(BenchField::Build(BuildField::By)),
    begin: &[],
    list: read::list,
    answers: &[],
    judged: rows::judged,
};

macro_rules! drawn {
    ($id:literal, $tab:literal, $part:ident) => {
        Drawn::new($id, $tab, |source, _| boxed(Some(pictures::part(source, pictures::Part::$part))))
    };
}

/// The question.
pub const QUESTION: Question = Question {
    id: "worn",
    place: Place::Bench,
    title: "Worn or usable?",
    ask: "Does this part go in again, is it watched, or is it renewed, and what with it?",
    groups: &[Group { title: "What was measured", inputs: &[Input::Steps(MEASURED)], taken: None }],
    station: sentence::station,
    answer: sentence::answer,
    deciding: rows::deciding,
    rows: rows::rows,
    rests: rests::rests,
    pictures: &[
        drawn!("worn-tip", "Tip", TipLand),
        drawn!("worn-pits", "Pits", Pits),
        drawn!("worn-taper", "Taper", Taper),
        drawn!("worn-corner", "Corner", Corner),
        drawn!("worn-ridge", "Ridge", Ridge),
        drawn!("worn-ring", "Ring", RingGap),
        drawn!("worn-fork", "Fork", Fork),
    ],
    ..Question::BARE
};
