//! The bindings between the WebAssembly file and the browser, made in this process so that no tool needs to be installed.

use std::path::Path;

use anyhow::{Context, Result, ensure};
use wasm_bindgen_cli_support::Bindgen;

use super::Profile;

/// The two files that make the program.
pub(super) struct Bindings {
    pub(super) js: String,
    pub(super) wasm: Vec<u8>,
}

/// Makes the bindings of a compiled app. Names of functions stay in development builds, where they make a trace readable.
pub(super) fn of(compiled: &Path, profile: Profile) -> Result<Bindings> {
    let mut output = Bindgen::new()
        .input_path(compiled)
        .out_name("app")
        .web(true)?
        .typescript(false)
        .remove_name_section(profile == Profile::Release)
        .remove_producers_section(profile == Profile::Release)
        .generate_output()
        .context("the compiled app and the bindings do not fit; `wasm-bindgen` and `wasm-bindgen-cli-support` must be of one version")?;
    let no_snippets = output.snippets().values().all(Vec::is_empty) && output.local_modules().is_empty();
    ensure!(no_snippets, "a dependency brings JavaScript of its own, which this build does not carry into the site");
    let js = output.js().to_owned();
    Ok(Bindings { js, wasm: output.wasm_mut().emit_wasm() })
}
