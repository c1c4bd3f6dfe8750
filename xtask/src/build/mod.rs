//! From sources to a folder any static host can serve, also below a sub-path.
//!
//! The recipe: compile to WebAssembly, cut it into what comes first and what comes later, make the bindings, join the style sheets, name
//! every file after its content, pack the files as they travel, write the folder.

mod bindings;
mod compile;
mod hash;
mod names;
mod packed;
mod parts;
mod policy;
mod program;
mod sections;
mod shared;
mod site;
mod sizes;
mod styles;

use std::collections::BTreeMap;
use std::path::{Path, PathBuf};

use anyhow::Result;

pub use names::is_hashed;
pub use policy::{header_policy, page_policy};
pub use sizes::{Size, Sizes};

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

/// What a build made.
#[derive(Debug)]
pub struct Built {
    /// How large its files are. Development builds are not packed.
    pub sizes: Sizes,
    /// The names of all functions of the main program, which a first visit loads.
    pub functions: Vec<String>,
}

/// Builds the site into a folder.
///
/// # Errors
/// The step that failed, by its name, and why.
pub fn site(profile: Profile, out: &Path) -> Result<Built> {
    let toolchain = Toolchain::ready()?;
    site_with(&toolchain, profile, out)
}

/// As [`site`], with a toolchain found before.
///
/// # Errors
/// The step that failed, by its name, and why.
pub fn site_with(toolchain: &Toolchain, profile: Profile, out: &Path) -> Result<Built> {
    let compiled = say::step("Compile the app to WebAssembly", || compile::app(toolchain, profile))?;
    let mut pieces = say::step("Cut it into what comes first and what comes later", || parts::cut(&compiled, profile))?;
    let main = std::mem::take(&mut pieces.main);
    let bindings = say::step("Make the bindings", || bindings::of(main, profile))?;
    let (site, later, functions) = say::step("Join the style sheets, name the files", || {
        let css = styles::joined(&shell::project().join("style"))?;
        let mut program = program::name(bindings, pieces, &site::public_text("parts.js")?)?;
        let (later, functions) = (std::mem::take(&mut program.later), std::mem::take(&mut program.functions));
        Ok((site::assemble(profile, program, css)?, later, functions))
    })?;
    say::step("Pack the files as they travel, write the folder", || {
        let packed = match profile {
            Profile::Release => packed::all(site.files(), out)?,
            Profile::Dev => BTreeMap::new(),
        };
        site.write(&packed, out)?;
        Ok(Built { sizes: Sizes::of(site.files(), &packed, &later), functions })
    })
}
