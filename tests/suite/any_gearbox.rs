//! Random gearboxes for the property tests: every layout, any counts, direct gears, reverse of every kind.

use layshaft::gearing::{Gear, Gearbox, Idler, Layout, Mesh, Reverse, Teeth};
use proptest::prelude::*;

/// Any tooth count a car gearbox has.
pub(crate) fn teeth() -> impl Strategy<Value = Teeth> {
    (12_u16..=60).prop_map(|count| Teeth::new(count).unwrap())
}

/// Any pair.
pub(crate) fn mesh() -> impl Strategy<Value = Mesh> {
    (teeth(), teeth()).prop_map(|(driver, driven)| Mesh { driver, driven })
}

fn layout() -> impl Strategy<Value = Layout> {
    prop_oneof![Just(Layout::InputReduced), Just(Layout::OutputReduced), Just(Layout::TwoShaft)]
}

fn reverse() -> impl Strategy<Value = Reverse> {
    let idler = prop_oneof![
        proptest::option::of(teeth()).prop_map(Idler::Plain),
        (teeth(), teeth()).prop_map(|(entry, exit)| Idler::Compound { entry, exit })
    ];
    (mesh(), idler).prop_map(|(pair, idler)| Reverse { pair, idler })
}

/// Any gearbox of one to eight gears, its last gear direct now and then where the layout allows it.
pub(crate) fn gearbox() -> impl Strategy<Value = Gearbox> {
    (layout(), mesh(), proptest::collection::vec(mesh(), 1..=8), any::<bool>(), proptest::option::of(reverse())).prop_map(
        |(layout, constant, pairs, direct, reverse)| {
            let mut gears: Vec<Gear> = pairs.into_iter().map(Gear::Mesh).collect();
            let constant = (layout != Layout::TwoShaft).then_some(constant);
            if let (true, Some(_), Some(last)) = (direct, constant, gears.last_mut()) {
                *last = Gear::Direct;
            }
            Gearbox::new(layout, constant, gears, reverse).unwrap()
        },
    )
}

/// A gearbox from counts, each pair as driver and driven; `(0, 0)` is direct.
#[track_caller]
pub(crate) fn built(layout: Layout, constant: Option<(u16, u16)>, gears: &[(u16, u16)], reverse: Option<Reverse>) -> Gearbox {
    let mesh = |&(driver, driven): &(u16, u16)| Mesh::new(driver, driven).unwrap();
    let gears = gears.iter().map(|pair| if *pair == (0, 0) { Gear::Direct } else { Gear::Mesh(mesh(pair)) });
    Gearbox::new(layout, constant.as_ref().map(mesh), gears.collect(), reverse).unwrap()
}
