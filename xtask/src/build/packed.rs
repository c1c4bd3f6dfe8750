//! The files as they travel: each after brotli and after gzip, beside the plain one, for hosts that send what lies beside.

use std::collections::BTreeMap;
use std::fs;
use std::io::Write;
use std::path::Path;
use std::sync::atomic::{AtomicUsize, Ordering};

use anyhow::{Context, Result, anyhow};
use brotli::enc::BrotliEncoderParams;
use flate2::Compression;
use flate2::write::GzEncoder;

/// Endings of files that are packed already.
const PACKED_ALREADY: [&str; 2] = ["woff2", "png"];

/// One file packed both ways. Nothing where packing it is of no use.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub(super) struct Packed {
    pub(super) brotli: Option<Vec<u8>>,
    pub(super) gzip: Option<Vec<u8>>,
}

impl Packed {
    /// The endings under which they lie beside the plain file, with their content.
    pub(super) fn beside(&self) -> impl Iterator<Item = (&'static str, &Vec<u8>)> {
        [("br", &self.brotli), ("gz", &self.gzip)].into_iter().filter_map(|(ending, content)| Some((ending, content.as_ref()?)))
    }
}

/// Packs every file, on all processors. What an earlier build left in the folder is taken over where the file is still the same: packing
/// as small as can be takes seconds.
pub(super) fn all(files: &BTreeMap<String, Vec<u8>>, earlier: &Path) -> Result<BTreeMap<String, Packed>> {
    let files: Vec<(&String, &Vec<u8>)> = files.iter().collect();
    let next = AtomicUsize::new(0);
    let work = || {
        let mut done = Vec::new();
        while let Some((name, content)) = files.get(next.fetch_add(1, Ordering::Relaxed)) {
            done.push(((*name).clone(), one(name, content, earlier)?));
        }
        Ok(done)
    };
    let threads = std::thread::available_parallelism().map_or(1, std::num::NonZero::get);
    std::thread::scope(|scope| {
        let workers: Vec<_> = (0..threads).map(|_| scope.spawn(work)).collect();
        let done: Result<Vec<_>> = workers.into_iter().map(|worker| worker.join().map_err(|_| anyhow!("packing broke down"))?).collect();
        Ok(done?.into_iter().flatten().collect())
    })
}

fn one(name: &str, content: &[u8], earlier: &Path) -> Result<Packed> {
    if Path::new(name).extension().is_some_and(|ending| PACKED_ALREADY.iter().any(|packed| ending == *packed)) {
        return Ok(Packed::default());
    }
    if let Some(packed) = left_by_earlier(name, content, earlier) {
        return Ok(packed);
    }
    let smaller = |packed: Vec<u8>| (packed.len() < content.len()).then_some(packed);
    Ok(Packed { brotli: smaller(brotli(content)?), gzip: smaller(gzip(content)?) })
}

fn left_by_earlier(name: &str, content: &[u8], folder: &Path) -> Option<Packed> {
    if fs::read(folder.join(name)).ok()? != content {
        return None;
    }
    let beside = |ending: &str| fs::read(folder.join(format!("{name}.{ending}"))).ok();
    Some(Packed { brotli: Some(beside("br")?), gzip: Some(beside("gz")?) })
}

/// As small as browsers can unpack it: the best quality, the largest window they all have.
fn brotli(content: &[u8]) -> Result<Vec<u8>> {
    let mut packed = Vec::new();
    let params = BrotliEncoderParams { quality: 11, lgwin: 24, size_hint: content.len(), ..BrotliEncoderParams::default() };
    brotli::BrotliCompress(&mut &*content, &mut packed, &params).context("brotli does not take the file")?;
    Ok(packed)
}

fn gzip(content: &[u8]) -> Result<Vec<u8>> {
    let mut encoder = GzEncoder::new(Vec::new(), Compression::best());
    encoder.write_all(content)?;
    Ok(encoder.finish()?)
}

#[cfg(test)]
mod tests {
    use std::collections::BTreeMap;
    use std::io::Read;
    use std::path::Path;

    use super::{Packed, all};

    #[test]
    fn what_is_packed_unpacks_to_the_same() {
        let text = "countershaft, ".repeat(200).into_bytes();
        let files =
            BTreeMap::from([("a.js".to_owned(), text.clone()), ("b.woff2".to_owned(), text.clone()), ("c.txt".to_owned(), vec![7])]);
        let packed = all(&files, Path::new("no such folder")).unwrap();
        assert_eq!(packed["b.woff2"], Packed::default(), "faces are packed already");
        assert_eq!(packed["c.txt"], Packed::default(), "one byte does not get smaller");
        let mut read = Vec::new();
        brotli::Decompressor::new(packed["a.js"].brotli.as_deref().unwrap(), 4096).read_to_end(&mut read).unwrap();
        assert_eq!(read, text);
        read.clear();
        flate2::read::GzDecoder::new(packed["a.js"].gzip.as_deref().unwrap()).read_to_end(&mut read).unwrap();
        assert_eq!(read, text);
    }
}
