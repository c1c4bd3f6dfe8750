//! Gearboxes as they are laid out: their ratios, and parts that make none.

use layshaft::gearing::gearbox::GearboxError;
use layshaft::gearing::part::{Part, Shaft};
use layshaft::gearing::{Gear, Gearbox, Idler, Layout, Mesh, Ratio, Reverse, ReverseGears, Teeth, read, write};
use proptest::prelude::*;

use crate::any_gearbox::{built, gearbox, mesh, printed_gearbox};
use crate::nth;

fn pair(driver: u16, driven: u16) -> Mesh {
    Mesh::new(driver, driven).unwrap()
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 256, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn ratio_times_its_inverse_is_one(mesh in mesh()) {
        let back = Mesh { driver: mesh.driven, driven: mesh.driver };
        prop_assert_eq!(mesh.ratio() * back.ratio(), Ratio::from_integer(1));
    }

    /// The idler of one gear drops out of the ratio, a compound one multiplies it by entry over exit; both turn the direction.
    #[test]
    fn reverse_turns_the_direction(gearbox in gearbox()) {
        let (Some(ratio), Some(reverse)) = (gearbox.reverse_ratio(), gearbox.reverse_gears()) else { return Ok(()) };
        let zero = Ratio::from_integer(0);
        prop_assert_eq!(ratio < zero, gearbox.ratio(nth(1)).unwrap() > zero);
        if let Idler::Compound { entry, exit } = reverse.idler {
            let times = Ratio::new(entry.count().into(), exit.count().into());
            prop_assert_eq!(reverse.ratio(), reverse.pair.ratio() * times);
        } else {
            prop_assert_eq!(reverse.ratio(), reverse.pair.ratio());
        }
    }

    /// What is written of a gearbox is read as the same gearbox, gears known by their ratio too.
    #[test]
    fn a_written_gearbox_is_read_again(gearbox in prop_oneof![gearbox(), printed_gearbox()]) {
        let layout = gearbox.layout();
        for gear in gearbox.gears() {
            prop_assert_eq!(read::gear(&write::gear(*gear, layout), layout), Ok(*gear));
        }
        if let Some(constant) = gearbox.constant() {
            prop_assert_eq!(read::constant(&write::constant(constant, layout), layout), Ok(constant));
        }
        if let Some(reverse) = gearbox.reverse() {
            let idler = reverse.gears().map_or(Idler::Plain(None), |gears| gears.idler);
            prop_assert_eq!(read::reverse(&write::reverse(reverse, layout), idler, layout), Ok(reverse));
            prop_assert_eq!(read::idler(&write::idler(idler)), Ok(idler));
        }
    }

    /// Each gear of known teeth is listed once, and stands on a shaft that its layout has.
    #[test]
    fn parts_are_the_gears(gearbox in gearbox()) {
        let parts = Part::gears_of(&gearbox);
        let expected = 2 * gearbox.constant().iter().count()
            + 2 * gearbox.gears().iter().filter(|gear| matches!(gear, Gear::Mesh(_))).count()
            + gearbox.reverse_gears().map_or(0, |reverse| 2 + match reverse.idler {
                Idler::Plain(teeth) => usize::from(teeth.is_some()),
                Idler::Compound { .. } => 2,
            });
        prop_assert_eq!(parts.len(), expected);
        let no_countershaft = gearbox.layout() == Layout::TwoShaft;
        prop_assert!(parts.iter().all(|part| !(no_countershaft && part.shaft(gearbox.layout()) == Shaft::Countershaft)));
    }
}

/// Reduced at the output, by hand: 18 to 32 and then 20 to 30 is 32/18 · 30/20 = 8/3, whichever comes first; direct is one.
#[test]
fn output_reduced_by_hand() {
    let gearbox = built(Layout::OutputReduced, Some((20, 30)), &[(18, 32), (0, 0)], None);
    assert_eq!(gearbox.ratios(), [Ratio::new(8, 3), Ratio::from_integer(1)]);
    let reduced_first = built(Layout::InputReduced, Some((20, 30)), &[(18, 32), (0, 0)], None);
    assert_eq!(gearbox.ratios(), reduced_first.ratios());
    assert_eq!(Part::ConstantDriver.name(Layout::OutputReduced), "constant gear on the countershaft");
    assert_eq!(Part::Driver(nth(2)).name(Layout::TwoShaft), "2nd gear on the input shaft");
}

/// Two shafts turn against each other; through an idler they turn alike: 12 to 36 is −3 forwards, 12 to 38 is 19/6 in reverse.
#[test]
fn two_shafts_by_hand() {
    let reverse = Reverse::Geared(ReverseGears { pair: pair(12, 38), idler: Idler::Plain(Teeth::new(25)) });
    let gearbox = built(Layout::TwoShaft, None, &[(12, 36)], Some(reverse));
    assert_eq!((gearbox.ratio(nth(1)), gearbox.reverse_ratio()), (Some(Ratio::from_integer(-3)), Some(Ratio::new(19, 6))));
}

#[test]
fn parts_that_make_no_gearbox() {
    let gears = || vec![Gear::Mesh(pair(20, 40)), Gear::Direct];
    let new = |layout, constant, gears| Gearbox::new(layout, constant, gears, None).map(|_| ());
    assert_eq!(new(Layout::InputReduced, None, gears()), Err(GearboxError::NoConstantPair));
    assert_eq!(new(Layout::TwoShaft, Some(pair(20, 30)), gears()), Err(GearboxError::NeedlessConstantPair));
    assert_eq!(new(Layout::TwoShaft, None, gears()), Err(GearboxError::DirectInTwoShaft(nth(2))));
    assert_eq!(new(Layout::OutputReduced, Some(pair(20, 30)), vec![]), Err(GearboxError::GearCount(0)));
    assert_eq!(new(Layout::OutputReduced, Some(pair(20, 30)), vec![Gear::Direct; 9]), Err(GearboxError::GearCount(9)));
    assert_eq!((Teeth::new(7), Teeth::new(151)), (None, None));
}

#[test]
fn gears_are_spoken() {
    let spoken: Vec<String> = (0..4).chain([10, 20]).map(layshaft::units::number::ordinal).collect();
    assert_eq!(spoken, ["1st", "2nd", "3rd", "4th", "11th", "21st"]);
}
