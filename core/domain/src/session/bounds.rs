//! The most that a session holds.

/// The most sets one exercise may come to in a session, added ones included.
pub const MOST_SETS: usize = 100;
/// The most exercises a session may come to, swapped ones included.
pub const MOST_ENTRIES: usize = 60;
/// The most characters of a note.
pub const MOST_NOTE: usize = 2_000;
/// The most characters of a set-up line, and the most lines.
pub const MOST_SET_UP: (usize, usize) = (80, 12);
