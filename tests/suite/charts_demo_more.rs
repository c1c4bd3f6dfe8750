//! Demo data of the other kinds of pictures, invented.
use layshaft::chart::{
    Picture,
    bars::{Bar, Bars, Zone},
    lines::{At, Band, Dot, Guide, Lines, Measure, Series},
    palette::Hue,
    scatter::{Found, Scatter},
    spans::{Span, Spans},
};

pub(crate) fn measure(name: &str, unit: &str, decimals: usize) -> Measure {
    Measure { name: name.to_owned(), unit: unit.to_owned(), decimals, ends: None }
}

/// A dial's reading over the true speed: two setups, the band the law allows, and a true reading.
pub(crate) fn dial() -> Lines {
    let straight = |factor: f64| (0..=10).map(|at| f64::from(at) * 16.0).map(|x| (x, x * factor)).collect::<Vec<_>>();
    let line = |slot, factor| Series { hue: Hue::Setup(slot), name: String::new(), points: straight(factor) };
    Lines {
        title: "Speedometer reading".to_owned(),
        x: measure("true speed", "km/h", 1),
        y: measure("reading", "km/h", 1),
        series: vec![
            Series { hue: Hue::Muted, name: "true".to_owned(), points: straight(1.0) },
            line(0, 0.957),
            line(1, 0.957),
            line(2, 1.018),
        ],
        bands: vec![Band {
            hue: Hue::Ok,
            name: "allowed".to_owned(),
            lower: straight(1.0),
            upper: straight(1.1).into_iter().map(|(x, y)| (x, y + 4.0)).collect(),
        }],
        guides: vec![Guide { at: At::X(100.0), name: "at 100".to_owned(), hue: Hue::Muted }],
        dots: Vec::new(),
        focus: None,
    }
}

/// Thrust in every gear of two setups, and what holds the car back.
pub(crate) fn thrust() -> Lines {
    let mut series = Vec::new();
    for (slot, ratios) in [(0, [2.467, 1.670, 1.244, 1.0]), (1, [2.132, 1.443, 1.157, 1.0])] {
        for (name, ratio) in ["1st", "2nd", "3rd", "4th"].into_iter().zip(ratios) {
            let point = |step: i32| {
                let rpm = 1500.0 + 125.0 * f64::from(step);
                let torque = 231.0 * (1.0 - ((rpm - 3800.0) / 6500.0).powi(2));
                (rpm / 6500.0 * 116.5 / ratio, torque * ratio * 3.909 / 0.98)
            };
            series.push(Series { hue: Hue::Setup(slot), name: name.to_owned(), points: (0..=40).map(point).collect() });
        }
    }
    let drag = (0..=70).map(|step| f64::from(step) * 2.0).map(|v| (v, 36.0 + 0.036 * v * v)).collect();
    series.push(Series { hue: Hue::Ink, name: "road load".to_owned(), points: drag });
    Lines {
        title: "Pull at the wheels".to_owned(),
        x: measure("road speed", "mph", 1),
        y: measure("thrust", "lbf", 0),
        series,
        bands: Vec::new(),
        guides: vec![Guide { at: At::Y(1900.0), name: "grip limit 1,900".to_owned(), hue: Hue::Caution }],
        dots: vec![Dot { at: (116.5, 525.0), name: "top speed 116.5".to_owned(), hue: Hue::Ink }],
        focus: None,
    }
}

/// What speedometer gears read at a true 60: setups as fitted, and candidates from the shelf.
pub(crate) fn errors() -> Bars {
    let bar = |hue, name: &str, value, note: &str| Bar { hue, name: name.to_owned(), value, note: note.to_owned() };
    Bars {
        title: "Speedometer error".to_owned(),
        measure: measure("reads high", "%", 1),
        bars: vec![
            bar(Hue::Setup(0), "8 : 28", -4.3, ""),
            bar(Hue::Setup(1), "8 : 28", -4.3, ""),
            bar(Hue::Setup(2), "7 : 23", 1.8, ""),
            bar(Hue::Dye, "6 : 20", 0.5, "best"),
            bar(Hue::Muted, "7 : 24", -2.4, ""),
            bar(Hue::Muted, "6 : 19", 5.8, ""),
        ],
        zone: Some(Zone { least: 0.0, greatest: 10.0, name: "allowed".to_owned(), hue: Hue::Ok }),
        focus: None,
    }
}

/// Countershaft speed of three setups.
pub(crate) fn countershaft() -> Bars {
    let bar = |slot, name: &str, value| Bar { hue: Hue::Setup(slot), name: name.to_owned(), value, note: String::new() };
    Bars {
        title: "Countershaft speed".to_owned(),
        measure: measure("countershaft speed at 6,500", "rpm", 0),
        bars: vec![bar(0, "As it came", 5417.0), bar(1, "Close", 6268.0), bar(2, "Five-speed, overdrive 5th, with a long name", 4333.0)],
        zone: None,
        focus: None,
    }
}

pub(crate) fn pictures() -> Vec<(String, Box<dyn Picture>)> {
    let focused = Lines { focus: Some(1), ..thrust() };
    vec![
        named("dial", dial()),
        named("thrust", thrust()),
        named("thrust-focus", focused),
        named("errors", errors()),
        named("countershaft", countershaft()),
        named("candidates", candidates()),
        named("seat", seat()),
    ]
}

pub(crate) fn named(name: &str, picture: impl Picture + 'static) -> (String, Box<dyn Picture>) {
    (name.to_owned(), Box::new(picture))
}

/// A bore and a shaft of 25 mm against H7/g6, the shaft worn.
fn seat() -> Spans {
    let span =
        |name: &str, hue, least, greatest, marks: &[f64]| Span { hue, name: name.to_owned(), least, greatest, marks: marks.to_vec() };
    Spans {
        title: "Bore and shaft against the fit wanted".to_owned(),
        measure: measure("off the nominal size", "µm", 0),
        spans: vec![
            span("bore, H7 allows", Hue::Ok, 0.0, 21.0, &[]),
            span("bore, measured", Hue::Ink, 18.0, 26.0, &[18.0, 22.0, 20.0, 26.0]),
            span("shaft, g6 allows", Hue::Ok, -20.0, -7.0, &[]),
            span("shaft, measured", Hue::Dye, -39.0, -39.0, &[-39.0]),
        ],
    }
}

/// Axle ratios and gear sets judged by cruising speed and pull in 1st, in a fixed scatter.
fn candidates() -> Scatter {
    let at = |step: i32| {
        let spread = f64::from(step * 37 % 101) / 101.0;
        let rpm = 2600.0 + 18.0 * f64::from(step);
        (rpm, 6.2 + 5.0 * (rpm - 2600.0) / 1800.0 - 2.4 * spread)
    };
    let found = (0..100).map(|step| Found { hue: Hue::Muted, name: String::new(), at: at(step), is_on_front: false });
    let front = [("Wryneck close, 3.31", 2650.0, 6.9), ("Curlew wide, 3.55", 3180.0, 8.1), ("Redshank five, 3.91", 3348.0, 11.1)];
    let front = front.into_iter().map(|(name, x, y)| Found { hue: Hue::Dye, name: name.to_owned(), at: (x, y), is_on_front: true });
    let setups = [Found { hue: Hue::Setup(0), name: String::new(), at: (3907.0, 9.64), is_on_front: false }];
    Scatter {
        title: "Found setups".to_owned(),
        x: measure("engine speed at 70 mph", "rpm", 0),
        y: measure("1st by axle", "", 2),
        found: found.chain(front).chain(setups).collect(),
        focus: None,
    }
}
