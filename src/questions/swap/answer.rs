//! A setup's box beside setup A's, size by size.

use crate::questions::{Analysis, Source};
use crate::swap::stations::Station;
use crate::swap::{Agreement, Outline, Pattern, ShaftChange, axle};
use crate::units::{Length, Mass};

use super::read::Swap;

/// What differs from A's box; each part there as soon as both are measured. A difference above nothing is longer, further back or wider.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Beside {
    /// What it does to the driveshaft.
    pub shaft: Option<ShaftChange>,
    /// Between the joint centres of the shaft that suits, of two pieces the front one.
    pub joints: Option<Length>,
    /// The mount.
    pub mount: Option<Length>,
    /// The lever.
    pub lever: Option<Length>,
    /// The input shaft in front of the case face.
    pub nose: Option<Length>,
    /// The spigot.
    pub spigot: Option<Length>,
    /// How the splines of the inputs agree.
    pub input_spline: Option<Agreement>,
    /// How those of the outputs agree.
    pub output_spline: Option<Agreement>,
    /// How many bolt holes meet, of how many.
    pub holes: Option<(usize, usize)>,
    /// How many holes of the output flange meet, of how many.
    pub flange: Option<(usize, usize)>,
    /// How much further the release bearing travels.
    pub travel: Option<Length>,
    /// How much wider the clutch plate is.
    pub plate: Option<Length>,
    /// How far each wheel moves outwards.
    pub outwards: Option<Length>,
    /// How the splines of the half shafts agree.
    pub half_shaft: Option<Agreement>,
    /// How much heavier it is.
    pub weight: Option<Mass>,
}

/// The setup that the others are held against, unless it is this one.
pub fn first_beside<'a>(source: Source<'a>, analysis: &Analysis) -> Option<&'a Analysis> {
    source.setups.first().filter(|first| first.setup.id != analysis.setup.id)
}

impl Beside {
    /// A setup beside A; none of A itself.
    pub fn of(source: Source<'_>, analysis: &Analysis) -> Option<Self> {
        let first = first_beside(source, analysis)?;
        let (own, old) = (&analysis.setup.swap, &first.setup.swap);
        let more = |of: fn(&Swap) -> Option<Length>| Some(of(own)? - of(old)?);
        let longer = more(|swap| swap.length);
        let shaft = longer.zip(source.conditions.swap.slip).map(|(longer, slip)| ShaftChange { longer, slip });
        let joints = shaft.zip(first.setup.shaft.lengths.first()).map(|(change, old)| change.between_joints(*old));
        // The wheels stay where neither backspace is typed; one alone says nothing.
        let backspace =
            if own.backspace.is_none() && old.backspace.is_none() { Some(Length::default()) } else { more(|swap| swap.backspace) };
        let outwards = more(|swap| swap.axle_width).zip(backspace).map(|(wider, more)| axle::outwards(wider, more));
        let meet = |of: fn(&Swap) -> Option<&Pattern>| of(own).zip(of(old)).and_then(|(own, old)| own.meets(old));
        Some(Self {
            outwards,
            travel: more(|swap| swap.travel),
            plate: more(|swap| swap.plate),
            flange: meet(|swap| swap.flange.as_ref()),
            half_shaft: own.half_shaft.zip(old.half_shaft).map(|(own, old)| own.beside(&old)),
            shaft,
            joints: joints.filter(|joints| joints.value > 0.0),
            mount: more(|swap| swap.mount),
            lever: more(|swap| swap.lever),
            nose: more(|swap| swap.nose),
            spigot: more(|swap| swap.spigot),
            input_spline: own.input_spline.zip(old.input_spline).map(|(own, old)| own.beside(&old)),
            output_spline: own.output_spline.zip(old.output_spline).map(|(own, old)| own.beside(&old)),
            holes: meet(|swap| swap.holes.as_ref()),
            weight: own.weight.zip(old.weight).map(|(own, old)| own - old),
        })
    }
}

/// The least room of a setup's box below the tunnel, and where.
pub fn room(source: Source<'_>, analysis: &Analysis) -> Option<Station> {
    let tunnel: &Outline = source.conditions.swap.tunnel.as_ref()?;
    analysis.setup.swap.outline.as_ref()?.room_below(tunnel)
}
