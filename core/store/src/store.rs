//! The store: opening, appending, reading, closing.

use std::cell::Cell;
use std::path::{Path, PathBuf};

use barwright_domain::history::Change;
use rusqlite::config::DbConfig;
use rusqlite::ffi::{SQLITE_IOERR, SQLITE_IOERR_READ, SQLITE_IOERR_SHORT_READ};
use rusqlite::wal::CheckpointMode;
use rusqlite::{Connection, OpenFlags, OptionalExtension, params};

use crate::backup::remove;
use crate::error::{Damage, Foreign, StoreError};
use crate::event::{COLUMNS, Chain, Event, NewEvent, Seq, Stamp, Tap, checksum};
use crate::files::{FileSystem, folder_of};
use crate::held::{self, Held};
use crate::history;
use crate::marks::Marks;
use crate::pages::{Pages, began_here};
use crate::salvage::{holds_a_log, put_left_log_aside, put_log_aside, replace};
use crate::schema::{self, Found, SCHEMA_VERSION};
use crate::standing::{self, StandingFacts};
use crate::wal::Log;
use crate::watch::Watch;

/// How many of the last events have their checksums checked when a store is opened.
pub const CHECKED_ON_OPEN: u64 = 64;

/// Bytes of a page, and so of a frame: large enough that the beginning of a session, with its whole
/// sheet, is a few frames too.
pub(crate) const PAGE_BYTES: u32 = 16_384;

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
    /// Why nothing can be recorded, in a store that was opened to be looked at.
    read_only: Option<StoreError>,
    /// The end of the log.
    head: Chain,
    /// The store's row about itself, as it is on disk.
    marks: Marks,
    /// Whether the files are still the ones that were opened; none where nobody can tell.
    watch: Option<Watch>,
    /// The file is marked as in use, and by the log that it has.
    marked: bool,
    /// That this process has the file.
    held: Option<Held>,
    /// A write or a sync failed: the system may show what the disk does not have.
    unsynced: bool,
    /// Frames in the write-ahead log that are not yet in the file.
    frames: i32,
    /// Changes to the derived rows that are queued.
    pending: u32,
    /// The small table of exercises was compared with its total since opening.
    checked: Cell<bool>,
    /// Derived rows were found spoiled.
    spoiled: Cell<bool>,
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
        Self::open_as(place, false)
    }

    /// Opens a store that was just copied, whose marks are those of the one it was copied from.
    pub(crate) fn open_copy(place: Place) -> Result<Self, StoreError> {
        Self::open_as(place, true)
    }

    fn open_as(place: Place, copy: bool) -> Result<Self, StoreError> {
        match Self::open_it(place.clone(), copy) {
            // A log that was left beside a file that took another's place says nothing that the file
            // does not say.
            Err(StoreError::Corrupt { damage: Damage::LogOfAnother, .. })
                if put_left_log_aside(&place)? =>
            {
                Self::open_it(place, copy)
            }
            // A header that is spoiled is told from a file that is something else.
            Err(StoreError::NotAStore { path, .. }) if holds_a_log(&place) => {
                let detail = "its header is not ours".to_owned();
                Err(StoreError::Corrupt { path, damage: Damage::Malformed { detail } })
            }
            opened => opened,
        }
    }

    fn open_it(place: Place, copy: bool) -> Result<Self, StoreError> {
        let log = match &place {
            Place::Memory => None,
            Place::File { path, on } => {
                look_before_opening(&place)?;
                let found =
                    on.files.look(path).map_err(|error| StoreError::from_io(path, &error))?;
                if found.is_some_and(|found| found.read_only) {
                    return Err(StoreError::ReadOnly { path: path.clone() });
                }
                if found.is_some_and(|found| held::is_held(found.identity)) {
                    return Err(StoreError::InUse { path: path.clone() });
                }
                let log = Log::read(&place)?.filter(|_| found.is_some());
                if let Some(log) = &log
                    && log.taken() > 0
                    && !began_here(&place, log)?
                {
                    let damage = Damage::LogOfAnother;
                    return Err(StoreError::Corrupt { path: path.clone(), damage });
                }
                log
            }
        };
        let mut connection = connect(&place)?;
        prepare(&place, &mut connection)?;
        let held = Held::take(&place)?;
        let mut store = Self::of(place, connection)?;
        store.held = held;
        if copy {
            let fresh = Marks { in_use: false, log_born: None, ..store.marks.clone() };
            let fresh = fresh.with_new_token(store.connection()?);
            let fresh = fresh.map_err(|error| store.sorted(error))?;
            store.mark(fresh)?;
        }
        store.check_ends()?;
        store.compare_log(log.as_ref())?;
        if store.place != Place::Memory {
            let known = log.is_some_and(|log| store.marks.log_born == Some(log.born()));
            store.marked = store.marks.in_use && known;
            store.make_private()?;
            store.watch = Watch::begin(&store.place)?;
        }
        store.frames = store.frames_in_log()?.0;
        Ok(store)
    }

    /// Opens a store to be looked at, without writing anything anywhere: a file, a folder or a disk
    /// that can't be written is no reason not to see what is in it. What can't be recorded is
    /// answered with `why`.
    ///
    /// # Errors
    /// As [`Store::open`].
    pub fn open_to_read(place: Place, why: StoreError) -> Result<Self, StoreError> {
        look_before_opening(&place)?;
        if !place.is_there()? {
            return Err(why);
        }
        let log = Log::read(&place)?;
        let image = Pages::read(&place)?.image();
        let path = place.path();
        let sorted = |error| StoreError::from_sqlite(path, error);
        // In memory, but on the same file system: copies are written from here.
        let flags = OpenFlags::SQLITE_OPEN_READ_WRITE | OpenFlags::SQLITE_OPEN_NO_MUTEX;
        let mut connection = match place.on().vfs {
            Some(vfs) => Connection::open_with_flags_and_vfs(":memory:", flags, vfs.as_str()),
            None => Connection::open_in_memory_with_flags(flags),
        }
        .map_err(sorted)?;
        connection
            .deserialize_read_exact("main", image.as_slice(), image.len(), false)
            .map_err(sorted)?;
        if let Found::Empty | Found::Version(..SCHEMA_VERSION) =
            schema::identify(path, &connection)?
        {
            return Err(why);
        }
        settle(path, &mut connection)?;
        let mut store = Self::of(place, connection)?;
        store.read_only = Some(why);
        store.check_ends()?;
        store.compare_log_with(log.as_ref(), log.as_ref().map_or(0, Log::taken))?;
        Ok(store)
    }

    /// Opens the store in a place, or opens it to be looked at where it can't be written.
    ///
    /// # Errors
    /// As [`Store::open`].
    pub fn open_or_read(place: Place) -> Result<Self, StoreError> {
        match Self::open_in(place.clone()) {
            Err(why @ (StoreError::ReadOnly { .. } | StoreError::Full { .. })) => {
                Self::open_to_read(place, why)
            }
            opened => opened,
        }
    }

    /// What a connection that is ready shows.
    fn of(place: Place, connection: Connection) -> Result<Self, StoreError> {
        let sorted = |error| StoreError::from_sqlite(place.path(), error);
        let head = last(&connection).map_err(sorted)?;
        let marks = Marks::read(&connection).map_err(|error| match error {
            rusqlite::Error::QueryReturnedNoRows => StoreError::Corrupt {
                path: place.path().to_path_buf(),
                damage: Damage::Malformed { detail: "no row about the store itself".into() },
            },
            error => sorted(error),
        })?;
        let pending = history::count(&connection).map_err(sorted)?;
        Ok(Self {
            place,
            connection: Some(connection),
            read_only: None,
            head,
            marks,
            watch: None,
            marked: false,
            held: None,
            unsynced: false,
            frames: 0,
            pending,
            checked: Cell::new(false),
            spoiled: Cell::new(false),
        })
    }

    /// Checks the last events, and that nothing names one past the end.
    fn check_ends(&self) -> Result<(), StoreError> {
        let first = self.head.seq.saturating_sub(CHECKED_ON_OPEN - 1).max(1);
        self.each_event(first, |_| Ok(()))?;
        self.check_seal()?;
        match standing::check(self.connection()?) {
            Ok(named) => self.check_named(named),
            Err(error) => match self.sorted(error) {
                // It is derived from the log, and made anew.
                StoreError::Corrupt { .. } | StoreError::Failed { .. } => {
                    self.spoiled.set(true);
                    Ok(())
                }
                error => Err(error),
            },
        }
    }

    /// Compares the write-ahead log, as it was before SQLite took it over, with what SQLite made of
    /// it.
    fn compare_log(&self, log: Option<&Log>) -> Result<(), StoreError> {
        if self.place == Place::Memory {
            return Ok(());
        }
        let (_, taken) = self.frames_in_log()?;
        self.compare_log_with(log, usize::try_from(taken).unwrap_or(0))
    }

    fn compare_log_with(&self, log: Option<&Log>, taken: usize) -> Result<(), StoreError> {
        let Some(log) = log else {
            if self.marks.in_use && self.marks.log_born.is_some() {
                return Err(self.damaged(Damage::LogMissing { seq: self.head.seq }));
            }
            return Ok(());
        };
        // A tap is begun when the one before it is acknowledged: one that is two ahead tells of one
        // that is lost.
        let last = Pages::last_tap_passed_over(log, taken).unwrap_or(0);
        let own = self.marks.in_use || self.marks.log_born == Some(log.born());
        if last > self.next_seq().max(self.marks.coming) && own {
            return Err(self.damaged(Damage::LogBroken { seq: self.head.seq, last }));
        }
        Ok(())
    }

    /// Before something is written: the files are still the ones that were opened; and before the
    /// first, the file is marked as in use, and by which write-ahead log. Looking marks nothing.
    pub(crate) fn about_to_write(&mut self) -> Result<(), StoreError> {
        self.unmoved_before()?;
        if self.marks.coming > 0 {
            // What came was interrupted: from here on there are taps again.
            self.will_come(0)?;
        }
        if self.marked || self.place == Place::Memory || self.connection.is_none() {
            return Ok(());
        }
        // Both are synced by the checkpoint: the log first, then the file.
        self.pragma("PRAGMA synchronous = OFF")?;
        let marked = self.mark_in_use();
        self.pragma("PRAGMA synchronous = FULL")?;
        marked?;
        match self.connection()?.wal_checkpoint_v2(None::<&str>, CheckpointMode::PASSIVE) {
            Ok((logged, moved)) => self.frames = (logged - moved).max(0),
            Err(error) => return Err(self.failed(error)),
        }
        self.moved_in()?;
        self.marked = true;
        Ok(())
    }

    /// Events up to this number are about to come in one transaction; 0 is that none are.
    pub(crate) fn will_come(&mut self, last: Seq) -> Result<(), StoreError> {
        if self.place == Place::Memory {
            return Ok(());
        }
        self.mark(Marks { coming: last, ..self.marks.clone() })
    }

    fn mark_in_use(&mut self) -> Result<(), StoreError> {
        let begun = Marks { in_use: true, log_born: None, ..self.marks.clone() };
        self.mark(begun)?;
        let log = Log::read(&self.place)?;
        let known = Marks { log_born: log.map(|log| log.born()), ..self.marks.clone() };
        self.mark(known)
    }

    fn pragma(&self, sql: &str) -> Result<(), StoreError> {
        match &self.connection {
            Some(connection) => connection.execute_batch(sql).map_err(|error| self.sorted(error)),
            None => Ok(()),
        }
    }

    /// Nobody but the owner may read what is recorded, wherever it lies.
    fn make_private(&self) -> Result<(), StoreError> {
        let files = self.place.on().files;
        for place in [self.place.clone(), log_of(&self.place)] {
            match files.make_private(place.path()) {
                Err(error)
                    if !matches!(
                        error.kind(),
                        std::io::ErrorKind::NotFound
                            | std::io::ErrorKind::PermissionDenied
                            | std::io::ErrorKind::Unsupported
                    ) =>
                {
                    return Err(StoreError::from_io(place.path(), &error));
                }
                // A file of another user's that may be written to is theirs to keep.
                _ => {}
            }
        }
        Ok(())
    }

    /// Writes the store's row about itself, in a transaction of its own.
    fn mark(&mut self, marks: Marks) -> Result<(), StoreError> {
        if let Err(error) = marks.write(self.connection()?) {
            return Err(self.failed(error));
        }
        self.marks = marks;
        self.unmoved_after()
    }

    /// Closes the connection and opens it again, so that what is read from here on is what the
    /// disk has. After [`StoreError::DiskFailed`] this comes first, then a replay of the log.
    ///
    /// # Errors
    /// As [`Store::open`], [`StoreError::Moved`] where the file there now is another, and
    /// [`Damage::EndLost`] where it has less than was acknowledged. The store stays closed then and
    /// may be reopened again.
    pub fn reopen(&mut self) -> Result<(), StoreError> {
        if self.place == Place::Memory {
            self.roll_back();
            // What was rolled back may have been counted.
            let again = self.connection()?;
            self.head = last(again).map_err(|error| self.sorted(error))?;
            return Ok(());
        }
        self.connection = None;
        self.held = None;
        self.watch = None;
        // A new file would be an empty one.
        if !self.place.is_there()? {
            return Err(StoreError::Moved { path: self.path().to_path_buf() });
        }
        let mut again = Self::open_or_read(self.place.clone())?;
        if again.marks.uuid != self.marks.uuid {
            return Err(StoreError::Moved { path: self.path().to_path_buf() });
        }
        if again.head.seq < self.head.seq {
            return Err(self.damaged(Damage::EndLost { seq: self.head.seq }));
        }
        if self.unsynced {
            again = again.written_anew()?;
        }
        // A full disk is no reason to stay closed: what is there can be read.
        match again.checkpoint() {
            Ok(()) | Err(StoreError::Full { .. }) => {
                *self = again;
                Ok(())
            }
            Err(error) => Err(error),
        }
    }

    /// Writes the whole store to a new file and puts that in its place. After a sync that failed the
    /// system may show what the disk does not have, and call it written from then on: a system of
    /// that kind can't be asked to write it again, and what would be written behind it could not be
    /// read after a power cut.
    fn written_anew(self) -> Result<Self, StoreError> {
        let place = self.place.clone();
        let to = place.beside(".rewritten");
        if let Err(error) = self.write_copy(&to) {
            remove(&to);
            return Err(error);
        }
        drop(self);
        replace(&to, &place)?;
        Self::open_in(place)
    }

    /// Seals the log, moves the write-ahead log into the file and gives the file up. A full disk is
    /// no failure here: what was acknowledged is safe in the log beside the file.
    ///
    /// # Errors
    /// [`StoreError::DiskFailed`] when the move failed: the file is given up all the same, and what
    /// was acknowledged is safe in the log beside it.
    pub fn close(mut self) -> Result<(), StoreError> {
        if self.connection.is_none() || self.read_only.is_some() {
            return Ok(());
        }
        let moved = self.checkpoint().and_then(|()| self.end_use());
        self.held = None;
        if let Some(connection) = self.connection.take() {
            connection.close().map_err(|(_, error)| self.sorted(error))?;
        }
        match moved {
            Err(StoreError::Full { .. }) => Ok(()),
            moved => moved,
        }
    }

    /// Marks the file as given up; its log is removed then, with the connection.
    fn end_use(&mut self) -> Result<(), StoreError> {
        if self.place == Place::Memory {
            return Ok(());
        }
        self.unmoved_before()?;
        if self.ends_whole()? {
            let _ =
                self.connection()?.set_db_config(DbConfig::SQLITE_DBCONFIG_NO_CKPT_ON_CLOSE, false);
        }
        Ok(())
    }

    /// Seals the log, carries out what taps have queued and moves the write-ahead log into the file.
    /// A tap does it by itself when there is much of either; a quiet moment is a better time.
    ///
    /// From here on a loss of anything up to now is known.
    ///
    /// # Errors
    /// As [`Store::close`]; nothing is lost by it.
    pub fn checkpoint(&mut self) -> Result<(), StoreError> {
        if self.read_only.is_some() {
            return Ok(());
        }
        self.unmoved_before()?;
        let carried_out = self.carry_out();
        let moved = self.connection()?.wal_checkpoint_v2(None::<&str>, CheckpointMode::PASSIVE);
        match moved {
            Ok((logged, moved)) => {
                self.frames = (logged - moved).max(0);
                self.moved_in()?;
                carried_out
            }
            Err(error) => Err(self.failed(error)),
        }
    }

    /// Carries out the queued changes to the derived rows, and seals the log.
    fn carry_out(&mut self) -> Result<(), StoreError> {
        let sealed = self.marks.sealed == self.head.seq;
        // Changes of another version are of no use: the rows are to be made anew.
        let carry_out = self.pending > 0 && self.history_is_current();
        if sealed && !carry_out {
            return Ok(());
        }
        self.about_to_write()?;
        let marks =
            Marks { sealed: self.head.seq, sealed_sum: self.head.checksum, ..self.marks.clone() };
        let connection = self.connection()?;
        let done = connection
            .execute_batch("BEGIN IMMEDIATE")
            .and_then(|()| if carry_out { history::carry_out(connection) } else { Ok(()) })
            .and_then(|()| marks.write(connection))
            .and_then(|()| connection.execute_batch("COMMIT"));
        match done {
            Ok(()) => {
                self.marks = marks;
                self.pending = if carry_out { 0 } else { self.pending };
                Ok(())
            }
            Err(error) => match self.sorted(error) {
                // Derived rows that can't be brought up to date are made anew at the next opening.
                StoreError::Corrupt { .. } if carry_out => {
                    self.roll_back();
                    self.spoiled.set(true);
                    self.mark(Marks { history: 0, ..marks })
                }
                error => Err(self.failed_as(error)),
            },
        }
    }

    /// Before something is written: the files are still the ones that were opened.
    fn unmoved_before(&mut self) -> Result<(), StoreError> {
        match self.watch.as_ref().map_or(Ok(()), |watch| watch.before(&self.place)) {
            Err(error @ StoreError::Moved { .. }) => Err(self.gone(error)),
            other => other,
        }
    }

    /// After the write-ahead log was written.
    pub(crate) fn unmoved_after(&mut self) -> Result<(), StoreError> {
        match self.watch.as_mut().map_or(Ok(()), |watch| watch.after(&self.place)) {
            Err(error) => Err(self.gone(error)),
            other => other,
        }
    }

    /// After the file was written.
    fn moved_in(&mut self) -> Result<(), StoreError> {
        match self.watch.as_mut().map_or(Ok(()), |watch| watch.moved_in(&self.place)) {
            Err(error) => Err(self.gone(error)),
            other => other,
        }
    }

    /// Leaves files that are not the ones that were opened. A file that lies elsewhere now gets what
    /// its log still holds, and the log is put out of the way of the file that took its place.
    fn gone(&mut self, error: StoreError) -> StoreError {
        let Some(watch) = self.watch.take() else { return error };
        let moved = watch.is_elsewhere(&self.place) && self.ends_whole().unwrap_or(false);
        self.held = None;
        self.connection = None;
        if moved && watch.has_its_log() {
            // Where it stays, opening says that it is another file's.
            let _ = put_log_aside(&self.place);
        }
        error
    }

    /// Marks the file as given up, and moves its log into it, so that it needs none beside it: whoever
    /// finds it, here or elsewhere, has it whole. Answers whether all went into it.
    fn ends_whole(&mut self) -> Result<bool, StoreError> {
        if self.marks.in_use {
            let ended = Marks { in_use: false, ..self.marks.clone() };
            let ended = ended.with_new_token(self.connection()?);
            self.mark(ended.map_err(|error| self.sorted(error))?)?;
        }
        let (logged, moved) = self
            .connection()?
            .wal_checkpoint_v2(None::<&str>, CheckpointMode::PASSIVE)
            .map_err(|error| self.sorted(error))?;
        Ok(logged == moved)
    }

    /// Where the store is kept.
    pub fn place(&self) -> &Place {
        &self.place
    }

    /// The store's id, made when it was.
    ///
    #[must_use]
    pub fn uuid(&self) -> &str {
        &self.marks.uuid
    }

    /// How far the log was sealed: a loss of any of these events is known.
    #[must_use]
    pub fn sealed(&self) -> Seq {
        self.marks.sealed
    }

    /// Whether a failure closed it: [`Store::reopen`] comes before anything else.
    #[must_use]
    pub fn is_closed(&self) -> bool {
        self.connection.is_none()
    }

    /// Whether the store was opened only to be looked at.
    #[must_use]
    pub fn is_read_only(&self) -> bool {
        self.read_only.is_some()
    }

    /// The number of the last event; 0 in an empty log.
    pub fn last_seq(&self) -> Seq {
        self.head.seq
    }

    /// The checksum of the last event, which stands for all of them; 0 in an empty log.
    #[must_use]
    pub fn last_sum(&self) -> u32 {
        self.head.checksum
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
        // A number of any size may be asked for; a column holds no larger one than SQLite's.
        if from > self.head.seq {
            return Ok(());
        }
        let sorted = |error| StoreError::from_sqlite(self.path(), error);
        // The one before is next to it, or what is missing between them shows.
        let sql = "SELECT seq, checksum FROM event WHERE seq < ?1 ORDER BY seq DESC LIMIT 1";
        let mut chain = connection
            .query_row(sql, [from], |row| Ok(Chain { seq: row.get(0)?, checksum: row.get(1)? }))
            .optional()
            .map_err(sorted)?
            .unwrap_or_default();
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

    /// The standing facts.
    ///
    /// # Errors
    /// [`StoreError::Spoiled`] where one is missing; [`StoreError::DiskFailed`] and its kin.
    pub fn standing(&self) -> Result<StandingFacts<'_>, StoreError> {
        StandingFacts::of(self)
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
        self.check_seal()?;
        let named = standing::last_named(self.connection()?).map_err(|error| self.sorted(error))?;
        self.check_named(named)?;
        Ok(Verified { events: self.head.seq, checksum: self.head.checksum })
    }

    /// Whether the log reaches as far as it was sealed.
    fn check_seal(&self) -> Result<(), StoreError> {
        let connection = self.connection()?;
        let sorted = |error| self.sorted(error);
        let sealed = self.marks.sealed;
        let sum: Option<u32> = connection
            .prepare_cached("SELECT checksum FROM event WHERE seq = ?1")
            .and_then(|mut statement| statement.query_row([sealed], |row| row.get(0)).optional())
            .map_err(sorted)?;
        match sum {
            None if sealed > 0 => return Err(self.damaged(Damage::EndLost { seq: sealed })),
            Some(sum) if sum != self.marks.sealed_sum => {
                return Err(self.damaged(Damage::Checksum { seq: sealed }));
            }
            _ => {}
        }
        Ok(())
    }

    /// Whether the log reaches as far as a standing fact names.
    fn check_named(&self, named: Seq) -> Result<(), StoreError> {
        if named > self.head.seq {
            return Err(self.damaged(Damage::EndLost { seq: named }));
        }
        Ok(())
    }

    /// Frames in the write-ahead log that are not yet in the file, and all that SQLite takes of it.
    fn frames_in_log(&self) -> Result<(i32, i32), StoreError> {
        let (logged, moved) = self
            .connection()?
            .wal_checkpoint_v2(None::<&str>, CheckpointMode::NOOP)
            .map_err(|error| self.sorted(error))?;
        Ok(((logged - moved).max(0), logged))
    }

    pub(crate) fn marks(&self) -> &Marks {
        &self.marks
    }

    /// All that is derived was made anew.
    pub(crate) fn made_anew(&mut self, marks: Marks) {
        self.marks = marks;
        self.pending = 0;
        self.checked.set(false);
        self.spoiled.set(false);
    }

    /// Becomes the store that it is filled from, with all that is derived still to be made.
    pub(crate) fn take_over(&mut self, uuid: Option<String>) -> Result<(), StoreError> {
        self.about_to_write()?;
        let uuid = uuid.unwrap_or_else(|| self.marks.uuid.clone());
        self.mark(Marks { uuid, history: 0, ..self.marks.clone() })
    }

    /// Whether derived rows were found spoiled: [`Store::rebuild`] makes them anew.
    #[must_use]
    pub fn is_spoiled(&self) -> bool {
        self.spoiled.get()
    }

    /// Notes that derived rows are spoiled.
    pub(crate) fn spoiled(&self, rows: &'static str) -> StoreError {
        self.spoiled.set(true);
        StoreError::Spoiled { path: self.path().to_path_buf(), rows }
    }

    pub(crate) fn is_checked(&self) -> bool {
        self.checked.get()
    }

    pub(crate) fn set_checked(&self) {
        self.checked.set(true);
    }

    pub(crate) fn pending(&self) -> u32 {
        self.pending
    }

    pub(crate) fn head(&self) -> Chain {
        self.head
    }

    /// Why nothing can be recorded, where nothing can.
    pub(crate) fn refuses(&self) -> Option<StoreError> {
        self.read_only.clone()
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
        self.failed_as(error)
    }

    /// As [`Store::failed`], of an error that is sorted already.
    pub(crate) fn failed_as(&mut self, error: StoreError) -> StoreError {
        self.roll_back();
        let unsure = matches!(error, StoreError::DiskFailed { .. } | StoreError::Corrupt { .. });
        if unsure && self.place != Place::Memory {
            self.leave(&error);
        } else if let Some(watch) = &mut self.watch {
            watch.refresh(&self.place);
        }
        error
    }

    /// Closes the connection as it is, since nobody knows what the disk has.
    fn leave(&mut self, error: &StoreError) {
        self.connection = None;
        self.held = None;
        self.watch = None;
        // Reading leaves everything as it was.
        let wrote = |code: &i32| !matches!(*code, SQLITE_IOERR_READ | SQLITE_IOERR_SHORT_READ);
        self.unsynced |= matches!(error, StoreError::DiskFailed { code, .. } if wrote(code));
    }

    /// Takes back an open transaction; closes the store where that fails.
    pub(crate) fn roll_back(&mut self) {
        let rolled_back = self.connection.as_ref().is_none_or(|connection| {
            connection.is_autocommit() || connection.execute_batch("ROLLBACK").is_ok()
        });
        if !rolled_back && self.place != Place::Memory {
            self.connection = None;
            self.held = None;
            self.watch = None;
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

/// The end of the log.
fn last(connection: &Connection) -> rusqlite::Result<Chain> {
    let sql = "SELECT seq, checksum FROM event ORDER BY seq DESC LIMIT 1";
    let read = |row: &rusqlite::Row<'_>| Ok(Chain { seq: row.get(0)?, checksum: row.get(1)? });
    Ok(connection.query_row(sql, [], read).optional()?.unwrap_or_default())
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
        standing::put(connection, key, *body, head.seq)?;
    }
    connection.prepare_cached("COMMIT")?.execute([])?;
    Ok(head)
}

/// Opens a connection, changing nothing yet.
pub(crate) fn connect(place: &Place) -> Result<Connection, StoreError> {
    let flags = OpenFlags::SQLITE_OPEN_READ_WRITE
        | OpenFlags::SQLITE_OPEN_CREATE
        | OpenFlags::SQLITE_OPEN_NO_MUTEX;
    let opened = match place {
        Place::Memory => Connection::open_in_memory_with_flags(flags),
        Place::File { path, on } => {
            // Made here, so that it is its owner's alone from the first byte on.
            let made = on.files.create(path);
            made.map_err(|error| StoreError::from_io(path, &error))?;
            match &on.vfs {
                Some(vfs) => Connection::open_with_flags_and_vfs(path, flags, vfs.as_str()),
                None => Connection::open_with_flags(as_file(path), flags),
            }
        }
    };
    let sorted = |error| StoreError::from_sqlite(place.path(), error);
    let connection = opened.map_err(sorted)?;
    // Before anything is locked, which a file that can't be written does not let happen.
    if *place != Place::Memory && connection.is_readonly("main").map_err(sorted)? {
        return Err(StoreError::ReadOnly { path: place.path().to_path_buf() });
    }
    // A log is removed when it is known that the file has all of it, and not before.
    connection.set_db_config(DbConfig::SQLITE_DBCONFIG_NO_CKPT_ON_CLOSE, true).map_err(sorted)?;
    Ok(connection)
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
    connection.busy_timeout(std::time::Duration::ZERO).map_err(sorted)?;
    connection.pragma_update(None, "locking_mode", "EXCLUSIVE").map_err(sorted)?;
    if let Found::Empty = schema::identify(path, connection)? {
        connection.pragma_update(None, "page_size", PAGE_BYTES).map_err(sorted)?;
    }
    let mode: String = connection
        .pragma_update_and_check(None, "journal_mode", "WAL", |row| row.get(0))
        .map_err(sorted)?;
    if *place != Place::Memory {
        if mode != "wal" {
            return Err(StoreError::NoWriteAheadLog { path: path.to_path_buf(), mode });
        }
        // The answer comes before the file is written: whether there is a log is asked of the log.
        connection
            .query_row("SELECT count(*) FROM sqlite_schema", [], |row| row.get::<_, i64>(0))
            .map_err(sorted)?;
        let (logged, _) =
            connection.wal_checkpoint_v2(None::<&str>, CheckpointMode::NOOP).map_err(sorted)?;
        if logged < 0 {
            // It was not written, and why is said by the next that is.
            connection.pragma_update(None, "application_id", 0).map_err(sorted)?;
            return Err(StoreError::DiskFailed { path: path.to_path_buf(), code: SQLITE_IOERR });
        }
    }
    settle(path, connection)
}

/// Sets how a connection works, makes sure that the tables are as they were made, and brings them to
/// the newest format.
fn settle(path: &Path, connection: &mut Connection) -> Result<(), StoreError> {
    let sorted = |error| StoreError::from_sqlite(path, error);
    // A statement's plan does not hang on what is bound to it: else one with a bound LIMIT is prepared
    // anew each time it runs.
    connection.set_db_config(DbConfig::SQLITE_DBCONFIG_ENABLE_QPSG, true).map_err(sorted)?;
    connection.set_prepared_statement_cache_capacity(64);
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
    let found = schema::identify(path, connection)?;
    if let Found::Version(SCHEMA_VERSION) = found
        && !schema::is_as_made(connection).map_err(sorted)?
    {
        let detail = "tables that were not made so".to_owned();
        let damage = Damage::Malformed { detail };
        return Err(StoreError::Corrupt { path: path.to_path_buf(), damage });
    }
    schema::migrate(connection, &found).map_err(sorted)
}
