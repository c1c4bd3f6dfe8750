//! Whether a gear set goes into the case of another: by name, by tooth sums and pitch, or not.

use layshaft::catalogue::case::{CaseFit, CaseNeeds, Misfit, fit};
use layshaft::catalogue::{Catalogue, Column, Entry, PartKind};
use layshaft::gearing::Layout;
use layshaft::units::common::millimetres;

/// A three-speed set whose pairs add up to 54 or 55, worked out by hand: 24 + 30 and 36 + 18, or 25 + 30 and 37 + 18.
fn set(constant: &str, first: &str, case: &str) -> Entry {
    let texts = [(Column::Layout, "input-reduced"), (Column::Constant, constant), (Column::Gear(1), first), (Column::Gear(2), "direct")];
    texts.into_iter().fold(Entry::new(PartKind::GearSet).with(Column::Case, case), |set, (column, text)| set.with(column, text))
}

#[track_caller]
fn check(one: &Entry, other: &Entry, expected: &CaseFit, words: &str) {
    let fit = fit(&one.case_needs(), &other.case_needs());
    assert_eq!((&fit, fit.words('A').as_str()), (expected, words));
}

const UNKNOWN_PITCH: CaseFit = CaseFit::BySums { is_pitch_known: false };

#[test]
fn a_set_fits_by_name_by_sums_or_not() {
    let [of_54, of_55, of_54_to_55] =
        [["24/30", "36/18"], ["25/30", "37/18"], ["24/30", "37/18"]].map(|[constant, first]| move |case: &str| set(constant, first, case));
    check(&of_55("Short case"), &of_55("Long case; SHORT  case"), &CaseFit::Named { family: "Short case".into() }, "same case: Short case");
    check(&of_55(""), &of_55("Short case"), &UNKNOWN_PITCH, "fits by sums, case not named");
    check(&of_54_to_55(""), &of_55(""), &UNKNOWN_PITCH, "fits by sums, case not named");
    let sums = |of, other| CaseFit::No(Misfit::Sums { of, other });
    check(&of_54(""), &of_55(""), &sums((54, 54), (55, 55)), "not A’s case: tooth sum 54, not 55");
    check(&of_54("Short case"), &of_55("Short case"), &sums((54, 54), (55, 55)), "not A’s case: tooth sum 54, not 55");
    let other = CaseFit::No(Misfit::Family("Long case".into()));
    check(&of_55("Long case"), &of_55("Short case"), &other, "not A’s case: Long case");
    let two_shaft = of_55("").with(Column::Layout, "two-shaft").with(Column::Constant, "").with(Column::Gear(2), "30/25");
    check(&two_shaft, &of_55(""), &CaseFit::No(Misfit::Layout(Layout::TwoShaft)), "not A’s case: two shafts");
    let half = |case| set("25/", "37/18", case);
    check(&half(""), &of_55(""), &CaseFit::Unknown, "teeth not readable");
    check(&half("Short case"), &of_55("Short case"), &CaseFit::Named { family: "Short case".into() }, "same case: Short case");
}

/// By hand: 55 teeth of 2.5 mm stand 68.75 mm apart, 55 of 2.6 mm 71.5 mm.
#[test]
fn sums_fit_only_where_the_teeth_are_of_one_size() {
    let gearbox = set("25/30", "37/18", "").gearbox();
    let needs = |module: Option<f64>| CaseNeeds::of(gearbox.as_ref(), "", module.map(millimetres));
    let [fine, coarse] = [2.5, 2.6].map(millimetres);
    assert_eq!(fit(&needs(Some(2.5)), &needs(Some(2.51))), CaseFit::BySums { is_pitch_known: true });
    assert_eq!(fit(&needs(Some(2.5)), &needs(Some(2.6))), CaseFit::No(Misfit::Pitch { of: fine, other: coarse }));
    assert_eq!(fit(&needs(None), &needs(Some(2.6))), UNKNOWN_PITCH);
}

#[test]
fn the_sets_of_one_demo_case_have_a_sum_in_common() {
    let catalogue = Catalogue::built_in();
    let sets: Vec<_> = catalogue.entries(PartKind::GearSet).map(|set| (set.title(), set.case_needs())).collect();
    let named = sets.iter().filter(|(_, needs)| !needs.families.is_empty()).count();
    assert!(named > sets.len() / 2 && named < sets.len());
    for (one, needs) in &sets {
        for (other, theirs) in &sets {
            let is_shared = needs.families.iter().any(|family| theirs.families.contains(family));
            assert_eq!(matches!(fit(needs, theirs), CaseFit::Named { .. }), is_shared, "{one} and {other}");
        }
    }
    let fit_of = |one: &str, other: &str| {
        let needs = |name: &str| sets.iter().find(|(title, _)| *title == name).unwrap().1.clone();
        fit(&needs(one), &needs(other)).words('A')
    };
    assert_eq!(fit_of("Curlew four, close", "Curlew four, wide"), "same case: Curlew short case");
    assert_eq!(fit_of("Curlew three", "Curlew four, wide"), "fits by sums, case not named");
    assert_eq!(fit_of("Redshank five", "Curlew four, wide"), "not A’s case: Redshank long case");
    // By hand: 29 + 30 = 59 and 25 + 30 = 55.
    assert_eq!(fit_of("Nuthatch five, close", "Curlew four, wide"), "not A’s case: tooth sum 59, not 55");
}
