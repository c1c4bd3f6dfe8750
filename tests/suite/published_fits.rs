//! Stacks against published ones, growth with heat against closed forms, each with its source.

use layshaft::fits::stack::Heat;
use layshaft::fits::{Material, Part, Stack};
use layshaft::units::common::{in_millimetres, millimetres};

#[track_caller]
fn close(is: f64, wanted: f64, within: f64) {
    assert!((is - wanted).abs() <= within, "{is} is not {wanted} ± {within}");
}

/// A stack of signed lengths and tolerances, the unit left to whoever reads it: the sums are the same in any.
fn stack(parts: &[(f64, f64)]) -> Stack {
    let part = |&(length, tolerance): &(f64, f64)| Part {
        name: String::new(),
        length: millimetres(length.abs()),
        tolerance: millimetres(tolerance),
        count: 1,
        makes_room: length > 0.0,
    };
    Stack { parts: parts.iter().map(part).collect() }
}

#[track_caller]
fn check(parts: &[(f64, f64)], [gap, worst, likely]: [f64; 3]) {
    let stack = stack(parts);
    close(in_millimetres(stack.gap()), gap, 1e-9);
    close(in_millimetres(stack.worst_case()), worst, 1e-9);
    close(in_millimetres(stack.root_sum_square()), likely, 1e-6);
}

#[test]
fn published_stacks() {
    // Shigley, Mechanical Engineering Design, 9th edition, example 1-3: 0.005 ± 0.010 in; the root-sum-square, 0.006, is computed.
    check(&[(1.750, 0.003), (-0.750, 0.001), (-0.120, 0.005), (-0.875, 0.001)], [0.005, 0.010, 0.006]);
    // Chase, “Basic tools for tolerance analysis”, shaft, bearing and snap ring, from memory: 0.0245 and 0.0111; the gap is computed.
    let ring = [(-0.0505, 0.0015), (8.0, 0.008), (-0.5093, 0.0025), (0.4, 0.002), (-7.711, 0.006), (0.4, 0.002), (-0.5093, 0.0025)];
    check(&ring, [0.0199, 0.0245, 0.011_079_26]);
    // A teaching page: pocket 20.200 ± 0.05, parts 6 ± 0.10, 9 ± 0.12, 5 ± 0.08: ± 0.35 and ± 0.182483 (printed 0.18).
    check(&[(20.2, 0.05), (-6.0, 0.10), (-9.0, 0.12), (-5.0, 0.08)], [0.2, 0.35, 0.182_483]);
}

/// Two of the same part are two parts: √(2 × 0.1²), not 2 × 0.1.
#[test]
fn two_of_a_part_are_independent() {
    let mut stack = stack(&[(20.0, 0.0), (-5.0, 0.1)]);
    stack.parts[1].count = 2;
    close(in_millimetres(stack.gap()), 10.0, 1e-12);
    close(in_millimetres(stack.worst_case()), 0.2, 1e-12);
    close(in_millimetres(stack.root_sum_square()), 0.2_f64.sqrt() * 0.1_f64.sqrt(), 1e-12);
}

/// Closed form (computed): 200 mm between shoulders, aluminium by 22.0 against steel by 11.7 millionths, 80 K warmer: + 0.1648 mm.
#[test]
fn an_aluminium_case_opens_when_hot() {
    let heat = |case| Heat { case, inside: Material::Steel, warmer_k: 80.0 };
    let opens = |case| in_millimetres(stack(&[(200.0, 0.0), (-200.0, 0.0)]).opens_when_hot(heat(case)));
    close(opens(Material::Aluminium), 0.1648, 1e-9);
    // Magnesium by 25.2: 200 × 13.5·10⁻⁶ × 80 = 0.216; grey iron by 11.4 closes by 200 × 0.3·10⁻⁶ × 80 = 0.0048.
    close(opens(Material::Magnesium), 0.216, 1e-9);
    close(opens(Material::CastIron), -0.0048, 1e-9);
}

/// *Elements of Metric Gear Technology*, table 18-10, and Callister, *Materials Science and Engineering*, table B.6, per kelvin.
#[test]
fn growth_lies_in_the_handbooks_ranges() {
    for (material, least, greatest) in [
        (Material::Steel, 11.2, 12.3),
        (Material::CastIron, 10.8, 11.4),
        (Material::Aluminium, 20.5, 22.9),
        (Material::Magnesium, 25.2, 25.2),
        (Material::Bronze, 17.6, 17.6),
        (Material::Brass, 20.2, 20.2),
    ] {
        assert!((least..=greatest).contains(&material.growth_ppm_per_k()), "{material:?}");
    }
}
