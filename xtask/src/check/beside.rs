//! Checks that run beside the others: what is compiled for the browser has a target folder of its own, and its long link keeps one
//! core busy while the tests of this machine want the other.

use std::fs::{self, File};
use std::path::Path;
use std::process::Command;
use std::time::Instant;

use anyhow::{Context, Result, bail};

use super::{Outcome, SUMMARY, Step};
use crate::{say, shell};

/// Runs a check as a program of its own and shows what it printed once it has ended, so that two checks do not talk at once.
pub(super) fn attempt(step: &'static Step) -> Outcome {
    println!("━━ {} runs beside", step.name);
    let began = Instant::now();
    let problem = run(step.name).err().map(|problem| format!("{problem:#}"));
    let took = began.elapsed();
    println!("━━ {} {}, {}", step.name, if problem.is_none() { "is well" } else { "FAILED" }, say::seconds(took));
    Outcome { step, took, problem }
}

fn run(name: &str) -> Result<()> {
    let path = shell::target().join(format!("check-{name}.log"));
    let log = File::create(&path).with_context(|| format!("cannot write {}", path.display()))?;
    let program = std::env::current_exe().context("cannot tell which program this is")?;
    let mut command = Command::new(program);
    command.args(["test", "--only", name]).stderr(log.try_clone()?).stdout(log);
    let status = command.status().with_context(|| format!("cannot start {}", shell::shown(&command)))?;
    show(&path)?;
    if !status.success() {
        bail!("what it printed stands above");
    }
    Ok(())
}

/// All but the summary, which the outer command writes for every check.
fn show(log: &Path) -> Result<()> {
    let bytes = fs::read(log).with_context(|| format!("cannot read {}", log.display()))?;
    let text = String::from_utf8_lossy(&bytes);
    println!("{}", text.split(SUMMARY).next().unwrap_or_default());
    Ok(())
}
