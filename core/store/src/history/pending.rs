//! Changes that are queued until a quiet moment.

use barwright_domain::history::Change;
use rusqlite::{Connection, Result, params};

use super::{code, total, write};
use crate::digest;

/// Adds a change at the end of the queue.
pub(crate) fn queue(connection: &Connection, change: &Change) -> Result<()> {
    let change = code::json(change)?;
    total::put(connection, "INSERT INTO pending (change, sum) VALUES (?1, ?2)", params![change])?;
    Ok(())
}

/// How many changes are queued.
pub(crate) fn count(connection: &Connection) -> Result<u32> {
    connection.query_row("SELECT count(*) FROM pending", [], |row| row.get(0))
}

/// Reads the queue, each change as it was queued and none of them missing.
pub(super) fn each(
    connection: &Connection,
    mut take: impl FnMut(Change) -> Result<()>,
) -> Result<()> {
    let mut statement =
        connection.prepare_cached("SELECT change, sum, id FROM pending ORDER BY id")?;
    let mut rows = statement.query([])?;
    let mut next: u64 = 1;
    while let Some(row) = rows.next()? {
        if digest::of_row(row, 1)? != row.get::<_, u32>(1)? || row.get::<_, u64>(2)? != next {
            return Err(digest::mismatch("a queued change"));
        }
        next += 1;
        take(code::from_json(row.get_ref(0)?.as_str()?)?)?;
    }
    Ok(())
}

/// Carries out what is queued and empties the queue, within the caller's transaction.
pub(crate) fn carry_out(connection: &Connection) -> Result<()> {
    each(connection, |change| write::apply(connection, &change))?;
    connection.prepare_cached("DELETE FROM pending")?.execute([])?;
    Ok(())
}
