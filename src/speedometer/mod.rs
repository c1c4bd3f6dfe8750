//! The speedometer: which gears make it read true, what it reads with those fitted, and what the law allows.
//!
//! Things first: [`gear`] (what lies on the shelf), [`train`] (gears between shaft and cable), [`dial`] (what the dial expects),
//! [`law`] (legal bands as data). Questions: [`reading`] (what it shows), [`shelf`] (the best gears), [`work`] (which of them costs the least), [`road_check`] (what a drive
//! against a receiver says), [`direction`] (which way the cable turns). What people type is read in [`read`].

pub mod dial;
pub mod direction;
pub mod gear;
pub mod law;
pub mod read;
pub mod reading;
pub mod road_check;
pub mod shelf;
pub mod train;
pub mod work;

pub use crate::gearing::geometry::Hand;
pub use dial::Dial;
pub use direction::{Tap, Turning};
pub use gear::{Role, SpeedoGear};
pub use law::{Band, Judgement, TestSpeed};
pub use reading::{Speedometer, shaft_turns};
pub use road_check::{Reading, RoadCheck, Verdict, solve_road_check};
pub use shelf::{Candidate, Ranking, Wanted, rank_shelf};
pub use train::{Adapter, Train};
pub use work::Work;
