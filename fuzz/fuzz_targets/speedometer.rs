//! Any text as speedometer gears, a dial or the readings of a road check: it never panics, and the readings can be solved.
#![no_main]

use layshaft::problem::Explain;
use layshaft::speedometer::{read, solve_road_check};
use layshaft::units::System;
use libfuzzer_sys::fuzz_target;

fuzz_target!(|bytes: &[u8]| {
    let Ok(text) = std::str::from_utf8(bytes) else { return };
    let said = |error: read::SpeedometerTextError| assert!(!error.what().is_empty() && !error.what_to_do().is_empty());
    let _ = read::train(text).map_err(said);
    for system in [System::Inch, System::Metric] {
        let _ = read::dial(text, system).map_err(said);
        if let Ok(readings) = read::readings(text, system) {
            assert!(readings.is_empty() || solve_road_check(&readings).is_ok());
        }
    }
});
