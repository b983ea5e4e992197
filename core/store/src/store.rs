//! The store: opening, appending, reading, closing.

use std::path::{Path, PathBuf};

use barwright_domain::history::Change;
use rusqlite::ffi::{SQLITE_ERROR, SQLITE_IOERR};
use rusqlite::wal::CheckpointMode;
use rusqlite::{Connection, OpenFlags, OptionalExtension, params};

use crate::error::{Damage, Foreign, StoreError};
use crate::event::{COLUMNS, Chain, Event, NewEvent, Seq, Stamp, Tap, checksum};
use crate::files::{FileSystem, folder_of};
use crate::history;
use crate::schema::{self, Found};

/// How many of the last events have their checksums checked when a store is opened.
pub const CHECKED_ON_OPEN: u64 = 64;

/// Bytes of a page, and so of a frame: large enough that the beginning of a session, with its whole
/// sheet, is a few frames too.
const PAGE_BYTES: u32 = 16_384;

/// Frames in the write-ahead log at which a tap moves them into the file: some 4 MB.
const CHECKPOINT_FRAMES: i32 = 250;

/// Queued changes at which a tap has them carried out: several sessions of them. Closing does both
/// as well, so that a tap seldom does.
const MOST_PENDING: u32 = 200;

/// Where a store is kept.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Place {
    /// In memory, gone with the value.
    Memory,
    /// In a file.
    File {
        /// Its path.
        path: PathBuf,
        /// The file system that it is on.
        on: FileSystem,
    },
}

/// A small current fact that stands beside the log.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Standing {
    /// Its body, as the codec wrote it.
    pub body: String,
    /// The last event of the tap that wrote it.
    pub seq: Seq,
}

/// What [`Store::verify`] found good.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Verified {
    /// Events, all of them with their checksums.
    pub events: u64,
    /// The last checksum, which stands for all of them.
    pub checksum: u32,
}

/// An open store: the only one that has its file.
#[derive(Debug)]
pub struct Store {
    place: Place,
    /// None after a failure, until [`Store::reopen`].
    connection: Option<Connection>,
    /// The end of the log.
    head: Chain,
    /// Frames in the write-ahead log that are not yet in the file.
    frames: i32,
    /// Changes to the derived rows that are queued.
    pending: u32,
}

impl Store {
    /// Opens the store in a file, or makes a new one, and checks the last events.
    ///
    /// # Errors
    /// Every [`StoreError`] that a file can earn; the file is left as it is.
    pub fn open(path: &Path) -> Result<Self, StoreError> {
        Self::open_in(Place::file(path))
    }

    /// A new store in memory.
    ///
    /// # Errors
    /// [`StoreError::Failed`] when memory is short.
    pub fn in_memory() -> Result<Self, StoreError> {
        Self::open_in(Place::Memory)
    }

    /// Opens the store in a place.
    ///
    /// # Errors
    /// As [`Store::open`].
    pub fn open_in(place: Place) -> Result<Self, StoreError> {
        let path = place.path();
        let mut connection = connect(&place)?;
        let sorted = |error| StoreError::from_sqlite(path, error);
        prepare(&place, &mut connection)?;
        let head = connection
            .query_row("SELECT seq, checksum FROM event ORDER BY seq DESC LIMIT 1", [], |row| {
                Ok(Chain { seq: row.get(0)?, checksum: row.get(1)? })
            })
            .optional()
            .map_err(sorted)?
            .unwrap_or_default();
        let mut store = Self { place, connection: Some(connection), head, frames: 0, pending: 0 };
        let first = head.seq.saturating_sub(CHECKED_ON_OPEN - 1).max(1);
        store.each_event(first, |_| Ok(()))?;
        store.check_end()?;
        store.frames = store.frames_in_log()?;
        store.pending = history::count(store.connection()?).map_err(|error| store.sorted(error))?;
        Ok(store)
    }

    /// Closes the connection and opens it again, so that what is read from here on is what the
    /// disk has. After [`StoreError::DiskFailed`] this comes first, then a replay of the log.
    ///
    /// # Errors
    /// As [`Store::open`]; the store stays closed then and may be reopened again.
    pub fn reopen(&mut self) -> Result<(), StoreError> {
        if self.place == Place::Memory {
            self.roll_back();
            return Ok(());
        }
        self.connection = None;
        let mut again = Self::open_in(self.place.clone())?;
        // What was recovered from the log may only be in the system's cache: write it again. A full
        // disk is no reason to stay closed: what is there can be read.
        match again.checkpoint() {
            Ok(()) | Err(StoreError::Full { .. }) => {
                *self = again;
                Ok(())
            }
            Err(error) => Err(error),
        }
    }

    /// Moves the write-ahead log into the file and gives the file up.
    ///
    /// # Errors
    /// [`StoreError::DiskFailed`] or [`StoreError::Full`] when the move failed: the file is given
    /// up all the same, and what was acknowledged is safe in the log beside it.
    pub fn close(mut self) -> Result<(), StoreError> {
        let moved = if self.connection.is_some() { self.checkpoint() } else { Ok(()) };
        if let Some(connection) = self.connection.take() {
            connection.close().map_err(|(_, error)| self.sorted(error))?;
        }
        moved
    }

    /// Carries out what taps have queued and moves the write-ahead log into the file. A tap does it
    /// by itself when there is much of either; a quiet moment is a better time.
    ///
    /// # Errors
    /// As [`Store::close`]; nothing is lost by it.
    pub fn checkpoint(&mut self) -> Result<(), StoreError> {
        let carried_out = self.carry_out();
        let moved = self.connection()?.wal_checkpoint_v2(None::<&str>, CheckpointMode::PASSIVE);
        match moved {
            Ok((logged, moved)) => {
                self.frames = (logged - moved).max(0);
                carried_out
            }
            Err(error) => Err(self.failed(error)),
        }
    }

    /// Carries out the queued changes to the derived rows.
    fn carry_out(&mut self) -> Result<(), StoreError> {
        // Changes of another version are of no use: the rows are to be made anew.
        if self.pending == 0 || !self.history_is_current()? {
            return Ok(());
        }
        let connection = self.connection()?;
        let done = connection
            .execute_batch("BEGIN IMMEDIATE")
            .and_then(|()| history::carry_out(connection))
            .and_then(|()| connection.execute_batch("COMMIT"));
        match done {
            Ok(()) => {
                self.pending = 0;
                Ok(())
            }
            Err(error) => Err(self.failed(error)),
        }
    }

    /// Where the store is kept.
    pub fn place(&self) -> &Place {
        &self.place
    }

    /// The store's id, made when it was.
    ///
    /// # Errors
    /// [`StoreError::DiskFailed`] and its kin.
    pub fn uuid(&self) -> Result<String, StoreError> {
        self.connection()?
            .query_row("SELECT uuid FROM store", [], |row| row.get(0))
            .map_err(|error| self.sorted(error))
    }

    /// The number of the last event; 0 in an empty log.
    pub fn last_seq(&self) -> Seq {
        self.head.seq
    }

    /// The number that the next event gets.
    pub fn next_seq(&self) -> Seq {
        self.head.seq.saturating_add(1)
    }

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
        let connection = self.connection()?;
        let first = self.next_seq();
        if events.is_empty() {
            return Ok(Tap { first, last: self.head.seq, frames: 0, checkpoint: false });
        }
        let head = match write(connection, self.head, at, events, changes, standing) {
            Ok(head) => head,
            Err(error) => return Err(self.failed(error)),
        };
        self.head = head;
        self.pending =
            self.pending.saturating_add(u32::try_from(changes.len()).unwrap_or(u32::MAX));
        // From here on the tap is durable, so no failure below is the tap's.
        let before = self.frames;
        self.frames = self.frames_in_log().unwrap_or(before);
        let frames = u32::try_from(self.frames - before).unwrap_or(0);
        let checkpoint = self.frames >= CHECKPOINT_FRAMES || self.pending >= MOST_PENDING;
        if checkpoint {
            // A failed one closes the store, and the next call says so.
            let _ = self.checkpoint();
        }
        Ok(Tap { first, last: head.seq, frames, checkpoint })
    }

    /// The events from a number on, in order, each with its checksum checked.
    ///
    /// # Errors
    /// [`StoreError::Corrupt`] for the first that does not match.
    pub fn events_from(&self, from: Seq) -> Result<Vec<Event>, StoreError> {
        let mut events = Vec::new();
        self.each_event(from, |event| {
            events.push(event);
            Ok(())
        })?;
        Ok(events)
    }

    /// One event, its checksum checked; none where the log has no such number.
    ///
    /// # Errors
    /// As [`Store::events_from`].
    pub fn event(&self, seq: Seq) -> Result<Option<Event>, StoreError> {
        enum Stop {
            Found(Event),
            Failed(StoreError),
        }
        impl From<StoreError> for Stop {
            fn from(error: StoreError) -> Self {
                Self::Failed(error)
            }
        }
        match self.each_event(seq, |event| Err(Stop::Found(event))) {
            Ok(()) => Ok(None),
            Err(Stop::Found(event)) => Ok(Some(event).filter(|event| event.seq == seq)),
            Err(Stop::Failed(error)) => Err(error),
        }
    }

    /// As [`Store::events_from`], one at a time, for logs too long to hold.
    ///
    /// # Errors
    /// As there, and what `take` answers.
    pub fn each_event<E: From<StoreError>>(
        &self,
        from: Seq,
        mut take: impl FnMut(Event) -> Result<(), E>,
    ) -> Result<(), E> {
        let connection = self.connection()?;
        let sorted = |error| StoreError::from_sqlite(self.path(), error);
        let mut chain = Chain { seq: from.max(1) - 1, checksum: 0 };
        if chain.seq > 0 {
            let before = connection
                .query_row("SELECT checksum FROM event WHERE seq = ?1", [chain.seq], |row| {
                    row.get(0)
                })
                .optional()
                .map_err(sorted)?;
            match before {
                Some(checksum) => chain.checksum = checksum,
                None if from > self.head.seq => return Ok(()),
                None => return Err(self.damaged(Damage::Missing { seq: chain.seq }).into()),
            }
        }
        let sql = format!("SELECT {COLUMNS} FROM event WHERE seq >= ?1 ORDER BY seq");
        let mut statement = connection.prepare_cached(&sql).map_err(sorted)?;
        let mut rows = statement.query([from]).map_err(sorted)?;
        while let Some(row) = rows.next().map_err(sorted)? {
            let (event, sum) = Event::from_row(row).map_err(sorted)?;
            chain.follow(&event, sum).map_err(|damage| self.damaged(damage))?;
            take(event)?;
        }
        if chain.seq < self.head.seq {
            return Err(self.damaged(Damage::Missing { seq: chain.seq + 1 }).into());
        }
        Ok(())
    }

    /// A standing fact.
    ///
    /// # Errors
    /// [`StoreError::DiskFailed`] and its kin.
    pub fn standing(&self, key: &str) -> Result<Option<Standing>, StoreError> {
        self.connection()?
            .prepare_cached("SELECT body, seq FROM standing WHERE key = ?1")
            .and_then(|mut statement| {
                statement
                    .query_row([key], |row| Ok(Standing { body: row.get(0)?, seq: row.get(1)? }))
                    .optional()
            })
            .map_err(|error| self.sorted(error))
    }

    /// The standing facts whose keys begin so, by key.
    ///
    /// # Errors
    /// [`StoreError::DiskFailed`] and its kin.
    pub fn standing_with_prefix(
        &self,
        prefix: &str,
    ) -> Result<Vec<(String, Standing)>, StoreError> {
        let read = |row: &rusqlite::Row<'_>| {
            Ok((row.get(0)?, Standing { body: row.get(1)?, seq: row.get(2)? }))
        };
        self.connection()?
            .prepare_cached(
                "SELECT key, body, seq FROM standing
                 WHERE key >= ?1 AND substr(key, 1, length(?1)) = ?1 ORDER BY key",
            )
            .and_then(|mut statement| statement.query_map([prefix], read)?.collect())
            .map_err(|error| self.sorted(error))
    }

    /// Checks the whole file: SQLite's structure and every event's checksum.
    ///
    /// # Errors
    /// [`StoreError::Corrupt`] with the first damage found.
    pub fn verify(&self) -> Result<Verified, StoreError> {
        let answer: String = self
            .connection()?
            .query_row("PRAGMA integrity_check(1)", [], |row| row.get(0))
            .map_err(|error| self.sorted(error))?;
        if answer != "ok" {
            // A disk that does not read is no damage to what is on it.
            let code = answer.rsplit("error code=").next().and_then(|code| code.parse().ok());
            let code = code.or(answer.contains("failed to get page").then_some(SQLITE_IOERR));
            if let Some(code) = code.filter(|code| code & 0xff == SQLITE_IOERR) {
                return Err(StoreError::DiskFailed { path: self.path().to_path_buf(), code });
            }
            return Err(self.damaged(Damage::Malformed { detail: answer }));
        }
        self.each_event(1, |_| Ok::<(), StoreError>(()))?;
        self.check_end()?;
        Ok(Verified { events: self.head.seq, checksum: self.head.checksum })
    }

    /// Whether anything derived from the log names an event past its end.
    fn check_end(&self) -> Result<(), StoreError> {
        let named: Seq = self
            .connection()?
            .query_row(
                "SELECT max((SELECT ifnull(max(seq), 0) FROM standing),
                            (SELECT ifnull(max(session), 0) FROM session),
                            (SELECT ifnull(max(session), 0) FROM done_set))",
                [],
                |row| row.get(0),
            )
            .map_err(|error| self.sorted(error))?;
        if named > self.head.seq {
            return Err(self.damaged(Damage::EndLost { seq: named }));
        }
        Ok(())
    }

    /// Frames in the write-ahead log that are not yet in the file.
    fn frames_in_log(&self) -> Result<i32, StoreError> {
        let (logged, moved) = self
            .connection()?
            .wal_checkpoint_v2(None::<&str>, CheckpointMode::NOOP)
            .map_err(|error| self.sorted(error))?;
        Ok((logged - moved).max(0))
    }

    pub(crate) fn pending(&self) -> u32 {
        self.pending
    }

    pub(crate) fn set_pending(&mut self, pending: u32) {
        self.pending = pending;
    }

    pub(crate) fn set_head(&mut self, head: Chain) {
        self.head = head;
    }

    pub(crate) fn connection(&self) -> Result<&Connection, StoreError> {
        let path = || self.path().to_path_buf();
        self.connection.as_ref().ok_or_else(|| StoreError::Closed { path: path() })
    }

    pub(crate) fn path(&self) -> &Path {
        self.place.path()
    }

    pub(crate) fn sorted(&self, error: rusqlite::Error) -> StoreError {
        StoreError::from_sqlite(self.path(), error)
    }

    pub(crate) fn damaged(&self, damage: Damage) -> StoreError {
        StoreError::Corrupt { path: self.path().to_path_buf(), damage }
    }

    /// Takes back what a failed write left, and closes the store where that is not certain.
    pub(crate) fn failed(&mut self, error: rusqlite::Error) -> StoreError {
        let error = self.sorted(error);
        self.roll_back();
        let unsure = matches!(error, StoreError::DiskFailed { .. } | StoreError::Corrupt { .. });
        if unsure && self.place != Place::Memory {
            self.connection = None;
        }
        error
    }

    /// Takes back an open transaction; closes the store where that fails.
    pub(crate) fn roll_back(&mut self) {
        let rolled_back = self.connection.as_ref().is_none_or(|connection| {
            connection.is_autocommit() || connection.execute_batch("ROLLBACK").is_ok()
        });
        if !rolled_back && self.place != Place::Memory {
            self.connection = None;
        }
    }
}

impl Place {
    /// A file on the system's own file system.
    pub fn file(path: impl Into<PathBuf>) -> Self {
        Self::File { path: path.into(), on: FileSystem::native() }
    }

    /// A file with another name on the same file system; on the system's own, seen from memory.
    #[must_use]
    pub fn named(&self, path: impl Into<PathBuf>) -> Self {
        Self::File { path: path.into(), on: self.on() }
    }

    /// The file beside this one with something added to its name.
    pub(crate) fn beside(&self, end: &str) -> Self {
        let mut name = self.path().as_os_str().to_owned();
        name.push(end);
        self.named(name)
    }

    /// The file system it is on; the system's own for memory.
    pub(crate) fn on(&self) -> FileSystem {
        match self {
            Self::Memory => FileSystem::native(),
            Self::File { on, .. } => on.clone(),
        }
    }

    /// Whether a file, or a folder, is there.
    pub(crate) fn is_there(&self) -> Result<bool, StoreError> {
        let found = self.on().files.look(self.path());
        found.map(|found| found.is_some()).map_err(|error| StoreError::from_io(self.path(), &error))
    }

    /// The path; a name in brackets for memory.
    pub fn path(&self) -> &Path {
        match self {
            Self::Memory => Path::new("(memory)"),
            Self::File { path, .. } => path,
        }
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
        let sql = format!("INSERT INTO event ({COLUMNS}) VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8)");
        let mut insert = connection.prepare_cached(&sql)?;
        for event in events {
            let seq = head.seq.saturating_add(1);
            head = Chain { seq, checksum: checksum(head.checksum, seq, tap, at, event) };
            insert.execute(params![
                seq,
                tap,
                event.kind,
                event.version,
                at.wall_ms,
                at.offset_minutes,
                event.body,
                head.checksum
            ])?;
        }
    }
    for change in changes {
        history::queue(connection, change)?;
    }
    for (key, body) in standing {
        put_standing(connection, key, *body, head.seq)?;
    }
    connection.prepare_cached("COMMIT")?.execute([])?;
    Ok(head)
}

/// Writes a standing fact, or takes it away.
pub(crate) fn put_standing(
    connection: &Connection,
    key: &str,
    body: Option<&str>,
    seq: Seq,
) -> rusqlite::Result<()> {
    match body {
        Some(body) => connection
            .prepare_cached(
                "INSERT INTO standing (key, body, seq) VALUES (?1, ?2, ?3)
                 ON CONFLICT (key) DO UPDATE SET body = excluded.body, seq = excluded.seq",
            )?
            .execute(params![key, body, seq])?,
        None => connection.prepare_cached("DELETE FROM standing WHERE key = ?1")?.execute([key])?,
    };
    Ok(())
}

/// Opens a connection, changing nothing yet.
pub(crate) fn connect(place: &Place) -> Result<Connection, StoreError> {
    let flags = OpenFlags::SQLITE_OPEN_READ_WRITE
        | OpenFlags::SQLITE_OPEN_CREATE
        | OpenFlags::SQLITE_OPEN_NO_MUTEX;
    let opened = match place {
        Place::Memory => Connection::open_in_memory_with_flags(flags),
        Place::File { path, on } => {
            look_before_opening(place)?;
            match &on.vfs {
                Some(vfs) => Connection::open_with_flags_and_vfs(path, flags, vfs.as_str()),
                None => Connection::open_with_flags(as_file(path), flags),
            }
        }
    };
    opened.map_err(|error| StoreError::from_sqlite(place.path(), error))
}

/// A path as SQLite takes it for a file, whatever it is called: not for an address, nor for memory.
pub(crate) fn as_file(path: &Path) -> PathBuf {
    if path.is_absolute() { path.to_path_buf() } else { Path::new(".").join(path) }
}

/// Tells apart what SQLite calls by one code.
pub(crate) fn look_before_opening(place: &Place) -> Result<(), StoreError> {
    let (files, path) = (place.on().files, place.path());
    let look = |path: &Path| files.look(path).map_err(|error| StoreError::from_io(path, &error));
    let there = look(path)?;
    if there.is_some_and(|found| found.folder) {
        let found = Foreign::Folder;
        return Err(StoreError::NotAStore { path: path.to_path_buf(), found });
    }
    if there.is_some() {
        return Ok(());
    }
    if look(folder_of(path))?.is_none() {
        return Err(StoreError::NoFolder { path: path.to_path_buf() });
    }
    if log_of(place).is_there()? {
        return Err(StoreError::Corrupt { path: path.to_path_buf(), damage: Damage::LogAlone });
    }
    Ok(())
}

/// The write-ahead log beside a file.
pub(crate) fn log_of(place: &Place) -> Place {
    place.beside("-wal")
}

/// Takes the file, makes sure that it is a store, and sets how it is written. The order matters:
/// nothing is changed before it is known to be ours, and the lock comes before the journal mode.
fn prepare(place: &Place, connection: &mut Connection) -> Result<(), StoreError> {
    let path = place.path();
    let sorted = |error| StoreError::from_sqlite(path, error);
    let file = *place != Place::Memory;
    connection.busy_timeout(std::time::Duration::ZERO).map_err(sorted)?;
    connection.set_prepared_statement_cache_capacity(64);
    connection.pragma_update(None, "locking_mode", "EXCLUSIVE").map_err(sorted)?;
    let found = schema::identify(path, connection)?;
    if file && connection.is_readonly("main").map_err(sorted)? {
        return Err(StoreError::ReadOnly { path: path.to_path_buf() });
    }
    if let Found::Empty = found {
        connection.pragma_update(None, "page_size", PAGE_BYTES).map_err(sorted)?;
    }
    let mode: String = connection
        .pragma_update_and_check(None, "journal_mode", "WAL", |row| row.get(0))
        .map_err(sorted)?;
    if file && mode != "wal" {
        return Err(StoreError::NoWriteAheadLog { path: path.to_path_buf(), mode });
    }
    connection
        .execute_batch(
            "PRAGMA synchronous = FULL;
             PRAGMA fullfsync = ON;
             PRAGMA checkpoint_fullfsync = ON;
             PRAGMA temp_store = MEMORY;
             PRAGMA wal_autocheckpoint = 0;
             PRAGMA trusted_schema = OFF;
             PRAGMA cell_size_check = ON;",
        )
        .map_err(sorted)?;
    if let Found::Version(_) = found {
        // A table of ours that is gone is damage, not a mistake in a statement.
        connection
            .prepare("SELECT 1 FROM event, standing, store, pending, session, week_volume, done_set, record")
            .map_err(|error| match sorted(error) {
                StoreError::Failed { path, code: SQLITE_ERROR, detail } => {
                    StoreError::Corrupt { path, damage: Damage::Malformed { detail } }
                }
                error => error,
            })?;
    }
    schema::migrate(connection, &found).map_err(sorted)
}
