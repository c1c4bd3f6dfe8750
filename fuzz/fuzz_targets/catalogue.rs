//! Any bytes as a file of catalogue entries: never a panic, and what was taken is kept and read again the same.
#![no_main]

use layshaft::catalogue::import::Differing;
use layshaft::catalogue::{Catalogue, file, saved};
use libfuzzer_sys::fuzz_target;
use std::sync::LazyLock;

static SHELF: LazyLock<Catalogue> = LazyLock::new(Catalogue::built_in);

fuzz_target!(|bytes: &[u8]| {
    let Ok(text) = file::text(bytes) else { return };
    let Ok(plan) = SHELF.plan(&text) else { return };
    for differing in [Differing::Replace, Differing::Leave] {
        let after = SHELF.apply(&plan, differing);
        let kept = saved::to_text(&after);
        assert_eq!(saved::from_text(&kept).map(|again| saved::to_text(&again)).ok(), Some(kept));
    }
});
