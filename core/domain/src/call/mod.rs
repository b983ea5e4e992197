//! The coach's instruction for one set: what, how many, how hard, in what way.
//!
//! A plan writes these, the sheet resolves them for today, the floor shows them. They say what was
//! *asked*; what was *done* is the session's.

mod effort;
mod ending;
mod flow;
mod how_many;
mod load;
mod manner;
mod names;
mod structure;

pub use effort::{EffortScale, EffortTarget};
pub use ending::{Ending, SetKind};
pub use flow::Flow;
pub use how_many::{Amount, HowMany, Stop};
pub use load::{LoadCall, MaxOf};
pub use manner::{Manner, Side, WeekKind};
pub use names::{EntryId, SetId};
pub use structure::{ContinuedPart, RangePart, Structure};
