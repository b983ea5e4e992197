//! Digests of rows: what a row says, in one number beside it, so that a spoiled one shows when it
//! is read.

use rusqlite::types::{ToSqlOutput, ValueRef};
use rusqlite::{Connection, Error, Result, Row, ToSql};

/// The digest of a row's values as they are written.
pub(crate) fn of(values: &[&dyn ToSql]) -> Result<u32> {
    let mut hasher = crc32fast::Hasher::new();
    for value in values {
        match value.to_sql()? {
            ToSqlOutput::Borrowed(value) => add(&mut hasher, value),
            ToSqlOutput::Owned(value) => add(&mut hasher, (&value).into()),
            _ => return Err(Error::InvalidQuery),
        }
    }
    Ok(hasher.finalize())
}

/// The digest of the first values of a row that was read.
pub(crate) fn of_row(row: &Row<'_>, values: usize) -> Result<u32> {
    let mut hasher = crc32fast::Hasher::new();
    for at in 0..values {
        add(&mut hasher, row.get_ref(at)?);
    }
    Ok(hasher.finalize())
}

/// CRC-32 over each value: a byte for its kind, then eight bytes of a number, or the length of a
/// text and its bytes; numbers little-endian.
fn add(hasher: &mut crc32fast::Hasher, value: ValueRef<'_>) {
    match value {
        ValueRef::Null => hasher.update(&[0]),
        ValueRef::Integer(number) => {
            hasher.update(&[1]);
            hasher.update(&number.to_le_bytes());
        }
        ValueRef::Real(number) => {
            hasher.update(&[2]);
            hasher.update(&number.to_bits().to_le_bytes());
        }
        ValueRef::Text(bytes) | ValueRef::Blob(bytes) => {
            hasher.update(&[3]);
            hasher.update(&(bytes.len() as u64).to_le_bytes());
            hasher.update(bytes);
        }
    }
}

/// A row that does not match its digest.
pub(crate) fn mismatch(what: &'static str) -> Error {
    Error::FromSqlConversionFailure(0, rusqlite::types::Type::Integer, what.into())
}

/// Carries out a statement with a row's values and what stands beside them.
pub(crate) fn execute(
    connection: &Connection,
    sql: &str,
    values: &[&dyn ToSql],
    beside: &[&dyn ToSql],
) -> Result<()> {
    let all = values.iter().chain(beside);
    connection.prepare_cached(sql)?.execute(rusqlite::params_from_iter(all))?;
    Ok(())
}
