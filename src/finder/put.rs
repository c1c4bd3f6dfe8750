//! A result put onto the sheet: it becomes a setup of the job, beside the others or in the place of one.

use super::search::Standing;
use crate::catalogue::Catalogue;
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
    let set = catalogue.gear_sets.all().nth(standing.set.place).map(|set| set.name.clone());
    let axle = catalogue.axles.all().nth(standing.axle.place).map(|axle| axle.drive.clone());
    let tyre = match standing.tyre.place {
        Some(place) => catalogue.tyres.all().nth(place).map(|tyre| tyre.designation.clone()),
        None => job.setups.first().map(|setup| setup.tyre.text.clone()),
    };
    [set, axle, tyre].map(Option::unwrap_or_default)
}

/// Puts a result onto the sheet, with the extra stages of A; answers the setup it became, or nothing where there is no room.
pub fn put(job: &mut Job, catalogue: &Catalogue, standing: &Standing, into: Into) -> Option<SetupId> {
    let set = catalogue.gear_sets.all().nth(standing.set.place)?.clone();
    let axle = catalogue.axles.all().nth(standing.axle.place)?.drive.clone();
    let mut setup = job.setups.first()?.clone();
    if let Some(place) = standing.tyre.place {
        let designation = catalogue.tyres.all().nth(place)?.designation.clone();
        // The catalogue reads bare numbers in inches, whatever the sheet is read in.
        setup.tyre = Typed::new(designation, System::Inch);
        setup.tread_lost = Typed::default();
    }
    if let Some((pair, _)) = standing.pair {
        setup.speedo.gears = format!("{}/{}", pair.drive, pair.driven);
    }
    setup.speedo.road_check = Typed::default();
    setup.name = format!("{}, {axle}", set.name);
    setup.gearbox = Gearbox::picked(&set);
    setup.final_drive = axle;
    let id = match into {
        Into::New => job.add_setup()?,
        Into::Place(id) => job.setup(id)?.id,
    };
    *job.setup_mut(id)? = Setup { id, ..setup };
    Some(id)
}
