//! Changes that are queued until a quiet moment.

use barwright_domain::history::Change;
use rusqlite::{Connection, Result};

use super::{code, write};

/// Adds a change at the end of the queue.
pub(crate) fn queue(connection: &Connection, change: &Change) -> Result<()> {
    connection
        .prepare_cached("INSERT INTO pending (change) VALUES (?1)")?
        .execute([code::json(change)?])?;
    Ok(())
}

/// How many changes are queued.
pub(crate) fn count(connection: &Connection) -> Result<u32> {
    connection.query_row("SELECT count(*) FROM pending", [], |row| row.get(0))
}

/// Carries out what is queued and empties the queue, within the caller's transaction.
pub(crate) fn carry_out(connection: &Connection) -> Result<()> {
    let mut statement = connection.prepare_cached("SELECT change FROM pending ORDER BY id")?;
    let mut rows = statement.query([])?;
    while let Some(row) = rows.next()? {
        write::apply(connection, &code::from_json(row.get_ref(0)?.as_str()?)?)?;
    }
    connection.prepare_cached("DELETE FROM pending")?.execute([])?;
    Ok(())
}
