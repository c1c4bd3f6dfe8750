//! Pictures of every section, to be looked at: wide and narrow, light and dark, and on paper.

use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

use anyhow::{Context, Result, bail};

use crate::{Page, Paper, Screen, Theme, visit};

const SCREENS: [Screen; 2] = [Screen::DESK, Screen::PHONE];
const THEMES: [Theme; 2] = [Theme::Light, Theme::Dark];
const PAPERS: [(&str, Paper); 2] = [("print-a4", Paper::A4), ("print-letter", Paper::LETTER)];

/// Takes the pictures, of all sections or of the one named, and answers the folder they are in.
///
/// # Errors
/// The build fails, the browser does not start, or there is no section of that name.
pub fn take(only: Option<&str>) -> Result<PathBuf> {
    let folder = xtask::shell::target().join("look");
    if only.is_none() && folder.exists() {
        // Pictures of sections that are gone would mislead.
        fs::remove_dir_all(&folder).with_context(|| format!("cannot clear {}", folder.display()))?;
    }
    fs::create_dir_all(&folder).with_context(|| format!("cannot make {}", folder.display()))?;
    visit(async |page| {
        for screen in SCREENS {
            for theme in THEMES {
                page.set_screen(screen).await?;
                page.set_theme(theme).await?;
                page.open("").await?;
                sections(page, only, &folder, &format!("{}-{}", screen.width, theme.word())).await?;
            }
        }
        if only.is_none() {
            print(page, &folder).await?;
        }
        Ok(())
    })?;
    Ok(folder)
}

async fn sections(page: &Page, only: Option<&str>, folder: &Path, suffix: &str) -> Result<()> {
    let mut names: Vec<String> = page.js("[...document.querySelectorAll('main section[id]')].map((s) => s.id)").await?;
    if let Some(only) = only {
        if !names.iter().any(|name| name == only) {
            bail!("there is no section `{only}`; these are: {}", names.join(", "));
        }
        names.retain(|name| name == only);
    } else {
        write(folder, &format!("page-{suffix}.png"), &page.picture().await?)?;
    }
    // What stays in view while the page is scrolled would stand across a section taller than the window.
    page.js::<()>("void [...document.querySelectorAll('body *')].filter((one) => getComputedStyle(one).position === 'sticky').forEach((one) => { one.style.position = 'static'; })").await?;
    for name in names {
        // What begins when it comes into view has begun and ended before the picture; other sections' work has not begun.
        page.element(&format!("section[id=\"{name}\"]")).await?;
        // A picture is painted once it is near the window.
        page.js::<()>(&format!(
            "(async () => {{ for (const one of document.querySelectorAll('section[id=\"{name}\"] .picture')) {{
                one.scrollIntoView({{ block: 'center' }});
                await new Promise((done) => setTimeout(done, 150));
            }} }})()"
        ))
        .await?;
        let waiting = format!("section[id=\"{name}\"] [data-done=\"false\"]");
        if page.count(&waiting).await? > 0 {
            page.element(&waiting).await?;
            page.until(&format!("document.querySelector('{waiting}') === null")).await?;
        }
        write(folder, &format!("{name}-{suffix}.png"), &page.picture_of(&format!("section[id=\"{name}\"]")).await?)?;
    }
    Ok(())
}

async fn print(page: &Page, folder: &Path) -> Result<()> {
    page.set_screen(Screen::DESK).await?;
    page.set_theme(Theme::Light).await?;
    page.open("").await?;
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
