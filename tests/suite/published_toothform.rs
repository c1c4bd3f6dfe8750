//! Teeth as they are measured, beside published rows: spans, pins, chords, thicknesses, prints, base pitches, backlash.

use layshaft::gearing::Mesh;
use layshaft::gearing::Teeth;
use layshaft::gearing::geometry::{Cut, Setting, geometry};
use layshaft::toothform::allowance::Allowance;
use layshaft::toothform::outline::straight_depth;
use layshaft::toothform::standard::Rack;
use layshaft::toothform::{CutGear, Pitch, pair, pins, print, span};
use layshaft::units::common::{in_millimetres, millimetres};
use layshaft::units::{Length, unit};

fn gear(module: f64, teeth: u16, pressure: f64, helix: f64, shift: f64) -> CutGear {
    let cut = Cut::new(millimetres(module), unit::DEGREE.of(helix), unit::DEGREE.of(pressure)).unwrap();
    CutGear { teeth: Teeth::new(teeth).unwrap(), cut, shift }
}

#[track_caller]
fn is(what: &str, value: f64, wanted: f64, within: f64) {
    assert!((value - wanted).abs() <= within, "{what}: {value} beside {wanted}");
}

#[track_caller]
fn mm(what: &str, value: Length, wanted: f64) {
    is(what, in_millimetres(value), wanted, 1e-6);
}

/// DIN 3966-1:1978-08, section 4.1: the spur gear of 17 teeth. Printed: d 59.5, `d_b` 55.9120 (0.3 µm off: rounded by hand), `s_n` 6.818. Its span over
/// three was printed as 27.904 in DIN 3966:1957, example 3, cut off where 27.9046 rounds to 27.905. A span of 27.868, the upper limit
/// printed, comes to x = 0.5027 (recomputed).
#[test]
fn spur_gear_of_din_3966() {
    let gear = gear(3.5, 17, 20.0, 0.0, 0.518);
    mm("d", gear.reference_diameter(), 59.5);
    mm("d_b", gear.base_diameter(), 55.911_711);
    mm("s_n", gear.normal_thickness(), 6.817_543);
    mm("W3", span::over_teeth(&gear, 3), 27.904_645);
    is("x of W3", span::shift_of(&gear, 3, millimetres(27.868)), 0.502_694, 1e-6);
    // A_s of −0.040 and −0.100 take A_s cos α off the span.
    mm("upper", span::over_teeth(&gear, 3) - millimetres(0.040 * 20_f64.to_radians().cos()), 27.867_057);
}

/// DIN 3966-1:1978, section 4.2 (d 88.056, `s_n` 5.160), and DIN 3966:1957, example 4 (W4 32.264): helical gears.
#[test]
fn helical_gears_of_din_3966() {
    let shifted = gear(3.0, 28, 20.0, 17.4576, 0.205);
    is("d", in_millimetres(shifted.reference_diameter()), 88.056, 5e-4);
    is("s_n", in_millimetres(shifted.normal_thickness()), 5.160, 5e-4);
    mm("W4", span::over_teeth(&gear(3.0, 28, 20.0, 13.0, 0.0), 4), 32.264_309);
}

/// DIN 3966:1957, example 7 (chord 13.52, height 7.03), and Elements of Metric Gear Technology, table 10-1 (17.8918, 17.8256, 13.6657).
#[test]
fn chords() {
    let [thick, high] = gear(10.0, 150, 20.0, 0.0, -0.3).chord();
    mm("chord", thick, 13.523_959);
    mm("height", high, 7.030_484);
    let small = gear(10.0, 12, 20.0, 0.0, 0.3);
    let [thick, high] = small.chord();
    mm("s", small.normal_thickness(), 17.891_785);
    mm("chord", thick, 17.825_568);
    mm("height", high, 13.665_674);
}

/// Wright, example of tooth generation: W2 38.52, W3 62.14, their difference π · 8 · cos 20°.
#[test]
fn one_tooth_more_is_a_base_pitch() {
    let gear = gear(8.0, 13, 20.0, 0.0, 0.30);
    mm("W2", span::over_teeth(&gear, 2), 38.523_850);
    mm("W3", span::over_teeth(&gear, 3), 62.140_901);
    mm("p", gear.base_pitch(), 23.617_051);
}

/// Elements of Metric Gear Technology, tables 10-7 and 10-9 (from memory; recomputed): teeth to span and spans.
#[test]
fn teeth_to_span() {
    let spur = gear(3.0, 24, 20.0, 0.0, 0.4);
    is("k", span::teeth_to_span_exactly(&spur), 3.787_868, 1e-6);
    assert_eq!(span::teeth_to_span(&spur), 4);
    mm("W4", span::over_teeth(&spur, 4), 32.826_627);
    let helical = gear(3.0, 24, 20.0, 25.0, 0.4);
    is("k", span::teeth_to_span_exactly(&helical), 4.630_090, 1e-6);
    assert_eq!(span::teeth_to_span(&helical), 5);
    mm("W5", span::over_teeth(&helical, 5), 42.008_472);
    // A tutorial's spur gear of 20 teeth, module 2: W3 15.321, touched at √(d_b² + W²) = 40.59.
    let plain = gear(2.0, 20, 20.0, 0.0, 0.0);
    mm("W3", span::over_teeth(&plain, 3), 15.320_879);
    mm("touches", span::contact_diameter(&plain, span::over_teeth(&plain, 3)), 40.590_207);
}

/// Machinery's Handbook, wires of 1.728 in at one diametral pitch: 34.4130 for 32 teeth (a gear shop's page); 17, 25, 36 and 37 teeth recomputed.
/// Elements of Metric Gear Technology, balls on a helical gear: 24.5696 (from memory; recomputed), and back.
#[test]
fn over_pins_and_balls() {
    let inches = |teeth, pressure| {
        in_millimetres(pins::over_pins(&gear(25.4 / 2.0, teeth, pressure, 0.0, 0.0), millimetres(1.728 * 12.7)).unwrap()) / 12.7
    };
    is("32", inches(32, 20.0), 34.412_978, 1e-6);
    for (teeth, at_20, at_145) in
        [(17, 19.305_272, 19.318_191), (25, 27.351_054, 27.377_414), (36, 38.417_755, 38.456_473), (37, 39.384_852, 39.424_422)]
    {
        is("20°", inches(teeth, 20.0), at_20, 1e-6);
        is("14.5°", inches(teeth, 14.5), at_145, 1e-6);
    }
    let helical = gear(1.0, 20, 20.0, 15.0, 0.4);
    mm("balls", pins::over_pins(&helical, millimetres(2.0)).unwrap(), 24.569_638);
    is("x of balls", pins::shift_of(&helical, millimetres(2.0), millimetres(24.5696)).unwrap(), 0.399_973, 1e-6);
    // Constructed: an odd helical gear over balls.
    let odd = gear(2.5, 29, 20.0, 21.0, 0.15);
    mm("odd balls", pins::over_pins(&odd, millimetres(4.5)).unwrap(), 84.855_044);
    mm("W4", span::over_teeth(&odd, 4), 27.322_555);
    mm("W5", span::over_teeth(&odd, 5), 34.702_883);
}

/// A shop article's gear: 24 teeth of module 2.5 at 19.5° print 20.9036° (recomputed); its lead is π z mₙ / sin β = 564.684 mm. A widely
/// copied sheet has 14.132723° for the base helix of 15°, 20°, with the cosine of the wrong angle; it is 14.076095°.
#[test]
fn the_tips_print_another_helix() {
    let shop = gear(2.5, 24, 20.0, 19.5, 0.0);
    is("print", unit::DEGREE.number(shop.helix_at(shop.tip_diameter())), 20.903_647, 1e-6);
    mm("lead", shop.lead().unwrap(), 564.684_499);
    let back = print::helix_of_print(shop.teeth, millimetres(2.5), unit::DEGREE.of(20.903_647), shop.tip_diameter()).unwrap();
    is("back", unit::DEGREE.number(back), 19.5, 1e-6);
    is("base helix", gear(1.0, 20, 20.0, 15.0, 0.0).base_helix_rad().to_degrees(), 14.076_095, 1e-6);
}

/// Glinsky, helical 17 teeth: printed to six decimals.
#[test]
fn glinsky_helical() {
    let gear = gear(1.0, 17, 20.0, 15.0, 0.2);
    mm("d", gear.reference_diameter(), 17.599_695);
    mm("d_b", gear.base_diameter(), 16.469_288);
    mm("d_a", gear.tip_diameter(), 19.999_695);
    mm("d_f", gear.root_diameter(), 15.499_695);
    mm("s_t", gear.thickness_at(gear.reference_diameter()).unwrap(), 1.776_932);
    mm("s_at", gear.thickness_at(gear.tip_diameter()).unwrap(), 0.634_641);
}

/// Base pitches π m cos α in mm, module, pitch and angle as rows (recomputed).
#[test]
fn base_pitches() {
    let of = |pitch: Pitch, angle: f64| in_millimetres(gear(in_millimetres(pitch.module()), 20, angle, 0.0, 0.0).base_pitch());
    for (angle, m2, m25, dp10, dp8) in [
        (14.5, 6.08305, 7.60381, 7.72547, 9.65684),
        (17.5, 5.99238, 7.49048, 7.61032, 9.51290),
        (20.0, 5.90426, 7.38033, 7.49841, 9.37302),
        (22.5, 5.80491, 7.25613, 7.37223, 9.21529),
        (25.0, 5.69450, 7.11812, 7.23201, 9.04002),
    ] {
        is("m 2", of(Pitch::Module(2.0), angle), m2, 5e-6);
        is("m 2.5", of(Pitch::Module(2.5), angle), m25, 5e-6);
        is("10 DP", of(Pitch::Diametral(10.0), angle), dp10, 5e-6);
        is("8 DP", of(Pitch::Diametral(8.0), angle), dp8, 5e-6);
    }
}

/// Backlash. Elements of Metric Gear Technology, equations 14-2 and 14-3: a spur pair drawn Δa apart has 2 Δa tan α. A published sheet of ISO
/// 21771:2007 (31 and 30 teeth, module 3.5, 21°, 116.5 mm): 0.03 mm square to the flanks take the sum of the shifts from 0.6518771 to 0.6393465.
/// DIN 3967 thinnings of 54 and 70 µm leave 0.1165 mm square to the flanks.
#[test]
fn backlash() {
    let [one, two] = [gear(2.0, 20, 20.0, 0.0, 0.0), gear(2.0, 30, 20.0, 0.0, 0.0)];
    let opened = pair::meshing([one, two], millimetres(50.001), [None; 2]).unwrap();
    is("2 Δa tan α", in_millimetres(opened.backlash.around), 0.002 * 20_f64.to_radians().tan(), 1e-7);
    let sheet = gear(3.5, 31, 20.0, 21.0, 0.0);
    let mesh = Mesh::new(31, 30).unwrap();
    let setting = Setting { mesh, cut: sheet.cut, centre: Some(millimetres(116.5)), driver_shift: None, face_width: None };
    let found = geometry(&setting).unwrap();
    let other = CutGear { teeth: Teeth::new(30).unwrap(), shift: 0.639_346_541, ..sheet };
    let meshing = pair::meshing([sheet, other], millimetres(116.5), [None; 2]).unwrap();
    is("normal", in_millimetres(meshing.backlash.normal), 0.03, 1e-8);
    is("back", pair::flank_sum_of(&sheet, &found, meshing.backlash.around), 0.639_346_541, 1e-9);
    // Thinnings of 54 and 70 µm on gears of module 2 as shifts: A_s / (2 m tan α).
    let thin = |gear: CutGear, by: f64| gear.with_shift(-by / (2.0 * 2.0 * 20_f64.to_radians().tan()));
    let thinned = pair::meshing([thin(one, 0.054), thin(two, 0.070)], millimetres(50.0), [None; 2]).unwrap();
    is("27cd", in_millimetres(thinned.backlash.normal), 0.116_522, 1e-6);
    // Opened to where they touch again, nothing is left.
    let tight = pair::tightest_centre([thin(one, 0.054), thin(two, 0.070)]).unwrap();
    let none = pair::meshing([thin(one, 0.054), thin(two, 0.070)], tight, [None; 2]).unwrap();
    is("none", in_millimetres(none.backlash.around), 0.0, 1e-9);
}

/// ISO/TR 6336-30:2022, annex A, example 1: x falls from 0.14522 to 0.11779 by a thinning of 0.159739 mm, a span loses 0.150106 mm.
#[test]
fn generating_shift_of_iso_tr_6336() {
    let gear = gear(8.0, 17, 20.0, 15.8, 0.145_22);
    mm("W2", span::over_teeth(&gear, 2), 38.346_131);
    mm("W3", span::over_teeth(&gear, 3), 61.963_182);
    is("ΔW", in_millimetres(span::thinning(&gear, 0.145_22 - 0.117_79)), 0.150_106, 5e-6);
}

/// DIN 3967:1978-08, tables 1 and 2, spot cells, and the example of section 3.1: 27cd on 100 mm. Over 10 up to and including 50 mm: 10.000 is of
/// the first row, 10.001 of the second.
#[test]
fn rows_of_din_3967() {
    for (row, diameter, least, most) in [
        ("27cd", 100.0, 0.070, 0.170),
        ("21a", 10.0, 0.100, 0.103),
        ("25a", 10.001, 0.135, 0.165),
        ("25cd", 40.0, 0.054, 0.084),
        ("CD 25", 82.0, 0.070, 0.110),
        ("25h", 50.0, 0.0, 0.030),
    ] {
        let found = Allowance::read(row).unwrap().thinner(millimetres(diameter)).unwrap();
        mm(row, found[0], least);
        mm(row, found[1], most);
    }
    assert_eq!(Allowance::read("27cd").unwrap().thinner(millimetres(1_000.1)), None);
    for wrong in ["", "25", "cd", "20cd", "25x", "2c5d", "25cdd"] {
        assert!(Allowance::read(wrong).is_err(), "{wrong}");
    }
}

/// Elements of Metric Gear Technology, tables 10-4 and 10-10 (the second from memory; recomputed): teeth cut in the transverse system, whose
/// module, pressure angle and shift are told across the shaft. mₙ = mₜ cos β, tan αₙ = tan αₜ cos β, xₙ = xₜ / cos β. The tips of the first are
/// 0.8796 + 0.3 transverse modules high.
#[test]
fn the_transverse_system() {
    let cosine = 22.5_f64.to_radians().cos();
    let pressure = (20_f64.to_radians().tan() * cosine).atan().to_degrees();
    is("αₙ", pressure, 18.585_973, 1e-6);
    let span = gear(3.0 * cosine, 24, pressure, 22.5, 0.4 / cosine);
    mm("W4", span::over_teeth(&span, 4), 30.591_008);
    let chord = gear(4.0 * cosine, 20, pressure, 22.5, 0.3 / cosine);
    let chord = CutGear { cut: chord.cut.with_heights(0.8796 / cosine, 1.25), ..chord };
    mm("s_n", chord.normal_thickness(), 6.611_941);
    is("z_v", chord.cut.virtual_teeth(20.0), 25.362_027, 1e-6);
    let [thick, high] = chord.chord();
    mm("chord", thick, 6.606_459);
    mm("height", high, 4.834_962);
}

/// Elements of Metric Gear Technology, equations 14-2 and 14-3: how far a pair is drawn apart for a backlash, 1.933 times it at 14.5°, 1.374 at 20°.
/// 0.1 mm square to the flanks of 20° and 15° helix are 0.110172 mm on the circle, and so the centre distance may close by 0.146190 (recomputed).
#[test]
fn backlash_by_the_centre_distance() {
    for (pressure, apart) in [(14.5, 1.933_357), (20.0, 1.373_739)] {
        let pair = [gear(2.0, 20, pressure, 0.0, 0.0), gear(2.0, 30, pressure, 0.0, 0.0)];
        let opened = pair::meshing(pair, millimetres(50.0 + 1e-5), [None; 2]).unwrap();
        is("Δa / j", 1e-5 / in_millimetres(opened.backlash.around), apart, 1e-5);
    }
    let [one, two] = [gear(2.0, 20, 20.0, 15.0, 0.0), gear(2.0, 30, 20.0, 15.0, -0.1 / (2.0 * 2.0 * 20_f64.to_radians().sin()))];
    let reference = (one.reference_diameter() + two.reference_diameter()) / 2.0;
    let meshing = pair::meshing([one, two], reference, [None; 2]).unwrap();
    is("j_bn", in_millimetres(meshing.backlash.normal), 0.1, 1e-9);
    is("j_wt", in_millimetres(meshing.backlash.around), 0.110_172, 1e-6);
    is("j_r", in_millimetres(meshing.backlash.around) / (2.0 * meshing.geometry.working_pressure_rad.tan()), 0.146_190, 1e-6);
}

/// ISO 53 (A confirmed by DIN 867, D by ISO/TR 6336-30): depth, clearance and tip radius of the racks. A clearance c leaves room for a radius of
/// c / (1 − sin α): 0.379951 for 0.25, so that the printed 0.38 of profile A ends its straight flank a hair above one module.
#[test]
fn racks_of_iso_53() {
    let sine = 20_f64.to_radians().sin();
    is("ρ of 0.25", 0.25 / (1.0 - sine), 0.379_951, 1e-6);
    for (rack, depth, radius) in [(Rack::A, 1.25, 0.38), (Rack::B, 1.25, 0.30), (Rack::C, 1.25, 0.25), (Rack::D, 1.4, 0.39)] {
        assert_eq!(rack.sizes(), (1.0, depth, radius));
        let cut = gear(3.0, 20, 20.0, 0.0, 0.0).cut.with_heights(1.0, depth);
        is("straight", straight_depth(&cut, radius), depth - radius * (1.0 - sine), 1e-12);
    }
    is("A", straight_depth(&gear(3.0, 20, 20.0, 0.0, 0.0).cut, 0.379_951), 1.0, 1e-6);
}

/// ISO 54's modules and the usual diametral pitches (from memory) are all tried.
#[test]
fn pitches_of_the_standards() {
    let all: Vec<Pitch> = Pitch::all().collect();
    let modules = [1.0, 1.25, 1.5, 2.0, 2.5, 3.0, 4.0, 5.0, 6.0, 8.0, 1.125, 1.375, 1.75, 2.25, 2.75, 3.5, 4.5, 5.5, 7.0, 9.0];
    assert!(modules.iter().all(|module| all.contains(&Pitch::Module(*module))));
    for (per_inch, module) in [(8.0, 3.175), (10.0, 2.54), (12.0, 2.116_667), (14.0, 1.814_286)] {
        assert!(all.contains(&Pitch::Diametral(per_inch)));
        is("module", in_millimetres(Pitch::Diametral(per_inch).module()), module, 1e-6);
    }
}
