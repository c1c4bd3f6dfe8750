//! Which way a helix winds.

use serde::{Deserialize, Serialize};

worded! {
    /// Which way a helix winds.
    #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
    #[serde(rename_all = "lowercase")]
    pub enum Hand {
        /// Seen with its axis upright, the teeth rise to the left.
        Left => "left";
        /// Seen with its axis upright, the teeth rise to the right.
        Right => "right";
    }
    /// The hand's word, as it stands in a list.
    pub fn word;
}

impl Hand {
    /// The hand of a gear that meshes with one of this hand on a parallel shaft.
    #[must_use]
    pub fn of_mate(self) -> Self {
        match self {
            Self::Left => Self::Right,
            Self::Right => Self::Left,
        }
    }

    /// The hand of that word, in any case; one letter will do.
    pub fn read(word: &str) -> Option<Self> {
        match word.trim().to_ascii_lowercase().as_str() {
            "left" | "l" | "lh" => Some(Self::Left),
            "right" | "r" | "rh" => Some(Self::Right),
            _ => None,
        }
    }
}
