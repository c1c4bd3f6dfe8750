//! A word of a file that no option of its choice has.

use crate::units::number;

/// A word of a file that is none of a choice's options.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct UnknownOption {
    /// As it stands in the file.
    pub word: String,
    /// What the choice is called.
    pub label: &'static str,
}

explain! { UnknownOption:
    error => format!("“{}” is not in the list beside “{}”", number::clip(&error.word), error.label), "choose from the list";
}
