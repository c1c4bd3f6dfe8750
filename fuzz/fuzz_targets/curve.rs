//! Any text as rows from a dynamometer: never a panic, and a curve that was read answers everywhere inside its range.
#![no_main]

use layshaft::motion::curve::rows;
use layshaft::units::System;
use libfuzzer_sys::fuzz_target;

fuzz_target!(|bytes: &[u8]| {
    let Ok(text) = std::str::from_utf8(bytes) else { return };
    for system in [System::Inch, System::Metric] {
        let pasted = rows::read(text, system);
        let Ok(curve) = pasted.curve else { continue };
        let range = curve.range();
        for speed in [range.from, (range.from + range.to) / 2.0, range.to] {
            assert!(curve.torque(speed).is_some_and(|torque| torque.value.is_finite()));
        }
    }
});
