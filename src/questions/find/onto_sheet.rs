//! A result put onto the sheet: it becomes a setup of the job, beside the others or in the place of one.

use crate::catalogue::money::{self, Totals};
use crate::catalogue::{Catalogue, Column, Entry, PartKind};
use crate::finder::search::Standing;
use crate::job::{Gearbox, Job, Setup, SetupId};
use crate::units::{System, Typed};

/// Where a result goes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Into {
    /// A new setup behind the others; there must be fewer than six.
    New,
    /// In the place of a setup, which is lost.
    Place(SetupId),
}

/// The parts of a result by the names they go by in the catalogue: gear set, final drive, tyre; the tyre of A where it stays.
pub fn names(standing: &Standing, catalogue: &Catalogue, job: &Job) -> [String; 3] {
    let title = |kind, place| title(catalogue, kind, place);
    let own = |text: fn(&Setup) -> &str| job.setups.first().map(|setup| text(setup).to_owned());
    let set = standing.set.place.map_or_else(|| own(gearbox_name), |place| title(PartKind::GearSet, place));
    let axle = standing.axle.place.map_or_else(|| own(|setup| &setup.final_drive), |place| title(PartKind::RingAndPinion, place));
    let tyre = standing.tyre.place.map_or_else(|| own(|setup| &setup.tyre.text), |place| title(PartKind::Tyre, place));
    [set, axle, tyre].map(Option::unwrap_or_default)
}

/// What the box of a setup is called where it is none of the catalogue.
fn gearbox_name(setup: &Setup) -> &str {
    let name = setup.gearbox.name.trim();
    if name.is_empty() { "A’s gears" } else { name }
}

/// What the parts of a result that are not on the car cost together: `480.00 EUR`; nothing where one of them has no price, or none is
/// changed. Tyres are counted as four.
pub fn cost(standing: &Standing, catalogue: &Catalogue) -> Option<String> {
    let entry = |kind, place: Option<usize>| catalogue.entries(kind).nth(place?);
    let changed = [
        entry(PartKind::GearSet, standing.set.place.filter(|_| !standing.set.is_fitted)),
        entry(PartKind::RingAndPinion, standing.axle.place.filter(|_| !standing.axle.is_fitted)),
        entry(PartKind::Tyre, standing.tyre.place),
    ];
    let mut totals = Totals::default();
    for entry in changed.into_iter().flatten() {
        let price = money::hundredths(entry.text(Column::Price).trim())?;
        totals.add(price.saturating_mul(entry.kind.on_a_car().into()), entry.text(Column::Currency).trim());
    }
    (!totals.is_empty()).then(|| totals.shown())
}

/// The gear set of a result.
pub fn gear_set<'a>(standing: &Standing, catalogue: &'a Catalogue) -> Option<&'a Entry> {
    catalogue.entries(PartKind::GearSet).nth(standing.set.place?)
}

fn title(catalogue: &Catalogue, kind: PartKind, place: usize) -> Option<String> {
    catalogue.entries(kind).nth(place).map(|entry| entry.title().to_owned())
}

/// Puts a result onto the sheet, with the extra stages of A; answers the setup it became, or nothing where there is no room.
pub fn put(job: &mut Job, catalogue: &Catalogue, standing: &Standing, into: Into) -> Option<SetupId> {
    let [name, axle, _] = names(standing, catalogue, job);
    let mut setup = job.setups.first()?.clone();
    if let Some(set) = gear_set(standing, catalogue) {
        setup.gearbox = Gearbox::picked(set);
    }
    if let Some(place) = standing.tyre.place {
        // The catalogue reads bare numbers in inches, whatever the sheet is read in.
        setup.tyre = Typed::new(title(catalogue, PartKind::Tyre, place)?, System::Inch);
        setup.tread_lost = Typed::default();
    }
    if let Some((pair, _)) = standing.pair {
        setup.speedo.gears = format!("{}/{}", pair.drive, pair.driven);
    }
    setup.speedo.road_check = Typed::default();
    setup.name = format!("{name}, {axle}");
    setup.final_drive = axle;
    let id = match into {
        Into::New => job.add_setup()?,
        Into::Place(id) => job.setup(id)?.id,
    };
    *job.setup_mut(id)? = Setup { id, ..setup };
    Some(id)
}
