//! What Bearings and torque rests on: growth, the bearings' K, usual ranges, friction and proof share.

use super::answer::{BORE_RUN_OUT_MM, FACE_RUN_OUT_MM, USUAL_BACKLASH_MM};
use super::read::Set;
use crate::fits::Material;
use crate::fits::fastener::PROOF_SHARE;
use crate::job::document::Blank;
use crate::questions::endplay::rows::said;
use crate::questions::rests::{typed_or, usual};
use crate::questions::{Source, warmth};
use crate::sheet::Rest;
use crate::units::common::millimetres;
use crate::units::number;

/// Every value, once.
pub fn rests(source: Source<'_>) -> Vec<Rest> {
    let bench = &source.job.bench.setting;
    if bench.is_blank() {
        return Vec::new();
    }
    let set = Set::of(&source.job.bench);
    let mut rests = Vec::new();
    if let Some(pair) = set.pair() {
        let k = number::show(set.k, 2);
        rests.push(typed_or(!bench.k.is_blank(), "K of the bearings", k, "a contact angle of 13.7°; from memory: take the list’s own"));
        rests.push(warmth::growth("Case", pair.case));
        rests.push(warmth::growth("Shaft and bearings", Material::Steel));
        rests.extend(warmth::rests(source, set.temperatures));
    }
    if let Some(bearings) = set.bearings.filter(|_| set.turning().is_some() && set.torque.is_none()) {
        rests.push(usual(
            "Turning torque",
            bearings.usual_torque(),
            "makers’ manuals, pinion bearings without the seal; the axle’s own manual rules",
        ));
    }
    if !set.lash.is_empty() {
        let [low, high] = USUAL_BACKLASH_MM.map(|at| said(source, millimetres(at)));
        rests.push(usual("Backlash", format!("{low} to {high}"), "makers’ manuals of cars; others give up to 0.012 in"));
    }
    if bench.pattern_drive.value().or(bench.pattern_coast.value()).is_some() {
        rests.push(usual("What a pattern asks for", "by makers’ manuals", "axle manuals, from memory; shim behind the pinion’s head"));
    }
    if set.bore.is_some() {
        rests.push(usual(
            "Bore of a clutch housing",
            said(source, millimetres(BORE_RUN_OUT_MM)),
            "in total, small engines; common practice, no published source",
        ));
    }
    if set.face.is_some() {
        rests.push(usual(
            "Face of a clutch housing",
            said(source, millimetres(FACE_RUN_OUT_MM)),
            "in total, large engines; engine makers’ manuals",
        ));
    }
    if !set.fasteners.is_empty() {
        rests.push(usual(
            "Tightened to",
            format!("{} % of the proof load", number::show(PROOF_SHARE * 100.0, 0)),
            "common practice; Shigley 8-11",
        ));
        rests.push(usual("Friction K", "0.2 dry, 0.15 oiled", "common practice, no published source: it varies by a quarter"));
        rests.push(usual("Proof stress", "by the grade’s table", "ISO 898-1; SAE J429, from memory"));
    }
    rests.push(usual("Before any torque here", "the box’s own manual", "it knows gaskets, threads and heat, which are not looked at"));
    rests
}
