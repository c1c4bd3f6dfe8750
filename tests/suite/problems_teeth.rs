//! What cannot be made, measured or meshed is said with the nearest thing that would do; what is doubtful is a caution.

use layshaft::job::{BenchField, Choice, CutterField, Field, InsideField, Job, JobChoice, JobField, MeasureField, SetupField, demo};
use layshaft::problem::Problem;
use layshaft::questions::{bench, build, read_all};
use layshaft::sheet::{Section, Tone, Words};
use layshaft::units::System;

use CutterField as C;
use MeasureField as M;

fn job(units: System, fields: &[(BenchField, &str)]) -> Job {
    let mut job = demo::empty(units);
    for (field, text) in fields {
        job.type_text(Field::Job(JobField::Bench(*field)), (*text).into());
    }
    job
}

fn order(fields: &[(C, &str)]) -> Job {
    let fields: Vec<(BenchField, &str)> = fields.iter().map(|(field, text)| (BenchField::Cutter(*field), *text)).collect();
    job(System::Metric, &fields)
}

fn measured(units: System, fields: &[(M, &str)]) -> Job {
    let fields: Vec<(BenchField, &str)> = fields.iter().map(|(field, text)| (BenchField::Measure(*field), *text)).collect();
    job(units, &fields)
}

fn section(job: &Job, id: &str) -> Section {
    build(job, Words::Us).sections.into_iter().find(|section| section.id == id).unwrap()
}

/// What stands in a section as a caution, or as what must not be left so.
fn cautions(job: &Job, id: &str) -> Vec<(Tone, String)> {
    section(job, id).cautions().map(|(_, _, verdict)| (verdict.tone, verdict.text.clone())).collect()
}

#[track_caller]
fn warns(job: &Job, id: &str, text: &str) {
    let found = cautions(job, id);
    assert!(found.iter().any(|(tone, said)| *tone == Tone::Caution && said.contains(text)), "{text}: {found:?}");
}

#[track_caller]
fn answers(job: &Job, id: &str, text: &str) {
    let said = section(job, id).answer.plain();
    assert!(said.contains(text), "{text}: {said}");
}

/// Everything that can be wrong with a gear that can be drawn is a caution, in the answer too where nothing worse is.
#[test]
fn faults_of_a_gear_to_be_cut_are_cautions() {
    // 1 − 5 sin² 20° = 0.415.
    let few = order(&[(C::Teeth, "10"), (C::Pitch, "2.5")]);
    warns(&few, "cutter", "the 10-tooth gear is undercut: +0.42 of profile shift would do");
    answers(&few, "cutter", "The 10-tooth gear is undercut");
    let pointed = order(&[(C::Teeth, "10"), (C::Pitch, "2.5"), (C::ProfileShift, "0.9")]);
    warns(&pointed, "cutter", "too narrow to harden");
    answers(&pointed, "cutter", "The 10-tooth gear is pointed");
    // Its mate's tips want √(107.5² − 96.318²) ÷ 2 = 23.87 mm of a line of 63.75 sin 20° = 21.80 mm: below the base circle.
    let digs = order(&[(C::Teeth, "10"), (C::Pitch, "2.5"), (C::MateTeeth, "41"), (C::Centre, "63.75"), (C::ProfileShift, "0")]);
    warns(&digs, "cutter", "the involute of the 10-tooth gear begins on");
    warns(&digs, "cutter", "its mate’s tips reach below that");
    let huge = order(&[(C::Teeth, "120"), (C::Pitch, "10 mm"), (C::Allowance, "25cd")]);
    warns(&huge, "cutter", "go to a pitch diameter of 1,000.000 mm");
    let off = order(&[(C::Teeth, "20"), (C::Pitch, "2 mm"), (C::Relief, "0.02 mm"), (C::ReliefFrom, "30 mm")]);
    warns(&off, "cutter", "tip relief cannot begin on 30.000 mm");
    let narrow = order(&[(C::Teeth, "32"), (C::Pitch, "2 mm"), (C::Helix, "30"), (C::Face, "3 mm")]);
    warns(&narrow, "cutter", "a face of 3.000 mm is too narrow for it");
}

/// 20/41 of module 2 at 61 mm are whole and hunt: nothing is said of them.
#[test]
fn a_sound_pair_has_no_caution() {
    let sound = order(&[(C::Teeth, "20"), (C::Pitch, "2 mm"), (C::MateTeeth, "41"), (C::Centre, "61")]);
    assert_eq!(cautions(&sound, "cutter"), []);
}

/// 20 and 30 share 10; of their neighbours 19/30, 20/29 and 20/31 have no factor in common, 21/30 has 3. 32 and 24 share 8, and so on.
#[test]
fn missing_hunting_is_a_caution() {
    let pair = |teeth: &'static str, mate: &'static str| order(&[(C::Teeth, teeth), (C::Pitch, "2 mm"), (C::MateTeeth, mate)]);
    let said = "20 and 30 teeth share a factor of 10, so the same teeth meet again and again: 19/30, 20/29 or 20/31 would hunt";
    warns(&pair("20", "30"), "cutter", said);
    answers(&pair("20", "30"), "cutter", said);
    warns(&pair("32", "24"), "cutter", "share a factor of 8, so the same teeth meet again and again: 31/24, 32/23 or 32/25 would hunt");
    // 34 and 36 have 2, 35 and 35 would have 35: one tooth off the even pair always hunts with the other, by one.
    warns(
        &pair("36", "18"),
        "cutter",
        "share a factor of 18, so the same teeth meet again and again: 35/18, 37/18, 36/17 or 36/19 would hunt",
    );
    // A measured gear whose mate was counted is one to be ordered too.
    let known = measured(
        System::Metric,
        &[(M::Teeth, "20"), (M::OverTips, "55"), (M::Span, "19.151"), (M::SpanMore, "26.531"), (M::MateTeeth, "30"), (M::Centre, "62.5")],
    );
    warns(&known, "cutter", "20 and 30 teeth share a factor of 10");
    assert!(cautions(&pair("20", "31"), "cutter").is_empty());
}

/// 20 on 31 of module 2, relieved from 42 mm and from 41: √(21² − 18.7939²) = 9.3697 and 8.1879 mm of roll in place of 11.4386, so that
/// (9.3697 + 17.4429 ... − 51 sin 20°) ÷ (2 π cos 20°) = 1.2588 and 1.0586 teeth, where tip to tip there are 1.6088.
#[test]
fn relief_shortens_the_contact() {
    let pair = |from: &'static str| {
        order(&[
            (C::Teeth, "20"),
            (C::Pitch, "2 mm"),
            (C::MateTeeth, "31"),
            (C::Centre, "51"),
            (C::ProfileShift, "0"),
            (C::Relief, "0.02 mm"),
            (C::ReliefFrom, from),
        ])
    };
    crate::any_job::near(&pair("42 mm"), "cutter.contact_ratio", 1.608_788, 1e-6);
    crate::any_job::near(&pair("42 mm"), "cutter.contact_ratio_relieved", 1.258_753, 1e-6);
    assert_eq!(cautions(&pair("42 mm"), "cutter"), []);
    crate::any_job::near(&pair("41 mm"), "cutter.contact_ratio_relieved", 1.058_587, 1e-6);
    warns(&pair("41 mm"), "cutter", "up to where tip relief begins the contact ratio is 1.06, below 1.2: let relief begin higher");
    answers(&pair("41 mm"), "cutter", "With its tip relief the contact ratio is 1.06, below 1.2");
    let rests = format!("{:?}", section(&pair("41 mm"), "cutter").rests);
    assert!(rests.contains("taken to end where this gear’s tip relief begins") && rests.contains("common practice"), "{rests}");
}

/// Few teeth shifted far out: 12 and 13 of module 2.5 on 33.6 mm want 1.0 modules in all.
#[test]
fn a_short_contact_is_a_caution() {
    let short = order(&[(C::Teeth, "12"), (C::Pitch, "2.5"), (C::MateTeeth, "13"), (C::Centre, "33.3")]);
    warns(&short, "cutter", "is below 1.2: less profile shift, or more teeth");
}

/// A text that no gear has, at its own field, with what would do.
#[test]
fn what_no_gear_has_is_refused_at_its_field() {
    let said = |job: &Job| -> Vec<String> { bench::problems(job).iter().map(Problem::sentence).collect() };
    for (field, text, sentence) in [
        (BenchField::Measure(M::Teeth), "5", "“5” is not a number from 8 to 150. Type how many teeth, counted once round."),
        (BenchField::Measure(M::MateTeeth), "5", "“5” is not a number from 8 to 150. Type how many teeth, counted once round."),
        (BenchField::Cutter(C::Teeth), "5", "“5” is not a number from 8 to 150. Type how many teeth, counted once round."),
        (BenchField::Cutter(C::MateTeeth), "5", "“5” is not a number from 8 to 150. Type how many teeth, counted once round."),
        (BenchField::Measure(M::Print), "90", "“90” is outside what the angle of the print can be. Type 0 to 60°"),
        (BenchField::Cutter(C::Helix), "90", "“90” is outside what the helix angle can be. Type 0 to 50°"),
    ] {
        let found = said(&job(System::Metric, &[(field, text)]));
        assert!(found.iter().any(|found| found.starts_with(sentence)), "{field:?}: {found:?}");
    }
    // The same of a setup's gears.
    let mut setup = demo::empty(System::Metric);
    let id = setup.setups[0].id;
    setup.type_text(Field::Setup(id, SetupField::Inside(InsideField::Helix)), "90".into());
    let setup = read_all(&setup).remove(0);
    let found: Vec<String> = setup.problems.iter().map(Problem::sentence).collect();
    assert!(found.iter().any(|found| found.contains("“90” is outside what the helix angle can be. Type 0 to 50°")), "{found:?}");
}

/// A lead so short that no module of the table leaves a gear: nothing is guessed.
#[test]
fn a_lead_that_no_gear_has() {
    let steep = measured(System::Metric, &[(M::Teeth, "60"), (M::OverTips, "155"), (M::Lead, "20 mm")]);
    // π × 60 × 1 ÷ sin 50° = 246.06 mm, of module 1 at the steepest.
    answers(
        &steep,
        "measure",
        "No standard gear of 60 teeth has so short a lead: the shortest is 246.063 mm. Check the lead and the count.",
    );
}

/// 32 teeth of 4 DP: a pin of 1/4 in falls between the flanks to the floor of the gap, as π ÷ 64 is more than 0.25 ÷ (8 cos 20°) + inv 20°;
/// one of 1.2 in rests on the corners of the tips. Near 1.728 ÷ 4 = 0.432 in is right.
#[test]
fn a_pin_in_the_wrong_place_is_told() {
    let with_pin = |pin: &'static str, over: &'static str| {
        let spans = [(M::Teeth, "32"), (M::OverTips, "8.5"), (M::Span, "2.6885"), (M::SpanMore, "3.4266")];
        measured(System::Inch, &[&spans[..], &[(M::Pin, pin), (M::OverPins, over)]].concat())
    };
    warns(
        &with_pin("0.25", "7.875"),
        "measure",
        "a pin of 6.35 mm falls to the bottom of the gap: lay in one of about 10.97 mm (0.432 in)",
    );
    warns(&with_pin("1.2", "11"), "measure", "a pin of 30.48 mm sits on the tips: lay in one of about 10.97 mm (0.432 in)");
    answers(&with_pin("1.2", "11"), "measure", "without the reading over pins it would be 4 DP");
    answers(&with_pin("1.2", "11"), "measure", "A pin of 30.48 mm sits on the tips: lay in one of about 10.97 mm (0.432 in).");
    for (pin, says) in [("1 mm", "falls to the bottom of the gap"), ("10 mm", "sits on the tips"), ("3 mm", "lies below the tips")] {
        let checked = order(&[(C::Teeth, "20"), (C::Pitch, "2.5"), (C::Pin, pin)]);
        warns(&checked, "cutter", &format!("a pin of {pin}").replace(" mm", ".00 mm"));
        warns(&checked, "cutter", &format!("{says}: lay in one of about 4.32 mm (0.170 in)"));
    }
}

/// 20 and 30 teeth of module 2.5 stand 62.5 mm apart without profile shift; at 80 mm no shift brings them together, at 45 mm neither.
#[test]
fn a_centre_distance_that_no_shift_reaches() {
    for centre in ["80", "45"] {
        let gear = order(&[(C::Teeth, "20"), (C::Pitch, "2.5"), (C::MateTeeth, "30"), (C::Centre, centre)]);
        answers(&gear, "cutter", "No profile shift brings it to its mate");
        answers(&gear, "cutter", "these counts want 62.500 mm without profile shift");
        assert!(cautions(&gear, "cutter").iter().any(|(tone, said)| *tone == Tone::Stop && said.contains("62.500 mm")));
    }
}

/// A tool with little rounded tips reaches deeper: ISO 53's profile D has straight flanks down to 1.4 − 0.39 (1 − sin 20°) = 1.1434 modules, so
/// 18 teeth want 1.1434 − 9 sin² 20° = 0.0906, though profile A leaves them whole.
#[test]
fn the_tool_decides_what_is_undercut() {
    let mut gear = order(&[(C::Teeth, "18"), (C::Pitch, "2.5")]);
    assert_eq!(cautions(&gear, "cutter"), []);
    gear.choose(Choice::Job(JobChoice::CutterRack), "D");
    warns(&gear, "cutter", "the 18-tooth gear is undercut: +0.09 of profile shift would do");
    // Split so that it is whole, it is whole of this tool: 0.0906, where halves of nothing would be 0.
    let mut pair = order(&[(C::Teeth, "18"), (C::Pitch, "2.5"), (C::MateTeeth, "41"), (C::Centre, "73.75")]);
    pair.choose(Choice::Job(JobChoice::CutterRack), "D");
    pair.choose(Choice::Job(JobChoice::CutterSplit), "no-undercut");
    crate::any_job::near(&pair, "cutter.profile_shift", 0.090_588, 1e-5);
    assert_eq!(cautions(&pair, "cutter"), []);
}
