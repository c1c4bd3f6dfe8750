//! What holds of shims and stacks whatever is typed: the search against trying everything, ways of writing against one another.

use layshaft::fits::shims::{MOST_IN_A_PACK, Pack, search};
use layshaft::fits::{PlayRange, Shim, ShimsGo, Stack, read};
use layshaft::units::common::{in_millimetres, millimetres};
use layshaft::units::{Length, System, Typed};
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

    /// A stack written part by part with its signs is the sum of its parts, in either system.
    #[test]
    fn a_stack_is_the_sum_of_its_lines(parts in proptest::collection::vec((any::<bool>(), 1_u32..90_000, 0_u32..40, 1_u32..4), 1..6), metric in any::<bool>()) {
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
        let _ = read::range(&typed);
        let (kit, _) = read::kit(&typed);
        prop_assert!(kit.iter().all(|shim| shim.thickness > Length::default() && shim.left > 0));
    }
}
