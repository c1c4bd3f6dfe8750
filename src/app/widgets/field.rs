//! A field: the raw text, the unit of a bare number, and beneath it what is wrong.

use leptos::prelude::*;

use crate::app::state::State;
use crate::app::suggestions::list_of;
use crate::job::{Field, InputProblem};

/// A text of the job, edited where it is read.
#[component]
pub fn TextField(
    /// Which text.
    field: Field,
    /// What it is called, where that is not the table's word.
    #[prop(optional, into)]
    label: String,
    /// Whether the label is seen; it is always there for those who listen.
    #[prop(optional)]
    visible_label: bool,
    /// A wider field, for sizes and names.
    #[prop(optional)]
    wide: bool,
    /// What stands in the blank field, where that is not the table's text.
    #[prop(optional)]
    blank_means: &'static str,
    /// What is wrong with it, where whoever shows it knows that better than the sheet.
    #[prop(optional)]
    problem: Option<Signal<Option<InputProblem>>>,
) -> impl IntoView {
    let state = State::here();
    let slug = field.slug();
    let label = if label.is_empty() { state.job.with_untracked(|job| field.label(job).into_owned()) } else { label };
    let number = field.is_number();
    let wrong = move || match problem {
        Some(own) => own.get().filter(|_| !state.is_blank(field)),
        None => state.wrong_with(field),
    };
    let problem = Memo::new(move |_| wrong().map(|problem| problem.sentence()));
    let taken = Memo::new(move |_| state.job.with(|job| job.taken(field)));
    let typed = Memo::new(move |_| state.job.with(|job| (job.text(field).unwrap_or_default().to_owned(), field.unit(job))));
    let blank =
        Memo::new(move |_| if blank_means.is_empty() { state.job.with(|job| field.placeholder(job)) } else { blank_means.to_owned() });
    let class = match (number, wide, field.is_words()) {
        (_, _, true) => "field field--words",
        (true, _, _) => "field field--number",
        (_, true, _) => "field field--wide",
        _ => "field",
    };
    let said = format!("{slug}-problem");
    let described = said.clone();
    let spoken = label.clone();
    view! {
        <span class=class>
            {visible_label.then(|| view! { <label for=slug.clone()>{move || state.say(&label)}</label> })}
            <input class="field__input" id=slug.clone() type="text" inputmode=if number { "decimal" } else { "text" }
                placeholder=move || blank.get() list=list_of(field) autocomplete="off" autocapitalize="off" spellcheck="false"
                aria-label=(!visible_label).then_some(move || state.say(&spoken))
                aria-invalid=move || problem.with(Option::is_some).to_string()
                aria-describedby=move || problem.with(Option::is_some).then(|| described.clone())
                prop:value=move || typed.with(|(text, _)| text.clone())
                on:focus=super::select_text
                on:input=move |event| state.type_text(field, event_target_value(&event))
                on:blur=move |_| state.leave_field()/>
            <span class="field__unit">{move || typed.with(|(_, unit)| *unit)}</span>
            {move || taken.get().map(|taken| view! { <span class="field__taken">{taken}</span> })}
            {move || problem.get().map(|sentence| view! { <span class="field__problem" id=said.clone()>{state.say(&sentence)}</span> })}
        </span>
    }
}

/// A text of several lines.
#[component]
pub fn TextArea(
    /// Which text.
    field: Field,
    /// What it is called, where that is not the table's word.
    #[prop(optional, into)]
    label: String,
) -> impl IntoView {
    let state = State::here();
    let slug = field.slug();
    let label = if label.is_empty() { state.job.with_untracked(|job| field.label(job).into_owned()) } else { label };
    let problem = Memo::new(move |_| state.problem_of(field).map(|problem| problem.sentence()));
    let said = format!("{slug}-problem");
    let described = said.clone();
    view! {
        <div class="area">
            <label for=slug.clone()>{move || state.say(&label)}</label>
            <textarea class="area__input" id=slug rows="7" spellcheck="false" autocomplete="off"
                placeholder=move || state.job.with(|job| field.placeholder(job))
                aria-invalid=move || problem.with(Option::is_some).to_string()
                aria-describedby=move || problem.with(Option::is_some).then(|| described.clone())
                prop:value=move || state.job.with(|job| job.text(field).unwrap_or_default().to_owned())
                on:input=move |event| state.type_text(field, event_target_value(&event))
                on:blur=move |_| state.leave_field()></textarea>
            {move || problem.get().map(|sentence| view! { <span class="field__problem" id=said.clone()>{state.say(&sentence)}</span> })}
        </div>
    }
}
