//! Undo and redo: n steps back is where it began, one step a field and not a key.

use layshaft::job::edit::Toward;
use layshaft::job::history::DEPTH;
use layshaft::job::{Field, History, Job, JobField, SetupField, SetupId, demo};
use proptest::prelude::*;
use proptest::test_runner::Config;

/// One thing a person does.
#[derive(Clone, Debug)]
enum Act {
    Type(Field, String),
    Leave,
    Add,
    Copy(u32),
    Move(u32, bool),
    Remove(u32),
}

fn act() -> impl Strategy<Value = Act> {
    let field = prop_oneof![
        Just(Field::Job(JobField::Shift)),
        Just(Field::Job(JobField::Title)),
        (1_u32..6, 0_usize..6).prop_map(|(id, gear)| Field::Setup(SetupId(id), SetupField::Gear(gear))),
        (1_u32..6).prop_map(|id| Field::Setup(SetupId(id), SetupField::Tyre)),
    ];
    prop_oneof![
        6 => (field, "[0-9/]{0,5}").prop_map(|(field, text)| Act::Type(field, text)),
        2 => Just(Act::Leave),
        1 => Just(Act::Add),
        1 => (1_u32..6).prop_map(Act::Copy),
        1 => (1_u32..6, any::<bool>()).prop_map(|(id, left)| Act::Move(id, left)),
        1 => (1_u32..6).prop_map(Act::Remove),
    ]
}

fn perform(history: &mut History, job: &mut Job, act: Act) {
    match act {
        Act::Type(field, text) => {
            history.before_typing(job, field);
            job.type_text(field, text);
            return;
        }
        Act::Leave => return history.close(),
        _ => history.before_change(job),
    }
    match act {
        Act::Add => drop(job.add_setup()),
        Act::Copy(id) => drop(job.copy_setup(SetupId(id))),
        Act::Move(id, left) => job.move_setup(SetupId(id), if left { Toward::Left } else { Toward::Right }),
        Act::Remove(id) => job.remove_setup(SetupId(id)),
        Act::Type(..) | Act::Leave => {}
    }
}

proptest! {
    #![proptest_config(Config { cases: 64, failure_persistence: None, ..Config::default() })]

    #[test]
    fn all_the_way_back_and_forth(acts in prop::collection::vec(act(), 1..DEPTH)) {
        let start = demo::job();
        let (mut history, mut job) = (History::default(), start.clone());
        for act in acts {
            perform(&mut history, &mut job, act);
            prop_assert!((1..=6).contains(&job.setups.len()));
            let mut ids: Vec<_> = job.setups.iter().map(|setup| setup.id).collect();
            ids.sort();
            ids.dedup();
            prop_assert_eq!(ids.len(), job.setups.len(), "every setup has an id of its own");
        }
        let end = job.clone();
        let mut steps = 0;
        while let Some(before) = history.undo(&job) {
            job = before;
            steps += 1;
        }
        prop_assert_eq!(&job, &start);
        for _ in 0..steps {
            job = history.redo(&job).unwrap();
        }
        prop_assert_eq!(job, end);
        prop_assert!(!history.can_redo());
    }
}

#[test]
fn two_hundred_and_fifty_edits_are_undone_one_by_one() {
    let (mut history, mut job) = (History::default(), demo::job());
    let field = Field::Job(JobField::Cruise);
    for speed in 0..250 {
        history.before_typing(&job, field);
        job.type_text(field, speed.to_string());
        history.close();
    }
    for speed in (0..249).rev() {
        job = history.undo(&job).unwrap();
        assert_eq!(job.cruise.text, speed.to_string());
    }
    assert_eq!(history.undo(&job), Some(demo::job()));
    assert!(!history.can_undo());
}

#[test]
fn keys_in_one_field_are_one_step() {
    let (mut history, mut job) = (History::default(), demo::job());
    for text in ["7", "75", "75 ", "75 m", "75 mph"] {
        history.before_typing(&job, Field::Job(JobField::Cruise));
        job.type_text(Field::Job(JobField::Cruise), text.into());
    }
    assert_eq!(history.undo(&job), Some(demo::job()));
}

#[test]
fn what_is_done_after_an_undo_ends_the_way_forward() {
    let (mut history, mut job) = (History::default(), demo::job());
    history.before_change(&job);
    job.add_setup();
    job = history.undo(&job).unwrap();
    assert!(history.can_redo());
    history.before_typing(&job, Field::Job(JobField::Title));
    assert!(!history.can_redo());
}
