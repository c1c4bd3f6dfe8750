//! A printed page read back: the words of each page of a PDF, by poppler's pdftotext.

use std::io::Write;
use std::process::{Command, Stdio};
use std::sync::OnceLock;

use anyhow::{Context, Result, anyhow};
use xtask::debian;

const PACKAGE: [&str; 1] = ["poppler-utils"];

/// The pages of a PDF as text, the words of each parted by one blank.
///
/// # Errors
/// There is no pdftotext and none can be installed, or the PDF cannot be read.
pub fn pages(pdf: &[u8]) -> Result<Vec<String>> {
    ready()?;
    let mut reader = Command::new("pdftotext")
        .args(["-layout", "-", "-"])
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .spawn()
        .context("pdftotext does not start")?;
    let mut input = reader.stdin.take().context("pdftotext takes no input")?;
    let pdf = pdf.to_owned();
    // Written beside the reading: neither waits for the other.
    let writer = std::thread::spawn(move || input.write_all(&pdf));
    let text = String::from_utf8(reader.wait_with_output()?.stdout).context("the PDF's text is not UTF-8")?;
    writer.join().map_err(|_| anyhow!("the PDF could not be handed over"))??;
    let mut pages: Vec<String> = text.split('\u{c}').map(|page| page.split_whitespace().collect::<Vec<_>>().join(" ")).collect();
    pages.retain(|page| !page.is_empty());
    Ok(pages)
}

/// Sees once that pdftotext is there.
fn ready() -> Result<()> {
    static READY: OnceLock<Result<(), String>> = OnceLock::new();
    let ready = READY.get_or_init(|| {
        let there = || Command::new("pdftotext").arg("-v").stderr(Stdio::null()).status().is_ok_and(|status| status.success());
        if !there() && debian::can_install() {
            debian::install(&PACKAGE).map_err(|problem| format!("{problem:#}"))?;
        }
        let by_hand = debian::by_hand(&PACKAGE);
        if there() { Ok(()) } else { Err(format!("reading a PDF back needs pdftotext. On Debian, as root, type `{by_hand}`")) }
    });
    ready.clone().map_err(|problem| anyhow!(problem))
}
