//! What the shop has and has settled: the catalogue with its own entries, whether the demo's parts are offered, what the answers propose
//! from.

use leptos::prelude::*;

use super::parts;
use super::print::Printed;
use crate::catalogue::demo::Standing;
use crate::catalogue::{Catalogue, DemoParts, Entry, PartKind};
use crate::job::{Job, demo};
use crate::questions::OnShelf;

/// What the shop settles once for all jobs.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Settled {
    /// What it says about the demo's parts.
    pub demo_parts: DemoParts,
    /// Its name and address.
    pub letterhead: String,
    /// Which pages it prints.
    pub printed: Printed,
    /// When it last backed up all jobs; blank for never.
    pub backed_up: String,
    /// Its own rows about faults.
    pub faults: String,
}

/// The shop's shelves.
#[derive(Clone, Copy)]
pub struct Shop {
    /// Everything that is known: built in, and the shop's own. What is changed is changed here.
    pub catalogue: RwSignal<Catalogue>,
    /// What the shop says about the demo's parts.
    pub demo_parts: RwSignal<DemoParts>,
    /// The shop's name and address, as it stands above everything printed.
    pub letterhead: RwSignal<String>,
    /// Which pages are printed.
    pub printed: RwSignal<Printed>,
    /// When all jobs were last backed up; blank for never.
    pub backed_up: RwSignal<String>,
    /// The shop's own rows about faults, as typed.
    pub faults: RwSignal<String>,
    /// What decides where it says nothing.
    pub standing: Memo<Standing>,
    offers_demo: Memo<bool>,
    /// The parts that can be read and are offered; none before what reads them has come.
    pub shelf: Memo<OnShelf>,
}

impl Shop {
    /// The shelves of a catalogue beside a job.
    pub fn new(catalogue: Catalogue, settled: Settled, job: RwSignal<Job>) -> Self {
        let (catalogue, demo_parts) = (RwSignal::new(catalogue), RwSignal::new(settled.demo_parts));
        let (letterhead, printed) = (RwSignal::new(settled.letterhead), RwSignal::new(settled.printed));
        let (backed_up, faults) = (RwSignal::new(settled.backed_up), RwSignal::new(settled.faults));
        let is_demo_job = Memo::new(move |_| job.with(demo::is_demo));
        let standing = Memo::new(move |_| Standing { has_own: catalogue.with(Catalogue::has_own), is_demo_job: is_demo_job.get() });
        let offers_demo = Memo::new(move |_| demo_parts.get().are_offered(standing.get()));
        let shelf = move |_: Option<&OnShelf>| {
            let read = |answers: parts::Answers| {
                catalogue.with(|all| faults.with(|faults| (answers.shelf)(&all.offering(offers_demo.get()), faults)))
            };
            parts::ANSWERS.get().map(read).unwrap_or_default()
        };
        Self { catalogue, demo_parts, letterhead, printed, backed_up, faults, standing, offers_demo, shelf: Memo::new(shelf) }
    }

    /// The parts of the catalogue that are offered. Whoever asks is told when they change.
    pub fn offered(self) -> Catalogue {
        self.catalogue.with(|all| all.offering(self.offers_demo.get()))
    }

    /// Puts a gear set among the shop's own, and answers under which name.
    pub fn add_set(self, set: Entry) -> Option<String> {
        self.catalogue.try_update(|catalogue| {
            let (after, id) = catalogue.add(set);
            *catalogue = after;
            catalogue.get(PartKind::GearSet, &id).map(|set| set.title().to_owned())
        })?
    }

    /// Whether the demo's parts are offered.
    pub fn offers_demo(self) -> bool {
        self.offers_demo.get()
    }
}
