//! The bench: what lies there, and does it belong together?

pub mod answer;
