//! Numbers of rows in an order, from one on and without gaps, so that a row that is not found is
//! missed. A new row seldom comes before one that is there, so few are numbered anew.

use rusqlite::types::Value;
use rusqlite::{Connection, OptionalExtension, Result, ToSql, params_from_iter};

/// An order of a table's rows.
#[derive(Debug, Clone, Copy)]
pub(super) struct Order {
    pub(super) table: &'static str,
    /// The column of the number.
    pub(super) nth: &'static str,
    /// The columns it goes by; before a semicolon, what the rows that are numbered together have in
    /// common.
    pub(super) by: &'static str,
}

impl Order {
    /// The condition for rows on one side of a key (`<` or `>`).
    fn beside(&self, side: char) -> String {
        let (common, by) = self.parts();
        let marks = vec!["?"; by.split(',').count()].join(", ");
        // What the index begins with once more by itself, so that it is used.
        match common {
            "" => format!("({by}) {side} ({marks})"),
            common => format!("{common} AND ({by}) {side} ({marks})"),
        }
    }

    fn parts(&self) -> (&'static str, &'static str) {
        match self.by.split_once("; ") {
            Some(parts) => parts,
            None => ("", self.by),
        }
    }
}

/// The number of a row that is to come at a key; those behind it move up.
pub(super) fn make_room(connection: &Connection, order: &Order, key: &[Value]) -> Result<u64> {
    let (_, by) = order.parts();
    let down: Vec<String> = by.split(", ").map(|column| format!("{column} DESC")).collect();
    let (table, nth) = (order.table, order.nth);
    let sql = format!(
        "SELECT {nth} FROM {table} WHERE {} ORDER BY {} LIMIT 1",
        order.beside('<'),
        down.join(", ")
    );
    let before: Option<u64> = connection
        .prepare_cached(&sql)?
        .query_row(params_from_iter(key), |row| row.get(0))
        .optional()?;
    shift(connection, order, key, 1)?;
    Ok(before.unwrap_or(0) + 1)
}

/// Numbers the rows behind one that was taken out.
pub(super) fn close_up(connection: &Connection, order: &Order, key: &[Value]) -> Result<()> {
    shift(connection, order, key, -1)
}

fn shift(connection: &Connection, order: &Order, key: &[Value], by: i64) -> Result<()> {
    let (table, nth) = (order.table, order.nth);
    let sql = format!("UPDATE {table} SET {nth} = {nth} + {by} WHERE {}", order.beside('>'));
    let key = key.iter().map(|value| value as &dyn ToSql);
    connection.prepare_cached(&sql)?.execute(params_from_iter(key))?;
    Ok(())
}
