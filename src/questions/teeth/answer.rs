//! What every pair bears in its gear, and what thrust is left over on the shafts.

use super::bearings::Bearings;
use crate::gearing::geometry::pair_cuts::PairAt;
use crate::gearing::geometry::{Cut, Geometry, Hand, Setting, geometry};
use crate::gearing::part::{Part, Shaft};
use crate::gearing::speeds::Selected;
use crate::gearing::teeth::decimal;
use crate::gearing::{GearNumber, Gearbox, Mesh};
use crate::questions::{Conditions, Setup};
use crate::toothform::outline::USUAL_TIP_RADIUS;
use crate::toothform::{CutGear, lewis};
use crate::toothload::path::{self, MeshLoad};
use crate::toothload::sliding::{self, USUAL_FRICTION};
use crate::toothload::thrust::{Pushed, cancelling_helix, on_shaft};
use crate::toothload::{ToothForces, strength};
use crate::units::{Angle, AngularVelocity, Force, Length, Pressure, Torque, Velocity};

/// What the teeth of one setup bear.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Teeth {
    /// The torque at the input that all is judged at, and the engine speed there.
    pub torque: Option<(Torque, Option<AngularVelocity>)>,
    /// The constant pair, then the pairs of the gears; each in the gear that loads it most.
    pub pairs: Vec<PairLoad>,
    /// What is left over along the shafts, gear by gear; none of a gear without helical teeth in its path.
    pub thrust: Vec<Option<Thrust>>,
    /// The meshes that carry each gear, with their forces; none of a gear that is direct, or whose cut is not known.
    pub meshes: Vec<Vec<Pushed>>,
    /// The bearings that are typed: the countershaft's, the mainshaft's, the input shaft's.
    pub bearings: Vec<Bearings>,
}

/// A pair under load.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PairLoad {
    /// Which it is.
    pub at: PairAt,
    /// Its counts.
    pub mesh: Mesh,
    /// The gear that is engaged.
    pub gear: GearNumber,
    /// The torque of its driver.
    pub torque: Torque,
    /// The forces between the two.
    pub forces: ToothForces,
    /// Bending at the roots of driver and driven gear; none without a face width.
    pub bending: Option<[Pressure; 2]>,
    /// The form factors of both.
    pub form: Option<[f64; 2]>,
    /// Contact stress.
    pub contact: Option<Pressure>,
    /// The face width.
    pub face: Option<Length>,
    /// The factor for speed, and the speed at the pitch line; none where no engine speed is known.
    pub speed: Option<(f64, Velocity)>,
    /// How fast the flanks slide where contact begins and where it ends.
    pub sliding: Option<[Velocity; 2]>,
    /// The share of the power that sliding takes.
    pub loss: Option<f64>,
}

/// What is left over along the shafts in a gear; above nothing away from the engine.
#[derive(Clone, Debug, PartialEq)]
pub struct Thrust {
    /// Shaft by shaft.
    pub shafts: Vec<OnShaft>,
    /// Whether the hands are told; else all gears of the countershaft are taken for alike, and the way is not known.
    pub is_told: bool,
    /// The helix of the gear's own pair that would leave nothing on the countershaft.
    pub cancels: Option<Angle>,
}

/// The thrust on one shaft; above nothing away from the engine.
#[derive(Clone, Debug, PartialEq)]
pub struct OnShaft {
    /// Which.
    pub shaft: Shaft,
    /// What each of its gears in the path gives.
    pub of_gears: Vec<Force>,
    /// What is left over.
    pub left: Force,
}

impl PairLoad {
    /// The greater of both roots.
    pub fn root(&self) -> Option<Pressure> {
        let [driver, driven] = self.bending?;
        Some(if driver > driven { driver } else { driven })
    }
}

impl Teeth {
    /// What the teeth of a setup bear at a torque at its input.
    pub fn of(setup: &Setup, torque: Option<Torque>, conditions: &Conditions) -> Self {
        let (Some(gearbox), Some(torque)) = (&setup.gearbox, torque) else { return Self::default() };
        let engine = engine_speed(conditions);
        let loaded = Loaded { setup, gearbox, torque, engine };
        let gears = gearbox.numbers();
        let mut pairs: Vec<PairLoad> = Vec::new();
        for load in gears.clone().flat_map(|gear| loaded.in_gear(gear)) {
            match pairs.iter_mut().find(|known| known.at == load.at) {
                Some(known) if known.forces.tangential < load.forces.tangential => *known = load,
                Some(_) => {}
                None => pairs.push(load),
            }
        }
        crate::order::by_key(&mut pairs, |pair| if let PairAt::Gear(gear) = pair.at { gear.number() } else { 0 });
        let meshes: Vec<Vec<Pushed>> = gears.map(|gear| loaded.pushed(gear).unwrap_or_default()).collect();
        let thrust = meshes.iter().map(|pushed| loaded.thrust(pushed)).collect();
        let bearings = Bearings::of_shafts(setup, torque, conditions.shift.or(engine), conditions.inside.duty);
        Self { torque: Some((torque, engine)), pairs, thrust, meshes, bearings }
    }

    /// The bearings of a shaft, where they are typed.
    pub fn bearings_of(&self, shaft: Shaft) -> Option<&Bearings> {
        self.bearings.iter().find(|bearings| bearings.shaft == shaft)
    }

    /// A pair.
    pub fn pair(&self, at: PairAt) -> Option<&PairLoad> {
        self.pairs.iter().find(|pair| pair.at == at)
    }

    /// The pair whose roots bear most.
    pub fn weakest(&self) -> Option<&PairLoad> {
        let bending = self.pairs.iter().filter(|pair| pair.bending.is_some());
        bending.reduce(|most, next| if next.root() > most.root() { next } else { most })
    }
}

/// The engine's torque that teeth are judged at: as typed, else its peak.
pub fn engine_torque(conditions: &Conditions) -> Option<Torque> {
    conditions.inside.torque.or_else(|| Some(conditions.pull.curve.as_ref()?.peak_torque().torque))
}

/// The engine speed there: at its peak, else the shift rpm where a torque is typed.
fn engine_speed(conditions: &Conditions) -> Option<AngularVelocity> {
    let peak = conditions.pull.curve.as_ref().map(|curve| curve.peak_torque().speed);
    peak.or(conditions.shift)
}

/// A box under the engine's torque.
struct Loaded<'a> {
    setup: &'a Setup,
    gearbox: &'a Gearbox,
    torque: Torque,
    engine: Option<AngularVelocity>,
}

impl Loaded<'_> {
    fn in_gear(&self, gear: GearNumber) -> Vec<PairLoad> {
        path::meshes(self.gearbox, Selected::Gear(gear)).iter().filter_map(|load| self.pair(gear, load)).collect()
    }

    fn pair(&self, gear: GearNumber, load: &MeshLoad) -> Option<PairLoad> {
        let (at, inside) = (PairAt::of(load.driver)?, &self.setup.inside);
        let cut = inside.cut_of(at)?;
        let mesh = Mesh { driver: load.driver.teeth(self.gearbox)?, driven: load.driven.teeth(self.gearbox)? };
        let (torque, face) = (load.driver_torque(self.torque), inside.face_of(at));
        let forces = load.forces(self.gearbox, self.torque, &cut)?;
        let setting = Setting { mesh, cut, centre: inside.centre, driver_shift: inside.driver_shift(at), face_width: face };
        let geometry = geometry(&setting).ok();
        let speeds = self.engine.map(|engine| [load.driver_share, load.driven_share].map(|share| engine / decimal(share)));
        let speed = speeds.map(|[driver, _]| pitch_line(driver, cut.reference_diameter(mesh.driver)));
        let factor = speed.map_or(1.0, strength::speed_factor);
        let form = form_of(mesh, cut, geometry.as_ref());
        let bending = form
            .zip(face)
            .map(|(form, face)| form.map(|form| strength::bending(forces.tangential, face, cut.normal_module(), form, factor)));
        let contact = geometry.zip(face).map(|(geometry, face)| strength::contact(forces.tangential, face, mesh, &cut, &geometry, factor));
        let sliding = geometry.zip(speeds).map(|(geometry, speeds)| sliding::speeds(&geometry, speeds));
        let loss = geometry.map(|geometry| sliding::loss(&geometry, mesh, &cut, USUAL_FRICTION));
        let speed = speed.map(|speed| (factor, speed));
        Some(PairLoad { at, mesh, gear, torque, forces, bending, form, contact, face, speed, sliding, loss })
    }

    /// The meshes in the path of a gear, with their forces and hands; hands not told are taken for right, all alike.
    fn pushed(&self, gear: GearNumber) -> Option<Vec<Pushed>> {
        let inside = &self.setup.inside;
        let pushed = |load: &MeshLoad| {
            let at = PairAt::of(load.driver)?;
            let forces = load.forces(self.gearbox, self.torque, &inside.cut_of(at)?)?;
            Some(Pushed { load: *load, forces, hand: inside.hand_of(at).unwrap_or(Hand::Right) })
        };
        path::meshes(self.gearbox, Selected::Gear(gear)).iter().map(pushed).collect()
    }

    fn thrust(&self, pushed: &[Pushed]) -> Option<Thrust> {
        let (inside, layout) = (&self.setup.inside, self.gearbox.layout());
        let told = pushed.iter().all(|mesh| PairAt::of(mesh.load.driver).and_then(|at| inside.hand_of(at)).is_some());
        if pushed.iter().all(|mesh| mesh.forces.axial.value == 0.0) {
            return None;
        }
        let shafts = [Shaft::Input, Shaft::Countershaft, Shaft::Output];
        let on = |shaft: Shaft| {
            let of_gears = pushed.iter().flat_map(|mesh| mesh.axial(layout)).filter(|(on, _)| *on == shaft).map(|(_, force)| force);
            let of_gears: Vec<Force> = of_gears.collect();
            (!of_gears.is_empty()).then(|| OnShaft { shaft, of_gears, left: on_shaft(shaft, pushed, layout) })
        };
        let loads: Vec<MeshLoad> = pushed.iter().map(|mesh| mesh.load).collect();
        Some(Thrust { shafts: shafts.into_iter().filter_map(on).collect(), is_told: told, cancels: self.cancels(&loads) })
    }

    /// The helix of a gear's own pair that leaves nothing on the countershaft beside the constant pair.
    fn cancels(&self, loads: &[MeshLoad]) -> Option<Angle> {
        let on_cluster = |load: &MeshLoad| {
            let parts = [load.driver, load.driven];
            let part = parts.into_iter().find(|part| part.shaft(self.gearbox.layout()) == Shaft::Countershaft)?;
            Some((self.setup.inside.cut_of(PairAt::of(part)?)?, part.teeth(self.gearbox)?))
        };
        let (constant, own): (Vec<_>, Vec<_>) = loads.iter().partition(|load| load.driver == Part::ConstantDriver);
        let (constant, own) = (on_cluster(constant.first()?)?, on_cluster(own.first()?)?);
        cancelling_helix((&constant.0, constant.1), (&own.0, own.1))
    }
}

fn pitch_line(speed: AngularVelocity, diameter: Length) -> Velocity {
    Velocity::new::<uom::si::velocity::meter_per_second>(speed.value.abs() * diameter.value / 2.0)
}

/// The form factors of both gears, with the profile shifts of the centre distance where it is known.
fn form_of(mesh: Mesh, cut: Cut, geometry: Option<&Geometry>) -> Option<[f64; 2]> {
    let [first, second] = geometry.map_or([0.0; 2], |geometry| geometry.shifts);
    let of = |teeth, shift| lewis::form_factor_of_helical(&CutGear { teeth, cut, shift }, USUAL_TIP_RADIUS);
    Some([of(mesh.driver, first)?, of(mesh.driven, second)?])
}
