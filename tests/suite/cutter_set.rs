//! The pair that turns under a finger, and a whole gear set as one file of sheets, beside figures worked by hand.

use layshaft::chart::Picture;
use layshaft::gearing::Layout;
use layshaft::job::{BenchField, Choice, CutterField, Field, InsideField, Job, JobField, SetupChoice, SetupField, demo};
use layshaft::questions::cutter::pictures;
use layshaft::questions::cutter::sheets::{NoSheets, of_set};
use layshaft::questions::{Shelves, Source, analyse_job};
use layshaft::sheet::{Reader, Words};
use layshaft::units::System;

use crate::any_job::typed;

fn with<T>(job: &Job, read: impl FnOnce(Source<'_>) -> T) -> T {
    let answers = analyse_job(job, Shelves::default());
    read(Source::new(job, &answers, Shelves::default(), Reader { units: job.units, words: Words::Uk }))
}

/// How far a point lies from a closed outline.
fn off(outline: &[(f64, f64)], (x, y): (f64, f64)) -> f64 {
    let edges = outline.iter().zip(outline.iter().cycle().skip(1));
    let each = edges.map(|(from, to)| {
        let (right, up) = (to.0 - from.0, to.1 - from.1);
        let share = ((x - from.0) * right + (y - from.1) * up) / (right * right + up * up).max(1e-18);
        let share = share.clamp(0.0, 1.0);
        (x - from.0 - share * right).hypot(y - from.1 - share * up)
    });
    each.fold(f64::INFINITY, f64::min)
}

/// 20 and 30 teeth of module 2.5 at 62.5 mm, not shifted: working radii of 25 and 37.5 mm. A finger that goes 2 mm to the right turns the lower
/// gear by 2 ÷ 25 = 0.08 rad with the clock, the upper one by 2 ÷ 37.5 = 0.05333 rad against it; a pitch of π × 2.5 = 7.854 mm shows the same again.
/// Wherever they stand, both flanks are where they touch (law of gearing), within what 40 points of a flank leave.
#[test]
fn a_pair_turns_under_a_finger() {
    let mut job = demo::empty(System::Metric);
    for (field, text) in [
        (CutterField::Teeth, "20"),
        (CutterField::Pitch, "2.5"),
        (CutterField::MateTeeth, "30"),
        (CutterField::Centre, "62.5"),
        (CutterField::ProfileShift, "0"),
    ] {
        job.type_text(Field::Job(JobField::Bench(BenchField::Cutter(field))), text.into());
    }
    let still = with(&job, pictures::in_mesh).unwrap();
    let pulled = still.turned_by(2.0).unwrap();
    for (body, axis, angle) in [(1, (0.0, 0.0), 0.08_f64), (0, (0.0, 62.5), -2.0 / 37.5)] {
        let (one, other) = (still.bodies[body].outline[0], pulled.bodies[body].outline[0]);
        let turn = |(x, y): (f64, f64)| (x - axis.0).atan2(y - axis.1);
        assert!((turn(other) - turn(one) - angle).abs() < 1e-12, "{body}");
    }
    for way in [-3.0, -1.1, 0.0, 0.7, 2.0, 3.6, 6.5] {
        let turned = still.turned_by(way).unwrap();
        assert!(!turned.contacts.is_empty() && turned.contacts.len() <= 2, "1.6 pairs of teeth touch on average");
        for contact in &turned.contacts {
            assert!(turned.bodies.iter().all(|body| off(&body.outline, *contact) < 0.01), "{way}: {contact:?}");
        }
    }
    let pitch = std::f64::consts::PI * 2.5;
    let again = still.turned_by(pitch).unwrap();
    let apart = |(a, b): (&(f64, f64), &(f64, f64))| (a.0 - b.0).hypot(a.1 - b.1);
    assert!(again.bodies[1].outline.iter().zip(&still.bodies[1].outline).map(apart).all(|apart| apart < 1e-9));
    // The picture keeps its size while it turns, and one that stands does not turn.
    assert!((still.height(700.0) - pulled.height(700.0)).abs() < 1e-9);
    assert!(with(&job, pictures::tooth).unwrap().turned(2.0).is_none());
}

/// Input pair 25 on 30, 1st 18 on 36, 2nd 25 on 30, 3rd direct; module 2.5, 30°: six gears. The 18 teeth stand on 2.5 × 18 ÷ cos 30° = 51.962 mm
/// with a lead of π × 51.962 ÷ tan 30° = 282.743 mm, right hand on the cluster, its mate left hand, 2.5 × 54 ÷ 2 ÷ cos 30° = 77.942 mm apart.
#[test]
fn a_whole_set_is_one_file() {
    let mut job = typed(Layout::InputReduced, "25/30", &["36/18", "30/25", "direct"], ["", ""], "43/11", "165R13");
    job.units = System::Metric;
    job.type_text(Field::Job(JobField::InsideTorque), "100 N·m".into());
    job.type_text(Field::Job(JobField::Bench(BenchField::Cutter(CutterField::Material))), "16MnCr5 & <hard>".into());
    let id = job.setups[0].id;
    let page = |job: &Job| {
        with(job, |source| {
            let setup = &source.setups[0];
            of_set(source, setup, setup.setup.gearbox.as_ref().unwrap(), "Close four")
        })
    };
    assert_eq!(page(&job), Err(NoSheets::NoPitch('A')));
    for (field, text) in [(InsideField::Pitch, "2.5 mm"), (InsideField::Helix, "30"), (InsideField::Face, "20 mm")] {
        job.type_text(Field::Setup(id, SetupField::Inside(field)), text.into());
    }
    job.choose(Choice::Setup(id, SetupChoice::ClusterHand), "right");
    let text = page(&job).unwrap();
    let sheets: Vec<&str> = text.split("<section>").skip(1).collect();
    assert_eq!(sheets.len(), 6);
    assert!(sheets.iter().all(|sheet| sheet.contains("width=\"") && sheet.contains("16MnCr5 &amp; &lt;hard&gt;")), "{text}");
    let [first, second] = [sheets[2], sheets[3]];
    for says in ["1st, on the laygear", "18 teeth", "51.962 mm", "282.743 mm", "right hand", "36 teeth at 77.942 mm"] {
        assert!(first.contains(says), "{says}: {first}");
    }
    for says in ["1st, on the output", "36 teeth", "left hand", "18 teeth at 77.942 mm"] {
        assert!(second.contains(says), "{says}: {second}");
    }
    // 36 and 18 share a factor of 18, and the sheet says so.
    assert!(first.contains("18 and 36 teeth share a factor of 18"), "{first}");
    assert!(!text.contains("<script") && text.ends_with("</html>\n"));
}
