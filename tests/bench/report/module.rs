//! The searches in the browser: the same code as a module of its own, compiled as the app is, called from a blank page.

use std::path::Path;

use anyhow::{Context, Result, ensure};
use browser_tests::{Site, visit_site};
use xtask::shell;
use xtask::toolchain::Toolchain;

/// Seconds of each search, the best of five.
pub(crate) struct Module {
    /// Every combination judged.
    pub(crate) each_s: f64,
    /// A typical wish list.
    pub(crate) typical_s: f64,
}

const PAGE: &str = "<!doctype html><html lang=\"en\"><title>measured</title><h1>measured</h1></html>";

/// Compiles the module and takes the time.
pub(crate) fn ask(folder: &Path) -> Result<Module> {
    let toolchain = Toolchain::ready()?;
    shell::run(toolchain.cargo("build").args(["--quiet", "--release", "--package", "measured-web"]))?;
    let built = shell::target().join("web").join(xtask::toolchain::TARGET).join("release/measured_web.wasm");
    let site = folder.join("module");
    std::fs::create_dir_all(&site)?;
    std::fs::copy(&built, site.join("measured.wasm")).with_context(|| format!("{} is not there", built.display()))?;
    std::fs::write(site.join("index.html"), PAGE)?;
    let mut taken = [0.0; 2];
    visit_site(Site::of(&site, "")?, async |page| {
        page.go("").await?;
        page.expect_message("favicon");
        for (at, name) in ["search_each", "search_typical"].iter().enumerate() {
            let (seconds, judged): (f64, f64) = page.js(&timed(name)).await?;
            ensure!(at > 0 || (judged - 1e7).abs() < 0.5, "{judged} combinations were judged, not ten million");
            if let Some(taken) = taken.get_mut(at) {
                *taken = seconds;
            }
        }
        Ok(())
    })?;
    let [each_s, typical_s] = taken;
    Ok(Module { each_s, typical_s })
}

/// What the module never calls is imported as a function that does nothing.
fn timed(name: &str) -> String {
    format!(
        "(async () => {{
            const nothing = new Proxy({{}}, {{ get: () => new Proxy({{}}, {{ get: () => () => 0 }}) }});
            const bytes = await (await fetch('measured.wasm')).arrayBuffer();
            const {{ instance }} = await WebAssembly.instantiate(bytes, nothing);
            let best = Infinity, judged = 0;
            for (let turn = 0; turn < 5; turn++) {{
                const begun = performance.now();
                judged = instance.exports.{name}();
                best = Math.min(best, performance.now() - begun);
            }}
            return [best / 1000, judged];
        }})()"
    )
}
