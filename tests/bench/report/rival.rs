//! The same picture by a general canvas chart library from npm, drawn in the same browser at the same size.

use std::path::Path;
use std::process::Command;

use anyhow::{Context, Result};
use browser_tests::{Site, visit_site};
use layshaft::job::demo;
use layshaft::questions::Source;
use layshaft::questions::road::pictures as of;
use layshaft::questions::{self, Shelves};
use layshaft::sheet::{Reader, Words};
use serde_json::{Value, json};
use xtask::shell;

/// Milliseconds of a redraw, the median of many.
pub(crate) struct Rival {
    /// To draw the picture again.
    pub(crate) redraw_ms: f64,
    /// The library and its version.
    pub(crate) words: String,
}

const PAGE: &str = "<!doctype html><html lang=\"en\"><meta charset=\"utf-8\"><title>beside</title><link rel=\"stylesheet\" href=\"uplot.css\">\
<h1>beside</h1><div id=\"chart\"></div><script src=\"uplot.js\"></script></html>";

/// Fetches the library once and takes the time.
pub(crate) fn ask(folder: &Path) -> Result<Rival> {
    let npm = folder.join("npm");
    let package = npm.join("node_modules/uplot");
    if !package.exists() {
        std::fs::create_dir_all(&npm)?;
        let mut install = Command::new("npm");
        install.args(["install", "--silent", "--no-audit", "--no-fund", "--prefix"]).arg(&npm).arg("uplot");
        shell::run(&mut install).context("npm is needed to fetch the chart library (Debian: npm)")?;
    }
    let about: Value = serde_json::from_str(&std::fs::read_to_string(package.join("package.json"))?)?;
    let site = folder.join("rival");
    std::fs::create_dir_all(&site)?;
    std::fs::copy(package.join("dist/uPlot.iife.min.js"), site.join("uplot.js"))?;
    std::fs::copy(package.join("dist/uPlot.min.css"), site.join("uplot.css"))?;
    std::fs::write(site.join("index.html"), PAGE)?;
    let mut redraw_ms = 0.0;
    visit_site(Site::of(&site, "")?, async |page| {
        page.expect_message("favicon");
        page.go("").await?;
        page.until("typeof uPlot === 'function'").await?;
        redraw_ms = page.js(&timed(&series())).await?;
        Ok(())
    })?;
    Ok(Rival { redraw_ms, words: format!("uPlot {}", about["version"].as_str().unwrap_or("?")) })
}

/// The shift chart of the demo job as the library wants it: one row of speeds, one of rpm for each setup.
fn series() -> Value {
    let job = demo::job();
    let shelves = Shelves::default();
    let answers = questions::analyse_job(&job, shelves);
    let reader = Reader { units: job.units, words: Words::Us };
    let chart = of::shift_chart(Source::new(&job, &answers, shelves, reader), None);
    let lines: Vec<Vec<[f64; 2]>> = chart
        .setups
        .iter()
        .map(|climb| {
            let mut points = Vec::new();
            let mut from = 0.0;
            for gear in &climb.gears {
                points.push([from, chart.shift_rpm * from / gear.speed_at_shift]);
                points.push([gear.speed_at_shift, chart.shift_rpm]);
                from = gear.speed_at_shift + 1e-6;
            }
            points
        })
        .collect();
    json!(lines)
}

fn timed(lines: &Value) -> String {
    format!(
        "(async () => {{
            const lines = {lines};
            const data = uPlot.join(lines.map((line) => [line.map((point) => point[0]), line.map((point) => point[1])]));
            const series = [{{}}, ...lines.map((_, at) => ({{ label: 'ABC'[at], stroke: ['#0068a8', '#9a2a7b', '#00765a'][at], width: 2.4, spanGaps: true }}))];
            const plot = new uPlot({{ width: 1180, height: 460, scales: {{ x: {{ time: false }} }}, series }}, data, document.getElementById('chart'));
            const times = [];
            for (let turn = 0; turn < 60; turn++) {{
                await new Promise(requestAnimationFrame);
                const begun = performance.now();
                plot.redraw(true, true);
                await null; await null;
                times.push(performance.now() - begun);
            }}
            times.sort((a, b) => a - b);
            return times[30];
        }})()"
    )
}
