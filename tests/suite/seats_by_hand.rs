//! What a seat wants besides its fit: press force, reamer, bush, needles; and end play read once assembled.

use layshaft::fits::Material;
use layshaft::fits::press::Press;
use layshaft::job::{BenchField, EndPlayField, Field, FitsField as F, Job, JobField, demo};
use layshaft::questions::bench;
use layshaft::units::{System, unit};

use crate::any_job::{near, sheet};

fn with(units: System, fields: &[(BenchField, &str)]) -> Job {
    let mut job = demo::empty(units);
    for (field, text) in fields {
        job.type_text(Field::Job(JobField::Bench(*field)), (*text).into());
    }
    job
}

fn fits(units: System, fields: &[(F, &str)]) -> Job {
    with(units, &fields.iter().map(|(field, text)| (BenchField::Fits(*field), *text)).collect::<Vec<_>>())
}

fn told(job: &Job, id: &str) -> String {
    let section = sheet(job).sections.into_iter().find(|section| section.id == id).unwrap();
    format!("{} {:?}", section.answer.plain(), section.rows)
}

/// Ø50 in a hub of Ø80, solid steel shaft, 207 GPa, 30 mm long, friction 0.12: 0.018 mm press with 22.7053 N/mm² and want 12.8396 kN, 0.059 mm
/// 74.4230 N/mm² and 42.0852 kN (Shigley, equation 7-40, worked with the book's formula for equal materials).
#[test]
fn lame() {
    let press = |microns| Press {
        interference: unit::MICRON.of(microns),
        diameter: unit::MM.of(50.0),
        outside: unit::MM.of(80.0),
        length: unit::MM.of(30.0),
        materials: [Material::Steel; 2],
    };
    for (microns, pressure, force) in [(18.0, 22.7053, 12.8396), (59.0, 74.4230, 42.0852)] {
        assert!((unit::N_MM2.number(press(microns).pressure().unwrap()) - pressure).abs() < 1e-4);
        assert!((unit::KN.number(press(microns).force().unwrap()) - force).abs() < 1e-4);
    }
    assert_eq!(press(-1.0).pressure(), None);
    assert_eq!(Press { outside: unit::MM.of(50.0), ..press(18.0) }.force(), None);
}

/// Steel in aluminium gives less than steel in steel: the row is there where outside and length are typed.
#[test]
fn a_press_fit_has_its_force() {
    let job = fits(System::Metric, &[(F::Bore, "49.982"), (F::Shaft, "50.000"), (F::Outside, "80"), (F::SeatLength, "30")]);
    // p = 0.018 ÷ { 49.991 ÷ 71,700 × [(6400 + 2500) ÷ 3900 + 0.333] + 50 ÷ 207,000 × (1 − 0.292) } = 0.018 ÷ (1.82380e-3 + 1.7101e-4) = 9.02
    near(&job, "fits.press_pressure_nmm2", 9.02, 0.01);
    near(&job, "fits.press_force_n", 9.02 * std::f64::consts::PI * 0.12 * 30.0 * 50.0, 10.0);
    let thin = fits(System::Metric, &[(F::Bore, "49.982"), (F::Shaft, "50.000"), (F::Outside, "40"), (F::SeatLength, "30")]);
    assert!(told(&thin, "fits").contains("the outside is not larger than the bore"));
}

/// Needles of 5/32 in (3.96875 mm) on 19.05 mm: an angle of 2 · asin(3.96875 ÷ 23.01875) each, 18 go round. 27.02 − 19.05 − 2 × 3.96875 = 0.0325 mm.
/// 4 mm in their place is 0.03125 mm fatter and takes 0.0625 of it: they do not go in.
#[test]
fn needles() {
    let set = |needle| fits(System::Metric, &[(F::Bore, "27.02"), (F::Shaft, "19.05"), (F::Needle, needle), (F::Needles, "18")]);
    let inch = set("5/32 in");
    near(&inch, "fits.needles_most", 18.0, 0.0);
    near(&inch, "fits.needle_room_mm", 0.0325, 1e-9);
    assert!(told(&inch, "fits").contains("as is usual for a gear on needles"));
    let metric = set("4 mm");
    near(&metric, "fits.needle_room_mm", -0.03, 1e-9);
    assert!(told(&metric, "fits").contains("they do not go in: 4 mm is 0.031 mm fatter than 5/32 in"));
    let short = fits(System::Metric, &[(F::Bore, "27.02"), (F::Shaft, "19.05"), (F::Needle, "5/32 in"), (F::Needles, "17")]);
    assert!(told(&short, "fits").contains("a row that is not full lets them tip"));
    assert!(
        bench::problems(&fits(System::Metric, &[(F::Needles, "some")]))[0].sentence().starts_with("“some” is not a number from 5 to 200.")
    );
}

/// Common practice: a thousandth of the shaft, never less than 0.001 in. ASME B94.11M: letter F is 0.257, 1/4 is 0.250.
#[test]
fn a_bush_is_reamed_and_reamers_are_sold() {
    near(&fits(System::Inch, &[(F::Shaft, "0.750")]), "fits.bush_bore_in", 0.751, 1e-9);
    near(&fits(System::Inch, &[(F::Shaft, "2.000")]), "fits.bush_bore_in", 2.002, 1e-9);
    let sold = fits(System::Inch, &[(F::Bore, "0.2550"), (F::Shaft, "0.2560"), (F::Wanted, "0.0005 to 0.0015")]);
    assert!(told(&sold, "fits").contains("letter F, 0.2570 in"), "{}", told(&sold, "fits"));
    let not = fits(System::Inch, &[(F::Bore, "0.2510"), (F::Shaft, "0.2520"), (F::Wanted, "0.0005 to 0.0015")]);
    assert!(
        told(&not, "fits").contains("next below letter E")
            || told(&not, "fits").contains("next below 1/4 in, 0.2500 in, next above letter F, 0.2570 in")
    );
}

/// Three readings: 0.003, 0.003 and 0.0015 in. Their mean is 0.0025, they differ by 0.0015: a burr or a crooked case.
#[test]
fn end_play_read_once_assembled() {
    let end_play = |fields: &[(EndPlayField, &str)]| {
        with(System::Inch, &fields.iter().map(|(field, text)| (BenchField::EndPlay(*field), *text)).collect::<Vec<_>>())
    };
    let job = end_play(&[(EndPlayField::Wanted, "0.002 to 0.005"), (EndPlayField::Assembled, "0.003 0.003 0.0015")]);
    near(&job, "endplay.assembled_in", 0.0025, 1e-12);
    near(&job, "endplay.tilt_in", 0.0015, 1e-12);
    assert!(told(&job, "endplay").contains("inside on the whole, not at every place"));
    let out = end_play(&[(EndPlayField::Wanted, "0.002 to 0.005"), (EndPlayField::Assembled, "0.007")]);
    assert!(told(&out, "endplay").contains("out of what is wanted: take it apart"));
    // A stack that cannot be read says so where the answer stands.
    let unread = end_play(&[(EndPlayField::Stack, "case depth")]);
    assert!(
        told(&unread, "endplay").starts_with("The stack cannot be added up. “case depth” has no length."),
        "{}",
        told(&unread, "endplay")
    );
    // 0.00003 in is not nothing.
    let small = end_play(&[(EndPlayField::Assembled, "0.00003")]);
    assert!(told(&small, "endplay").contains("under 0.0001"));
}
