//! A part of the document: its members, and which of them a file leaves out while they are blank.

use super::Chosen;
use crate::units::Typed;

/// Something that may be blank.
pub trait Blank {
    /// Whether nothing is typed or chosen.
    fn is_blank(&self) -> bool;
}

impl Blank for String {
    fn is_blank(&self) -> bool {
        self.is_empty()
    }
}

impl Blank for Typed {
    fn is_blank(&self) -> bool {
        Self::is_blank(self)
    }
}

impl<T> Blank for Chosen<T> {
    fn is_blank(&self) -> bool {
        self.is_nothing()
    }
}

/// A part whose members may all be missing from a file: an older one opens with what is blank. Their order is that of the file.
///
/// With its inputs, `pub struct Part, PartField of part`, a member that is typed has its row behind it: `member: Type, Variant: row;`, and
/// one that is a part with inputs of its own names them: `member: Part => Group(GroupField);`.
macro_rules! document {
    (
        $(#[$of:meta])* pub struct $name:ident, $fields:ident of $root:ident {
            $(#[$of_first:meta] $first:ident: $first_type:ty $(=> $first_group:ident($first_inner:ty))? $(, $first_field:ident: $first_row:expr)?;)*
        }
        $(left out while blank {
            $(#[$of_blank:meta] $blank:ident: $blank_type:ty $(=> $blank_group:ident($blank_inner:ty))? $(, $blank_field:ident: $blank_row:expr)?;)*
        })?
        $(always written { $(#[$of_last:meta] $last:ident: $last_type:ty;)* })?
    ) => {
        $crate::job::document::document! {
            $(#[$of])* pub struct $name { $(#[$of_first] pub $first: $first_type,)* }
            $(left out while blank { $(#[$of_blank] pub $blank: $blank_type,)* })?
            $(always written { $(#[$of_last] pub $last: $last_type,)* })?
        }

        $crate::job::inputs::inputs! {
            #[doc = concat!("The texts of a [`", stringify!($name), "`].")]
            $fields of $root: $name, with {
                $($(#[$of_first] $first_group($first_inner) at $first;)?)*
                $($($(#[$of_blank] $blank_group($blank_inner) at $blank;)?)*)?
            };

            $($(#[$of_first] $first_field at $first: $first_row;)?)*
            $($($(#[$of_blank] $blank_field at $blank: $blank_row;)?)*)?
        }
    };
    (
        $(#[$of:meta])* pub struct $name:ident { $($(#[$of_first:meta])* pub $first:ident: $first_type:ty,)* }
        $(left out while blank { $($(#[$of_blank:meta])* pub $blank:ident: $blank_type:ty,)* })?
        $(always written { $($(#[$of_last:meta])* pub $last:ident: $last_type:ty,)* })?
    ) => {
        $(#[$of])*
        #[derive(Clone, Debug, Default, PartialEq, Eq, serde::Serialize, serde::Deserialize)]
        #[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
        #[serde(default)]
        pub struct $name {
            $($(#[$of_first])* pub $first: $first_type,)*
            $($(
                $(#[$of_blank])*
                #[serde(skip_serializing_if = "crate::job::document::Blank::is_blank")]
                pub $blank: $blank_type,
            )*)?
            $($($(#[$of_last])* pub $last: $last_type,)*)?
        }

        impl $crate::job::document::Blank for $name {
            fn is_blank(&self) -> bool {
                *self == Self::default()
            }
        }
    };
}
pub(super) use document;
