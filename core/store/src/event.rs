//! Events as the log holds them: text in, text out, under a chained checksum.

use rusqlite::{CachedStatement, Connection, Row, params};

use crate::digest::SUM;

/// A number in the log: 1 for the first event, without gaps.
pub type Seq = u64;

/// The wall clock's part of a tap's reading.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Stamp {
    /// Milliseconds since 1970-01-01T00:00Z.
    pub wall_ms: i64,
    /// Minutes that local time is ahead of UTC.
    pub offset_minutes: i32,
}

/// An event to be appended.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct NewEvent<'a> {
    /// Which kind of event.
    pub kind: &'a str,
    /// Version of the kind's body.
    pub version: u32,
    /// The body, as the codec wrote it.
    pub body: &'a str,
}

/// Where a tap stands in the log.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Tap {
    /// Number of its first event: the tap's name.
    pub first: Seq,
    /// Number of its last event.
    pub last: Seq,
    /// Frames that the write-ahead log grew by; none where there is no such log (in memory).
    pub frames: u32,
    /// The tap found so much to be moved that a checkpoint followed it.
    pub checkpoint: bool,
}

/// An event read back.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Event {
    /// Its number.
    pub seq: Seq,
    /// Number of the first event of its tap.
    pub tap: Seq,
    /// Which kind of event.
    pub kind: String,
    /// Version of the kind's body.
    pub version: u32,
    /// When the tap was made.
    pub at: Stamp,
    /// The body, as the codec wrote it.
    pub body: String,
}

/// The kind of an event that holds the place of all numbers up to its own that a part of a log leaves
/// out: in memory, never in a file. Its checksum joins on to the event before those.
pub const ABSENT: &str = "absent";

/// Columns of an event, in the order [`Event::from_row`] takes them; the checksum is the last.
pub(crate) const COLUMNS: &str = "seq, tap, kind, version, wall_ms, offset_min, body, checksum";

impl Event {
    /// Reads a row of [`COLUMNS`] with its checksum.
    pub(crate) fn from_row(row: &Row<'_>) -> rusqlite::Result<(Self, u32)> {
        let event = Self {
            seq: row.get(0)?,
            tap: row.get(1)?,
            kind: row.get(2)?,
            version: row.get(3)?,
            at: Stamp { wall_ms: row.get(4)?, offset_minutes: row.get(5)? },
            body: row.get(6)?,
        };
        Ok((event, row.get(7)?))
    }
}

/// The checksum of an event: CRC-32 (ISO-HDLC) over the checksum of the event before (0 for the
/// first) and every column, integers as little-endian and texts behind their length, so that a row
/// that was changed, taken out or moved shows.
pub(crate) fn checksum(before: u32, seq: Seq, tap: Seq, at: Stamp, event: &NewEvent<'_>) -> u32 {
    let mut digest = SUM.digest();
    digest.update(&before.to_le_bytes());
    digest.update(&seq.to_le_bytes());
    digest.update(&tap.to_le_bytes());
    digest.update(&event.version.to_le_bytes());
    digest.update(&at.wall_ms.to_le_bytes());
    digest.update(&at.offset_minutes.to_le_bytes());
    for text in [event.kind, event.body] {
        digest.update(&(text.len() as u64).to_le_bytes());
        digest.update(text.as_bytes());
    }
    digest.finalize()
}

/// Writes rows of the log, in the caller's transaction.
pub(crate) struct Insert<'a>(CachedStatement<'a>);

impl<'a> Insert<'a> {
    pub(crate) fn into(connection: &'a Connection) -> rusqlite::Result<Self> {
        let sql = format!("INSERT INTO event ({COLUMNS}) VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8)");
        connection.prepare_cached(&sql).map(Self)
    }

    /// Writes one, with the checksum that it has in the chain.
    pub(crate) fn row(
        &mut self,
        (seq, tap): (Seq, Seq),
        at: Stamp,
        event: &NewEvent<'_>,
        sum: u32,
    ) -> rusqlite::Result<()> {
        let NewEvent { kind, version, body } = event;
        self.0
            .execute(params![seq, tap, kind, version, at.wall_ms, at.offset_minutes, body, sum])
            .map(|_| ())
    }
}

impl Event {
    /// What of it is not its place in the log.
    pub(crate) fn as_new(&self) -> NewEvent<'_> {
        NewEvent { kind: &self.kind, version: self.version, body: &self.body }
    }

    /// Its checksum behind an event with the checksum `before`; 0 before the first.
    #[must_use]
    pub fn sum(&self, before: u32) -> u32 {
        checksum(before, self.seq, self.tap, self.at, &self.as_new())
    }
}
