//! The driveshaft beside figures worked by hand: how fast it turns, how fast it may, what would do.

use layshaft::job::{Choice, Field, Job, JobChoice, SetupChoice, SetupField, ShaftField, demo};
use layshaft::sheet::{Figure, Piece, Section, Sheet};

use crate::any_job::{long_box, sheet};

const SIXTY_BY_THREE: [(ShaftField, &str); 3] = [(ShaftField::Lengths, "60"), (ShaftField::Outside, "3"), (ShaftField::Wall, "0.083")];

fn section(sheet: &Sheet) -> &Section {
    sheet.sections.iter().find(|section| section.id == "driveline").unwrap()
}

fn figure<'a>(sheet: &'a Sheet, column: usize, key: &str) -> &'a Figure {
    let pieces = section(sheet).rows.iter().flat_map(|row| row.cells[column].pieces());
    let mut figures = pieces.filter_map(|piece| if let Piece::Figure(figure) = piece { Some(&**figure) } else { None });
    figures.find(|figure| figure.key == key).unwrap()
}

#[track_caller]
fn near(is: &Figure, wanted: f64, within: f64) {
    assert!((is.value - wanted).abs() <= within, "{} is {}, not {wanted} ± {within}", is.key, is.value);
}

fn said(job: &Job) -> String {
    section(&sheet(job)).answer.plain()
}

/// 110 mph are 2,950.46 m a minute; ÷ 2.105 m × 4.10 = 5,747 rpm. The tube by the closed form for 206 gigapascals and 7,850 kg/m³:
/// √(3² + 2.834²) = 4.1270 in = 104.83 mm; 1.2070·10⁸ × 104.83 ÷ 1,524² = 5,448 rpm. So 105 %, and half of it is 2,724 rpm,
/// 110 × 2,724 ÷ 5,747 = 52 mph.
#[test]
fn sixty_inches_in_one_piece_are_too_long_at_110() {
    let job = long_box(&SIXTY_BY_THREE);
    let sheet = sheet(&job);
    near(figure(&sheet, 0, "driveline.shaft_rpm"), 5_746.8, 1.0);
    near(figure(&sheet, 0, "driveline.critical_rpm"), 5_448.0, 3.0);
    near(figure(&sheet, 0, "driveline.share_percent"), 105.5, 0.2);
    near(figure(&sheet, 0, "driveline.half_critical_rpm"), 2_724.0, 1.5);
    let said = said(&job);
    for part in ["5,747 rpm at 110 mph, past the 5,448 rpm at which it whips", "two pieces", "have it made and balanced by a shop"] {
        assert!(said.contains(part), "{part} in {said}");
    }
}

/// At 70 % it must whip no sooner than 5,746.8 ÷ 0.7 = 8,210 rpm: 60 in × √(5,448 ÷ 8,210) = 48.9 in, or a tube with
/// √(D² + d²) = 4.1270 × 8,210 ÷ 5,448 = 6.219 in: D = 0.083 + √(6.219² ÷ 2 − 0.083²) = 4.480 in.
#[test]
fn what_would_do_is_shorter_or_wider() {
    let sheet = sheet(&long_box(&SIXTY_BY_THREE));
    near(figure(&sheet, 0, "driveline.longest_in"), 48.88, 0.05);
    near(figure(&sheet, 0, "driveline.outside_in"), 4.480, 0.01);
}

/// Four inches by 0.083: √(16 + 14.699) = 5.5407 in = 140.73 mm, so 7,314 rpm: 79 %, over the 70 % of cars, inside a margin of none.
#[test]
fn a_four_inch_tube_is_near_its_limit() {
    let mut job = long_box(&[(ShaftField::Lengths, "60"), (ShaftField::Outside, "4"), (ShaftField::Wall, "0.083")]);
    near(figure(&sheet(&job), 0, "driveline.critical_rpm"), 7_314.0, 4.0);
    assert!(said(&job).contains("79 % of the 7,314 rpm at which it whips and over the 70 % allowed"), "{}", said(&job));
    job.choose(Choice::Job(JobChoice::ShaftMargin), "75");
    assert!(said(&job).contains("over the 75 % allowed"), "{}", said(&job));
}

/// Two pieces of 30 in whip at four times 5,448 rpm, of 26 and 34 in the longer at 5,448 × (60 ÷ 34)² = 16,966 rpm; a plus sign parts
/// the lengths as well as a semicolon.
#[test]
fn the_longer_of_two_pieces_rules() {
    for (typed, wanted) in [("30; 30", 21_792.0), ("26 + 34", 16_966.0)] {
        let job = long_box(&[(ShaftField::Lengths, typed), (ShaftField::Outside, "3"), (ShaftField::Wall, "0.083")]);
        near(figure(&sheet(&job), 0, "driveline.critical_rpm"), wanted, 12.0);
        assert!(said(&job).contains("70 % is allowed"), "{}", said(&job));
    }
}

/// Aluminium by 70 gigapascals and 2,700 kg/m³ has √(E ÷ ρ) of 5,092 m/s beside steel's 5,123: 0.994 of the speed.
#[test]
fn aluminium_whips_about_as_soon_as_steel() {
    let mut job = long_box(&SIXTY_BY_THREE);
    let id = job.setups[0].id;
    job.choose(Choice::Setup(id, SetupChoice::ShaftMaterial), "aluminium");
    near(figure(&sheet(&job), 0, "driveline.critical_rpm"), 5_448.0 * 0.994, 4.0);
}

/// The demo's cars: 6,500 rpm in a direct 4th turn the shaft at 6,500, a 5th of 0.857 would at 7,583, but the road load holds it just
/// below; tubes of 44 and 41.5 in, 3 in by 0.083,
/// whip at 5,448 × (60 ÷ 44)² = 10,130 and × (60 ÷ 41.5)² = 11,388 rpm: 64 and 67 %.
#[test]
fn the_demo_keeps_inside() {
    let sheet = sheet(&demo::job());
    near(figure(&sheet, 0, "driveline.shaft_rpm"), 6_500.0, 1.0);
    near(figure(&sheet, 2, "driveline.shaft_rpm"), 6_500.0 * 35.0 / 30.0 - 10.0, 9.0);
    near(figure(&sheet, 0, "driveline.critical_rpm"), 10_130.0, 8.0);
    near(figure(&sheet, 2, "driveline.critical_rpm"), 11_388.0, 8.0);
    near(figure(&sheet, 0, "driveline.share_percent"), 64.2, 0.2);
    near(figure(&sheet, 2, "driveline.share_percent"), 66.6, 0.2);
}

/// What cannot be a tube is said beside its field, and the rest of the sheet stands.
#[test]
fn what_is_no_shaft_is_said() {
    for (field, text, part) in [
        (ShaftField::Wall, "2", "the wall is thicker than the tube’s radius"),
        (ShaftField::Lengths, "0", "shaft length"),
        (ShaftField::Lengths, "30; abc", "abc"),
        (ShaftField::Outside, "3,000 mm", "outside of the tube"),
    ] {
        let mut job = long_box(&SIXTY_BY_THREE);
        let id = job.setups[0].id;
        job.type_text(Field::Setup(id, SetupField::Shaft(field)), text.into());
        let problems: Vec<String> =
            layshaft::questions::read_all(&job)[0].problems.iter().map(layshaft::problem::Problem::sentence).collect();
        assert!(problems.iter().any(|problem| problem.to_lowercase().contains(part)), "{text}: {problems:?}");
        let sheet = sheet(&job);
        assert!(section(&sheet).rows.iter().all(|row| row.cells[0].pieces().all(|piece| !matches!(piece, Piece::Verdict(_)))));
        assert_eq!(figure(&sheet, 0, "driveline.shaft_rpm").shown, "5,747");
    }
}

/// Nothing typed of a shaft is asked for once, in one sentence.
#[test]
fn what_is_missing_is_asked_for() {
    let said = said(&long_box(&[]));
    assert_eq!(said, "Type the shaft’s length and its tube’s outside and wall to get the shaft’s critical speed.");
}
