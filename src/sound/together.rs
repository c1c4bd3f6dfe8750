//! Several recordings of one noise in other gears taken together: which part fits all of them.
//!
//! One recording cannot part two tones that coincide. In another gear one of them moves, or its teeth run without load and are quiet.

/// Whether a part would be heard in a gear if it made the noise.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Expected {
    /// It turns, and carries its load.
    Heard,
    /// It turns along without load: teeth are quieter then, or not.
    Either,
    /// It does not turn.
    Silent,
}

/// What one recording says of one part.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stand {
    /// How far its lines stand over the noise, in dB.
    pub level: f64,
    /// Whether it would be heard there.
    pub expected: Expected,
}

/// A guilty part that is gone stands so many dB below what it was: innocent parts of made-up recordings stand 10 to 20 dB below the guilty.
const GONE: f64 = 8.0;
/// No recording speaks against a part by more than this, in dB: a thump or a wrong gear must not undo the others.
const MOST: f64 = 15.0;

/// How well each part fits all recordings: 0 at best, below it in dB; every recording names the parts in the same order.
///
/// Model: with L the loudest level of any recording, a part that would be heard in a recording loses what it stands below the loudest there,
/// or below L − 8 dB where all are quieter; one that would be silent loses what the loudest there stands above L − 8 dB; one that may be
/// either loses the lesser, but where it is loudest the noise is there, and so must be what makes it. Common practice, no published source;
/// tried on made-up recordings.
///
/// ```
/// use layshaft::sound::together::{Expected::{Either, Heard}, Stand, together};
/// let stand = |level, expected| Stand { level, expected };
/// // In third both are loud. In fourth the first carries no power, and all is quiet: it was the first.
/// let fits = together(&[vec![stand(14.0, Heard), stand(14.5, Heard)], vec![stand(-3.0, Either), stand(-1.0, Heard)]]);
/// assert_eq!(fits, [-0.5, -7.5]);
/// ```
pub fn together(recordings: &[Vec<Stand>]) -> Vec<f64> {
    let loudest = |parts: &[Stand]| {
        let heard = parts.iter().filter(|part| part.expected != Expected::Silent);
        heard.map(|part| part.level).fold(f64::NEG_INFINITY, f64::max)
    };
    let most = recordings.iter().map(|parts| loudest(parts)).fold(f64::NEG_INFINITY, f64::max);
    let gone = most - GONE;
    let loses = |parts: &Vec<Stand>, part: usize| {
        let Some(stand) = parts.get(part) else { return 0.0 };
        let here = loudest(parts);
        let (if_heard, if_silent) = (here.max(gone) - stand.level, here - gone);
        let by = match stand.expected {
            Expected::Either if here < most => if_heard.min(if_silent),
            Expected::Heard | Expected::Either => if_heard,
            Expected::Silent if here < most => if_silent,
            Expected::Silent => MOST,
        };
        // One recording has no other to outweigh.
        if recordings.len() > 1 { by.clamp(0.0, MOST) } else { by }
    };
    let many = recordings.iter().map(Vec::len).max().unwrap_or(0);
    (0..many).map(|part| -recordings.iter().map(|parts| loses(parts, part)).sum::<f64>()).collect()
}
