//! The checks one by one, in the order of the summary.

use anyhow::Result;

use super::{Closing, Step, Turn, budget, closing};
use crate::build::{self, Profile};
use crate::toolchain::Toolchain;
use crate::{shell, tidy};

pub(super) const ALL: [Step; 8] = [
    Step { name: "fmt", what: "is every file formatted?", run: format, turn: Turn::InOrder },
    Step { name: "tidy", what: "are the rules of the house kept?", run: |_| tidy::run(), turn: Turn::InOrder },
    Step { name: "clippy", what: "lints of the library, xtask and all tests", run: clippy, turn: Turn::InOrder },
    Step { name: "doc", what: "is every link in the documentation good?", run: doc, turn: Turn::InOrder },
    Step { name: "native", what: "the tests that need no browser", run: native, turn: Turn::InOrder },
    Step { name: "web-clippy", what: "lints of the browser code", run: web_clippy, turn: Turn::Beside },
    Step { name: "web", what: "the release build, and what a first visit costs", run: web, turn: Turn::Beside },
    Step { name: "browser", what: "the tests in a real browser", run: browser, turn: Turn::Last },
];

fn format(_: &mut Closing) -> Result<()> {
    shell::run(shell::cargo("fmt").args(["--all", "--check"]))
}

/// Warnings are denied behind the `--`, not in RUSTFLAGS, which would compile every dependency anew.
fn clippy(_: &mut Closing) -> Result<()> {
    shell::run(shell::cargo("clippy").args(["--workspace", "--all-targets", "--", "-D", "warnings"]))
}

fn doc(_: &mut Closing) -> Result<()> {
    shell::run(shell::cargo("doc").args(["--workspace", "--no-deps"]).env("RUSTDOCFLAGS", "-D warnings"))
}

/// Where the random laws begin, so that the same tree answers the same on every machine. A plain `cargo test` begins elsewhere each time.
const SEED: &str = "1794";
const SEED_NAME: &str = "PROPTEST_RNG_SEED";

fn native(closing: &mut Closing) -> Result<()> {
    let mut command = shell::cargo("test");
    if std::env::var_os(SEED_NAME).is_none() {
        command.env(SEED_NAME, SEED);
    }
    closing::run(command.args(["--package", "layshaft", "--package", "xtask"]), closing)
}

fn web_clippy(_: &mut Closing) -> Result<()> {
    let toolchain = Toolchain::ready()?;
    toolchain.ready_for_clippy()?;
    shell::run(toolchain.cargo("clippy").args(["--package", "layshaft", "--", "-D", "warnings"]))
}

fn web(_: &mut Closing) -> Result<()> {
    let built = build::site(Profile::Release, &Profile::Release.folder())?;
    built.sizes.print();
    budget::check(&built)
}

fn browser(closing: &mut Closing) -> Result<()> {
    closing::run(shell::cargo("test").args(["--package", "browser-tests"]), closing)
}
