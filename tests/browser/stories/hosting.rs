//! Any static host will do: below a sub-path, with the policy as a header and in the page itself.

use browser_tests::anyhow::{Result, ensure};
use browser_tests::{visit, visit_below};

#[test]
fn the_page_works_below_a_sub_path() -> Result<()> {
    visit_below("/shop/tools", async |page| {
        page.open("").await?;
        page.until("navigator.serviceWorker.controller !== null").await?;
        let scope: String = page.js("new URL(navigator.serviceWorker.controller.scriptURL).pathname").await?;
        ensure!(scope == "/shop/tools/sw.js", "the service worker is at {scope}");
        Ok(())
    })
}

#[test]
fn the_policy_is_strict_as_a_header_and_in_the_page() -> Result<()> {
    visit(async |page| {
        page.open("").await?;
        page.js::<()>("void fetch('./').then((answer) => { window.policy = answer.headers.get('content-security-policy'); })").await?;
        page.until("window.policy !== undefined").await?;
        let header: String = page.js("window.policy").await?;
        let inside: String = page.js("document.querySelector('meta[http-equiv]').content").await?;
        ensure!(header == format!("{inside}; frame-ancestors 'none'"), "header and page differ:\n{header}\n{inside}");
        ensure!(inside.starts_with("default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; style-src 'self';"), "{inside}");
        Ok(())
    })
}
