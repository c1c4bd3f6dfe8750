//! Shapes that turn together as a finger draws along the picture: each about its own axis, and where they touch along its line.
//!
//! What is turned is the outline as it stands, by a turn of less than a pitch: nothing is worked out anew, so it follows the finger.
use super::scene::Point;
use super::shapes::{Body, Shapes};

/// How shapes turn.
#[derive(Clone, Debug, PartialEq)]
pub struct Turning {
    /// Of each shape, in order: its axis, and by how much it turns clockwise for each length the finger goes to the right, in rad.
    pub axes: Vec<(Point, f64)>,
    /// After how long a way of the finger the picture is the same again.
    pub pitch: f64,
    /// The line along which they touch.
    pub line: [Point; 2],
    /// How far apart on it they touch.
    pub touch_apart: f64,
    /// Two corners of what is seen: the edges of the picture, whatever turns.
    pub frame: [Point; 2],
}

impl Turning {
    /// The way of the finger, as short as shows the same picture.
    fn short(&self, way: f64) -> f64 {
        let turns = way / self.pitch;
        if turns.is_finite() { (turns - turns.round()) * self.pitch } else { 0.0 }
    }

    fn body(&self, place: usize, body: &Body, way: f64) -> Body {
        let Some((axis, per_length)) = self.axes.get(place) else { return body.clone() };
        let (sine, cosine) = (way * per_length).sin_cos();
        let turned = |(x, y): &Point| {
            let (x, y) = (x - axis.0, y - axis.1);
            (axis.0 + x * cosine + y * sine, axis.1 + y * cosine - x * sine)
        };
        Body { outline: body.outline.iter().map(turned).collect(), ..body.clone() }
    }

    /// Every point of the line where they touch, one of them given as they stand.
    fn touching(&self, known: Point, way: f64) -> Vec<Point> {
        let [from, to] = self.line;
        let length = (to.0 - from.0).hypot(to.1 - from.1);
        if !(length > 0.0 && self.touch_apart > 0.0) {
            return vec![known];
        }
        let (right, up) = ((to.0 - from.0) / length, (to.1 - from.1) / length);
        let along = (known.0 - from.0) * right + (known.1 - from.1) * up + way / self.pitch * self.touch_apart;
        let first = along.rem_euclid(self.touch_apart);
        let each = std::iter::successors(Some(first), |along| Some(along + self.touch_apart));
        each.take_while(|along| *along <= length).take(64).map(|along| (from.0 + along * right, from.1 + along * up)).collect()
    }
}

impl Shapes {
    /// The same shapes, turned as far as a finger goes to the right; none where they do not turn.
    pub fn turned_by(&self, way: f64) -> Option<Self> {
        let turning = self.turning.as_ref()?;
        let way = turning.short(way);
        let bodies = self.bodies.iter().enumerate().map(|(place, body)| turning.body(place, body, way)).collect();
        let contacts = self.contacts.first().map_or_else(Vec::new, |known| turning.touching(*known, way));
        Some(Self { bodies, contacts, ..self.clone() })
    }
}
