//! The most that is read of a file from outside, so that none can hang the program, overflow its
//! stack or use up its memory. One table: readers check against it and errors quote it.

/// Bytes of a whole file.
pub const FILE_BYTES: usize = 128 * 1024;
/// How deep lists and tables may lie in each other; each part of a dotted key counts as one.
pub const DEPTH: usize = 10;
/// Keys and list items in a whole file.
pub const ITEMS: usize = 12_000;
/// Characters of a line of text, where a reader states no other number.
pub const TEXT: usize = 200;
/// Items of one list, where a reader states no other number.
pub const LIST: usize = 200;
/// Faults that are reported of one file; the rest wait until these are mended.
pub const FAULTS: usize = 100;
/// Lines that are set aside because they are not TOML, before the reader gives up on the rest.
pub(crate) const SET_ASIDE: usize = 20;
