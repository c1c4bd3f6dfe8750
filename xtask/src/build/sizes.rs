//! How large the site is: each file as it lies on the disk and as it travels.

use std::collections::BTreeMap;
use std::io::Write;

use flate2::Compression;
use flate2::write::GzEncoder;

/// Name, bytes, and bytes after gzip, of every file.
#[derive(Debug)]
pub struct Sizes(Vec<(String, usize, usize)>);

impl Sizes {
    pub(super) fn of(files: &BTreeMap<String, Vec<u8>>) -> Self {
        Self(files.iter().map(|(name, content)| (name.clone(), content.len(), gzipped(content))).collect())
    }

    /// Bytes of all files together: as they lie, and after gzip.
    pub fn total(&self) -> (usize, usize) {
        self.0.iter().fold((0, 0), |(raw, gzip), (_, r, g)| (raw + r, gzip + g))
    }

    /// Prints a table.
    pub fn print(&self) {
        println!("\n{:>12} {:>10}  file", "bytes", "gzip");
        for (name, raw, gzip) in &self.0 {
            println!("{raw:>12} {gzip:>10}  {name}");
        }
        let (raw, gzip) = self.total();
        println!("{raw:>12} {gzip:>10}  in all");
    }
}

fn gzipped(content: &[u8]) -> usize {
    let mut encoder = GzEncoder::new(Vec::new(), Compression::best());
    // Writing to memory cannot fail; if it did, the size would only be shown too large.
    match encoder.write_all(content).and_then(|()| encoder.finish()) {
        Ok(packed) => packed.len(),
        Err(_) => content.len(),
    }
}
