//! What is typed or chosen for all setups in a question's head, and the groups that open below it.

use leptos::prelude::*;

use super::fold::Fold;
use crate::app::parts;
use crate::app::state::State;
use crate::app::widgets::{PartField, SelectField, TextArea, TextField};
use crate::job::{Choice, Field, JobField, PullField};
use crate::questions::{self, Group, Input, Place, Question};

/// The inputs, in order. A line of text is in the program from the first.
pub(super) fn view(inputs: &'static [Input]) -> impl IntoView {
    let input = |input: &'static Input| match *input {
        Input::Text(field, label) if field != JobField::Pull(PullField::Rows) => {
            view! { <TextField field=Field::Job(field) label visible_label=true number=true/> }.into_any()
        }
        _ => parts::ANSWERS.add(move |answers| (answers.input)(input)).into_any(),
    };
    inputs.iter().map(input).collect_view()
}

/// Whatever is more than a line of text.
pub(in crate::app) fn other(input: &Input) -> AnyView {
    match *input {
        Input::Text(field, label) => view! { <TextArea field=Field::Job(field) label/> }.into_any(),
        Input::Part(field, kind, label) => view! { <PartField field kind label/> }.into_any(),
        Input::Choice(choice, label) => view! { <SelectField choice=Choice::Job(choice) label visible_label=true/> }.into_any(),
    }
}

/// The groups of the question of an id: folded where setups are compared, in full beside the answer at the bench.
pub(in crate::app) fn groups(id: &str) -> AnyView {
    questions::of_id(id).map(groups_of).into_any()
}

fn groups_of(question: &'static Question) -> AnyView {
    if question.place == Place::Bench {
        return view! { <div class="bench-inputs">{question.groups.iter().map(in_full).collect_view()}</div> }.into_any();
    }
    let fold = |group: &'static Group| {
        view! {
            <Fold question=question.id fold=group.title title=group.title about=Signal::derive(String::new)
                inside=move || view! { <div class="inputs">{view(group.inputs)}</div> }.into_any()/>
        }
    };
    question.groups.iter().map(fold).collect_view().into_any()
}

fn in_full(group: &'static Group) -> impl IntoView {
    let state = State::here();
    view! {
        <div class="bench-inputs__group" role="group" aria-label=move || state.say(group.title)>
            <h3>{move || state.say(group.title)}</h3>
            <div class="bench-inputs__list">{view(group.inputs)}</div>
        </div>
    }
}
