//! Random gearboxes for the property tests: every layout, any counts, direct gears, reverse of every kind.

use layshaft::gearing::{Gear, Gearbox, Idler, Layout, Mesh, PrintedRatio, Ratio, Reverse, ReverseGears, Teeth};
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
    (mesh(), idler).prop_map(|(pair, idler)| Reverse::Geared(ReverseGears { pair, idler }))
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

/// Any ratio as a list prints it; in line, one of exactly one would be direct.
pub(crate) fn printed() -> impl Strategy<Value = PrintedRatio> {
    (1_u32..=5).prop_flat_map(|decimals| {
        let unit = 10_i128.pow(decimals);
        (unit.max(10) / 10..=20 * unit)
            .prop_map(move |value| PrintedRatio { value: Ratio::new(value, unit), decimals })
            .prop_filter("direct", |printed| !printed.is_one())
    })
}

/// Any gearbox of which one gear at least is known by its ratio alone; where none is counted, its constant pair may be unknown.
pub(crate) fn printed_gearbox() -> impl Strategy<Value = Gearbox> {
    let gear = prop_oneof![2 => printed().prop_map(Gear::Printed), 1 => mesh().prop_map(Gear::Mesh)];
    let gears = (printed(), proptest::collection::vec(gear, 0..=7));
    let reverse = prop_oneof![reverse(), printed().prop_map(Reverse::Printed)];
    (layout(), proptest::option::of(mesh()), gears, proptest::option::of(reverse)).prop_map(|(layout, constant, (one, others), reverse)| {
        let gears: Vec<Gear> = others.into_iter().chain([Gear::Printed(one)]).collect();
        let counted = gears.iter().find_map(|gear| gear.mesh());
        let constant = constant.or(counted).filter(|_| layout != Layout::TwoShaft);
        Gearbox::new(layout, constant, gears, reverse).unwrap()
    })
}

/// A gearbox from counts, each pair as driver and driven; `(0, 0)` is direct.
#[track_caller]
pub(crate) fn built(layout: Layout, constant: Option<(u16, u16)>, gears: &[(u16, u16)], reverse: Option<Reverse>) -> Gearbox {
    let mesh = |&(driver, driven): &(u16, u16)| Mesh::new(driver, driven).unwrap();
    let gears = gears.iter().map(|pair| if *pair == (0, 0) { Gear::Direct } else { Gear::Mesh(mesh(pair)) });
    Gearbox::new(layout, constant.as_ref().map(mesh), gears.collect(), reverse).unwrap()
}
