//! A file or link that cannot be opened says why and what to do.

use layshaft::job::book::Record;
use layshaft::job::link::{self, LinkError};
use layshaft::job::{Job, backup, demo, file, incoming};
use layshaft::problem::Explain;

#[track_caller]
fn check(text: &str, what: &str, what_to_do: &str) {
    let why = incoming::read(text).unwrap_err();
    assert!(why.what().starts_with(what), "{}", why.what());
    assert!(why.what_to_do().starts_with(what_to_do), "{}", why.what_to_do());
}

#[test]
fn files_that_are_refused_say_why() {
    check("", "the text is not a job (EOF", "choose a file that was saved as a job here");
    check("<html>", "the text is not a job (expected value at line 1", "choose a file");
    check("{}", "the text is not a job (it names no schema)", "choose a file");
    check(r#"{"schema":99}"#, "the job was kept by a newer version (shape 99)", "load the page again");
    check(r#"{"layshaft":"book","schema":99}"#, "the job was kept by a newer version (shape 99)", "load the page again");
    check(r#"{"layshaft":"book","schema":1}"#, "the text is not a job (it is a book without jobs)", "choose a file");
    check(r#"{"schema":1,"title":"x"}"#, "the text is not a job (missing field", "choose a file");
    check(&"[".repeat(10_000), "the text is not a job (recursion limit", "choose a file");
    check(&" ".repeat(file::LONGEST + 1), "the text is not a job", "choose a file");
    check(&" ".repeat(backup::LONGEST + 1), "the text has 240000001 bytes, more than any job", "choose a file");
}

#[test]
fn a_job_without_setups_or_with_too_many_is_refused() {
    let mut job = demo::job();
    job.setups.clear();
    check(&file::to_text(&job), "the job holds no setup", "choose a job of 1 to 6 setups");
    let mut job = demo::job();
    let one = job.setups[0].clone();
    job.setups = vec![one; 7];
    check(&file::to_text(&job), "the job holds 7 setups", "choose a job of 1 to 6 setups");
}

#[test]
fn a_record_of_a_newer_version_is_refused_and_not_cut_down() {
    let why = Record::from_text(r#"{"schema":3,"id":"j1","revision":1,"job":{}}"#).unwrap_err();
    assert_eq!(why, file::FileError::Newer(3));
}

#[test]
fn a_link_too_long_names_its_length_and_offers_the_file() {
    // Text without pattern does not pack: digits of a linear congruential sequence (Numerical Recipes' constants, from memory).
    let mut seed = 1_u32;
    let noise: String = std::iter::repeat_with(|| {
        seed = seed.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
        char::from(b'a' + u8::try_from(seed >> 28).unwrap())
    })
    .take(20_000)
    .collect();
    let why = link::fragment(&Job { notes: noise, ..demo::job() }).unwrap_err();
    assert!(matches!(why, LinkError::TooLong(characters) if characters > link::LONGEST), "{why:?}");
    assert_eq!(why.what_to_do(), "save the job as a file and send that");
}

#[test]
fn damaged_and_newer_links_are_told_apart() {
    let good = link::fragment(&demo::job()).unwrap();
    let cut = &good[..good.len() - 40];
    for (fragment, why) in [
        (cut, LinkError::Damaged),
        ("#j=", LinkError::Damaged),
        ("#j=1.", LinkError::Damaged),
        ("#j=1.!!", LinkError::Damaged),
        ("#j=x.AA", LinkError::Damaged),
        ("#gears", LinkError::Damaged),
        ("#j=2.AA", LinkError::Newer("2".into())),
    ] {
        assert_eq!(link::open(fragment).unwrap_err(), why, "{fragment}");
    }
}

#[test]
fn a_link_that_would_unpack_to_more_than_a_job_is_refused() {
    use base64::Engine;
    let packed = miniz_oxide::deflate::compress_to_vec(&vec![b' '; 3 * file::LONGEST], 9);
    let fragment = format!("#j=1.{}", base64::engine::general_purpose::URL_SAFE_NO_PAD.encode(packed));
    assert_eq!(link::open(&fragment).unwrap_err(), LinkError::Damaged);
}
