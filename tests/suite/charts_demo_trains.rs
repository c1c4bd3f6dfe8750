//! Demo gear trains: the wide four in 2nd, a six-speed with reverse idler, a two-shaft box.
use crate::charts_demo_more::named;
use layshaft::chart::{
    Picture,
    palette::Hue,
    train::{
        Coupling, Line, Shaft, Train, Wheel,
        turned::{Marked, Turned},
    },
};
use layshaft::units::number::show;

fn shaft(name: &str, rpm: f64, line: Line, ends: (f64, f64)) -> Shaft {
    let rpm = if rpm > 0.0 { show(rpm, 0) } else { String::new() };
    Shaft { name: name.to_owned(), rpm, line, from: ends.0, to: ends.1, is_on_path: true }
}

/// A countershaft box reduced at the input side: input pair first, then gears from high to low, reverse last.
fn countershaft(title: &str, input: (u32, u32), pairs: &[(&str, u32, u32)], reverse: Option<(u32, u32, u32)>, chosen: &str) -> Train {
    let cluster_rpm = 6500.0 * f64::from(input.0) / f64::from(input.1);
    let last = f64::from(u8::try_from(pairs.len()).unwrap_or(0)) + if reverse.is_some() { 1.0 } else { 0.0 };
    let mut output_rpm = 6500.0;
    let mut wheels = Vec::new();
    let mut wheel = |shaft, slot, teeth, name: &str, rpm: f64, is_on_path| {
        let rpm = if rpm > 0.0 { show(rpm, 0) } else { String::new() };
        wheels.push(Wheel { shaft, slot, teeth, name: name.to_owned(), rpm, is_on_path });
    };
    wheel(0, 0.0, input.0, "input", 6500.0, true);
    wheel(2, 0.0, input.1, "", 0.0, true);
    let mut meshes = vec![(0, 1)];
    for ((name, driven, driver), slot) in pairs.iter().zip(1..) {
        let rpm = cluster_rpm * f64::from(*driver) / f64::from(*driven);
        let is_on_path = *name == chosen;
        if is_on_path {
            output_rpm = rpm;
        }
        wheel(1, f64::from(slot), *driven, name, rpm, is_on_path);
        wheel(2, f64::from(slot), *driver, "", 0.0, is_on_path);
        let at = usize::try_from(slot).unwrap_or(0) * 2;
        meshes.push((at, at + 1));
    }
    let mut shafts = vec![
        shaft("", 0.0, Line::Upper, (-0.45, 0.12)),
        shaft("output", output_rpm, Line::Upper, (0.18, last + 0.8)),
        shaft("cluster", cluster_rpm, Line::Lower, (-0.2, last + 0.3)),
    ];
    if let Some((driven, idler, driver)) = reverse {
        let at = pairs.len() * 2 + 2;
        wheel(1, last, driven, "R", cluster_rpm * f64::from(driver) / f64::from(driven), false);
        wheel(2, last, driver, "", 0.0, false);
        wheel(3, last, idler, "idler", cluster_rpm * f64::from(driver) / f64::from(idler), false);
        meshes.extend([(at + 1, at + 2), (at, at + 2)]);
        shafts.push(shaft("", 0.0, Line::Idler, (last - 0.3, last + 0.3)));
    }
    let hub = |slot: f64, name: &str| Coupling { shaft: 1, slot, name: name.to_owned(), is_on_path: name.contains(&chosen[..1]) };
    let couplings = if pairs.len() == 3 {
        vec![hub(0.5, "3–4"), hub(2.5, "1–2")]
    } else {
        vec![hub(0.5, "4"), hub(2.5, "5–6"), hub(4.5, "3–2")]
    };
    Train { title: title.to_owned(), hue: Hue::Setup(0), shafts, wheels, meshes, couplings, pushes: Vec::new(), thrusts: Vec::new() }
}

fn two_shaft() -> Train {
    let counts = [("1st", 12, 41), ("2nd", 19, 37), ("3rd", 26, 34), ("4th", 33, 31), ("5th", 38, 28)];
    let mut train = Train {
        title: "Two-shaft box".to_owned(),
        hue: Hue::Setup(2),
        shafts: vec![shaft("input", 6500.0, Line::Upper, (-0.5, 5.4)), shaft("output", 4971.0, Line::Lower, (-0.5, 5.4))],
        wheels: Vec::new(),
        meshes: Vec::new(),
        couplings: vec![Coupling { shaft: 1, slot: 0.5, name: "1–2".to_owned(), is_on_path: false }],
        pushes: Vec::new(),
        thrusts: Vec::new(),
    };
    for ((name, driver, driven), slot) in counts.into_iter().zip(0..) {
        let rpm = show(6500.0 * f64::from(driver) / f64::from(driven), 0);
        let is_on_path = name == "3rd";
        let at = train.wheels.len();
        train.wheels.push(Wheel { shaft: 0, slot: f64::from(slot), teeth: driver, name: String::new(), rpm: String::new(), is_on_path });
        train.wheels.push(Wheel { shaft: 1, slot: f64::from(slot), teeth: driven, name: name.to_owned(), rpm, is_on_path });
        train.meshes.push((at, at + 1));
    }
    train
}

/// The wide four in 2nd, its input turned so far: 25 on 30, 23 on 32, and the idle pairs.
fn turned(train: Train, turns: f64) -> Turned {
    let cluster = -25.0 / 30.0;
    let of = |wheel: &Wheel| match (wheel.shaft, wheel.name.as_str()) {
        (0, _) => 1.0,
        (1, "3rd") => -cluster * 27.0 / 28.0,
        (1, "2nd") => -cluster * 23.0 / 32.0,
        (1, _) => -cluster * 18.0 / 37.0,
        _ => cluster,
    };
    let pair = |wheels, name: &str, every, driver_turns, common_factor| Marked {
        wheels,
        name: name.to_owned(),
        every,
        driver_turns,
        common_factor,
    };
    Turned {
        wheels: train.wheels.iter().map(of).collect(),
        shafts: vec![None, Some(-cluster * 23.0 / 32.0), Some(cluster)],
        marked: vec![pair((0, 1), "constant pair", 6.0, 6, 5), pair((5, 4), "2nd", 38.4, 32, 1)],
        all_meet: Some(192.0),
        turns,
        train,
    }
}

pub(crate) fn pictures() -> Vec<(String, Box<dyn Picture>)> {
    let four = countershaft("Wide four in 2nd", (25, 30), &[("3rd", 28, 27), ("2nd", 32, 23), ("1st", 37, 18)], None, "2nd");
    let pairs = [("5th", 24, 31), ("6th", 20, 35), ("3rd", 29, 26), ("2nd", 34, 21), ("1st", 39, 16)];
    let six = countershaft("Six-speed in 6th", (22, 33), &pairs, Some((34, 18, 14)), "6th");
    let by_hand = turned(four.clone(), 2.3);
    vec![named("train-four", four), named("train-six", six), named("train-two-shaft", two_shaft()), named("train-turned", by_hand)]
}
