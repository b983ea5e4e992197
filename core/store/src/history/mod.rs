//! Rows derived from the log: sets, sessions, volume and records.
//!
//! A tap's changes are queued in its own transaction, at the end of one small table, so that it
//! touches few pages however long the history is. [`Store::checkpoint`](crate::Store::checkpoint)
//! carries them out. Reading sees them at once: [`History`] lays what is queued over what it reads, and
//! writes nothing.
//!
//! What is read is known to be all that was written: every row has a digest, and rows are numbered
//! without gaps in each order that they are read in. What does not fit is
//! [`StoreError::Spoiled`](crate::StoreError::Spoiled), and is made anew from the log.

mod ahead;
mod code;
mod fresh;
mod moment;
mod order;
mod pending;
mod read;
mod rebuild;
mod total;
mod write;

pub use moment::Moment;
pub(crate) use pending::{carry_out, count, queue};
pub use read::{History, VolumeRow};
pub use rebuild::{AtEnd, Derive, Differing};

/// Version of the derived rows and of the queued changes: another one than the file's means that
/// they are made anew.
pub(crate) const HISTORY_VERSION: u32 = 1;
