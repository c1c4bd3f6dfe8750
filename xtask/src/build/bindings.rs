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
    let js = output.js().to_owned();
    let functions = output.wasm().funcs.iter().filter_map(|function| function.name.clone()).collect();
    Ok(Bindings { js, wasm: output.wasm_mut().emit_wasm(), functions })
}
