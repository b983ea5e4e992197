//! What was done, as rows: one for each set and each session, and the records among them.
//!
//! Rows are derived from events and from nothing else, so they can be made again at any time.
//! [`rows`] derives those of one session; [`Rows::changes_to`] says what a tap changes in them.

mod brought;
mod derive;
mod estimates;
mod record;
mod row;

pub use brought::Brought;
pub use derive::{Change, Rows, rows, rows_after, session_volume};
pub use estimates::{estimate, hard_estimate, supported};
pub use record::{Apart, Measure, MostAt, Record, claims, most_at_loads};
pub use row::{
    DonePart, DoneSet, MuscleTally, Outcome, SessionRow, SetKey, Turn, first_day, week_of,
};
