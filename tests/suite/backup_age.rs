//! How old the last backup is, in days counted on a calendar.

use layshaft::job::calendar::{backup_age, days_between};

#[test]
fn days_are_counted_over_months_years_and_leap_days() {
    // Counted on a calendar: 30 days hath November; 2027 has 365 days, 2028 has 366, 1900 had no 29 February.
    let rows = [
        ("2026-11-28", "2026-12-28", 30),
        ("2026-12-31T23:59:59", "2027-01-01T00:00:00", 1),
        ("2027-01-01", "2028-01-01", 365),
        ("2028-01-01", "2029-01-01", 366),
        ("1900-02-28", "1900-03-01", 1),
        ("2026-11-28T10:00:00", "2026-11-28T09:00:00", 0),
    ];
    for (from, to, days) in rows {
        assert_eq!(days_between(from, to), Some(days), "{from} to {to}");
    }
    for wrong in ["", "soon", "2026-13-01", "2026-11", "2026-11-40T10:00:00", "99999-01-01"] {
        assert_eq!(days_between(wrong, "2026-11-28"), None, "{wrong}");
    }
}

#[test]
fn a_backup_is_due_after_a_month_of_work() {
    let said = |last: &str, begun: &str, changed: &str| {
        let age = backup_age(last, begun, changed, "2026-11-28T10:00:00");
        (age.says, age.is_due)
    };
    assert_eq!(said("", "2026-11-20T08:00:00", ""), ("No backup yet.".into(), false));
    assert_eq!(said("", "2026-10-20T08:00:00", ""), ("No backup yet, after more than a month of work: save one now.".into(), true));
    assert_eq!(said("2026-11-28T09:00:00", "", "2026-11-28T09:30:00"), ("Last backup: today.".into(), false));
    assert_eq!(said("2026-11-27T23:00:00", "", ""), ("Last backup: yesterday.".into(), false));
    let month = "2026-10-20T08:00:00";
    assert_eq!(said(month, "", "2026-10-19T08:00:00"), ("Last backup: 39 days ago.".into(), false), "nothing changed since");
    assert_eq!(said(month, "", "2026-11-01T08:00:00"), ("Last backup: 39 days ago. Jobs were changed since: save one now.".into(), true));
}
