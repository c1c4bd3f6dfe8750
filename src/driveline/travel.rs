//! How the last piece of a shaft stands with its axle hanging and how far its slip joint slides then; and what a centre bearing that is
//! shimmed does to the joints on both sides.

use super::{Direction, Line};
use crate::units::common::millimetres;
use crate::units::{Angle, Length, unit};

/// The last piece of a shaft with its axle hanging.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Hanging {
    /// Which way it points.
    pub direction: Direction,
    /// Between its joint centres, where its length at ride height is known.
    pub length: Option<Length>,
}

impl Hanging {
    /// A piece of a length whose rear joint has gone straight down.
    ///
    /// Model: what it runs along the car and sideways stays, x = L ÷ √(1 + down² + right²), so L′ = x × √(1 + down′² + right²) with
    /// down′ = down + drop ÷ x. Left out: a spring or an arm swings the axle on a circle, so the slip joint is measured before it is cut.
    /// Source: plain geometry.
    ///
    /// ```
    /// use layshaft::driveline::{Direction, travel::Hanging};
    /// use layshaft::units::{common::millimetres, show, unit};
    /// // A level shaft of 1,200 mm whose axle drops 350 mm: √(1,200² + 350²) = 1,250 mm.
    /// let hanging = Hanging::dropped(Direction::default(), millimetres(1_200.0), millimetres(350.0));
    /// assert_eq!(hanging.length.map(|length| show(&length, &unit::MM, 1)).as_deref(), Some("1,250.0 mm"));
    /// ```
    pub fn dropped(piece: Direction, length: Length, drop: Length) -> Self {
        let along = piece.along(length);
        let direction = piece.lowered(drop, along);
        Self { direction, length: Some(direction.length_over(along)) }
    }

    /// A piece that slopes so in side view with its axle hanging; its length at ride height where that is known.
    pub fn sloping(piece: Direction, length: Option<Length>, side: Angle) -> Self {
        let direction = Direction::new(side, piece.plan());
        Self { direction, length: length.map(|length| direction.length_over(piece.along(length))) }
    }
}

/// What shims of a centre bearing do to a shaft of two pieces.
#[derive(Clone, Debug, PartialEq)]
pub struct CentreBearing {
    /// How far one shim under the bearing turns the front piece and the rear piece in side view; below nothing the rear end rises.
    pub each: [Angle; 2],
    /// How many more shims leave least; below nothing so many are taken out.
    pub shims: i32,
    /// The line with them.
    pub line: Line,
}

/// How far a centre bearing is moved at most, up or down.
fn furthest() -> Length {
    millimetres(40.0)
}

impl CentreBearing {
    /// A shaft of two pieces of these lengths, and the thickness of one shim; none for any other shaft.
    ///
    /// Model: a bearing raised by h turns the front piece by h over what it runs along the car, and the rear piece by as much the other
    /// way; both ends of the line stay. Of two numbers of shims that leave the same within 0.02° the smaller is taken. Source: plain
    /// geometry, and [`Line::resultant`].
    pub fn of(line: &Line, lengths: &[Length], shim: Length) -> Option<Self> {
        /// The most shims that are tried.
        const MOST: i32 = 400;
        const WORTH_DEGREES: f64 = 0.02;
        let ([_, front, rear, _], [first, second]) = (line.shafts(), lengths) else { return None };
        let [front, rear] = [(*front, front.along(*first)), (*rear, rear.along(*second))];
        let turned = |(piece, along): (Direction, Length), down: Length| piece.lowered(down, along).side() - piece.side();
        let left = |shims: i32| Some(unit::DEGREE.number(raised(line, [front.1, rear.1], shim * f64::from(shims))?.resultant()));
        let within = |shims: &i32| shim * f64::from(*shims) <= furthest();
        let tried = (1..=MOST).take_while(within).flat_map(|shims| [shims, -shims]);
        let (shims, _) = tried.fold((0, left(0)?), |(best, least), shims| match left(shims) {
            Some(left) if left < least - WORTH_DEGREES => (shims, left),
            _ => (best, least),
        });
        Some(Self {
            each: [turned(front, -shim), turned(rear, shim)],
            shims,
            line: raised(line, [front.1, rear.1], shim * f64::from(shims))?,
        })
    }
}

/// A line of two pieces, which run so far along the car, with the bearing between them raised; none where a joint would not turn.
fn raised(line: &Line, [first, second]: [Length; 2], height: Length) -> Option<Line> {
    let [gearbox, front, rear, pinion] = line.shafts() else { return None };
    Line::new(*gearbox, &[front.lowered(-height, first), rear.lowered(height, second)], *pinion, line.yokes()).ok()
}
