//! Long work in slices: gone on with while there is time, stopped, gone on with again, dropped when something else is asked.
//!
//! [`Sliced`] is the work, a search that can be left at any place. [`Runner`] keeps one under way for a page, which gives it a slice
//! whenever it has a few milliseconds; a slice for an older question does nothing. Where nobody waits, on paper and in files, one
//! [`Sliced::advance`] with all the work that is allowed does the same. No clock and no timer is known here.

/// Work that can be done in parts. How it is parted does not change what is found.
pub trait Sliced {
    /// What is found, as it can be shown while the work goes on.
    type Found;

    /// Goes on for about so many units of work, each of which takes about as long as the next, and tells how far it has come.
    fn advance(&mut self, budget: u64) -> Progress;

    /// What was found so far.
    fn found(&self) -> Self::Found;
}

/// How far work has come.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Progress {
    /// What was gone through.
    pub done: u64,
    /// What there is to go through.
    pub of: u64,
    /// Whether nothing is left to do.
    pub is_finished: bool,
}

impl Progress {
    /// The part that is done, 0 to 1.
    #[expect(clippy::cast_precision_loss, reason = "a share for the eye")]
    pub fn share(self) -> f64 {
        if self.is_finished || self.of == 0 { 1.0 } else { self.done as f64 / self.of as f64 }
    }
}

/// Which question a slice belongs to.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Turn(u64);

/// Work under way, and the turn it belongs to.
#[derive(Clone, Debug)]
pub struct Runner<W> {
    work: Option<W>,
    turn: u64,
}

impl<W> Default for Runner<W> {
    fn default() -> Self {
        Self { work: None, turn: 0 }
    }
}

impl<W: Sliced> Runner<W> {
    /// A new turn: slices of earlier turns do nothing from now on. The work stays where it is, to be gone on with or begun anew.
    pub fn next_turn(&mut self) -> Turn {
        self.turn = self.turn.wrapping_add(1);
        Turn(self.turn)
    }

    /// Whether nothing was asked since that turn.
    pub fn is_turn(&self, turn: Turn) -> bool {
        self.turn == turn.0
    }

    /// Puts other work, or none, in the place of what was under way; nothing happens where the turn is over.
    pub fn begin(&mut self, turn: Turn, work: Option<W>) {
        if self.is_turn(turn) {
            self.work = work;
        }
    }

    /// Goes on, `step` units of work at a time, until the work is done or `has_time` says no; at least one step is done.
    ///
    /// Tells how far it has come; `None` where the turn is over or there is no work.
    pub fn slice(&mut self, turn: Turn, step: u64, mut has_time: impl FnMut() -> bool) -> Option<Progress> {
        let work = self.work.as_mut().filter(|_| self.turn == turn.0)?;
        loop {
            let progress = work.advance(step);
            if progress.is_finished || !has_time() {
                return Some(progress);
            }
        }
    }

    /// What was found so far; `None` where there is no work.
    pub fn found(&self) -> Option<W::Found> {
        self.work.as_ref().map(Sliced::found)
    }
}
