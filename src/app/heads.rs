//! The heads: the setups being compared, each edited where it is read; in view while the question scrolls.

use leptos::prelude::*;

use super::parts;
use super::state::State;
use super::turns;
use super::widgets::{Menu, TextField};
use crate::job::edit::Toward;
use crate::job::{Field, Job, JobField, MOST_SETUPS, SetupField, SetupId};

/// The heads.
#[component]
pub fn Heads() -> impl IntoView {
    let state = State::here();
    let class = move || format!("heads heads--{}", state.setup_ids().len());
    view! {
        <div class=class id="heads">
            <CarHead/>
            <For each=move || state.setup_ids() key=|id| *id children=|id| turns::piece(move || view! { <Head id/> }.into_any())/>
        </div>
    }
}

/// The car all setups go into, and the way to one more setup.
#[component]
fn CarHead() -> impl IntoView {
    let state = State::here();
    let car = Field::Job(JobField::Car);
    let full = move || state.setup_ids().len() >= MOST_SETUPS;
    let add = move |_| {
        let last = state.setup_ids().last().copied();
        state.change(|job| {
            let _ = match last {
                Some(id) => job.copy_setup(id),
                None => job.add_setup(),
            };
        });
    };
    view! {
        <div class="heads__car">
            <span class="heads__label">"The car"</span>" "<span class="heads__about">{move || state.say(&about(state))}</span>
            {name_field(state, car, "car-name", "heads__name", Signal::derive(|| "The car".to_owned()))}
            <button type="button" class="btn btn--small" id="add-setup" disabled=full on:click=add>"Add a setup"</button>
        </div>
    }
}

/// A name that wraps instead of being cut; it has one line however it is typed.
fn name_field(state: State, field: Field, id: &str, class: &'static str, label: Signal<String>) -> impl IntoView + use<> {
    let enter = |event: web_sys::KeyboardEvent| {
        if event.key() == "Enter" {
            event.prevent_default();
        }
    };
    let typed = move |event| state.type_text(field, event_target_value(&event).replace(['\r', '\n'], " "));
    view! {
        <textarea class=class id=id.to_owned() rows="1" dir="auto" autocomplete="off" spellcheck="false" aria-label=move || label.get()
            prop:value=move || state.job.with(|job| job.text(field).unwrap_or_default().to_owned())
            on:keydown=enter on:input=typed on:blur=move |_| state.leave_field()></textarea>
    }
}

/// `2,600 lb`: what of the car is known.
fn about(state: State) -> String {
    state.job.with(|job| {
        let mass = &job.pull.mass;
        if mass.is_blank() {
            return String::new();
        }
        let bare = !mass.text.chars().any(char::is_alphabetic);
        let unit = if mass.units == crate::units::System::Inch { " lb" } else { " kg" };
        format!("{}{}", mass.text.trim(), if bare { unit } else { "" })
    })
}

#[component]
fn Head(id: SetupId) -> impl IntoView {
    let state = State::here();
    let letter = move || Job::letter(state.column_of(id));
    let name = Field::Setup(id, SetupField::Name);
    view! {
        <div class="head" role="group" aria-label=move || format!("Setup {}", letter())>
            <div class="head__top">
                <BringForward id/>
                {name_field(state, name, &name.slug(), "head__name", Signal::derive(move || format!("Name of setup {}", letter())))}
                <Menu words="⋯" label=Signal::derive(move || format!("Copy, move or remove setup {}", letter())) id=format!("s{}-more", id.0)
                    class="head__more" open=move |open| parts::DESK.show(move |desk| (desk.setup)(state, id, open)).into_any()/>
            </div>
            <Parts id/>
        </div>
    }
}

#[component]
fn BringForward(id: SetupId) -> impl IntoView {
    let state = State::here();
    let letter = move || Job::letter(state.column_of(id));
    let forward = move || state.view.focus.get() == Some(id);
    let press = move |_| state.view.focus.update(|focus| *focus = if *focus == Some(id) { None } else { Some(id) });
    view! {
        <button type="button" class="head__bring" aria-pressed=move || forward().to_string() on:click=press
            aria-label=move || format!("Bring setup {} forward in the pictures", letter())>
            <span class=move || format!("badge badge--{}", letter().to_ascii_lowercase())>{move || letter().to_string()}</span>
        </button>
    }
}

/// Gear set, axle and tyre.
#[component]
fn Parts(id: SetupId) -> impl IntoView {
    let state = State::here();
    let letter = move || Job::letter(state.column_of(id));
    let set = move || state.job.with(|job| job.setup(id).map(|setup| gearbox_name(&setup.gearbox)));
    let fit = Memo::new(move |_| {
        let answers = parts::ANSWERS.get()?;
        state.with_source(|source| (answers.case)(source, state.column_of(id)))
    });
    // Its line is kept free until it can be said, so that nothing below moves then.
    let waits = move || parts::ANSWERS.get().is_none() && state.column_of(id) > 0;
    let said = move || fit.get().or_else(|| waits().then(|| "…".to_owned()));
    let case = move || said().map(|said| view! { " "<span class="head__case">{said}</span> });
    let pick = move |_| state.view.picking.update(|picking| *picking = if *picking == Some(id) { None } else { Some(id) });
    view! {
        <div class="head__parts">
            <button type="button" class="head__pick" id=format!("s{}-gearbox", id.0) aria-expanded=move || (state.view.picking.get() == Some(id)).to_string()
                aria-label=move || format!("Gear set of setup {}: {}{}", letter(), set().unwrap_or_default(), fit.get().map_or_else(String::new, |fit| format!(", {fit}"))) on:click=pick>
                {set}{case}
            </button>
            <TextField field=Field::Setup(id, SetupField::FinalDrive) label="Ring and pinion: teeth or ratio" blank_means="axle"/>
            <TextField field=Field::Setup(id, SetupField::Tyre) label="Tyre: size, or what it rolls" wide=true blank_means="tire"/>
        </div>
    }
}

fn gearbox_name(gearbox: &crate::job::Gearbox) -> String {
    let is_blank = gearbox.gears.iter().all(|gear| gear.trim().is_empty());
    match (gearbox.name.is_empty(), gearbox.altered) {
        (true, _) if is_blank => "Choose a gearbox".into(),
        (true, _) => "Counted by hand".into(),
        (false, true) => format!("{}, altered", gearbox.name),
        (false, false) => gearbox.name.clone(),
    }
}

/// What can be done with a setup as a whole.
pub(super) fn acts(state: State, id: SetupId, open: RwSignal<bool>) -> AnyView {
    let act = move |act: fn(&mut Job, SetupId)| {
        move |_| {
            open.set(false);
            state.change(|job| act(job, id));
        }
    };
    let many = state.setup_ids().len();
    let column = state.column_of(id);
    let button = move |words: &'static str, off: bool, what: fn(&mut Job, SetupId)| {
        view! { <button type="button" class="btn" disabled=off on:click=act(what)>{words}</button> }
    };
    let name = Field::Setup(id, SetupField::Name);
    let letter = move || Job::letter(state.column_of(id));
    // On a phone the heads have no room for names.
    let renamed = format!("{}-in-menu", name.slug());
    view! {
        <div class="menu__name">{name_field(state, name, &renamed, "field__input", Signal::derive(move || format!("Rename setup {}", letter())))}</div>
        {button("Copy", many >= MOST_SETUPS, |job, id| { job.copy_setup(id); })}
        {button("Move left", column == 0, |job, id| job.move_setup(id, Toward::Left))}
        {button("Move right", column + 1 == many, |job, id| job.move_setup(id, Toward::Right))}
        {button("Its axle for all setups", many == 1, Job::spread_axle)}
        {button("Its tire for all setups", many == 1, Job::spread_tyre)}
        {button("Remove", many == 1, Job::remove_setup)}
    }
    .into_any()
}
