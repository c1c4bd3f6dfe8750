//! The bench: a set from counts, a mixed set, a turned axle, a printed ladder.

use browser_tests::anyhow::{Result, ensure};
use browser_tests::visit;

#[test]
fn a_gear_set_is_known_by_its_counts_and_its_turns() -> Result<()> {
    visit(async |page| {
        page.open("").await?;
        page.type_into("#bench-1", "37/18").await?;
        page.type_into("#bench-2", "32/?").await?;
        page.until("document.querySelector('#bench').innerText.includes('3 gear sets of the catalog')").await?;
        page.type_into("#bench-constant", "27/?").await?;
        page.until("document.querySelector('#bench').innerText.includes('One gear set of the catalog')").await?;
        // It goes into setup A: 28/27 × 37/18 = 2.132.
        page.click("#bench .bench__found [aria-label='Use it in setup A']").await?;
        page.until("document.querySelector('[data-figure=\"gear_1.ratio\"]').innerText.startsWith('2.132')").await?;
        page.type_into("#bench-input-turns", "0").await?;
        page.type_into("#bench-output-turns", "4").await?;
        page.until("document.querySelector('#bench .bench__one:nth-child(2) .field__problem') !== null").await?;
        // Ten turns of the shaft gave 5 1/10 of the free wheel, the other held: 2 × 10 ÷ 5.1 = 3.92, so 43/11 lies inside.
        page.type_into("#bench-shaft-turns", "10").await?;
        page.type_into("#bench-wheel-turns", "5 1/10").await?;
        page.js::<()>("void (() => { const held = document.querySelector('#bench .bench__one:nth-child(3) select'); held.value = 'held'; held.dispatchEvent(new Event('change', { bubbles: true })); })()").await?;
        page.until("document.querySelector('#bench .bench__one:nth-child(3)').innerText.includes('43/11')").await
    })
}

#[test]
fn a_printed_ladder_goes_back_to_teeth_without_holding_the_page() -> Result<()> {
    visit(async |page| {
        page.open("").await?;
        page.js::<()>("void (() => { window.longest = 0; new PerformanceObserver(list => { for (const entry of list.getEntries()) window.longest = Math.max(window.longest, entry.duration); }).observe({ type: 'longtask' }); })()").await?;
        page.js::<()>("void (() => { const field = document.querySelector('#bench-ladder'); field.value = '2.84 1.94 1.45 1.00 0.86'; window.began = performance.now(); field.dispatchEvent(new Event('input', { bubbles: true })); })()").await?;
        page.until("document.querySelector('#bench .bench__one:nth-child(4)').innerText.includes('22/33') && !document.querySelector('#bench progress') && (window.ended ??= performance.now()) > 0").await?;
        let (took, longest): (f64, f64) = page.js("[window.ended - window.began, window.longest]").await?;
        println!("five speeds from 12 to 60 teeth: {took:.0} ms until shown, longest task {longest:.0} ms");
        page.type_into("#bench-ladder", "9.99 1.00").await?;
        page.until("document.querySelector('#bench .bench__one:nth-child(4)').innerText.length > 150").await
    })
}

#[test]
fn mixed_parts_are_told_apart() -> Result<()> {
    visit(async |page| {
        page.open("").await?;
        let choose = async |field: &str, name: &str| {
            page.js::<()>(&format!("void (() => {{ const chosen = document.querySelector('#{field}'); chosen.value = {name:?}; chosen.dispatchEvent(new Event('change', {{ bubbles: true }})); }})()")).await
        };
        choose("bench-mix-cluster", "Curlew four, wide").await?;
        page.until("document.querySelector('#bench .bench__one:nth-child(5)').innerText.includes('Every pair can mesh')").await?;
        let sets: Vec<String> =
            page.js("[...document.querySelectorAll('#bench-mix-gears option')].map(option => option.value).filter(Boolean)").await?;
        ensure!(sets.len() >= 40, "the catalogue is there to choose from");
        choose("bench-mix-input", "Curlew four, close").await?;
        page.until("document.querySelector('#bench .bench__one:nth-child(5)').innerText.includes('sums to')").await?;
        choose("bench-mix-gears", "Redshank five").await?;
        page.until("document.querySelector('#bench .bench__one:nth-child(5)').innerText.includes('has no gears for 5th')").await
    })
}
