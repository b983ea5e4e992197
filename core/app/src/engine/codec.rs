//! Events as the log holds them. Every version that was ever written keeps its reader here.

use barwright_domain::desk::{Desk, DeskEvent};
use barwright_domain::owners::Account;
use barwright_domain::session::{Event, Reading, Stamped};
use barwright_store::{Event as Row, Stamp};
use serde::{Deserialize, Serialize};

/// Kind of a session's events.
pub(super) const SESSION: &str = "session";
/// Kind of the desk's events.
pub(super) const DESK: &str = "desk";
/// The version written now, of both kinds.
pub(super) const VERSION: u32 = 1;

/// The body of an event: the part of its reading that the log has no column for, and the event.
#[derive(Serialize, Deserialize)]
struct Body<T> {
    #[serde(default, skip_serializing_if = "Option::is_none")]
    boot_ms: Option<i64>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    boot_id: Option<String>,
    event: T,
}

/// An event that this release can't read.
#[derive(Debug)]
pub(super) struct Unreadable {
    /// Its number.
    pub(super) seq: u64,
}

/// The body of an event.
pub(super) fn body<T: Serialize>(at: &Reading, event: &T) -> String {
    let body = Body { boot_ms: at.boot_ms, boot_id: at.boot_id.clone(), event };
    // Only a map with keys that are no strings, or a writer that fails, could make this an error.
    serde_json::to_string(&body).expect("an event is plain data")
}

/// The standing desk.
pub(super) fn desk_body(desk: &Desk) -> String {
    serde_json::to_string(desk).expect("the desk is plain data")
}

/// An owner's account.
pub(super) fn account_body(account: &Account) -> String {
    serde_json::to_string(account).expect("an account is plain data")
}

/// The wall clock's part of a reading.
pub(super) fn stamp(at: &Reading) -> Stamp {
    Stamp { wall_ms: at.wall_ms, offset_minutes: at.offset_minutes }
}

fn read<T: for<'de> Deserialize<'de>>(row: &Row) -> Result<Body<T>, Unreadable> {
    if row.version != VERSION {
        return Err(Unreadable { seq: row.seq });
    }
    serde_json::from_str(&row.body).map_err(|_| Unreadable { seq: row.seq })
}

/// A session's event as it stands in the log.
pub(super) fn session(row: &Row) -> Result<Stamped, Unreadable> {
    let body: Body<Event> = read(row)?;
    Ok(Stamped {
        seq: row.seq,
        tap: row.tap,
        at: Reading {
            wall_ms: row.at.wall_ms,
            offset_minutes: row.at.offset_minutes,
            boot_ms: body.boot_ms,
            boot_id: body.boot_id,
        },
        event: body.event,
    })
}

/// A desk's event.
pub(super) fn desk(row: &Row) -> Result<DeskEvent, Unreadable> {
    read(row).map(|body: Body<DeskEvent>| body.event)
}
