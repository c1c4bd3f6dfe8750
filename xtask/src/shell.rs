//! Running other programs: cargo without what the outer cargo left behind, and errors that name the command.

use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};
use std::time::{Duration, Instant};

use anyhow::{Context, Result, bail};

/// The folder of the project.
pub fn project() -> &'static Path {
    let here = Path::new(env!("CARGO_MANIFEST_DIR"));
    here.parent().unwrap_or(here)
}

/// The folder everything built goes to.
pub fn target() -> PathBuf {
    project().join("target")
}

/// A cargo command for this machine, run in the project's folder.
pub fn cargo(subcommand: &str) -> Command {
    let program = std::env::var_os("CARGO").unwrap_or_else(|| "cargo".into());
    let mut command = Command::new(program);
    command.arg(subcommand).current_dir(project());
    forget_outer_cargo(&mut command);
    command
}

/// `cargo run` tells its child about the package it started; an inner cargo must not see that, or build scripts run again.
pub fn forget_outer_cargo(command: &mut Command) {
    for (name, _) in std::env::vars_os() {
        let text = name.to_string_lossy();
        if text.starts_with("CARGO_PKG_") || text.starts_with("CARGO_MANIFEST_") || text.starts_with("CARGO_BIN_") || text == "OUT_DIR" {
            command.env_remove(&name);
        }
    }
}

/// Runs a command to its end with its output in view.
///
/// # Errors
/// The command cannot be started or does not succeed.
pub fn run(command: &mut Command) -> Result<()> {
    let status = command.status().with_context(|| format!("cannot start {}", shown(command)))?;
    if !status.success() {
        bail!("{} did not succeed ({status})", shown(command));
    }
    Ok(())
}

/// What a command prints, or nothing where it cannot be started or does not succeed.
pub fn output(command: &mut Command) -> Option<String> {
    let output = command.stdin(Stdio::null()).stderr(Stdio::null()).output().ok()?;
    output.status.success().then(|| String::from_utf8_lossy(&output.stdout).trim().to_owned())
}

/// Does the command succeed within the time? It is ended when it does not.
pub fn succeeds_within(command: &mut Command, limit: Duration) -> bool {
    let Ok(mut child) = command.stdin(Stdio::null()).stdout(Stdio::null()).stderr(Stdio::null()).spawn() else { return false };
    let began = Instant::now();
    while began.elapsed() < limit {
        match child.try_wait() {
            Ok(Some(status)) => return status.success(),
            Ok(None) => std::thread::sleep(Duration::from_millis(50)),
            Err(_) => return false,
        }
    }
    let _ = child.kill();
    let _ = child.wait();
    false
}

/// The command as it would be typed.
pub fn shown(command: &Command) -> String {
    let words = std::iter::once(command.get_program()).chain(command.get_args());
    format!("`{}`", words.map(|w| w.to_string_lossy().into_owned()).collect::<Vec<_>>().join(" "))
}
