//! A connection: opened, made sure that it is to a store, and set to write as a store is written.

use std::path::Path;

use rusqlite::config::DbConfig;
use rusqlite::ffi::SQLITE_IOERR;
use rusqlite::wal::CheckpointMode;
use rusqlite::{Connection, OpenFlags};

use crate::bytes::PAGE_BYTES;
use crate::error::{Damage, StoreError};
use crate::place::{Place, as_file};
use crate::schema::{self, Found, SCHEMA_VERSION};

/// Opens a connection, changing nothing yet.
pub(crate) fn connect(place: &Place) -> Result<Connection, StoreError> {
    let flags = OpenFlags::SQLITE_OPEN_READ_WRITE
        | OpenFlags::SQLITE_OPEN_CREATE
        | OpenFlags::SQLITE_OPEN_NO_MUTEX;
    let opened = match place {
        Place::Memory => Connection::open_in_memory_with_flags(flags),
        Place::File { path, on } => {
            // Made here, so that it is its owner's alone from the first byte on.
            let made = on.files.create(path);
            made.map_err(|error| StoreError::from_io(path, &error))?;
            match &on.vfs {
                Some(vfs) => Connection::open_with_flags_and_vfs(path, flags, vfs.as_str()),
                None => Connection::open_with_flags(as_file(path), flags),
            }
        }
    };
    let sorted = |error| StoreError::from_sqlite(place.path(), error);
    let connection = opened.map_err(sorted)?;
    // Before anything is locked, which a file that can't be written does not let happen.
    if *place != Place::Memory && connection.is_readonly("main").map_err(sorted)? {
        return Err(StoreError::ReadOnly { path: place.path().to_path_buf() });
    }
    // A log is removed when it is known that the file has all of it, and not before.
    connection.set_db_config(DbConfig::SQLITE_DBCONFIG_NO_CKPT_ON_CLOSE, true).map_err(sorted)?;
    Ok(connection)
}

/// Takes the file, makes sure that it is a store, and sets how it is written. The order matters:
/// nothing is changed before it is known to be ours, and the lock comes before the journal mode.
pub(crate) fn prepare(place: &Place, connection: &mut Connection) -> Result<(), StoreError> {
    let path = place.path();
    let sorted = |error| StoreError::from_sqlite(path, error);
    connection.busy_timeout(std::time::Duration::ZERO).map_err(sorted)?;
    connection.pragma_update(None, "locking_mode", "EXCLUSIVE").map_err(sorted)?;
    if let Found::Empty = schema::identify(path, connection)? {
        connection.pragma_update(None, "page_size", PAGE_BYTES).map_err(sorted)?;
    }
    let mode: String = connection
        .pragma_update_and_check(None, "journal_mode", "WAL", |row| row.get(0))
        .map_err(sorted)?;
    if *place != Place::Memory {
        if mode != "wal" {
            return Err(StoreError::NoWriteAheadLog { path: path.to_path_buf(), mode });
        }
        // The answer comes before the file is written: whether there is a log is asked of the log.
        connection
            .query_row("SELECT count(*) FROM sqlite_schema", [], |row| row.get::<_, i64>(0))
            .map_err(sorted)?;
        let (logged, _) =
            connection.wal_checkpoint_v2(None::<&str>, CheckpointMode::NOOP).map_err(sorted)?;
        if logged < 0 {
            // It was not written, and why is said by the next that is.
            connection.pragma_update(None, "application_id", 0).map_err(sorted)?;
            return Err(StoreError::DiskFailed { path: path.to_path_buf(), code: SQLITE_IOERR });
        }
    }
    settle(path, connection)
}

/// Sets how a connection works, makes sure that the tables are as they were made, and brings them to
/// the newest format.
pub(crate) fn settle(path: &Path, connection: &mut Connection) -> Result<(), StoreError> {
    let sorted = |error| StoreError::from_sqlite(path, error);
    // A statement's plan does not hang on what is bound to it: else one with a bound LIMIT is prepared
    // anew each time it runs.
    connection.set_db_config(DbConfig::SQLITE_DBCONFIG_ENABLE_QPSG, true).map_err(sorted)?;
    connection.set_prepared_statement_cache_capacity(64);
    connection
        .execute_batch(
            "PRAGMA synchronous = FULL;
             PRAGMA fullfsync = ON;
             PRAGMA checkpoint_fullfsync = ON;
             PRAGMA temp_store = MEMORY;
             PRAGMA wal_autocheckpoint = 0;
             PRAGMA trusted_schema = OFF;
             PRAGMA cell_size_check = ON;",
        )
        .map_err(sorted)?;
    let found = schema::identify(path, connection)?;
    if let Found::Version(SCHEMA_VERSION) = found
        && !schema::is_as_made(connection).map_err(sorted)?
    {
        let detail = "tables that were not made so".to_owned();
        let damage = Damage::Malformed { detail };
        return Err(StoreError::Corrupt { path: path.to_path_buf(), damage });
    }
    schema::migrate(connection, &found).map_err(sorted)
}
