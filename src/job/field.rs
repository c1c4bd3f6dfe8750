//! The address of every input, so that one widget edits them all and every problem finds its place.

use std::borrow::Cow;

use super::inputs::{Kept, Kind, Row};
use super::{
    BenchField, BuildField, Choice, CutterField, DesignText, EndPlayField, FaultsField, FitsField, InsideField, Job, JobChoice, JobField,
    MeasureField, PullField, SettingField, SetupField, SetupId, WishText,
};
use crate::problem::Problem;
use crate::units::System;
use crate::units::number::ordinal;

/// One text of a job.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Field {
    /// A text that all setups share.
    Job(JobField),
    /// A text of one setup.
    Setup(SetupId, SetupField),
    /// A text of one wish, counted from 0.
    Wish(usize, WishText),
    /// A text of the gear set to be designed.
    Design(DesignText),
}

/// One input of a job: typed or chosen.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum InputId {
    /// A text.
    Text(Field),
    /// A choice from a few.
    Choice(Choice),
}

/// Something wrong with one input of a job.
pub type InputProblem = Problem<InputId>;

impl Field {
    /// Every text of a job, in the order of the table.
    pub fn all(job: &Job) -> Vec<Self> {
        let setups = job.setups.iter().flat_map(|setup| SetupField::all(setup).into_iter().map(|field| Self::Setup(setup.id, field)));
        let wishes = job.wishes.rows.iter().enumerate();
        let wishes = wishes.flat_map(|(at, wish)| WishText::all(wish).into_iter().map(move |text| Self::Wish(at, text)));
        let design = DesignText::all(&job.wishes.design).into_iter().map(Self::Design);
        JobField::all(job).into_iter().map(Self::Job).chain(setups).chain(wishes).chain(design).collect()
    }

    /// Its row in the table; a wish's depends on what it is about, see [`Field::row_in`].
    pub fn row(self) -> Row {
        match self {
            Self::Job(field) => field.row(),
            Self::Setup(_, field) => field.row(),
            Self::Wish(_, text) => text.row(),
            Self::Design(text) => text.row(),
        }
    }

    /// Its row in the table as it is in a job.
    pub fn row_in(self, job: &Job) -> Row {
        match self {
            Self::Wish(at, text) => job.wishes.rows.get(at).map_or_else(|| text.row(), |wish| text.row_of(wish.kind)),
            _ => self.row(),
        }
    }

    /// What it is called beside its field.
    pub fn label(self, job: &Job) -> Cow<'static, str> {
        let label = self.row_in(job).label;
        let place = match self {
            Self::Setup(_, field) => field.place(),
            _ => None,
        };
        place.map_or(Cow::Borrowed(label), |at| label.replace('#', &ordinal(at)).into())
    }

    /// Whether a number is typed there, and nothing else but its unit.
    pub fn is_number(self) -> bool {
        self.row().kind.is_number()
    }

    /// Whether words are typed there, in the face of the text, and no figures.
    pub fn is_words(self) -> bool {
        matches!(self.row().kind, Kind::Words | Kind::Lines)
    }

    /// Whether more is typed in it than a number with its unit: its example says so.
    pub fn is_long(self) -> bool {
        self.row().example.is_some_and(|example| example.len() > "1 1/2 in".len())
    }

    /// The unit that a bare number in it is read in; none where the text names its own.
    pub fn unit(self, job: &Job) -> Option<&'static str> {
        let kept = job.kept(self)?;
        // What is typed into a blank field is meant in the units of the sheet.
        let units = kept.units().filter(|_| !kept.text().trim().is_empty()).unwrap_or(job.units);
        self.row_in(job).kind.unit(kept.text(), units)
    }

    /// What stands in the blank field: what it is taken for, as it would be typed in the units the job is read in, or an example.
    pub fn placeholder(self, job: &Job) -> String {
        self.row_in(job).placeholder(job)
    }

    /// The name by which tests and reports know it, inside its setup: `gear.2`, `wish.1.least`.
    pub fn path(self) -> String {
        match self {
            Self::Job(field) => field.path(),
            Self::Setup(_, field) => field.path(),
            Self::Wish(at, text) => format!("wish.{}.{}", at + 1, text.path()),
            Self::Design(text) => text.path(),
        }
    }

    /// A short name for the page: unique inside a job, without blanks.
    pub fn slug(self) -> String {
        match self {
            Self::Setup(id, field) => format!("s{}-{}", id.0, field.path().replace('.', "-")),
            _ => self.path().replace('.', "-"),
        }
    }
}

impl InputId {
    /// The name by which tests and reports know it, inside its setup: `gear.2`, `law`.
    pub fn path(self) -> String {
        match self {
            Self::Text(field) => field.path(),
            Self::Choice(choice) => choice.path().to_owned(),
        }
    }
}

impl Job {
    fn kept(&self, field: Field) -> Option<&dyn Kept> {
        match field {
            Field::Job(field) => field.kept(self),
            Field::Setup(id, field) => field.kept(self.setup(id)?),
            Field::Wish(at, text) => text.kept(self.wishes.rows.get(at)?),
            Field::Design(text) => text.kept(&self.wishes.design),
        }
    }

    /// The text of a field; `None` where there is no such setup, gear or stage.
    pub fn text(&self, field: Field) -> Option<&str> {
        self.kept(field).map(Kept::text)
    }

    /// Puts a text into a field, typed under the units the sheet is read in now. Nothing happens where there is no such field.
    ///
    /// ```
    /// use layshaft::job::{Field, JobField, demo};
    /// use layshaft::units::System;
    /// let mut job = demo::empty(System::Metric);
    /// job.type_text(Field::Job(JobField::Cruise), "130".into());
    /// assert_eq!((job.cruise.text.as_str(), job.cruise.units), ("130", System::Metric));
    /// ```
    pub fn type_text(&mut self, field: Field, text: String) {
        let units: System = self.units;
        let differs = self.text(field).is_some_and(|kept| kept != text);
        let kept = match field {
            Field::Job(field) => field.kept_mut(self),
            Field::Setup(id, field) => self.setup_mut(id).and_then(|setup| {
                let is_gearbox = matches!(field, SetupField::Constant | SetupField::Gear(_) | SetupField::Reverse | SetupField::Idler);
                setup.gearbox.altered |= is_gearbox && differs;
                field.kept_mut(setup)
            }),
            Field::Wish(at, text) => self.wishes.rows.get_mut(at).and_then(|wish| text.kept_mut(wish)),
            Field::Design(text) => text.kept_mut(&mut self.wishes.design),
        };
        if let Some(kept) = kept {
            kept.put(text, units);
        }
    }
}

macro_rules! addresses {
    ($($from:pat => $type:ty, $field:expr;)*) => {
        $(
            impl From<$type> for InputId {
                fn from($from: $type) -> Self {
                    $field
                }
            }
        )*
    };
}

addresses! {
    field => Field, Self::Text(field);
    field => JobField, Self::Text(Field::Job(field));
    field => PullField, Self::Text(Field::Job(JobField::Pull(field)));
    field => BenchField, Self::Text(Field::Job(JobField::Bench(field)));
    field => EndPlayField, Self::Text(Field::Job(JobField::Bench(BenchField::EndPlay(field))));
    field => FitsField, Self::Text(Field::Job(JobField::Bench(BenchField::Fits(field))));
    field => MeasureField, Self::Text(Field::Job(JobField::Bench(BenchField::Measure(field))));
    field => FaultsField, Self::Text(Field::Job(JobField::Bench(BenchField::Faults(field))));
    field => BuildField, Self::Text(Field::Job(JobField::Bench(BenchField::Build(field))));
    field => SettingField, Self::Text(Field::Job(JobField::Bench(BenchField::Setting(field))));
    field => CutterField, Self::Text(Field::Job(JobField::Bench(BenchField::Cutter(field))));
    (setup, field) => (SetupId, SetupField), Self::Text(Field::Setup(setup, field));
    (setup, field) => (SetupId, InsideField), Self::Text(Field::Setup(setup, SetupField::Inside(field)));
    (at, text) => (usize, WishText), Self::Text(Field::Wish(at, text));
    text => DesignText, Self::Text(Field::Design(text));
    choice => Choice, Self::Choice(choice);
    choice => JobChoice, Self::Choice(Choice::Job(choice));
}
