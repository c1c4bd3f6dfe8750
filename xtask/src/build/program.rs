//! The program's files under their final names. They name each other in circles, so one hash stands for all of them.

use std::collections::BTreeMap;

use anyhow::{Context, Result};
use serde_json::json;

use super::bindings::Bindings;
use super::hash;
use super::names::{import_from, refer, tagged};
use super::parts::{LOADER, Pieces};

/// What stands in the loader's template for the list of the parts' files, the canary, and one function for each part.
const PLACES: [&str; 3] = ["{{parts}}", "{{canary}}", "{{exports}}"];

/// The program as it goes into the site.
pub(super) struct Program {
    /// Files by their final names.
    pub(super) files: BTreeMap<String, Vec<u8>>,
    /// Old and new names of those that the page names.
    pub(super) renamed: Vec<(&'static str, String)>,
    /// The final names of the files of later parts.
    pub(super) later: Vec<String>,
    /// The names of all functions of the main program.
    pub(super) functions: Vec<String>,
}

/// Names the files and makes them name each other.
pub(super) fn name(bindings: Bindings, pieces: Pieces, loader: &str) -> Result<Program> {
    let Bindings { js, wasm, functions } = bindings;
    let everything = [js.as_bytes(), &wasm, loader.as_bytes(), &pieces.files.values().flatten().copied().collect::<Vec<u8>>()].concat();
    let tag = hash::hex(&everything);
    let [js_name, wasm_name, loader_name] = ["app.js", "app_bg.wasm", "parts.js"].map(|name| tagged(name, &tag));

    let mut js = refer(&js, "app_bg.wasm", &wasm_name, "app.js").unwrap_or(js);
    if !pieces.parts.is_empty() {
        // The same words name the module inside the program, where they must stay.
        js = import_from(&js, LOADER, &format!("./{loader_name}"), "app.js")?;
    }
    let loader = filled(loader, &pieces, &tag)?;
    let loader = import_from(&loader, "./app.js", &format!("./{js_name}"), "parts.js")?;

    let mut files =
        BTreeMap::from([(js_name.clone(), js.into_bytes()), (wasm_name.clone(), wasm), (loader_name.clone(), loader.into_bytes())]);
    let later: Vec<String> = pieces.files.keys().map(|name| tagged(name, &tag)).collect();
    files.extend(later.iter().cloned().zip(pieces.files.into_values()));
    let renamed = vec![("app.js", js_name), ("app_bg.wasm", wasm_name), ("parts.js", loader_name)];
    Ok(Program { files, renamed, later, functions })
}

/// The loader, told which files and sections each part lies in.
fn filled(template: &str, pieces: &Pieces, tag: &str) -> Result<String> {
    let named = |place: &String| match place.split_once('#') {
        Some((file, section)) => format!("{}#{section}", tagged(file, tag)),
        None => tagged(place, tag),
    };
    let parts: BTreeMap<&String, Vec<String>> =
        pieces.parts.iter().map(|(part, places)| (part, places.iter().map(named).collect())).collect();
    let parts = serde_json::to_string(&parts)?;
    // The value is the one the cutting chose for its own loader.
    let canary = pieces.canary.as_ref().map_or("{}".to_owned(), |name| format!("{{ {name}: ~0xdead }}"));
    let exports = pieces.parts.keys().map(|part| {
        let name = json!(part);
        format!("export const __wasm_split_load_{part} = (callback, asked) => bring({name}, callback, asked);")
    });
    let exports = exports.collect::<Vec<_>>().join("\n");
    let mut loader = template.to_owned();
    for (place, text) in PLACES.into_iter().zip([&parts, &canary, &exports]) {
        let (before, after) = loader.split_once(place).with_context(|| format!("parts.js has no place {place}"))?;
        loader = format!("{before}{text}{after}");
    }
    Ok(loader)
}

#[cfg(test)]
mod tests {
    use std::collections::BTreeMap;

    use super::{Bindings, Pieces, name};
    use crate::build::is_hashed;

    const LOADER: &str = "import { initSync } from \"./app.js\";\nconst PARTS = {{parts}};\nconst of = {{canary}};\n{{exports}}\n";

    fn program(parts: &[(&str, &[&str])]) -> BTreeMap<String, String> {
        let js = if parts.is_empty() {
            "new URL('app_bg.wasm', import.meta.url)".to_owned()
        } else {
            "import * as import1 from \"./parts.js\"\nnew URL('app_bg.wasm', import.meta.url); const imports = { \"./parts.js\": import1 };"
                .to_owned()
        };
        let bindings = Bindings { js, wasm: vec![1], functions: Vec::new() };
        let owned = |files: &[&str]| files.iter().map(|file| (*file).to_owned()).collect::<Vec<_>>();
        let parts: BTreeMap<_, _> = parts.iter().map(|(part, files)| ((*part).to_owned(), owned(files))).collect();
        let file = |place: &String| place.split('#').next().unwrap_or_default().to_owned();
        let files = parts.values().flatten().map(|place| (file(place), vec![2])).collect();
        let program = name(bindings, Pieces { main: Vec::new(), files, parts, canary: None }, LOADER).unwrap();
        assert!(program.files.keys().all(|name| is_hashed(name)));
        let plain = |name: &str| name.split('.').next().unwrap_or_default().to_owned();
        program.files.iter().map(|(name, content)| (plain(name), String::from_utf8_lossy(content).into_owned())).collect()
    }

    #[test]
    fn one_hash_stands_for_all_files() {
        let files = program(&[("find", &["part-small-find.wasm#part-shared-3", "part-find.wasm"])]);
        let hash = files["app"].split("./parts.").nth(1).and_then(|text| text.get(..16)).unwrap().to_owned();
        let expected = format!(
            "import * as import1 from \"./parts.{hash}.js\"\nnew URL('app_bg.{hash}.wasm', import.meta.url); const imports = {{ \"./parts.js\": import1 }};"
        );
        assert_eq!(files["app"], expected);
        let expected = format!(
            "import {{ initSync }} from \"./app.{hash}.js\";\nconst PARTS = {{\"find\":[\"part-small-find.{hash}.wasm#part-shared-3\",\"part-find.{hash}.wasm\"]}};\n\
             const of = {{}};\nexport const __wasm_split_load_find = (callback, asked) => bring(\"find\", callback, asked);\n"
        );
        assert_eq!(files["parts"], expected);
        assert_eq!(files["part-find"].as_bytes(), [2]);
    }

    #[test]
    fn an_app_in_one_piece_asks_for_no_parts() {
        let files = program(&[]);
        assert!(!files["app"].contains("parts"), "{}", files["app"]);
        assert_eq!(files.len(), 3);
    }
}
