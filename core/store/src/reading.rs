//! Reading the log back, and checking all of it.

use rusqlite::ffi::SQLITE_IOERR;
use rusqlite::{Connection, OptionalExtension};

use crate::chain::Chain;
use crate::error::{Damage, StoreError};
use crate::event::{COLUMNS, Event, Seq};
use crate::standing;
use crate::store::Store;

/// What [`Store::verify`] found good.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Verified {
    /// Events, all of them with their checksums.
    pub events: u64,
    /// The last checksum, which stands for all of them.
    pub checksum: u32,
}

impl Store {
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
    pub(crate) fn check_seal(&self) -> Result<(), StoreError> {
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
    pub(crate) fn check_named(&self, named: Seq) -> Result<(), StoreError> {
        if named > self.head.seq {
            return Err(self.damaged(Damage::EndLost { seq: named }));
        }
        Ok(())
    }
}

/// The end of the log.
pub(crate) fn last(connection: &Connection) -> rusqlite::Result<Chain> {
    let sql = "SELECT seq, checksum FROM event ORDER BY seq DESC LIMIT 1";
    let read = |row: &rusqlite::Row<'_>| Ok(Chain { seq: row.get(0)?, checksum: row.get(1)? });
    Ok(connection.query_row(sql, [], read).optional()?.unwrap_or_default())
}
