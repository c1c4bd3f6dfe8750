//! What a first visit may cost: the bytes until the first figure, and what has no place in the program that it loads.

use anyhow::{Result, bail};

use crate::build::Built;

/// Bytes after brotli of all a first visit waits for: page, style, faces, bindings, main program. Lowered with every cut, never raised
/// without a reason in the commit that does.
const MOST: usize = 392_000;
/// Where it is to come to: half of what the program was in one piece, a second and a half on a slow line.
const TARGET: usize = 340_000;

/// What has no place in the main program: a part of the functions' names, and what to do instead.
struct Banned {
    name: &'static str,
    instead: &'static str,
    /// Whether the check fails on it. What is still there only until the app is cut is told.
    is_in_force: bool,
}

const BANNED: [Banned; 4] = [
    Banned {
        name: "dec2flt",
        instead: "tables to read any float, 12 kB: read decimals exactly instead of `f64::from_str`",
        is_in_force: false,
    },
    Banned {
        name: "unicode_data::conversions",
        instead: "tables of capital letters, 7 kB: fold ASCII, or do it in a later part",
        is_in_force: false,
    },
    Banned { name: "serde", instead: "what is kept and opened is read and written in a later part", is_in_force: true },
    Banned { name: "csv", instead: "files and pasted tables are read in a later part", is_in_force: false },
];

/// Checks what was built.
pub(super) fn check(built: &Built) -> Result<()> {
    let bytes = built.sizes.first_visit();
    println!("  until the first figure {bytes} bytes travel; {MOST} are allowed, {TARGET} are aimed at");
    let mut faults = Vec::new();
    if bytes > MOST {
        faults.push(format!("a first visit waits for {bytes} bytes, {} more than are allowed", bytes - MOST));
    }
    for Banned { name, instead, is_in_force } in BANNED {
        let found: Vec<&String> = built.functions.iter().filter(|function| function.contains(name)).collect();
        let Some(first) = found.first() else { continue };
        let says = format!("`{name}` is in {} functions of the main program, `{first}` the first of them ({instead})", found.len());
        if is_in_force {
            faults.push(says);
        } else {
            println!("  not yet moved: {says}");
        }
    }
    if faults.is_empty() {
        return Ok(());
    }
    bail!("{}", faults.join("; "))
}
