//! The few things everything on the page is built of.

pub mod chart;
pub mod choice;
pub mod entry;
pub mod field;
pub mod figure;
pub mod follow;
pub mod pointer;
pub mod rows;
pub mod select;
pub mod theme;

pub use chart::Chart;
pub use choice::Choice;
pub use field::{TextArea, TextField};
pub use rows::{Rows, ShortRow};
pub use select::SelectField;
pub use theme::ThemeSwitch;
