//! Where one is on the page: a place and a question, written in the fragment of the address, so that back and forward work.

use crate::questions::{FIRST, HEADINGS, Heading, Place as Asked};

worded! {
    /// The places of the page.
    #[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
    pub enum Place {
        /// Setups side by side.
        Compare => "compare", "Compare";
        /// Parts in hand.
        Bench => "bench", "Bench";
        /// What can be chosen.
        Shelf => "shelf", "Shelf";
        /// The book of jobs.
        Jobs => "jobs", "Jobs";
    }
    /// The place's name in the address.
    pub fn name;
    /// What the bar says.
    pub fn title;
}

/// A place and the question that is open there.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct At {
    /// The place.
    pub place: Place,
    /// The question's id; empty where the place has none.
    pub question: &'static str,
}

impl Place {
    /// Every place, in the order of the bar.
    pub const ALL: [Self; 4] = [Self::Compare, Self::Bench, Self::Shelf, Self::Jobs];

    /// The questions asked there, in order.
    pub fn questions(self) -> impl Iterator<Item = &'static Heading> {
        let asked = match self {
            Self::Compare => Some(Asked::Compare),
            Self::Bench => Some(Asked::Bench),
            Self::Shelf | Self::Jobs => None,
        };
        HEADINGS.iter().filter(move |question| Some(question.place) == asked)
    }
}

impl At {
    /// A place with its first question, that of the page where one compares.
    pub fn first(place: Place) -> Self {
        let question = match place {
            Place::Compare => FIRST.id,
            _ => place.questions().next().map_or("", |question| question.id),
        };
        Self { place, question }
    }

    /// Where the question of an id is asked.
    pub fn of_question(id: &str) -> Option<Self> {
        let asked =
            |place: Place| place.questions().find(|question| question.id == id).map(|question| Self { place, question: question.id });
        Place::ALL.into_iter().find_map(asked)
    }

    /// Reads a fragment, `#` included; none where it names no place or no question of the place.
    pub fn read(fragment: &str) -> Option<Self> {
        let mut parts = fragment.strip_prefix('#')?.splitn(2, '/');
        let name = parts.next()?;
        let place = Place::ALL.into_iter().find(|place| place.name() == name)?;
        match parts.next() {
            None | Some("") => Some(Self::first(place)),
            Some(id) => place.questions().find(|question| question.id == id).map(|question| Self { place, question: question.id }),
        }
    }

    /// The fragment, `#` included.
    pub fn fragment(self) -> String {
        if self.question.is_empty() { format!("#{}", self.place.name()) } else { format!("#{}/{}", self.place.name(), self.question) }
    }

    /// The question that is open.
    pub fn open(self) -> Option<&'static Heading> {
        self.place.questions().find(|question| question.id == self.question)
    }
}
