//! What each table of derived rows comes to: how many rows, and the sum of their digests, so that a
//! row that is gone is missed.

use rusqlite::{Connection, Result, ToSql, params};

use crate::digest;

/// Writes a row with its digest as the last value, and answers it.
pub(super) fn put(connection: &Connection, sql: &str, values: &[&dyn ToSql]) -> Result<u32> {
    let sum = digest::of(values)?;
    digest::execute(connection, sql, values, &[&sum])?;
    Ok(sum)
}

/// A row was put, changed or taken away: its digest before and after.
pub(super) fn changed(
    connection: &Connection,
    table: &str,
    before: Option<u32>,
    after: Option<u32>,
) -> Result<()> {
    if before == after {
        return Ok(());
    }
    let rows = i64::from(after.is_some()) - i64::from(before.is_some());
    let sum = i64::from(after.unwrap_or(0)) - i64::from(before.unwrap_or(0));
    connection
        .prepare_cached(
            "UPDATE total SET rows = rows + ?2, sum = (sum + ?3) & 0xffffffff WHERE name = ?1",
        )?
        .execute(params![table, rows, sum])?;
    Ok(())
}

/// What a table that was empty has come to: the digest of each of its rows.
pub(super) fn come_to(
    connection: &Connection,
    table: &str,
    digests: impl Iterator<Item = u32>,
) -> Result<()> {
    let (mut rows, mut sum) = (0_u64, 0_u32);
    for digest in digests {
        rows += 1;
        sum = sum.wrapping_add(digest);
    }
    connection
        .prepare_cached("UPDATE total SET rows = ?2, sum = ?3 WHERE name = ?1")?
        .execute(params![table, rows, sum])?;
    Ok(())
}

/// How many rows a table should have, and the sum of their digests.
fn of(connection: &Connection, table: &str) -> Result<(u64, u32)> {
    connection
        .prepare_cached("SELECT rows, sum FROM total WHERE name = ?1")?
        .query_row([table], |row| Ok((row.get(0)?, row.get(1)?)))
}

/// Reads a small table whole and compares every row with its digest, and all of them with the
/// table's total. `columns` are what a digest stands for, and how many those are.
pub(super) fn check(connection: &Connection, table: &str, columns: (&str, usize)) -> Result<()> {
    let (names, count) = columns;
    let mut statement =
        connection.prepare_cached(&format!("SELECT {names}, sum FROM {table} NOT INDEXED"))?;
    let (mut rows, mut sum) = (0, 0_u32);
    let mut each = statement.query([])?;
    while let Some(row) = each.next()? {
        let digest = digest::of_row(row, count)?;
        if digest != row.get::<_, u32>(count)? {
            return Err(digest::mismatch("a row"));
        }
        rows += 1;
        sum = sum.wrapping_add(digest);
    }
    if of(connection, table)? != (rows, sum) {
        return Err(digest::mismatch("the number of rows"));
    }
    Ok(())
}
