//! The door of `cargo xtask`: which command was asked for, and with what.

use std::process::ExitCode;

use anyhow::{Result, bail};
use xtask::build::{self, Profile};
use xtask::options::Options;
use xtask::{bench, check, serve, shell, tidy};

const USAGE: &str = "\
cargo xtask serve [--dev] [--port N] [--lan]   build Layshaft and serve it; --dev builds quickly and again on every change
cargo xtask test [--only NAME,NAME]            every check of the project, or those named
cargo xtask build [--dev] [--out DIR]          write the folder a static host serves (target/site)
cargo xtask bench                              measure, and write target/bench.md
cargo xtask tidy                               the rules of the house alone
cargo xtask look [--only NAME]                 pictures of every question, written to target/look
cargo xtask figures FILE [--strict]            every figure of a job file's sheet and every problem of its fields as JSON";

fn main() -> ExitCode {
    let mut given = std::env::args().skip(1);
    let command = given.next().unwrap_or_default();
    match run(&command, given.collect()) {
        Ok(()) => ExitCode::SUCCESS,
        Err(problem) => {
            eprintln!("\nxtask: {problem:#}");
            ExitCode::FAILURE
        }
    }
}

fn run(command: &str, given: Vec<String>) -> Result<()> {
    match command {
        "build" => build_folder(&Options::parse(given, &["--dev"], &["--out"])?),
        "serve" => serve_pages(&Options::parse(given, &["--dev", "--lan"], &["--port"])?),
        "test" => check::run(&Options::parse(given, &[], &["--only"])?),
        "bench" => bench::run(),
        "tidy" => tidy::run(),
        "look" => look(&given),
        "figures" => figures(&given),
        "" | "help" | "--help" | "-h" => {
            println!("{USAGE}");
            Ok(())
        }
        other => bail!("there is no command `{other}`. These are:\n{USAGE}"),
    }
}

fn build_folder(options: &Options) -> Result<()> {
    let profile = Profile::dev_if(options.has("--dev"));
    let out = options.value("--out").map_or_else(|| profile.folder(), Into::into);
    build::site(profile, &out)?.sizes.print();
    println!("Layshaft is in {}", out.display());
    Ok(())
}

fn serve_pages(options: &Options) -> Result<()> {
    let port = match options.value("--port") {
        Some(text) => Some(text.parse().map_err(|_| anyhow::anyhow!("`--port {text}`: a port is a whole number from 1 to 65535"))?),
        None => None,
    };
    serve::run(&serve::Wish { profile: Profile::dev_if(options.has("--dev")), port, lan: options.has("--lan") })
}

fn look(given: &[String]) -> Result<()> {
    let mut cargo = shell::cargo("run");
    cargo.args(["--quiet", "--package", "browser-tests", "--bin", "look", "--"]).args(given);
    shell::run(&mut cargo)
}

/// Worked out by the library itself, natively, so that xtask need not be built with it.
fn figures(given: &[String]) -> Result<()> {
    let (options, files): (Vec<&String>, Vec<&String>) = given.iter().partition(|word| word.starts_with("--"));
    let ([file], true) = (files.as_slice(), options.iter().all(|option| *option == "--strict")) else {
        bail!("`figures` wants one job file, as the page saves it, and knows --strict: a field that does not read is a failure")
    };
    let file = std::path::absolute(file)?;
    let mut cargo = shell::cargo("run");
    cargo.args(["--quiet", "--package", "layshaft", "--bin", "layshaft", "--", "figures"]).arg(file).args(options);
    shell::run(&mut cargo)
}
