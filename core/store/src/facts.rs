//! The small current facts that stand beside the log, as they are read.

use rusqlite::{Connection, Params, Result, Row};

use crate::digest;
use crate::error::StoreError;
use crate::event::Seq;
use crate::standing::check;
use crate::store::Store;

/// A small current fact that stands beside the log.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Standing {
    /// Its body, as the codec wrote it.
    pub body: String,
    /// The last event of the tap that wrote it.
    pub seq: Seq,
}

impl Store {
    /// The standing facts.
    ///
    /// # Errors
    /// [`StoreError::Spoiled`] where one is missing; [`StoreError::DiskFailed`] and its kin.
    pub fn standing(&self) -> Result<StandingFacts<'_>, StoreError> {
        StandingFacts::of(self)
    }
}

/// The standing facts, none of which is missing.
#[derive(Debug)]
pub struct StandingFacts<'a> {
    store: &'a Store,
}

impl<'a> StandingFacts<'a> {
    pub(crate) fn of(store: &'a Store) -> std::result::Result<Self, StoreError> {
        let facts = Self { store };
        match check(store.connection()?) {
            Ok(_) => Ok(facts),
            Err(error) => Err(facts.sorted(error)),
        }
    }

    /// The fact of this key.
    ///
    /// # Errors
    /// [`StoreError::Spoiled`] where it does not match its digest; [`StoreError::DiskFailed`] and its
    /// kin.
    pub fn get(&self, key: &str) -> std::result::Result<Option<Standing>, StoreError> {
        let found = self.rows("key = ?1", [key])?;
        Ok(found.into_iter().next().map(|(_, fact)| fact))
    }

    /// The facts whose keys begin so, by key.
    ///
    /// # Errors
    /// As [`StandingFacts::get`].
    pub fn beginning(
        &self,
        prefix: &str,
    ) -> std::result::Result<Vec<(String, Standing)>, StoreError> {
        self.rows("key >= ?1 AND key < ?2 AND key <> ''", run_of(prefix))
    }

    /// The keys that begin so, in order. The facts themselves are not looked at.
    ///
    /// # Errors
    /// [`StoreError::DiskFailed`] and its kin.
    pub fn keys(&self, prefix: &str) -> std::result::Result<Vec<String>, StoreError> {
        let sql =
            "SELECT key FROM standing WHERE key >= ?1 AND key < ?2 AND key <> '' ORDER BY key";
        let read = |connection: &Connection| -> Result<Vec<String>> {
            let mut statement = connection.prepare_cached(sql)?;
            statement.query_map(run_of(prefix), |row| row.get(0))?.collect()
        };
        read(self.store.connection()?).map_err(|error| self.sorted(error))
    }

    fn rows(
        &self,
        wanted: &str,
        params: impl Params,
    ) -> std::result::Result<Vec<(String, Standing)>, StoreError> {
        let sql = format!("SELECT key, body, seq, sum FROM standing WHERE {wanted} ORDER BY key");
        let read = |connection: &Connection| -> Result<Vec<_>> {
            connection.prepare_cached(&sql)?.query_map(params, fact)?.collect()
        };
        read(self.store.connection()?).map_err(|error| self.sorted(error))
    }

    /// They are derived from the log: damage met here is theirs until making them anew tells more.
    fn sorted(&self, error: rusqlite::Error) -> StoreError {
        match self.store.sorted(error) {
            StoreError::Corrupt { .. } | StoreError::Failed { code: 0, .. } => {
                self.store.spoiled("standing facts")
            }
            error => error,
        }
    }
}

/// The first key that begins so, and one behind the last.
fn run_of(prefix: &str) -> [String; 2] {
    [prefix.to_owned(), format!("{prefix}{}", char::MAX)]
}

fn fact(row: &Row<'_>) -> Result<(String, Standing)> {
    if digest::of_row(row, 3)? != row.get::<_, u32>(3)? {
        return Err(digest::mismatch("a standing fact"));
    }
    Ok((row.get(0)?, Standing { body: row.get(1)?, seq: row.get(2)? }))
}
