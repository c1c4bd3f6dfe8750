//! Layshaft: a gear-ratio and driveline planner for those who rebuild manual gearboxes.
//!
//! The rooms, in the order data flows. A room uses only rooms above it in this list.
//!
//! Foundations: [`units`] reads and shows quantities, [`problem`] is the one shape of all that can be wrong,
//! [`order`] puts rows into order, [`spreadsheet`] writes and reads tables as text, [`sliced`] is long work done in parts.
//!
//! The trade: [`gearing`] (teeth, ratios, layouts), [`tyre`] (sizes and what they roll), [`speedometer`] (drive and driven gears),
//! [`motion`] (what engine, car and gears do on the road),
//! [`driveline`] (how fast a driveshaft may turn),
//! [`toothload`] (what teeth, bearings and synchronisers bear),
//! [`fits`] (how parts sit in one another, end play and shims).
//!
//! The shelf: [`catalogue`] holds what can be chosen, built in and the shop's own.
//!
//! The document: [`job`] keeps what was typed.
//!
//! The other way round: [`finder`] searches the shelf for what a customer wishes, or designs a gear set, on plain numbers.
//!
//! What is shown: [`sheet`] is the data model of rows, figures and words; [`chart`] the drawing kit, on a canvas, as SVG or as a bitmap.
//!
//! The questions: [`questions`] has a folder for each. It reads what was typed, works the answer out, and sets it into rows and pictures.
//! [`wanted`] asks a figure backwards: which single change from the shelf makes it so?
//!
//! The browser: `app` shows and edits; it exists for wasm32 only, so the compiler keeps the rest clean of it.

// Beyond the lints of the whole workspace: nothing here may stop on what a user typed.
#![warn(clippy::indexing_slicing, clippy::string_slice, clippy::unreachable)]

#[cfg(target_arch = "wasm32")]
pub mod app;
pub mod catalogue;
pub mod chart;
pub mod driveline;
pub mod finder;
pub mod fits;
pub mod gearing;
pub mod job;
pub mod motion;
pub mod order;
pub mod problem;
pub mod questions;
pub mod sheet;
pub mod sliced;
pub mod speedometer;
pub mod spreadsheet;
pub mod toothload;
pub mod tyre;
pub mod units;
pub mod wanted;
