//! Debian packages: which are missing, and installing them where that is possible.

use std::process::Command;

use anyhow::{Context, Result};

use crate::{say, shell};

/// The packages of the list that are not installed.
pub fn missing<'a>(packages: &[&'a str]) -> Vec<&'a str> {
    let installed = |package: &str| {
        let status = shell::output(Command::new("dpkg-query").args(["--show", "--showformat=${Status}", package]));
        status.is_some_and(|s| s.ends_with(" installed"))
    };
    packages.iter().copied().filter(|p| !installed(p)).collect()
}

/// Can this command install packages: is it Debian's family, and are we root?
pub fn can_install() -> bool {
    let root = shell::output(Command::new("id").arg("-u")).is_some_and(|id| id == "0");
    root && shell::output(Command::new("apt-get").arg("--version")).is_some()
}

/// Installs packages, after one look at what the archive has today.
///
/// # Errors
/// The archive cannot be reached or has no such package.
pub fn install(packages: &[&str]) -> Result<()> {
    say::step(&format!("Install the Debian packages {}", packages.join(" ")), || {
        let apt = |words: &[&str]| {
            let mut command = Command::new("apt-get");
            command.env("DEBIAN_FRONTEND", "noninteractive").arg("-qq").args(words);
            shell::run(command.stdout(std::process::Stdio::null()))
        };
        apt(&["update"]).context("the Debian archive cannot be reached")?;
        apt(&[&["install", "-y", "--no-install-recommends"], packages].concat())
    })
}

/// The line a person types to install packages.
pub fn by_hand(packages: &[&str]) -> String {
    format!("apt-get install -y --no-install-recommends {}", packages.join(" "))
}
