//! What always holds of shelves and of files written and read: nothing is lost, nothing is half taken, ids stay.

use layshaft::catalogue::import::Differing;
use layshaft::catalogue::{Catalogue, Column, Entry, Holds, PartKind, file, saved, write};
use layshaft::gearing::Layout;
use layshaft::speedometer::SpeedoGear;
use layshaft::swap::BoxSize;
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

/// What a column can hold in an entry that can be used.
fn text_of(column: Column) -> BoxedStrategy<String> {
    let choice = |options: &[&str]| prop::sample::select(options.iter().map(|one| (*one).to_owned()).collect::<Vec<_>>()).boxed();
    let teeth = || (SpeedoGear::LEAST..=SpeedoGear::GREATEST).prop_map(|teeth| teeth.to_string()).boxed();
    match (column, column.about().holds) {
        (Column::Name | Column::Housing, _) => name().boxed(),
        (Column::Id, _) => Just(String::new()).boxed(),
        (Column::Idler, _) => prop_oneof![pair(), choice(&["", "19"])].boxed(),
        (Column::Drive, _) => {
            prop_oneof![pair(), (1..=19_u32, 0..1000_u32).prop_map(|(whole, behind)| format!("{whole}.{behind:03}"))].boxed()
        }
        (Column::Designation, _) => choice(&["185/70R14", "P195/75R14", "145/80R13"]),
        (Column::Teeth | Column::Second, _) => teeth(),
        (Column::Size(size), _) => choice(&["", size_text(size)]),
        (Column::Thickness, _) => choice(&["", "0.10 mm", "0.004 in"]),
        (_, Holds::Words) => words().boxed(),
        (_, Holds::Figure) => pair().boxed(),
        (_, Holds::Choice(choices)) => choice(&choices.options.iter().map(|(written, _)| *written).collect::<Vec<_>>()),
        (_, Holds::Price) => choice(&["", "0", "12.50", "1,250.00", "12,5"]),
        (_, Holds::Currency) => choice(&["", "EUR", "GBP"]),
        (_, Holds::Quantity) => choice(&["", "0", "1", "12"]),
        (_, Holds::Stock) => choice(&["yes", "no"]),
    }
}

/// A size of a case as it may be typed, whatever its bare numbers would be in.
fn size_text(size: BoxSize) -> &'static str {
    match size {
        BoxSize::Length | BoxSize::Mount | BoxSize::Lever | BoxSize::Nose => "600 mm",
        BoxSize::Spigot | BoxSize::Travel => "15 mm",
        BoxSize::InputSpline | BoxSize::OutputSpline => "10 x 1 1/8 in",
        BoxSize::Flange | BoxSize::Holes | BoxSize::Oil => "curlew six",
        BoxSize::Outline => "0: 6 in; 600 mm: 60 mm",
        BoxSize::Weight => "36 kg",
    }
}

/// An entry of a kind that can be used, something in every column that may hold something.
fn entry(kind: PartKind) -> impl Strategy<Value = Entry> {
    let texts: Vec<_> = kind.columns().map(text_of).collect();
    (texts, 1..=8_usize, any::<bool>()).prop_map(move |(texts, gears, reverse)| {
        let mut entry = kind.columns().zip(texts).fold(Entry::new(kind), |entry, (column, text)| entry.with(column, text));
        let mut blank: Vec<Column> = Column::GEARS.into_iter().skip(gears).collect();
        blank.extend((!reverse).then_some(Column::Reverse));
        blank.extend((entry.text(Column::Layout) == Layout::TwoShaft.id()).then_some(Column::Constant));
        blank.extend((entry.text(Column::Role) != "adapter").then_some(Column::Second));
        if entry.text(Column::Quantity) == "0" {
            entry.set(Column::InStock, "no");
        }
        for column in blank {
            entry.set(column, "");
        }
        entry
    })
}

fn any_kind() -> impl Strategy<Value = PartKind> {
    prop::sample::select(PartKind::ALL.to_vec())
}

/// Some entries of one kind.
fn several(kind: PartKind) -> impl Strategy<Value = Vec<Entry>> {
    prop::collection::vec(entry(kind), 0..6)
}

fn own(catalogue: &Catalogue, kind: PartKind) -> Vec<Entry> {
    catalogue.own(kind).cloned().collect()
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
fn check_there_and_back(kind: PartKind, entries: Vec<Entry>, delimiter: u8, turn: usize) -> Result<(), TestCaseError> {
    let catalogue = Catalogue::built_in().add_all(entries);
    let text = catalogue.own_file(kind);
    for text in [text.clone(), written_otherwise(&text, delimiter, turn)] {
        let plan = Catalogue::built_in().plan(&text).unwrap();
        prop_assert_eq!((plan.kind, &plan.refused), (kind, &vec![]));
        let there = Catalogue::built_in().apply(&plan, Differing::Replace);
        prop_assert_eq!(own(&there, kind), own(&catalogue, kind));
        let again = catalogue.plan(&text).unwrap();
        prop_assert_eq!(again.same.len(), catalogue.own(kind).count());
        prop_assert!(again.new.is_empty() && again.different.is_empty());
    }
    Ok(())
}

proptest! {
    #![proptest_config(config())]

    #[test]
    fn a_file_reads_back(
        (kind, entries) in any_kind().prop_flat_map(|kind| (Just(kind), several(kind))),
        delimiter in prop::sample::select(vec![b',', b';', b'\t']),
        turn in 0..20_usize,
    ) {
        check_there_and_back(kind, entries, delimiter, turn)?;
    }

    #[test]
    fn what_is_kept_is_read_again(entries in PartKind::ALL.map(several)) {
        let catalogue = entries.into_iter().fold(Catalogue::built_in(), |catalogue, entries| catalogue.add_all(entries));
        prop_assert_eq!(saved::from_text(&saved::to_text(&catalogue)), Ok(catalogue));
    }

    #[test]
    fn no_cell_of_a_file_is_a_formula(entries in several(PartKind::GearSet)) {
        let text = write(PartKind::GearSet, &entries);
        let mut reader = csv::ReaderBuilder::new().from_reader(text.as_bytes());
        for record in reader.records() {
            for cell in &record.unwrap() {
                prop_assert!(!cell.starts_with(['=', '+', '-', '@', '\t', '\r']) || cell.parse::<f64>().is_ok(), "{}", cell);
            }
        }
    }

    #[test]
    fn no_text_stops_the_program(text in prop::collection::vec(any::<char>(), 0..2_000).prop_map(String::from_iter), head in 0..5_usize) {
        let text = PartKind::ALL.get(head).map_or_else(String::new, |kind| write(*kind, [])) + &text;
        let catalogue = Catalogue::built_in();
        if let Ok(plan) = catalogue.plan(&text) {
            let after = catalogue.apply(&plan, Differing::Replace);
            prop_assert_eq!(after.own_file(plan.kind).lines().count(), 1 + plan.new.len(), "a line is taken whole or not at all");
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
        let mut text: Vec<char> = PartKind::GearSet.demo().chars().collect();
        for (at, with) in cuts {
            let at = at.index(text.len());
            text[at] = with;
        }
        if let Ok(plan) = Catalogue::empty().plan(&String::from_iter(text)) {
            prop_assert!(plan.new.iter().all(|planned| planned.entry.part().is_ok()));
            prop_assert!(plan.refused.iter().all(|refused| !refused.problems.is_empty() && !refused.text.is_empty()));
        }
    }

    #[test]
    fn ids_stay_and_names_differ(entries in prop::collection::vec(entry(PartKind::GearSet), 1..6), pick in any::<prop::sample::Index>(), other in entry(PartKind::GearSet)) {
        const KIND: PartKind = PartKind::GearSet;
        let catalogue = Catalogue::built_in().add_all(entries);
        let ids = |catalogue: &Catalogue| catalogue.entries(KIND).map(|set| set.id.clone()).collect::<Vec<_>>();
        let id = pick.get(&own(&catalogue, KIND)).id.clone();
        let edited = catalogue.put(Some(&id), &other).unwrap().0;
        prop_assert_eq!(ids(&edited), ids(&catalogue));
        let (copied, copy) = edited.copied(KIND, &id).unwrap();
        prop_assert_ne!(&copy, &id);
        let mut names: Vec<_> = copied.entries(KIND).map(|set| set.title().split_whitespace().collect::<Vec<_>>().join(" ").to_lowercase()).collect();
        names.sort();
        names.dedup();
        prop_assert_eq!(names.len(), copied.entries(KIND).count());
        prop_assert_eq!(copied.without(KIND, &copy).unwrap(), edited);
    }
}
