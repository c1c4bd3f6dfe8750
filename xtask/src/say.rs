//! How the commands tell what they do: each step by name, then how long it took.

use std::time::{Duration, Instant};

use anyhow::{Context, Result};

/// Names a step, does it, and says how long it took. A failure carries the step's name.
///
/// # Errors
/// What the step answered.
pub fn step<T>(what: &str, work: impl FnOnce() -> Result<T>) -> Result<T> {
    println!("▸ {what}");
    let began = Instant::now();
    let answer = work().with_context(|| format!("this step failed: {what}"))?;
    println!("  {}", seconds(began.elapsed()));
    Ok(answer)
}

/// A duration in words of the length a person wants.
pub fn seconds(took: Duration) -> String {
    let whole = took.as_secs();
    if whole >= 60 { format!("{} min {:02} s", whole / 60, whole % 60) } else { format!("{:.1} s", took.as_secs_f64()) }
}

#[cfg(test)]
mod tests {
    use super::seconds;
    use std::time::Duration;

    #[test]
    fn says_durations_as_people_do() {
        assert_eq!(seconds(Duration::from_millis(1_240)), "1.2 s");
        assert_eq!(seconds(Duration::from_secs(187)), "3 min 07 s");
    }
}
