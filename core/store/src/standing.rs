//! Small current facts that stand beside the log.

use rusqlite::{Connection, OptionalExtension, Params, Result, Row, params};

use crate::digest;
use crate::error::StoreError;
use crate::event::Seq;
use crate::store::Store;

/// A small current fact that stands beside the log.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Standing {
    /// Its body, as the codec wrote it.
    pub body: String,
    /// The last event of the tap that wrote it.
    pub seq: Seq,
}

/// Writes a standing fact, or takes it away.
pub(crate) fn put(connection: &Connection, key: &str, body: Option<&str>, seq: Seq) -> Result<()> {
    let before = connection
        .prepare_cached("DELETE FROM standing WHERE key = ?1 RETURNING sum")?
        .query_row([key], |row| row.get::<_, u32>(0))
        .optional()?;
    let mut after = None;
    if let Some(body) = body {
        let values = params![key, body, seq];
        let sum = digest::of(values)?;
        let sql = "INSERT INTO standing (key, body, seq, sum) VALUES (?1, ?2, ?3, ?4)";
        digest::execute(connection, sql, values, &[&sum])?;
        after = Some(sum);
    }
    let mut total = Total::kept(connection)?;
    total.rows += i64::from(after.is_some()) - i64::from(before.is_some());
    total.sum = total.sum.wrapping_add(after.unwrap_or(0)).wrapping_sub(before.unwrap_or(0));
    let named = digest::checksum(key);
    match (before.is_some(), after.is_some()) {
        (false, true) => total.keys = total.keys.wrapping_add(named),
        (true, false) => total.keys = total.keys.wrapping_sub(named),
        (true, true) | (false, false) => {}
    }
    let Total { rows, sum, keys } = total;
    connection
        .prepare_cached("UPDATE standing SET body = ?1 WHERE key = ''")?
        .execute([format!("{rows} {sum} {keys}")])?;
    Ok(())
}

/// What all facts come to together.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
struct Total {
    /// How many there are.
    rows: i64,
    /// The sum of their digests.
    sum: u32,
    /// The sum of those of their keys: one that is spoiled is looked up in vain, and so may be others
    /// that are found by way of it.
    keys: u32,
}

impl Total {
    /// As it is kept.
    fn kept(connection: &Connection) -> Result<Self> {
        let sql = "SELECT body FROM standing WHERE key = ''";
        connection.prepare_cached(sql)?.query_row([], |row| {
            let mut parts = row.get_ref(0)?.as_str()?.split(' ');
            let mut part = || parts.next().and_then(|part| part.parse::<u32>().ok());
            match (part(), part(), part()) {
                (Some(rows), Some(sum), Some(keys)) => Ok(Self { rows: rows.into(), sum, keys }),
                _ => Err(digest::mismatch("the number of standing facts")),
            }
        })
    }
}

/// Compares the number of facts and the sums of their digests and their keys with what they should be,
/// and answers the last event that one of them names. A fact itself is held against its digest when it is read:
/// there are some of every plan that was ever kept, and few are asked for.
pub(crate) fn check(connection: &Connection) -> Result<Seq> {
    let (mut found, mut named) = (Total::default(), 0);
    let sql = "SELECT key, seq, sum FROM standing WHERE key <> ''";
    let mut statement = connection.prepare_cached(sql)?;
    let mut rows = statement.query([])?;
    while let Some(row) = rows.next()? {
        found.rows += 1;
        found.keys = found.keys.wrapping_add(digest::checksum(row.get_ref(0)?.as_str()?));
        named = named.max(row.get(1)?);
        found.sum = found.sum.wrapping_add(row.get(2)?);
    }
    if Total::kept(connection)? != found {
        return Err(digest::mismatch("the number of standing facts"));
    }
    Ok(named)
}

/// The last event that a fact names.
pub(crate) fn last_named(connection: &Connection) -> Result<Seq> {
    connection.query_row("SELECT ifnull(max(seq), 0) FROM standing", [], |row| row.get(0))
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
