//! What can be chosen from, and a choice as the document keeps it: by its word, so that one code serves choices of every kind.

use std::marker::PhantomData;

use crate::job::Job;

/// An option as it is listed: its word in a file, blank for what holds where nothing is chosen and has no word of its own, and its words on
/// the page.
pub type Listed = (&'static str, &'static str);

/// What holds where nothing is chosen.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Unchosen {
    /// The same as if the option at this place of the list were chosen.
    Taken(usize),
    /// Nothing; these words stand for it on the page.
    Nothing(&'static str),
}

/// What can be chosen from.
pub trait Options: Copy + PartialEq + 'static {
    /// Every option, in the order of the page.
    const LISTED: &'static [Listed];
    /// What is chosen by each of them.
    const VALUES: &'static [Self];
    /// What holds where nothing is chosen.
    const UNCHOSEN: Unchosen;
    /// How many of them a job has, from the first on: fewer than all where they are its setups.
    fn many(_: &Job) -> usize {
        usize::MAX
    }

    /// Its words on the page.
    fn says(self) -> &'static str {
        self.listed().1
    }

    /// As it is listed.
    fn listed(self) -> Listed {
        let place = Self::VALUES.iter().position(|value| *value == self);
        place.and_then(|place| Self::LISTED.get(place)).copied().unwrap_or_default()
    }
}

/// A choice as the document keeps it: the word of the option, or the word of a file that is none of them, which is kept, and said.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Chosen<T> {
    pub(super) word: String,
    of: PhantomData<T>,
}

/// What was picked of some options.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Picked<'a, T> {
    /// Nothing yet.
    Nothing,
    /// One of them.
    One(T),
    /// A word of a file that is none of them.
    Unknown(&'a str),
}

impl<T> Default for Chosen<T> {
    fn default() -> Self {
        Self::NOTHING
    }
}

impl<T> Chosen<T> {
    /// Nothing chosen yet.
    pub const NOTHING: Self = Self { word: String::new(), of: PhantomData };

    /// The choice that a word of a file stands for.
    ///
    /// ```
    /// use layshaft::job::Chosen;
    /// use layshaft::tyre::OmittedAspect;
    /// assert_eq!(Chosen::read("82").value(), Some(OmittedAspect::EightyTwo));
    /// // An unknown word is kept and said, never taken for another.
    /// assert_eq!(Chosen::<OmittedAspect>::read("83").value(), None);
    /// ```
    pub fn read(word: &str) -> Self {
        Self { word: word.to_owned(), of: PhantomData }
    }

    /// Whether nothing was chosen.
    pub fn is_nothing(&self) -> bool {
        self.word.is_empty()
    }
}

impl<T: Options> Chosen<T> {
    /// That option chosen.
    ///
    /// ```
    /// use layshaft::job::Chosen;
    /// use layshaft::tyre::OmittedAspect;
    /// assert_eq!(Chosen::of(OmittedAspect::EightyTwo), Chosen::read("82"));
    /// // What has no word of its own holds where nothing is chosen.
    /// assert!(Chosen::of(OmittedAspect::Eighty).is_nothing());
    /// ```
    pub fn of(value: T) -> Self {
        Self::read(value.listed().0)
    }

    /// What was picked.
    pub fn picked(&self) -> Picked<'_, T> {
        if self.is_nothing() {
            return Picked::Nothing;
        }
        place(T::LISTED, &self.word).and_then(|place| T::VALUES.get(place)).map_or(Picked::Unknown(&self.word), |value| Picked::One(*value))
    }

    /// What was chosen, where something was.
    pub fn given(&self) -> Option<T> {
        if let Picked::One(value) = self.picked() { Some(value) } else { None }
    }

    /// What holds: what was chosen, or what is taken where nothing was. None for a word that is no option.
    pub fn value(&self) -> Option<T> {
        match (self.picked(), T::UNCHOSEN) {
            (Picked::One(value), _) => Some(value),
            (Picked::Nothing, Unchosen::Taken(place)) => T::VALUES.get(place).copied(),
            (Picked::Nothing, Unchosen::Nothing(_)) | (Picked::Unknown(_), _) => None,
        }
    }
}

/// The place of a word in a list of options.
pub(super) fn place(listed: &[Listed], word: &str) -> Option<usize> {
    listed.iter().position(|(known, _)| *known == word)
}

/// The options of a choice as the page lists them: the word that is kept and the words that are read.
pub fn listed<T: Options>() -> Vec<Listed> {
    with_nothing(T::LISTED, T::UNCHOSEN)
}

pub(super) fn with_nothing(listed: &[Listed], unchosen: Unchosen) -> Vec<Listed> {
    let nothing = if let Unchosen::Nothing(says) = unchosen { Some(("", says)) } else { None };
    nothing.into_iter().chain(listed.iter().copied()).collect()
}
