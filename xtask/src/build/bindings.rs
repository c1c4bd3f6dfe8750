//! The bindings between the WebAssembly file and the browser, made in this process so that no tool needs to be installed.

use anyhow::{Context, Result, ensure};
use wasm_bindgen_cli_support::Bindgen;

use super::Profile;

/// The two files that make the main program, and what is in it.
pub(super) struct Bindings {
    pub(super) js: String,
    pub(super) wasm: Vec<u8>,
    /// The names of all functions in the file, readable; the file itself has them in development builds only.
    pub(super) functions: Vec<String>,
}

/// Makes the bindings of the main program. Names of functions stay in development builds, where they make a trace readable.
pub(super) fn of(main: Vec<u8>, profile: Profile) -> Result<Bindings> {
    let mut output = Bindgen::new()
        .input_bytes("app", main)
        .web(true)?
        .typescript(false)
        // The parts are linked through what the linker exports: the table of functions, the stack.
        .keep_lld_exports(true)
        .remove_name_section(profile == Profile::Release)
        .remove_producers_section(profile == Profile::Release)
        .generate_output()
        .context("the compiled app and the bindings do not fit; `wasm-bindgen` and `wasm-bindgen-cli-support` must be of one version")?;
    let no_snippets = output.snippets().values().all(Vec::is_empty) && output.local_modules().is_empty();
    ensure!(no_snippets, "a dependency brings JavaScript of its own, which this build does not carry into the site");
    let mut js = output.js().to_owned();
    if profile == Profile::Release {
        let names = output.wasm_mut().imports.iter_mut().map(|import| &mut import.name);
        shorten(names, &mut js);
    }
    let functions = output.wasm().funcs.iter().filter_map(|function| function.name.clone()).collect();
    Ok(Bindings { js, wasm: output.wasm_mut().emit_wasm(), functions })
}

/// Gives the functions that both files name short names. Their own end in sixteen digits of a hash, which no packing makes shorter, and
/// travel twice: 5 kB of a first visit.
fn shorten<'a>(names: impl Iterator<Item = &'a mut String>, js: &mut String) {
    for (at, name) in names.filter(|name| ends_in_hash(name)).enumerate() {
        let short = format!("i{at}");
        *js = js.replace(name.as_str(), &short);
        *name = short;
    }
}

/// Whether a name is one of the bindings' own that ends in its hash.
fn ends_in_hash(name: &str) -> bool {
    let hash = name.strip_prefix("__wbg_").and_then(|rest| rest.rsplit_once('_')).map(|(_, hash)| hash);
    hash.is_some_and(|hash| hash.len() == 16 && hash.bytes().all(|digit| digit.is_ascii_hexdigit()))
}

#[cfg(test)]
mod tests {
    #[test]
    fn names_that_end_in_a_hash_are_short_in_both_files() {
        let mut names = ["__wbg_now_0123456789abcdef".to_owned(), "__wbindgen_throw".to_owned(), "__wbg_now_fedcba9876543210".to_owned()];
        let mut js = "{ __wbg_now_fedcba9876543210: one, __wbindgen_throw: two, __wbg_now_0123456789abcdef: three }".to_owned();
        super::shorten(names.iter_mut(), &mut js);
        assert_eq!(names, ["i0", "__wbindgen_throw", "i1"]);
        assert_eq!(js, "{ i1: one, __wbindgen_throw: two, i0: three }");
    }
}
