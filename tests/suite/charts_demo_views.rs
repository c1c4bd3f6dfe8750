//! Demo chains of rods: one piece from the side, two pieces from two sides, one that is steep, one without any slope; invented.
use crate::charts_demo_more::named;
use layshaft::chart::{
    Picture,
    palette::Hue,
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
        named("joints-steep", views(&two, vec![view("from the side", &one_piece, &[0.9, -0.9, 0.9], &usual)])),
        named(
            "joints-level",
            views(&two, vec![view("from the side", &one_piece, &[0.0; 3], &["gearbox level", "shaft level", "nose level"])]),
        ),
    ]
}
