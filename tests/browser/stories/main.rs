//! Stories in a real browser: what a person does, and what they then see.

mod hosting;
mod offline;
mod opening;
