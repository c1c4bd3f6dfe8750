//! What can be wrong, in one shape: which field, how bad, what is wrong, and what to do about it.
//!
//! Each room keeps a small error type of its own that carries the data of the sentence and implements [`Explain`], an enum by `explain!`;
//! only here do they become alike. A remark on a good result is not a problem: it is data in that result.

/// How much a problem matters.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Severity {
    /// The figures stand, but something about them wants attention; the value used instead is stated.
    Caution,
    /// The field cannot be used; what depends on it has no figure.
    Stop,
}

/// An error that can say itself in a sentence a rebuilder understands.
pub trait Explain {
    /// What is wrong, with the value that was given: one sentence without its full stop.
    fn what(&self) -> String;
    /// What to do about it: one sentence without its full stop.
    fn what_to_do(&self) -> String;
}

/// What an error says, a row for each of its cases: what is wrong, and what to do about it.
macro_rules! explain {
    ($error:ty: $($case:pat => $what:expr, $to_do:expr;)*) => {
        impl $crate::problem::Explain for $error {
            #[allow(unused_variables, reason = "what a case holds may be said in the other of its two sentences")]
            fn what(&self) -> String {
                match self {
                    $($case => String::from($what),)*
                }
            }

            #[allow(unused_variables, reason = "what a case holds may be said in the other of its two sentences")]
            fn what_to_do(&self) -> String {
                match self {
                    $($case => String::from($to_do),)*
                }
            }
        }
    };
}

/// Something wrong in one field: of a job, whose inputs have addresses, or of a line of a catalogue, whose columns have names.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Problem<A = &'static str> {
    /// Where it stands.
    pub field: A,
    /// How much it matters.
    pub severity: Severity,
    /// What is wrong.
    pub what: String,
    /// What to do about it.
    pub what_to_do: String,
}

impl<A> Problem<A> {
    /// A problem that leaves its field without a value.
    pub fn stop(field: A, why: &impl Explain) -> Self {
        Self::new(field, Severity::Stop, why)
    }

    /// A problem that leaves the figures standing.
    pub fn caution(field: A, why: &impl Explain) -> Self {
        Self::new(field, Severity::Caution, why)
    }

    /// A problem in whose field another value is used; `used` says which, as the end of the sentence: `0.9 m² is taken`.
    pub fn defaulted(field: A, why: &impl Explain, used: &str) -> Self {
        let problem = Self::caution(field, why);
        Self { what: format!("{}: {used}", problem.what), ..problem }
    }

    fn new(field: A, severity: Severity, why: &impl Explain) -> Self {
        Self { field, severity, what: why.what(), what_to_do: why.what_to_do() }
    }

    /// Both sentences as one text.
    pub fn sentence(&self) -> String {
        format!("{}. {}.", capital(&self.what), capital(&self.what_to_do))
    }
}

/// The text with its first letter as a capital. The project's own sentences begin with a letter of ASCII, or with what someone typed, in
/// quotes: no table of all alphabets is needed.
pub fn capital(text: &str) -> String {
    let mut chars = text.chars();
    chars.next().map_or_else(String::new, |first| std::iter::once(first.to_ascii_uppercase()).chain(chars).collect())
}

/// Words in a row: `32`, `32 and 25`, `32, 25 and 20`.
pub fn listed(words: &[String]) -> String {
    row(words, "and")
}

/// Words of which one holds: `32`, `32 or 25`, `32, 25 or 20`.
pub fn either(words: &[String]) -> String {
    row(words, "or")
}

fn row(words: &[String], before_last: &str) -> String {
    match words.split_last() {
        Some((last, [])) => last.clone(),
        Some((last, others)) => format!("{} {before_last} {last}", others.join(", ")),
        None => String::new(),
    }
}
