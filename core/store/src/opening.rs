//! Opening a store, also to be looked at alone, and opening it again after a failure.

use std::cell::Cell;
use std::path::Path;

use rusqlite::{Connection, OpenFlags};

use crate::aside::{holds_a_log, put_left_log_aside, replace};
use crate::connect::{connect, prepare, settle};
use crate::error::{Damage, StoreError};
use crate::held::{self, Held};
use crate::history;
use crate::marks::Marks;
use crate::pages::{Pages, began_here};
use crate::place::{Place, log_of, look_before_opening, remove};
use crate::reading::last;
use crate::schema::{self, Found, SCHEMA_VERSION};
use crate::standing;
use crate::store::Store;
use crate::wal::Log;
use crate::watch::Watch;

/// How many of the last events have their checksums checked when a store is opened.
pub const CHECKED_ON_OPEN: u64 = 64;

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
}
