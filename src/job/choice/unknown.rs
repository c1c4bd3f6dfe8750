//! A word of a file that no option of its choice has.

use crate::problem::Explain;
use crate::units::number;

/// A word of a file that is none of a choice's options.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct UnknownOption {
    /// As it stands in the file.
    pub word: String,
    /// What the choice is called.
    pub label: &'static str,
}

impl Explain for UnknownOption {
    fn what(&self) -> String {
        format!("“{}” is not in the list beside “{}”", number::clip(&self.word), self.label)
    }

    fn what_to_do(&self) -> String {
        "choose from the list".into()
    }
}
