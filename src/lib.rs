//! Layshaft: a gear-ratio and driveline planner for those who rebuild manual gearboxes.
//!
//! The rooms, in the order data flows. A room uses only rooms above it in this list.
//!
//! Foundations: [`units`] reads and shows quantities, [`problem`] is the one shape of all that can be wrong,
//! [`order`] puts rows into order, [`spreadsheet`] writes and reads tables as text.
//!
//! The trade: [`gearing`] (teeth, ratios, layouts), [`tyre`] (sizes and what they roll), [`speedometer`] (drive and driven gears),
//! [`motion`] (what engine, car and gears do on the road),
//! [`toothload`] (what teeth, bearings and synchronisers bear).
//!
//! The shelf: [`catalogue`] holds what can be chosen, built in and the shop's own.
//!
//! The document: [`job`] keeps what was typed, [`setup`] reads and checks it, [`analysis`] works everything out,
//! [`sheet`] sets the answers into rows of figures with their workings.
//!
//! The other way round: [`finder`] starts from what the customer wishes and searches the shelf, or designs a gear set.
//!
//! The pictures: [`chart`] draws what the sheet shows, on a canvas, as SVG or as a bitmap, and says the same in words.
//!
//! The browser: `app` shows and edits; it exists for wasm32 only, so the compiler keeps the rest clean of it.

// Beyond the lints of the whole workspace: nothing here may stop on what a user typed.
#![warn(clippy::indexing_slicing, clippy::string_slice, clippy::unreachable)]

pub mod analysis;
#[cfg(target_arch = "wasm32")]
pub mod app;
pub mod catalogue;
pub mod chart;
pub mod finder;
pub mod gearing;
pub mod job;
pub mod motion;
pub mod order;
pub mod problem;
pub mod setup;
pub mod sheet;
pub mod speedometer;
pub mod spreadsheet;
pub mod toothload;
pub mod tyre;
pub mod units;
