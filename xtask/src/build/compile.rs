//! Cargo's part of the build: the app as one WebAssembly file.

use std::path::PathBuf;

use anyhow::Result;

use super::Profile;
use crate::shell;
use crate::toolchain::{TARGET, Toolchain};

/// Compiles the app and answers where the file is.
pub(super) fn app(toolchain: &Toolchain, profile: Profile) -> Result<PathBuf> {
    let mut cargo = toolchain.cargo("build");
    cargo.args(["--package", "layshaft", "--bin", "layshaft"]);
    match profile {
        Profile::Release => cargo.arg("--release"),
        // Views without their types compile about three times as quickly.
        Profile::Dev => cargo.env("RUSTFLAGS", "--cfg erase_components"),
    };
    shell::run(&mut cargo)?;
    let folder = match profile {
        Profile::Release => "release",
        Profile::Dev => "debug",
    };
    Ok(shell::target().join("web").join(TARGET).join(folder).join("layshaft.wasm"))
}
