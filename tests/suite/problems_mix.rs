//! Parts of several sets in one box: what meshes, what cannot, and what it is told.

use layshaft::gearing::geometry::Cut;
use layshaft::gearing::mix::{Donor, Fit, Mixture, Pair, Place, mix};
use layshaft::gearing::{Gearbox, Layout, Ratio};
use layshaft::problem::Explain;
use layshaft::units::common::millimetres;
use layshaft::units::{Angle, System};
use uom::si::angle::degree;

use crate::any_gearbox::built;
use crate::nth;

fn wide() -> Gearbox {
    built(Layout::InputReduced, Some((25, 30)), &[(18, 37), (23, 32), (27, 28), (0, 0)], None)
}

fn close() -> Gearbox {
    built(Layout::InputReduced, Some((27, 28)), &[(18, 37), (23, 32), (26, 29), (0, 0)], None)
}

fn long() -> Gearbox {
    built(Layout::InputReduced, Some((25, 35)), &[(20, 40), (25, 35), (29, 31), (0, 0)], None)
}

fn donor<'a>(name: &'a str, gearbox: &'a Gearbox) -> Donor<'a> {
    Donor { name, gearbox, cut: None }
}

/// Input of the close set on the wide set's cluster: 30/27 · 37/18 = 185/81 = 2.284 in 1st; but 27 and 30 sum to 57 on 55.
#[test]
fn input_shaft_of_another_set() {
    let (wide, close) = (wide(), close());
    let cluster = donor("wide", &wide);
    let gears = [cluster; 4];
    let mixture = Mixture { constant: donor("close", &close), cluster, gears: &gears, sum: None, centre: None };
    let mixed = mix(&mixture).unwrap();
    assert_eq!(mixed.gearbox.ratio(nth(1)), Some(Ratio::new(185, 81)));
    let constant = mixed.pairs.first().unwrap();
    assert_eq!((constant.place, constant.fit), (Place::Constant, Fit::WithShift(2)));
    assert!(mixed.can_mesh() && mixed.pairs.iter().skip(1).all(|pair| pair.fit == Fit::Shares));
}

#[test]
fn mainshaft_gear_of_a_larger_box_cannot_mesh() {
    let (wide, long) = (wide(), long());
    let cluster = donor("wide", &wide);
    let gears = [cluster, donor("long", &long), cluster, cluster];
    let mixed = mix(&Mixture { constant: cluster, cluster, gears: &gears, sum: None, centre: None }).unwrap();
    let second = mixed.pairs.get(2).unwrap();
    assert_eq!(second.fit, Fit::Apart(3));
    assert!(!mixed.can_mesh());
    assert_eq!(second.what(), "the 2nd pair 23 and 35 sums to 58 and cannot mesh where the case takes 55");
    assert_eq!(second.what_to_do(), "the 23-tooth gear wants a partner of 32 teeth");
}

/// Cut and centre distance decide where they are known: 55 teeth of module 2.5 at 20° want 68.75 mm; 57 on that would want 71.25.
#[test]
fn geometry_decides_where_it_is_known() {
    let (wide, close) = (wide(), close());
    let cut = |module_mm: f64| Cut::new(millimetres(module_mm), Angle::new::<degree>(0.0), Angle::new::<degree>(20.0)).ok();
    let cluster = Donor { cut: cut(2.5), ..donor("wide", &wide) };
    let gears = [cluster; 4];
    let with = |constant, centre_mm: f64| {
        let mixture = Mixture { constant, cluster, gears: &gears, sum: None, centre: Some(millimetres(centre_mm)) };
        *mix(&mixture).unwrap().pairs.first().unwrap()
    };
    let same = with(cluster, 68.75);
    assert_eq!(same.fit, Fit::Shares);
    assert!(same.shift_sum.unwrap().abs() < 1e-9);
    // 57 teeth squeezed onto 68.75 mm: y = −1, Σx about −0.86 by ISO 21771.
    let squeezed = with(Donor { cut: cut(2.5), ..donor("close", &close) }, 68.75);
    assert_eq!(squeezed.fit, Fit::WithShift(2));
    assert!((squeezed.shift_sum.unwrap() + 0.86).abs() < 0.02, "{squeezed:?}");
    assert_eq!(with(Donor { cut: cut(2.75), ..donor("close", &close) }, 68.75).fit, Fit::DifferentCut);
    assert_eq!(with(cluster, 90.0).fit, Fit::WrongCentre);
}

#[test]
fn parts_that_make_no_box() {
    let (wide, three) = (wide(), built(Layout::InputReduced, Some((25, 30)), &[(18, 37), (25, 30), (0, 0)], None));
    let two_shaft = built(Layout::TwoShaft, None, &[(12, 38)], None);
    let cluster = donor("wide", &wide);
    let tell = |constant, cluster, gears: &[Donor<'_>]| {
        let error = mix(&Mixture { constant, cluster, gears, sum: None, centre: None }).unwrap_err();
        format!("{}; {}", error.what(), error.what_to_do())
    };
    assert_eq!(tell(cluster, cluster, &[donor("side", &two_shaft)]), "wide and side are laid out differently; mix sets of one layout");
    let short = donor("three", &three);
    assert_eq!(tell(cluster, short, &[cluster; 4]), "three has no gears for 3rd; take 3rd from another set, or leave it out");
    assert_eq!(tell(cluster, cluster, &[]), "these parts make no gearbox; take at least one forward gear, and at most eight");
}

/// A two-shaft box mixes its input shaft with the output gears of another: 38/12 and 36/19 from two sets.
#[test]
fn two_shaft_mixture() {
    let (one, other) =
        (built(Layout::TwoShaft, None, &[(12, 38), (19, 31)], None), built(Layout::TwoShaft, None, &[(11, 39), (18, 32)], None));
    let (cluster, line) = (donor("one", &one), donor("other", &other));
    let mixed = mix(&Mixture { constant: line, cluster, gears: &[line, line], sum: Some(50), centre: None }).unwrap();
    assert_eq!(mixed.gearbox.ratios(), [Ratio::new(-39, 12), Ratio::new(-32, 19)]);
    assert_eq!(mixed.pairs.iter().map(|pair| pair.fit).collect::<Vec<_>>(), [Fit::WithShift(1); 2]);
}

/// No gear has 45 − 40 = 5 teeth, nor 30 − 40.
#[test]
fn a_partner_that_no_gear_can_be_is_not_named() {
    let mesh = layshaft::gearing::Mesh::new(40, 20).unwrap();
    let pair =
        |wanted_sum| Pair { place: Place::Gear(nth(1)), mesh, fit: Fit::Apart(60 - i32::from(wanted_sum)), shift_sum: None, wanted_sum };
    for (wanted_sum, says) in [
        (55, "the 40-tooth gear wants a partner of 15 teeth"),
        (45, "take both gears of the pair from one set"),
        (30, "take both gears of the pair from one set"),
    ] {
        assert_eq!(pair(wanted_sum).what_to_do(), says);
    }
}

/// 25.4 / 0.5 = 50.8 and 25.4 / 20 = 1.27 teeth per inch, both of which are taken.
#[test]
fn the_pitches_a_refusal_names_are_taken() {
    let refused = Cut::read_module("0.1 mm", System::Metric).unwrap_err();
    assert_eq!(refused.what_to_do(), "type 0.5 to 20 mm, which is 50.8 to 1.27 teeth per inch of diameter");
    for pitch in ["0.5 mm", "20 mm", "50.8 DP", "1.27 DP"] {
        assert!(Cut::read_module(pitch, System::Metric).is_ok(), "{pitch}");
    }
    assert!(Cut::read_module("51 DP", System::Metric).is_err());
}
