//! The sizes that equipment is held to, so that no file can make the loading slow.

use crate::quantity::Mass;

/// Bars, racks, stacks and machines of one gym, each.
pub const OF_A_KIND: usize = 64;
/// Entries of plates.
pub const PLATES: usize = 22;
/// Pairs of one plate: a post takes no more than 31 plates of one size.
pub const PAIRS: u8 = 31;
/// The lightest plate or step.
pub const LIGHTEST_PLATE: Mass = Mass::from_nanograms(10_000_000_000);
/// Loads in one rack, pins in one stack.
pub const STEPS: usize = 200;
/// Add-on weights of one stack.
pub const ADD_ONS: usize = 8;
/// Sets of one ramp.
pub const SETS: usize = 64;
/// Supports.
pub const SUPPORTS: usize = 64;
/// Characters of a name or a label.
pub const NAME: usize = 60;
