//! Any text as the fragment of a link: it never panics, and a job that opens can be sent on.
#![no_main]

use layshaft::job::link::{self, LinkError};
use layshaft::problem::Explain;
use libfuzzer_sys::fuzz_target;

fuzz_target!(|bytes: &[u8]| {
    let Ok(text) = std::str::from_utf8(bytes) else { return };
    match link::open(text) {
        Ok(job) => match link::fragment(&job) {
            Ok(fragment) => assert_eq!(link::open(&fragment), Ok(job)),
            Err(error) => assert!(matches!(error, LinkError::TooLong(_))),
        },
        Err(error) => assert!(!error.what().is_empty() && !error.what_to_do().is_empty()),
    }
});
