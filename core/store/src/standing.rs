//! Rows of small current facts that stand beside the log: written, counted and summed up.

use rusqlite::{Connection, OptionalExtension, Result, params};

use crate::digest;
use crate::event::Seq;

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
