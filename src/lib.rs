//! Layshaft: a gear-ratio and driveline planner for those who rebuild manual gearboxes.
//!
//! The rooms, in the order data flows. A room uses only rooms above it in this list.
//!
//! Foundations: [`units`] reads and shows quantities, [`problem`] is the one shape of all that can be wrong,
//! [`order`] puts rows into order, [`spreadsheet`] writes and reads tables as text, [`sliced`] is long work done in parts,
//! [`ledger`] is texts as a page has them and as they are written.
//!
//! The trade: [`gearing`] (teeth, ratios, layouts), [`tyre`] (sizes and what they roll), [`speedometer`] (drive and driven gears),
//! [`motion`] (what engine, car and gears do on the road),
//! [`driveline`] (how fast a driveshaft may turn, and how its joints work),
//! [`sound`] (what tones all that makes, and which fits a noise),
//! [`toothload`] (what teeth, bearings and synchronisers bear),
//! [`toothform`] (what one gear measures, and which standard gear that makes it),
//! [`counting`] (how many teeth the gear in a photograph has),
//! [`fits`] (how parts sit in one another, ISO 286, end play and shims), [`checklist`] (steps as lines of text, ticked and read),
//! [`faults`] (symptoms, their causes, and the tests that tell them apart).
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
//!
//! # A tour
//!
//! Typed texts go into a job, every question is answered from them, and a figure is read off the sheet: the rpm at 70 mph in top gear.
//!
//! ```
//! use layshaft::job::{Field, JobField, SetupField, demo};
//! use layshaft::questions;
//! use layshaft::sheet::{Piece, Words};
//! use layshaft::units::System;
//!
//! // An empty job has one setup with four blank gears. What is typed stays text.
//! let mut job = demo::empty(System::Inch);
//! let setup = job.setups.first().ok_or("no setup")?.id;
//! let typed = [
//!     (SetupField::Constant, "25/30"),
//!     (SetupField::Gear(0), "37/18"),
//!     (SetupField::Gear(1), "32/23"),
//!     (SetupField::Gear(2), "28/27"),
//!     (SetupField::Gear(3), "direct"),
//!     (SetupField::FinalDrive, "43/11"),
//!     (SetupField::Tyre, "185/70R14"),
//! ];
//! for (field, text) in typed {
//!     job.type_text(Field::Setup(setup, field), text.into());
//! }
//! job.type_text(Field::Job(JobField::Cruise), "70".into());
//!
//! // The sheet is worked out from the job alone: a section for each question, a cell for each setup.
//! let sheet = questions::build(&job, Words::Us);
//! let road = sheet.sections.iter().find(|section| section.id == "road").ok_or("no such question")?;
//! let row = road.rows.iter().find(|row| row.key == "cruise").ok_or("no such row")?;
//! let mut pieces = row.cells.iter().flat_map(|cell| cell.pieces());
//! let figure = pieces.find_map(|piece| if let Piece::Figure(figure) = piece { Some(figure) } else { None }).ok_or("no figure")?;
//!
//! // By hand: the tyre is 356 + 2 × 130 = 616 mm high and rolls 3.05 × 616 = 1,878.8 mm. 70 mph are 1,877.57 m a minute:
//! // ÷ 1.8788 m = 999.34 turns of the wheel, × 43/11 = 3,906.5 turns of the engine.
//! assert_eq!(figure.text(), "3,907 rpm");
//! assert!(figure.working.is_some());
//! # Ok::<(), &str>(())
//! ```

// Beyond the lints of the whole workspace: nothing here may stop on what a user typed.
#![warn(clippy::indexing_slicing, clippy::string_slice, clippy::unreachable)]

#[macro_use]
pub mod problem;
#[macro_use]
mod worded;

#[cfg(target_arch = "wasm32")]
pub mod app;
pub mod catalogue;
pub mod chart;
pub mod checklist;
pub mod counting;
pub mod driveline;
pub mod faults;
pub mod finder;
pub mod fits;
pub mod gearing;
pub mod job;
pub mod ledger;
pub mod motion;
pub mod order;
pub mod qr;
pub mod questions;
pub mod sheet;
pub mod sliced;
pub mod sound;
pub mod speedometer;
pub mod spreadsheet;
pub mod swap;
pub mod toothform;
pub mod toothload;
pub mod tyre;
pub mod units;
pub mod wanted;
