//! What is asked of the search, as typed in the job, and what is wrong with it.

use leptos::prelude::*;

use crate::app::state::State;
use crate::finder::Given;
use crate::finder::design::Brief;
use crate::job::{DesignText, Field, InputProblem, WishText};
use crate::questions::find::Asked;

/// What is asked; shared by all that stands in the search.
#[derive(Clone, Copy)]
pub(super) struct Wished {
    /// What the job gives to the finder, and what is asked of it.
    pub(super) asked: Memo<(Given, Asked)>,
    /// What a gear set to be designed must keep to, or what is wrong with it.
    pub(super) brief: Memo<Result<Brief, Vec<InputProblem>>>,
}

impl Wished {
    /// Follows the job.
    pub(super) fn follow(state: State) -> Self {
        let asked = Memo::new(move |_| state.with_source(Asked::of_source));
        Self { asked, brief: Memo::new(move |_| state.job.with(|job| Brief::read(&job.wishes.design))) }
    }

    /// That of the search this is called in.
    pub(super) fn here() -> Self {
        expect_context()
    }

    /// What is wrong with a text of a wish.
    pub(super) fn problem_of(self, row: usize, text: WishText) -> Signal<Option<InputProblem>> {
        Signal::derive(move || self.asked.with(|(_, asked)| asked.problem_at(Field::Wish(row, text)).cloned()))
    }

    /// What is wrong with a text of the gear set to be designed; of several problems as grave, the first.
    pub(super) fn problem_of_design(self, text: DesignText) -> Signal<Option<InputProblem>> {
        let gravest = move |problems: &Vec<InputProblem>| {
            let field = Field::Design(text).into();
            problems.iter().rev().filter(|problem| problem.field == field).max_by_key(|problem| problem.severity).cloned()
        };
        Signal::derive(move || self.brief.with(|brief| brief.as_ref().err().and_then(gravest)))
    }
}
