//! The page itself in the browser: a first visit on a slow line, keystroke to repaint, each picture drawn again, the longest task of a
//! search, memory after many edits.

use std::collections::BTreeMap;
use std::path::Path;

use anyhow::Result;
use browser_tests::device::Theme;
use browser_tests::{Page, Site, button, visit_site};
use serde_json::json;

/// What was measured; times in milliseconds.
#[derive(Default)]
pub(crate) struct OnPage {
    /// The first visit of a browser that knows nothing of the page, on a slow line and a weak machine.
    pub(crate) slow: FirstVisit,
    /// From the navigation to the first figure in the page, on this machine.
    pub(crate) first_figure_ms: f64,
    /// What a keystroke costs with one setup and with six: an edit of the mass with Pull open, one of the shift rpm with Gears open.
    pub(crate) keys: [Vec<Key>; 2],
    /// The last of them again, on a machine slowed four times.
    pub(crate) slowed: Option<Key>,
    /// Each picture drawn again, by its name: the median.
    pub(crate) pictures_ms: BTreeMap<String, f64>,
    /// The longest task while wishes are typed and searched for; 0 where none took 50 ms.
    pub(crate) longest_ms: f64,
    /// From the beginning of that search to its end.
    pub(crate) search_ms: f64,
    /// The memory of the program, and the page's script heap after its rubbish is cleared, before and after many edits; in bytes.
    pub(crate) memory: Memory,
}

/// A first visit; times in milliseconds from the navigation.
#[derive(Default)]
pub(crate) struct FirstVisit {
    /// Until the first figure is in the page.
    pub(crate) figure_ms: f64,
    /// What had travelled by then, as it travels, without the heads of the answers; in bytes.
    pub(crate) bytes: f64,
    /// Until the last file has come.
    pub(crate) whole_ms: f64,
}

/// Bytes before and after [`EDITS`] edits.
#[derive(Default)]
pub(crate) struct Memory {
    /// Of the program.
    pub(crate) program: [f64; 2],
    /// Of the page's objects.
    pub(crate) page: [f64; 2],
}

/// How many edits are made before memory is looked at again.
pub(crate) const EDITS: u32 = 2000;

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

/// Runs before the page's own scripts: notes when the first figure appears, which picture each frame paints, long tasks, and the memory.
const WATCH: &str = "
    window.measured = { first: 0, pictures: {}, longest: 0 };
    new MutationObserver((_, watch) => {
        if (document.querySelector('[data-figure]')) { window.measured.first = performance.now(); watch.disconnect(); }
    }).observe(document, { childList: true, subtree: true });
    new PerformanceObserver((list) => {
        for (const entry of list.getEntries()) window.measured.longest = Math.max(window.measured.longest, entry.duration);
    }).observe({ type: 'longtask' });
    for (const name of ['instantiate', 'instantiateStreaming']) {
        const make = WebAssembly[name].bind(WebAssembly);
        WebAssembly[name] = async (...given) => {
            const made = await make(...given);
            window.measured.memory ??= (made.instance ?? made).exports.memory;
            return made;
        };
    }
    const ask = window.requestAnimationFrame.bind(window);
    let painted = null;
    const clear = CanvasRenderingContext2D.prototype.clearRect;
    CanvasRenderingContext2D.prototype.clearRect = function (...box) {
        painted = this.canvas.closest('figure')?.querySelector('[role=tab][aria-selected=true]')?.id ?? painted;
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

/// Opens the site and measures, each with a browser of its own.
pub(crate) fn ask(site: &Path) -> Result<OnPage> {
    let mut found = OnPage::default();
    visit_site(Site::of(site, "")?, async |page| {
        watch(page).await?;
        found.slow = first_visit(page).await?;
        Ok(())
    })?;
    visit_site(Site::of(site, "")?, async |page| {
        watch(page).await?;
        found.first_figure_ms = first_figure(page).await?;
        found.pictures_ms = pictures(page).await?;
        (found.longest_ms, found.search_ms) = search(page).await?;
        for (keys, many) in found.keys.iter_mut().zip([1, 6]) {
            setups(page, many).await?;
            keys.push(keystrokes(page, "the mass", "compare/pull", "#mass", 1200).await?);
            keys.push(keystrokes(page, "the shift rpm", "compare/gears", "#shift", 6000).await?);
        }
        slow_down(page, SLOWER).await?;
        found.slowed = Some(keystrokes(page, "the shift rpm", "compare/gears", "#shift", 6000).await?);
        slow_down(page, 1.0).await?;
        found.memory = memory(page).await?;
        Ok(())
    })?;
    Ok(found)
}

async fn watch(page: &Page) -> Result<()> {
    page.cdp("Page.addScriptToEvaluateOnNewDocument", json!({ "source": WATCH })).await.map(drop)
}

/// How many times slower a weak machine is.
const SLOWER: f64 = 4.0;

async fn slow_down(page: &Page, rate: f64) -> Result<()> {
    page.cdp("Emulation.setCPUThrottlingRate", json!({ "rate": rate })).await.map(drop)
}

/// 1.6 Mbit/s and 150 ms on the line, a machine slowed four times.
async fn first_visit(page: &Page) -> Result<FirstVisit> {
    let line = json!({ "offline": false, "latency": 150, "downloadThroughput": 1.6e6 / 8.0, "uploadThroughput": 0.75e6 / 8.0 });
    page.cdp("Network.emulateNetworkConditions", line).await?;
    slow_down(page, SLOWER).await?;
    page.open("").await?;
    page.until("window.measured.first > 0").await?;
    let figure_ms: f64 = page.js("window.measured.first").await?;
    // Files are entered once they have come: none for the time of a long one means that none is to come.
    page.js::<()>(
        "(async () => {
            for (let last = -1, rest = 0; rest < 6; rest++) {
                await new Promise((done) => setTimeout(done, 1000));
                const now = performance.getEntriesByType('resource').length;
                if (now !== last) { last = now; rest = 0; }
            }
        })()",
    )
    .await?;
    let files = "[...performance.getEntriesByType('navigation'), ...performance.getEntriesByType('resource')]";
    let come = format!("{files}.filter((file) => file.responseEnd <= {figure_ms})");
    Ok(FirstVisit {
        figure_ms,
        bytes: page.js(&format!("{come}.reduce((sum, file) => sum + file.encodedBodySize, 0)")).await?,
        whole_ms: page.js(&format!("Math.max(...{files}.map((file) => file.responseEnd))")).await?,
    })
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

/// Every picture of every question of Compare: the theme is switched back and forth before it, and it is drawn again each time.
async fn pictures(page: &Page) -> Result<BTreeMap<String, f64>> {
    for question in page.questions_of("compare").await? {
        page.go_to(&question).await?;
        let tabs: Vec<String> = page.js("[...document.querySelectorAll('figure.picture [role=tab]')].map((tab) => tab.id)").await?;
        for tab in tabs {
            page.js::<()>(&format!("void document.getElementById({}).click()", json!(tab))).await?;
            page.js::<()>("void document.querySelector('figure.picture').scrollIntoView({ block: 'center' })").await?;
            for turn in 0..20 {
                page.set_theme(if turn % 2 == 0 { Theme::Dark } else { Theme::Light }).await?;
                page.js::<()>("new Promise((done) => setTimeout(done, 50))").await?;
            }
        }
    }
    page.js(
        "(() => {
            const median = (times) => times.sort((a, b) => a - b)[times.length >> 1];
            return Object.fromEntries(Object.entries(window.measured.pictures).map(([name, times]) => [name.replace('tab-', ''), median(times)]));
        })()",
    )
    .await
}

/// Wishes change while the search is at work.
async fn search(page: &Page) -> Result<(f64, f64)> {
    const DONE: &str = "document.querySelector('#find-progress')?.dataset.done === 'true'";
    page.go_to("compare/find").await?;
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
        // Alone on the page, the menu's own button is the one whose name begins with “Copy”.
        page.click(button("Copy, move or remove setup A")).await?;
        page.element(button("Its axle for all setups")).await?;
        page.click(button(if now > many { "Remove" } else { "Copy" })).await?;
        let next = if now > many { now - 1 } else { now + 1 };
        page.until(&format!("document.querySelectorAll('.head').length === {next}")).await?;
    }
}

/// Bytes that the program has, and those of the page's objects once what nobody holds is cleared.
async fn bytes(page: &Page) -> Result<[f64; 2]> {
    page.cdp("HeapProfiler.collectGarbage", json!({})).await?;
    Ok([page.js("window.measured.memory.buffer.byteLength").await?, page.js("performance.memory.usedJSHeapSize").await?])
}

/// Edits the shift rpm again and again with six setups.
async fn memory(page: &Page) -> Result<Memory> {
    let before = bytes(page).await?;
    for begin in (0..EDITS).step_by(200) {
        page.js::<()>(&format!(
            "(async () => {{
                const field = document.querySelector('#shift');
                for (let turn = {begin}; turn < {begin} + 200; turn++) {{
                    field.value = String(5000 + turn % 1000);
                    field.dispatchEvent(new Event('input', {{ bubbles: true }}));
                    await new Promise((done) => requestAnimationFrame(done));
                }}
            }})()"
        ))
        .await?;
    }
    let after = bytes(page).await?;
    let of = |which: usize| [before, after].map(|both| both.get(which).copied().unwrap_or(f64::NAN));
    Ok(Memory { program: of(0), page: of(1) })
}

/// Types into a field of a question that stands in the middle of the window, as for one who types.
async fn keystrokes(page: &Page, what: &'static str, question: &str, field: &str, from: u32) -> Result<Key> {
    page.go_to(question).await?;
    let typed = format!(
        "(async () => {{
        const field = document.querySelector('{field}');
        field.closest('details')?.setAttribute('open', '');
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
