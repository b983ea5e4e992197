//! Small current facts that stand beside the log.

use rusqlite::{Connection, OptionalExtension, Result, params};

use crate::digest;
use crate::event::Seq;

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
    let (rows, sum) = total(connection)?;
    let rows = rows + i64::from(after.is_some()) - i64::from(before.is_some());
    let sum = sum.wrapping_add(after.unwrap_or(0)).wrapping_sub(before.unwrap_or(0));
    connection
        .prepare_cached("UPDATE standing SET body = ?1 WHERE key = ''")?
        .execute([format!("{rows} {sum}")])?;
    Ok(())
}

/// How many facts there should be, and the sum of their digests.
fn total(connection: &Connection) -> Result<(i64, u32)> {
    connection.prepare_cached("SELECT body FROM standing WHERE key = ''")?.query_row([], |row| {
        let text = row.get_ref(0)?.as_str()?;
        let (rows, sum) = text.split_once(' ').unwrap_or_default();
        match (rows.parse(), sum.parse()) {
            (Ok(rows), Ok(sum)) => Ok((rows, sum)),
            _ => Err(digest::mismatch("the number of standing facts")),
        }
    })
}

/// Reads all facts and compares them with their digests and their number. They are few.
pub(crate) fn all(connection: &Connection) -> Result<Vec<(String, Standing)>> {
    let (mut rows, mut sum) = (0, 0_u32);
    let mut statement =
        connection.prepare_cached("SELECT key, body, seq, sum FROM standing ORDER BY key")?;
    let mut found = Vec::new();
    let mut each = statement.query([])?;
    while let Some(row) = each.next()? {
        let key: String = row.get(0)?;
        if key.is_empty() {
            continue;
        }
        let digest = digest::of_row(row, 3)?;
        if digest != row.get::<_, u32>(3)? {
            return Err(digest::mismatch("a standing fact"));
        }
        (rows, sum) = (rows + 1, sum.wrapping_add(digest));
        found.push((key, Standing { body: row.get(1)?, seq: row.get(2)? }));
    }
    if total(connection)? != (rows, sum) {
        return Err(digest::mismatch("the number of standing facts"));
    }
    Ok(found)
}
