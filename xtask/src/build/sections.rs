//! The sections of a WebAssembly file. Source: WebAssembly Core Specification, chapter 5 (binary format): a section is one byte that says
//! what it is, its length as an unsigned LEB128 number, and its content; custom sections are 0 and mean nothing to the program.

use anyhow::{Context, Result, ensure};

const HEADER: &[u8] = b"\0asm\x01\0\0\0";
const CUSTOM: u8 = 0;

/// The file without its custom sections: names of functions, notes about the compiler, what the linker left for the cutting.
pub(super) fn without_custom(file: &[u8]) -> Result<Vec<u8>> {
    ensure!(file.starts_with(HEADER), "this is not a WebAssembly file");
    let mut kept = HEADER.to_vec();
    let mut rest = &file[HEADER.len()..];
    while let Some((kind, after)) = rest.split_first() {
        let (length, digits) = leb128(after).context("a section has no length")?;
        let whole = 1 + digits + length;
        let section = rest.get(..whole).context("the last section is cut off")?;
        if *kind != CUSTOM {
            kept.extend_from_slice(section);
        }
        rest = &rest[whole..];
    }
    Ok(kept)
}

/// A file of custom sections alone, each with its name: a program that does nothing and carries others.
pub(super) fn of_custom<'a>(sections: impl IntoIterator<Item = (&'a str, &'a [u8])>) -> Vec<u8> {
    let mut file = HEADER.to_vec();
    for (name, content) in sections {
        let named = [&to_leb128(name.len()), name.as_bytes(), content].concat();
        file.push(CUSTOM);
        file.extend(to_leb128(named.len()));
        file.extend(named);
    }
    file
}

/// A number as [`leb128`] reads it.
fn to_leb128(mut value: usize) -> Vec<u8> {
    let mut bytes = Vec::new();
    loop {
        let [low, ..] = (value & 0x7f).to_le_bytes();
        value >>= 7;
        if value == 0 {
            bytes.push(low);
            return bytes;
        }
        bytes.push(low | 0x80);
    }
}

/// A number of seven bits a byte, the lowest first, and how many bytes it takes.
fn leb128(bytes: &[u8]) -> Option<(usize, usize)> {
    let mut value = 0;
    for (place, byte) in bytes.iter().take(5).enumerate() {
        value |= usize::from(byte & 0x7f) << (7 * place);
        if byte & 0x80 == 0 {
            return Some((value, place + 1));
        }
    }
    None
}

#[cfg(test)]
mod tests {
    use super::{HEADER, leb128, of_custom, to_leb128, without_custom};

    /// The example of the specification's source for LEB128, DWARF 4, figure 22 and section 7.6: 624485 is e5 8e 26.
    #[test]
    fn published_leb128() {
        assert_eq!(leb128(&[0xe5, 0x8e, 0x26, 0xff]), Some((624_485, 3)));
        assert_eq!(leb128(&[0x02]), Some((2, 1)));
        assert_eq!(leb128(&[0x80]), None);
        assert_eq!(to_leb128(624_485), [0xe5, 0x8e, 0x26]);
        assert_eq!(to_leb128(2), [0x02]);
    }

    #[test]
    fn a_file_carries_others_as_sections() {
        let file = of_custom([("a", &[7, 7][..]), ("bc", &[9][..])]);
        assert_eq!(file, [HEADER, &[0, 4, 1, b'a', 7, 7], &[0, 4, 2, b'b', b'c', 9]].concat());
        assert_eq!(without_custom(&file).unwrap(), HEADER);
    }

    #[test]
    fn only_custom_sections_go() {
        let file = [HEADER, &[0, 2, 1, b'a'], &[1, 1, 0], &[0, 1, 0], &[10, 2, 7, 7]].concat();
        assert_eq!(without_custom(&file).unwrap(), [HEADER, &[1, 1, 0], &[10, 2, 7, 7]].concat());
        assert!(without_custom(&file[..file.len() - 1]).is_err());
        assert!(without_custom(b"<!DOCTYPE html>").is_err());
    }
}
