//! What must hold of every tyre text: written and read again it is the same, it grows with its numbers, and no text panics.

use layshaft::problem::Explain;
use layshaft::tyre::size::{Commercial, Construction, Form, Hundredths, Prefix, Rim, Service, Size};
use layshaft::tyre::{self, Basis, OmittedAspect, dimension, service};
use layshaft::units::common::{in_millimetres, millimetres};
use layshaft::units::{System, unit};
use proptest::prelude::*;
use proptest::sample::select;

fn config() -> ProptestConfig {
    ProptestConfig { cases: 256, failure_persistence: None, ..ProptestConfig::default() }
}

fn construction() -> impl Strategy<Value = Construction> {
    select(vec![Construction::Radial, Construction::Diagonal, Construction::BiasBelted])
}

fn code() -> impl Strategy<Value = Rim> {
    (16_u16..=60).prop_map(|halves| Rim::Code(halves * 5))
}

fn rim() -> impl Strategy<Value = Rim> {
    prop_oneof![code(), (200_u16..=650).prop_map(Rim::Millimetres)]
}

fn symbol() -> impl Strategy<Value = char> {
    select("BCDEFGHJKLMNPQRSTUVWYZ".chars().collect::<Vec<_>>())
}

/// What may stand behind a size; a lone letter only where it cannot be taken for a load range.
fn service() -> impl Strategy<Value = Service> {
    let description = prop_oneof![
        Just((None, None, None, false)),
        (0_u16..=279, proptest::option::of(0_u16..=279), proptest::option::of(symbol())).prop_map(|(one, two, speed)| (
            Some(one),
            two,
            speed,
            false
        )),
        select(vec!['P', 'Q', 'S', 'T', 'V', 'W', 'Y']).prop_map(|speed| (None, None, Some(speed), false)),
        (0_u16..=279, proptest::option::of(0_u16..=279), symbol()).prop_map(|(one, two, speed)| (Some(one), two, Some(speed), true)),
        symbol().prop_map(|speed| (None, None, Some(speed), true)),
    ];
    let range = proptest::option::of(select("BCDEFGHJKLMN".chars().collect::<Vec<_>>()));
    let commercial = proptest::option::of(Just(Commercial::Lt));
    (description, commercial, range, proptest::option::of(1_u8..=24), any::<bool>(), any::<bool>()).prop_map(
        |((load_index, dual_index, speed, beyond), commercial, load_range, ply, reinforced, winter)| Service {
            load_index,
            dual_index,
            speed,
            beyond,
            commercial,
            load_range,
            ply,
            reinforced,
            winter,
        },
    )
}

fn size() -> impl Strategy<Value = Size> {
    let prefix = proptest::option::of(select(vec![Prefix::Passenger, Prefix::LightTruck, Prefix::Trailer, Prefix::Temporary]));
    let early = || proptest::option::of(select("HNPQSTUVWYZ".chars().collect::<Vec<_>>()));
    let metric = prop_oneof![(100_u16..=455, (20_u8..=100).prop_map(Some)), (100_u16..=295, Just(None))]
        .prop_map(|(width_mm, aspect_percent)| Form::Metric { width_mm, aspect_percent });
    let flotation =
        (1_800_u16..=5_400, 500_u16..=2_500).prop_map(|(d, w)| Form::Flotation { diameter: Hundredths(d), width: Hundredths(w) });
    let alpha = (select("ABCDEFGHJKLMN".chars().collect::<Vec<_>>()), 45_u8..=83)
        .prop_map(|(letter, series_percent)| Form::Alpha { letter, series_percent });
    let numeric = (400_u16..=1_400).prop_map(|width| Form::Numeric { width: Hundredths(width) });
    let dual =
        (400_u16..=1_300, 1_u16..=75).prop_map(|(first, more)| Form::Dual { first: Hundredths(first), second: Hundredths(first + more) });
    let plain = (None::<Prefix>, None::<char>);
    let any_form = prop_oneof![
        (metric.prop_map(|form| (true, form)), prefix, early()).prop_map(|((_, form), prefix, early)| (form, prefix, early)),
        (flotation, early()).prop_map(|(form, early)| (form, None, early)),
        alpha.prop_map(move |form| (form, plain.0, plain.1)),
        (prop_oneof![numeric, dual], early()).prop_map(|(form, early)| (form, None, early)),
    ];
    (any_form, construction(), rim(), service()).prop_map(|((form, prefix, early_speed), construction, rim, service)| Size {
        prefix,
        form,
        construction,
        early_speed,
        rim,
        service,
    })
}

proptest! {
    #![proptest_config(config())]

    #[test]
    fn written_and_read_again_is_the_same(size in size()) {
        let written = size.to_string();
        match tyre::read(&written, System::Inch) {
            Ok(tyre) => {
                prop_assert_eq!(tyre.size(), Some(&size), "{}", written);
                // As a person may type it.
                let loose = tyre::read(&format!("  {} ", written.to_lowercase().replace('.', ",")), System::Metric).unwrap();
                prop_assert_eq!(loose.size(), Some(&size), "{}", written);
            }
            // Some letter sizes have no known dimensions, some rims are larger than the tyre: both are read and refused by name.
            Err(tyre::TyreError::UnknownLetter(size) | tyre::TyreError::RimTooLarge(size)) => prop_assert_eq!(size, written),
            Err(error) => prop_assert!(false, "{}: {}", written, error.what()),
        }
    }

    #[test]
    fn a_metric_tyre_grows_with_aspect_and_rim(width in 100_u16..=455, aspect in 20_u8..=95, more in 1_u8..=5, rim in 8_u16..=29) {
        let across = |aspect: u8, rim: u16| in_millimetres(tyre::read(&format!("{width}/{aspect}R{rim}"), System::Inch).unwrap().diameter().unwrap().value);
        prop_assert!(across(aspect + more, rim) > across(aspect, rim));
        prop_assert!(across(aspect, rim + 1) > across(aspect, rim));
    }

    #[test]
    fn a_ruled_numeric_tyre_grows_with_its_rim(width in 20_u16..=70, rim in 8_u16..=29) {
        // By the rule, which stands beside a table's figure.
        let across = |rim: u16| {
            let tyre = tyre::read(&format!("{}R{rim}", Hundredths(width * 20)), System::Inch).unwrap();
            let dimensions = tyre.dimensions().unwrap();
            let ruled = dimensions.other_diameters.iter().chain([&dimensions.diameter]).find(|of| of.basis == Basis::Approximate);
            ruled.unwrap().value
        };
        prop_assert!(across(rim + 1) > across(rim));
    }

    #[test]
    fn a_beaded_edge_size_is_written_as_it_is_read(mm in 500_u16..=1_100, wide in 55_u16..=190, inches in 20_u16..=42, quarters in 8_u16..=32) {
        let fraction = ["", " 1/4", " 1/2", " 3/4"][usize::from(quarters % 4)];
        for written in [format!("{mm}x{wide}"), format!("{inches}x{}{fraction}", quarters / 4)] {
            match tyre::read(&written, System::Inch) {
                Ok(tyre) => prop_assert_eq!(tyre.size().unwrap().to_string(), written),
                Err(error) => prop_assert!(false, "{}: {}", written, error.what()),
            }
        }
    }

    #[test]
    fn a_standing_radius_rolls_more_than_its_circle_and_less_than_the_free_one(standing in 275_u16..=315, alone in any::<bool>()) {
        let text = if alone { format!("SLR {standing} mm") } else { format!("195/65R15 SLR {standing} mm") };
        let rolled = in_millimetres(tyre::read(&text, System::Inch).unwrap().rolling().circumference);
        prop_assert!(rolled > std::f64::consts::TAU * f64::from(standing));
        prop_assert!(alone || rolled < std::f64::consts::PI * 635.0);
    }

    #[test]
    fn the_rounded_rule_is_within_a_millimetre_of_the_exact_one(width in 100_u16..=455, aspect in 20_u8..=100, tenths in 16_u16..=60) {
        let size = tyre::read(&format!("{width}/{aspect}R{}", Rim::Code(tenths * 5)), System::Inch).unwrap();
        let dimensions = size.dimensions().unwrap();
        let exact = dimensions.other_diameters.last().unwrap().value;
        // Half a millimetre of rim and twice half a millimetre of height.
        prop_assert!((in_millimetres(dimensions.diameter.value) - in_millimetres(exact)).abs() <= 1.5 + 1e-9);
    }

    #[test]
    fn any_text_gives_a_tyre_or_a_sentence(text in "\\PC{0,4096}") {
        answer(&text);
    }

    #[test]
    fn any_text_like_a_tyre_gives_a_tyre_or_a_sentence(text in "[PLTSR0-9/.,xX× \"()+-]{0,40}( mm| in| turns| /mile|rolls|dia){0,3}[0-9., ]{0,8}( m| km| ft)?") {
        answer(&text);
    }

    #[test]
    fn wear_shortens_the_roll_by_its_own_circle(tenths in 0_u16..=200) {
        let new = tyre::read("195/65R15", System::Inch).unwrap().rolling();
        let lost = f64::from(tenths) / 10.0;
        let worn = new.worn(millimetres(lost));
        let shorter = in_millimetres(new.circumference) - in_millimetres(worn.circumference);
        prop_assert!((shorter - std::f64::consts::TAU * lost).abs() < 1e-6);
    }
}

/// Reading never panics, and whatever comes of it can be said.
fn answer(text: &str) {
    for (system, omitted) in [(System::Inch, OmittedAspect::Eighty), (System::Metric, OmittedAspect::EightyTwo)] {
        match tyre::read_with(text, system, omitted) {
            Ok(tyre) => {
                let rolling = tyre.rolling();
                assert!(rolling.circumference.value.is_finite() && rolling.circumference > millimetres(0.0), "{text}");
                assert!(!rolling.working.is_empty());
                let _ = (tyre.alternatives(), tyre.diameter(), tyre.speed_limit(), tyre.load_limit(), rolling.worn(millimetres(5.0)));
            }
            Err(error) => assert!(!error.what().is_empty() && !error.what_to_do().is_empty()),
        }
    }
}

#[test]
fn a_measurement_goes_before_the_rule() {
    let both = tyre::read("185/70R14 rolls 1865 mm", System::Inch).unwrap();
    assert_eq!((both.rolling().how, both.alternatives()[0].how), (tyre::How::Circumference, tyre::How::Radial));
    assert!((in_millimetres(both.rolling().circumference) - 1865.0).abs() < 1e-9);
}

/// Every form that the sentence of help names, and the ways people turn them about. Worked by hand, in mm.
#[test]
fn every_form_of_a_measurement_is_read() {
    let mile_mm = 1_609_344.0;
    for (text, circumference_mm) in [
        ("rolls 1,878 mm", 1_878.0),
        ("1878 mm rolling circumference", 1_878.0),
        ("circumference 74 in", 74.0 * 25.4),
        ("Circumference: 1,88 m", 1_880.0),
        ("diameter 616 mm", 3.05 * 616.0),
        ("24 1/4 in dia", 3.05 * 24.25 * 25.4),
        ("loaded radius 11.4 in", std::f64::consts::TAU * 11.4 * 25.4 * (1.0 - 0.07 / 3.0) / 0.93),
        ("rolling radius 11.4 in", std::f64::consts::TAU * 11.4 * 25.4),
        ("856 turns/mile", mile_mm / 856.0),
        ("856 revs per mile", mile_mm / 856.0),
        ("532 rev/km", 1e6 / 532.0),
        ("10 turns 18.79 m", 1_879.0),
        ("18.79 m in 10 turns", 1_879.0),
        ("10 turns 61 ft 7 3/4 in", 30.48 * 61.0 + 2.54 * 7.75),
        ("10 turns 740 in", 74.0 * 25.4),
    ] {
        let found = in_millimetres(tyre::read(text, System::Inch).unwrap().rolling().circumference);
        assert!((found - circumference_mm).abs() < 1e-6, "{text}: {found}");
    }
}

/// Load indices step through a series of preferred numbers: eighty steps are ten times the mass, to the rounding of the table.
#[test]
fn load_indices_repeat_every_eighty_steps() {
    let kg = |index| unit::KG.number(service::load_of(index).unwrap());
    for index in 50..=70 {
        let times = kg(index + 80) / kg(index);
        assert!((times - 10.0).abs() <= 0.03, "{index}: {times}");
    }
    assert!((50..150).all(|index| kg(index) < kg(index + 1)));
    assert_eq!((service::load_of(49), service::load_of(151)), (None, None));
}

#[test]
fn a_numeric_width_chooses_its_series() {
    // European Commission vehicle simulator 4.3.7: last digit 5 → 82 %, else 92 %; balloon tyres on 16 in and more (from memory) 100 %.
    let percent = |width, rim: u16| dimension::numeric_series(Hundredths(width), Rim::Code(10 * rim)).percent;
    assert_eq!(
        [(600, 15), (775, 14), (732, 14), (525, 18), (600, 16), (525, 12)].map(|(width, rim)| percent(width, rim)),
        [92, 82, 92, 100, 100, 92]
    );
}

/// The texts the fuzz targets start from are all answered.
#[test]
fn every_seed_is_answered() {
    let seeds = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("fuzz/seeds");
    let mut count = 0;
    for room in std::fs::read_dir(seeds).unwrap() {
        for seed in std::fs::read_dir(room.unwrap().path()).unwrap() {
            answer(&std::fs::read_to_string(seed.unwrap().path()).unwrap());
            count += 1;
        }
    }
    assert!(count > 40, "{count} seeds");
}
