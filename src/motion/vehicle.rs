//! Engine, gears and car together on one grade: what every question of this room is asked of.

use uom::si::{area::square_meter, force::newton, length::meter, mass::kilogram, mass_density::kilogram_per_cubic_meter};

use super::car::Car;
use super::error::MotionError;
use super::piecewise::Cubic;
use super::pull::{GearPull, Pull};
use super::road_load::RoadLoad;
use super::{in_metres_per_second, newtons, traction};
use crate::gearing::GearNumber;
use crate::units::{Force, Mass, Velocity};

/// A stretch of speed on which thrust is one cubic.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Piece {
    /// Thrust (N) over road speed (m/s).
    pub(super) thrust: Cubic,
    /// The road speed (m/s) the engine's speed stands for while the clutch slips; `None` where it is closed.
    pub(super) slip_to: Option<f64>,
    /// Whether the tyres hold less than the engine gives.
    pub(super) grip: bool,
}

/// One gear's moving masses (kg).
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Masses {
    pub(super) closed: f64,
    pub(super) slipping: f64,
    pub(super) open: f64,
}

impl Masses {
    /// The mass that acts on a piece: at the tyres' limit what turns with the engine is sped up by the torque they do not pass.
    ///
    /// Source: Gillespie, Fundamentals of Vehicle Dynamics, ch. 2: the tractive force of eq. 2-9 has the turning parts taken off before it
    /// is held against the tyres' limit; from memory.
    pub(super) fn on(&self, piece: &Piece) -> f64 {
        match (piece.slip_to, piece.grip) {
            (Some(_), _) => self.slipping,
            (None, true) => self.open,
            (None, false) => self.closed,
        }
    }
}

/// A car that can be asked how it moves: valid by construction.
#[derive(Clone, Debug, PartialEq)]
pub struct Vehicle {
    pull: Pull,
    car: Car,
    trailer: Mass,
    grade: f64,
    masses: Vec<Masses>,
    pieces: Vec<Vec<Piece>>,
    load: RoadLoad,
    grip_n: f64,
}

impl Vehicle {
    /// Puts a car together on level road.
    ///
    /// # Errors
    /// When the mass or another value of the car cannot be; [`Pull`] still answers then.
    pub fn new(pull: Pull, car: Car) -> Result<Self, MotionError> {
        Self::on_grade(pull, car, 0.0)
    }

    /// Puts a car together on a grade (rise over run, 0 or more: this room does not roll downhill).
    ///
    /// # Errors
    /// As [`Vehicle::new`]; also for a grade below 0 or no number.
    pub fn on_grade(pull: Pull, car: Car, grade: f64) -> Result<Self, MotionError> {
        Self::put_together(pull, car, Mass::default(), grade)
    }

    /// The same car with a mass on the hook, which rolls as the car does, adds no drag and loads no driven wheel.
    ///
    /// # Errors
    /// As [`Vehicle::new`], for a trailer below nothing or no number.
    pub fn towing(self, trailer: Mass) -> Result<Self, MotionError> {
        Self::put_together(self.pull, self.car, trailer, self.grade)
    }

    /// The same as [`Vehicle::new`] and [`Vehicle::towing`], put together once.
    ///
    /// # Errors
    /// As theirs.
    pub fn with_trailer(pull: Pull, car: Car, trailer: Mass) -> Result<Self, MotionError> {
        Self::put_together(pull, car, trailer, 0.0)
    }

    fn put_together(pull: Pull, car: Car, trailer: Mass, grade: f64) -> Result<Self, MotionError> {
        check(&car, trailer, grade)?;
        let trailer_kg = trailer.get::<kilogram>();
        let load = car.road_load(grade, trailer_kg);
        let grip_n = traction::greatest_thrust(&car, grade).get::<newton>();
        let masses = pull.gears().iter().map(|gear| {
            let masses = car.rotating.value.masses_kg(car.mass_kg(), gear.overall, gear.radius_m());
            let [closed, slipping, open] = masses.map(|mass_kg| mass_kg + trailer_kg);
            Masses { closed, slipping, open }
        });
        let masses: Vec<Masses> = masses.collect();
        let slip_rpm = pull.curve().ends_rpm().0;
        let gears = pull.gears().iter().zip(&masses);
        let pieces = gears.map(|(gear, masses)| limited(gear, slip_rpm, &pull, &Tyres::new(grip_n, masses, &load))).collect();
        Ok(Self { pull, car, trailer, grade, masses, pieces, load, grip_n })
    }

    /// The same car on another grade.
    ///
    /// # Errors
    /// For a grade below 0 or no number.
    pub fn on(&self, grade: f64) -> Result<Self, MotionError> {
        Self::put_together(self.pull.clone(), self.car, self.trailer, grade)
    }

    /// Thrust in every gear.
    pub fn pull(&self) -> &Pull {
        &self.pull
    }

    /// Mass, drag, grip and losses, as they were given.
    pub fn car(&self) -> &Car {
        &self.car
    }

    /// The mass on the hook.
    pub fn trailer(&self) -> Mass {
        self.trailer
    }

    /// Mass of car and trailer (kg), nothing that turns counted.
    pub(super) fn mass_kg(&self) -> f64 {
        self.car.mass_kg() + self.trailer.get::<kilogram>()
    }

    /// The grade, rise over run.
    pub fn grade(&self) -> f64 {
        self.grade
    }

    /// Road load at a speed on the vehicle's grade.
    ///
    /// ```
    /// use layshaft::motion::{Car, CurvePoint, EngineCurve, Gears, Pull, Vehicle, car::Efficiencies};
    /// use layshaft::units::{common::rpm, show, unit};
    /// # fn example() -> Option<()> {
    /// let point = |speed| CurvePoint { speed: rpm(speed), torque: unit::N_M.of(200.0) };
    /// let curve = EngineCurve::through(&[point(1_000.0), point(6_000.0)]).ok()?;
    /// let gears = Gears { ratios: vec![2.0, 1.0], final_drive: 4.0, rolling_radius: unit::METRE.of(0.3), meshes: vec![2, 0] };
    /// let pull = Pull::new(&curve, &gears, Efficiencies::default(), None).ok()?;
    /// let vehicle = Vehicle::new(pull, Car::of_mass(unit::KG.of(1_000.0))).ok()?;
    /// // Rolling 9,806.65 N × 0.01 × (1 + 20/44.8056) = 141.84 N, air ½ × 1.225 × 0.9 × 20² = 220.5 N.
    /// assert_eq!(show(&vehicle.road_load(unit::M_S.of(20.0)), &unit::NEWTON, 1), "362.3 N");
    /// # Some(())
    /// # }
    /// # assert!(example().is_some());
    /// ```
    pub fn road_load(&self, speed: Velocity) -> Force {
        newtons(self.load.at(in_metres_per_second(speed)))
    }

    /// Greatest thrust the driven wheels can put down here.
    pub fn grip_limit(&self) -> Force {
        newtons(self.grip_n)
    }

    /// Mass that acts in a gear with its turning parts, clutch closed.
    pub fn moving_mass(&self, gear: GearNumber) -> Option<Mass> {
        self.masses(gear).map(|masses| Mass::new::<kilogram>(masses.closed))
    }

    /// The same car on tyres that hold anything.
    pub(super) fn without_grip_limit(&self) -> Free<'_> {
        let slip_rpm = self.pull.curve().ends_rpm().0;
        let gears = self.pull.gears().iter().zip(&self.masses).zip(&self.pieces);
        let free = |((gear, masses), pieces): ((&GearPull, &Masses), &'_ Vec<Piece>)| {
            let is_held = pieces.iter().any(|piece| piece.grip);
            is_held.then(|| limited(gear, slip_rpm, &self.pull, &Tyres::new(f64::INFINITY, masses, &self.load)))
        };
        Free { vehicle: self, instead: gears.map(free).collect() }
    }

    pub(super) fn load(&self) -> &RoadLoad {
        &self.load
    }

    pub(super) fn masses(&self, gear: GearNumber) -> Option<Masses> {
        self.masses.get(gear.place()).copied()
    }

    /// Thrust the wheels put down in a gear, from a standstill to the rev limit; below the curve the clutch slips at its first rpm.
    pub(super) fn pieces(&self, gear: GearNumber) -> &[Piece] {
        self.pieces.get(gear.place()).map_or(&[], Vec::as_slice)
    }

    /// The same with the clutch slipping at a launch speed (rpm) until the car has caught up.
    pub(super) fn launch_pieces(&self, gear: GearNumber, launch_rpm: f64) -> Vec<Piece> {
        let Some((pull, masses)) = self.pull.gear(gear).zip(self.masses(gear)) else { return Vec::new() };
        limited(pull, launch_rpm, &self.pull, &Tyres::new(self.grip_n, &masses, &self.load))
    }

    /// The next gear up that is taller.
    pub(super) fn next_gear(&self, gear: GearNumber) -> Option<GearNumber> {
        next_gear(&self.pull, gear)
    }
}

/// A car on tyres that hold anything.
pub(super) struct Free<'a> {
    /// The car on its own tyres.
    pub(super) vehicle: &'a Vehicle,
    /// A gear's pieces where its own are held by the tyres somewhere; else they are the car's.
    instead: Vec<Option<Vec<Piece>>>,
}

impl Free<'_> {
    /// As [`Vehicle::pieces`].
    pub(super) fn pieces(&self, gear: GearNumber) -> &[Piece] {
        self.instead.get(gear.place()).and_then(Option::as_deref).unwrap_or_else(|| self.vehicle.pieces(gear))
    }

    /// Acceleration (m/s²) in a gear with the clutch closed; `None` outside the curve or past the limit.
    pub(super) fn acceleration(&self, gear: GearNumber, speed: f64) -> Option<f64> {
        let closed = self.pieces(gear).split_first().map_or(&[][..], |(_, closed)| closed);
        // rounding at the two ends is forgiven
        let slack = 1e-12 * speed;
        let at = closed.partition_point(|piece| piece.thrust.to < speed - slack);
        let piece = closed.get(at).filter(|piece| speed >= piece.thrust.from - slack)?;
        Some((piece.thrust.at(speed) - self.vehicle.load.at(speed)) / self.vehicle.masses(gear)?.on(piece))
    }
}

/// The next gear up that is taller.
pub(super) fn next_gear(pull: &Pull, gear: GearNumber) -> Option<GearNumber> {
    let here = pull.gear(gear)?.overall;
    pull.gears().iter().skip(gear.next().place()).find(|next| next.overall < here).map(|next| next.gear)
}

/// What the tyres hold, and from which thrust on.
///
/// What comes to them is thrust less what speeds up the turning parts; at their limit G the car gains (G − R)/m, m its mass alone, so
/// that they hold back a thrust above G + (mₜ − m)·(G − R)/m, mₜ the mass with all that turns.
struct Tyres {
    grip_n: f64,
    /// What of the road load is taken off before thrust is set against `held`.
    back: RoadLoad,
    held: f64,
}

/// Slip below `slip_rpm`, the curve above it to the limit, all of it held to what the tyres pass.
fn limited(gear: &GearPull, slip_rpm: f64, pull: &Pull, tyres: &Tyres) -> Vec<Piece> {
    let grip_n = tyres.grip_n;
    let caught_up = slip_rpm / gear.rpm_per_m_per_s;
    let slipping = pull.curve().torque_nm_within(slip_rpm) * gear.thrust_per_torque_1_per_m();
    let held = slipping > grip_n;
    // the clutch slips on one more, and the tyres may cut one or two
    let mut pieces = Vec::with_capacity(gear.thrust.len() + 3);
    pieces.push(Piece { thrust: Cubic::constant(0.0, caught_up, slipping.min(grip_n)), slip_to: Some(caught_up), grip: held });
    let fastest = pull.limit_rpm() / gear.rpm_per_m_per_s;
    gear.thrust.iter().filter_map(|piece| piece.cut(caught_up, fastest)).for_each(|piece| tyres.hold(&piece, &mut pieces));
    pieces
}

impl Tyres {
    fn new(grip_n: f64, masses: &Masses, load: &RoadLoad) -> Self {
        let turning = masses.closed / masses.open - 1.0;
        Self { grip_n, back: load.scaled(-turning), held: grip_n * (1.0 + turning) }
    }

    /// Adds a piece, cut where more comes to the tyres than they hold.
    fn hold(&self, piece: &Cubic, pieces: &mut Vec<Piece>) {
        let whole = |thrust: Cubic, grip: bool| Piece { thrust, slip_to: None, grip };
        if !self.grip_n.is_finite() {
            pieces.push(whole(*piece, false));
            return;
        }
        let asked = piece.less(&self.back);
        let mut from = piece.from;
        for to in asked.crossings(self.held).chain([piece.to]) {
            if let Some(part) = piece.cut(from, to) {
                let grip = asked.at(0.5 * (part.from + part.to)) > self.held;
                pieces.push(whole(if grip { Cubic::constant(part.from, part.to, self.grip_n) } else { part }, grip));
                from = to;
            }
        }
    }
}

fn check(car: &Car, trailer: Mass, grade: f64) -> Result<(), MotionError> {
    let mass_kg = car.mass_kg();
    if !(mass_kg > 0.0 && mass_kg < 1e6) {
        return Err(MotionError::Mass(mass_kg));
    }
    let rows = [
        ("share of the weight on the driven axle", car.driven_share.value, 0.0, 1.0),
        ("wheelbase (m)", car.wheelbase.value.get::<meter>(), 0.1, 50.0),
        ("height of the centre of gravity (m)", car.gravity_height.value.get::<meter>(), 0.0, 10.0),
        ("drag area (m²)", car.drag_area.value.get::<square_meter>(), 0.0, 100.0),
        ("rolling resistance", car.rolling.value, 0.0, 1.0),
        ("tyre grip", car.grip.value, 0.0, 1e6),
        ("air density (kg/m³)", car.air_density.value.get::<kilogram_per_cubic_meter>(), 0.0, 10.0),
        ("growth of rolling resistance (s/m)", car.rolling_growth.value, 0.0, 1.0),
        ("mass of the trailer (kg)", trailer.get::<kilogram>(), 0.0, 1e6),
        ("grade (rise over run)", grade, 0.0, 10.0),
    ];
    rows.into_iter()
        .find(|(_, value, least, greatest)| !(value >= least && value <= greatest))
        .map_or(Ok(()), |(word, value, ..)| Err(MotionError::CarValue { word, value }))
}
