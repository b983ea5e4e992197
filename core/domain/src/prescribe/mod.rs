//! Today's sheet: plan + owners + equipment → every set with its load, its
//! plates, its rest and its reason; the ramp; how long it takes, and what to leave out for the
//! minutes there are.
//!
//! [`sheet`] is a pure function. Where something is missing (a max, a body mass) it never guesses:
//! the load is the lifter's to find, and [`Prescribed::needs`] says what would help.

mod cuts;
mod duration;
mod entry;
mod instead;
mod lifter;
mod meant;
mod minutes;
mod moved;
mod past;
mod ramp;
mod row;
mod session;
mod slot;
mod source;
mod spread;

pub use cuts::tenth_under;
pub use duration::{Duration, duration, seconds_to_go};
pub use instead::{Candidate, candidates};
pub use lifter::{ENOUGH_PAST, Lifter, MOST_PAST, Need, Past, RECENT_DAYS};
pub use minutes::{LeftOut, fit_minutes};
pub use moved::{MovedFrom, MovedLoad, Moves, lifts_of, moved_loads, taking_from};
pub use session::{Prescribed, added, next_time, sheet, substitute};
pub use source::Source;
