//! What each difference from A's box means for the car, in words: it serves as it is, something is made, or something is measured first.
//!
//! The limits between the three are common practice with no published source; each leads to a trial or a measurement.

use super::answer::{Beside, first_beside, room};
use crate::questions::{Analysis, Source};
use crate::sheet::said::open;
use crate::speedometer::{Hand, Tap};
use crate::swap::axle::usual_arch;
use crate::swap::stations::usual_room;
use crate::swap::{Agreement, Pattern, Spline};
use crate::units::common::{in_millimetres, millimetres};
use crate::units::{Length, System};

/// How a part of the swap stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Stands {
    /// As the old one.
    AsOld,
    /// To be measured or tried before anything is said.
    ToMeasure,
    /// Something must be made, moved or bought.
    ToMake,
    /// It does not go in as it is.
    CannotBe,
}

/// One part of the swap.
#[derive(Clone, Debug, PartialEq)]
pub struct Judged {
    /// The row it stands in.
    pub key: &'static str,
    /// How it stands.
    pub stands: Stands,
    /// As a part of the answer: `mount 21 mm further back`.
    pub says: String,
    /// Beside the figure: `move it, or make a bracket`.
    pub verdict: String,
}

/// A mount is slotted so far.
const MOUNT_SLACK_MM: f64 = 3.0;
/// A lever finds its hole so far.
const LEVER_SLACK_MM: f64 = 10.0;
/// A nose reaches so much deeper without touching the crank.
const NOSE_SLACK_MM: f64 = 2.0;
/// A wheel stands in the same place so far.
const WHEEL_SLACK_MM: f64 = 2.0;
/// A pedal takes up so much more or less travel.
const TRAVEL_SLACK_MM: f64 = 1.0;
/// A clutch plate is as wide as another within this.
const PLATE_SLACK_MM: f64 = 2.0;
/// A spigot runs in a bush made for one so much thicker or thinner.
const SPIGOT_SLACK_MM: f64 = 0.1;

/// The limits in words, for what the answer rests on.
pub fn limits_words(source: Source<'_>) -> String {
    let shown = |limit: f64| shown(source, millimetres(limit));
    let (mount, lever, nose) = (shown(MOUNT_SLACK_MM), shown(LEVER_SLACK_MM), shown(NOSE_SLACK_MM));
    format!(
        "mount within {mount}, lever within {lever}, input shaft within {nose}, spigot within {}",
        fine(source, millimetres(SPIGOT_SLACK_MM))
    )
}

/// A length as the swap shows it, without its sign.
pub fn shown(source: Source<'_>, length: Length) -> String {
    source.show(&length.abs(), decimals(source))
}

/// The digits of a length behind its point.
pub fn decimals(source: Source<'_>) -> usize {
    if source.reader.units == System::Inch { 2 } else { 0 }
}

fn fine(source: Source<'_>, length: Length) -> String {
    source.show(&length, decimals(source) + 1)
}

fn made(key: &'static str, says: impl Into<String>, verdict: impl Into<String>) -> Judged {
    Judged { key, stands: Stands::ToMake, says: says.into(), verdict: verdict.into() }
}

fn as_old(key: &'static str, says: impl Into<String>) -> Judged {
    let says = says.into();
    Judged { key, stands: Stands::AsOld, verdict: says.clone(), says }
}

/// Every part of the swap that both boxes are measured for, and the room below the tunnel.
///
/// A setup copied from A has A's sizes, every one of them: that is no second measurement, and nothing is said by it.
pub fn judged(source: Source<'_>, analysis: &Analysis) -> Vec<Judged> {
    let of_tunnel = tunnel(source, analysis);
    let Some((first, beside)) = first_beside(source, analysis).zip(Beside::of(source, analysis)) else {
        return of_tunnel.into_iter().collect();
    };
    let (own, old) = (&analysis.setup.swap, &first.setup.swap);
    if own == old {
        return of_tunnel.into_iter().collect();
    }
    let parts = [
        shaft(source, &beside),
        beside.mount.map(|moved| mount(source, moved)),
        beside.lever.map(|moved| lever(source, moved)),
        of_tunnel,
        spline(source, "box-input-spline", "clutch plate", beside.input_spline, own.input_spline, old.input_spline),
        beside.nose.map(|longer| nose(source, longer)),
        beside.spigot.zip(own.spigot).map(|(wider, spigot)| bush(source, wider, spigot)),
        beside.holes.map(|holes| pattern(holes, own.holes.as_ref())),
        spline(source, "box-output-spline", "yoke", beside.output_spline, own.output_spline, old.output_spline),
        beside.flange.map(flange),
        beside.outwards.map(|moved| wheels(source, moved)),
        spline(source, "half-shaft-spline", "side gear", beside.half_shaft, own.half_shaft, old.half_shaft),
        own.release.zip(old.release).map(|(own, old)| side("fork-side", "clutch fork", own.word(), old.word())),
        beside.travel.map(|more| travel(source, more)),
        beside.plate.zip(own.plate).map(|(wider, plate)| clutch_plate(source, wider, plate)),
        own.cable.zip(old.cable).map(|(own, old)| at_dial(side("speedo-side", "speedometer cable", cable_side(own), cable_side(old)))),
        own.hand.zip(old.hand).map(|(own, old)| at_dial(side("speedo-hand", "speedometer drive gear", hand(own), hand(old)))),
    ];
    parts.into_iter().flatten().collect()
}

fn shaft(source: Source<'_>, beside: &Beside) -> Option<Judged> {
    let change = beside.shaft?;
    if change.old_serves() {
        return Some(as_old("box-length", "the old driveshaft serves"));
    }
    let way = if change.longer.value > 0.0 { "shorter" } else { "longer" };
    let by = format!("driveshaft {} {way}", shown(source, change.longer));
    let slip = shown(source, change.slip);
    let says = beside.joints.map_or_else(
        || by.clone(),
        |joints| {
            let joints = open("driveline", &format!("{} joint to joint", shown(source, joints)));
            format!("{by}: {joints}, {slip} of slip left")
        },
    );
    Some(made("box-length", says, format!("a {by}")))
}

fn mount(source: Source<'_>, moved: Length) -> Judged {
    if in_millimetres(moved).abs() <= MOUNT_SLACK_MM {
        return as_old("box-mount", "mount in the old place");
    }
    let way = if moved.value > 0.0 { "back" } else { "forward" };
    made("box-mount", format!("mount {} further {way}", shown(source, moved)), "move it, or make a bracket")
}

fn lever(source: Source<'_>, moved: Length) -> Judged {
    if in_millimetres(moved).abs() <= LEVER_SLACK_MM {
        return as_old("box-lever", "lever in the old hole");
    }
    let way = if moved.value > 0.0 { "behind" } else { "ahead of" };
    let says = format!("the lever comes up {} {way} the hole", shown(source, moved));
    made("box-lever", says, "a cranked lever, or a longer hole")
}

fn nose(source: Source<'_>, longer: Length) -> Judged {
    let by = shown(source, longer);
    if in_millimetres(longer).abs() <= NOSE_SLACK_MM {
        as_old("box-nose", "input shaft as long as the old one")
    } else if longer.value > 0.0 {
        let verdict = "measure the depth behind the pilot bush: a spacer plate, or a shorter nose";
        made("box-nose", format!("input shaft {by} longer"), verdict)
    } else {
        made("box-nose", format!("input shaft {by} shorter"), "measure whether the spigot still fills its bush, and the splines the plate")
    }
}

fn bush(source: Source<'_>, wider: Length, spigot: Length) -> Judged {
    if in_millimetres(wider).abs() <= SPIGOT_SLACK_MM {
        return as_old("box-spigot", "the old pilot bush, if it is not worn");
    }
    let says = format!("a pilot bush for {}", fine(source, spigot));
    made("box-spigot", says.clone(), says)
}

/// How far the release bearing goes.
fn travel(source: Source<'_>, more: Length) -> Judged {
    if in_millimetres(more).abs() <= TRAVEL_SLACK_MM {
        return as_old("release-travel", "release travel as before");
    }
    let way = if more.value > 0.0 { "more" } else { "less" };
    made("release-travel", format!("{} {way} release travel", fine(source, more.abs())), "another slave or fork, or the pedal’s stop moved")
}

fn clutch_plate(source: Source<'_>, wider: Length, plate: Length) -> Judged {
    if in_millimetres(wider).abs() <= PLATE_SLACK_MM {
        return as_old("clutch-plate", "a clutch plate as wide as the old one");
    }
    let says = format!("a clutch plate of {} across", shown(source, plate));
    made("clutch-plate", says, format!("A’s is {}: flywheel and cover must suit it", shown(source, plate - wider)))
}

/// The holes of the output flange.
fn flange((meeting, all): (usize, usize)) -> Judged {
    if meeting == all {
        return as_old("box-flange", "the driveshaft bolts to its flange");
    }
    made("box-flange", "an output flange with other holes", "redrill it, or a flange yoke that suits the driveshaft")
}

/// Where the wheels stand on another axle, and the room that is left to the arch.
fn wheels(source: Source<'_>, moved: Length) -> Judged {
    if in_millimetres(moved).abs() <= WHEEL_SLACK_MM {
        return as_old("axle-width", "the wheels stand where they stood");
    }
    let way = if moved.value > 0.0 { "out" } else { "in" };
    let says = format!("each rear wheel {} further {way}", shown(source, moved));
    let left = source.conditions.swap.arch.map(|arch| arch - moved);
    match left {
        Some(left) if left.value <= 0.0 => {
            Judged { key: "axle-width", stands: Stands::CannotBe, verdict: "the tyre meets its arch: more backspace".into(), says }
        }
        Some(left) if left < usual_arch() => {
            made("axle-width", says, format!("{} left to the arch, {} is usual", shown(source, left), shown(source, usual_arch())))
        }
        Some(_) if moved.value > 0.0 => Judged { verdict: "room to the arch".into(), ..as_old("axle-width", says) },
        _ if moved.value < 0.0 => made("axle-width", says, "measure what is left to spring and tub"),
        _ => made("axle-width", says, "measure from the tyre to its arch"),
    }
}

fn pattern((meeting, all): (usize, usize), own: Option<&Pattern>) -> Judged {
    let is_named = matches!(own, Some(Pattern::Named(_)));
    if meeting == all {
        return as_old(
            "box-holes",
            if is_named { "the same bolt pattern by name: hold one to the other" } else { "every bolt hole meets" },
        );
    }
    let verdict = "an adapter plate, or its own clutch housing: hold one gasket on the other";
    let says = if is_named { "another bolt pattern".to_owned() } else { format!("{meeting} of {all} bolt holes meet") };
    made("box-holes", says, verdict)
}

/// What a spline that is told by these two means for what slides on it.
fn spline(
    source: Source<'_>,
    key: &'static str,
    what: &str,
    agreement: Option<Agreement>,
    own: Option<Spline>,
    old: Option<Spline>,
) -> Option<Judged> {
    let (own, old) = own.zip(old)?;
    let outside = own.outside.map_or_else(String::new, |outside| format!(" of {}", fine(source, outside)));
    let needed = format!("a {what} with {} splines{outside}", own.count);
    Some(match agreement? {
        Agreement::BySize => as_old(key, format!("the old {what} by count and size: slide it on")),
        Agreement::ByCount => {
            let says = format!("{} splines as before: measure over them before the {what} is called right", own.count);
            Judged { key, stands: Stands::ToMeasure, verdict: says.clone(), says }
        }
        Agreement::OtherCount => made(key, needed, format!("A has {}: another {what}", old.count)),
        Agreement::OtherSize => made(key, needed, format!("the same count on another size: another {what}")),
        Agreement::OtherForm => made(key, needed, format!("teeth of another form: another {what}")),
    })
}

/// What comes out on one side in this box and on another in the car's.
fn side(key: &'static str, what: &str, own: &str, old: &str) -> Judged {
    if own == old { as_old(key, format!("{what} {own} as before")) } else { made(key, format!("{what} {own}"), format!("A has it {old}")) }
}

/// Said so that it opens the question of the dial.
fn at_dial(part: Judged) -> Judged {
    Judged { says: open("speedometer", &part.says), ..part }
}

fn hand(hand: Hand) -> &'static str {
    match hand {
        Hand::Left => "left-handed",
        Hand::Right => "right-handed",
    }
}

fn cable_side(tap: Tap) -> &'static str {
    match tap {
        Tap::LeftUp | Tap::LeftDown => "on the left",
        Tap::RightUp | Tap::RightDown => "on the right",
        Tap::AboveLeft | Tap::AboveRight => "above",
        Tap::BelowLeft | Tap::BelowRight => "below",
    }
}

fn tunnel(source: Source<'_>, analysis: &Analysis) -> Option<Judged> {
    let (at, least) = room(source, analysis)?;
    let (by, at) = (shown(source, least), shown(source, at));
    Some(if least.value < 0.0 {
        let says = format!("tunnel {by} too low {at} behind the face");
        let verdict = format!("too high {at} behind the face: cut the tunnel, or another box");
        Judged { key: "box-outline", stands: Stands::CannotBe, says, verdict }
    } else if least < usual_room() {
        let says = format!("only {by} below the tunnel {at} behind the face");
        Judged {
            key: "box-outline",
            stands: Stands::ToMeasure,
            verdict: format!("{} is usual: rock the engine and look", shown(source, usual_room())),
            says,
        }
    } else {
        Judged { verdict: "enough".into(), ..as_old("box-outline", "room below the tunnel") }
    })
}
