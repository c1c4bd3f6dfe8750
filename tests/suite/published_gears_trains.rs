//! Published gear trains: gearboxes with all their teeth, compound trains, hunting pairs. Each row names its source.

use layshaft::gearing::hunting::{Hunting, mesh_frequency};
use layshaft::gearing::part::{Part, Shaft};
use layshaft::gearing::speeds::{Arrangement, Selected, Turning};
use layshaft::gearing::{Gearbox, Idler, Layout, Mesh, Ratio, Reverse, ReverseGears, Teeth, teeth::decimal};
use layshaft::units::common::{in_rpm, rpm};

use crate::any_gearbox::built;
use crate::nth;

/// The exact ratio, and what it is printed as.
#[track_caller]
fn check(found: Option<Ratio>, exact: (i128, i128), printed: &str) {
    assert_eq!(found, Some(Ratio::new(exact.0, exact.1)));
    let decimals = printed.split_once('.').map_or(0, |(_, behind)| behind.len());
    assert_eq!(format!("{:.decimals$}", decimal(found.unwrap()).abs()), printed);
}

fn pair(driver: u16, driven: u16) -> Mesh {
    Mesh::new(driver, driven).unwrap()
}

fn train(pairs: &[(u16, u16)]) -> Ratio {
    pairs.iter().map(|&(driver, driven)| pair(driver, driven).ratio()).product()
}

/// Jindal, Machine Design, 1st ed. 2010, example 29-2, p. 751 (read in a companion of worked solutions).
#[test]
fn three_speed_box_of_jindal() {
    let reverse = Reverse::Geared(ReverseGears { pair: pair(18, 50), idler: Idler::Plain(None) });
    let gearbox = built(Layout::InputReduced, Some((23, 47)), &[(20, 50), (33, 37), (0, 0)], Some(reverse));
    check(gearbox.ratio(nth(1)), (235, 46), "5.109");
    check(gearbox.ratio(nth(2)), (1739, 759), "2.291");
    check(gearbox.ratio(nth(3)), (1, 1), "1.0");
    check(gearbox.reverse_ratio(), (-1175, 207), "5.676");
    assert!(layshaft::gearing::check::doubts(&gearbox).is_empty(), "every forward pair sums to 70");
}

/// Lecture text on automobile gearboxes: 3rd pair and reverse read there, the other counts rebuilt to its specification
/// (tooth sum 60, first 4 : 1).
#[test]
fn four_speed_box_of_a_lecture() {
    let reverse = Reverse::Geared(ReverseGears { pair: pair(18, 38), idler: Idler::Plain(None) });
    let gearbox = built(Layout::InputReduced, Some((20, 40)), &[(20, 40), (28, 32), (36, 24), (0, 0)], Some(reverse));
    check(gearbox.ratio(nth(1)), (4, 1), "4");
    check(gearbox.ratio(nth(2)), (16, 7), "2.286");
    check(gearbox.ratio(nth(3)), (4, 3), "1.333");
    check(gearbox.reverse_ratio(), (-38, 9), "4.22");
    check(Some(train(&[(20, 40), (35, 25)])), (10, 7), "1.4286");
}

/// A vehicle workshop manual's data page: 5th 39 to 29, final drive 18 to 61. The page prints 2.521 in all because it multiplies
/// the rounded 0.744 and 3.389; the exact product is 1769/702 = 2.519943.
#[test]
fn overdrive_and_axle_of_a_workshop_manual() {
    check(Some(train(&[(39, 29)])), (29, 39), "0.744");
    check(Some(train(&[(18, 61)])), (61, 18), "3.389");
    check(Some(train(&[(39, 29), (18, 61)])), (1769, 702), "2.519943");
}

/// A motorcycle workshop manual prints 2.325 because it cuts 28/18 to 1.55; exact is 7/3.
#[test]
fn primary_and_gear_of_a_motorcycle_manual() {
    check(Some(train(&[(18, 28), (16, 24)])), (7, 3), "2.333333");
}

/// Singh, Automobile Engineering, vol. 1 (from memory): clutch pinion 14, lay gear 36, lay 18, main 32; axle 3.7, tyre 0.355 m.
#[test]
fn lay_gear_of_singh() {
    let gearbox = built(Layout::InputReduced, Some((14, 36)), &[(18, 32), (0, 0)], None);
    check(gearbox.ratio(nth(1)), (32, 7), "4.571429");
    let overall = decimal(gearbox.ratio(nth(1)).unwrap() * Ratio::new(37, 10));
    assert!((overall - 16.914_286).abs() < 1e-6);
    let km_per_h = 2_500.0 / overall * std::f64::consts::TAU * 0.355 * 60.0 / 1_000.0;
    assert!((km_per_h - 19.780_9).abs() < 5e-4);
}

/// Khurmi and Gupta, Theory of Machines, 14th ed. 2009: example 13.1, p. 432, and the reverted train of example 13.3, p. 435,
/// whose rounded teeth break the common centre distance (198.4375 against 200 mm).
#[test]
fn compound_trains_of_khurmi_and_gupta() {
    let ratio = train(&[(20, 50), (25, 75), (26, 65)]);
    assert_eq!(ratio, Ratio::new(75, 4));
    assert!((975.0 / decimal(ratio) - 52.0).abs() < 1e-12);
    assert_eq!(train(&[(28, 99), (36, 124)]), Ratio::new(341, 28));
    assert!((f64::from(pair(28, 99).sum()) * 3.125 / 2.0 - 198.437_5).abs() < 1e-12);
    assert!((f64::from(pair(36, 124).sum()) * 2.5 / 2.0 - 200.0).abs() < 1e-12);
}

/// Sarkar, Theory of Machines, 1st ed. 2002, illustration 4.6, p. 137: reverted 16 : 1 on 150 mm with modules 4 and 2.5.
#[test]
fn reverted_train_of_sarkar() {
    assert_eq!(train(&[(15, 60), (24, 96)]), Ratio::from_integer(16));
    assert!((f64::from(pair(15, 60).sum()) * 4.0 / 2.0 - 150.0).abs() < 1e-12);
    assert!((f64::from(pair(24, 96).sum()) * 2.5 / 2.0 - 150.0).abs() < 1e-12);
}

/// Shigley, examples 13-3 to 13-5: 16 to 88 twice is 30.25, 30 exactly by 16 to 96 and 16 to 80 (from memory), and reverted by
/// 18 to 108 and 21 to 105, both of sum 126 (conditions read, final counts from memory).
#[test]
fn trains_of_shigley() {
    check(Some(train(&[(16, 88), (16, 88)])), (121, 4), "30.25");
    check(Some(train(&[(16, 96), (16, 80)])), (30, 1), "30");
    check(Some(train(&[(18, 108), (21, 105)])), (30, 1), "30");
    assert_eq!((pair(18, 108).sum(), pair(21, 105).sum()), (126, 126));
}

/// Bevan, The Theory of Machines, 3rd ed., example 1, p. 369: change wheels on a lead screw of 4 threads to the inch.
#[test]
fn change_wheels_of_bevan() {
    assert_eq!(train(&[(25, 65), (30, 75)]) * Ratio::from_integer(4), Ratio::from_integer(26));
    assert_eq!(train(&[(30, 105), (40, 100)]) * Ratio::from_integer(4), Ratio::from_integer(35));
}

/// The countershaft of a textbook box turns its own share of the input; checked on Jindal's 23 to 47 (as above): 1,000 rpm gives 489.4.
#[test]
fn countershaft_speed() {
    let gearbox: Gearbox = built(Layout::InputReduced, Some((23, 47)), &[(20, 50), (0, 0)], None);
    let turning = Turning::new(&gearbox, &Arrangement::usual(&gearbox), Selected::Gear(nth(1))).unwrap();
    let counter = turning.part(Part::Shaft(Shaft::Countershaft)).unwrap();
    assert_eq!(counter.speed.of_input, Ratio::new(-23, 47));
    assert!((in_rpm(counter.speed_at(turning.at_input(rpm(1_000.0)))) + 489.361_702).abs() < 1e-6);
}

/// Counts, speed, mesh frequency, meshes until the same teeth meet, frequency of that, assembly phases. The phases as by Foiles,
/// "Gear frequencies using the Euclidean algorithm"; one glossary prints 30, 600 and 1,080 Hz as "hunting frequency" from
/// common factor times rpm, which is not how often the same teeth meet.
#[test]
fn hunting_teeth() {
    let rows: [(u16, u16, f64, f64, u32, f64, u16); 3] =
        [(23, 67, 1_800.0, 690.0, 1_541, 0.447_761, 1), (20, 60, 1_800.0, 600.0, 60, 10.0, 20), (18, 54, 3_600.0, 1_080.0, 54, 20.0, 18)];
    for (driver, driven, speed, hertz, meshes, repeat, phases) in rows {
        let mesh = pair(driver, driven);
        let hunting = Hunting::of(mesh);
        assert_eq!((hunting.common_factor, hunting.meshes(mesh), hunting.is_hunting()), (phases, meshes, phases == 1));
        assert_eq!(u32::from(driven) * hunting.driven_turns, meshes);
        let frequency = mesh_frequency(Teeth::new(driver).unwrap(), rpm(-speed));
        assert!((frequency.get::<uom::si::frequency::hertz>() - hertz).abs() < 1e-9);
        assert!((hertz / f64::from(meshes) - repeat).abs() < 1e-6);
    }
}
