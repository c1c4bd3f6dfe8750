//! The site as it will be served: every file with its final name, each naming the others by theirs.

use std::collections::BTreeMap;
use std::fs;
use std::path::Path;

use anyhow::{Context, Result};

use super::names::{hashed, refer};
use super::packed::Packed;
use super::program::Program;
use super::styles::Joined;
use super::{Profile, hash, page_policy};
use crate::shell;

/// The list of what the last build wrote, so that the next one takes away only that.
const LEDGER: &str = ".site-files";

/// Files by their path in the site.
pub(super) struct Site {
    files: BTreeMap<String, Vec<u8>>,
}

/// Puts the site together from what was built and what lies in `public/`.
pub(super) fn assemble(profile: Profile, program: Program, styles: Joined) -> Result<Site> {
    let public = shell::project().join("public");
    let read = public_text;
    let mut site = Site { files: BTreeMap::new() };

    let Joined { first: mut css, more } = styles;
    let mut page = fs::read_to_string(shell::project().join("index.html")).context("cannot read index.html")?;
    for (name, new) in site.take_in(&public, "fonts")? {
        css = refer(&css, &name, &new, "the style sheet")?;
        // The page asks early for those it needs first, and need not name the others.
        page = refer(&page, &name, &new, "index.html").unwrap_or(page);
    }
    let mut manifest = read("manifest.webmanifest")?;
    for (name, new) in site.take_in(&public, "icons")? {
        manifest = refer(&manifest, &name, &new, "manifest.webmanifest")?;
        page = refer(&page, &name, &new, "index.html").unwrap_or(page);
    }
    site.files.insert("manifest.webmanifest".to_owned(), manifest.into_bytes());

    let mut boot = read("boot.js")?;
    for (name, new) in &program.renamed {
        // The page asks early for the scripts; what starts the program asks for it, and leaves the parts to it.
        if *name != "app_bg.wasm" {
            page = refer(&page, name, new, "index.html")?;
        }
        if *name != "parts.js" {
            boot = refer(&boot, name, new, "boot.js")?;
        }
    }
    site.files.extend(program.files);
    let new = site.add_hashed("more.css", more.into_bytes());
    boot = refer(&boot, "more.css", &new, "boot.js")?;
    for (name, content) in [("boot.js", boot), ("style.css", css)] {
        let new = site.add_hashed(name, content.into_bytes());
        page = refer(&page, name, &new, "index.html")?;
    }
    site.files.insert("index.html".to_owned(), page.replace("{{csp}}", &page_policy()).into_bytes());
    let worker = match profile {
        Profile::Release => site.worker(&read("sw.js")?)?,
        Profile::Dev => read("sw-off.js")?,
    };
    site.files.insert("sw.js".to_owned(), worker.into_bytes());
    Ok(site)
}

impl Site {
    /// The files with their content.
    pub(super) fn files(&self) -> &BTreeMap<String, Vec<u8>> {
        &self.files
    }

    fn add_hashed(&mut self, name: &str, content: Vec<u8>) -> String {
        let new = hashed(name, &content);
        self.files.insert(new.clone(), content);
        new
    }

    /// Takes in a folder of `public/`; answers old and new names. Licences keep theirs: nothing refers to them.
    fn take_in(&mut self, public: &Path, folder: &str) -> Result<Vec<(String, String)>> {
        let entries = fs::read_dir(public.join(folder)).with_context(|| format!("cannot read public/{folder}"))?;
        let mut renamed = Vec::new();
        for entry in entries.flatten() {
            let name = format!("{folder}/{}", entry.file_name().to_string_lossy());
            let content = fs::read(entry.path()).with_context(|| format!("cannot read public/{name}"))?;
            if is_licence(&name) {
                self.files.insert(name, content);
            } else {
                let new = self.add_hashed(&name, content);
                renamed.push((name, new));
            }
        }
        renamed.sort();
        Ok(renamed)
    }

    /// The service worker, told which files to keep. Its version is the hash of all their names and contents.
    fn worker(&self, template: &str) -> Result<String> {
        let kept: Vec<&str> = self.files.keys().filter(|name| !is_licence(name)).map(|name| address(name)).collect();
        let all: Vec<u8> = self.files.iter().flat_map(|(name, content)| [name.as_bytes(), content].concat()).collect();
        Ok(template.replace("{{version}}", &hash::hex(&all)).replace("{{files}}", &serde_json::to_string(&kept)?))
    }

    /// Writes the folder, the page last, and takes away what an earlier build left there. Other people's files stay.
    pub(super) fn write(&self, packed: &BTreeMap<String, Packed>, out: &Path) -> Result<()> {
        let earlier = fs::read_to_string(out.join(LEDGER)).unwrap_or_default();
        let (page, others): (Vec<_>, Vec<_>) = self.files.iter().partition(|(name, _)| *name == "index.html");
        let mut written = Vec::new();
        for (name, content) in others.into_iter().chain(page) {
            let beside = packed.get(name).into_iter().flat_map(Packed::beside);
            for (name, content) in beside.map(|(ending, content)| (format!("{name}.{ending}"), content)).chain([(name.clone(), content)]) {
                write(&out.join(&name), content)?;
                written.push(name);
            }
        }
        for stale in earlier.lines().filter(|name| !written.iter().any(|new| new == name)) {
            let _ = fs::remove_file(out.join(stale));
        }
        written.sort();
        write(&out.join(LEDGER), written.join("\n").as_bytes())
    }
}

/// A text that lies in `public/`.
pub(super) fn public_text(name: &str) -> Result<String> {
    fs::read_to_string(shell::project().join("public").join(name)).with_context(|| format!("cannot read public/{name}"))
}

fn write(path: &Path, content: &[u8]) -> Result<()> {
    if let Some(folder) = path.parent() {
        fs::create_dir_all(folder).with_context(|| format!("cannot make the folder {}", folder.display()))?;
    }
    fs::write(path, content).with_context(|| format!("cannot write {}", path.display()))
}

pub(super) fn is_licence(name: &str) -> bool {
    name.ends_with("-OFL.txt")
}

/// What the browser asks for: the page is asked for by its folder.
fn address(name: &str) -> &str {
    if name == "index.html" { "./" } else { name }
}
