//! What each table of derived rows comes to: how many rows, and the sum of their digests, so that a
//! row that is gone is missed.

use rusqlite::{Connection, Result, Row, ToSql, params};

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

/// How many rows a table should have, and the sum of their digests.
pub(super) fn of(connection: &Connection, table: &str) -> Result<(u64, u32)> {
    connection
        .prepare_cached("SELECT rows, sum FROM total WHERE name = ?1")?
        .query_row([table], |row| Ok((row.get(0)?, row.get(1)?)))
}

/// Reads a small table whole, in the order that it lies in, and compares every row with its digest
/// and all of them with the table's total. `columns` of the row are what its digest stands for, and
/// its first `key` ones are what it is looked up by.
pub(super) fn check(
    connection: &Connection,
    table: &str,
    columns: (&str, usize),
    key: usize,
) -> Result<()> {
    let (names, count) = columns;
    let sql = format!("SELECT {names}, sum FROM {table} NOT INDEXED");
    let (mut rows, mut sum) = (0, 0_u32);
    in_order(connection, &sql, key, |row| {
        let digest = digest::of_row(row, count)?;
        if digest != row.get::<_, u32>(count)? {
            return Err(digest::mismatch("a row"));
        }
        rows += 1;
        sum = sum.wrapping_add(digest);
        Ok(())
    })?;
    if of(connection, table)? != (rows, sum) {
        return Err(digest::mismatch("the number of rows"));
    }
    Ok(())
}

/// Compares an index with its table: the same keys, in order.
pub(super) fn check_index(
    connection: &Connection,
    table: &str,
    index: &str,
    columns: (&str, usize),
) -> Result<()> {
    let (names, count) = columns;
    let sums = |by: &str, key: usize| {
        let sql = format!("SELECT {names} FROM {table} {by}");
        let (mut rows, mut sum) = (0_u64, 0_u32);
        in_order(connection, &sql, key, |row| {
            rows += 1;
            sum = sum.wrapping_add(digest::of_row(row, count)?);
            Ok(())
        })?;
        Ok::<_, rusqlite::Error>((rows, sum))
    };
    if sums("NOT INDEXED", 0)? != sums(&format!("INDEXED BY {index}"), count)? {
        return Err(digest::mismatch("an index"));
    }
    Ok(())
}

/// A value that rows are looked up by, in SQLite's order.
#[derive(Debug, PartialEq, Eq, PartialOrd, Ord)]
enum Key {
    Nothing,
    Number(i64),
    Text(Vec<u8>),
}

fn in_order(
    connection: &Connection,
    sql: &str,
    key: usize,
    mut take: impl FnMut(&Row<'_>) -> Result<()>,
) -> Result<()> {
    use rusqlite::types::ValueRef;
    let mut statement = connection.prepare_cached(sql)?;
    let mut rows = statement.query([])?;
    let mut last: Option<Vec<Key>> = None;
    while let Some(row) = rows.next()? {
        let keys = (0..key).map(|at| match row.get_ref(at)? {
            ValueRef::Integer(number) => Ok(Key::Number(number)),
            ValueRef::Text(text) => Ok(Key::Text(text.to_vec())),
            ValueRef::Null => Ok(Key::Nothing),
            _ => Err(digest::mismatch("a key")),
        });
        let keys = keys.collect::<Result<Vec<_>>>()?;
        if key > 0 && last.as_ref().is_some_and(|last| *last >= keys) {
            return Err(digest::mismatch("the order of rows"));
        }
        last = Some(keys);
        take(row)?;
    }
    Ok(())
}
