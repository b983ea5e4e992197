//! The file's format: its marks, its tables and the steps from each past version.

use std::path::Path;

use rusqlite::{Connection, TransactionBehavior};
use uuid::Builder;

use crate::error::{Damage, Foreign, StoreError};
use crate::history::HISTORY_VERSION;

/// The application id in the file's header: "Barw" in ASCII.
pub(crate) const APPLICATION_ID: i32 = 0x4261_7277;

/// Version of the format written here, in the file's `user_version`.
pub const SCHEMA_VERSION: u32 = MIGRATIONS.len() as u32;

/// Step `n` brings a file of version `n` to version `n + 1`. Steps are only ever added.
const MIGRATIONS: &[&str] = &[include_str!("schema/v1.sql")];

/// What a file that was just opened is, without changing it.
pub(crate) enum Found {
    /// Nothing yet: a new or empty file.
    Empty,
    /// A store of this version, the newest or an older one.
    Version(u32),
}

/// Tells a store from other files, and a version known here from a newer one.
pub(crate) fn identify(path: &Path, connection: &Connection) -> Result<Found, StoreError> {
    let sorted = |error| StoreError::from_sqlite(path, error);
    let header = |name| connection.pragma_query_value(None, name, |row| row.get::<_, i32>(0));
    let application_id = header("application_id").map_err(sorted)?;
    let version = header("user_version").map_err(sorted)?;
    let tables: u32 = connection
        .query_row("SELECT count(*) FROM sqlite_schema", [], |row| row.get(0))
        .map_err(sorted)?;
    if application_id == 0 && version == 0 && tables == 0 {
        return Ok(Found::Empty);
    }
    if application_id != APPLICATION_ID {
        let found = Foreign::OtherDatabase { application_id };
        return Err(StoreError::NotAStore { path: path.to_path_buf(), found });
    }
    match u32::try_from(version) {
        Ok(version @ 1..) if tables > 0 => {
            if version > SCHEMA_VERSION {
                let path = path.to_path_buf();
                return Err(StoreError::Newer { path, found: version, known: SCHEMA_VERSION });
            }
            Ok(Found::Version(version))
        }
        _ => Err(StoreError::Corrupt {
            path: path.to_path_buf(),
            damage: Damage::Malformed { detail: format!("version {version}, {tables} tables") },
        }),
    }
}

/// Brings a file to [`SCHEMA_VERSION`] in one transaction; a new one gets its marks and its id.
pub(crate) fn migrate(connection: &mut Connection, found: &Found) -> rusqlite::Result<()> {
    let (from, new) = match found {
        Found::Empty => (0, true),
        Found::Version(version) => (*version, false),
    };
    if from == SCHEMA_VERSION {
        return Ok(());
    }
    let transaction = connection.transaction_with_behavior(TransactionBehavior::Immediate)?;
    for step in MIGRATIONS.iter().skip(from as usize) {
        transaction.execute_batch(step)?;
    }
    if new {
        transaction.pragma_update(None, "application_id", APPLICATION_ID)?;
        // SQLite's own random source, seeded by the system: the one place that wants chance.
        let random: [u8; 16] =
            transaction.query_row("SELECT randomblob(16)", [], |row| row.get(0))?;
        let uuid = Builder::from_random_bytes(random).into_uuid().to_string();
        transaction.execute(
            "INSERT INTO store (id, uuid, history) VALUES (1, ?1, ?2)",
            (uuid, HISTORY_VERSION),
        )?;
    }
    transaction.pragma_update(None, "user_version", SCHEMA_VERSION)?;
    transaction.commit()
}
