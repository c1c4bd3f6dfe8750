//! What is typed or chosen for all setups in a question's head, and the groups that open below it.

use leptos::prelude::*;

use super::fold::Fold;
use crate::app::widgets::{SelectField, TextArea, TextField};
use crate::job::{Choice, Field, JobField, PullField};
use crate::questions::{Group, Input};

/// The inputs, in order.
pub(super) fn view(inputs: &'static [Input]) -> impl IntoView {
    inputs.iter().map(input).collect_view()
}

fn input(input: &Input) -> AnyView {
    match *input {
        Input::Text(JobField::Pull(PullField::Rows), label) => {
            view! { <TextArea field=Field::Job(JobField::Pull(PullField::Rows)) label/> }.into_any()
        }
        Input::Text(field, label) => view! { <TextField field=Field::Job(field) label visible_label=true number=true/> }.into_any(),
        Input::Choice(choice, label) => view! { <SelectField choice=Choice::Job(choice) label visible_label=true/> }.into_any(),
    }
}

/// A group under its title.
pub(super) fn group(question: &'static str, group: &'static Group) -> impl IntoView {
    view! {
        <Fold question fold=group.title title=group.title about=Signal::derive(String::new)
            inside=move || view! { <div class="inputs">{view(group.inputs)}</div> }.into_any()/>
    }
}
