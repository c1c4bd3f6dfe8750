//! Stories in a real browser: what a person does, and what they then see.

mod addresses;
mod bench;
mod book;
mod build;
mod calls;
mod catalogue;
mod comfort;
mod driveline;
mod figures;
mod finding;
mod hosting;
mod inside;
mod keeping;
mod moment;
mod offline;
mod opening;
mod own_shelf;
mod paper;
mod parts;
mod pull;
mod sending;
mod setups;
mod shelf_kept;
mod sizes;
mod speedometer;
mod typing;
