//! Hard sets a muscle a week.
//!
//! A set counts once however many parts it has: 1 for a muscle that its exercise trains directly,
//! a half for one that it trains indirectly (the fractional count, which fits best: Pelland et al.
//! 2024, SportRxiv osf.io/6z3xu). Counting sets near failure holds from six repetitions up
//! (Baz-Valle et al. 2021, JSCR 35(3):870–878), so sets of fewer stand apart. All counts are whole
//! numbers of sets or of half sets.

mod balance;
mod hard;
mod ledger;
mod planned;

pub use balance::{Behind, BehindSide, Level, behind, behind_side, places};
pub use hard::{Closeness, EASIEST_HARD, is_hard};
pub use ledger::{Count, Ledger, Set, Sides, Tally, Week};
pub use planned::planned;
