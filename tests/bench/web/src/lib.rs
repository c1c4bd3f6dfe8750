//! The finder's searches, called by name from a page that takes the time.

#[path = "../../ground.rs"]
pub mod ground;

use std::sync::Arc;

use layshaft::finder::{Search, Wish};

/// Goes through the ten million combinations; answers how many were judged one by one.
fn judged(wishes: Vec<Wish>, every_one: bool) -> f64 {
    let search = Search::new(Arc::new(ground::table()), wishes, ground::given());
    let mut search = if every_one { search.exhaustive() } else { search };
    #[expect(clippy::cast_precision_loss, reason = "ten million")]
    let count = search.advance(u64::MAX).judged as f64;
    count
}

/// Every combination judged one by one.
#[unsafe(no_mangle)]
pub extern "C" fn search_each() -> f64 {
    judged(ground::preferences(), true)
}

/// A typical wish list.
#[unsafe(no_mangle)]
pub extern "C" fn search_typical() -> f64 {
    judged(ground::typical(), false)
}
