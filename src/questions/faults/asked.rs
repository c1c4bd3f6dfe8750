//! What can be pressed: symptoms, the conditions that tell their causes apart, and the tests with their answers.

use super::answer::{Fault, next_tests};
use super::read::Typed;
use crate::checklist::Step;
use crate::faults::{Condition, Given, Pick, Symptom, Table, Told};
use crate::questions::checklists::Judged;
use crate::questions::ticks::{Tick, TickGroup};
use crate::questions::{Source, faults::read};

/// What stands above the conditions of a group.
fn title(group: &str) -> &str {
    match group {
        "gear" => "in which gear",
        "load" => "when",
        "warm" => "cold or hot",
        "speed" => "how fast",
        "way" => "which way",
        "road" => "on the road",
        "clutch" => "the clutch",
        "cure" => "what helps",
        "since" => "since when",
        own => own,
    }
}

/// The symptoms, and the conditions that tell the causes of those chosen apart.
pub fn groups(source: Source<'_>) -> Vec<TickGroup> {
    let table = source.shelves.faults();
    let told = Typed::of(source.job, table).told;
    let symptoms = symptoms(table, &told);
    let choose = if told.symptoms.is_empty() { "choose what it does" } else { "and also" };
    let symptoms = TickGroup { id: "symptoms".into(), title: "what it does".into(), choose, is_one: false, ticks: symptoms };
    let asked =
        |group: &str| told.symptoms.iter().filter_map(|at| table.symptoms.get(*at)).any(|one| one.asks.iter().any(|asks| asks == group));
    let is_told = |group: &str| told.conditions.iter().filter_map(|at| table.conditions.get(*at)).any(|one| one.group == group);
    let mut names: Vec<&str> = Vec::new();
    for condition in table.conditions.iter().filter(|condition| condition.pick != Pick::Implied) {
        if !names.contains(&condition.group.as_str()) && (asked(&condition.group) || is_told(&condition.group)) {
            names.push(&condition.group);
        }
    }
    let groups = names.into_iter().map(|name| {
        let of_group = |(_, condition): &(usize, &Condition)| condition.group == name && condition.pick != Pick::Implied;
        let here: Vec<_> = table.conditions.iter().enumerate().filter(of_group).collect();
        let tick = |(at, condition): &(usize, &Condition)| Tick {
            word: condition.id.clone(),
            says: condition.said.clone(),
            under: String::new(),
            is_on: told.conditions.contains(at),
        };
        TickGroup {
            id: name.to_owned(),
            title: title(name).into(),
            choose: "",
            is_one: here.iter().all(|(_, condition)| condition.pick == Pick::One),
            ticks: here.iter().map(tick).collect(),
        }
    });
    std::iter::once(symptoms).chain(groups).collect()
}

/// The symptoms, the shop's own among those they belong to.
fn symptoms(table: &Table, told: &Told) -> Vec<Tick> {
    let first = |under: &str| table.symptoms.iter().position(|symptom| symptom.under == under);
    let mut all: Vec<_> = table.symptoms.iter().enumerate().collect();
    crate::order::by_key(&mut all, |(_, symptom)| first(&symptom.under));
    let tick = |(at, symptom): (usize, &Symptom)| Tick {
        word: symptom.id.clone(),
        says: called(&symptom.said, symptom.is_own),
        under: symptom.under.clone(),
        is_on: told.symptoms.contains(&at),
    };
    all.into_iter().map(tick).collect()
}

/// What a row says, the shop's own marked.
pub(super) fn called(said: &str, is_own: bool) -> String {
    if is_own { format!("{said} (your own)") } else { said.to_owned() }
}

/// What to choose first; nothing once it is chosen.
pub fn next(source: Source<'_>) -> String {
    let told = Typed::of(source.job, source.shelves.faults()).told;
    if told.symptoms.is_empty() { "Choose what it does first. Then say when: that parts its causes.".into() } else { String::new() }
}

/// What is said where there are no tests yet.
pub fn none_yet(source: Source<'_>) -> String {
    if tests(source).is_empty() { "The tests come once it is chosen what it does.".into() } else { String::new() }
}

/// The tests of the likeliest causes, the cheapest first, each with what it gave. They stand still while they are answered: only what is
/// said of the fault moves them.
pub fn tests(source: Source<'_>) -> String {
    let table = source.shelves.faults();
    let typed = Typed::of(source.job, table);
    let asked = next_tests(table, &read::told(source));
    let stored = |test: usize| typed.tried.iter().find(|(known, _)| *known == Some(test)).map(|(_, step)| step.written());
    let line = |test: &usize| {
        let fresh = || table.tests.get(*test).map(|test| Step { what: test.ask.clone(), ..Step::default() }.written());
        stored(*test).or_else(fresh)
    };
    let listed = asked.iter().filter_map(line);
    let others = typed.tried.iter().filter(|(test, _)| test.is_none_or(|test| !asked.contains(&test)));
    listed.chain(others.map(|(_, step)| step.written())).collect::<Vec<_>>().join("\n")
}

/// What the answers mean.
pub fn judged(source: Source<'_>) -> Vec<Judged> {
    let table = source.shelves.faults();
    let told = read::told(source);
    let meaning = |text: &str| {
        let (at, test) = table.tests.iter().enumerate().find(|(_, test)| test.ask == text)?;
        Some(
            told.results.get(&at).map_or_else(|| called(test.cost.words(), test.is_own), |answer| format!("So {}.", test.meaning(*answer))),
        )
    };
    let lines = crate::checklist::lines(&tests(source));
    let said = |line: &crate::checklist::Line| match line {
        crate::checklist::Line::Step(step) => meaning(step.what.trim()).unwrap_or_default(),
        _ => String::new(),
    };
    lines.iter().map(|line| Judged { wanted: said(line), verdict: None }).collect()
}

impl Fault<'_> {
    /// A symptom or condition as people say it, in quotes.
    pub(super) fn quoted(&self, given: Given) -> String {
        format!("“{}”", self.table.said(given))
    }
}
