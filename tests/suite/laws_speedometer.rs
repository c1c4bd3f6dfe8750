//! What must hold of every speedometer: the shelf search equals brute force, what is read back is what was shown, and a road
//! check finds the error that was put in.

use layshaft::gearing::teeth::decimal;
use layshaft::problem::Explain;
use layshaft::speedometer::dial::per_mile;
use layshaft::speedometer::direction::cable_turning;
use layshaft::speedometer::law::BANDS;
use layshaft::speedometer::shelf::{adapter_fits, fits};
use layshaft::speedometer::{
    Adapter, Dial, Hand, Judgement, Reading, Role, SpeedoGear, Speedometer, Tap, Train, Turning, Verdict, Wanted, rank_shelf, read,
    solve_road_check,
};
use layshaft::units::{Length, System, Velocity, unit};
use proptest::prelude::*;
use proptest::sample::select;

fn config() -> ProptestConfig {
    ProptestConfig { cases: 256, failure_persistence: None, ..ProptestConfig::default() }
}

fn mph(value: f64) -> Velocity {
    unit::MPH.of(value)
}

fn in_mph(speed: Velocity) -> f64 {
    unit::MPH.number(speed)
}

fn gear() -> impl Strategy<Value = SpeedoGear> {
    let role = select(vec![Role::Drive, Role::Driven, Role::Adapter]);
    let hand = proptest::option::of(select(vec![Hand::Left, Hand::Right]));
    (role, 4_u16..=60, 4_u16..=60, select(vec!["A", "B", ""]), hand, any::<bool>()).prop_map(
        |(role, teeth, second, housing, hand, in_stock)| SpeedoGear {
            name: format!("{} {teeth}", role.word()),
            role,
            teeth,
            second: (role == Role::Adapter).then_some(second),
            housing: housing.into(),
            hand,
            in_stock,
            own: !in_stock,
            note: String::new(),
        },
    )
}

/// Every three gears of the shelf tried, right or wrong: error with the adapter's presence and the places, as the ranking orders them.
fn brute_force(shelf: &[SpeedoGear], wanted: &Wanted) -> Vec<(f64, bool, usize, usize, Option<usize>)> {
    let mut all = Vec::new();
    let usable = |at: &usize| shelf[*at].in_stock || !wanted.in_stock;
    for drive in (0..shelf.len()).filter(usable).filter(|at| wanted.drive.is_none_or(|chosen| chosen == *at)) {
        for driven in (0..shelf.len()).filter(usable) {
            for adapter in std::iter::once(None).chain((0..shelf.len()).filter(usable).map(Some)) {
                let (a, b) = (&shelf[drive], &shelf[driven]);
                let paired = a.role == Role::Drive && b.role == Role::Driven && fits(a, b);
                let adapted =
                    adapter.is_none_or(|at| wanted.adapters && shelf[at].role == Role::Adapter && adapter_fits(&shelf[at], &a.housing));
                if paired && adapted {
                    let through = adapter.map_or(1.0, |at| f64::from(shelf[at].teeth) / f64::from(shelf[at].second.unwrap()));
                    let reads = (wanted.shaft / wanted.dial.constant()).value * f64::from(a.teeth) / f64::from(b.teeth) * through;
                    all.push((reads - 1.0, adapter.is_some(), drive, driven, adapter));
                }
            }
        }
    }
    all.sort_by(|a, b| a.0.abs().total_cmp(&b.0.abs()));
    all
}

proptest! {
    #![proptest_config(config())]

    #[test]
    fn the_search_equals_brute_force(
        shelf in proptest::collection::vec(gear(), 0..24), shaft in 500.0..6_000.0_f64, adapters: bool, in_stock: bool, chosen in proptest::option::of(0_usize..24), keep in 0_usize..40,
    ) {
        let wanted = Wanted { shaft: per_mile(shaft), dial: Dial::default(), drive: chosen, adapters, in_stock, keep };
        let (found, forced) = (rank_shelf(&shelf, &wanted), brute_force(&shelf, &wanted));
        prop_assert_eq!(found.judged, forced.len());
        prop_assert_eq!(found.best.len(), keep.min(forced.len()));
        // The same errors in the same order; equal errors may come from other gears, so the gears are checked through their error.
        for (candidate, forced) in found.best.iter().zip(&forced) {
            prop_assert!((candidate.error.abs() - forced.0.abs()).abs() < 1e-9);
            prop_assert!(fits(&shelf[candidate.drive], &shelf[candidate.driven]));
            prop_assert_eq!((candidate.train.drive(), candidate.train.driven()), (shelf[candidate.drive].teeth, shelf[candidate.driven].teeth));
        }
        // Keeping more never changes what stands before.
        let more = rank_shelf(&shelf, &Wanted { keep: usize::MAX, ..wanted });
        prop_assert_eq!(&more.best[..found.best.len()], &found.best[..]);
    }

    #[test]
    fn what_is_shown_leads_back_to_what_is_true(shaft in 500.0..6_000.0_f64, drive in 4_u16..=60, driven in 4_u16..=60, speed in 1.0..200.0_f64) {
        let fitted = Speedometer { shaft: per_mile(shaft), train: Train::new(drive, driven).unwrap(), dial: Dial::default() };
        prop_assert!((in_mph(fitted.true_speed(fitted.indicated(mph(speed)))) / speed - 1.0).abs() < 1e-12);
        // The driven count wanted, if it could be cut, would read true: N / wanted = 1 / reads.
        prop_assert!((fitted.driven_wanted() / f64::from(driven) / fitted.reads() - 1.0).abs() < 1e-12);
        // A road check that finds what is thought changes nothing.
        prop_assert!((Speedometer::found_by_road(fitted.train, fitted.dial, fitted.reads()).shaft / fitted.shaft - <_>::from(1.0)).value.abs() < 1e-12);
        if let Some(better) = fitted.driven_to_fit(true) {
            prop_assert!(fitted.with(better).error() >= -1e-12, "never low");
        }
    }

    #[test]
    fn a_train_turns_as_its_exact_ratio(drive in 1_u16..=60, driven in 1_u16..=60, adapter in proptest::option::of((1_u16..=60, 1_u16..=60))) {
        let Some(train) = Train::new(drive, driven) else { return Ok(()) };
        let train = train.with_adapter(adapter.and_then(|(one, other)| Adapter::new(one, other)));
        prop_assert_eq!(train.turns().to_bits(), decimal(train.ratio()).to_bits());
    }

    #[test]
    fn a_road_check_finds_what_was_put_in(ratio in 0.8..1.25_f64, offset in -8.0..8.0_f64, speeds in proptest::collection::btree_set(20_u32..90, 2..8)) {
        let readings: Vec<Reading> = speeds.iter().map(|speed| f64::from(*speed)).map(|truth| Reading { dial: mph(ratio * truth + offset), truth: mph(truth) }).collect();
        let check = solve_road_check(&readings).unwrap();
        let line = check.line.unwrap();
        prop_assert!((line.slope - ratio).abs() < 1e-9);
        prop_assert!((in_mph(line.offset) - offset).abs() < 1e-7);
        prop_assert_eq!(check.residuals.len(), readings.len());
    }

    #[test]
    fn readings_that_are_no_speeds_never_panic(pairs in proptest::collection::vec((any::<f64>(), any::<f64>()), 0..6)) {
        let readings: Vec<Reading> = pairs.iter().map(|(dial, truth)| Reading { dial: mph(*dial), truth: mph(*truth) }).collect();
        if let Err(error) = solve_road_check(&readings) {
            prop_assert!(!error.what().is_empty() && !error.what_to_do().is_empty());
        }
    }

    #[test]
    fn any_text_gives_an_answer_or_a_sentence(text in "\\PC{0,400}", digits in "[0-9 /x:;.,=a-z]{0,60}") {
        for text in [text, digits] {
            for system in [System::Inch, System::Metric] {
                let said = |error: layshaft::speedometer::read::SpeedometerTextError| assert!(!error.what().is_empty() && !error.what_to_do().is_empty());
                let _ = read::train(&text).map_err(said);
                let _ = read::dial(&text, system).map_err(said);
                let _ = read::readings(&text, system).map_err(said);
            }
        }
    }

    #[test]
    fn a_band_allows_exactly_what_it_says(at in 0_usize..BANDS.len(), truth in 1.0..300.0_f64, metric: bool) {
        let (rule, system) = (&BANDS[at], if metric { System::Metric } else { System::Inch });
        let step = mph(0.01);
        match rule.allowed(mph(truth), system) {
            None => prop_assert_eq!(rule.judge(mph(truth), mph(truth), system), Judgement::NotCovered),
            Some((least, greatest)) => {
                prop_assert!(!rule.judge(mph(truth), least, system).is_outside() && !rule.judge(mph(truth), greatest, system).is_outside());
                prop_assert!(matches!(rule.judge(mph(truth), least - step, system), Judgement::TooLow(_)));
                prop_assert!(matches!(rule.judge(mph(truth), greatest + step, system), Judgement::TooHigh(_)));
                let (from, to) = rule.true_range(greatest, system);
                prop_assert!((in_mph(from) - truth).abs() < 1e-6 && to >= from);
            }
        }
    }
}

#[track_caller]
fn check(readings: &[(f64, f64)], verdict: Verdict, ratio: f64, offset_mph: f64) {
    let readings: Vec<Reading> = readings.iter().map(|(dial, truth)| Reading { dial: mph(*dial), truth: mph(*truth) }).collect();
    let found = solve_road_check(&readings).unwrap();
    assert_eq!(found.verdict, verdict, "{found:?}");
    assert!((found.ratio - ratio).abs() < 5e-4, "{}", found.ratio);
    assert!((in_mph(found.offset) - offset_mph).abs() < 0.05, "{}", in_mph(found.offset));
}

/// Worked by hand: dial = ratio × true + offset.
#[test]
fn verdicts() {
    check(&[(30.0, 30.0), (50.0, 50.0), (70.0, 70.0)], Verdict::True, 1.0, 0.0);
    check(&[(33.0, 30.0), (55.0, 50.0), (77.0, 70.0)], Verdict::Ratio, 1.1, 0.0);
    check(&[(34.0, 30.0), (54.0, 50.0), (74.0, 70.0)], Verdict::Offset, 1.0, 4.0);
    check(&[(37.0, 30.0), (59.0, 50.0), (81.0, 70.0)], Verdict::RatioAndOffset, 1.1, 4.0);
    // One point, and equal points: 66 / 60 = 1.1; (66 + 67) / 120 = 1.1083.
    check(&[(66.0, 60.0)], Verdict::OneSpeed, 1.1, 0.0);
    check(&[(66.0, 60.0), (67.0, 60.0)], Verdict::OneSpeed, 133.0 / 120.0, 0.0);
    // The needle swings by 5 mph: Σdv / Σv² = (36·30 + 45·50 + 77·70) / 8300 = 8720 / 8300.
    let swinging: Vec<Reading> =
        [(36.0, 30.0), (45.0, 50.0), (77.0, 70.0)].map(|(dial, truth)| Reading { dial: mph(dial), truth: mph(truth) }).to_vec();
    let found = solve_road_check(&swinging).unwrap();
    assert_eq!(found.verdict, Verdict::Unsteady);
    assert!((found.ratio_through_zero - 8720.0 / 8300.0).abs() < 1e-9);
    // A dial that fell back names the reading.
    let fallen = [(60.0, 55.0), (50.0, 65.0)].map(|(dial, truth)| Reading { dial: mph(dial), truth: mph(truth) });
    let found = solve_road_check(&fallen).unwrap();
    assert_eq!((found.verdict, found.fell_back), (Verdict::Unsteady, vec![1]));
    // A tenth too high on 17 teeth wants 18.7.
    let high = solve_road_check(&[(33.0, 30.0), (77.0, 70.0)].map(|(dial, truth)| Reading { dial: mph(dial), truth: mph(truth) })).unwrap();
    assert!(high.verdict == Verdict::Ratio && (high.driven_wanted(17) - 18.7).abs() < 1e-9);
}

/// Worked by hand: a right-hand screw turning clockwise, held lengthwise, draws the teeth it meets towards the one who sees it turn
/// clockwise, here to the front. On the left of the shaft the driven gear's near side is its right: it moves forward, so seen from below
/// (along a cable that leaves upwards) it turns clockwise. Leaving downwards, or with the other hand, or driven the other way: the reverse.
#[test]
fn direction_of_the_cable() {
    let clockwise = Turning::Clockwise;
    assert_eq!(cable_turning(clockwise, Hand::Right, Tap::LeftUp), Turning::Clockwise);
    assert_eq!(cable_turning(clockwise, Hand::Right, Tap::LeftDown), Turning::Anticlockwise);
    assert_eq!(cable_turning(clockwise, Hand::Left, Tap::LeftUp), Turning::Anticlockwise);
    assert_eq!(cable_turning(Turning::Anticlockwise, Hand::Right, Tap::LeftUp), Turning::Anticlockwise);
    // Turned about the shaft: what leaves up on the left leaves right above, down on the right, left below.
    for tap in [Tap::AboveRight, Tap::RightDown, Tap::BelowLeft] {
        assert_eq!(cable_turning(clockwise, Hand::Right, tap), Turning::Clockwise);
    }
    assert_eq!(Turning::Clockwise.from_other_end(), Turning::Anticlockwise);
}

#[test]
fn typed_texts() {
    assert_eq!(read::train("7/17"), Ok(Train::new(7, 17).unwrap()));
    assert_eq!(read::train("7:17 x 20/18"), Ok(Train::new(7, 17).unwrap().with_adapter(Adapter::new(20, 18))));
    assert_eq!(read::dial("", System::Metric), Ok(None));
    assert_eq!(read::dial("1,000", System::Inch), Ok(Some(Dial::default())));
    let sender = read::dial("8 pulses/turn, 8,000 pulses/mile", System::Metric).unwrap().unwrap();
    assert!((sender.constant() / Dial::default().constant() - <_>::from(1.0)).value.abs() < 1e-12);
    let readings = read::readings("60 57; 70 at 66.5\n60 in 63 s; 100 km/h 96 km/h", System::Inch).unwrap();
    let shown: Vec<(i64, i64)> = readings.iter().map(|reading| (tenths(reading.dial), tenths(reading.truth))).collect();
    // 3600 / 63 = 57.1 mph; 100 km/h = 62.1, 96 km/h = 59.7 mph.
    assert_eq!(shown, [(600, 570), (700, 665), (600, 571), (621, 597)]);
    let hundred_miles: Length = unit::MILE.of(100.0);
    assert!(hundred_miles.value > 0.0);
}

#[expect(clippy::cast_possible_truncation, reason = "a speed in tenths is small")]
fn tenths(speed: Velocity) -> i64 {
    (10.0 * in_mph(speed)).round() as i64
}
