//! An open store: what is known of it, and what a failure does to it. The files beside this one open
//! it, append to it, read it back, seal and close it.

use std::cell::Cell;
use std::path::Path;

use rusqlite::Connection;
use rusqlite::ffi::{SQLITE_IOERR_READ, SQLITE_IOERR_SHORT_READ};

use crate::chain::Chain;
use crate::error::{Damage, StoreError};
use crate::event::Seq;
use crate::held::Held;
use crate::marks::Marks;
use crate::place::Place;
use crate::watch::Watch;

/// An open store: the only one that has its file.
#[derive(Debug)]
pub struct Store {
    pub(crate) place: Place,
    /// None after a failure, until [`Store::reopen`].
    pub(crate) connection: Option<Connection>,
    /// Why nothing can be recorded, in a store that was opened to be looked at.
    pub(crate) read_only: Option<StoreError>,
    /// The end of the log.
    pub(crate) head: Chain,
    /// The store's row about itself, as it is on disk.
    pub(crate) marks: Marks,
    /// Whether the files are still the ones that were opened; none where nobody can tell.
    pub(crate) watch: Option<Watch>,
    /// The file is marked as in use, and by the log that it has.
    pub(crate) marked: bool,
    /// That this process has the file.
    pub(crate) held: Option<Held>,
    /// A write or a sync failed: the system may show what the disk does not have.
    pub(crate) unsynced: bool,
    /// Frames in the write-ahead log that are not yet in the file.
    pub(crate) frames: i32,
    /// Changes to the derived rows that are queued.
    pub(crate) pending: u32,
    /// The small table of exercises was compared with its total since opening.
    pub(crate) checked: Cell<bool>,
    /// Derived rows were found spoiled.
    pub(crate) spoiled: Cell<bool>,
}

impl Store {
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
