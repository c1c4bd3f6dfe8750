//! Does a gear set go into the case of another? By the name of the case family, or else by layout, tooth sums and pitch.
//!
//! A case bores its shafts at one centre distance, a = mₜ (z₁ + z₂) / 2 without profile shift (ISO 21771:2007): of one pitch, sets of
//! the same tooth sum share it. The pairs of one box may differ by a tooth, which profile shift takes up, so two sets agree where any
//! sum of theirs does. Length, bearings and lugs of a case do not show in tooth counts: only a named family tells of them.

use super::{Column, Entry};
use crate::gearing::check::ToothSums;
use crate::gearing::{Gearbox, Layout};
use crate::units::Length;

/// What a gear set asks of a case.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct CaseNeeds {
    /// The case families it is known to go into.
    pub families: Vec<String>,
    /// Its layout, the least and the greatest tooth sum of its pairs; nothing where its counts cannot be read.
    pub teeth: Option<(Layout, (u16, u16))>,
    /// The transverse module of its gears, where known.
    pub module: Option<Length>,
}

/// Whether a gear set goes into the case of another, and how that is known.
#[derive(Clone, Debug, PartialEq)]
pub enum CaseFit {
    /// Both are known to go into this case, and nothing known of their teeth says otherwise.
    Named {
        /// The case family, as the first of them writes it.
        family: String,
    },
    /// Layout and tooth sums agree; one of the two names no case.
    BySums {
        /// Whether both pitches are known, and agree.
        is_pitch_known: bool,
    },
    /// It does not.
    No(Misfit),
    /// The teeth of one of them cannot be read.
    Unknown,
}

/// Why a gear set does not go into the case of another.
#[derive(Clone, Debug, PartialEq)]
pub enum Misfit {
    /// They are laid out differently: the set like this.
    Layout(Layout),
    /// They have no tooth sum in common.
    Sums {
        /// The least and the greatest of the set.
        of: (u16, u16),
        /// Those of the other.
        other: (u16, u16),
    },
    /// Their teeth are not of one size.
    Pitch {
        /// The transverse module of the set.
        of: Length,
        /// The transverse module of the other set.
        other: Length,
    },
    /// Each names its cases, and none is the same; the first that the set names.
    Family(String),
}

impl CaseNeeds {
    /// What a gearbox asks of a case; `families` names those it is known to go into, parted by semicolons.
    pub fn of(gearbox: Option<&Gearbox>, families: &str, module: Option<Length>) -> Self {
        let families = families.split(';').map(str::trim).filter(|family| !family.is_empty()).map(str::to_owned).collect();
        let teeth = gearbox.and_then(|gearbox| Some((gearbox.layout(), ToothSums::of(gearbox).range()?)));
        Self { families, teeth, module }
    }
}

impl Entry {
    /// What a gear set asks of a case; its pitch stands nowhere in the catalogue.
    pub fn case_needs(&self) -> CaseNeeds {
        CaseNeeds::of(self.gearbox().as_ref(), self.text(Column::Case), None)
    }
}

/// Whether a set goes into the case that another goes into.
///
/// What is known of the teeth weighs more than a name: sets of one family whose sums differ do not fit.
pub fn fit(set: &CaseNeeds, other: &CaseNeeds) -> CaseFit {
    let is_same = |one: &str, other: &str| {
        let (one, other) = (one.split_whitespace(), other.split_whitespace());
        one.map(str::to_ascii_lowercase).eq(other.map(str::to_ascii_lowercase))
    };
    let shared = set.families.iter().find(|family| other.families.iter().any(|theirs| is_same(family, theirs)));
    if let Some(misfit) = misfit_of_teeth(set, other) {
        return CaseFit::No(misfit);
    }
    match (shared, set.families.first(), other.families.first()) {
        (Some(family), _, _) => CaseFit::Named { family: family.clone() },
        (None, Some(family), Some(_)) => CaseFit::No(Misfit::Family(family.clone())),
        _ if set.teeth.is_none() || other.teeth.is_none() => CaseFit::Unknown,
        _ => CaseFit::BySums { is_pitch_known: set.module.is_some() && other.module.is_some() },
    }
}

/// What is known of the teeth of both and does not agree.
fn misfit_of_teeth(set: &CaseNeeds, other: &CaseNeeds) -> Option<Misfit> {
    /// Two modules measured on the bench that are nearer than this are one. Common practice, no published source.
    const SAME: f64 = 0.005;
    if let (Some((layout, of)), Some((other_layout, other))) = (set.teeth, other.teeth) {
        if layout != other_layout {
            return Some(Misfit::Layout(layout));
        }
        if of.0 > other.1 || other.0 > of.1 {
            return Some(Misfit::Sums { of, other });
        }
    }
    let (of, other) = (set.module?, other.module?);
    ((of / other).value - 1.0).abs().gt(&SAME).then_some(Misfit::Pitch { of, other })
}

impl CaseFit {
    /// The answer in a few words, the other called by its letter: `not A’s case: tooth sum 54, not 55`.
    pub fn words(&self, letter: char) -> String {
        match self {
            Self::Named { family } => format!("same case: {family}"),
            Self::BySums { .. } => "fits by sums, case not named".into(),
            Self::No(misfit) => format!("not {letter}’s case: {}", misfit.words()),
            Self::Unknown => "teeth not readable".into(),
        }
    }

    /// The answer in the fewest words, where the reason stands elsewhere: `not A’s case`; nothing where it is not known.
    pub fn short(&self, letter: char) -> Option<String> {
        Some(match self {
            Self::Named { .. } => format!("{letter}’s case"),
            Self::BySums { .. } => format!("{letter}’s tooth sums"),
            Self::No(_) => format!("not {letter}’s case"),
            Self::Unknown => return None,
        })
    }

    /// Whether it goes in, by name or by what is known of its teeth.
    pub fn goes_in(&self) -> bool {
        matches!(self, Self::Named { .. } | Self::BySums { .. })
    }

    /// Why it does not fit, where it does not.
    pub fn misfit(&self) -> Option<&Misfit> {
        match self {
            Self::No(misfit) => Some(misfit),
            _ => None,
        }
    }
}

impl Misfit {
    /// The reason as part of a sentence: `tooth sum 54 where the case takes 55`.
    pub fn reason(&self) -> String {
        match self {
            Self::Sums { of, other } => format!("tooth sum {} where the case takes {}", span(*of), span(*other)),
            Self::Layout(layout) => format!("laid out otherwise: {}", layout.words()),
            Self::Pitch { .. } => "teeth of another pitch".into(),
            Self::Family(family) => format!("made for another case: {family}"),
        }
    }

    /// The reason in a few words: `tooth sum 54, not 55`.
    pub fn words(&self) -> String {
        match self {
            Self::Sums { of, other } => format!("tooth sum {}, not {}", span(*of), span(*other)),
            Self::Layout(layout) => layout.words().into(),
            Self::Pitch { .. } => "another pitch".into(),
            Self::Family(family) => family.clone(),
        }
    }
}

/// `55`, or `54 to 55` where the pairs of a set differ.
fn span((least, greatest): (u16, u16)) -> String {
    if least == greatest { least.to_string() } else { format!("{least} to {greatest}") }
}
