//! Who owns a load, and what was said to it.
//!
//! Two owners carry loads from time to time: a *max* owns every row in percent, a *track* every
//! other row, and every row's aim and misses. What is careful of an exercise for a while (a lay-off,
//! pain) stands beside them and never touches either. Each is an [`Account`]: a state, and the last
//! words said to it in the log's order; the newest counts. A word that a session said can be taken
//! back or replaced, and the state is the fold of those that stand.

mod account;
mod change;
mod row;
mod state;

pub use account::{Account, Owners};
pub use change::{Change, MaxOrigin, Outcome, Proposal, Question, Why, Word};
pub use row::{Cut, Cutting, Owner, RowId, RowOwner, Terms, TrackId};
pub use state::{Care, LaidOff, Max, Missed, Pain, State, Track};
