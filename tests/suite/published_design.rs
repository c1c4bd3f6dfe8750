//! Textbook ladders: the ratios asked for, and tooth counts that come near them.

use layshaft::catalogue::Column;
use layshaft::finder::design::{Brief, Target, solve_design};
use layshaft::gearing::ladder::{Character, Ladder};
use layshaft::gearing::teeth::decimal;
use layshaft::gearing::{Gear, Layout};

/// The oracle's figures have sixteen digits.
const EXACT: f64 = 1e-12;

/// Row O10 of the reference outputs: closed forms of geometric and progressive stepping, worked out with 40 digits.
///
/// Geometric: Liu, Hybrid Electric Vehicle System Modeling and Control, 2nd ed., eq. 10.22; Heisler, Advanced Vehicle Technology, 2nd ed.,
/// sec. 3.8.3. Progressive: Naunheimer et al., Automotive Transmissions, ch. 4, from memory.
#[test]
fn ladders_are_those_of_the_textbooks() {
    let oracle: serde_json::Value = serde_json::from_str(include_str!("../data/motion_oracle.json")).unwrap();
    let rows = oracle["O10_gear_steps"]["outputs"].as_array().unwrap();
    assert!(rows.len() >= 7);
    for row in rows {
        let number = |name: &str| row[name].as_f64().unwrap();
        let gears = u8::try_from(row["z"].as_u64().unwrap()).unwrap();
        let target = Target::Steps { first: number("i1"), top: number("iz"), gears, growth: number("phi2") };
        let published: Vec<f64> = row["ratios"].as_array().unwrap().iter().map(|ratio| ratio.as_f64().unwrap()).collect();
        let own = target.ratios();
        assert_eq!(own.len(), published.len());
        for (own, published) in own.iter().zip(&published) {
            assert!((own - published).abs() <= EXACT * published, "{own} for {published} in {row}");
        }
    }
}

fn brief(sum: u16, first: f64, top: f64, gears: u8, growth: f64) -> Brief {
    Brief { sum, least_teeth: 14, most_teeth: 110, layout: Layout::InputReduced, target: Target::Steps { first, top, gears, growth } }
}

/// Asked for a textbook ladder, the designer gives one of its kind, each ratio within what whole teeth allow.
#[test]
fn teeth_come_near_the_textbook_ladders() {
    #[track_caller]
    fn check(brief: &Brief, within: f64, character: Character) {
        let designs = solve_design(brief);
        let best = designs.best.first().expect("a design");
        assert!(best.worst <= within, "off by {} with {:?}", best.worst, best.gearbox);
        let ladder = Ladder::new(best.gearbox.ratios());
        assert_eq!(ladder.character(), character, "{:?}", ladder.ratios().iter().map(|ratio| decimal(*ratio)).collect::<Vec<_>>());
    }
    // The rows of O10 with four gears: 3.4 2.261 1.504 1 and 3.4 2.056 1.367 1. The nearest of 91 teeth is rarely 1 % off.
    check(&brief(91, 3.4, 1.0, 4, 1.0), 0.01, Character::Geometric);
    check(&brief(91, 3.4, 1.0, 4, 1.1), 0.01, Character::Progressive);
    // Five gears to an overdrive: 4 2.675 1.789 1.196 0.8. One tooth of 48/79 moves the ratio by 1/48 + 1/79 = 3.3 %, so that the
    // nearest can be 1.7 % off; over many constant pairs all five come nearer than that.
    check(&brief(127, 4.0, 0.8, 5, 1.0), 0.012, Character::Geometric);
    check(&brief(127, 4.0, 0.8, 5, 1.1), 0.012, Character::Progressive);
}

/// By hand: with the constant pair 25/30 (1.2) of 55 teeth, first at 2.467 is 37/18 and 4th at 1 is direct.
#[test]
fn the_demo_box_is_found_again() {
    let aims = vec![30.0 / 25.0 * 37.0 / 18.0, 30.0 / 25.0 * 32.0 / 23.0, 30.0 / 25.0 * 28.0 / 27.0, 1.0];
    let brief = Brief { sum: 55, least_teeth: 15, most_teeth: 40, layout: Layout::InputReduced, target: Target::Ratios(aims.clone()) };
    let best = solve_design(&brief).best.into_iter().next().unwrap();
    // 25/30 shares a factor of 5: a hunting constant pair that does as well within 0.4 % may be preferred.
    assert!(best.worst < 0.012, "{best:?}");
    assert_eq!(best.gearbox.gears().last(), Some(&Gear::Direct));
    let set = best.as_set("A new one");
    assert_eq!((set.text(Column::Note), set.in_stock()), ("a drawing to be made", false));
    assert_eq!(set.gearbox().unwrap(), best.gearbox, "the catalogue reads back the same teeth");
}

/// Every pair keeps to the tooth sum and the limits, in every layout, and is written so that the catalogue reads the same box.
#[test]
fn every_design_keeps_to_its_brief() {
    for layout in [Layout::InputReduced, Layout::OutputReduced, Layout::TwoShaft] {
        let brief = Brief { layout, ..brief(63, 3.2, 0.9, 5, 1.05) };
        let designs = solve_design(&brief);
        assert!(!designs.best.is_empty());
        for design in designs.best {
            let meshes = design.gearbox.gears().iter().filter_map(|gear| if let Gear::Mesh(mesh) = gear { Some(*mesh) } else { None });
            for mesh in meshes.chain(design.gearbox.constant()) {
                assert_eq!(mesh.sum(), 63);
                assert!(mesh.driver.count() >= 14 && mesh.driven.count() >= 14);
            }
            assert_eq!(design.as_set("one").gearbox().unwrap(), design.gearbox);
        }
    }
}
