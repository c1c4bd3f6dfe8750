//! What is listened to, and what has come of it: one for the page, so that it stays when another question is looked at.

use std::cell::RefCell;
use std::sync::Arc;

use leptos::prelude::*;

use super::player::Player;
use crate::app::slices::Slices;
use crate::app::state::State;
use crate::app::widgets::chart::Shown;
use crate::chart::Picture;
use crate::problem::{Explain, capital};
use crate::questions::noise::recorded::{self, Asked, Clip, ClipError, Findings, Heard, Intake, Listening};

/// Samples that are brought down between two looks at the clock.
const SAMPLES: u64 = 500;
/// How long nothing must have changed before a recording is listened to anew, in milliseconds.
const QUIET_MS: u32 = 300;

/// What is being done to get a recording.
#[derive(Clone, Debug, Default, PartialEq)]
pub(super) enum Doing {
    /// Nothing.
    #[default]
    Nothing,
    /// The browser asks whether it may.
    Asking,
    /// So many seconds are recorded.
    Recording(u32),
    /// What was recorded or chosen is read.
    Reading,
    /// It tells nothing: why, and what to do.
    Refused(String),
}

/// A picture of a recording.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum View {
    /// How loud it is at every pitch.
    Spectrum,
    /// How that goes over time.
    OverTime,
}

#[derive(Clone, Copy)]
pub(super) struct Ear {
    pub(super) doing: RwSignal<Doing>,
    /// Where the recording is from: the name of its file.
    pub(super) name: RwSignal<String>,
    pub(super) intake: Slices<Intake>,
    pub(super) listening: Slices<Listening>,
    /// The recording; none before there is one.
    pub(super) clip: Memo<Option<Arc<Clip>>>,
    /// What is asked of it as far as it is typed, or what is missing.
    pub(super) asked: Memo<Result<Asked, String>>,
    /// What it says; none while it is listened to.
    pub(super) heard: Memo<Option<Heard>>,
    /// Which picture of it is looked at.
    pub(super) view: RwSignal<View>,
    /// That picture.
    pub(super) drawn: Memo<Option<Shown>>,
    /// What plays tones.
    pub(super) player: Player,
}

impl Ear {
    /// The ear of the page, made when it is first asked for.
    pub(super) fn here() -> Self {
        thread_local! { static EAR: RefCell<Option<(Owner, Ear)>> = const { RefCell::new(None) }; }
        let state = State::here();
        EAR.with_borrow_mut(|ear| {
            // It belongs to the page, not to the view that asks first.
            let (_, ear) = ear.get_or_insert_with(|| {
                let owner = Owner::default();
                let ear = owner.with(|| Self::new(state));
                (owner, ear)
            });
            *ear
        })
    }

    fn new(state: State) -> Self {
        let intake: Slices<Intake> = Slices::new(SAMPLES, || ());
        let listening: Slices<Listening> = Slices::new(1, || ());
        let clip = Memo::new(move |_| intake.found.get().and_then(|found| (*found).clone()));
        let asked = Memo::new(move |_| state.with_source(Asked::of));
        let said = move || -> Option<(Asked, Findings)> {
            let is_at_rest = listening.progress.with(Option::is_none) && clip.with(Option::is_some);
            let findings = listening.found.get().filter(|_| is_at_rest)?;
            Some((asked.get().ok()?, (*findings).clone()?))
        };
        let heard = Memo::new(move |_| {
            let (asked, findings) = said()?;
            state.with_source(|source| recorded::heard(source, &asked, &findings))
        });
        let view = RwSignal::new(View::Spectrum);
        let drawn = Memo::new(move |_| {
            let (asked, findings) = said()?;
            let picture: Arc<dyn Picture> = state.with_source(|source| match view.get() {
                View::Spectrum => Some(Arc::new(recorded::spectrum(source, &asked, &findings)?) as Arc<dyn Picture>),
                View::OverTime => Some(Arc::new(recorded::order_map(source, &asked, &findings)?) as Arc<dyn Picture>),
            })?;
            Some(Shown::new(picture))
        });
        let doing = RwSignal::new(Doing::Nothing);
        let name = RwSignal::new(String::new());
        let ear = Self { doing, name, intake, listening, clip, asked, heard, view, drawn, player: Player::new() };
        ear.follow(state);
        ear
    }

    /// Listens anew whenever the recording or what is typed about it changes; forgets it with the job.
    fn follow(self, state: State) {
        Effect::new(move || {
            let (clip, asked) = (self.clip.get(), self.asked.get());
            if clip.is_some() || self.listening.found.with_untracked(Option::is_some) {
                self.listening.begin(QUIET_MS, move || Some(asked.ok()?.listen(clip?)));
            }
        });
        let job = Memo::new(move |_| state.desk.head.with(|head| head.id.clone()));
        Effect::new(move |before: Option<()>| {
            job.track();
            if before.is_some() {
                self.forget();
            }
        });
    }

    /// Takes in samples that were read; where they tell nothing, that is said.
    pub(super) fn take(self, name: String, samples: Vec<f32>, rate: f64) {
        self.name.set(name);
        match Intake::new(samples, rate) {
            Ok(intake) => {
                self.doing.set(Doing::Nothing);
                self.intake.begin(0, move || Some(intake));
            }
            Err(why) => self.refuse(&why),
        }
    }

    /// Says why what was recorded or chosen tells nothing; an earlier recording is forgotten.
    pub(super) fn refuse(self, why: &ClipError) {
        self.forget();
        self.say(format!("{}. {}.", capital(&why.what()), capital(&why.what_to_do())));
    }

    /// Says what is in the way.
    pub(super) fn say(self, sentence: String) {
        self.doing.set(Doing::Refused(sentence));
    }

    pub(super) fn forget(self) {
        self.doing.set(Doing::Nothing);
        self.intake.begin(0, || None);
    }
}
