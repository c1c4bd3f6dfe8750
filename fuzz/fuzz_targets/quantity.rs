//! Any text as a number with its unit: it never panics, and what is read lies inside its limits.
#![no_main]

use layshaft::problem::Explain;
use layshaft::units::{
    self, AngularVelocity, Length, Limits, Mass, Measured, Power, Pressure, System, Torque, TurnsPerDistance, Velocity, limits, number,
};
use libfuzzer_sys::fuzz_target;

fn read<Q: Measured>(text: &str, limits: &Limits) {
    for system in [System::Inch, System::Metric] {
        match units::read::<Q>(text, system, limits) {
            Ok(quantity) => assert!(limits.allow(limits.measure(&quantity))),
            Err(error) => assert!(!error.what().is_empty() && !error.what_to_do().is_empty()),
        }
    }
}

fuzz_target!(|bytes: &[u8]| {
    let Ok(text) = std::str::from_utf8(bytes) else { return };
    for row in limits::ALL {
        read::<Length>(text, row);
        read::<Velocity>(text, row);
        read::<AngularVelocity>(text, row);
        read::<TurnsPerDistance>(text, row);
        read::<Mass>(text, row);
        read::<Torque>(text, row);
        read::<Power>(text, row);
        read::<Pressure>(text, row);
    }
    if let Some((readings, _)) = number::leading(text) {
        for value in readings.into_iter().flatten() {
            let _ = number::show(value, 3);
        }
    }
    let _ = number::clip(text);
});
