//! From sources to a folder any static host can serve, also below a sub-path.
//!
//! The recipe: compile to WebAssembly, make the bindings, join the style sheets, name every file after its content, write the folder.

mod bindings;
mod compile;
mod hash;
mod names;
mod policy;
mod site;
mod sizes;
mod styles;

use std::path::{Path, PathBuf};

use anyhow::Result;

pub use names::is_hashed;
pub use policy::{header_policy, page_policy};
pub use sizes::Sizes;

use crate::toolchain::Toolchain;
use crate::{say, shell};

/// How the app is compiled.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Profile {
    /// Quick to compile, slow to run, never kept by a service worker.
    Dev,
    /// Small and fast: what people use and what the browser tests see.
    Release,
}

impl Profile {
    /// The development profile where it is asked for, else release.
    pub fn dev_if(asked: bool) -> Self {
        if asked { Self::Dev } else { Self::Release }
    }

    /// Where the site goes when no other place is named.
    pub fn folder(self) -> PathBuf {
        shell::target().join(match self {
            Self::Dev => "site-dev",
            Self::Release => "site",
        })
    }
}

/// Builds the site into a folder and answers how large its files are.
///
/// # Errors
/// The step that failed, by its name, and why.
pub fn site(profile: Profile, out: &Path) -> Result<Sizes> {
    let toolchain = Toolchain::ready()?;
    site_with(&toolchain, profile, out)
}

/// As [`site`], with a toolchain found before.
///
/// # Errors
/// The step that failed, by its name, and why.
pub fn site_with(toolchain: &Toolchain, profile: Profile, out: &Path) -> Result<Sizes> {
    let compiled = say::step("Compile the app to WebAssembly", || compile::app(toolchain, profile))?;
    let bindings = say::step("Make the bindings", || bindings::of(&compiled, profile))?;
    say::step("Join the style sheets, name the files, write the folder", || {
        let css = styles::joined(&shell::project().join("style"))?;
        let site = site::assemble(profile, bindings, css)?;
        site.write(out)?;
        Ok(Sizes::of(site.files()))
    })
}
