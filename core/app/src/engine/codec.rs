//! Rows of the log as events, and events as rows: what stands in a body is the log crate's.

use barwright_domain::desk::DeskEvent;
use barwright_domain::session::{Event, Reading, Stamped};
use barwright_log as log;
use barwright_store::{Event as Row, Stamp};

pub(super) use log::VERSION;

/// Kind of a session's events.
pub(super) const SESSION: &str = "session";
/// Kind of the desk's events.
pub(super) const DESK: &str = "desk";

/// An event that this release can't read.
#[derive(Debug)]
pub(super) struct Unreadable {
    /// Its number.
    pub(super) seq: u64,
}

/// The wall clock's part of a reading.
pub(super) fn stamp(at: &Reading) -> Stamp {
    Stamp { wall_ms: at.wall_ms, offset_minutes: at.offset_minutes }
}

/// A session's event as it stands in the log.
pub(super) fn session(row: &Row) -> Result<Stamped, Unreadable> {
    let read: Result<(Reading, Event), _> =
        log::decode_session(row.version, &row.body, row.at.wall_ms, row.at.offset_minutes);
    let (at, event) = read.map_err(|_| Unreadable { seq: row.seq })?;
    Ok(Stamped { seq: row.seq, tap: row.tap, at, event })
}

/// A desk's event.
pub(super) fn desk(row: &Row) -> Result<DeskEvent, Unreadable> {
    let read = log::decode_desk(row.version, &row.body, row.at.wall_ms, row.at.offset_minutes);
    read.map(|(_, event)| event).map_err(|_| Unreadable { seq: row.seq })
}
