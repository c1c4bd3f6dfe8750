//! Photographs: of which part on the shelf or which step of a build each was taken, by its name alone; and how they go into a backup.
//!
//! They are kept on the device only: neither a job nor an entry names them, so no link and no file of a job carries them.

use base64::Engine;
use base64::prelude::BASE64_STANDARD;
use serde::{Deserialize, Serialize};
use serde_json::Value;

use super::book::RecordId;
use crate::catalogue::PartKind;

/// The longer side of a photograph that is kept, in pixels: enough to read a stamped number on a case.
pub const LARGEST: u32 = 1_600;

/// Of what a photograph was taken.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Subject {
    /// A part of the shop's own.
    Part {
        /// Its kind.
        kind: PartKind,
        /// Its id.
        id: String,
    },
    /// A step of a job's build.
    Step {
        /// The job.
        job: RecordId,
        /// What is to be done, in the step's words.
        what: String,
    },
}

/// What stands before the names of photographs of parts, and of steps.
const PART: &str = "part";
const STEP: &str = "step";

impl Subject {
    /// The subject of a photograph, by its name: `part/tyre/own-3/j18c-0a`, `step/j18c-0a/end play, dry/j18d-0b`.
    ///
    /// ```
    /// use layshaft::job::book::RecordId;
    /// use layshaft::job::photographs::Subject;
    /// let step = Subject::Step { job: RecordId::fresh(1, 2), what: "end play 1/2".into() };
    /// assert_eq!(Subject::of(&step.photograph(&RecordId::fresh(3, 4))), Some(step));
    /// ```
    pub fn of(photograph: &str) -> Option<Self> {
        let (subject, _) = photograph.rsplit_once('/')?;
        let (what, of) = subject.split_once('/')?;
        let (first, second) = of.split_once('/')?;
        match what {
            PART => Some(Self::Part { kind: PartKind::ALL.into_iter().find(|kind| kind.id() == first)?, id: second.to_owned() }),
            STEP => Some(Self::Step { job: RecordId::try_from(first.to_owned()).ok()?, what: second.to_owned() }),
            _ => None,
        }
    }

    /// The name of a photograph of it; `fresh` tells it from all others.
    pub fn photograph(&self, fresh: &RecordId) -> String {
        match self {
            Self::Part { kind, id } => format!("{PART}/{}/{id}/{}", kind.id(), fresh.as_str()),
            Self::Step { job, what } => format!("{STEP}/{}/{what}/{}", job.as_str(), fresh.as_str()),
        }
    }

    /// The name of a photograph, taken over to this subject.
    pub fn renamed(&self, photograph: &str) -> String {
        let fresh = photograph.rsplit('/').next().unwrap_or_default();
        RecordId::try_from(fresh.to_owned()).map_or_else(|_| photograph.to_owned(), |fresh| self.photograph(&fresh))
    }
}

/// A photograph with its picture.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Photograph {
    /// Its name.
    pub name: String,
    /// The picture, a JPEG file.
    pub jpeg: Vec<u8>,
}

/// As a backup holds it.
#[derive(Serialize, Deserialize)]
struct Written {
    name: String,
    jpeg: String,
}

impl Serialize for Photograph {
    fn serialize<S: serde::Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        Written { name: self.name.clone(), jpeg: BASE64_STANDARD.encode(&self.jpeg) }.serialize(serializer)
    }
}

impl Photograph {
    /// A photograph of a backup; none where it has no subject or no picture.
    pub fn from_value(value: Value) -> Option<Self> {
        let Written { name, jpeg } = serde_json::from_value(value).ok()?;
        Subject::of(&name)?;
        let jpeg = BASE64_STANDARD.decode(jpeg).ok()?;
        // Every JPEG file begins so (ISO/IEC 10918-1, the marker SOI).
        jpeg.starts_with(&[0xff, 0xd8]).then_some(Self { name, jpeg })
    }
}

/// A size made smaller where its longer side is above [`LARGEST`], its shape kept.
///
/// ```
/// // By hand: 4000 × 3000 by 0.4 is 1600 × 1200.
/// assert_eq!(layshaft::job::photographs::scaled(4000, 3000), (1600, 1200));
/// assert_eq!(layshaft::job::photographs::scaled(640, 480), (640, 480));
/// ```
pub fn scaled(width: u32, height: u32) -> (u32, u32) {
    let longer = width.max(height).max(1);
    if longer <= LARGEST {
        return (width, height);
    }
    let scale = |side: u32| u32::try_from((u64::from(side) * u64::from(LARGEST)).div_euclid(u64::from(longer)).max(1)).unwrap_or(LARGEST);
    (scale(width), scale(height))
}
