//! Stories in a real browser: what a person does, and what they then see.

mod bench;
mod book;
mod catalogue;
mod comfort;
mod finding;
mod hosting;
mod inside;
mod keeping;
mod offline;
mod opening;
mod paper;
mod parts;
mod pull;
mod sending;
mod sheet;
mod shelf_kept;
mod speedometer;
