//! Pictures of every question and place, to be looked at: wide and narrow, light and dark, and on paper.

use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

use anyhow::{Context, Result, bail};

use crate::{Page, Paper, Screen, Theme, visit};

const SCREENS: [Screen; 4] = [
    Screen::DESK,
    Screen { width: 1024, height: 768, ratio: 1.0, mobile: false },
    Screen { width: 820, height: 1180, ratio: 1.0, mobile: true },
    Screen::PHONE,
];
const THEMES: [Theme; 2] = [Theme::Light, Theme::Dark];
const PAPERS: [(&str, Paper); 2] = [("print-a4", Paper::A4), ("print-letter", Paper::LETTER)];

/// Takes the pictures, of all questions and places or of the one named, and answers the folder they are in.
///
/// # Errors
/// The build fails, the browser does not start, or there is no question of that name.
pub fn take(only: Option<&str>) -> Result<PathBuf> {
    let folder = xtask::shell::target().join("look");
    if only.is_none() && folder.exists() {
        // Pictures of questions that are gone would mislead.
        fs::remove_dir_all(&folder).with_context(|| format!("cannot clear {}", folder.display()))?;
    }
    fs::create_dir_all(&folder).with_context(|| format!("cannot make {}", folder.display()))?;
    visit(async |page| {
        page.open("").await?;
        let places = chosen(page.everywhere().await?, only)?;
        page.go_to("compare/gears").await?;
        page.close_notices().await?;
        for many in [3, 6] {
            page.set_screen(Screen::DESK).await?;
            page.go_to("compare/gears").await?;
            page.add_setups(many).await?;
            page.saved().await?;
            for screen in SCREENS {
                for theme in THEMES {
                    page.set_screen(screen).await?;
                    page.set_theme(theme).await?;
                    take_each(page, &places, &folder, &format!("{many}-{}-{}", screen.width, theme.word())).await?;
                }
            }
        }
        if only.is_none() {
            print(page, &folder).await?;
        }
        Ok(())
    })?;
    Ok(folder)
}

/// The addresses asked for: all of them, or the one that ends with a name.
fn chosen(all: Vec<String>, only: Option<&str>) -> Result<Vec<String>> {
    let Some(only) = only else { return Ok(all) };
    let names = all.join(", ");
    let chosen: Vec<String> = all.into_iter().filter(|at| at == only || at.rsplit('/').next() == Some(only)).collect();
    if chosen.is_empty() {
        bail!("there is no question or place `{only}`; these are: {names}");
    }
    Ok(chosen)
}

/// A picture of the first screen of each, and one of the whole page with its folds open.
async fn take_each(page: &Page, places: &[String], folder: &Path, suffix: &str) -> Result<()> {
    for at in places {
        page.go_to(at).await?;
        let name = at.replace('/', "-");
        settle(page).await?;
        write(folder, &format!("{name}-{suffix}.png"), &page.picture_of_window().await?)?;
        write(folder, &format!("{name}-{suffix}-whole.png"), &page.picture().await?)?;
    }
    Ok(())
}

/// Waits until what goes on has ended, and what was asked for is painted.
async fn settle(page: &Page) -> Result<()> {
    page.js::<()>("void scrollTo({ top: 0, behavior: 'instant' })").await?;
    page.until("document.querySelector('main [data-done=\"false\"], main [aria-busy=\"true\"]') === null").await?;
    page.js::<()>("new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(() => done(null))))").await
}

async fn print(page: &Page, folder: &Path) -> Result<()> {
    page.set_screen(Screen::DESK).await?;
    page.set_theme(Theme::Light).await?;
    for (name, paper) in PAPERS {
        let file = format!("{name}.pdf");
        write(folder, &file, &page.pdf(paper).await?)?;
        let mut pdftoppm = Command::new("pdftoppm");
        pdftoppm.args(["-r", "80", "-png", &file, name]).current_dir(folder);
        if xtask::shell::output(&mut pdftoppm).is_none() {
            println!("pdftoppm (Debian: poppler-utils) is not there, so {file} has no pictures");
        }
    }
    Ok(())
}

fn write(folder: &Path, name: &str, content: &[u8]) -> Result<()> {
    println!("  {name}");
    fs::write(folder.join(name), content).with_context(|| format!("cannot write {name}"))
}
