//! The lists a build can begin with, one for each layout and one for an axle: what goes in before what, what is counted, what flies out if
//! it is moved too far.
//!
//! Common practice, no published source; the few ranges are those of several makers' manuals. The box's own manual rules.

use crate::questions::checklists::Template;

/// All of them.
pub(super) const ALL: [Template; 4] = [
    Template { name: "countershaft, reduced at the input", steps: INPUT_REDUCED },
    Template { name: "countershaft, reduced at the output", steps: OUTPUT_REDUCED },
    Template { name: "two shafts, with the final drive", steps: TWO_SHAFT },
    Template { name: "axle: ring and pinion", steps: AXLE },
];

const INPUT_REDUCED: &str = "\
Before anything goes in:
Manual, torque figures and shims to hand
Case washed, oilways blown out, faces flat, threads tried
Countershaft: no ridge under a fingernail; run-out | want at most 0.06 mm
Rings on their own cones, oiled, grip and do not slip; least gap | want at least 0.8 mm
Bearings, seals, circlips, keys and rollers counted against the list
Cluster:
Needles into the cluster with grease around a dummy shaft; rollers, all rows | got
Thrust washers: tangs in their slots, oil grooves to the gear
Cluster end play, dry, with the washers that stay | want as End play
Cluster lies on the bottom of the case, dummy shaft in, before the mainshaft closes the way
Reverse:
Reverse idler in, right way round, its shaft locked, its lever engaged
Mainshaft:
Hubs: springs, balls and keys counted; a sleeve moved too far lets them fly: tape it
Each free gear on its shaft; float of 2nd and 3rd | want 0.10 to 0.30 mm
Rings on their own cones, slots over the keys, oiled
Mainshaft in from behind, bearing home on its shoulder, circlip seated all round
Input shaft:
Spigot rollers in with grease, none tipped; rollers | got
Input shaft in with its ring; it turns free of the mainshaft
Front retainer: gap before the gasket shimmed as the manual says
Cluster up:
Cluster lifted into mesh, countershaft driven through from behind, dummy out whole; no washer has dropped
Cluster end play, measured again | want as End play
Selectors:
Interlock balls and pins counted and in before the rail that closes them in
Forks on their sleeves, rails in order, detents in; no fork drags
Two gears cannot be had at once
Closing:
Turned by hand in every gear and in neutral: no tight place
Bushes reamed before the seals go in; lips greased
Covers and bolts to the manual’s torque, in its order
Speedometer drive, switches, breather and drain plug in
Oil filled, grade as on the tag; quantity | got
Nothing is left over on the bench
";

const OUTPUT_REDUCED: &str = "\
Before anything goes in:
Manual, torque figures and shims to hand
Case washed, oilways blown out, faces flat, threads tried
Rings on their own cones, oiled, grip and do not slip; least gap | want at least 0.8 mm
Bearings, seals, circlips, keys and rollers counted against the list
Input shaft and its gears:
Hubs: springs, balls and keys counted; a sleeve moved too far lets them fly: tape it
Each free gear on its shaft; float | want 0.10 to 0.30 mm
Countershaft:
Gears and the output pinion pressed on against their shoulders, circlips seated all round
Bearings in; end play or preload of the countershaft | want as End play
Reverse:
Reverse idler in, right way round, its shaft locked, before the shafts close the way
Shafts in:
Countershaft lies in the case, input shaft over it into mesh
Output gear on its shaft, spigot rollers in with grease; rollers | got
Input shaft end play | want 0.09 to 0.17 mm
Selectors:
Interlock balls and pins counted and in before the rail that closes them in
Forks on their sleeves, rails in order, detents in; no fork drags
Two gears cannot be had at once
Closing:
Turned by hand in every gear and in neutral: no tight place
Bushes reamed before the seals go in; lips greased
Covers and bolts to the manual’s torque, in its order
Oil filled, grade as on the tag; quantity | got
Nothing is left over on the bench
";

const TWO_SHAFT: &str = "\
Before anything goes in:
Manual, torque figures and shims to hand
Both halves of the case washed, oilways blown out, faces flat, dowels in
Rings on their own cones, oiled, grip and do not slip; least gap | want at least 0.8 mm
Bearings, seals, circlips, keys and rollers counted against the list
Output shaft:
Hubs: springs, balls and keys counted; a sleeve moved too far lets them fly: tape it
Each free gear on its shaft; float | want 0.10 to 0.30 mm
Shaft nut to the manual’s torque and locked
Final drive:
Differential turns free; side gears shimmed as the manual says
Differential bearings, shim for their preload | want 0.05 to 0.10 mm
Shafts in:
Input and output shaft go in together in mesh, with the forks on their sleeves
Reverse idler in, right way round, its shaft over its bolt or magnet
Shaft bearings, shim | want as End play
Selectors:
Interlock balls and pins counted and in before the rail that closes them in
Rails home, detents in; no fork drags
Two gears cannot be had at once
Closing:
Turned by hand in every gear and in neutral before the sealant sets: no tight place
Case bolts to the manual’s torque, in its order
Drive shaft seals in last, lips greased
Oil filled, grade as on the tag; quantity | got
Nothing is left over on the bench
";

const AXLE: &str = "\
Before anything goes in:
Ring and pinion carry the same set number; mark on the pinion noted | got
Housing washed, bearing seats without burrs, caps marked left and right
Pinion:
Depth shim chosen by the pinion’s mark and the gauge
Bearings oiled and rolled in; turning torque without the seal, new bearings | want 20 to 32 lbf·in
Crush spacer new; never slackened to correct it
Ring gear:
Ring pulled up evenly, bolts to the manual’s torque; run-out of its back | want at most 0.05 mm
Carrier bearings shimmed to their preload
Backlash at the tooth, least of four places | want 0.13 to 0.23 mm
Pattern in thin paint, under load, drive and coast | got
Closing:
Caps in their own places, bolts to the manual’s torque
Pinion nut locked or staked, seal in, lip greased
Oil filled, grade as on the tag; quantity | got
";
