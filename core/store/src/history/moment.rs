//! When a session was, among all.

use crate::event::Seq;

/// Its local date, in days since 1970-01-01, and of one date its number. What was brought from
/// elsewhere, or dated otherwise, stands where it was lived.
pub type Moment = (i32, Seq);

/// Past every number of the log.
pub(super) const END: Seq = i64::MAX as u64;

/// Past every session.
pub(super) const END_OF_TIME: Moment = (i32::MAX, END);
