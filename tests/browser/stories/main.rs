//! Stories in a real browser: what a person does, and what they then see.
//!
//! The page was rebuilt as four places; the files beside this one that are not named here still wait to be walked through it anew.

mod addresses;
mod book;
mod comfort;
mod figures;
mod keeping;
mod paper;
mod sending;
mod setups;
