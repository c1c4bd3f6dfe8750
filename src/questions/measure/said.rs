//! Gears, readings and lengths in the words of the page.

use crate::gearing::geometry::Cut;
use crate::questions::Source;
use crate::sheet::Figure;
use crate::speedometer::Hand;
use crate::toothform::known::next::Measure;
use crate::toothform::known::{Candidate, Off, Reading, Residual};
use crate::toothform::{Depth, Pitch};
use crate::units::limits::shown;
use crate::units::{Angle, Length, Measured as _, System, number, show, unit};

/// A length of teeth as it is read: to a ten-thousandth of an inch, a thousandth of a mm.
pub fn decimals(source: Source<'_>) -> usize {
    if source.reader.units == System::Inch { 4 } else { 3 }
}

/// A length in words.
pub fn length(source: Source<'_>, length: Length) -> String {
    show(&length, Length::usual(source.reader.units), decimals(source))
}

/// A length without its unit, for workings.
pub fn bare(source: Source<'_>, length: Length) -> String {
    number::show((Length::usual(source.reader.units).take)(&length), decimals(source))
}

/// A figure of the measured gear.
pub fn figure(source: Source<'_>, key: &str, length: Length) -> Figure {
    Figure::quantity(&format!("measure.{key}"), &length, Length::usual(source.reader.units), decimals(source))
}

/// An angle to a tenth of a degree, or as it is where it has no more: `24°`, `24.1°`.
pub fn angle(angle: Angle) -> String {
    let tenths = (unit::DEGREE.number(angle) * 10.0).round() / 10.0;
    format!("{}°", shown(tenths))
}

/// `20°, 24° right hand`, `14.5°, straight teeth`.
pub fn cut(cut: &Cut, hand: Option<Hand>, is_angle_told: bool) -> String {
    let helix = if cut.helix_rad() > 0.0 {
        let hand = match hand {
            Some(Hand::Right) => "right hand",
            Some(Hand::Left) => "left hand",
            None => "helix",
        };
        format!("{} {hand}", angle(cut.helix()))
    } else {
        "straight teeth".into()
    };
    if is_angle_told { format!("{}, {helix}", angle(cut.pressure())) } else { helix }
}

/// `12 DP, 20°, 24° right hand`; `12 DP stub, 20°, straight teeth`.
pub fn gear(candidate: &Candidate, hand: Option<Hand>) -> String {
    let stub = if candidate.depth == Depth::Stub { " stub" } else { "" };
    let is_told = candidate.flank_shift.is_some();
    format!("{}{stub}, {}", candidate.pitch.said(), cut(&candidate.gear.cut, hand, is_told))
}

/// `12 DP`, `module 2.5 at 14.5°`: a gear by what sets it apart.
pub fn briefly(candidate: &Candidate) -> String {
    let stub = if candidate.depth == Depth::Stub { " stub" } else { "" };
    let pitch = match candidate.pitch {
        Pitch::Module(_) | Pitch::Diametral(_) => candidate.pitch.said(),
    };
    if candidate.flank_shift.is_none() {
        format!("{pitch}{stub}")
    } else {
        format!("{pitch}{stub} at {}", angle(candidate.gear.cut.pressure()))
    }
}

/// What a reading is called: `the span over one tooth more`.
pub fn reading(of: Reading) -> &'static str {
    match of {
        Reading::BasePitch => "the span over one tooth more",
        Reading::Thickness => "the number of teeth that the span went over",
        Reading::Pins => "the reading over pins",
        Reading::Tips => "the reading over the tips",
        Reading::Shift => "the profile shift",
        Reading::Root => "the root diameter",
        Reading::Print => "the print of the tips",
        Reading::Centre => "the centre distance",
    }
}

/// How far a reading is off: `base pitch off 0.0041 in`.
pub fn off(source: Source<'_>, residual: &Residual) -> String {
    let by = match residual.off {
        off if !off.is_known() => "altogether".into(),
        Off::Length(by) => length(source, by.abs()),
        Off::Angle(by) => format!("{}°", number::show(unit::DEGREE.number(by.abs()), 1)),
        Off::Modules(modules) => number::show_signed(modules, 2),
    };
    match residual.of {
        Reading::BasePitch => format!("base pitch off {by}"),
        Reading::Thickness => format!("teeth {by} too thin for their height"),
        Reading::Pins => format!("over pins off {by}"),
        Reading::Tips => format!("tips {by} too low for their thickness"),
        Reading::Shift => format!("profile shift would be {by}"),
        Reading::Root => format!("root off {by}"),
        Reading::Print => format!("print off {by}"),
        Reading::Centre => format!("the mate would need a profile shift of {by}"),
    }
}

/// What to measure: `over 2 pins of 4.5 mm`.
pub fn measure(source: Source<'_>, measure: Measure) -> String {
    match measure {
        Measure::OverTips => "over the tips".into(),
        Measure::Span(over) => format!("the span over {over} teeth"),
        Measure::OverPins(pin) => format!("over two pins of {}", pin_said(source, pin)),
        Measure::Root => "the root diameter".into(),
    }
}

/// A pin's diameter, without digits it does not have.
pub fn pin_said(source: Source<'_>, pin: Length) -> String {
    match source.reader.units {
        System::Inch => format!("{} in ({} mm)", number::show(unit::INCH.number(pin), 3), shown(unit::MM.number(pin))),
        System::Metric => format!("{} mm", shown(unit::MM.number(pin))),
    }
}
