//! The tables of faults: symptoms, conditions, tests and causes, each tied to the others by place.

use std::sync::OnceLock;

use super::TableError;
use super::read::{Kind, Lines, Texts};

/// All that is known of faults.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Table {
    /// What people say is wrong.
    pub symptoms: Vec<Symptom>,
    /// What narrows it down.
    pub conditions: Vec<Condition>,
    /// What can be tried.
    pub tests: Vec<Test>,
    /// What it can be.
    pub causes: Vec<Cause>,
}

/// Something wrong, as people say it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Symptom {
    /// Its name in a file, which never changes.
    pub id: String,
    /// What it belongs to, in a list.
    pub under: String,
    /// As people say it.
    pub said: String,
    /// The groups of conditions that tell its causes apart.
    pub asks: Vec<String>,
    /// What cannot be there with it.
    pub never: Vec<Given>,
    /// The question that measures it, by its id; empty where none does.
    pub branch: String,
    /// Conditions that go without saying.
    pub implies: Vec<usize>,
    /// Whether it is a row of the shop's own.
    pub is_own: bool,
}

/// Something that is said of a fault, by its place in the table.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Given {
    /// A symptom.
    Symptom(usize),
    /// A condition.
    Condition(usize),
}

/// Under what a symptom shows.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Condition {
    /// Its name in a file, which never changes.
    pub id: String,
    /// What it belongs to.
    pub group: String,
    /// How many of its group can be there at once.
    pub pick: Pick,
    /// As people say it.
    pub said: String,
}

/// How many conditions of a group can be there at once.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Pick {
    /// One.
    One,
    /// Several.
    Many,
    /// It is not chosen: it follows from others.
    Implied,
}

/// Something that can be tried, answered yes or no.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Test {
    /// Its name in the table.
    pub id: String,
    /// What it costs.
    pub cost: Cost,
    /// What to do, and what is asked.
    pub ask: String,
    /// What a yes means.
    pub yes: String,
    /// What a no means.
    pub no: String,
    /// Whether it is a row of the shop's own.
    pub is_own: bool,
}

worded! {
    /// What a test costs; the dearer is greater.
    #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
    pub enum Cost {
        /// Nothing.
        Nothing => "costs nothing";
        /// A tool or a helper.
        Tool => "a tool or a helper";
        /// A part comes off.
        PartOff => "a part comes off";
    }
    /// In words.
    pub fn words;
}

worded! {
    /// How far in a cause lies; the further is greater.
    #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
    pub enum Reach {
        /// Nothing comes off.
        Free => "nothing comes off";
        /// Bolted on outside.
        Outside => "bolted on outside";
        /// The gearbox comes out.
        BoxOut => "gearbox out";
        /// It is inside.
        Inside => "inside";
    }
    /// In words.
    pub fn words;
}

/// What can be wrong.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Cause {
    /// Its name in the table.
    pub id: String,
    /// What it is called.
    pub name: String,
    /// How far in it lies.
    pub reach: Reach,
    /// Symptoms it makes, each with how usual a cause of it this is: 1 rare, 2 one of several, 3 the usual one.
    pub symptoms: Vec<(usize, u8)>,
    /// Conditions that fit it.
    pub fits: Vec<usize>,
    /// Conditions that speak against it.
    pub against: Vec<usize>,
    /// Tests, each with the answer that shows it; the one to begin with first.
    pub shows: Vec<(usize, bool)>,
    /// What wears with it; empty where nothing does.
    pub together: String,
    /// The question that measures it, by its id; empty where none does.
    pub measure: String,
    /// Whether it is a row of the shop's own.
    pub is_own: bool,
}

impl Table {
    /// The built-in tables, read when first asked for.
    pub fn built_in() -> &'static Self {
        static TABLE: OnceLock<Table> = OnceLock::new();
        // That they can be read is proved by the tests.
        TABLE.get_or_init(|| Self::read(Texts::BUILT_IN).unwrap_or_default())
    }

    /// Reads the four tables.
    ///
    /// # Errors
    /// The first line that cannot be used.
    pub fn read(texts: Texts<'_>) -> Result<Self, TableError> {
        let Texts { symptoms, conditions, tests, causes } = texts;
        let (mut table, mut problems) = (Self::default(), Vec::new());
        for (kind, text) in Kind::ALL.into_iter().zip([conditions, symptoms, tests, causes]) {
            table.add(kind, text, false, &mut problems);
        }
        problems.into_iter().next().map_or(Ok(table), Err)
    }

    /// Adds the rows of a text that can be used; what is wrong with the others goes to `problems`.
    pub(super) fn add(&mut self, kind: Kind, text: &str, is_own: bool, problems: &mut Vec<TableError>) {
        let (name, _) = kind.about();
        match kind {
            Kind::Conditions => {
                let lines = Lines::of(name, text, |id| self.given(id).is_some(), problems);
                self.conditions.extend(lines.conditions(problems));
            }
            Kind::Symptoms => {
                let lines = Lines::of(name, text, |id| self.given(id).is_some(), problems);
                lines.symptoms(self, is_own, problems);
            }
            Kind::Tests => {
                let lines = Lines::of(name, text, |id| self.tests.iter().any(|test| test.id == id), problems);
                self.tests.extend(lines.tests(is_own, problems));
            }
            Kind::Causes => {
                let lines = Lines::of(name, text, |id| self.causes.iter().any(|cause| cause.id == id), problems);
                let causes = lines.causes(self, is_own, problems);
                self.causes.extend(causes);
            }
        }
    }

    pub(super) fn rows(&self) -> usize {
        self.symptoms.len() + self.conditions.len() + self.tests.len() + self.causes.len()
    }

    /// What a name in a file stands for.
    pub fn given(&self, id: &str) -> Option<Given> {
        let symptom = self.symptoms.iter().position(|symptom| symptom.id == id).map(Given::Symptom);
        symptom.or_else(|| self.condition(id).map(Given::Condition))
    }

    /// The place of a condition.
    pub fn condition(&self, id: &str) -> Option<usize> {
        self.conditions.iter().position(|condition| condition.id == id)
    }

    /// A symptom or condition as people say it.
    pub fn said(&self, given: Given) -> &str {
        match given {
            Given::Symptom(at) => self.symptoms.get(at).map_or("", |symptom| &symptom.said),
            Given::Condition(at) => self.conditions.get(at).map_or("", |condition| &condition.said),
        }
    }
}

impl Test {
    /// What an answer means.
    pub fn meaning(&self, is_yes: bool) -> &str {
        if is_yes { &self.yes } else { &self.no }
    }
}
