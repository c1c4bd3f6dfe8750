//! Any text as a tyre: it never panics, and a size that was read is written and read again the same.
#![no_main]

use layshaft::problem::Explain;
use layshaft::tyre;
use layshaft::units::System;
use libfuzzer_sys::fuzz_target;

fuzz_target!(|bytes: &[u8]| {
    let Ok(text) = std::str::from_utf8(bytes) else { return };
    for system in [System::Inch, System::Metric] {
        match tyre::read(text, system) {
            Ok(tyre) => {
                assert!(tyre.rolling().circumference.value > 0.0);
                let _ = (tyre.alternatives(), tyre.speed_limit(), tyre.load_limit());
                if let Some(size) = tyre.size() {
                    let again = tyre::read(&size.to_string(), system);
                    assert_eq!(again.as_ref().ok().and_then(|again| again.size()), Some(size));
                }
            }
            Err(error) => assert!(!error.what().is_empty() && !error.what_to_do().is_empty()),
        }
    }
});
