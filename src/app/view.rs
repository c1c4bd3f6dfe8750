//! What is looked at: the place and the question, tabs and folds that were opened, the setup brought forward, the moment.

use std::collections::{BTreeMap, BTreeSet};

use leptos::prelude::*;

use super::address::{At, Place};
use super::book::Panel;
use super::device;
use crate::job::SetupId;

/// What is looked at. Nothing of it is kept with the job.
#[derive(Clone, Copy)]
pub struct View {
    /// Where one is.
    pub at: RwSignal<At>,
    /// Where one was last in each place.
    last: RwSignal<BTreeMap<&'static str, At>>,
    /// The picture chosen in each question.
    pub tabs: RwSignal<BTreeMap<&'static str, usize>>,
    /// The folds that are open: question and fold.
    pub folds: RwSignal<BTreeSet<(&'static str, &'static str)>>,
    /// The setup brought forward in every picture.
    pub focus: RwSignal<Option<SetupId>>,
    /// The figure whose working is open: its setup and key.
    pub asked: RwSignal<Option<(SetupId, String)>>,
    /// The setup whose gear set is being picked.
    pub picking: RwSignal<Option<SetupId>>,
    /// The road speed looked at in every picture, in metres per second.
    pub moment: RwSignal<Option<f64>>,
    /// Where the pointer is in the picture pointed into, unless pictures share it; what turns is turned so far.
    pub pointed: RwSignal<Option<f64>>,
    /// The panel that is open above the question.
    pub panel: RwSignal<Option<Panel>>,
}

impl View {
    /// The view a page opens with: what its address names, else Gears.
    pub fn new() -> Self {
        let at = At::read(&device::fragment()).unwrap_or(At::first(Place::Compare));
        Self {
            at: RwSignal::new(at),
            last: RwSignal::new(BTreeMap::from([(at.place.name(), at)])),
            tabs: RwSignal::new(BTreeMap::new()),
            folds: RwSignal::new(BTreeSet::new()),
            focus: RwSignal::new(None),
            asked: RwSignal::new(None),
            picking: RwSignal::new(None),
            moment: RwSignal::new(None),
            pointed: RwSignal::new(None),
            panel: RwSignal::new(None),
        }
    }

    /// Follows the address, for as long as the page lives; an address that names nothing, now or later, is answered by `unknown`.
    pub fn follow_address(self, unknown: impl Fn() + 'static) {
        let follow = move || {
            let fragment = device::fragment();
            match At::read(&fragment) {
                Some(at) => self.show(at),
                // Back at the address the page was first opened with.
                None if fragment.is_empty() => self.show(At::first(Place::Compare)),
                None if !crate::job::link::is_link(&fragment) => unknown(),
                None => {}
            }
        };
        follow();
        device::on_window("hashchange", move |_: web_sys::Event| follow());
    }

    /// Goes somewhere, as a link to it does.
    pub fn go(self, at: At) {
        device::go_to_fragment(&at.fragment());
        self.show(at);
    }

    fn show(self, at: At) {
        if self.at.get_untracked() != at {
            self.at.set(at);
            self.asked.set(None);
            self.picking.set(None);
        }
        self.last.update(|last| {
            last.insert(at.place.name(), at);
        });
    }

    /// Where a place was left, or its first question.
    pub fn left(self, place: Place) -> At {
        self.last.with(|last| last.get(place.name()).copied()).unwrap_or(At::first(place))
    }

    /// Whether a fold of a question is open.
    pub fn is_open(self, question: &'static str, fold: &'static str) -> bool {
        self.folds.with(|folds| folds.contains(&(question, fold)))
    }

    /// Notes that a fold was opened or closed.
    pub fn set_open(self, question: &'static str, fold: &'static str, open: bool) {
        self.folds.update(|folds| {
            if open {
                folds.insert((question, fold));
            } else {
                folds.remove(&(question, fold));
            }
        });
    }
}

impl Default for View {
    fn default() -> Self {
        Self::new()
    }
}
