//! What is looked at, and what has come of it.

use std::sync::Arc;

use leptos::prelude::*;

use crate::app::slices::Slices;
use crate::questions::measure::counted::{self, Circle, Counted, Counting, Grey, Mark, TEETH, Told};

/// How long the circle must rest before the teeth on it are counted, in milliseconds.
const QUIET_MS: u32 = 300;
/// The least radius of a circle, in pixels of the picture.
const LEAST: f64 = 8.0;

/// A picture as it is shown, and its brightness.
#[derive(Clone)]
pub(super) struct Seen {
    pub(super) canvas: web_sys::HtmlCanvasElement,
    pub(super) grey: Arc<Grey>,
}

impl Seen {
    fn size(&self) -> (f64, f64) {
        (f64::from(self.canvas.width()), f64::from(self.canvas.height()))
    }
}

/// How far a person is with the circle.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Placing {
    /// It lies where it was put for a beginning.
    Centre,
    /// Its centre was tapped.
    Tips,
    /// It lies on the tips, as far as the person has said.
    Placed,
}

#[derive(Clone, Copy)]
pub(super) struct Eye {
    pub(super) picture: RwSignal<Option<Seen>, LocalStorage>,
    pub(super) circle: RwSignal<Circle>,
    placing: RwSignal<Placing>,
    counting: Slices<Counting>,
    /// What is in the way.
    refused: RwSignal<Option<String>>,
    /// Whether the picture that comes is of the same gear turned.
    pub(super) is_turned: RwSignal<bool>,
    earlier: RwSignal<Option<Arc<Counted>>>,
    last: Memo<Option<Same>>,
    told: Memo<Option<Told>>,
    /// What the person says instead.
    own: RwSignal<Option<usize>>,
    /// The number that stands there; none before one was counted.
    pub(super) shown: Memo<Option<usize>>,
    /// Where its teeth are.
    pub(super) marks: Memo<Vec<Mark>>,
}

/// A count, alike only with itself.
#[derive(Clone)]
struct Same(Arc<Counted>);

impl PartialEq for Same {
    fn eq(&self, other: &Self) -> bool {
        Arc::ptr_eq(&self.0, &other.0)
    }
}

impl Eye {
    pub(super) fn new() -> Self {
        let counting: Slices<Counting> = Slices::new(1, || ());
        let (earlier, own) = (RwSignal::new(None::<Arc<Counted>>), RwSignal::new(None));
        let last = Memo::new(move |_| {
            let is_at_rest = counting.progress.with(Option::is_none);
            let found = counting.found.get().filter(|_| is_at_rest)?;
            (*found).as_ref()?.as_ref().ok().map(|counted| Same(Arc::new(counted.clone())))
        });
        let told = Memo::new(move |_| last.with(|last| last.as_ref().map(|last| counted::told(&last.0, earlier.get().as_deref()))));
        let shown = Memo::new(move |_| told.with(|told| told.as_ref().map(|told| told.teeth)).map(|teeth| own.get().unwrap_or(teeth)));
        let marks = Memo::new(move |_| {
            let teeth = shown.get();
            last.with(|last| last.as_ref().zip(teeth).map(|(last, teeth)| last.0.marks(teeth)).unwrap_or_default())
        });
        let circle = RwSignal::new(Circle { x: 0.0, y: 0.0, radius: LEAST });
        let (picture, placing) = (RwSignal::new_local(None), RwSignal::new(Placing::Centre));
        let (refused, is_turned) = (RwSignal::new(None), RwSignal::new(false));
        Self { picture, circle, placing, counting, refused, is_turned, earlier, last, told, own, shown, marks }
    }

    /// Shows a picture: with a circle in its middle, to be put on the tips.
    pub(super) fn show(self, seen: Seen) {
        let first = self.last.with_untracked(|last| last.as_ref().map(|last| Arc::clone(&last.0)));
        self.earlier.set(first.filter(|_| self.is_turned.get_untracked()));
        let (width, height) = seen.size();
        self.circle.set(Circle { x: width / 2.0, y: height / 2.0, radius: (0.4 * width.min(height)).max(LEAST) });
        self.placing.set(Placing::Centre);
        self.drop_count();
        self.picture.set(Some(seen));
    }

    /// Says what is in the way of a picture.
    pub(super) fn refuse(self, why: String) {
        self.forget();
        self.refused.set(Some(why));
    }

    pub(super) fn forget(self) {
        self.picture.set(None);
        self.earlier.set(None);
        self.drop_count();
    }

    fn drop_count(self) {
        self.refused.set(None);
        self.own.set(None);
        self.counting.begin(0, || None);
    }

    /// Whether the centre was pointed at.
    pub(super) fn has_centre(self) -> bool {
        self.placing.get_untracked() != Placing::Centre
    }

    /// Whether the circle was put on the tips.
    pub(super) fn is_placed(self) -> bool {
        self.placing.get_untracked() == Placing::Placed
    }

    /// Puts the centre somewhere.
    pub(super) fn centre(self, (x, y): (f64, f64)) {
        let Some((width, height)) = self.picture.with_untracked(|seen| seen.as_ref().map(Seen::size)) else { return };
        self.circle.update(|circle| *circle = Circle { x: x.clamp(0.0, width), y: y.clamp(0.0, height), ..*circle });
        if self.placing.get_untracked() == Placing::Centre {
            self.placing.set(Placing::Tips);
        }
    }

    /// Makes the circle so large.
    pub(super) fn size(self, radius: f64) {
        let Some((width, height)) = self.picture.with_untracked(|seen| seen.as_ref().map(Seen::size)) else { return };
        self.circle.update(|circle| circle.radius = radius.clamp(LEAST, width.max(height)));
        self.placing.set(Placing::Placed);
    }

    /// Counts the teeth on the circle as it lies, once it rests; before it was put on the tips, only where `is_asked`.
    pub(super) fn count(self, is_asked: bool) {
        if is_asked {
            self.placing.set(Placing::Placed);
        }
        if self.placing.get_untracked() != Placing::Placed {
            return;
        }
        let Some(grey) = self.picture.with_untracked(|seen| seen.as_ref().map(|seen| Arc::clone(&seen.grey))) else { return };
        let circle = self.circle.get_untracked();
        self.refused.set(None);
        self.own.set(None);
        self.counting.begin(QUIET_MS, move || match Counting::new(&grey, circle) {
            Ok(counting) => Some(counting),
            Err(why) => {
                self.refused.set(Some(counted::refused(&why)));
                None
            }
        });
    }

    /// One tooth more or fewer: the person's number stands.
    pub(super) fn step(self, is_more: bool) {
        let Some(teeth) = self.shown.get_untracked() else { return };
        let next = if is_more { teeth.saturating_add(1) } else { teeth.saturating_sub(1) };
        if TEETH.contains(&next) {
            self.own.set(Some(next));
        }
    }

    /// What is said below the picture.
    pub(super) fn says(self) -> String {
        if let Some(why) = self.refused.get() {
            return why;
        }
        if self.picture.with(Option::is_none) {
            return String::new();
        }
        match self.placing.get() {
            Placing::Centre => return "Tap the centre of the gear.".into(),
            Placing::Tips => return "Drag the circle onto the tips of the teeth.".into(),
            Placing::Placed => {}
        }
        if self.counting.progress.with(Option::is_some) {
            return "Counting …".into();
        }
        if let Some(told) = self.told.get() {
            return self.marks.with(|marks| counted::says(&told, marks, self.own.get()));
        }
        let found = self.counting.found.get();
        let why = found.as_ref().and_then(|found| found.as_ref().as_ref()?.as_ref().err());
        why.map(counted::refused).unwrap_or_default()
    }
}
