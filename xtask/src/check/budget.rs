//! What a first visit may cost: the bytes until the first figure, and what has no place in the program that it loads.

use anyhow::{Result, bail};

use crate::build::Built;

/// Bytes after brotli of all a first visit waits for: page, style, faces, bindings, main program. Lowered with every cut, never raised
/// without a reason in the commit that does.
const MOST: usize = 340_000;

/// What has no place in the main program: a part of the functions' names, and what to do instead.
struct Banned {
    name: &'static str,
    instead: &'static str,
}

const BANNED: [Banned; 4] = [
    Banned { name: "dec2flt", instead: "tables to read any float, 12 kB: read decimals exactly instead of `f64::from_str`" },
    Banned { name: "unicode_data::conversions", instead: "tables of capital letters, 7 kB: fold ASCII, or do it in a later part" },
    Banned { name: "serde", instead: "what is kept and opened is read and written in a later part" },
    Banned { name: "csv", instead: "files and pasted tables are read in a later part" },
];

/// Checks what was built.
pub(super) fn check(built: &Built) -> Result<()> {
    let bytes = built.sizes.first_visit();
    println!("  until the first figure {bytes} bytes travel; {MOST} are allowed");
    let mut faults = Vec::new();
    if bytes > MOST {
        faults.push(format!("a first visit waits for {bytes} bytes, {} more than are allowed", bytes - MOST));
    }
    for Banned { name, instead } in BANNED {
        let found: Vec<&String> = built.functions.iter().filter(|function| function.contains(name)).collect();
        if let Some(first) = found.first() {
            faults.push(format!("`{name}` is in {} functions of the main program, `{first}` the first of them ({instead})", found.len()));
        }
    }
    if faults.is_empty() {
        return Ok(());
    }
    bail!("{}", faults.join("; "))
}
