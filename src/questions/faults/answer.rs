//! The causes of a fault in their order, the tests to do, and what does not go together.

use super::read::told;
use crate::faults::{Given, Ranked, Table, Told, rank};
use crate::questions::Source;

/// From how many causes tests are listed.
const TESTED: usize = 8;
/// The most tests that are listed.
const MOST_TESTS: usize = 8;

/// What is known of a fault.
#[derive(Clone, Debug)]
pub struct Fault<'a> {
    /// The tables, the shop's own rows with them.
    pub table: &'a Table,
    /// What is said and was tried.
    pub told: Told,
    /// The causes, the likeliest first.
    pub causes: Vec<Ranked<'a>>,
    /// What is said and cannot be there together.
    pub contradictions: Vec<(Given, Given)>,
}

impl<'a> Fault<'a> {
    /// What is known of the fault that is told.
    pub fn of(source: Source<'a>) -> Self {
        let table = source.shelves.faults();
        let told = told(source);
        let causes = rank(table, &told);
        let contradictions = told.contradictions(table);
        Self { table, told, causes, contradictions }
    }

    /// The likeliest cause; none where everything known speaks against all of them.
    pub fn first(&self) -> Option<&Ranked<'a>> {
        self.causes.first().filter(|first| first.points > 0)
    }

    /// The question that measures one of the symptoms, by its id.
    pub fn branch(&self) -> Option<&'a str> {
        let symptoms = self.told.symptoms.iter().filter_map(|at| self.table.symptoms.get(*at));
        symptoms.map(|symptom| symptom.branch.as_str()).find(|branch| !branch.is_empty())
    }
}

/// The tests of the likeliest causes by what is said alone, the cheapest first; of those alike that of the likelier cause.
pub(super) fn next_tests(table: &Table, told: &Told) -> Vec<usize> {
    let untried = Told { results: std::collections::BTreeMap::new(), ..told.clone() };
    let mut tests: Vec<usize> = Vec::new();
    // The first test of each, then their others.
    let likeliest: Vec<_> = rank(table, &untried).into_iter().filter(|ranked| ranked.points > 0).take(TESTED).collect();
    for at in 0..3 {
        let shows = likeliest.iter().filter_map(|ranked| ranked.cause.shows.get(at));
        for (test, _) in shows {
            if !tests.contains(test) {
                tests.push(*test);
            }
        }
    }
    crate::order::by_key(&mut tests, |test| table.tests.get(*test).map(|test| test.cost));
    tests.truncate(MOST_TESTS);
    tests
}
