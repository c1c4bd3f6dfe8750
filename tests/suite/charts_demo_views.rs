//! Demo chains of rods: one piece from the side, two pieces from two sides, one that is steep, one without any slope; invented.
use crate::charts_demo_more::named;
use layshaft::chart::{
    Picture,
    palette::Hue,
    spectrum::{Spectrum, Stem},
    views::{Joint, View, Views},
};

/// The ends of rods of such lengths along, each falling by its slope.
fn ends(lengths: &[f64], slopes: &[f64]) -> Vec<(f64, f64)> {
    let mut at = (-lengths[0], lengths[0] * slopes[0]);
    let mut ends = vec![at];
    for (length, slope) in lengths.iter().zip(slopes) {
        at = (at.0 + length, at.1 - length * slope);
        ends.push(at);
    }
    ends
}

fn view(name: &str, lengths: &[f64], slopes: &[f64], rods: &[&str]) -> View {
    View { name: name.to_owned(), ends: ends(lengths, slopes), rods: rods.iter().map(|rod| (*rod).to_owned()).collect() }
}

fn views(joints: &[(&str, &str)], views: Vec<View>) -> Views {
    let joint = |(name, says): &(&str, &str)| Joint { name: (*name).to_owned(), says: (*says).to_owned() };
    Views {
        title: "Joints of setup B".to_owned(),
        hue: Hue::Setup(1),
        unit: "in".to_owned(),
        joints: joints.iter().map(joint).collect(),
        views,
    }
}

/// Tones from a tyre's to a mesh's, two of them close together, and the pitch that was heard.
fn tones(heard: Option<f64>, share: fn(usize) -> f64) -> Spectrum {
    let tones = [
        ("3rd gear pair", 1_041.7),
        ("input pair", 1_157.5),
        ("ring and pinion", 409.3),
        ("a bearing of the input shaft", 166.7),
        ("a bearing of the cluster", 138.9),
        ("a bearing of the output shaft", 133.9),
        ("firing of the engine", 92.6),
        ("joints of the driveshaft", 74.4),
        ("driveshaft, once a turn", 37.2),
        ("tires and wheels", 9.5),
        ("nothing", 0.0),
    ];
    let stem = |(at, (name, hertz)): (usize, &(&str, f64))| Stem {
        hue: if at == 0 { Hue::Dye } else { Hue::Ink },
        name: (*name).to_owned(),
        hertz: *hertz,
        share: share(at),
    };
    Spectrum {
        title: "Tones at 40 mph in 3rd, 2,778 rpm".to_owned(),
        height: "how well it fits".to_owned(),
        tones: tones.iter().enumerate().map(stem).collect(),
        heard: heard.map(|hertz| (hertz, "heard 1,040 Hz".to_owned())),
    }
}

pub(crate) fn pictures() -> Vec<(String, Box<dyn Picture>)> {
    let two = [("front", "1.8°"), ("rear", "1.6°")];
    let one_piece = [8.0, 44.0, 8.0];
    let usual = ["gearbox 3° down", "shaft 4.8° down", "nose 3.2° up"];
    let two_pieces = [11.0, 30.0, 34.0, 11.0];
    let both = vec![
        view(
            "from the side",
            &two_pieces,
            &[0.052, 0.052, 0.09, 0.06],
            &["gearbox 3° down", "1st piece 3° down", "2nd piece 5.1° down", "nose 3.4° up"],
        ),
        view("from above, right is down", &two_pieces, &[0.0, 0.0, 0.02, 0.0], &["straight", "straight", "1.1° right", "straight"]),
    ];
    vec![
        named("joints-one-piece", views(&two, vec![view("from the side", &one_piece, &[0.0524, 0.084, 0.056], &usual)])),
        named("joints-two-pieces", views(&[("front", "0.0°"), ("middle", "2.4°"), ("rear", "2.0°")], both)),
        named("tones-heard", tones(Some(1_040.0), |at| if at < 3 { 1.0 - 0.1 * f64::from(u8::try_from(at).unwrap()) } else { 0.1 })),
        named("tones-alike", tones(None, |_| 0.5)),
        named("tones-none", Spectrum { tones: Vec::new(), ..tones(None, |_| 0.5) }),
        named("joints-steep", views(&two, vec![view("from the side", &one_piece, &[0.9, -0.9, 0.9], &usual)])),
        named(
            "joints-level",
            views(&two, vec![view("from the side", &one_piece, &[0.0; 3], &["gearbox level", "shaft level", "nose level"])]),
        ),
    ]
}
