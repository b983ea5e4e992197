//! Appending a tap: its events, what they change of the derived rows, and standing facts, in one
//! transaction.

use barwright_domain::history::Change;
use rusqlite::Connection;

use crate::chain::Chain;
use crate::error::StoreError;
use crate::event::{Insert, NewEvent, Stamp, Tap, checksum};
use crate::history;
use crate::standing;
use crate::store::Store;

/// Frames in the write-ahead log at which a tap moves them into the file: some 4 MB.
const CHECKPOINT_FRAMES: i32 = 250;

/// Queued changes at which a tap has them carried out: several sessions of them. Closing does both
/// as well, so that a tap seldom does.
const MOST_PENDING: u32 = 200;

impl Store {
    /// Appends one tap in one transaction: its events, the changes they make to the derived rows,
    /// and the standing facts they change (none takes the fact away). On disk when this returns.
    /// A tap without events writes nothing.
    ///
    /// # Errors
    /// After [`StoreError::Full`] the tap is not recorded and the store goes on. After
    /// [`StoreError::DiskFailed`] or [`StoreError::Corrupt`] the store is closed:
    /// [`Store::reopen`] and replay tell whether the tap was recorded.
    pub fn append(
        &mut self,
        at: Stamp,
        events: &[NewEvent<'_>],
        changes: &[Change],
        standing: &[(&str, Option<&str>)],
    ) -> Result<Tap, StoreError> {
        if let Some(why) = &self.read_only {
            return Err(why.clone());
        }
        self.connection()?;
        let first = self.next_seq();
        if events.is_empty() {
            return Ok(Tap { first, last: self.head.seq, frames: 0, checkpoint: false });
        }
        self.about_to_write()?;
        let head = match write(self.connection()?, self.head, at, events, changes, standing) {
            Ok(head) => head,
            Err(error) => return Err(self.failed(error)),
        };
        // Where the file went meanwhile, the tap went with it.
        self.unmoved_after()?;
        self.head = head;
        self.pending =
            self.pending.saturating_add(u32::try_from(changes.len()).unwrap_or(u32::MAX));
        // From here on the tap is durable, so no failure below is the tap's.
        let before = self.frames;
        self.frames = self.frames_in_log().map_or(before, |(frames, _)| frames);
        let frames = u32::try_from(self.frames - before).unwrap_or(0);
        let checkpoint = self.frames >= CHECKPOINT_FRAMES || self.pending >= MOST_PENDING;
        if checkpoint {
            // A failed one closes the store, and the next call says so.
            let _ = self.checkpoint();
        }
        Ok(Tap { first, last: head.seq, frames, checkpoint })
    }
}

/// Writes one tap; the caller rolls back on an error.
fn write(
    connection: &Connection,
    mut head: Chain,
    at: Stamp,
    events: &[NewEvent<'_>],
    changes: &[Change],
    standing: &[(&str, Option<&str>)],
) -> rusqlite::Result<Chain> {
    connection.prepare_cached("BEGIN IMMEDIATE")?.execute([])?;
    let tap = head.seq.saturating_add(1);
    {
        let mut insert = Insert::into(connection)?;
        for event in events {
            let seq = head.seq.saturating_add(1);
            head = Chain { seq, checksum: checksum(head.checksum, seq, tap, at, event) };
            insert.row((seq, tap), at, event, head.checksum)?;
        }
    }
    for change in changes {
        history::queue(connection, change)?;
    }
    for (key, body) in standing {
        standing::put(connection, key, *body, head.seq)?;
    }
    connection.prepare_cached("COMMIT")?.execute([])?;
    Ok(head)
}
