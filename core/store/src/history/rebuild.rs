//! Making the derived rows anew from the log.

use barwright_domain::history::Change;

use super::{HISTORY_VERSION, write};
use crate::error::StoreError;
use crate::event::Event;
use crate::store::{Store, put_standing};

/// Folds the log into what is derived from it.
pub trait Derive {
    /// What its own readers of events answer.
    type Error: From<StoreError>;

    /// Takes the next event of the log and answers with the changes it makes.
    ///
    /// # Errors
    /// For an event that it can't read.
    fn event(&mut self, event: Event) -> Result<Vec<Change>, Self::Error>;

    /// What is left to say after the last event.
    ///
    /// # Errors
    /// For facts that it can't write.
    fn end(&mut self) -> Result<AtEnd, Self::Error>;
}

/// What a fold of the log comes to at its end.
#[derive(Debug, Default)]
pub struct AtEnd {
    /// Changes that no event was answered with.
    pub changes: Vec<Change>,
    /// The standing facts, by key.
    pub standing: Vec<(String, String)>,
}

impl Store {
    /// Whether the derived rows are of the version that this release makes. Where they are not
    /// (after an update, or in a file read from a damaged one), [`Store::rebuild`] makes them.
    ///
    /// # Errors
    /// [`StoreError::DiskFailed`] and its kin.
    pub fn history_is_current(&self) -> Result<bool, StoreError> {
        self.connection()?
            .query_row("SELECT history FROM store", [], |row| row.get::<_, u32>(0))
            .map(|version| version == HISTORY_VERSION)
            .map_err(|error| self.sorted(error))
    }

    /// Makes all that is derived anew from the whole log, in one transaction: all of it or nothing.
    ///
    /// # Errors
    /// What `derive` answers, or what reading and writing do; what was there before stays.
    pub fn rebuild<D: Derive>(&mut self, derive: &mut D) -> Result<(), D::Error> {
        match self.rebuild_in_transaction(derive) {
            Ok(()) => {
                self.set_pending(0);
                Ok(())
            }
            Err(Failed::Derive(error)) => {
                self.roll_back();
                Err(error)
            }
            Err(Failed::Sqlite(error)) => Err(self.failed(error).into()),
        }
    }

    fn rebuild_in_transaction<D: Derive>(&self, derive: &mut D) -> Result<(), Failed<D::Error>> {
        let connection = self.connection().map_err(|error| Failed::Derive(error.into()))?;
        connection.execute_batch(
            "BEGIN IMMEDIATE;
             DELETE FROM pending; DELETE FROM done_set; DELETE FROM session;
             DELETE FROM week_volume; DELETE FROM record; DELETE FROM standing;",
        )?;
        self.each_event(1, |event| {
            for change in derive.event(event).map_err(Failed::Derive)? {
                write::apply(connection, &change)?;
            }
            Ok::<(), Failed<D::Error>>(())
        })?;
        let rest = derive.end().map_err(Failed::Derive)?;
        for change in rest.changes {
            write::apply(connection, &change)?;
        }
        for (key, body) in rest.standing {
            put_standing(connection, &key, Some(&body), self.last_seq())?;
        }
        connection.execute("UPDATE store SET history = ?1", [HISTORY_VERSION])?;
        connection.execute_batch("COMMIT")?;
        Ok(())
    }
}

enum Failed<E> {
    Derive(E),
    Sqlite(rusqlite::Error),
}

impl<E> From<rusqlite::Error> for Failed<E> {
    fn from(error: rusqlite::Error) -> Self {
        Self::Sqlite(error)
    }
}

impl<E: From<StoreError>> From<StoreError> for Failed<E> {
    fn from(error: StoreError) -> Self {
        Self::Derive(error.into())
    }
}
