//! The tables of speed symbols and load indices.

use crate::units::{Mass, Velocity, unit};

/// Where both tables come from.
pub const SOURCE: &str = "ISO 4000-1 and UN R30 paragraph 2, tables of speed symbols and load indices, from memory; Q to V and seven load indices read in a trade glossary";

/// Speed symbols and their speeds in km/h.
const SPEEDS_KM_H: [(char, f64); 21] = [
    ('B', 50.0),
    ('C', 60.0),
    ('D', 65.0),
    ('E', 70.0),
    ('F', 80.0),
    ('G', 90.0),
    ('J', 100.0),
    ('K', 110.0),
    ('L', 120.0),
    ('M', 130.0),
    ('N', 140.0),
    ('P', 150.0),
    ('Q', 160.0),
    ('R', 170.0),
    ('S', 180.0),
    ('T', 190.0),
    ('U', 200.0),
    ('H', 210.0),
    ('V', 240.0),
    ('W', 270.0),
    ('Y', 300.0),
];

/// The first load index of the table below.
const FIRST: u16 = 50;

/// Loads in kg from index 50 on, in tens.
#[rustfmt::skip]
const LOADS_KG: [u16; 101] = [
    190, 195, 200, 206, 212, 218, 224, 230, 236, 243,
    250, 257, 265, 272, 280, 290, 300, 307, 315, 325,
    335, 345, 355, 365, 375, 387, 400, 412, 425, 437,
    450, 462, 475, 487, 500, 515, 530, 545, 560, 580,
    600, 615, 630, 650, 670, 690, 710, 730, 750, 775,
    800, 825, 850, 875, 900, 925, 950, 975, 1000, 1030,
    1060, 1090, 1120, 1150, 1180, 1215, 1250, 1285, 1320, 1360,
    1400, 1450, 1500, 1550, 1600, 1650, 1700, 1750, 1800, 1850,
    1900, 1950, 2000, 2060, 2120, 2180, 2240, 2300, 2360, 2430,
    2500, 2575, 2650, 2725, 2800, 2900, 3000, 3075, 3150, 3250,
    3350,
];

/// The greatest speed of a speed symbol; `None` for Z, which only says "above 240 km/h", and for letters outside the table.
///
/// Source: see [`SOURCE`].
pub fn speed_of(symbol: char) -> Option<Velocity> {
    let (_, km_h) = SPEEDS_KM_H.into_iter().find(|(letter, _)| *letter == symbol)?;
    Some(unit::KM_H.of(km_h))
}

/// The greatest load of a load index from 50 to 150; `None` outside.
///
/// Source: see [`SOURCE`].
///
/// ```
/// use layshaft::tyre::service::{load_of, speed_of};
/// use layshaft::units::{show, unit};
/// // Index 91 is 615 kg, T is 190 km/h (ISO 4000-1).
/// assert_eq!(load_of(91).map(|load| show(&load, &unit::KG, 0)).as_deref(), Some("615 kg"));
/// assert_eq!(speed_of('T').map(|speed| show(&speed, &unit::KM_H, 0)).as_deref(), Some("190 km/h"));
/// assert_eq!(load_of(49), None);
/// ```
pub fn load_of(index: u16) -> Option<Mass> {
    let kg = LOADS_KG.get(usize::from(index.checked_sub(FIRST)?))?;
    Some(unit::KG.of(f64::from(*kg)))
}
