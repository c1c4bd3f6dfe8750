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
    use super::{HEADER, leb128, without_custom};

    /// The example of the specification's source for LEB128, DWARF 4, figure 22 and section 7.6: 624485 is e5 8e 26.
    #[test]
    fn published_leb128() {
        assert_eq!(leb128(&[0xe5, 0x8e, 0x26, 0xff]), Some((624_485, 3)));
        assert_eq!(leb128(&[0x02]), Some((2, 1)));
        assert_eq!(leb128(&[0x80]), None);
    }

    #[test]
    fn only_custom_sections_go() {
        let file = [HEADER, &[0, 2, 1, b'a'], &[1, 1, 0], &[0, 1, 0], &[10, 2, 7, 7]].concat();
        assert_eq!(without_custom(&file).unwrap(), [HEADER, &[1, 1, 0], &[10, 2, 7, 7]].concat());
        assert!(without_custom(&file[..file.len() - 1]).is_err());
        assert!(without_custom(b"<!DOCTYPE html>").is_err());
    }
}
