//! Digests of rows: what a row says, in one number beside it, so that a spoiled one shows when it
//! is read.

use std::sync::LazyLock;

use crc::{CRC_32_ISO_HDLC, Crc, Digest, Table};
use rusqlite::types::{ToSqlOutput, ValueRef};
use rusqlite::{Connection, Error, Result, Row, ToSql};

/// CRC-32 (ISO-HDLC), by sixteen tables: what searches a damaged row for its wrong bit is glad of them.
/// They are made when they are first asked for, since a browser would have to load what can't be packed.
pub(crate) static SUM: LazyLock<Crc<u32, Table<16>>> =
    LazyLock::new(|| Crc::<u32, Table<16>>::new(&CRC_32_ISO_HDLC));

/// The digest of a row's values as they are written.
pub(crate) fn of(values: &[&dyn ToSql]) -> Result<u32> {
    let mut digest = SUM.digest();
    for value in values {
        match value.to_sql()? {
            ToSqlOutput::Borrowed(value) => add(&mut digest, value),
            ToSqlOutput::Owned(value) => add(&mut digest, (&value).into()),
            _ => return Err(Error::InvalidQuery),
        }
    }
    Ok(digest.finalize())
}

/// The digest of the first values of a row that was read.
pub(crate) fn of_row(row: &Row<'_>, values: usize) -> Result<u32> {
    let mut digest = SUM.digest();
    for at in 0..values {
        add(&mut digest, row.get_ref(at)?);
    }
    Ok(digest.finalize())
}

/// The CRC-32 (ISO-HDLC) of a text.
#[must_use]
pub fn checksum(text: &str) -> u32 {
    SUM.checksum(text.as_bytes())
}

/// CRC-32 over each value: a byte for its kind, then eight bytes of a number, or the length of a
/// text and its bytes; numbers little-endian.
fn add(digest: &mut Digest<'_, u32, Table<16>>, value: ValueRef<'_>) {
    match value {
        ValueRef::Null => digest.update(&[0]),
        ValueRef::Integer(number) => {
            digest.update(&[1]);
            digest.update(&number.to_le_bytes());
        }
        ValueRef::Real(number) => {
            digest.update(&[2]);
            digest.update(&number.to_bits().to_le_bytes());
        }
        ValueRef::Text(bytes) | ValueRef::Blob(bytes) => {
            digest.update(&[3]);
            digest.update(&(bytes.len() as u64).to_le_bytes());
            digest.update(bytes);
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
