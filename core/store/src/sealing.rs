//! Marking a file as in use, moving its write-ahead log into it, sealing the log, and closing; and
//! leaving files that are no longer the ones that were opened.

use rusqlite::config::DbConfig;
use rusqlite::wal::CheckpointMode;

use crate::aside::put_log_aside;
use crate::error::StoreError;
use crate::event::Seq;
use crate::history;
use crate::marks::Marks;
use crate::place::Place;
use crate::store::Store;
use crate::wal::Log;

impl Store {
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

    /// Becomes the store that it is filled from, with all that is derived still to be made.
    pub(crate) fn take_over(&mut self, uuid: Option<String>) -> Result<(), StoreError> {
        self.about_to_write()?;
        let uuid = uuid.unwrap_or_else(|| self.marks.uuid.clone());
        self.mark(Marks { uuid, history: 0, ..self.marks.clone() })
    }

    fn mark_in_use(&mut self) -> Result<(), StoreError> {
        let begun = Marks { in_use: true, log_born: None, ..self.marks.clone() };
        self.mark(begun)?;
        let log = Log::read(&self.place)?;
        let known = Marks { log_born: log.map(|log| log.born()), ..self.marks.clone() };
        self.mark(known)
    }

    /// Writes the store's row about itself, in a transaction of its own.
    pub(crate) fn mark(&mut self, marks: Marks) -> Result<(), StoreError> {
        if let Err(error) = marks.write(self.connection()?) {
            return Err(self.failed(error));
        }
        self.marks = marks;
        self.unmoved_after()
    }

    pub(crate) fn pragma(&self, sql: &str) -> Result<(), StoreError> {
        match &self.connection {
            Some(connection) => connection.execute_batch(sql).map_err(|error| self.sorted(error)),
            None => Ok(()),
        }
    }

    /// Before something is written: the files are still the ones that were opened.
    pub(crate) fn unmoved_before(&mut self) -> Result<(), StoreError> {
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
    pub(crate) fn moved_in(&mut self) -> Result<(), StoreError> {
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
    pub(crate) fn ends_whole(&mut self) -> Result<bool, StoreError> {
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

    /// Frames in the write-ahead log that are not yet in the file, and all that SQLite takes of it.
    pub(crate) fn frames_in_log(&self) -> Result<(i32, i32), StoreError> {
        let (logged, moved) = self
            .connection()?
            .wal_checkpoint_v2(None::<&str>, CheckpointMode::NOOP)
            .map_err(|error| self.sorted(error))?;
        Ok(((logged - moved).max(0), logged))
    }
}
