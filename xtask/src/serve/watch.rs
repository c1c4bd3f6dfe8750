//! Building again when a source changes. Times of change are polled: two looks a second at a few hundred files cost nothing.

use std::path::{Path, PathBuf};
use std::time::{Duration, Instant, SystemTime};

use anyhow::Result;

use crate::build::{self, Profile};
use crate::toolchain::Toolchain;
use crate::{say, shell};

const EVERY: Duration = Duration::from_millis(400);
const WATCHED: [&str; 6] = ["src", "style", "public", "index.html", "Cargo.toml", "Cargo.lock"];

/// Every watched file with the time of its last change.
type Picture = Vec<(PathBuf, SystemTime)>;

/// Builds whenever a watched file has changed. Never returns unless the world ends; a failed build is told and waited out.
pub(super) fn rebuild_on_change(toolchain: &Toolchain, folder: &Path) -> Result<()> {
    println!("Watching {}.", WATCHED.join(", "));
    let mut seen = picture();
    loop {
        std::thread::sleep(EVERY);
        let now = picture();
        if now == seen {
            continue;
        }
        println!("\nChanged: {}", changed(&seen, &now));
        seen = now;
        let began = Instant::now();
        match build::site_with(toolchain, Profile::Dev, folder) {
            Ok(_) => println!("Built in {}; reload the page.", say::seconds(began.elapsed())),
            Err(problem) => println!("\n{problem:#}\nThe page stays as it was."),
        }
    }
}

fn picture() -> Picture {
    let mut files = Vec::new();
    for name in WATCHED {
        collect(&shell::project().join(name), &mut files);
    }
    files.sort();
    files
}

fn collect(path: &Path, into: &mut Picture) {
    if let Ok(entries) = std::fs::read_dir(path) {
        entries.flatten().for_each(|entry| collect(&entry.path(), into));
    } else if let Ok(changed) = path.metadata().and_then(|meta| meta.modified()) {
        into.push((path.to_owned(), changed));
    }
}

fn changed(before: &Picture, after: &Picture) -> String {
    let differs = |one: &Picture, other: &Picture| one.iter().find(|file| !other.contains(file)).map(|(path, _)| path.clone());
    let path = differs(after, before).or_else(|| differs(before, after)).unwrap_or_default();
    path.strip_prefix(shell::project()).unwrap_or(&path).display().to_string()
}
