//! What travels: every file of the site, after brotli and after gzip.

use std::io::Write;
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
    /// Of the program alone, after brotli.
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
        let content = std::fs::read(&path)?;
        let (brotli, gzip) = (brotli(&content)?, gzip(&content)?);
        sizes.raw += content.len();
        // What is packed already does not travel larger for being packed again.
        sizes.brotli += brotli.min(content.len());
        sizes.gzip += gzip.min(content.len());
        if path.extension().is_some_and(|ending| ending == "wasm") {
            sizes.program_brotli += brotli;
        }
    }
    Ok(())
}

fn brotli(content: &[u8]) -> Result<usize> {
    let mut packed = Vec::new();
    let params = brotli::enc::BrotliEncoderParams { quality: 11, lgwin: 24, ..Default::default() };
    brotli::BrotliCompress(&mut &*content, &mut packed, &params)?;
    Ok(packed.len())
}

fn gzip(content: &[u8]) -> Result<usize> {
    let mut encoder = flate2::write::GzEncoder::new(Vec::new(), flate2::Compression::best());
    encoder.write_all(content)?;
    Ok(encoder.finish()?.len())
}
