//! The book as a list: what stands in a line, what a search finds, in which order.

use super::book::{Head, Record};
use super::{Job, Setup};
use crate::catalogue::Entry;

worded! {
    /// The order of the list.
    #[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
    pub enum Order {
        /// What was changed last stands first.
        #[default]
        Newest => "changed last";
        /// By title.
        Title => "title";
        /// By customer, then title.
        Customer => "customer";
        /// By how far the job has come, then what was changed last.
        Progress => "state";
    }
    /// The order in words.
    pub fn words;
}

/// One line of the list.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Line {
    /// What the shop notes about the job.
    pub head: Head,
    /// What the job is called.
    pub title: String,
    /// Whose job it is.
    pub customer: String,
    /// The car, in words.
    pub car: String,
    /// How many setups it compares.
    pub setups: usize,
    /// How many steps of its build are open; none where it has none, or where nobody counted them.
    pub open_steps: Option<usize>,
    /// All words of the job a search may ask for, in small letters.
    words: String,
}

impl Order {
    /// Every order, as offered.
    pub const ALL: [Self; 4] = [Self::Newest, Self::Title, Self::Customer, Self::Progress];
}

impl Line {
    /// The line of a record.
    pub fn of(record: &Record) -> Self {
        let job = &record.job;
        Self {
            head: record.head.clone(),
            title: if job.title.trim().is_empty() { "without a title".into() } else { job.title.clone() },
            customer: job.customer.clone(),
            car: job.car.clone(),
            setups: job.setups.len(),
            open_steps: None,
            words: words_of(record.head.progress.words(), job),
        }
    }

    /// Whether every word of `search` stands somewhere in the job: title, customer, car, notes, state, setups, gear sets, tyres.
    pub fn answers(&self, search: &str) -> bool {
        search.to_lowercase().split_whitespace().all(|word| self.words.contains(word))
    }
}

fn words_of(progress: &str, job: &Job) -> String {
    let setups = job.setups.iter().flat_map(|setup| [&setup.name, &setup.gearbox.name, &setup.final_drive, &setup.tyre.text]);
    let words = [&job.title, &job.customer, &job.car, &job.notes].into_iter().chain(setups);
    let words = words.map(String::as_str).chain([progress]).collect::<Vec<_>>();
    words.join("\n").to_lowercase()
}

/// A job as far as parts of the shelf go.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Fitting {
    /// What the job is called.
    pub title: String,
    /// Its setups.
    pub setups: Vec<Setup>,
}

/// The most jobs that are named where a part is used.
const MOST_NAMED: usize = 3;

/// Which jobs use a part of the shelf: `in 2 jobs: Old coupé, Fernhill`; none where no job does.
pub fn used_in(jobs: &[Fitting], entry: &Entry) -> Option<String> {
    let uses = |job: &&Fitting| job.setups.iter().any(|setup| setup.has_part(entry));
    let titles: Vec<&str> = jobs.iter().filter(uses).map(|job| job.title.as_str()).collect();
    let named = titles.iter().take(MOST_NAMED).copied().collect::<Vec<_>>().join(", ");
    match titles.len() {
        0 => None,
        1 => Some(format!("in 1 job: {named}")),
        many if many > MOST_NAMED => Some(format!("in {many} jobs: {named} and {} more", many - MOST_NAMED)),
        many => Some(format!("in {many} jobs: {named}")),
    }
}

impl From<Record> for Fitting {
    fn from(record: Record) -> Self {
        Self { title: Line::of(&record).title, setups: record.job.setups }
    }
}

/// Puts lines in order.
pub fn sort(lines: &mut Vec<Line>, order: Order) {
    // Of two changed in the same second the one begun later: its name begins with that time.
    let newest = |line: &Line| std::cmp::Reverse((line.head.changed.clone(), line.head.id.clone()));
    match order {
        Order::Newest => crate::order::by_key(lines, newest),
        Order::Title => crate::order::by_key(lines, |line| (line.title.to_lowercase(), newest(line))),
        Order::Customer => {
            crate::order::by_key(lines, |line| (line.customer.is_empty(), line.customer.to_lowercase(), line.title.to_lowercase()));
        }
        Order::Progress => crate::order::by_key(lines, |line| (line.head.progress, newest(line))),
    }
}

/// A time as a person says it on the day `today`: `today`, or `25 Nov 2026`; as it stands where it is no date.
///
/// ```
/// use layshaft::job::listing::when;
/// assert_eq!(when("2026-11-25T09:30:00Z", "2026-11-28T08:00:00Z"), "25 Nov 2026");
/// assert_eq!(when("2026-11-28T07:00:00Z", "2026-11-28T08:00:00Z"), "today");
/// ```
pub fn when(time: &str, today: &str) -> String {
    const MONTHS: [&str; 12] = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"];
    let day = day_of(time);
    if !day.is_empty() && day == day_of(today) {
        return "today".into();
    }
    let mut parts = day.splitn(3, '-');
    let (year, month, day) = (parts.next(), parts.next(), parts.next());
    let month = month.and_then(|month| month.parse::<usize>().ok()).and_then(|month| MONTHS.get(month.checked_sub(1)?));
    match (year, month, day.and_then(|day| day.parse::<u8>().ok())) {
        (Some(year), Some(month), Some(day)) => format!("{day} {month} {year}"),
        _ => time.to_owned(),
    }
}

/// The day of a time: `2026-11-25`.
fn day_of(time: &str) -> &str {
    time.split('T').next().unwrap_or(time)
}
