//! Measure a gear beside figures worked by hand, the ways readings contradict one another, and what cannot be used.

use layshaft::job::{BenchField, Choice, Field, Job, JobChoice, JobField, MeasureField, demo};
use layshaft::questions::{bench, build};
use layshaft::sheet::{Section, Sheet, Words};
use layshaft::units::System;

use crate::any_job::near;

fn job(units: System, texts: &[(MeasureField, &str)]) -> Job {
    let mut job = demo::empty(units);
    for (field, text) in texts {
        job.type_text(Field::Job(JobField::Bench(BenchField::Measure(*field))), (*text).into());
    }
    job
}

fn section(sheet: &Sheet) -> &Section {
    sheet.sections.iter().find(|section| section.id == "measure").unwrap()
}

fn said(job: &Job) -> String {
    section(&build(job, Words::Us)).answer.plain()
}

fn labels(job: &Job) -> Vec<String> {
    section(&build(job, Words::Us)).rows.iter().map(|row| row.label.clone()).collect()
}

use MeasureField as F;

/// A gear of 32 teeth: over the tips, over five and six teeth, the angle its tips print.
const UNKNOWN: [(F, &str); 5] =
    [(F::Teeth, "32"), (F::OverTips, "3.120"), (F::Span, "1.1652"), (F::SpanMore, "1.4112"), (F::Print, "25.5")];

/// One tooth more is 0.2460 in = 6.248 mm; π × 25.4/12 × cos 20° = 6.249: 12 DP at 20°, and no other pitch at no usual angle lies within two
/// thousandths. sin β = 32 × 2.1167 × tan 25.5° ÷ 79.248 = 0.4077: 24.06°. d = 32 ÷ 12 ÷ cos 24° = 2.9190 in, so that
/// x = (3.120 − 2.9190) × 12 ÷ 2 − 1 = 0.206. Unworn it would span (cos 20° (4.5 π + 32 × 0.019197) + 2 × 0.206 sin 20°) ÷ 12 = 1.1670 in:
/// about two thousandths are lost.
#[test]
fn a_gear_without_a_name() {
    let mut unknown = job(System::Inch, &UNKNOWN);
    unknown.choose(Choice::Job(JobChoice::MeasureHand), "right");
    near(&unknown, "measure.fit_1.profile_shift", 0.206, 1e-3);
    near(&unknown, "measure.flanks_lost_in", 0.0018, 2.5e-4);
    near(&unknown, "measure.helix_d", 24.0, 1e-9);
    near(&unknown, "measure.pitch_diameter_in", 2.9190, 5e-5);
    near(&unknown, "measure.base_pitch_in", 0.24601, 5e-6);
    // π × 2.9190 ÷ tan 24°
    near(&unknown, "measure.lead_in", 20.597, 2e-3);
    let said = said(&unknown);
    assert!(
        said.starts_with("These are 12 DP, 20°, 24° right hand, profile shift +0.21. Over the span the flanks have lost 0.00"),
        "{said}"
    );
}

/// With 23 teeth at 2.525 in: a₀ = 55 ÷ 24 ÷ cos 24° = 2.5085 in; the sum of the profile shifts comes to about 0.2, so the mate has none.
#[test]
fn with_its_mate() {
    let mut texts = UNKNOWN.to_vec();
    texts.extend([(F::MateTeeth, "23"), (F::Centre, "2.5250")]);
    let matched = job(System::Inch, &texts);
    near(&matched, "measure.mate_profile_shift", 0.0, 0.02);
    assert!(said(&matched).contains("With a 23-tooth mate cut to match and unworn it has 0.00"), "{}", said(&matched));
    // What is lost over the span, square to the flanks, is backlash: 2 mₙ sin αₙ Δx both times.
    let sheet = build(&matched, Words::Us);
    let lost = crate::any_job::figure(&sheet, 0, "measure.flanks_lost_in").value;
    near(&matched, "measure.backlash_normal_in", lost, 1e-9);
    // A thicker mate binds, and a wider centre distance is named.
    texts.push((F::MateSpan, "0.9100"));
    let thick = job(System::Inch, &texts);
    // At 0.8955 in it would have none; 0.0145 more is 0.26 modules of profile shift.
    assert!(said(&thick).contains("it binds: it wants a center distance of 2.5424 in at least."), "{}", said(&thick));
    let mut far = UNKNOWN.to_vec();
    far.extend([(F::MateTeeth, "23"), (F::Centre, "3.5")]);
    let said = said(&job(System::Inch, &far));
    assert!(said.contains("no profile shift brings them to a 23-tooth mate at 3.5000 in: 2.52"), "{said}");
}

/// Spans alone of a gear of module 2.5 at 20°, W3 = 19.152, W4 = 26.532: 10 DP at 22.5° has a base pitch 8 µm less. Both are named, and so is
/// what tells them apart; over the tips 55.00 mm leave both, as the second's profile shift takes it up.
#[test]
fn one_base_pitch_of_two() {
    let spans = [(F::Teeth, "20"), (F::Span, "19.152"), (F::SpanMore, "26.532")];
    let two = job(System::Metric, &spans);
    let said = said(&two);
    assert!(
        said.contains("module 2.5 at 20°") && said.contains("10 DP at 22.5°") && said.contains("To tell them apart, measure"),
        "{said}"
    );
}

/// A gear of module 2.5 and 20 teeth, 20°, without profile shift, 55 mm over its tips; over 24 it would be 25.
#[test]
fn readings_that_contradict() {
    let spans = [(F::Teeth, "20"), (F::Span, "19.152"), (F::SpanMore, "26.532"), (F::OverTips, "58.9")];
    let wrong = said(&job(System::Metric, &spans));
    assert!(
        wrong.starts_with("These readings contradict one another: without the reading over the tips it would be module 2.5, 20°"),
        "{wrong}"
    );
    // Told to have gone over four, the span can be of nothing.
    let four = [(F::Teeth, "20"), (F::Span, "19.152"), (F::SpanMore, "26.532"), (F::OverTips, "55"), (F::Spanned, "4")];
    let wrong = said(&job(System::Metric, &four));
    assert!(wrong.contains("without the number of teeth that the span went over it would be module 2.5"), "{wrong}");
    // Inches typed as mm, and spans the wrong way round.
    let swapped = [(F::Teeth, "32"), (F::OverTips, "79.248"), (F::Span, "1.4112 in"), (F::SpanMore, "1.1652 in"), (F::Print, "25.5")];
    assert!(
        said(&job(System::Metric, &swapped)).starts_with("These are 12 DP, 20°, 24° helix"),
        "{}",
        said(&job(System::Metric, &swapped))
    );
}

/// Over pins alone and over the tips: 32 teeth of 4 DP over wires of 1.728/4 in read 8.6032 in (Machinery's Handbook, by a gear shop's page).
#[test]
fn over_pins() {
    let pins = job(System::Inch, &[(F::Teeth, "32"), (F::OverTips, "8.5"), (F::Pin, "0.432"), (F::OverPins, "8.6032")]);
    let found = labels(&pins);
    assert!(found.iter().any(|label| label == "4 DP, 20°, straight teeth"), "{found:?}");
    near(&pins, "measure.fit_1.profile_shift", 0.0, 1e-3);
    // A pin that sits on the tips is said, with one that would do.
    let large = job(
        System::Inch,
        &[(F::Teeth, "32"), (F::OverTips, "8.5"), (F::Span, "2.6885"), (F::SpanMore, "3.4266"), (F::Pin, "1.2"), (F::OverPins, "11")],
    );
    let sheet = build(&large, Words::Us);
    let text = format!("{:?}", section(&sheet).rows);
    assert!(text.contains("sits on the tips") || said(&large).contains("without the reading over pins"), "{}", said(&large));
}

fn problems(field: F, text: &str) -> Vec<String> {
    let job = job(System::Inch, &[(F::Teeth, "20"), (field, text)]);
    bench::problems(&job).iter().map(layshaft::problem::Problem::sentence).collect()
}

/// What cannot be used is said beside its field, with what to do.
#[test]
fn what_cannot_be_used_is_said() {
    for (field, text, part) in [
        (F::Teeth, "5", "“5” is not a number from 8 to 150. Type how many teeth, counted once round."),
        (F::Teeth, "many", "“many” is not a number from 8 to 150"),
        (F::MateTeeth, "5", "is not a number from 8 to 150"),
        (F::Print, "90", "“90” is outside what the angle of the print can be. Type 0 to 60°"),
        (F::OverTips, "55", "is outside what the diameter of the gear can be"),
        (F::Spanned, "20", "“20” is not a number from 1 to 19"),
        (F::GiveOrTake, "1", "is outside what the doubt of a reading can be"),
        (F::Centre, "0.5 in", "is outside what the centre distance can be"),
    ] {
        let found = problems(field, text);
        assert!(found.iter().any(|sentence| sentence.contains(part)), "{text}: {found:?}");
    }
}

/// What is asked for next where little is typed.
#[test]
fn what_to_measure_first() {
    assert_eq!(said(&job(System::Metric, &[])), "");
    assert_eq!(
        said(&job(System::Metric, &[(F::Teeth, "32")])),
        "Measure over the tips, and the span over 4 and 5 teeth: three readings name most gears."
    );
    let tips = job(System::Metric, &[(F::Teeth, "20"), (F::OverTips, "55")]);
    assert!(said(&tips).contains("module 2.5") && said(&tips).contains("To tell them apart, measure"), "{}", said(&tips));
}
