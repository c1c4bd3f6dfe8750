//! Cutting the compiled app: what the first figure needs, and parts of the program that come later.
//!
//! Where to cut is written in the app (`app::later`). A part's file holds what that part alone needs; what several parts need and the main
//! program does not lies in a file of its own for each such set of parts.

use std::collections::BTreeMap;
use std::fs;
use std::path::Path;

use anyhow::{Context, Result, anyhow, bail};
use wasm_split_cli_support::{Options, transform};

use super::{Profile, sections, shared};
use crate::shell;

/// The program's pieces under the names they have before they are named by their content.
pub(super) struct Pieces {
    /// The main program, which still wants its bindings.
    pub(super) main: Vec<u8>,
    /// The files of the later parts.
    pub(super) files: BTreeMap<String, Vec<u8>>,
    /// Which files each part needs, its own the last; of a file that several small pieces share its section is named: `file#section`.
    pub(super) parts: BTreeMap<String, Vec<String>>,
    /// In development builds: the name under which a file asks whether it belongs to this program.
    pub(super) canary: Option<String>,
}

/// The module the main program asks for its parts; `public/parts.js` has this name in the site.
pub(super) const LOADER: &str = "./parts.js";
const OWN: &str = "split_";

/// Cuts the compiled app. An app without later parts is one piece.
pub(super) fn cut(compiled: &Path, profile: Profile) -> Result<Pieces> {
    let input = fs::read(compiled).with_context(|| format!("cannot read {}", compiled.display()))?;
    let folder = shell::target().join("web").join("parts");
    if folder.exists() {
        fs::remove_dir_all(&folder).with_context(|| format!("cannot clear {}", folder.display()))?;
    }
    let main = folder.join("main.wasm");
    let mut options = Options::new(&input);
    options.output_dir = &folder;
    options.main_out_path = &main;
    options.link_name = LOADER;
    options.main_module = "./app.js";
    let split = transform(options).map_err(|problem| anyhow!("the app cannot be cut into parts: {problem:#}"))?;
    let read = |path: &Path| fs::read(path).with_context(|| format!("cannot read {}", path.display()));
    let mut files = BTreeMap::new();
    for path in &split.split_modules {
        files.insert(file_name(path)?, sections::without_custom(&read(path)?)?);
    }
    let mut parts =
        split.prefetch_map.into_iter().map(|(part, stems)| (part, stems.iter().map(|stem| piece_name(stem)).collect())).collect();
    shared::lay_together(&mut files, &mut parts);
    let canary = match profile {
        Profile::Dev => canary(&fs::read_to_string(folder.join(LOADER)).context("the cutting left no loader")?),
        Profile::Release => None,
    };
    Ok(Pieces { main: read(&main)?, files, parts, canary })
}

fn file_name(path: &Path) -> Result<String> {
    let Some(stem) = path.file_stem() else { bail!("{} is no file of a part", path.display()) };
    Ok(piece_name(&stem.to_string_lossy()))
}

/// `split_find` is what the part `find` alone needs; `chunk_3` is shared.
fn piece_name(stem: &str) -> String {
    let name = stem.strip_prefix(OWN).map_or_else(|| stem.replace("chunk_", "shared-"), str::to_owned);
    format!("part-{name}.wasm")
}

/// The canary's name in the loader that comes with the cutting, which ours replaces.
fn canary(loader: &str) -> Option<String> {
    let from = loader.find("__canary_")?;
    loader[from..].split(':').next().map(str::to_owned)
}

#[cfg(test)]
mod tests {
    use super::{canary, piece_name};

    #[test]
    fn pieces_are_called_by_their_part() {
        assert_eq!(piece_name("split_find"), "part-find.wasm");
        assert_eq!(piece_name("chunk_3"), "part-shared-3.wasm");
    }

    #[test]
    fn the_canary_is_found_where_there_is_one() {
        assert_eq!(canary("{ __wasm_split: { __canary_1f: ~0xdead, } }").as_deref(), Some("__canary_1f"));
        assert_eq!(canary("{ __wasm_split: {  } }"), None);
    }
}
