//! Records as a file that can be carried elsewhere: out in the lossless form, and in again.

mod bring;
mod columns;
pub(super) mod coming;
mod read;
mod table;
mod take_in;

use std::io::{BufRead, Write};
use std::panic::AssertUnwindSafe;
use std::sync::Arc;

use barwright_domain::session::Reading;

use super::came;
use super::export::{self, Export, Exported};
use super::{Engine, guarded};
use crate::contract::{self, EngineError};
use crate::fault::{Fault, Refused};
use crate::locale::Locale;

pub use bring::Joined;
pub use columns::OldTable;
pub use table::Table;
pub use take_in::Imported;

use read::File;

impl Engine {
    /// Writes the records out, one line of JSON each, in the form of `docs/records-format.md`: all
    /// of them without a loss, or what a lifter hands to a coach.
    ///
    /// # Errors
    /// [`EngineError::Storage`] when they can't be read, [`EngineError::Refused`] when `to` does not
    /// take them: what was written by then is no whole file.
    pub fn export_records(
        &self,
        what: Export,
        to: &mut impl Write,
    ) -> Result<Exported, EngineError> {
        self.with(|core| export::write(&core.store, &core.held.desk, what, to))
    }

    /// Writes a table of what was done as CSV: columns and units are in `docs/records-format.md`. Only
    /// rows from the local date `since` on, in days since 1970-01-01, where there is one. Answers how
    /// many rows it has.
    ///
    /// # Errors
    /// As [`Engine::export_records`].
    pub fn export_table(
        &self,
        table: Table,
        since: Option<i32>,
        to: &mut impl Write,
    ) -> Result<u64, EngineError> {
        self.with(|core| table::write(core, table, since, to))
    }

    /// Compares a file of the lossless form that has a whole log with the records, and unless
    /// `look_only` takes what is new: an empty store becomes the one that the file is from, and a
    /// store that the file goes on from goes on with it. All in one transaction, or nothing; what is
    /// here already is taken no second time.
    ///
    /// # Errors
    /// [`EngineError::Refused`] for a file that breaks a rule of the form, is a part of a log, is of
    /// other records, or has other entries after the last one that both have;
    /// [`EngineError::Storage`] when it can't be written. Nothing changed then.
    pub fn import_records(
        &self,
        from: impl BufRead,
        look_only: bool,
    ) -> Result<Imported, EngineError> {
        self.with(|core| take_in::take_in(core, File::read_whole(from)?, look_only))
    }

    /// The sessions of a file of the lossless form that has a whole log come into the history here,
    /// whoever's it is: from another phone on which the lifter went on. Each comes once, with the day
    /// it was lived on; loads and plan stay as they are here, and where they stand otherwise there the
    /// answer says so. All in one transaction, or nothing; with `look_only` it is only said.
    ///
    /// # Errors
    /// [`EngineError::Refused`] for a file that breaks a rule of the form or is a part of a log;
    /// [`EngineError::Storage`] when it can't be written. Nothing changed then.
    pub fn join_records(
        &self,
        from: impl BufRead,
        reading: contract::Reading,
        look_only: bool,
    ) -> Result<Joined, EngineError> {
        let at = Reading::from(reading);
        self.with(|core| bring::bring_file(core, File::read_whole(from)?, &at, look_only))
    }

    /// Takes the sessions that came into the history last out of it again, and answers how many: 0
    /// where none came.
    ///
    /// # Errors
    /// [`EngineError::Storage`] when it can't be written: nothing changed then.
    pub fn withdraw_sessions(&self, reading: contract::Reading) -> Result<u64, EngineError> {
        let at = Reading::from(reading);
        self.with(|core| match came::last(&core.store)? {
            Some(last) => bring::withdraw(core, last, &at),
            None => Ok(0),
        })
    }

    /// An engine in memory with what a file of that form has: all screens as they stood there. What
    /// is recorded in it is gone with it.
    ///
    /// # Errors
    /// [`EngineError::Refused`] with the line and what is wrong in it: nothing of the file is taken.
    pub fn read_records(from: impl BufRead, locale: &str) -> Result<Arc<Self>, EngineError> {
        let locale = Locale::read(locale);
        let opened = guarded(AssertUnwindSafe(|| read::read(from, locale)));
        let core = opened.and_then(|core| core).map_err(|fault| fault.said(locale.words()))?;
        Ok(Arc::new(Self::holding(Box::new(core), locale)))
    }
}

impl From<barwright_log::form::Wrong> for Fault {
    fn from(wrong: barwright_log::form::Wrong) -> Self {
        Self::Refused(Refused::Records(wrong))
    }
}
