//! A result put onto the sheet: it becomes a setup of the job, beside the others or in the place of one.

use crate::catalogue::{Catalogue, Entry, PartKind};
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
    let tyre = match standing.tyre.place {
        Some(place) => title(PartKind::Tyre, place),
        None => job.setups.first().map(|setup| setup.tyre.text.clone()),
    };
    [title(PartKind::GearSet, standing.set.place), title(PartKind::RingAndPinion, standing.axle.place), tyre].map(Option::unwrap_or_default)
}

/// The gear set of a result.
pub fn gear_set<'a>(standing: &Standing, catalogue: &'a Catalogue) -> Option<&'a Entry> {
    catalogue.entries(PartKind::GearSet).nth(standing.set.place)
}

fn title(catalogue: &Catalogue, kind: PartKind, place: usize) -> Option<String> {
    catalogue.entries(kind).nth(place).map(|entry| entry.title().to_owned())
}

/// Puts a result onto the sheet, with the extra stages of A; answers the setup it became, or nothing where there is no room.
pub fn put(job: &mut Job, catalogue: &Catalogue, standing: &Standing, into: Into) -> Option<SetupId> {
    let set = gear_set(standing, catalogue)?;
    let axle = title(catalogue, PartKind::RingAndPinion, standing.axle.place)?;
    let mut setup = job.setups.first()?.clone();
    if let Some(place) = standing.tyre.place {
        // The catalogue reads bare numbers in inches, whatever the sheet is read in.
        setup.tyre = Typed::new(title(catalogue, PartKind::Tyre, place)?, System::Inch);
        setup.tread_lost = Typed::default();
    }
    if let Some((pair, _)) = standing.pair {
        setup.speedo.gears = format!("{}/{}", pair.drive, pair.driven);
    }
    setup.speedo.road_check = Typed::default();
    setup.name = format!("{}, {axle}", set.title());
    setup.gearbox = Gearbox::picked(set);
    setup.final_drive = axle;
    let id = match into {
        Into::New => job.add_setup()?,
        Into::Place(id) => job.setup(id)?.id,
    };
    *job.setup_mut(id)? = Setup { id, ..setup };
    Some(id)
}
