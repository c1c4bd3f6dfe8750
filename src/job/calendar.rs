//! How many days lie between two times as they are kept (`2026-11-25T09:31:17`), and what that says of the last backup.

/// After so many days a backup is due.
const DUE: i64 = 30;

/// What is said of the last backup.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct BackupAge {
    /// How old it is, and what to do, in sentences.
    pub says: String,
    /// Whether it is time for another.
    pub is_due: bool,
}

/// Whole days from one time to another; none where either is no date.
///
/// ```
/// use layshaft::job::calendar::days_between;
/// // From memory: 2028 is a leap year.
/// assert_eq!(days_between("2028-02-28", "2028-03-01T10:00:00"), Some(2));
/// assert_eq!(days_between("", "2028-03-01"), None);
/// ```
pub fn days_between(from: &str, to: &str) -> Option<i64> {
    Some(day_number(to)? - day_number(from)?)
}

/// What is said of a backup made `last`, blank for never, where the first job was begun `begun` and the newest change is of `changed`.
pub fn backup_age(last: &str, begun: &str, changed: &str, now: &str) -> BackupAge {
    let Some(age) = days_between(last, now) else {
        let is_due = days_between(begun, now).is_some_and(|days| days >= DUE);
        let says = if is_due { "No backup yet, after more than a month of work: save one now." } else { "No backup yet." };
        return BackupAge { says: says.into(), is_due };
    };
    let ago = match age {
        ..=0 => "today".to_owned(),
        1 => "yesterday".to_owned(),
        days => format!("{days} days ago"),
    };
    let is_due = age >= DUE && changed > last;
    let then = if is_due { " Jobs were changed since: save one now." } else { "" };
    BackupAge { says: format!("Last backup: {ago}.{then}"), is_due }
}

/// The days from 1 March of the year 0 of the Gregorian calendar, whose leap days so stand at the end of a year.
fn day_number(time: &str) -> Option<i64> {
    let mut parts = time.split('T').next()?.splitn(3, '-').map(|part| part.parse::<i64>().ok());
    let (year, month, day) = (parts.next()??, parts.next()??, parts.next()??);
    if !(1..=9_999).contains(&year) || !(1..=12).contains(&month) || !(1..=31).contains(&day) {
        return None;
    }
    let (year, month) = if month < 3 { (year - 1, month + 9) } else { (year, month - 3) };
    // The months from March have 31, 30, 31, 30, 31 days, twice over and begun again: 153 days in five.
    Some(365 * year + year / 4 - year / 100 + year / 400 + (153 * month + 2) / 5 + day)
}
