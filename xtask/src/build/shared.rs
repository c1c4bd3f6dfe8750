//! Small pieces that several parts need: the cutting gives each a file of its own, a hundred and more; those that come together lie in one.
//!
//! Such a file is a WebAssembly file of custom sections, each a piece under its name, so that hosts treat it as they treat the others.

use std::collections::BTreeMap;

use super::sections;

/// The parts in the order in which the app fetches them (`app::parts::ALL`). A piece lies with the first that needs it.
const ORDER: [&str; 10] = ["keep", "pictures", "answers", "desk", "paper", "find", "shelf", "listen", "photographs", "count"];
/// Bytes up to which a piece shares a file. A larger one is worth a request, and is compiled while it comes.
const SMALL: usize = 48 * 1024;

/// Puts small pieces together, and names them in the parts by their file and section.
pub(super) fn lay_together(files: &mut BTreeMap<String, Vec<u8>>, parts: &mut BTreeMap<String, Vec<String>>) {
    let mut in_order: Vec<(&String, &Vec<String>)> = parts.iter().collect();
    in_order.sort_by_key(|(part, _)| ORDER.iter().position(|known| known == part));
    let mut moved: BTreeMap<String, String> = BTreeMap::new();
    for (part, pieces) in in_order {
        // What the part alone needs is the last, and stays a file.
        let shared = pieces.split_last().map_or(&[][..], |(_, shared)| shared);
        let mut small: Vec<(&String, Vec<u8>)> = Vec::new();
        for piece in shared {
            if files.get(piece).is_some_and(|file| file.len() <= SMALL) {
                small.extend(files.remove(piece).map(|file| (piece, file)));
            }
        }
        if small.is_empty() {
            continue;
        }
        let file = format!("part-small-{part}.wasm");
        moved.extend(small.iter().map(|(piece, _)| ((*piece).clone(), format!("{file}#{}", section(piece)))));
        files.insert(file, sections::of_custom(small.iter().map(|(piece, content)| (section(piece), content.as_slice()))));
    }
    for piece in parts.values_mut().flatten() {
        if let Some(place) = moved.get(piece) {
            piece.clone_from(place);
        }
    }
}

/// The name a piece has inside a file: it is none itself.
fn section(piece: &str) -> &str {
    piece.strip_suffix(".wasm").unwrap_or(piece)
}

#[cfg(test)]
mod tests {
    use std::collections::BTreeMap;
    use std::fs;

    use super::{ORDER, SMALL, lay_together};
    use crate::build::sections::of_custom;
    use crate::shell;

    #[test]
    fn small_pieces_lie_with_the_first_part_that_needs_them() {
        let owned = |names: &[&str]| names.iter().map(|name| (*name).to_owned()).collect::<Vec<_>>();
        let mut files = BTreeMap::from(
            [("a.wasm", 1), ("b.wasm", SMALL + 1), ("c.wasm", 2), ("find.wasm", 3), ("keep.wasm", 4)]
                .map(|(name, size)| (name.to_owned(), vec![7; size])),
        );
        let mut parts = BTreeMap::from([
            ("find".to_owned(), owned(&["a.wasm", "c.wasm", "find.wasm"])),
            ("keep".to_owned(), owned(&["a.wasm", "b.wasm", "keep.wasm"])),
        ]);
        lay_together(&mut files, &mut parts);
        assert_eq!(parts["keep"], ["part-small-keep.wasm#a", "b.wasm", "keep.wasm"]);
        assert_eq!(parts["find"], ["part-small-keep.wasm#a", "part-small-find.wasm#c", "find.wasm"]);
        assert_eq!(files.keys().collect::<Vec<_>>(), ["b.wasm", "find.wasm", "keep.wasm", "part-small-find.wasm", "part-small-keep.wasm"]);
        assert_eq!(files["part-small-keep.wasm"], of_custom([("a", &[7][..])]));
    }

    #[test]
    fn the_order_is_the_app_s() {
        let app = fs::read_to_string(shell::project().join("src/app/parts.rs")).unwrap();
        // `pub NAME: Type = file(` or `NAME in file:` names a part; the list of all names them again.
        let file_of = |name: &str| {
            let in_file = app.split(&format!("    {name} in ")).nth(1).and_then(|after| after.split(':').next());
            let alone = || app.split(&format!("pub {name}: ")).nth(1)?.split_once(" = ")?.1.split('(').next();
            in_file.or_else(alone).unwrap().to_owned()
        };
        let all = app
            .split("pub static ALL")
            .nth(1)
            .and_then(|after| after.split(" = [").nth(1))
            .and_then(|after| after.split(']').next())
            .unwrap();
        let order: Vec<String> = all.split(',').map(|name| file_of(name.trim().trim_start_matches('&'))).collect();
        assert_eq!(order, ORDER);
    }
}
