//! The app: four places in the browser, one question at a time. Knows every other room; no other room knows it.
//!
//! [`state`] holds the job and what is derived from it, [`view`] what is looked at, [`shop`] what the shop has, [`address`] where one is;
//! [`keep`] writes to the device's store. [`bar`] leads from place to place; [`compare`], [`bench`], [`shelf`] and [`jobs`] are the places.
//! [`question`] is the one view of every question, [`line`] and [`heads`] stand around it where setups are compared, [`find`] shows a
//! search, [`listen`] hears a recording, [`count`] counts teeth in a picture, [`photographs`] keeps pictures. [`slices`] is
//! long work a little at a time, [`turns`] the page itself a piece at a time. [`widgets`] are the few things everything is built of, [`print`] is paper. Effects here only touch the outside: the store,
//! the title, the canvas.

pub mod address;
pub mod announcer;
pub mod bar;
pub mod bench;
pub mod book;
pub mod compare;
pub mod count;
pub mod device;
pub mod find;
pub mod heads;
pub mod jobs;
pub mod keep;
pub mod keys;
pub mod later;
pub mod line;
pub mod listen;
pub mod notices;
pub mod parts;
pub mod photographs;
pub mod picker;
pub mod print;
pub mod question;
pub mod rested;
pub mod shelf;
pub mod shop;
pub mod slices;
pub mod state;
pub mod suggestions;
pub mod theme;
mod tilt;
pub mod turns;
pub mod view;
pub mod widgets;

use leptos::prelude::*;

use crate::questions::customer::USUAL_CAUTION;
use address::Place;
use state::State;

/// Mounts the page: at once on a first visit, else when what is kept can be read.
pub fn start() {
    std::panic::set_hook(Box::new(|panic| device::log_error(&panic.to_string())));
    if let Some(opened) = keep::first_visit() {
        mount(opened);
        return;
    }
    wasm_bindgen_futures::spawn_local(async {
        match parts::KEEPER.come().await {
            Some(keeper) => mount((keeper.open)().await),
            None => device::announce("layshaft:unable"),
        }
    });
}

fn mount(opened: keep::Opened) {
    device::clear_opening_words();
    leptos::mount::mount_to_body(move || page(opened));
    // Where no piece waits it stands with this task.
    turns::queue(|| ());
    turns::once_it_stands(|| {
        device::say_ready();
        device::once_painted(|| later::fetch_in_turn(&parts::ALL, device::say_whole));
    });
}

fn page(opened: keep::Opened) -> impl IntoView {
    let state = State::new(opened);
    provide_context(state);
    keep::ask_before_leaving(state);
    parts::KEEPER.once_there(move |keeper| (keeper.keep)(state));
    parts::PHOTOGRAPHS.once_there(move |photographs| (photographs.open)(state));
    keys::listen(state);
    print::listen(state);
    device::follow_title(state);
    state.view.follow_address(move || {
        state.tell(notices::Notice::plain("This address names no question of the page. What was open stays open."));
    });
    let place = Memo::new(move |_| state.view.at.get().place);
    view! {
        <a class="skip" href="#main" on:click=skip>"Skip to the question"</a>
        <bar::Bar/>
        <div class="page">
            {move || match place.get() {
                Place::Compare => view! { <compare::Compare/> }.into_any(),
                Place::Bench => parts::ANSWERS.show(|answers| (answers.bench)()).into_any(),
                Place::Shelf => view! { <Frame class="main--wide">{parts::SHELF.show(|place| place())}</Frame> }.into_any(),
                Place::Jobs => view! { <Frame class="main--wide">{parts::DESK.show(|desk| (desk.jobs)())}</Frame> }.into_any(),
            }}
        </div>
        <bar::PlacesBelow/>
        <notices::Notices/>
        <announcer::Announcer/>
        <suggestions::Suggestions/>
    }
}

/// The fragment of the address names the question; so the skip link moves the focus and leaves the address alone.
#[expect(clippy::needless_pass_by_value, reason = "a listener is given its event")]
fn skip(event: web_sys::MouseEvent) {
    event.prevent_default();
    device::focus("main");
}

/// What every place has in common: what must be decided, what is open above, and the usual caution below.
#[component]
fn Frame(
    /// The class of what stands inside.
    #[prop(optional)]
    class: &'static str,
    /// The place itself.
    children: Children,
) -> impl IntoView {
    let state = State::here();
    // Below all that is made in turn: it stands once nothing above it grows any more.
    let has_foot = RwSignal::new(false);
    turns::once_it_stands(move || {
        let _ = has_foot.try_set(true);
    });
    view! {
        <main id="main" class=format!("main {class}") tabindex="-1">
            <h1 class="unseen">{move || state.job.with(|job| job.title.clone())}</h1>
            {parts::KEEPER.show_once_there(|keeper| (keeper.banners)())}
            <book::Panels/>
            {children()}
            <Show when=move || has_foot.get()><p class="foot">{move || state.say(USUAL_CAUTION)}</p></Show>
        </main>
    }
}
