//! Which standard's spline a count and a diameter may be of: involute by pitch or module, straight-sided by rows and shares.

use super::{Form, Spline};
use crate::units::Length;
use crate::units::common::{in_millimetres, millimetres};
use crate::units::unit::INCH;

/// A standard spline that the measured sizes fit.
#[derive(Clone, Debug, PartialEq)]
pub struct Standard {
    /// What it is called: `24/48 involute, ANSI B92.1`.
    pub name: String,
    /// Over the tops of its teeth, by the standard.
    pub outside: Length,
    /// How that follows from its count, with its numbers.
    pub working: [String; 2],
}

/// The size of an involute spline's teeth.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Pitch {
    /// Teeth for each inch of pitch diameter.
    Diametral(f64),
    /// Pitch diameter for each tooth, in millimetres.
    Module(f64),
}

/// The pitches of ANSI B92.1, each over twice itself, as 24/48 (from memory).
const DIAMETRAL: [f64; 17] = [2.5, 3.0, 4.0, 5.0, 6.0, 8.0, 10.0, 12.0, 16.0, 20.0, 24.0, 32.0, 40.0, 48.0, 64.0, 80.0, 128.0];
/// The modules of ISO 4156, in millimetres (from memory).
const MODULES: [f64; 15] = [0.25, 0.5, 0.75, 1.0, 1.25, 1.5, 1.75, 2.0, 2.5, 3.0, 4.0, 5.0, 6.0, 8.0, 10.0];
/// Straight-sided splines of ISO 14: count, root and outside in millimetres, the light rows, then the medium ones (from memory).
const ISO_14: [(u16, f64, f64); 28] = [
    (6, 23.0, 26.0),
    (6, 26.0, 30.0),
    (6, 28.0, 32.0),
    (8, 32.0, 36.0),
    (8, 36.0, 40.0),
    (8, 42.0, 46.0),
    (8, 46.0, 50.0),
    (8, 52.0, 58.0),
    (8, 56.0, 62.0),
    (8, 62.0, 68.0),
    (10, 72.0, 78.0),
    (10, 82.0, 88.0),
    (6, 11.0, 14.0),
    (6, 13.0, 16.0),
    (6, 16.0, 20.0),
    (6, 18.0, 22.0),
    (6, 21.0, 25.0),
    (6, 23.0, 28.0),
    (6, 26.0, 32.0),
    (6, 28.0, 34.0),
    (8, 32.0, 38.0),
    (8, 36.0, 42.0),
    (8, 42.0, 48.0),
    (8, 46.0, 54.0),
    (8, 52.0, 60.0),
    (8, 56.0, 65.0),
    (8, 62.0, 72.0),
    (10, 72.0, 82.0),
];
/// Straight-sided splines of SAE: count, class and root as a share of the outside; A stays put, B slides unloaded, C slides under load
/// (handbook table, from memory).
const SAE: [(u16, &str, f64); 11] = [
    (4, "A", 0.85),
    (4, "B", 0.75),
    (6, "A", 0.90),
    (6, "B", 0.85),
    (6, "C", 0.80),
    (10, "A", 0.91),
    (10, "B", 0.86),
    (10, "C", 0.81),
    (16, "A", 0.91),
    (16, "B", 0.86),
    (16, "C", 0.81),
];
/// How far below the standard's outside a measured one may lie, for tolerance and wear, and how far above it.
const BELOW: f64 = 0.015;
/// See [`BELOW`].
const ABOVE: f64 = 0.005;
/// How far a measured root may lie off a straight-sided standard's, as a share of the outside.
const ROOT_WITHIN: f64 = 0.015;

impl Pitch {
    /// One tooth's share of the pitch diameter: the module.
    pub fn module(self) -> Length {
        match self {
            Self::Diametral(pitch) => INCH.of(1.0 / pitch),
            Self::Module(module) => millimetres(module),
        }
    }

    /// The pitch diameter, D = N ÷ P or m·z (ANSI B92.1, ISO 4156).
    pub fn diameter(self, count: u16) -> Length {
        self.module() * f64::from(count)
    }

    /// Over the tops of a shaft's teeth at a pressure angle of 30°, (N + 1) ÷ P or m·(z + 1) (ANSI B92.1, ISO 4156; from memory).
    pub fn outside(self, count: u16) -> Length {
        self.module() * (f64::from(count) + 1.0)
    }

    /// The root of a shaft with filleted roots at 30°, (N − 1.8) ÷ P or m·(z − 1.8) (handbook formulas of ANSI B92.1 and ISO 4156,
    /// from memory; pitches finer than 12/24 may be cut a little deeper).
    pub fn fillet_root(self, count: u16) -> Length {
        self.module() * (f64::from(count) - 1.8)
    }

    /// The root of a shaft with flat roots at 30°: (N − 1.35) ÷ P by ANSI B92.1, m·(z − 1.5) by ISO 4156 (from memory).
    pub fn flat_root(self, count: u16) -> Length {
        let off = if matches!(self, Self::Diametral(_)) { 1.35 } else { 1.5 };
        self.module() * (f64::from(count) - off)
    }

    fn standard(self, count: u16) -> Standard {
        let outside = self.outside(count);
        let (name, formula, filled) = match self {
            Self::Diametral(pitch) => (
                format!("{pitch}/{} involute, ANSI B92.1", 2.0 * pitch),
                "outside = (count + 1) ÷ pitch",
                format!("({count} + 1) ÷ {pitch} = {:.3} in", INCH.number(outside)),
            ),
            Self::Module(module) => (
                format!("module {module} involute, ISO 4156"),
                "outside = module × (count + 1)",
                format!("{module} × ({count} + 1) = {:.2} mm", in_millimetres(outside)),
            ),
        };
        Standard { name, outside, working: [formula.into(), filled] }
    }
}

impl Spline {
    /// The standards that it may be of, the nearest first; none without an outside.
    ///
    /// Model: outside up to 1.5 % below the standard's or 0.5 % above it; a measured root between those of flat and filleted teeth.
    /// Two near pitches may both fit, as 20/40 and module 1.25 do: a mate slid on tells. Splines of DIN 5480, of 37.5 and 45°, and
    /// serrations are not tried.
    pub fn standards(&self) -> Vec<Standard> {
        let Some(outside) = self.outside else { return Vec::new() };
        let mut all: Vec<Standard> = Vec::new();
        if self.form != Some(Form::Straight) {
            let pitches = DIAMETRAL.map(Pitch::Diametral).into_iter().chain(MODULES.map(Pitch::Module));
            all.extend(pitches.filter(|pitch| self.has_root_of(*pitch)).map(|pitch| pitch.standard(self.count)));
        }
        if self.form != Some(Form::Involute) {
            all.extend(self.straight(outside));
        }
        all.retain(|standard| fits(outside, standard.outside));
        crate::order::by(&mut all, |one, other| {
            let off = |standard: &Standard| (standard.outside - outside).value.abs();
            off(one).total_cmp(&off(other))
        });
        all
    }

    fn has_root_of(&self, pitch: Pitch) -> bool {
        let slack = pitch.module() * 0.4;
        let (least, greatest) = (pitch.fillet_root(self.count) - slack, pitch.flat_root(self.count) + slack);
        self.root.is_none_or(|root| root >= least && root <= greatest)
    }

    /// The rows of ISO 14, and of SAE where the root tells its class.
    fn straight(&self, outside: Length) -> Vec<Standard> {
        let near = |is: f64, wanted: f64| (is - wanted).abs() <= ROOT_WITHIN;
        let rows = ISO_14.iter().filter(|(count, root, of)| {
            let by_root = self.root.is_none_or(|is| near(in_millimetres(is) / of, root / of));
            *count == self.count && by_root
        });
        let iso = rows.map(|(count, root, of)| Standard {
            name: format!("{count} × {root} × {of} straight-sided, ISO 14"),
            outside: millimetres(*of),
            working: ["count × root × outside".into(), format!("{count} × {root} × {of} mm")],
        });
        let share = self.root.map(|root| (root / outside).value);
        let rows = SAE.iter().filter(|(count, _, of)| *count == self.count && share.is_some_and(|share| near(share, *of)));
        let sae = rows.map(|(count, class, of)| Standard {
            name: format!("{count} {class} straight-sided, SAE"),
            outside,
            working: [format!("root = {of} × outside"), format!("{count} splines, class {class}")],
        });
        iso.chain(sae).collect()
    }
}

fn fits(outside: Length, standard: Length) -> bool {
    let off = (outside / standard).value - 1.0;
    (-BELOW..=ABOVE).contains(&off)
}
