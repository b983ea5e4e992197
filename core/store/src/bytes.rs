//! Numbers in bytes that may be damaged: what lies outside is nothing, never a panic.

/// Bytes of a page, and so of a frame: large enough that the beginning of a session, with its whole
/// sheet, is a few frames too.
pub(crate) const PAGE_BYTES: u32 = 16_384;

/// A big-endian number; 0 past the end.
pub(crate) fn be_u32(bytes: &[u8], at: usize) -> u32 {
    bytes.get(at..).and_then(|rest| rest.first_chunk()).map_or(0, |four| u32::from_be_bytes(*four))
}

/// A big-endian number of two bytes; 0 past the end.
pub(crate) fn be_u16(bytes: &[u8], at: usize) -> u16 {
    bytes.get(at..).and_then(|rest| rest.first_chunk()).map_or(0, |two| u16::from_be_bytes(*two))
}

/// A part; none of it past the end.
pub(crate) fn part(bytes: &[u8], at: usize, length: usize) -> &[u8] {
    at.checked_add(length).and_then(|end| bytes.get(at..end)).unwrap_or_default()
}

/// A number as SQLite writes it in one to nine bytes, and how many those are.
pub(crate) fn varint(bytes: &[u8], at: usize) -> Option<(u64, usize)> {
    let mut number = 0_u64;
    for length in 0..9 {
        let byte = *bytes.get(at.checked_add(length)?)?;
        if length == 8 {
            return Some((number << 8 | u64::from(byte), 9));
        }
        number = number << 7 | u64::from(byte & 0x7f);
        if byte < 0x80 {
            return Some((number, length + 1));
        }
    }
    None
}
