//! The catalogue as sorted arrays of plain numbers; what cannot be read is left out and counted.

mod fitted;
mod pairs;

pub use pairs::{Pair, Pairs};

use crate::catalogue::case::CaseNeeds;
use crate::catalogue::{Catalogue, Column, Entry, Part, PartKind};
use crate::gearing::teeth::decimal;
use crate::gearing::{Gearbox, Layout};
use uom::si::length::meter;

/// A gear set as numbers.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct SetRow {
    /// Its place among the gear sets of the catalogue; `None` for that in the car.
    pub place: Option<usize>,
    /// The ratios of its forward gears without sign, lowest gear first.
    pub ratios: Vec<f64>,
    /// Meshes under load in each gear.
    pub meshes: Vec<u8>,
    /// How it is laid out.
    pub layout: Layout,
    /// Whether one is on the shelf.
    pub in_stock: bool,
    /// Which group of speedometer gears fits it, as a place in [`Table::pairs`].
    pub housing: usize,
    /// What it asks of a case.
    pub case: CaseNeeds,
    /// Whether the car has these gears.
    pub is_fitted: bool,
}

/// A final drive as a number.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct AxleRow {
    /// Its place among the final drives of the catalogue; `None` for that in the car.
    pub place: Option<usize>,
    /// Driveshaft turns for one turn of the wheels.
    pub ratio: f64,
    /// Whether one is on the shelf.
    pub in_stock: bool,
    /// Whether the car has this ratio.
    pub is_fitted: bool,
}

/// A tyre as numbers.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TyreRow {
    /// Its place among the tyres of the catalogue; `None` for the tyre on the car.
    pub place: Option<usize>,
    /// What it rolls at each turn, in metres.
    pub circumference_m: f64,
    /// Its diameter in metres; no number where only its way was measured.
    pub diameter_m: f64,
    /// Whether it is on the shelf.
    pub in_stock: bool,
}

/// Entries that could not be read, by kind.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Unread {
    /// Gear sets left out.
    pub gear_sets: usize,
    /// Final drives.
    pub axles: usize,
    /// Tyres left out.
    pub tyres: usize,
    /// Speedometer gears left out.
    pub speedometer_gears: usize,
}

/// The catalogue as numbers.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Table {
    /// The gear sets, the lowest top gear first.
    pub sets: Vec<SetRow>,
    /// The final drives, the lowest ratio first.
    pub axles: Vec<AxleRow>,
    /// The tyres, the smallest first.
    pub tyres: Vec<TyreRow>,
    /// Speedometer pairs by housing; the last group holds those of all housings.
    pub pairs: Vec<Pairs>,
    /// The same of what is in stock.
    pub pairs_in_stock: Vec<Pairs>,
    /// What could not be read.
    pub unread: Unread,
}

impl Table {
    /// The catalogue as numbers.
    pub fn of(catalogue: &Catalogue) -> Self {
        let mut unread = Unread::default();
        let gears = catalogue.speedometer_gears();
        let (pairs, pairs_in_stock) = (pairs::by_housing(&gears, false), pairs::by_housing(&gears, true));
        unread.speedometer_gears = catalogue.entries(PartKind::SpeedometerGear).count().saturating_sub(gears.len());
        let sets = read(catalogue.entries(PartKind::GearSet), &mut unread.gear_sets, |place, set| set_row(place, set, &pairs));
        let axles = read(catalogue.entries(PartKind::RingAndPinion), &mut unread.axles, |place, entry| {
            let ratio = decimal(entry.final_drive()?.ratio());
            Some(AxleRow { place: Some(place), ratio, in_stock: entry.in_stock(), is_fitted: false })
        });
        let tyres = read(catalogue.entries(PartKind::Tyre), &mut unread.tyres, |place, entry| {
            let Ok(Part::Tyre(tyre)) = entry.part() else { return None };
            let diameter_m = tyre.diameter_or_rolled().get::<meter>();
            let circumference_m = tyre.rolling().circumference.get::<meter>();
            Some(TyreRow { place: Some(place), circumference_m, diameter_m, in_stock: entry.in_stock() })
        });
        let mut table = Self { sets, axles, tyres, pairs, pairs_in_stock, unread };
        table.sort();
        table
    }

    /// Puts the rows into their order.
    pub fn sort(&mut self) {
        let top = |set: &SetRow| set.ratios.last().copied().unwrap_or(f64::INFINITY);
        crate::order::by(&mut self.sets, |a, b| top(a).total_cmp(&top(b)));
        crate::order::by(&mut self.axles, |a, b| a.ratio.total_cmp(&b.ratio));
        crate::order::by(&mut self.tyres, |a, b| a.circumference_m.total_cmp(&b.circumference_m));
    }

    /// How many combinations of gear set, final drive and tyre there are.
    pub fn combinations(&self) -> u64 {
        [self.sets.len(), self.axles.len(), self.tyres.len()].iter().map(|count| *count as u64).product()
    }
}

impl Unread {
    /// What was left out, in a sentence; nothing where all could be read.
    pub fn sentence(self) -> Option<String> {
        let kinds = PartKind::ALL.into_iter().zip([self.gear_sets, self.axles, self.tyres, self.speedometer_gears]);
        let counts: Vec<String> = kinds.filter(|(_, many)| *many > 0).map(|(kind, many)| format!("{many} {}", kind.word(many))).collect();
        (!counts.is_empty()).then(|| format!("Left out because they cannot be read: {}.", counts.join(", ")))
    }
}

fn read<'a, R>(entries: impl Iterator<Item = &'a Entry>, unread: &mut usize, row: impl Fn(usize, &Entry) -> Option<R>) -> Vec<R> {
    let mut rows = Vec::new();
    for (place, entry) in entries.enumerate() {
        match row(place, entry) {
            Some(row) => rows.push(row),
            None => *unread += 1,
        }
    }
    rows
}

fn set_row(place: usize, set: &Entry, pairs: &[Pairs]) -> Option<SetRow> {
    let gearbox = set.gearbox()?;
    let ratios = gearbox.ratios().into_iter().map(|ratio| decimal(ratio).abs()).collect();
    let any = pairs.len().saturating_sub(1);
    let maker = set.text(Column::Maker).trim();
    let own = pairs.iter().take(any).position(|group| !maker.is_empty() && group.housing.eq_ignore_ascii_case(maker));
    Some(SetRow {
        place: Some(place),
        ratios,
        meshes: meshes(&gearbox),
        layout: gearbox.layout(),
        in_stock: set.in_stock(),
        housing: own.unwrap_or(any),
        case: set.case_needs(),
        is_fitted: false,
    })
}

/// Meshes under load in each gear: none in direct drive, two over a countershaft, one between two shafts.
pub fn meshes(gearbox: &Gearbox) -> Vec<u8> {
    gearbox.gears().iter().map(|gear| gear.meshes_under_load(gearbox.layout())).collect()
}
