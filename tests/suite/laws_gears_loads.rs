//! What must hold of every load: an ideal mesh gives what it takes, a shift's work does not depend on where it is told.

use layshaft::gearing::Ratio;
use layshaft::gearing::speeds::{Arrangement, Selected, Turning};
use layshaft::toothload::path::meshes;
use layshaft::toothload::synchroniser::{Synchroniser, absorb, shifts};
use layshaft::units::common::{in_rpm, rpm};
use layshaft::units::{MomentOfInertia, Time};
use proptest::prelude::*;

use crate::any_gearbox::gearbox;

fn config() -> ProptestConfig {
    ProptestConfig { cases: 256, failure_persistence: None, ..ProptestConfig::default() }
}

proptest! {
    #![proptest_config(config())]

    /// Σ T·ω = 0 at each mesh and over the whole box, exactly: torques and speeds as shares of the input's.
    #[test]
    fn power_balances(gearbox in gearbox()) {
        let arrangement = Arrangement::usual(&gearbox);
        let forward = gearbox.numbers().map(Selected::Gear);
        for selected in forward.chain(gearbox.reverse().map(|_| Selected::Reverse)) {
            let turning = Turning::new(&gearbox, &arrangement, selected).unwrap();
            let mut given = Ratio::from_integer(1);
            for mesh in meshes(&gearbox, selected) {
                let speed = |part| turning.part(part).unwrap().speed.of_input;
                prop_assert_eq!(mesh.driver_share, given);
                let (in_, out) = (mesh.driver_share * speed(mesh.driver), mesh.driven_share * speed(mesh.driven));
                prop_assert_eq!(in_, out, "{:?} in {:?}", mesh, selected);
                prop_assert_eq!(in_, Ratio::from_integer(1));
                given = mesh.driven_share;
            }
            prop_assert_eq!(Some(given), turning.ratio, "the output torque is the ratio times the input torque");
        }
    }

    /// The work of a shift is the input side's own, ½ J (ω₁² less the part carried on), whichever shaft the cone is on; and each
    /// ends where the gear's own ratio says.
    #[test]
    fn work_is_the_inputs_own(gearbox in gearbox(), engine in 1_000.0_f64..9_000.0) {
        let inertia = MomentOfInertia::new::<uom::si::moment_of_inertia::kilogram_square_meter>(0.01);
        let time = Time::new::<uom::si::time::second>(0.25);
        for shift in shifts(&gearbox, &Arrangement::usual(&gearbox), inertia, rpm(engine), time, &[Synchroniser::Unsized; 8]) {
            let own = absorb(inertia, shift.input_before - shift.input_after, time);
            let found = shift.absorbed.unwrap();
            prop_assert!(((found.work / own.work).value - 1.0).abs() < 1e-9 || own.work.value < 1e-9);
            prop_assert!((found.mean_power.value - own.mean_power.value).abs() <= 1e-9 * own.mean_power.value.max(1e-9));
            let fixed = if shift.to > shift.from { shift.input_before } else { shift.input_after };
            prop_assert!((in_rpm(fixed) - engine).abs() < 1e-9);
        }
    }
}
