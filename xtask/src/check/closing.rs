//! Running a test program with its output in view, and keeping the lines it closes with.

use std::io::{BufRead, BufReader};
use std::process::{Command, Stdio};

use anyhow::{Context, Result, bail};

use super::Closing;
use crate::shell;

/// Runs a test command and keeps its closing lines. Errors a test answers say all in their sentence, without a trace.
pub(super) fn run(command: &mut Command, closing: &mut Closing) -> Result<()> {
    let mut child = command
        .env("RUST_LIB_BACKTRACE", "0")
        .stdout(Stdio::piped())
        .spawn()
        .with_context(|| format!("cannot start {}", shell::shown(command)))?;
    if let Some(output) = child.stdout.take() {
        for line in BufReader::new(output).lines().map_while(Result::ok) {
            println!("{line}");
            if line.starts_with("test result:") {
                closing.push(line);
            }
        }
    }
    let status = child.wait()?;
    if !status.success() {
        bail!("{} did not succeed ({status})", shell::shown(command));
    }
    Ok(())
}
