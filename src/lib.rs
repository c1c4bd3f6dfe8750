//! Layshaft: a gear-ratio and driveline planner for those who rebuild manual gearboxes.
#[cfg(target_arch = "wasm32")]
pub mod app;
pub mod gearing;
pub mod problem;
pub mod speedometer;
pub mod units;
