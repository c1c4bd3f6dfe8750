//! What is measured: an invented catalogue of ten million combinations, wishes over it, and a car that accelerates.
//!
//! The same figures go to the benchmarks of this machine (`native`), to the module that runs in the browser (`web`), and as plain numbers to the
//! programs beside which Layshaft is measured (`peers`). `report` writes them all into one table.

pub mod car;
pub mod ground;
