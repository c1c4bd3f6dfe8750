//! The programs a person would otherwise write: numpy for the search, scipy for the runs, in an environment of their own under target.

use std::path::Path;
use std::process::Command;

use anyhow::{Context, Result, ensure};
use serde_json::Value;
use xtask::shell;

/// What the peers took, and whether they agree with us.
pub(crate) struct Peers {
    /// Seconds of the search.
    pub(crate) search_s: f64,
    /// Seconds of one run.
    pub(crate) run_s: f64,
    /// The greatest difference of a run's time, in seconds.
    pub(crate) run_off_s: f64,
    /// The programs and their versions.
    pub(crate) words: String,
}

/// Asks both.
pub(crate) fn ask(folder: &Path) -> Result<Peers> {
    let python = environment(folder)?;
    let ours = folder.join("ours.json");
    let search = answer(&python, "search.py", &ours)?;
    ensure!(search["same"] == Value::Bool(true), "numpy's best hundred is another than ours: {search}");
    let runs = answer(&python, "runs.py", &ours)?;
    let number = |value: &Value, name: &str| value[name].as_f64().with_context(|| format!("the peer answers no {name}: {value}"));
    let run_off_s = number(&runs, "off")?;
    ensure!(run_off_s < 0.005, "scipy's runs take other times than ours, by {run_off_s} s");
    let words = format!("numpy {}, scipy {}", search["version"].as_str().unwrap_or("?"), runs["version"].as_str().unwrap_or("?"));
    Ok(Peers { search_s: number(&search, "seconds")?, run_s: number(&runs, "seconds")?, run_off_s, words })
}

fn environment(folder: &Path) -> Result<std::path::PathBuf> {
    let place = folder.join("venv");
    let python = place.join("bin/python");
    if !python.exists() {
        shell::run(Command::new("python3").args(["-m", "venv"]).arg(&place))
            .context("Python with its venv module is needed (Debian: python3-venv)")?;
    }
    if shell::output(Command::new(&python).args(["-c", "import numpy, scipy"])).is_none() {
        shell::run(Command::new(&python).args(["-m", "pip", "install", "--quiet", "numpy", "scipy"]))?;
    }
    Ok(python)
}

fn answer(python: &Path, name: &str, ours: &Path) -> Result<Value> {
    let script = Path::new(env!("CARGO_MANIFEST_DIR")).join("peers").join(name);
    let mut command = Command::new(python);
    // One thread, as ours.
    command.arg(script).arg(ours).env("OPENBLAS_NUM_THREADS", "1").env("OMP_NUM_THREADS", "1");
    let text = shell::output(&mut command).with_context(|| format!("{name} does not run"))?;
    serde_json::from_str(&text).with_context(|| format!("{name} answers {text}"))
}
