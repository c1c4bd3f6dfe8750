//! What travels: every file of the site, after brotli and after gzip, as the build packed them.

use std::path::Path;

use anyhow::{Context, Result};

/// Bytes of the whole site.
#[derive(Default)]
pub(crate) struct Sizes {
    /// As they lie on the disk.
    pub(crate) raw: usize,
    /// After brotli at its best.
    pub(crate) brotli: usize,
    /// After gzip at its best.
    pub(crate) gzip: usize,
    /// Of the program alone, all its parts, after brotli.
    pub(crate) program_brotli: usize,
}

/// Weighs every file.
pub(crate) fn weigh(folder: &Path) -> Result<Sizes> {
    let mut sizes = Sizes::default();
    collect(folder, &mut sizes)?;
    Ok(sizes)
}

fn collect(folder: &Path, sizes: &mut Sizes) -> Result<()> {
    for entry in std::fs::read_dir(folder).with_context(|| format!("{} is not there", folder.display()))?.flatten() {
        let path = entry.path();
        if path.is_dir() {
            collect(&path, sizes)?;
            continue;
        }
        let ending = path.extension().unwrap_or_default().to_string_lossy().into_owned();
        if ending == "br" || ending == "gz" {
            continue;
        }
        let raw = bytes(&path).with_context(|| format!("{} is gone", path.display()))?;
        // What is packed already has nothing beside it.
        let packed = |ending: &str| bytes(&path.with_added_extension(ending)).unwrap_or(raw);
        let brotli = packed("br");
        sizes.raw += raw;
        sizes.brotli += brotli;
        sizes.gzip += packed("gz");
        if ending == "wasm" {
            sizes.program_brotli += brotli;
        }
    }
    Ok(())
}

fn bytes(path: &Path) -> Option<usize> {
    usize::try_from(path.metadata().ok()?.len()).ok()
}
