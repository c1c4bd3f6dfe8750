//! Parts of the program that come later: asked for when they are needed, or once the first figure stands, and waited for here alone.
//!
//! A part is a file of its own, cut out of the program by the build at the function that [`part!`](crate::part) makes. What it brings is a
//! value, most often a function that makes a view: that function is called where the view belongs, so what it makes lives and goes with its
//! place on the page. Which parts there are is written in [`parts`](super::parts).

use std::pin::Pin;
use std::sync::OnceLock;

use leptos::prelude::*;
use leptos::wasm_split::SplitLoaderError;
use wasm_bindgen_futures::spawn_local;

use super::device;
use super::notices::Notice;
use super::state::State;
use super::turns;

/// A part on its way.
pub type Coming<T> = Pin<Box<dyn Future<Output = Result<T, SplitLoaderError>>>>;

/// A part of the program, and what became of it.
pub struct Part<T: Send + Sync + 'static> {
    fetch: fn() -> Coming<T>,
    arrival: OnceLock<ArcRwSignal<Arrival<T>>>,
}

#[derive(Clone, Copy)]
enum Arrival<T> {
    Unasked,
    Coming,
    There(T),
    /// It could not be loaded; true while it is tried again.
    Failed(bool),
}

impl<T: Copy + Send + Sync + 'static> Part<T> {
    /// A part that a function fetches; made by [`part!`](crate::part).
    pub const fn new(fetch: fn() -> Coming<T>) -> Self {
        Self { fetch, arrival: OnceLock::new() }
    }

    fn arrival(&self) -> &ArcRwSignal<Arrival<T>> {
        self.arrival.get_or_init(|| ArcRwSignal::new(Arrival::Unasked))
    }

    /// What the part brings, where it is there already. Does not track.
    pub fn now(&self) -> Option<T> {
        match self.arrival().get_untracked() {
            Arrival::There(part) => Some(part),
            _ => None,
        }
    }

    /// What the part brings, where it is there; whoever asks is told when it comes.
    pub fn get(&self) -> Option<T> {
        match self.arrival().get() {
            Arrival::There(part) => Some(part),
            _ => None,
        }
    }

    /// Fetches the part where it is not there, and answers what it brings; nothing where it cannot be loaded.
    pub async fn come(&'static self) -> Option<T> {
        match self.arrival().get_untracked() {
            Arrival::There(part) => return Some(part),
            Arrival::Unasked => self.arrival().set(Arrival::Coming),
            Arrival::Failed(false) => self.arrival().set(Arrival::Failed(true)),
            Arrival::Coming | Arrival::Failed(true) => {}
        }
        let part = (self.fetch)().await.ok();
        // Whoever else waited for it has said so already: what it shows is not made twice.
        if self.now().is_none() {
            self.arrival().set(part.map_or(Arrival::Failed(false), Arrival::There));
        }
        part
    }

    /// Fetches the part, if it is not there or on its way.
    fn ask(&'static self) {
        if self.now().is_none() {
            spawn_local(async {
                let _ = self.come().await;
            });
        }
    }

    /// Does what was asked for with the part: at once where it is there, else when it has come. Where it cannot be loaded, that is told.
    pub fn then(&'static self, state: State, act: impl FnOnce(T) + 'static) {
        match self.now() {
            Some(part) => act(part),
            None => spawn_local(async move {
                match self.come().await {
                    Some(part) => act(part),
                    None => state.tell(Notice::caution(MISSING)),
                }
            }),
        }
    }

    /// Does something once the part is there, whenever that is.
    pub fn once_there(&'static self, act: impl FnOnce(T) + 'static) {
        if let Some(part) = self.now() {
            act(part);
            return;
        }
        let owner = Owner::current().unwrap_or_default();
        let mut act = Some(act);
        Effect::new(move || {
            let Some(part) = self.get() else { return };
            if let Some(act) = act.take() {
                owner.with(|| untrack(|| act(part)));
            }
        });
    }

    /// What the part shows; until it is there a quiet sign, and where it cannot be loaded a sentence and a way to try again.
    pub fn show(&'static self, make: impl Fn(T) -> AnyView + Send + 'static) -> impl IntoView {
        self.show_in(|| view! { <p class="later" aria-busy="true">"…"</p> }.into_any(), make)
    }

    /// As [`Part::show`], with a view of its own until the part is there.
    pub fn show_in(
        &'static self,
        meanwhile: impl Fn() -> AnyView + Send + 'static,
        make: impl Fn(T) -> AnyView + Send + 'static,
    ) -> impl IntoView {
        // Not before the page stands and is painted: until then the line belongs to the first figure.
        turns::once_it_stands(|| device::once_painted(|| self.ask()));
        self.shown(meanwhile, make)
    }

    /// As [`Part::show`], for what adds itself to a page that is whole without it: nothing stands there until it has come.
    pub fn show_once_there(&'static self, make: impl Fn(T) -> AnyView + Send + 'static) -> impl IntoView {
        self.shown(|| ().into_any(), make)
    }

    /// What the part adds where another place says already that it is coming, or cannot be loaded: nothing until it is there.
    pub fn add(&'static self, make: impl Fn(T) -> AnyView + Send + 'static) -> impl IntoView {
        move || self.get().map(&make)
    }

    fn shown(
        &'static self,
        meanwhile: impl Fn() -> AnyView + Send + 'static,
        make: impl Fn(T) -> AnyView + Send + 'static,
    ) -> impl IntoView {
        let arrival = self.arrival().clone();
        let is_its_turn = RwSignal::new(self.now().is_some());
        move || match arrival.get() {
            Arrival::There(part) if is_its_turn.get() => make(part),
            // All that waited for the part would be made in one task.
            Arrival::There(_) => {
                turns::set_in_turn(is_its_turn);
                meanwhile()
            }
            Arrival::Unasked | Arrival::Coming => meanwhile(),
            Arrival::Failed(is_tried) => missing(is_tried, move || self.ask()).into_any(),
        }
    }
}

/// What is said where a part could not be loaded.
const MISSING: &str = "This part of Layshaft could not be loaded. Check the connection and try again. If it keeps failing, load the page again. Nothing you typed is lost.";

/// What stands where a part should be that could not be loaded.
fn missing(is_tried: bool, again: impl Fn() + 'static) -> impl IntoView {
    view! {
        <div class="notice notice--caution later" role="status" aria-busy=is_tried.to_string()>
            <p>{MISSING}</p>
            <div class="notice__acts">
                <button type="button" class="btn" on:click=move |_| again()>{if is_tried { "…" } else { "Try again" }}</button>
            </div>
        </div>
    }
}

/// Any part, to be fetched ahead of its use.
pub trait Later: Sync {
    /// Fetches it; answers whether it is there now.
    fn fetched(&'static self) -> Pin<Box<dyn Future<Output = bool>>>;
}

impl<T: Copy + Send + Sync + 'static> Later for Part<T> {
    fn fetched(&'static self) -> Pin<Box<dyn Future<Output = bool>>> {
        Box::pin(async { self.come().await.is_some() })
    }
}

/// Fetches parts one after the other, so that the first do not share the line with the last; then calls `done`.
pub fn fetch_in_turn(parts: &'static [&'static dyn Later], done: impl FnOnce() + 'static) {
    spawn_local(async move {
        for part in parts {
            part.fetched().await;
        }
        done();
    });
}

/// A part of the program: its name, the type of what it brings, the name of its file, and what it brings.
///
/// ```ignore
/// part! {
///     /// The section of wishes and what was found.
///     pub FIND: fn() -> AnyView = find(find::picture)
/// }
/// ```
#[macro_export]
macro_rules! part {
    ($(#[$about:meta])* $vis:vis $name:ident: $brings:ty = $file:ident($value:expr)) => {
        $(#[$about])*
        $vis static $name: $crate::app::later::Part<$brings> = $crate::app::later::Part::new({
            #[::leptos::wasm_split::wasm_split($file, wasm_split_path = ::leptos::wasm_split, fallible)]
            fn $file() -> Result<$brings, ::leptos::wasm_split::SplitLoaderError> {
                Ok($value)
            }
            || Box::pin($file())
        });
    };
}
