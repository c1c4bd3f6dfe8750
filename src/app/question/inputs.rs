//! What is typed or chosen for all setups in a question's head, and the groups that open below it.

use leptos::prelude::*;

use super::fold::Fold;
use super::own_rows;
use crate::app::parts;
use crate::app::state::State;
use crate::app::widgets::{Checklist, PartField, SelectField, TextArea, TextField, TickGroups};
use crate::job::inputs::Kind;
use crate::job::{Choice, Field};
use crate::questions::{self, Group, Input, Place, Question};

/// The inputs, in order. A line of text is in the program from the first.
pub(super) fn view(inputs: &'static [Input]) -> impl IntoView {
    let input = |input: &'static Input| match *input {
        Input::Text(field) if !matches!(field.row().kind, Kind::Lines | Kind::Part(_)) => {
            view! { <TextField field=Field::Job(field) visible_label=true/> }.into_any()
        }
        _ => parts::ANSWERS.add(move |answers| (answers.input)(*input)).into_any(),
    };
    inputs.iter().map(input).collect_view()
}

/// Whatever is more than a line of text.
pub(in crate::app) fn other(input: Input) -> AnyView {
    match input {
        Input::Text(field) => text(Field::Job(field)),
        Input::Ticks(ticks) => view! { <TickGroups ticks/> }.into_any(),
        Input::Steps(steps) => view! { <Checklist steps/> }.into_any(),
        Input::Recording => parts::LISTEN.show(|listen| (listen.controls)()).into_any(),
        Input::OwnRows => own_rows::view().into_any(),
        Input::TeethPicture => parts::COUNT.show(|count| count()).into_any(),
        Input::Choice(choice) => view! { <SelectField choice=Choice::Job(choice) visible_label=true/> }.into_any(),
    }
}

fn text(field: Field) -> AnyView {
    match field.row().kind {
        Kind::Lines => view! { <TextArea field/> }.into_any(),
        Kind::Part(kind) => view! { <PartField field kind/> }.into_any(),
        _ => ().into_any(),
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
                inside=move || view! { <div class="inputs">{view(group.inputs)}</div>{taken(group)} }.into_any()/>
        }
    };
    if question.groups.is_empty() {
        return ().into_any();
    }
    view! { <div class="fold-row">{question.groups.iter().map(fold).collect_view()}</div> }.into_any()
}

/// What a group's inputs were taken for.
fn taken(group: &'static Group) -> impl IntoView {
    let state = State::here();
    group.taken.map(|taken| {
        let said = Memo::new(move |_| state.with_source(taken));
        view! { <p class="inputs__taken">{move || said.with(|said| state.say(said))}</p> }
    })
}

fn in_full(group: &'static Group) -> impl IntoView {
    let state = State::here();
    view! {
        <div class="bench-inputs__group" role="group" aria-label=move || state.say(group.title)>
            <h3>{move || state.say(group.title)}</h3>
            <div class="bench-inputs__list">{view(group.inputs)}</div>
            {taken(group)}
        </div>
    }
}
