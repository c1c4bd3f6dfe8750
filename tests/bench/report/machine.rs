//! The machine and the programs it was measured with, in words.

use std::process::Command;

use xtask::shell;

/// One line.
pub(crate) fn words() -> String {
    let cpu = std::fs::read_to_string("/proc/cpuinfo").unwrap_or_default();
    let line = |key: &str| cpu.lines().find(|line| line.starts_with(key)).and_then(|line| line.split(':').nth(1)).map(str::trim);
    let cores = std::thread::available_parallelism().map_or(1, usize::from);
    let version =
        |program: &str| shell::output(Command::new(program).arg("--version")).unwrap_or_else(|| format!("{program} of unknown version"));
    let busy = std::fs::read_to_string("/proc/loadavg").unwrap_or_default();
    let busy = busy.split(' ').next().unwrap_or("?").to_owned();
    format!(
        "{} ({cores} cores, load {busy} when this was written), {}, {}",
        line("model name").unwrap_or("unknown processor"),
        version("rustc"),
        version("chromium")
    )
}
