//! A short name for a file's content. FNV-1a, 64 bits: stable over time and machines, which the standard hasher is not.
//!
//! Source: <http://www.isthe.com/chongo/tech/comp/fnv/>, the offset basis and prime for 64 bits.

const OFFSET_BASIS: u64 = 0xcbf2_9ce4_8422_2325;
const PRIME: u64 = 0x0000_0100_0000_01b3;

/// The content's hash as sixteen hexadecimal digits.
pub(super) fn hex(content: &[u8]) -> String {
    let hash = content.iter().fold(OFFSET_BASIS, |hash, byte| (hash ^ u64::from(*byte)).wrapping_mul(PRIME));
    format!("{hash:016x}")
}

#[cfg(test)]
mod tests {
    /// Test vectors of the same page.
    #[test]
    fn published_fnv_1a() {
        assert_eq!(super::hex(b""), "cbf29ce484222325");
        assert_eq!(super::hex(b"a"), "af63dc4c8601ec8c");
        assert_eq!(super::hex(b"foobar"), "85944171f73967e8");
    }
}
