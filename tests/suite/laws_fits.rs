//! What holds of shims and stacks whatever is typed: the search against trying everything, ways of writing against one another.

use layshaft::fits::iso286::Code;
use layshaft::fits::iso286::table::Step;
use layshaft::fits::readings::Readings;
use layshaft::fits::seat::{ROOM_MM, Seat, Wanted};
use layshaft::fits::shims::{MOST_IN_A_PACK, Pack, search};
use layshaft::fits::{Material, PlayRange, Shim, ShimsGo, Stack, read, temperature, wanted};
use layshaft::units::common::{in_millimetres, millimetres};
use layshaft::units::{Length, System, Typed, limits};
use proptest::prelude::*;

fn microns(many: i64) -> Length {
    millimetres(f64::from(i32::try_from(many).unwrap()) / 1000.0)
}

/// Every pack of a kit by how often each size is in it, with its thickness in microns: simply all of them.
fn all_packs(kit: &[(i64, u32)]) -> Vec<(Vec<u32>, i64)> {
    let mut packs = vec![(Vec::new(), 0)];
    for (thickness, left) in kit {
        let with = |(counts, sum): &(Vec<u32>, i64)| {
            let (counts, sum) = (counts.clone(), *sum);
            (0..=*left).map(move |many| ([counts.clone(), vec![many]].concat(), sum + thickness * i64::from(many))).collect::<Vec<_>>()
        };
        packs = packs.iter().flat_map(with).collect();
    }
    packs.retain(|(counts, _)| counts.iter().sum::<u32>() <= MOST_IN_A_PACK);
    packs
}

fn counts(pack: &Pack, sizes: usize) -> Vec<u32> {
    (0..sizes).map(|size| u32::try_from(pack.sizes.iter().filter(|of| **of == size).count()).unwrap()).collect()
}

proptest! {
    /// The search finds exactly the packs that trying everything finds, fewest shims first, then nearest the middle.
    #[test]
    fn the_search_equals_trying_everything(
        sizes in proptest::collection::btree_map(1_i64..60, 1_u32..4, 0..6),
        gap in -50_i64..400, least in -60_i64..120, width in 0_i64..60, under in any::<bool>(),
    ) {
        let kit: Vec<(i64, u32)> = sizes.into_iter().map(|(size, left)| (5 * size, left)).collect();
        let shims: Vec<Shim> =
            kit.iter().map(|(size, left)| Shim { label: size.to_string(), thickness: microns(*size), left: *left }).collect();
        let wanted = PlayRange { least: microns(least), greatest: microns(least + width) };
        let go = if under { ShimsGo::UnderTheCover } else { ShimsGo::InTheStack };
        let play = |thickness: i64| if under { gap + thickness } else { gap - thickness };
        let off = |thickness: i64| (2 * play(thickness) - 2 * least - width).abs();
        let found = search(microns(gap), wanted, &shims, go, 10_000);
        let all = all_packs(&kit);
        let mut expected: Vec<_> = all.iter().filter(|(_, sum)| (least..=least + width).contains(&play(*sum))).collect();
        expected.sort_by_key(|(counts, sum)| (counts.iter().sum::<u32>(), off(*sum)));
        let mut seen: Vec<Vec<u32>> = found.landing.iter().map(|pack| counts(pack, kit.len())).collect();
        let order: Vec<_> = seen.iter().map(|counts| counts.iter().sum::<u32>()).collect();
        prop_assert!(order.is_sorted());
        let thick = |pack: &Pack| pack.sizes.iter().map(|size| kit[*size].0).sum::<i64>();
        let found_offs: Vec<_> = found.landing.iter().map(|pack| (u32::try_from(pack.sizes.len()).unwrap(), off(thick(pack)))).collect();
        let expected_offs: Vec<_> = expected.iter().map(|(counts, sum)| (counts.iter().sum::<u32>(), off(*sum))).collect();
        prop_assert_eq!(found_offs, expected_offs);
        prop_assert!(found.landing.iter().all(|pack| (in_millimetres(pack.thickness()) * 1000.0 - f64::from(i32::try_from(thick(pack)).unwrap())).abs() < 1e-6));
        let mut wanted_counts: Vec<Vec<u32>> = expected.iter().map(|(counts, _)| counts.clone()).collect();
        seen.sort();
        wanted_counts.sort();
        prop_assert_eq!(seen, wanted_counts);
        // Where nothing lands, the nearest is as near as any.
        if found.landing.is_empty() {
            let beyond = |thickness: i64| (least - play(thickness)).max(play(thickness) - least - width);
            let best = all.iter().map(|(_, sum)| beyond(*sum)).min().unwrap();
            let nearest = found.nearest.as_ref().map_or(0, thick);
            prop_assert_eq!(beyond(nearest), best);
        }
    }

    /// A stack written part by part with its signs is the sum of its parts, in either system: parts from 0.01 mm, below which none is read.
    #[test]
    fn a_stack_is_the_sum_of_its_lines(parts in proptest::collection::vec((any::<bool>(), 10_u32..90_000, 0_u32..40, 1_u32..4), 1..6), metric in any::<bool>()) {
        let system = if metric { System::Metric } else { System::Inch };
        let line = |(plus, length, off, count): &(bool, u32, u32, u32)| {
            let sign = if *plus { '+' } else { '-' };
            format!("{sign} part {:.3} mm ±{:.3} x{count}", f64::from(*length) / 1000.0, f64::from(*off) / 1000.0)
        };
        let text = parts.iter().map(line).collect::<Vec<_>>().join("\n");
        let (stack, _) = read::stack(&Typed::new(text, system));
        let sum: f64 = parts.iter().map(|(plus, length, _, count)| f64::from(*length * count) / 1000.0 * if *plus { 1.0 } else { -1.0 }).sum();
        prop_assert!((in_millimetres(stack.gap()) - sum).abs() < 1e-9);
        let worst: f64 = parts.iter().map(|(_, _, off, count)| f64::from(*off * count) / 1000.0).sum();
        prop_assert!((in_millimetres(stack.worst_case()) - worst).abs() < 1e-9);
        prop_assert!(stack.root_sum_square() <= stack.worst_case() + millimetres(1e-12));
    }

    /// Any text in any of the three is read or refused, and never more than refused.
    #[test]
    fn any_text_is_read_or_refused(text in crate::any_job::text(), metric in any::<bool>()) {
        let typed = Typed::new(text, if metric { System::Metric } else { System::Inch });
        let (Stack { parts }, errors) = read::stack(&typed);
        prop_assert!(parts.is_empty() || !parts.iter().any(|part| part.length < Length::default()) || !errors.is_empty());
        let _ = (wanted::play(&typed), wanted::fit(&typed), Readings::read(&typed, &limits::FIT_DIAMETER));
        let (kit, _) = read::kit(&typed);
        prop_assert!(kit.iter().all(|shim| shim.thickness > Length::default() && shim.left > 0));
    }

    /// A shaft warmed with its bore keeps its clearance by the closed form, and one of the same material grows with it.
    #[test]
    fn a_warm_fit_is_the_closed_form(bore in 5_000_u32..200_000, off in -80_i32..200, warmer in -60.0..120.0_f64, a in 0_usize..6, b in 0_usize..6) {
        let all = [Material::Steel, Material::CastIron, Material::Aluminium, Material::Magnesium, Material::Bronze, Material::Brass];
        let (bore, off) = (f64::from(bore) / 1000.0, f64::from(off) / 1000.0);
        let one = |mm: f64| Readings::read(&Typed::new(format!("{mm:.3} mm"), System::Metric), &limits::FIT_DIAMETER).unwrap();
        let seat = Seat { bore: one(bore), shaft: one(bore - off) };
        let by = |material: Material| 1.0 + material.growth_ppm_per_k() * 1e-6 * warmer;
        let wanted = bore * by(all[a]) - (bore - off) * by(all[b]);
        prop_assert!((in_millimetres(seat.clearance_warm([all[a], all[b]], warmer)) - wanted).abs() < 1e-9);
        // Warmed as far as the oven says, the bore clears the shaft by the room there should be.
        if let Some(oven) = seat.oven(all[a], temperature::bench()) {
            let open = all[a].growth(seat.bore.mean(), temperature::warmer_k(oven, temperature::bench()));
            prop_assert!((in_millimetres(open) + off - ROOM_MM).abs() < 1e-9);
        }
    }

    /// Every field is as wide as its grade, a hole from C to H lies as far above the size as its shaft lies below, and a fit is as wide
    /// as both.
    #[test]
    fn fields_hang_together(letter in 0_usize..15, grade in 4_usize..13, other in 4_usize..13, size in 0.5..250.0_f64) {
        let letters = ["c", "d", "e", "f", "g", "h", "js", "k", "m", "n", "p", "r", "s", "t", "u"];
        let name = letters[letter];
        let step = Step::of(size).unwrap();
        let width = |grade| millimetres(step.tolerance(grade).unwrap() * 1e-3);
        let code = Code::read(&format!("H{other}/{name}{grade}")).unwrap();
        let Ok([hole, shaft]) = code.fields(millimetres(size)) else { return Ok(()) };
        prop_assert!((shaft.width() - width(grade)).abs() < millimetres(1e-9) && hole.width() == width(other) && hole.lower == Length::default());
        let range = Wanted::Code(code).range(millimetres(size)).unwrap();
        prop_assert!((range.greatest - range.least - width(grade) - width(other)).abs() < millimetres(1e-9));
        if letter < 6 {
            let turned = Code::read(&format!("{}{grade}/h{other}", name.to_uppercase())).unwrap();
            let [hole, _] = turned.fields(millimetres(size)).unwrap();
            prop_assert!((hole.lower + shaft.upper).abs() < millimetres(1e-9));
        }
    }
}
