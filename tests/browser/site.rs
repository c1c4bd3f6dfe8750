//! The site under test: built once for all tests, served for each.

use std::fs;
use std::path::{Path, PathBuf};
use std::sync::OnceLock;

use anyhow::{Context, Result, anyhow};
use xtask::build::{self, Profile};
use xtask::serve::Server;

/// A folder, and the server that serves it.
#[derive(Debug)]
pub struct Site {
    folder: PathBuf,
    below: String,
    server: Option<Server>,
    address: String,
}

impl Site {
    /// The release build, or what the variable `LAYSHAFT_SITE` names, below a path or at the root.
    ///
    /// # Errors
    /// The build fails or no port is free.
    pub fn built(below: &str) -> Result<Self> {
        Self::of(&built_folder()?, below)
    }

    /// Any folder, below a path or at the root.
    ///
    /// # Errors
    /// No port is free.
    pub fn of(folder: &Path, below: &str) -> Result<Self> {
        let server = Server::on_free_port(folder, below)?;
        let address = format!("http://{}{below}/", server.address());
        Ok(Self { folder: folder.to_owned(), below: below.to_owned(), server: Some(server), address })
    }

    /// The release build copied to a folder of its own, for tests that change its files: without the packed ones beside them, which a
    /// browser would be sent instead of the changed ones.
    ///
    /// # Errors
    /// The build or the copy fails.
    pub fn copied(name: &str) -> Result<Self> {
        let folder = xtask::shell::target().join("site-copies").join(name);
        if folder.exists() {
            fs::remove_dir_all(&folder).with_context(|| format!("cannot clear {}", folder.display()))?;
        }
        copy(&built_folder()?, &folder)?;
        Self::of(&folder, "")
    }

    /// Where the page is, with a slash at the end.
    pub fn address(&self) -> &str {
        &self.address
    }

    /// The served folder.
    pub fn folder(&self) -> &Path {
        &self.folder
    }

    /// Pulls the plug: every connection closes, nothing listens any more.
    pub fn stop(&mut self) {
        self.server = None;
    }

    /// Serves again, where it was served before.
    ///
    /// # Errors
    /// The port has been taken in between.
    pub fn start_again(&mut self) -> Result<()> {
        let host = self.address.trim_start_matches("http://").split('/').next().unwrap_or_default();
        let listener = std::net::TcpListener::bind(host).with_context(|| format!("{host} is taken"))?;
        self.server = Some(Server::start(&self.folder, listener, &self.below)?);
        Ok(())
    }
}

/// Builds at the first call; later ones, on other threads too, wait and answer the same.
fn built_folder() -> Result<PathBuf> {
    static BUILT: OnceLock<Result<PathBuf, String>> = OnceLock::new();
    let built = BUILT.get_or_init(|| {
        if let Some(folder) = std::env::var_os("LAYSHAFT_SITE") {
            return Ok(folder.into());
        }
        let folder = Profile::Release.folder();
        build::site(Profile::Release, &folder).map(|_| folder).map_err(|problem| format!("{problem:#}"))
    });
    built.clone().map_err(|problem| anyhow!(problem))
}

fn copy(from: &Path, to: &Path) -> Result<()> {
    fs::create_dir_all(to).with_context(|| format!("cannot make {}", to.display()))?;
    for entry in fs::read_dir(from)?.flatten() {
        let target = to.join(entry.file_name());
        let is_packed = target.extension().is_some_and(|ending| ending == "br" || ending == "gz");
        if entry.path().is_dir() {
            copy(&entry.path(), &target)?;
        } else if !is_packed {
            fs::copy(entry.path(), &target).with_context(|| format!("cannot copy to {}", target.display()))?;
        }
    }
    Ok(())
}
