//! A figure asked backwards equals trying every part of the shelf by hand, one at a time.

use layshaft::catalogue::{Catalogue, PartKind};
use layshaft::job::{Job, SetupId, demo};
use layshaft::questions::{Answers, Shelves, analyse_job};
use layshaft::sheet::Words;
use layshaft::units::common::in_rpm;
use layshaft::wanted::{KEPT, Search};

/// Top gear at the cruise speed, by the answers alone.
fn cruise_rpm(job: &Job) -> Option<f64> {
    let Answers { setups, .. } = analyse_job(job, Shelves::default());
    setups.first()?.road().cruise_in_top().map(in_rpm)
}

/// Every part put into the first setup in turn: how far the cruise rpm is from the one wanted, nearest first.
fn by_hand(job: &Job, catalogue: &Catalogue, wanted: f64) -> Vec<f64> {
    let now = cruise_rpm(job).unwrap();
    let mut off = Vec::new();
    for entry in PartKind::ALL.into_iter().flat_map(|kind| catalogue.entries(kind)) {
        let mut tried = job.clone();
        tried.setups[0].take_part(entry);
        if let Some(rpm) = cruise_rpm(&tried).filter(|rpm| (rpm - now).abs() > 1e-6) {
            off.push((rpm - wanted).abs());
        }
    }
    off.sort_by(f64::total_cmp);
    off
}

/// What a search answers, gone through in slices.
fn found(job: &Job, id: SetupId, catalogue: &Catalogue, key: &str, wanted: f64, slice: usize) -> Vec<(String, f64)> {
    let Some(mut search) = Search::new(job, id, Words::Us, catalogue, key, wanted) else { return Vec::new() };
    while !search.advance(slice) {}
    search.best().into_iter().map(|change| (change.part.title().to_owned(), change.value)).collect()
}

#[test]
fn the_nearest_parts_are_those_that_trying_every_one_finds() {
    let (job, catalogue) = (demo::job(), Catalogue::built_in());
    for wanted in [2_600.0, 3_000.0, 3_907.0, 4_500.0] {
        let by_search: Vec<f64> =
            found(&job, job.setups[0].id, &catalogue, "cruise_rpm", wanted, 7).iter().map(|(_, rpm)| (rpm - wanted).abs()).collect();
        let by_hand = by_hand(&job, &catalogue, wanted);
        assert_eq!(by_search.len(), KEPT);
        for (search, hand) in by_search.iter().zip(&by_hand) {
            assert!((search - hand).abs() < 1e-6, "wanted {wanted}: {by_search:?} against {:?}", by_hand.get(..KEPT));
        }
    }
}

/// 70 mph, 185/70R14 (1.8788 m a turn, worked with the demo job’s figures): 70 × 1609.344 ÷ 60 ÷ 1.8788 = 999.3 turns of the wheel a minute;
/// 3,907 rpm are 43/11 of that, so 3,000 rpm want an axle of 3.002.
#[test]
fn a_slice_more_or_less_changes_nothing_and_an_axle_answers() {
    let (job, catalogue) = (demo::job(), Catalogue::built_in());
    let at_once = found(&job, job.setups[0].id, &catalogue, "cruise_rpm", 3_000.0, usize::MAX);
    assert_eq!(at_once, found(&job, job.setups[0].id, &catalogue, "cruise_rpm", 3_000.0, 1));
    assert_eq!(at_once.len(), KEPT);
    assert!(at_once.iter().all(|(_, rpm)| (rpm - 3_000.0).abs() < 200.0), "{at_once:?}");
}

#[test]
fn what_is_no_figure_of_the_setup_is_not_searched_for() {
    let (job, catalogue) = (demo::job(), Catalogue::built_in());
    assert!(Search::new(&job, job.setups[0].id, Words::Us, &catalogue, "no_such_figure", 1.0).is_none());
    assert!(Search::new(&job, SetupId(4_000), Words::Us, &catalogue, "cruise_rpm", 1.0).is_none());
}
