//! A link carries the whole job: out and back is the same, whatever was typed.

use layshaft::job::{Field, Job, JobField, SetupField, SetupId, demo, link};
use proptest::prelude::*;

#[test]
fn the_demo_job_fits_into_a_short_link_and_comes_back_whole() {
    let fragment = link::fragment(&demo::job()).unwrap();
    assert!(link::is_link(&fragment));
    assert!(fragment.len() < 2_000, "{}", fragment.len());
    assert!(fragment[3..].chars().all(|c| c.is_ascii_alphanumeric() || "-_.".contains(c)), "{fragment}");
    assert_eq!(link::open(&fragment).unwrap(), demo::job());
}

#[test]
fn six_setups_fit_into_a_link() {
    let mut job = demo::job();
    for _ in 0..3 {
        job.copy_setup(SetupId(3));
    }
    assert_eq!(job.setups.len(), 6);
    assert_eq!(link::open(&link::fragment(&job).unwrap()).unwrap(), job);
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 256, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn whatever_was_typed_comes_back(title in ".{0,200}", tyre in ".{0,60}", gear in any::<String>()) {
        let mut job: Job = demo::job();
        job.type_text(Field::Job(JobField::Title), title);
        job.type_text(Field::Setup(SetupId(1), SetupField::Tyre), tyre);
        job.type_text(Field::Setup(SetupId(2), SetupField::Gear(1)), gear);
        prop_assert_eq!(link::open(&link::fragment(&job).unwrap()).unwrap(), job);
    }

    #[test]
    fn any_fragment_is_answered(fragment in "#?j?=?[0-9]{0,2}\\.?[A-Za-z0-9_-]{0,80}") {
        let _ = link::open(&fragment);
    }
}
