//! Any text as a number with its unit: it never panics, and what is read lies inside its limits.
#![no_main]

use layshaft::problem::Explain;
use layshaft::units::{System, limits, number};
use libfuzzer_sys::fuzz_target;

fuzz_target!(|bytes: &[u8]| {
    let Ok(text) = std::str::from_utf8(bytes) else { return };
    for row in limits::ALL {
        for system in [System::Inch, System::Metric] {
            if let Err(error) = row.check(text, system) {
                assert!(!error.what().is_empty() && !error.what_to_do().is_empty());
            }
        }
    }
    if let Some((readings, _)) = number::leading(text) {
        for value in readings.into_iter().flatten() {
            let _ = number::show(value, 3);
        }
    }
    let _ = number::clip(text);
});
