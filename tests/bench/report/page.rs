//! The page itself in the browser: load to first figure, keystroke to repaint, each picture drawn again, the longest task of a search.

use std::collections::BTreeMap;
use std::path::Path;

use anyhow::Result;
use browser_tests::{Page, Site, visit_site};

/// What was measured; times in milliseconds.
#[derive(Default)]
pub(crate) struct OnPage {
    /// From the navigation to the first figure in the page.
    pub(crate) first_figure_ms: f64,
    /// What a keystroke costs with one setup and with six: an edit of the mass and one of the shift rpm.
    pub(crate) keys: [Vec<Key>; 2],
    /// Each picture drawn again, by its name: the median.
    pub(crate) pictures_ms: BTreeMap<String, f64>,
    /// The longest task while wishes are typed and searched for; 0 where none took 50 ms.
    pub(crate) longest_ms: f64,
    /// From the beginning of that search to its end.
    pub(crate) search_ms: f64,
}

/// What one keystroke costs the page; times in milliseconds, median and 95th percentile.
pub(crate) struct Key {
    /// What is typed.
    pub(crate) what: &'static str,
    /// Until every figure in view is put into the page.
    pub(crate) figures_ms: [f64; 2],
    /// The same, and the next frame from its beginning until it is painted, pictures included: what must fit between two frames.
    pub(crate) painted_ms: [f64; 2],
    /// The longest of what follows once the typing pauses: what is far from the window, the search, the keeping.
    pub(crate) after_ms: [f64; 2],
}

/// Runs before the page's own scripts: notes when the first figure appears, which picture each frame paints, and long tasks.
const WATCH: &str = "
    window.measured = { first: 0, pictures: {}, longest: 0 };
    new MutationObserver((_, watch) => {
        if (document.querySelector('[data-figure]')) { window.measured.first = performance.now(); watch.disconnect(); }
    }).observe(document, { childList: true, subtree: true });
    new PerformanceObserver((list) => {
        for (const entry of list.getEntries()) window.measured.longest = Math.max(window.measured.longest, entry.duration);
    }).observe({ type: 'longtask' });
    const ask = window.requestAnimationFrame.bind(window);
    let painted = null;
    const clear = CanvasRenderingContext2D.prototype.clearRect;
    CanvasRenderingContext2D.prototype.clearRect = function (...box) {
        painted = this.canvas.closest('figure')?.id ?? painted;
        return clear.apply(this, box);
    };
    window.requestAnimationFrame = (act) => ask((time) => {
        painted = null;
        // What the page itself owes for a new theme is settled first: a canvas asks for its font's style.
        document.documentElement.offsetWidth;
        const begun = performance.now();
        act(time);
        if (painted) (window.measured.pictures[painted] ??= []).push(performance.now() - begun);
    });";

/// Opens the site and measures.
pub(crate) fn ask(site: &Path) -> Result<OnPage> {
    let mut found = OnPage::default();
    visit_site(Site::of(site, "")?, async |page| {
        page.cdp("Page.addScriptToEvaluateOnNewDocument", serde_json::json!({ "source": WATCH })).await?;
        found.first_figure_ms = first_figure(page).await?;
        found.pictures_ms = pictures(page).await?;
        (found.longest_ms, found.search_ms) = search(page).await?;
        for (keys, many) in found.keys.iter_mut().zip([1, 6]) {
            setups(page, many).await?;
            keys.push(keystrokes(page, "the mass", "#mass", 1200).await?);
            keys.push(keystrokes(page, "the shift rpm", "#shift", 6000).await?);
        }
        Ok(())
    })?;
    Ok(found)
}

/// The median of several loads.
async fn first_figure(page: &Page) -> Result<f64> {
    let mut times = Vec::new();
    for _ in 0..5 {
        page.open("").await?;
        page.until("window.measured.first > 0").await?;
        times.push(page.js::<f64>("window.measured.first").await?);
    }
    times.sort_by(f64::total_cmp);
    Ok(times.get(2).copied().unwrap_or(f64::NAN))
}

/// The theme is switched back and forth with each picture in the window, and it is drawn again each time.
async fn pictures(page: &Page) -> Result<BTreeMap<String, f64>> {
    page.js::<()>("void (window.measured.pictures = {})").await?;
    let medians = "(async () => {
        for (const picture of document.querySelectorAll('.picture')) {
            picture.scrollIntoView({ block: 'center' });
            await new Promise((done) => setTimeout(done, 600));
            for (let turn = 0; turn < 20; turn++) {
                document.querySelector('#theme').click();
                await new Promise((done) => setTimeout(done, 60));
            }
        }
        const median = (times) => times.sort((a, b) => a - b)[times.length >> 1];
        return Object.fromEntries(Object.entries(window.measured.pictures).map(([name, times]) => [name.replace('picture-', ''), median(times)]));
    })()";
    page.js(medians).await
}

/// Wishes change while the search is at work.
async fn search(page: &Page) -> Result<(f64, f64)> {
    const DONE: &str = "document.querySelector('#find-progress')?.dataset.done === 'true'";
    page.element("#find-progress").await?;
    page.until(DONE).await?;
    page.js::<()>("void (window.measured.longest = 0)").await?;
    for text in ["9.1", "9.3", "9.5"] {
        page.type_into("#wish-2-least", text).await?;
        page.until(DONE).await?;
    }
    let taken = "performance.getEntriesByName('find-end').at(-1).startTime - performance.getEntriesByName('find-begin').at(-1).startTime";
    Ok((page.js("window.measured.longest").await?, page.js(taken).await?))
}

/// Removes or copies setups until there are so many.
async fn setups(page: &Page, many: usize) -> Result<()> {
    loop {
        let now = page.count(".head").await?;
        if now == many {
            return Ok(());
        }
        let word = if now > many { "Remove" } else { "Copy" };
        page.js::<()>("void document.querySelector('.head:last-of-type .head__more, .head .head__more').click()").await?;
        page.until("document.querySelector('.head__menu') !== null").await?;
        page.js::<()>(&format!("void [...document.querySelectorAll('.head__menu button')].find((b) => b.innerText === '{word}').click()"))
            .await?;
        let next = if now > many { now - 1 } else { now + 1 };
        page.until(&format!("document.querySelectorAll('.head').length === {next}")).await?;
    }
}

/// Types into a field that stands in the middle of the window, as for one who types.
async fn keystrokes(page: &Page, what: &'static str, field: &str, from: u32) -> Result<Key> {
    let typed = format!(
        "(async () => {{
        const field = document.querySelector('{field}');
        field.scrollIntoView({{ block: 'center' }});
        await new Promise((done) => setTimeout(done, 1500));
        const channel = new MessageChannel();
        let wake;
        channel.port1.onmessage = () => wake();
        const later = () => new Promise((done) => {{ wake = done; channel.port2.postMessage(0); }});
        const rested = async () => {{ for (let turn = 0; turn < 1000; turn++) await null; }};
        const figures = [], painted = [], after = [];
        for (let turn = 0; turn < 60; turn++) {{
            const frame = new Promise((done) => requestAnimationFrame(() => {{
                const begun = performance.now();
                later().then(() => done(performance.now() - begun));
            }}));
            field.value = String({from} + (turn % 10));
            const begun = performance.now();
            field.dispatchEvent(new Event('input', {{ bubbles: true }}));
            await rested();
            figures.push(performance.now() - begun);
            painted.push(figures.at(-1) + await frame);
            let longest = 0;
            for (const end = performance.now() + 700; performance.now() < end;) {{
                const at = performance.now();
                await later();
                longest = Math.max(longest, performance.now() - at);
            }}
            after.push(longest);
        }}
        const at = (times, share) => times.sort((a, b) => a - b)[Math.floor(share * (times.length - 1))];
        return [figures, painted, after].map((times) => [at(times, 0.5), at(times, 0.95)]);
    }})()"
    );
    let [figures_ms, painted_ms, after_ms] = page.js(&typed).await?;
    Ok(Key { what, figures_ms, painted_ms, after_ms })
}
