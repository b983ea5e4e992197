//! The file's format: its marks, its tables and the steps from each past version.

use std::path::Path;

use rusqlite::ffi::SQLITE_ERROR;
use rusqlite::{Connection, TransactionBehavior};
use uuid::Builder;

use crate::error::{Damage, Foreign, StoreError};
use crate::history::HISTORY_VERSION;
use crate::marks::Marks;

/// The application id in the file's header: "Barw" in ASCII.
pub(crate) const APPLICATION_ID: i32 = 0x4261_7277;

/// Version of the format written here, in the file's `user_version`.
pub const SCHEMA_VERSION: u32 = MIGRATIONS.len() as u32;

/// Step `n` brings a file of version `n` to version `n + 1`. Steps are only ever added.
const MIGRATIONS: &[&str] = &[include_str!("schema/v1.sql")];

/// Rows that say that nothing is derived yet, as a new file has them.
pub(crate) const NOTHING_YET: &str = "
    INSERT INTO standing VALUES ('', '0 0 0', 0, 0);
    INSERT INTO total VALUES
        ('session', 0, 0), ('week_volume', 0, 0), ('done_set', 0, 0), ('exercise', 0, 0),
        ('record', 0, 0);";

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
    let damaged = |detail: String| StoreError::Corrupt {
        path: path.to_path_buf(),
        damage: Damage::Malformed { detail },
    };
    // A store of ours says its format twice: a header that is spoiled is told from another's.
    let format = connection
        .query_row("SELECT format FROM store WHERE id = 1", [], |row| row.get::<_, i32>(0));
    if application_id != APPLICATION_ID {
        if format.is_ok_and(|format| format == version) {
            return Err(damaged(format!("application id {application_id}")));
        }
        let found = Foreign::OtherDatabase { application_id };
        return Err(StoreError::NotAStore { path: path.to_path_buf(), found });
    }
    if tables == 0 {
        return Err(damaged(format!("version {version}, no table")));
    }
    let format = format.map_err(|error| match sorted(error) {
        // No such table, no such column, no such row.
        StoreError::Failed { detail, code: 0 | SQLITE_ERROR, .. } => damaged(detail),
        error => error,
    })?;
    match u32::try_from(version) {
        Ok(version @ 1..) if i64::from(format) == i64::from(version) => {
            if version > SCHEMA_VERSION {
                let path = path.to_path_buf();
                return Err(StoreError::Newer { path, found: version, known: SCHEMA_VERSION });
            }
            Ok(Found::Version(version))
        }
        _ => Err(damaged(format!("version {version} and {format}"))),
    }
}

/// Whether the tables, indices and triggers are the ones that the newest format has, by the words
/// that made them.
pub(crate) fn is_as_made(connection: &Connection) -> rusqlite::Result<bool> {
    let made = MIGRATIONS.join("\n");
    let mut statement =
        connection.prepare("SELECT sql FROM sqlite_schema WHERE name NOT GLOB 'sqlite_*'")?;
    let mut found = 0;
    let mut rows = statement.query([])?;
    while let Some(row) = rows.next()? {
        let sql: String = row.get(0)?;
        if !made.contains(&sql) {
            return Ok(false);
        }
        found += 1;
    }
    Ok(found == made.matches("CREATE ").count())
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
        transaction.execute_batch(NOTHING_YET)?;
        let marks = Marks {
            uuid,
            format: SCHEMA_VERSION,
            history: HISTORY_VERSION,
            // In use from the first on; it is not yet known which log it has.
            in_use: true,
            ..Marks::default()
        };
        marks.write(&transaction)?;
    } else {
        let marks = Marks { format: SCHEMA_VERSION, ..Marks::read(&transaction)? };
        marks.write(&transaction)?;
    }
    transaction.pragma_update(None, "user_version", SCHEMA_VERSION)?;
    transaction.commit()
}
