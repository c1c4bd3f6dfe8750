//! All measurements in one run, written as one table: this machine, the browser, and the programs a person would otherwise use.
//!
//! The recipe: build the site and the module, ask criterion, ask the peers, ask the browser, weigh the files, write `target/bench.md`.

mod machine;
mod module;
mod native;
mod page;
mod peers;
mod rival;
mod sizes;
mod table;

use std::path::PathBuf;
use std::process::ExitCode;

use anyhow::{Context, Result};
use xtask::build::{self, Profile};
use xtask::shell;

/// The folder of what is measured in between.
fn folder() -> PathBuf {
    shell::target().join("bench")
}

fn main() -> ExitCode {
    match measure() {
        Ok(file) => {
            println!("The table is in {}", file.display());
            ExitCode::SUCCESS
        }
        Err(problem) => {
            eprintln!("\nbench: {problem:#}");
            ExitCode::FAILURE
        }
    }
}

fn measure() -> Result<PathBuf> {
    std::fs::create_dir_all(folder()).context("cannot make the folder of the measurements")?;
    let site = if let Some(site) = std::env::var_os("LAYSHAFT_SITE") {
        site.into()
    } else {
        build::site(Profile::Release, &Profile::Release.folder())?;
        Profile::Release.folder()
    };
    let native = native::read()?;
    let peers = peers::ask(&folder())?;
    let module = module::ask(&folder())?;
    let rival = rival::ask(&folder())?;
    let page = page::ask(&site)?;
    let sizes = sizes::weigh(&site)?;
    let text = table::written(&table::Measured { machine: machine::words(), native, peers, module, rival, page, sizes });
    let file = shell::target().join("bench.md");
    std::fs::write(&file, &text).context("cannot write the table")?;
    println!("{text}");
    Ok(file)
}
