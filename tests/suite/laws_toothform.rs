//! Laws of measured teeth: every reading goes both ways, pins touch the flanks they are said to, the outline is what a rolling rack leaves.

use std::f64::consts::PI;

use layshaft::gearing::Teeth;
use layshaft::gearing::geometry::{Cut, involute};
use layshaft::toothform::involute::inverse_involute;
use layshaft::toothform::known::{Readings, search};
use layshaft::toothform::outline::{HalfTooth, USUAL_TIP_RADIUS};
use layshaft::toothform::{CutGear, Depth, Pitch, across, pins, print, span};
use layshaft::units::common::{in_millimetres, millimetres};
use layshaft::units::{Length, unit};
use proptest::prelude::*;

fn gear(teeth: u16, module: f64, helix: f64, pressure: f64, shift: f64) -> CutGear {
    let cut = Cut::new(millimetres(module), unit::DEGREE.of(helix), unit::DEGREE.of(pressure)).unwrap();
    CutGear { teeth: Teeth::new(teeth).unwrap(), cut, shift }
}

prop_compose! {
    fn any_gear()(teeth in 10_u16..150, module in 0.6_f64..12.0, helix in prop_oneof![Just(0.0), 1.0_f64..45.0], pressure in 14.5_f64..25.0, shift in -0.4_f64..0.8) -> CutGear {
        gear(teeth, module, helix, pressure, shift)
    }
}

/// As closely as 1e-9 of the value.
fn near(one: f64, other: f64) -> bool {
    (one - other).abs() <= 1e-9 * other.abs().max(1.0)
}

proptest! {
    #[test]
    fn the_involute_function_goes_both_ways(angle in 1e-4_f64..1.55) {
        let back = inverse_involute(involute(angle)).unwrap();
        // tan a − a loses digits near nothing, where it grows as a³/3.
        prop_assert!((back - angle).abs() <= 1e-9 + 1e-16 / angle.powi(2), "{angle} {back}");
    }

    #[test]
    fn readings_go_both_ways(gear in any_gear(), over in 2_u16..12, face in 1.0_f64..60.0) {
        let shift = gear.shift;
        prop_assert!(near(span::shift_of(&gear, over, span::over_teeth(&gear, over)), shift));
        prop_assert!(near(gear.shift_of_tip(gear.tip_diameter()), shift));
        prop_assert!(near(gear.shift_of_root(gear.root_diameter()), shift));
        prop_assert!(near(gear.dedendum_of_root(gear.root_diameter()), gear.cut.dedendum()));
        let difference = in_millimetres(span::over_teeth(&gear, over + 1) - span::over_teeth(&gear, over));
        prop_assert!(near(difference, in_millimetres(gear.base_pitch())));
        let tip = gear.tip_diameter();
        let face = Some(millimetres(face));
        prop_assert!(near(in_millimetres(across::tip_of(&gear, across::over_tips(&gear, tip, face), face)), in_millimetres(tip)));
        if let Some(lead) = gear.lead() {
            let degrees = |angle| unit::DEGREE.number(angle);
            let module = gear.cut.normal_module();
            prop_assert!(near(degrees(print::helix_of_lead(gear.teeth, module, lead).unwrap()), degrees(gear.cut.helix())));
            let shown = gear.helix_at(tip);
            prop_assert!(near(degrees(print::helix_of_print(gear.teeth, module, shown, tip).unwrap()), degrees(gear.cut.helix())));
        }
    }

    #[test]
    fn pins_go_both_ways(gear in any_gear(), size in 1.5_f64..2.2) {
        let pin = gear.cut.normal_module() * size;
        if pins::lay(&gear, pin).is_ok() {
            let over = pins::over_pins(&gear, pin).unwrap();
            prop_assert!(near(pins::shift_of(&gear, pin, over).unwrap(), gear.shift));
        }
    }

    /// A ball as far from the axis as its reading says touches both flanks: its distance from the helicoid is its radius.
    #[test]
    fn balls_touch_the_flanks(gear in any_gear(), size in 1.6_f64..1.9) {
        let pin = gear.cut.normal_module() * size;
        if let Ok(laid) = pins::lay(&gear, pin) {
            let off = distance_to_flank_mm(&gear, in_millimetres(laid.centres) / 2.0) - in_millimetres(pin) / 2.0;
            prop_assert!(off.abs() < 1e-6 * in_millimetres(gear.cut.normal_module()), "{off}");
        }
    }

    /// Jaws over the tips of an odd count: the farthest two points of the outline.
    #[test]
    fn jaws_find_the_farthest_tips(teeth in 10_u16..40, shift in -0.2_f64..0.5) {
        let gear = gear(teeth, 3.0, 0.0, 20.0, shift);
        let tip = gear.tip_diameter();
        let half = gear.half_tooth_rad(tip).unwrap();
        prop_assume!(half > 0.0);
        let radius_mm = in_millimetres(tip) / 2.0;
        let corners = |tooth: u16| [-half, half].map(|off| 2.0 * PI * f64::from(tooth) / f64::from(teeth) + off);
        let all: Vec<f64> = (0..teeth).flat_map(corners).collect();
        let apart = |a: f64, b: f64| 2.0 * radius_mm * ((a - b) / 2.0).sin().abs();
        let farthest = all.iter().flat_map(|a| all.iter().map(move |b| apart(*a, *b))).fold(0.0, f64::max);
        let read = in_millimetres(across::over_tips(&gear, tip, None));
        // Of an even count the middles of two lands lie opposite, farther apart than any corners.
        let is_right = if teeth % 2 == 0 { read >= farthest - 1e-9 } else { near(read, farthest) };
        prop_assert!(is_right, "{read} {farthest}");
    }

    /// What is cut to a standard is found among those that fit its exact readings, whatever else fits too.
    #[test]
    fn a_standard_gear_is_found(teeth in 12_u16..80, at in 0_usize..40, angle in 0_usize..5, helix in 0_u8..35, shift in -0.2_f64..0.5, stub in any::<bool>()) {
        let pitches: Vec<Pitch> = Pitch::all().collect();
        let pitch = pitches[at % pitches.len()];
        let depth = if stub { Depth::Stub } else { Depth::Full };
        let pressure = unit::DEGREE.of([20.0, 14.5, 17.5, 22.5, 25.0][angle]);
        let cut = depth.cut(pitch, unit::DEGREE.of(f64::from(helix)), pressure).unwrap();
        let gear = CutGear { teeth: Teeth::new(teeth).unwrap(), cut, shift };
        let over = span::teeth_to_span(&gear);
        let tip = gear.tip_diameter();
        let readings = Readings {
            over_tips: Some(across::over_tips(&gear, tip, None)),
            spans: [Some(span::over_teeth(&gear, over)), Some(span::over_teeth(&gear, over + 1))],
            print: (helix > 0).then(|| gear.helix_at(tip)),
            ..Readings::of(gear.teeth)
        };
        let found = search(&readings);
        let same = found.fitting.iter().find(|one| one.pitch == pitch && one.depth == depth && one.gear.cut.pressure() == pressure);
        let same = same.expect("the gear itself fits");
        prop_assert!((same.gear.shift - shift).abs() < 0.01, "{} {shift}", same.gear.shift);
        prop_assert_eq!(same.spanned, Some(over));
    }
}

/// The least distance of a point in the gap's middle from the flank of the gap, a screw surface, found by trial alone.
fn distance_to_flank_mm(gear: &CutGear, radius_mm: f64) -> f64 {
    let base_mm = in_millimetres(gear.base_diameter()) / 2.0;
    let twist = gear.lead().map_or(0.0, |lead| 2.0 * PI / in_millimetres(lead));
    // The tooth's flank lies half a pitch less half a tooth from the gap's middle on the base circle.
    let begins = PI / gear.count() - gear.half_tooth_rad(gear.base_diameter()).unwrap();
    let distance = |roll: f64, along_mm: f64| {
        let (x, y) = (base_mm * (roll.cos() + roll * roll.sin()), base_mm * (roll.sin() - roll * roll.cos()));
        let turned = begins + twist * along_mm;
        let (x, y) = (x * turned.cos() - y * turned.sin(), x * turned.sin() + y * turned.cos());
        ((x - radius_mm).powi(2) + y.powi(2) + along_mm.powi(2)).sqrt()
    };
    let module_mm = in_millimetres(gear.cut.normal_module());
    least(-1.5 * module_mm, 1.5 * module_mm, |along_mm| least(0.0, 1.6, |roll| distance(roll, along_mm)))
}

/// The least value between two ends, by a coarse walk and golden sections.
fn least(from: f64, to: f64, of: impl Fn(f64) -> f64) -> f64 {
    let steps = 16;
    let at = |step: i32| from + (to - from) * f64::from(step) / f64::from(steps);
    let best = (0..=steps).min_by(|a, b| of(at(*a)).total_cmp(&of(at(*b)))).unwrap();
    let (mut low, mut high) = (at((best - 1).max(0)), at((best + 1).min(steps)));
    let golden = (5_f64.sqrt() - 1.0) / 2.0;
    for _ in 0..40 {
        let (left, right) = (high - golden * (high - low), low + golden * (high - low));
        if of(left) < of(right) { high = right } else { low = left }
    }
    of(f64::midpoint(low, high))
}

/// Every point of the outline is where a rack that rolls on the reference circle just reaches it: to a micrometre, undercut or not.
#[test]
fn the_outline_is_what_a_rolling_rack_leaves() {
    for (teeth, module, helix, pressure, shift) in [
        (32, 25.4 / 12.0, 24.0, 20.0, 0.21),
        (20, 3.0, 0.0, 20.0, 0.0),
        (10, 2.5, 0.0, 20.0, 0.0),
        (12, 2.0, 0.0, 14.5, 0.0),
        (8, 4.0, 20.0, 20.0, 0.1),
        (60, 2.0, 30.0, 17.5, -0.3),
        (14, 3.0, 0.0, 25.0, 0.6),
    ] {
        let gear = gear(teeth, module, helix, pressure, shift);
        let form = HalfTooth::of(&gear, USUAL_TIP_RADIUS, gear.tip_diameter());
        let tip_mm = in_millimetres(gear.tip_diameter()) / 2.0;
        let root_mm = in_millimetres(gear.root_diameter()) / 2.0;
        assert_eq!(form.is_undercut, (teeth, pressure) == (10, 20.0) || pressure < 15.0 || teeth == 8, "{teeth}");
        for (radius_mm, half) in &form.points {
            if *radius_mm < root_mm + 1e-4 || *radius_mm > tip_mm - 1e-4 {
                continue;
            }
            let gap = room_beside_rack_mm(&gear, *radius_mm, PI / f64::from(teeth) - half);
            assert!(gap.abs() < 1e-3, "{teeth} teeth, radius {radius_mm}: {gap}");
        }
        assert!((form.points[0].0 - root_mm).abs() < 1e-6);
    }
}

/// The least room, along the rack, between a point of the gear and the rack as it rolls past; below nothing it was cut away.
fn room_beside_rack_mm(gear: &CutGear, radius_mm: f64, from_gap: f64) -> f64 {
    let rolling_mm = in_millimetres(gear.reference_diameter()) / 2.0;
    let room = |along_mm: f64| {
        let at = from_gap + along_mm / rolling_mm;
        let down_mm = rolling_mm - radius_mm * at.cos();
        rack_half_width_mm(gear, down_mm).map_or(f64::INFINITY, |half| (radius_mm * at.sin() - along_mm).abs() - half)
    };
    let reach_mm = 4.0 * in_millimetres(gear.cut.normal_module());
    let steps = 4_000;
    let at = |step: i32| reach_mm * f64::from(step) / f64::from(steps);
    let best = (-steps..=steps).min_by(|a, b| room(at(*a)).total_cmp(&room(at(*b)))).unwrap();
    let (mut low, mut high) = (at(best - 1), at(best + 1));
    for _ in 0..80 {
        let (left, right) = (low + (high - low) / 3.0, high - (high - low) / 3.0);
        if room(left) < room(right) { high = right } else { low = left }
    }
    room(f64::midpoint(low, high))
}

/// Half of a rack's tooth across the shaft at a depth below the rolling line: the straight flank, below it the rounded tip; none below that.
fn rack_half_width_mm(gear: &CutGear, below_rolling_mm: f64) -> Option<f64> {
    let module_mm = in_millimetres(gear.cut.normal_module());
    let pressure: f64 = gear.cut.pressure_rad();
    let down_mm = below_rolling_mm + gear.shift * module_mm;
    let depth_mm = gear.cut.dedendum() * module_mm;
    let flank = |down: f64| PI * module_mm / 4.0 - down * pressure.tan();
    // The widest tip radius is that of an arc from flank to flank.
    let most_mm = flank(depth_mm) / ((PI / 4.0 - pressure / 2.0).tan());
    let radius_mm = (USUAL_TIP_RADIUS * module_mm).min(most_mm);
    let middle_mm = depth_mm - radius_mm;
    let begins_mm = middle_mm + radius_mm * pressure.sin();
    let half = if down_mm <= begins_mm {
        flank(down_mm)
    } else if down_mm <= depth_mm {
        let across = flank(begins_mm) - radius_mm * pressure.cos();
        across + (radius_mm.powi(2) - (down_mm - middle_mm).powi(2)).max(0.0).sqrt()
    } else {
        return None;
    };
    Some(half / gear.cut.helix_rad().cos())
}

/// Jaws laid on the points of the generated form, and pins pressed between them, read what the formulas say to a micrometre; of a helical gear
/// the jaws across the shaft, which are farther apart by 1 / cos `β_b`.
#[test]
fn the_outline_measures_as_the_formulas_say() {
    for (teeth, module, helix, pressure, shift) in [
        (20, 3.0, 0.0, 20.0, 0.0),
        (17, 3.5, 0.0, 20.0, 0.518),
        (31, 2.0, 0.0, 14.5, 0.1),
        (24, 2.5, 0.0, 25.0, -0.1),
        (32, 25.4 / 12.0, 24.0, 20.0, 0.21),
    ] {
        let gear = gear(teeth, module, helix, pressure, shift);
        let form = HalfTooth::of(&gear, USUAL_TIP_RADIUS, gear.tip_diameter());
        let tip_mm = in_millimetres(gear.tip_diameter()) / 2.0;
        let flank: Vec<(f64, f64)> = form.points.iter().filter(|point| (form.form_mm..tip_mm - 1e-9).contains(&point.0)).copied().collect();
        let over = span::teeth_to_span(&gear);
        let outermost = f64::from(over - 1) * PI / f64::from(teeth);
        let jaws = 2.0 * summit(&flank, |(radius, half)| radius * (outermost + half).sin());
        let formula = in_millimetres(span::over_teeth(&gear, over));
        assert!((jaws * gear.base_helix_rad().cos() - formula).abs() < 1e-3, "{teeth} teeth: {jaws} {formula}");
        if helix > 0.0 {
            continue;
        }
        let pin = pins::usual_pin(&gear);
        let room = |centre: f64| {
            let away = |(radius, half): (f64, f64)| {
                let at = PI / f64::from(teeth) - half;
                -(radius * at.sin()).hypot(radius * at.cos() - centre)
            };
            -summit(&flank, away)
        };
        // The farther out a pin sits, the more room it has.
        let (mut low, mut high) = (in_millimetres(gear.base_diameter()) / 2.0, tip_mm + in_millimetres(pin));
        for _ in 0..60 {
            let middle = f64::midpoint(low, high);
            if room(middle) < in_millimetres(pin) / 2.0 { low = middle } else { high = middle }
        }
        let across = if teeth % 2 == 0 { 1.0 } else { (PI / 2.0 / f64::from(teeth)).cos() };
        let read = 2.0 * low * across + in_millimetres(pin);
        let formula = in_millimetres(pins::over_pins(&gear, pin).unwrap());
        assert!((read - formula).abs() < 1e-3, "{teeth} teeth over pins: {read} {formula}");
    }
}

/// The greatest value along points, by a parabola through the three about the greatest of them.
fn summit(points: &[(f64, f64)], of: impl Fn((f64, f64)) -> f64) -> f64 {
    let values: Vec<(f64, f64)> = points.iter().map(|point| (point.0, of(*point))).collect();
    let at = (1..values.len() - 1).max_by(|a, b| values[*a].1.total_cmp(&values[*b].1)).unwrap();
    let [(x0, y0), (x1, y1), (x2, y2)] = [values[at - 1], values[at], values[at + 1]];
    let (left, right) = ((y1 - y0) / (x1 - x0), (y2 - y1) / (x2 - x1));
    let bend = (right - left) / (x2 - x0);
    let slope = left + bend * (x1 - x0);
    if bend < 0.0 { y1 - slope * slope / (4.0 * bend) } else { y1 }
}

/// Module and diametral pitch that share a base pitch within ten micrometres: a span over one tooth more cannot tell them, and both are named.
#[test]
fn pairs_of_one_base_pitch_are_both_named() {
    use Pitch::{Diametral as D, Module as M};
    for (one, other) in [
        ((M(1.75), 20.0), (D(14.0), 25.0)),
        ((M(3.5), 20.0), (D(7.0), 25.0)),
        ((M(1.25), 14.5), (D(20.0), 17.5)),
        ((M(1.25), 17.5), (D(20.0), 20.0)),
        ((M(1.25), 20.0), (D(20.0), 22.5)),
        ((M(2.5), 14.5), (D(10.0), 17.5)),
        ((M(2.5), 17.5), (D(10.0), 20.0)),
        ((M(2.5), 20.0), (D(10.0), 22.5)),
    ] {
        for ((pitch, angle), twin) in [(one, other), (other, one)] {
            let cut = Depth::Full.cut(pitch, unit::DEGREE.of(0.0), unit::DEGREE.of(angle)).unwrap();
            let gear = CutGear { teeth: Teeth::new(26).unwrap(), cut, shift: 0.1 };
            let over = span::teeth_to_span(&gear);
            let spans = [over, over + 1].map(|over| Some(span::over_teeth(&gear, over)));
            let found = search(&Readings { spans, ..Readings::of(gear.teeth) });
            for (pitch, angle) in [(pitch, angle), twin] {
                let named = found
                    .fitting
                    .iter()
                    .any(|fit| fit.pitch == pitch && (unit::DEGREE.number(fit.gear.cut.pressure()) - angle).abs() < 1e-9);
                assert!(named, "{pitch:?} at {angle}");
            }
        }
    }
}

/// A span that cannot be of such a gear, a length read in the wrong unit: nothing stops.
#[test]
fn odd_readings_stop_nothing() {
    for millimetre in [0.001, 1.0, 40.0, 900.0, 1e9] {
        let length: Option<Length> = Some(millimetres(millimetre));
        let readings = Readings {
            over_tips: length,
            spans: [length, length],
            pins: Some((millimetres(millimetre), millimetres(millimetre))),
            root: length,
            print: Some(unit::DEGREE.of(59.0)),
            centre: Some((millimetres(millimetre), Teeth::new(20).unwrap())),
            ..Readings::of(Teeth::new(9).unwrap())
        };
        let _ = search(&readings);
    }
}
