//! How large the site is: each file as it lies on the disk and as it travels, and what of it a first visit waits for.

use std::collections::BTreeMap;

use super::packed::Packed;

/// One file.
#[derive(Debug, Clone)]
pub struct Size {
    /// Its path in the site.
    pub name: String,
    /// Bytes as it lies.
    pub raw: usize,
    /// Bytes after gzip.
    pub gzip: usize,
    /// Bytes after brotli.
    pub brotli: usize,
    /// Whether the page needs it before its first figure.
    pub is_first: bool,
}

/// Every file of the site.
#[derive(Debug)]
pub struct Sizes(Vec<Size>);

impl Sizes {
    /// `later` are the files of the program's later parts.
    pub(super) fn of(files: &BTreeMap<String, Vec<u8>>, packed: &BTreeMap<String, Packed>, later: &[String]) -> Self {
        let size = |(name, content): (&String, &Vec<u8>)| {
            let bytes = |packed: Option<&Vec<u8>>| packed.map_or(content.len(), Vec::len);
            let packed = packed.get(name);
            Size {
                name: name.clone(),
                raw: content.len(),
                gzip: bytes(packed.and_then(|packed| packed.gzip.as_ref())),
                brotli: bytes(packed.and_then(|packed| packed.brotli.as_ref())),
                is_first: is_first(name) && !later.contains(name),
            }
        };
        Self(files.iter().map(size).collect())
    }

    /// The files.
    pub fn files(&self) -> &[Size] {
        &self.0
    }

    /// Bytes after brotli that a first visit waits for until the first figure.
    pub fn first_visit(&self) -> usize {
        self.0.iter().filter(|size| size.is_first).map(|size| size.brotli).sum()
    }

    /// Prints a table: what a first visit waits for above, the rest below.
    pub fn print(&self) {
        println!("\n{:>12} {:>10} {:>10}  file", "bytes", "gzip", "brotli");
        self.print_those(true, "until the first figure");
        self.print_those(false, "later");
    }

    fn print_those(&self, is_first: bool, what: &str) {
        let those: Vec<&Size> = self.0.iter().filter(|size| size.is_first == is_first).collect();
        for Size { name, raw, gzip, brotli, .. } in &those {
            println!("{raw:>12} {gzip:>10} {brotli:>10}  {name}");
        }
        let sum = |of: fn(&Size) -> usize| those.iter().map(|size| of(size)).sum::<usize>();
        println!("{:>12} {:>10} {:>10}  {what}\n", sum(|size| size.raw), sum(|size| size.gzip), sum(|size| size.brotli));
    }
}

/// All but what the browser asks for on its own account (the service worker, the manifest and its pictures), the letters that only some
/// jobs have, and the licences.
fn is_first(name: &str) -> bool {
    let ending = name.rsplit('.').next().unwrap_or_default();
    let for_the_browser = name == "sw.js" || ["webmanifest", "png"].contains(&ending);
    // Asked for once the program runs.
    let follows = name.starts_with("more.");
    !for_the_browser && !follows && !name.contains("-accents-") && !super::site::is_licence(name)
}

#[cfg(test)]
mod tests {
    use std::collections::BTreeMap;

    use super::{Packed, Sizes};

    #[test]
    fn a_first_visit_waits_for_the_page_and_not_for_the_parts() {
        let files = BTreeMap::from(
            [
                "index.html",
                "app.js",
                "app_bg.wasm",
                "part-find.wasm",
                "sw.js",
                "icons/mark.png",
                "fonts/x-accents-400.woff2",
                "fonts/x-OFL.txt",
            ]
            .map(|name| (name.to_owned(), vec![0; 100])),
        );
        let packed = BTreeMap::from([("app.js".to_owned(), Packed { brotli: Some(vec![0; 30]), gzip: Some(vec![0; 40]) })]);
        let sizes = Sizes::of(&files, &packed, &["part-find.wasm".to_owned()]);
        assert_eq!(sizes.first_visit(), 100 + 30 + 100);
    }
}
