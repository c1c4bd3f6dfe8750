//! What is taken over from before is what would be worked out anew.

use layshaft::catalogue::Catalogue;
use layshaft::job::{Choice, Field, InsideField, Job, JobChoice, JobField, PullField, SetupField, demo};
use layshaft::questions::{Answers, OnShelf, analyse_job, analyse_job_after};

fn setup_field(job: &Job, at: usize, field: SetupField) -> Field {
    Field::Setup(job.setups[at].id, field)
}

/// Edits of everything that answers hang on, one after the other.
fn edits(job: &Job) -> Vec<(Field, &'static str)> {
    let pull = |field| Field::Job(JobField::Pull(field));
    vec![
        (pull(PullField::Mass), "1300"),
        (Field::Job(JobField::Shift), "6100"),
        (setup_field(job, 1, SetupField::Inside(InsideField::Pitch)), "10 dp"),
        (setup_field(job, 1, SetupField::Inside(InsideField::Helix)), "22"),
        (pull(PullField::PeakTorque), "190"),
        (pull(PullField::Limit), "5900"),
        (Field::Job(JobField::Cruise), "55"),
        (Field::Job(JobField::InsideAt), "3000"),
        (Field::Job(JobField::SyncTime), "0.4"),
        (Field::Job(JobField::LiningLimits), "5 3 0.09 0.45"),
        (setup_field(job, 0, SetupField::Gear(1)), "31/24"),
        (setup_field(job, 0, SetupField::Gear(1)), "no gear"),
        (setup_field(job, 2, SetupField::FinalDrive), "41/11"),
        (setup_field(job, 2, SetupField::Tyre), "165R13"),
        (setup_field(job, 2, SetupField::Unsynchronised), "1"),
        (setup_field(job, 0, SetupField::Name), "another name"),
        (Field::Job(JobField::Dial), "1025"),
        (pull(PullField::Rows), "rpm,lbf·ft\n1000,100\n3000,160\n6000,140"),
        (pull(PullField::Mass), "none"),
    ]
}

/// Every answer, asked for and written out.
fn written(answers: &Answers) -> String {
    let all = answers.setups.iter().map(|one| (one.gears(), one.road(), one.pull(), one.inside(), one.tyres(), one.speedo()));
    format!("{:?} {:?}", answers.conditions, all.collect::<Vec<_>>())
}

#[test]
fn a_job_known_before_is_answered_as_a_new_one() {
    let shelf = OnShelf::of(&Catalogue::built_in());
    let shelves = shelf.shelves();
    let mut job = demo::job();
    let mut before = analyse_job(&job, shelves);
    let mut check = |job: &Job, what: &str| {
        let after = analyse_job_after(job, shelves, Some(&before));
        assert_eq!(written(&after), written(&analyse_job(job, shelves)), "{what}");
        before = after;
    };
    for (field, text) in edits(&job) {
        job.type_text(field, text.into());
        check(&job, text);
    }
    for (choice, id) in
        [(JobChoice::InsideGear, "3"), (JobChoice::Lining, "other"), (JobChoice::Drive, "front"), (JobChoice::ShiftRule, "limit")]
    {
        job.choose(Choice::Job(choice), id);
        check(&job, id);
    }
    job.setups.swap(0, 2);
    check(&job, "setups change places");
}
