//! Gears that are worn, chipped, turned down or measured in the wrong place are known by readings that contradict one another; and whether a gear
//! runs with that mate at that centre distance.

use layshaft::job::{BenchField, Field, Job, JobField, MeasureField as F, demo};
use layshaft::questions::build;
use layshaft::sheet::{Piece, Section, Tone, Words};
use layshaft::units::System;

fn job(units: System, texts: &[(F, &str)]) -> Job {
    let mut job = demo::empty(units);
    for (field, text) in texts {
        job.type_text(Field::Job(JobField::Bench(BenchField::Measure(*field))), (*text).into());
    }
    job
}

fn section(job: &Job) -> Section {
    build(job, Words::Us).sections.into_iter().find(|section| section.id == "measure").unwrap()
}

/// Every judgement that stands in a section, the good ones too.
fn verdicts(job: &Job) -> Vec<(Tone, String)> {
    let rows = section(job).rows;
    let cells = rows.iter().flat_map(|row| row.cells.iter());
    let each = cells.flat_map(|cell| cell.pieces().cloned().collect::<Vec<_>>()).filter_map(|piece| match piece {
        Piece::Verdict(verdict) => Some((verdict.tone, verdict.text)),
        _ => None,
    });
    each.collect()
}

#[track_caller]
fn judges(job: &Job, tone: Tone, text: &str) {
    let found = verdicts(job);
    assert!(found.iter().any(|(of, said)| *of == tone && said.contains(text)), "{text}: {found:?}");
}

#[track_caller]
fn answers(job: &Job, text: &str) {
    let said = section(job).answer.plain();
    assert!(said.contains(text), "{text}: {said}");
}

/// Module 2.5, 20 teeth, not shifted: W3 = 2.5 cos 20° (2.5 π + 20 inv 20°) = 19.1511 mm, W4 7.380 more; 55 mm over its tips.
const TWENTY: [(F, &str); 4] = [(F::Teeth, "20"), (F::OverTips, "55"), (F::Span, "19.1511"), (F::SpanMore, "26.5314")];

fn twenty(more: &[(F, &str)]) -> Job {
    let mut texts: Vec<(F, &str)> = TWENTY.iter().copied().filter(|(field, _)| more.iter().all(|(other, _)| other != field)).collect();
    texts.extend(more);
    job(System::Metric, &texts)
}

/// 50 teeth of module 2.5 stand 62.5 mm apart.
#[test]
fn they_mesh_at_their_centre_distance() {
    let pair = twenty(&[(F::MateTeeth, "30"), (F::Centre, "62.5")]);
    judges(&pair, Tone::Good, "they mesh at this center distance");
    crate::any_job::near(&pair, "measure.backlash_mm", 0.0, 2e-3);
    crate::any_job::near(&pair, "measure.mate_profile_shift", 0.0, 1e-3);
    // A mate 0.1 mm short over four of its teeth leaves that much square to the flanks: 0.1 ÷ cos 20° = 0.1064 mm around.
    let worn = twenty(&[(F::MateTeeth, "30"), (F::Centre, "62.5"), (F::MateSpan, "26.7816")]);
    judges(&worn, Tone::Good, "they mesh at this center distance");
    crate::any_job::near(&worn, "measure.backlash_mm", 0.106_42, 2e-4);
    // 0.2 mm nearer, both as they are: they have no room.
    let near = twenty(&[(F::MateTeeth, "30"), (F::Centre, "62.3"), (F::MateSpan, "26.8816")]);
    judges(&near, Tone::Stop, "they bind: a center distance of 62.50");
    answers(&near, "With the 30-tooth mate it binds: it wants a center distance of 62.50");
    // No profile shift brings 30 teeth to 20 at 50 mm.
    answers(&twenty(&[(F::MateTeeth, "30"), (F::Centre, "50")]), "no profile shift brings them to a 30-tooth mate at 50.000 mm: 62.50");
}

/// Worn flanks leave the roots where they were: 62.5 − (80 + 43.75) ÷ 2 = 0.625 mm over the mate's tips. A root measured at 43.4 mm leaves 0.8.
#[test]
fn the_room_at_the_roots() {
    let worn = [(F::Span, "19.0511"), (F::SpanMore, "26.4314"), (F::MateTeeth, "30"), (F::Centre, "62.5")];
    crate::any_job::near(&twenty(&worn), "measure.root_clearance_mm", 0.625, 1e-6);
    crate::any_job::near(&twenty(&worn), "measure.tip_clearance_mm", 0.625, 1e-6);
    crate::any_job::near(&twenty(&[&worn[..], &[(F::Root, "43.4")]].concat()), "measure.root_clearance_mm", 0.8, 1e-6);
}

/// 12 and 13 teeth of module 2.5, each shifted by 0.4: 32.952 mm apart, 1.1675 teeth in contact. By 0.5 each and 33.321 mm apart, tips of full
/// height leave 33.321 − (37.5 + 28.75) ÷ 2 = 0.196 mm, less than a tenth of a module.
#[test]
fn a_mesh_that_is_rough_or_has_no_room() {
    let shifted = |tips: &'static str, two: &'static str, three: &'static str, centre: &'static str| {
        job(
            System::Metric,
            &[(F::Teeth, "12"), (F::OverTips, tips), (F::Span, two), (F::SpanMore, three), (F::MateTeeth, "13"), (F::Centre, centre)],
        )
    };
    judges(&shifted("37.00", "12.175", "19.555", "32.952"), Tone::Caution, "fewer than 1.2 teeth share the load");
    judges(&shifted("37.50", "12.346", "19.726", "33.321"), Tone::Stop, "a tip meets the other’s root: lower the tips, or set them apart");
}

/// Spans that leave no backlash, and half a millimetre felt.
#[test]
fn a_backlash_felt_that_the_spans_do_not_leave() {
    let felt = twenty(&[(F::MateTeeth, "30"), (F::Centre, "62.5"), (F::MateSpan, "26.8816"), (F::Backlash, "0.5")]);
    judges(&felt, Tone::Caution, "the backlash felt is 0.500 mm off what the spans leave: was it felt on the teeth, or is one span off?");
}

/// Flanks 0.1 mm short over the span are worn; tips a quarter of a millimetre low are chipped or turned down. Two millimetres low they contradict.
#[test]
fn worn_flanks_and_chipped_tips() {
    let worn = twenty(&[(F::Span, "19.0511"), (F::SpanMore, "26.4314")]);
    judges(&worn, Tone::Good, "fits: base pitch off 0.000 mm");
    crate::any_job::near(&worn, "measure.flanks_lost_mm", 0.1, 1e-3);
    let low = twenty(&[(F::OverTips, "54.75")]);
    judges(&low, Tone::Caution, "the tips are 0.250 mm low: chipped, turned down, or measured short");
    let chipped = twenty(&[(F::OverTips, "53")]);
    answers(&chipped, "without the reading over the tips it would be module 2.5, 20°");
    answers(&chipped, "The tips read 2.000 mm low: chipped, turned down, or not across the gear. Read them again.");
    let other = twenty(&[(F::OverTips, "58.9")]);
    answers(&other, "The tips read 3.900 mm high: is it the right gear, and the right unit? Read them again.");
}

/// Over six of 20 teeth W6 = 41.292 mm, and the jaws would touch on √(46.98² + 41.29²) = 62.5 mm, beyond tips of 55. Over two of 60 teeth,
/// W2 = 13.171 mm, they touch on √(140.95² + 13.17²) = 141.6 mm, below a root of 143.75. A span of 24° wants a face wider than W sin `β_b`.
#[test]
fn a_span_in_the_wrong_place() {
    let beyond = twenty(&[(F::Span, "41.292"), (F::SpanMore, "48.672"), (F::Spanned, "6")]);
    judges(&beyond, Tone::Caution, "over 6 teeth the jaws touch beyond the tips: measure over 3");
    let below = [(F::Teeth, "60"), (F::OverTips, "155"), (F::Span, "13.171"), (F::SpanMore, "20.552"), (F::Spanned, "2")];
    judges(&job(System::Metric, &below), Tone::Caution, "over 2 teeth the jaws touch below the flanks: measure over 7");
    let narrow =
        [(F::Teeth, "32"), (F::OverTips, "3.120"), (F::Span, "1.1652"), (F::SpanMore, "1.4112"), (F::Print, "25.5"), (F::Face, "0.3")];
    judges(&job(System::Inch, &narrow), Tone::Caution, "is too narrow for the span over 5 teeth, which wants 0.4");
}
