//! Parts that leave the shelf with a job that is done: only the shop's own, only what is counted, never more than there is.

use layshaft::catalogue::stock::{self, OffShelf};
use layshaft::catalogue::{Catalogue, Column, Entry, PartKind};
use layshaft::job::listing::{Fitting, used_in};
use layshaft::job::{Gearbox, Job, demo};
use layshaft::units::{System, Typed};
use proptest::prelude::*;

use crate::finder_ground::{axle, gear_set, tyre};

fn counted(entry: Entry, count: &str) -> Entry {
    entry.with(Column::Quantity, count)
}

/// Two of one box, one axle, six tyres; an axle that nobody counted.
fn shelf() -> Catalogue {
    let set = counted(gear_set("Corner four", "25/30", &["37/18", "32/23", "28/27", "direct"], true), "2");
    let entries = vec![set, counted(axle("43/11", true), "1"), counted(tyre("185/70R14", true), "6"), axle("41/11", true)];
    Catalogue::empty().with_own(entries)
}

/// A job whose only setup has those parts.
fn job(set: &str, axle: &str, tyre: &str) -> Job {
    let mut job = demo::empty(System::Metric);
    let setup = &mut job.setups[0];
    setup.gearbox = Gearbox { name: set.into(), ..Gearbox::default() };
    setup.final_drive = axle.into();
    setup.tyre = Typed::new(tyre, System::Metric);
    job
}

fn take(shelf: &Catalogue, job: &Job) -> (Catalogue, Vec<OffShelf>) {
    shelf.take_off(&job.setups[0].own_parts(shelf.all_own(), |entry| entry.count().is_some_and(|count| count > 0)))
}

fn counts(shelf: &Catalogue) -> Vec<(Option<u32>, bool)> {
    PartKind::ALL.into_iter().flat_map(|kind| shelf.own(kind)).map(|entry| (entry.count(), entry.in_stock())).collect()
}

/// 2 − 1 boxes, 1 − 1 axles, 6 − 4 tyres; then only two tyres are left to take. Of none there is none in stock.
#[test]
fn a_job_takes_its_parts() {
    let job = job("Corner four", "43/11", "185/70R14");
    let (after, taken) = take(&shelf(), &job);
    assert_eq!(counts(&after), [(Some(1), true), (Some(0), false), (None, true), (Some(2), true)]);
    assert_eq!(stock::said(&taken), "Off the shelf: Corner four (1 left), 43/11 (none left), 4 of 185/70R14 (2 left).");
    let (last, taken) = take(&after, &job);
    assert_eq!(stock::said(&taken), "Off the shelf: Corner four (none left), 2 of 185/70R14 (none left).");
    assert_eq!(counts(&last), [(Some(0), false), (Some(0), false), (None, true), (Some(0), false)]);
    assert_eq!(counts(&last.put_back(&taken)), counts(&after));
}

#[test]
fn what_is_not_counted_or_not_the_shops_own_stays() {
    let (after, taken) = take(&shelf(), &job("Curlew four, close", "41/11", "165R13"));
    assert_eq!((counts(&after), taken), (counts(&shelf()), Vec::new()));
    let built_in = Catalogue::built_in();
    let part = built_in.entries(PartKind::GearSet).next().unwrap();
    assert_eq!(built_in.take_off(&[part]), (built_in.clone(), Vec::new()));
}

#[test]
fn a_part_says_in_which_jobs_it_is() {
    let fitting = |title: &str, axle: &str| Fitting { title: title.into(), setups: job("", axle, "").setups };
    let part = axle("43/11", true);
    let jobs = ["Old coupé", "Fernhill", "Hill climb", "Tow car"].map(|title| fitting(title, "43/11"));
    assert_eq!(used_in(&jobs[..1], &part).as_deref(), Some("in 1 job: Old coupé"));
    assert_eq!(used_in(&jobs[..2], &part).as_deref(), Some("in 2 jobs: Old coupé, Fernhill"));
    assert_eq!(used_in(&jobs, &part).as_deref(), Some("in 4 jobs: Old coupé, Fernhill, Hill climb and 1 more"));
    assert_eq!(used_in(&[fitting("another", "39/10")], &part), None);
}

proptest! {
    /// Whatever is counted: what is taken and put back leaves the shelf as it was, and what left is what is missing.
    #[test]
    fn taken_and_put_back_is_as_before(boxes in 1..9_u32, axles in 1..9_u32, tyres in 1..9_u32) {
        let counts_of = [boxes, axles, tyres].map(|count| count.to_string());
        let entries = vec![
            counted(gear_set("Corner four", "25/30", &["37/18", "direct"], true), &counts_of[0]),
            counted(axle("43/11", true), &counts_of[1]),
            counted(tyre("185/70R14", true), &counts_of[2]),
        ];
        let before = Catalogue::empty().with_own(entries);
        let (after, taken) = take(&before, &job("Corner four", "43/11", "185/70R14"));
        prop_assert_eq!(taken.iter().map(|one| one.many).sum::<u32>(), 2 + tyres.min(4));
        for one in &taken {
            prop_assert_eq!(after.get(one.kind, &one.id).and_then(Entry::count), Some(one.remain));
        }
        prop_assert_eq!(counts(&after.put_back(&taken)), counts(&before));
    }
}
