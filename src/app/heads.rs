//! The heads: the setups being compared, each edited where it is read, and what decides between them.

use leptos::prelude::*;

use crate::questions::Answers;

use super::state::State;
use super::widgets::{ShortRow, TextField};
use crate::gearing::teeth::decimal;
use crate::job::edit::Toward;
use crate::job::{Field, Job, MOST_SETUPS, SetupField, SetupId};
use crate::units::number;

/// The heads and the row in short.
#[component]
pub fn Heads() -> impl IntoView {
    let state = State::here();
    let many = move || state.job.with(|job| job.setups.len());
    let class = move || {
        let compact = if state.scrolled.get() { " heads--compact" } else { "" };
        let pair = if state.pair.get() { " heads--pair" } else { "" };
        format!("heads heads--{}{compact}{pair}", many())
    };
    view! {
        <h1 class="unseen">{move || state.job.with(|job| job.title.clone())}</h1>
        <ColumnSwitch/>
        <div id="heads-start"></div>
        <div class=class id="heads">
            <CarHead/>
            <For each=move || state.setup_ids() key=|id| *id children=|id| view! { <Head id/> }/>
        </div>
        <ShortRow/>
    }
}

#[component]
fn CarHead() -> impl IntoView {
    let state = State::here();
    let car = move || state.job.with(|job| if job.car.is_empty() { "no car named yet".to_owned() } else { job.car.clone() });
    let full = move || state.job.with(|job| job.setups.len() >= MOST_SETUPS);
    view! {
        <div class="heads__car">
            <h2>"The car"</h2>
            <p>{car}</p>
            <super::book::Opener panel=super::book::Panel::Details small=true words="Customer and notes"/>
            <button type="button" class="btn btn--small" id="add-setup" disabled=full on:click=move |_| state.change(|job| { job.add_setup(); })>
                "Add a setup"
            </button>
        </div>
    }
}

/// On a phone: which column is shown, and whether two stand side by side.
#[component]
fn ColumnSwitch() -> impl IntoView {
    let state = State::here();
    let button = move |id: SetupId| {
        let column = move || state.column_of(id);
        view! {
            <button type="button" aria-pressed=move || state.column_shown(column()).to_string() on:click=move |_| state.column.set(column())>
                {move || Job::letter(column()).to_string()}
            </button>
        }
    };
    view! {
        <div class="switch">
            <div class="choice" role="group" aria-label="Setup shown"><For each=move || state.setup_ids() key=|id| *id children=button/></div>
            <button type="button" class="btn" aria-pressed=move || state.pair.get().to_string() on:click=move |_| state.pair.update(|pair| *pair = !*pair)>
                "two side by side"
            </button>
        </div>
    }
}

#[component]
fn Head(id: SetupId) -> impl IntoView {
    let state = State::here();
    let column = Memo::new(move |_| state.column_of(id));
    let letter = move || Job::letter(column.get());
    let name = Field::Setup(id, SetupField::Name);
    let menu = RwSignal::new(false);
    view! {
        <div class="head" role="group" aria-label=move || format!("Setup {}", letter()) class:off=move || !state.column_shown(column.get())>
            <div class="head__top">
                <BringForward id/>
                <input class="head__name" id=name.slug() type="text" aria-label=move || format!("Name of setup {}", letter()) autocomplete="off"
                    prop:value=move || state.job.with(|job| job.text(name).unwrap_or_default().to_owned())
                    on:input=move |event| state.type_text(name, event_target_value(&event))
                    on:blur=move |_| state.leave_field()/>
                <button type="button" class="btn btn--small head__more" aria-expanded=move || menu.get().to_string()
                    aria-label=move || format!("Copy, move or remove setup {}", letter()) on:click=move |_| menu.update(|open| *open = !*open)>"…"</button>
            </div>
            <Parts id/>
            {move || menu.get().then(|| view! { <Menu id menu/> })}
        </div>
    }
}

#[component]
fn BringForward(id: SetupId) -> impl IntoView {
    let state = State::here();
    let letter = move || Job::letter(state.column_of(id));
    let forward = move || state.focus.get() == Some(id);
    let press = move |_| state.focus.update(|focus| *focus = if *focus == Some(id) { None } else { Some(id) });
    view! {
        <button type="button" class="head__bring" aria-pressed=move || forward().to_string() on:click=press
            aria-label=move || format!("Bring setup {} forward in the pictures", letter())>
            <span class=move || format!("badge badge--{}", letter().to_ascii_lowercase())>{move || letter().to_string()}</span>
        </button>
    }
}

#[component]
fn Parts(id: SetupId) -> impl IntoView {
    let state = State::here();
    let letter = move || Job::letter(state.column_of(id));
    let set = move || state.job.with(|job| job.setup(id).map(|setup| gearbox_name(&setup.gearbox)));
    let axle = move || {
        state.answers.with(|Answers { setups, .. }| setups.iter().find(|each| each.setup.id == id).and_then(|each| each.setup.final_drive))
    };
    let pick = move |_| state.picking.update(|picking| *picking = if *picking == Some(id) { None } else { Some(id) });
    view! {
        <dl class="head__parts">
            <dt>"Gearbox"</dt>
            <dd>
                <button type="button" class="head__pick" id=format!("s{}-gearbox", id.0) aria-expanded=move || (state.picking.get() == Some(id)).to_string()
                    aria-label=move || format!("Gear set of setup {}: {}", letter(), set().unwrap_or_default()) on:click=pick>{set}</button>
            </dd>
            <dt>{move || state.say("Ring, pinion")}</dt>
            <dd>
                <TextField field=Field::Setup(id, SetupField::FinalDrive) label="Ring and pinion: teeth or ratio"/>
                <span class="num">{move || axle().map(|axle| number::show(decimal(axle.ratio()), 3))}</span>
            </dd>
            <dt>{move || state.say("Tyre")}</dt>
            <dd><TextField field=Field::Setup(id, SetupField::Tyre) label="Tyre: size, or what it rolls" wide=true/></dd>
        </dl>
    }
}

fn gearbox_name(gearbox: &crate::job::Gearbox) -> String {
    match (gearbox.name.is_empty(), gearbox.altered) {
        (true, _) => "counted by hand".into(),
        (false, true) => format!("{}, altered", gearbox.name),
        (false, false) => gearbox.name.clone(),
    }
}

#[component]
fn Menu(id: SetupId, menu: RwSignal<bool>) -> impl IntoView {
    let state = State::here();
    let act = move |act: fn(&mut Job, SetupId)| {
        move |_| {
            menu.set(false);
            state.change(|job| act(job, id));
        }
    };
    let many = move || state.job.with(|job| job.setups.len());
    let column = move || state.column_of(id);
    view! {
        <div class="head__menu">
            <button type="button" class="btn" disabled={move || many() >= MOST_SETUPS} on:click=act(|job, id| { job.copy_setup(id); })>"Copy"</button>
            <button type="button" class="btn" disabled=move || column() == 0 on:click=act(|job, id| job.move_setup(id, Toward::Left))>"Move left"</button>
            <button type="button" class="btn" disabled=move || column() + 1 == many() on:click=act(|job, id| job.move_setup(id, Toward::Right))>"Move right"</button>
            <button type="button" class="btn" disabled=move || many() == 1 on:click=act(Job::remove_setup)>"Remove"</button>
        </div>
    }
}
