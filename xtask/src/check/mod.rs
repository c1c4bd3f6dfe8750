//! `cargo xtask test`: every check of the project in one command, the quick ones first, with a summary at the end. What is compiled
//! for the browser is checked beside the rest; the browser waits for both.

mod beside;
mod budget;
mod closing;
mod steps;

use std::time::{Duration, Instant};

use anyhow::{Result, bail};

use crate::options::Options;
use crate::say;

/// One check: the name `--only` takes, what it does in words, and how.
struct Step {
    name: &'static str,
    what: &'static str,
    run: fn(&mut Closing) -> Result<()>,
    turn: Turn,
}

/// When a check runs.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Turn {
    /// One after the other, in the order of the list.
    InOrder,
    /// One after the other too, beside those in order.
    Beside,
    /// After all the others: it uses what they built.
    Last,
}

/// The line above the summary.
const SUMMARY: &str = "━━ Summary";

/// The closing lines of the test programs, repeated under the summary.
type Closing = Vec<String>;

struct Outcome {
    step: &'static Step,
    took: Duration,
    problem: Option<String>,
}

/// Runs the checks, all or those named, and goes on after a failure, since each one tells something else.
///
/// # Errors
/// At least one check failed, or `--only` names one that does not exist.
pub fn run(options: &Options) -> Result<()> {
    let chosen = chosen(options.value("--only"))?;
    let began = Instant::now();
    let mut closing = Closing::new();
    let outcomes = attempt_all(&chosen, &mut closing);
    summarise(&outcomes, &closing, began.elapsed());
    let failed: Vec<&str> = outcomes.iter().filter(|o| o.problem.is_some()).map(|o| o.step.name).collect();
    if !failed.is_empty() {
        bail!("failed: {}. One alone: `cargo xtask test --only {}`", failed.join(", "), failed[0]);
    }
    Ok(())
}

fn chosen(only: Option<&str>) -> Result<Vec<&'static Step>> {
    let Some(only) = only else { return Ok(steps::ALL.iter().collect()) };
    let mut chosen = Vec::new();
    for name in only.split(',').map(str::trim) {
        let Some(step) = steps::ALL.iter().find(|step| step.name == name) else {
            bail!("there is no check `{name}`; these are: {}", steps::ALL.map(|step| step.name).join(", "));
        };
        chosen.push(step);
    }
    Ok(chosen)
}

/// The outcomes in the order of the list. A check has somebody beside it only where there are others to run meanwhile.
fn attempt_all(chosen: &[&'static Step], closing: &mut Closing) -> Vec<Outcome> {
    let of = |turn: Turn| chosen.iter().copied().filter(move |step| step.turn == turn);
    let mut outcomes = if of(Turn::InOrder).next().is_none() {
        of(Turn::Beside).map(|step| attempt(step, closing)).collect()
    } else {
        std::thread::scope(|scope| {
            let beside = scope.spawn(|| of(Turn::Beside).map(beside::attempt).collect::<Vec<_>>());
            let mut outcomes: Vec<Outcome> = of(Turn::InOrder).map(|step| attempt(step, closing)).collect();
            outcomes.extend(beside.join().unwrap_or_else(|panic| std::panic::resume_unwind(panic)));
            outcomes
        })
    };
    outcomes.extend(of(Turn::Last).map(|step| attempt(step, closing)));
    outcomes
}

fn attempt(step: &'static Step, closing: &mut Closing) -> Outcome {
    println!("\n━━ {}: {}", step.name, step.what);
    let began = Instant::now();
    let problem = (step.run)(closing).err().map(|problem| format!("{problem:#}"));
    let took = began.elapsed();
    match &problem {
        None => println!("━━ {} is well, {}", step.name, say::seconds(took)),
        Some(problem) => println!("━━ {} FAILED, {}: {problem}", step.name, say::seconds(took)),
    }
    Outcome { step, took, problem }
}

fn summarise(outcomes: &[Outcome], closing: &Closing, took: Duration) {
    println!("\n{SUMMARY}");
    for outcome in outcomes {
        let word = if outcome.problem.is_none() { "ok" } else { "FAILED" };
        println!("  {:<11} {:<7} {:>12}  {}", outcome.step.name, word, say::seconds(outcome.took), outcome.step.what);
    }
    println!("  {:<11} {:<7} {:>12}\n", "in all", "", say::seconds(took));
    for line in closing {
        println!("{line}");
    }
}
