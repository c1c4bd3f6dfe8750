//! Steps that are ticked with a thumb: a large button a step, its readings typed beside it, a note below; the list itself as text.
//! A step that is answered has a button for each answer instead.

use leptos::prelude::*;

use super::field::TextArea;
use crate::app::state::State;
use crate::app::{device, parts};
use crate::checklist::edit::{self, Part};
use crate::checklist::{Line, Step, lines};
use crate::job::photographs::Subject;
use crate::job::{Field, listing};
use crate::questions::{Judged, Steps, Template};
use crate::sheet::Tone;

/// A list of steps.
#[component]
pub fn Checklist(
    /// Where it is kept, and what it can begin with.
    steps: Steps,
) -> impl IntoView {
    let state = State::here();
    let field = Field::Job(steps.field);
    let list = Memo::new(move |_| state.with_source(steps.list));
    let all = Memo::new(move |_| list.with(|list| lines(list)));
    let judged = Memo::new(move |_| state.with_source(steps.judged));
    let many = Memo::new(move |_| all.with(Vec::len));
    let is_made = steps.begin.is_empty();
    let is_blank = Memo::new(move |_| list.with(|list| list.trim().is_empty()));
    let is_text = RwSignal::new(false);
    let turn = move |_| {
        if !is_text.get_untracked() {
            keep_photographs(state, steps);
        }
        is_text.update(|is_open| *is_open = !*is_open);
    };
    let edit = move || if is_text.get() { "Close the list as text" } else { "Edit the list as text" };
    view! {
        <Show when=move || is_blank.get() && !is_made>
            <div class="steps__begin" role="group" aria-label="Lists to begin with">
                <span>"Begin with the list for"</span>
                <span class="words">"Common practice. Where the manual of your box says otherwise, it rules."</span>
                {steps.begin.iter().map(move |template| begin(state, field, template)).collect_view()}
            </div>
        </Show>
        <ol class="steps" hidden=move || is_blank.get()>
            <For each=move || 0..many.get() key=|at| *at children=move |at| line(steps, at, all, judged)/>
        </ol>
        {(!is_made).then(|| view! {
            <button type="button" class="btn btn--small" aria-expanded=move || is_text.get().to_string() on:click=turn>{edit}</button>
        })}
        {move || is_text.get().then(|| view! { <TextArea field/> })}
    }
}

/// Has steps keep their photographs, for their words may change now.
fn keep_photographs(state: State, steps: Steps) {
    let Some(photographs) = parts::PHOTOGRAPHS.now() else { return };
    let of_job = (photographs.of_steps)(&state.desk.head.with_untracked(|head| head.id.clone()));
    let list = untrack(|| state.with_source(steps.list));
    let kept = edit::keep_photographs(&list, |what| of_job.iter().any(|photographed| photographed == what));
    if kept != list {
        change(state, steps, |_| kept, false);
    }
}

fn begin(state: State, field: Field, template: &'static Template) -> impl IntoView {
    let take = move |_| {
        let steps = state.say(template.steps);
        state.change(|job| job.type_text(field, steps));
    };
    view! { <button type="button" class="btn" on:click=take>{move || state.say(template.name)}</button> }
}

/// A line; of what kind it is changes only while the list is edited as text.
fn line(steps: Steps, at: usize, all: Memo<Vec<Line>>, judged: Memo<Vec<Judged>>) -> impl IntoView {
    let state = State::here();
    let heading = Memo::new(move |_| all.with(|all| if let Some(Line::Heading(text)) = all.get(at) { Some(text.clone()) } else { None }));
    let step = Memo::new(move |_| all.with(|all| if let Some(Line::Step(step)) = all.get(at) { Some(step.clone()) } else { None }));
    let judged = Memo::new(move |_| judged.with(|all| all.get(at).cloned().unwrap_or_default()));
    let is_step = Memo::new(move |_| step.with(Option::is_some));
    view! {
        {move || heading.get().map(|heading| view! { <li class="steps__heading">{state.say(&heading)}</li> })}
        {move || is_step.get().then(|| if steps.answers.is_empty() { one_step(steps, at, step, judged).into_any() } else { asked(steps, at, step, judged).into_any() })}
    }
}

/// A step that is answered: what is asked, its answers, and what the one given means.
fn asked(steps: Steps, at: usize, step: Memo<Option<Step>>, judged: Memo<Judged>) -> impl IntoView {
    let state = State::here();
    let what = Memo::new(move |_| step.with(|step| step.as_ref().map(|step| step.what.trim().to_owned()).unwrap_or_default()));
    let given = Memo::new(move |_| step.with(|step| step.as_ref().and_then(Step::last_reading).map(str::to_owned)));
    let answer = move |answer: &'static str| {
        let press = move |_| {
            let by = state.job.with_untracked(|job| job.text(Field::Job(steps.by)).unwrap_or_default().to_owned());
            let today = listing::when(&device::now(), "");
            change(state, steps, |list| edit::answer(list, at, answer, &by, &today), false);
        };
        let is_it = move || given.with(|given| given.as_deref() == Some(answer)).to_string();
        view! { <button type="button" class="tick" aria-pressed=is_it on:click=press>{answer}</button> }
    };
    view! {
        <li class="step step--asked">
            <span class="step__what">{move || state.say(&what.get())}</span>
            <div class="step__answers" role="group" aria-label=move || state.say(&what.get())>
                {steps.answers.iter().copied().map(answer).collect_view()}
                <span class="step__means" role="status">{move || judged.with(|judged| state.say(&judged.wanted))}</span>
            </div>
        </li>
    }
}

fn one_step(steps: Steps, at: usize, step: Memo<Option<Step>>, judged: Memo<Judged>) -> impl IntoView {
    let state = State::here();
    let of = move |take: fn(&Step) -> String| Memo::new(move |_| step.with(|step| step.as_ref().map(take).unwrap_or_default()));
    let what = of(|step| step.what.trim().to_owned());
    let who = of(|step| [step.by.trim(), step.on.trim()].into_iter().filter(|text| !text.is_empty()).collect::<Vec<_>>().join(", "));
    let is_done = Memo::new(move |_| step.with(|step| step.as_ref().is_some_and(|step| step.is_done)));
    let is_read = Memo::new(move |_| step.with(|step| step.as_ref().is_some_and(|step| step.is_read)));
    let is_noted = RwSignal::new(step.with_untracked(|step| step.as_ref().is_some_and(|step| !step.note.is_empty())));
    let photographed = of(|step| step.photographed().to_owned());
    let subject = Memo::new(move |_| {
        let what = photographed.get();
        (!what.is_empty()).then(|| Subject::Step { job: state.desk.head.with(|head| head.id.clone()), what })
    });
    let tick = move |_| {
        let by = state.job.with_untracked(|job| job.text(Field::Job(steps.by)).unwrap_or_default().to_owned());
        let today = listing::when(&device::now(), "");
        change(state, steps, |list| edit::tick(list, at, &by, &today), false);
    };
    view! {
        <li class="step" class:step--done=move || is_done.get()>
            <button type="button" class="step__tick" role="checkbox" aria-checked=move || is_done.get().to_string() on:click=tick>
                <span class="step__box" aria-hidden="true"></span>
                <span class="step__what">{move || state.say(&what.get())}</span>
            </button>
            <span class="step__who">{move || who.get()}</span>
            <button type="button" class="btn btn--bare btn--small" aria-expanded=move || is_noted.get().to_string()
                aria-label=move || format!("Note, {}", what.get()) on:click=move |_| is_noted.update(|is_open| *is_open = !*is_open)>"Note"</button>
            {move || if is_read.get() { readings(steps, at, step, judged).into_any() } else { beside(judged).into_any() }}
            {move || is_noted.get().then(|| text(steps, at, step, Part::Note, "note"))}
            {parts::PHOTOGRAPHS.add(move |photographs| (photographs.strip)(subject.into(), what.into()))}
        </li>
    }
}

/// The first reading, a second one, and how the last stands.
fn readings(steps: Steps, at: usize, step: Memo<Option<Step>>, judged: Memo<Judged>) -> impl IntoView {
    let state = State::here();
    let wanted = move || judged.with(|judged| if judged.wanted.is_empty() { String::new() } else { format!("wanted {}", judged.wanted) });
    view! {
        <div class="step__readings">
            {text(steps, at, step, Part::Reading(0), "got")}
            {text(steps, at, step, Part::Reading(1), "again")}
            <span class="words">{move || state.say(&wanted())}</span>
            <span role="status">{move || verdict(state, judged)}</span>
        </div>
    }
}

/// What is said of a step at which nothing is read; nothing where that is nothing.
fn beside(judged: Memo<Judged>) -> impl IntoView {
    let state = State::here();
    move || {
        judged.with(|judged| !judged.wanted.is_empty() || judged.verdict.is_some()).then(|| {
            view! {
                <div class="step__readings">
                    <span class="words">{judged.with(|judged| state.say(&judged.wanted))}</span>
                    <span role="status">{verdict(state, judged)}</span>
                </div>
            }
        })
    }
}

fn verdict(state: State, judged: Memo<Judged>) -> Option<impl IntoView> {
    let verdict = judged.with(|judged| judged.verdict.clone())?;
    let class = match verdict.tone {
        Tone::Good => "verdict verdict--good",
        Tone::Caution | Tone::Driving => "verdict verdict--caution",
        Tone::Stop => "verdict verdict--stop",
    };
    Some(view! { <span class=class>{state.say(&verdict.text)}</span> })
}

/// A text of a step.
fn text(steps: Steps, at: usize, step: Memo<Option<Step>>, part: Part, name: &'static str) -> impl IntoView {
    let state = State::here();
    let is_reading = matches!(part, Part::Reading(_));
    let typed = Memo::new(move |_| step.with(|step| step.as_ref().map(|step| part.of(step).to_owned()).unwrap_or_default()));
    let put = move |event| {
        let text = event_target_value(&event);
        change(state, steps, |list| edit::put(list, at, part, &text), true);
    };
    view! {
        <label class=if is_reading { "step__text" } else { "step__text step__text--note" }>
            <span>{name}</span>
            <input class="field__input" type="text" inputmode=if is_reading { "decimal" } else { "text" } autocomplete="off" autocapitalize="off" spellcheck="false"
                prop:value=move || typed.get() on:focus=super::select_text on:input=put on:blur=move |_| state.leave_field()/>
        </label>
    }
}

/// Changes the list; what is typed is one step of undo until its field is left.
fn change(state: State, steps: Steps, change: impl FnOnce(&str) -> String, is_typed: bool) {
    let field = Field::Job(steps.field);
    let list = change(&untrack(|| state.with_source(steps.list)));
    if is_typed {
        state.type_text(field, list);
    } else {
        state.change(|job| job.type_text(field, list));
    }
}
