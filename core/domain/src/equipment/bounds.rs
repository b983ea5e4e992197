//! The sizes that equipment is held to, so that no file can make the loading slow.

/// Bars, racks, stacks and machines of one gym, each.
pub const OF_A_KIND: usize = 64;
/// Entries of plates.
pub const PLATES: usize = 22;
/// Pairs of one plate.
pub const PAIRS: u8 = 15;
/// Single plates of one entry.
pub const SINGLES: u8 = 1;
/// Loads in one rack, pins in one stack.
pub const STEPS: usize = 200;
/// Add-on weights of one stack, all entries together.
pub const ADD_ONS: u8 = 8;
/// Supports.
pub const SUPPORTS: usize = 64;
/// Characters of a name or a label.
pub const NAME: usize = 60;
