//! What always holds of shelves and of files written and read: nothing is lost, nothing is half taken, ids stay.

use layshaft::catalogue::import::{self, Differing};
use layshaft::catalogue::{Axle, Catalogue, Entry, GearSet, Kind, Shelf, SpeedoEntry, TyreEntry, built_in, export, file, saved};
use layshaft::gearing::Layout;
use layshaft::speedometer::{Hand, Role, SpeedoGear};
use proptest::prelude::*;

fn config() -> ProptestConfig {
    ProptestConfig { cases: 128, failure_persistence: None, ..ProptestConfig::default() }
}

/// A text as a field of one line can hold it.
fn words() -> impl Strategy<Value = String> {
    let any = prop::collection::vec(any::<char>(), 0..12).prop_map(String::from_iter);
    let nasty = "['=+@\\-\"#,;\t <>&a-c]{0,8}";
    prop_oneof![any, nasty.prop_map(String::from)].prop_map(|text| text.replace(['\r', '\n'], " ").trim().to_owned())
}

fn name() -> impl Strategy<Value = String> {
    words().prop_filter("a name", |name| !name.is_empty())
}

fn pair() -> impl Strategy<Value = String> {
    (8..=150_u16, 8..=150_u16, prop::sample::select(vec!["/", ":", " ", "-"])).prop_map(|(a, b, mark)| format!("{a}{mark}{b}"))
}

fn gear_set() -> impl Strategy<Value = GearSet> {
    let layout = prop::sample::select(vec![Layout::InputReduced, Layout::OutputReduced, Layout::TwoShaft]);
    let reverse = prop_oneof![Just((String::new(), String::new())), (pair(), pair()), (pair(), Just("19".to_owned()))];
    let texts = (name(), words(), words(), any::<bool>());
    (texts, layout, pair(), prop::collection::vec(pair(), 1..=8), reverse).prop_map(|(texts, layout, constant, gears, reverse)| GearSet {
        id: String::new(),
        name: texts.0,
        maker: texts.1,
        layout,
        constant: if layout == Layout::TwoShaft { String::new() } else { constant },
        gears,
        reverse: reverse.0,
        idler: reverse.1,
        note: texts.2,
        in_stock: texts.3,
        own: false,
    })
}

fn axle() -> impl Strategy<Value = Axle> {
    let drive = prop_oneof![pair(), (1..=19_u32, 0..1000_u32).prop_map(|(whole, behind)| format!("{whole}.{behind:03}"))];
    (drive, words(), any::<bool>()).prop_map(|(drive, note, in_stock)| Axle { drive, note, in_stock, ..Axle::default() })
}

fn tyre() -> impl Strategy<Value = TyreEntry> {
    let sizes: Vec<String> = TyreEntry::built_in().iter().map(|tyre| tyre.designation.clone()).collect();
    let designation = prop::sample::select(sizes);
    (designation, words(), any::<bool>()).prop_map(|(designation, note, in_stock)| TyreEntry {
        designation,
        note,
        in_stock,
        ..TyreEntry::default()
    })
}

fn speedometer_gear() -> impl Strategy<Value = SpeedoEntry> {
    let teeth = SpeedoGear::LEAST..=SpeedoGear::GREATEST;
    let role =
        prop_oneof![Just((Role::Drive, None)), Just((Role::Driven, None)), teeth.clone().prop_map(|second| (Role::Adapter, Some(second)))];
    let hand = prop::option::of(prop::sample::select(vec![Hand::Left, Hand::Right]));
    (name(), role, teeth, name(), hand, words(), any::<bool>()).prop_map(|(name, (role, second), teeth, housing, hand, note, in_stock)| {
        let gear = SpeedoGear { name, role, teeth, second, housing, hand, in_stock, note };
        SpeedoEntry { id: String::new(), gear, own: false }
    })
}

fn several<S: Strategy>(entry: S) -> impl Strategy<Value = Vec<S::Value>> {
    prop::collection::vec(entry, 0..6)
}

/// The same file as another spreadsheet writes it: its own separator and line ends, a mark in front, columns turned about.
fn written_otherwise(file: &str, delimiter: u8, turn: usize) -> String {
    let mut reader = csv::ReaderBuilder::new().has_headers(false).from_reader(file.as_bytes());
    let terminator = csv::Terminator::CRLF;
    let mut writer =
        csv::WriterBuilder::new().delimiter(delimiter).terminator(terminator).quote_style(csv::QuoteStyle::Always).from_writer(vec![]);
    for record in reader.records() {
        let mut cells: Vec<String> = record.unwrap().iter().map(str::to_owned).collect();
        let places = cells.len();
        cells.rotate_left(turn % places);
        writer.write_record(&cells).unwrap();
    }
    format!("\u{feff}{}", String::from_utf8(writer.into_inner().unwrap()).unwrap())
}

/// Writing, reading into another shop's catalogue, and reading into the same one.
fn check_there_and_back<T: Entry + std::fmt::Debug>(entries: Vec<T>, delimiter: u8, turn: usize) -> Result<(), TestCaseError> {
    let shelf = Shelf::<T>::built_in().add_all(entries);
    let text = export::file(shelf.own());
    for text in [text.clone(), written_otherwise(&text, delimiter, turn)] {
        let plan = import::plan(&text, &Shelf::<T>::built_in()).unwrap();
        prop_assert_eq!(&plan.refused, &[]);
        let there = plan.apply(&Shelf::built_in(), Differing::Replace);
        prop_assert_eq!(there.own(), shelf.own());
        let again = import::plan(&text, &shelf).unwrap();
        prop_assert_eq!(again.same.len(), shelf.own().len());
        prop_assert!(again.new.is_empty() && again.different.is_empty());
    }
    Ok(())
}

proptest! {
    #![proptest_config(config())]

    #[test]
    fn a_file_of_gear_sets_reads_back(entries in several(gear_set()), delimiter in prop::sample::select(vec![b',', b';', b'\t']), turn in 0..20_usize) {
        check_there_and_back(entries, delimiter, turn)?;
    }

    #[test]
    fn a_file_of_axles_reads_back(entries in several(axle()), delimiter in prop::sample::select(vec![b',', b';', b'\t']), turn in 0..20_usize) {
        check_there_and_back(entries, delimiter, turn)?;
    }

    #[test]
    fn a_file_of_tyres_reads_back(entries in several(tyre()), delimiter in prop::sample::select(vec![b',', b';', b'\t']), turn in 0..20_usize) {
        check_there_and_back(entries, delimiter, turn)?;
    }

    #[test]
    fn a_file_of_speedometer_gears_reads_back(entries in several(speedometer_gear()), delimiter in prop::sample::select(vec![b',', b';', b'\t']), turn in 0..20_usize) {
        check_there_and_back(entries, delimiter, turn)?;
    }

    #[test]
    fn what_is_kept_is_read_again(sets in several(gear_set()), axles in several(axle()), tyres in several(tyre()), gears in several(speedometer_gear())) {
        let built_in = Catalogue::built_in();
        let catalogue = Catalogue {
            gear_sets: built_in.gear_sets.add_all(sets),
            axles: built_in.axles.add_all(axles),
            tyres: built_in.tyres.add_all(tyres),
            speedometer_gears: built_in.speedometer_gears.add_all(gears),
        };
        prop_assert_eq!(saved::from_text(&saved::to_text(&catalogue)), Ok(catalogue));
    }

    #[test]
    fn no_cell_of_a_file_is_a_formula(entries in several(gear_set())) {
        let text = export::file(Shelf::<GearSet>::built_in().add_all(entries).own());
        let mut reader = csv::ReaderBuilder::new().from_reader(text.as_bytes());
        for record in reader.records() {
            for cell in &record.unwrap() {
                prop_assert!(!cell.starts_with(['=', '+', '-', '@', '\t', '\r']), "{}", cell);
            }
        }
    }

    #[test]
    fn no_text_stops_the_program(text in prop::collection::vec(any::<char>(), 0..2_000).prop_map(String::from_iter), head in 0..5_usize) {
        let kind = Kind::ALL.get(head).copied();
        let text = kind.map_or_else(String::new, export::header) + &text;
        let catalogue = Catalogue::built_in();
        if let Ok(plan) = catalogue.plan(&text) {
            let summary = plan.summary();
            let after = catalogue.apply(&plan, Differing::Replace);
            prop_assert_eq!(after.own_file(summary.kind).lines().count(), 1 + summary.new, "a line is taken whole or not at all");
        }
        let _ = (saved::from_text(&text), file::text(text.as_bytes()));
    }

    #[test]
    fn no_bytes_stop_the_program(bytes in prop::collection::vec(any::<u8>(), 0..8_000)) {
        if let Ok(text) = file::text(&bytes) {
            let _ = Catalogue::built_in().plan(&text);
        }
    }

    #[test]
    fn garbled_lines_are_taken_whole_or_not_at_all(cuts in prop::collection::vec((any::<prop::sample::Index>(), any::<char>()), 1..40)) {
        let mut text: Vec<char> = built_in::text(Kind::GearSets).chars().collect();
        for (at, with) in cuts {
            let at = at.index(text.len());
            text[at] = with;
        }
        let text = String::from_iter(text);
        if let Ok(plan) = import::plan::<GearSet>(&text, &Shelf::empty()) {
            prop_assert!(plan.new.iter().all(|planned| planned.entry.gearbox().is_ok()));
            prop_assert!(plan.refused.iter().all(|refused| !refused.problems.is_empty() && !refused.text.is_empty()));
        }
    }

    #[test]
    fn ids_stay_and_names_differ(entries in prop::collection::vec(gear_set(), 1..6), pick in any::<prop::sample::Index>(), other in gear_set()) {
        let shelf = Shelf::<GearSet>::built_in().add_all(entries);
        let ids = |shelf: &Shelf<GearSet>| shelf.all().map(|set| set.id.clone()).collect::<Vec<_>>();
        let id = pick.get(shelf.own()).id.clone();
        let edited = shelf.edit(&id, other).unwrap();
        prop_assert_eq!(ids(&edited), ids(&shelf));
        let (copied, copy) = edited.copy(&id).unwrap();
        prop_assert_ne!(&copy, &id);
        let mut names: Vec<_> = copied.all().map(Entry::key).collect();
        names.sort();
        names.dedup();
        prop_assert_eq!(names.len(), copied.len());
        prop_assert_eq!(copied.delete(&copy).unwrap(), edited);
    }
}
