//! What can go wrong with the file, as data. Whatever it is, what was acknowledged is not lost by
//! it: no variant comes after a change that was half made.

use std::path::{Path, PathBuf};

use rusqlite::ffi;

use crate::event::Seq;

/// What a file is that is not a store.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Foreign {
    /// A folder.
    Folder,
    /// A file that SQLite can't read as a database.
    NotSqlite,
    /// A database of something else.
    OtherDatabase {
        /// Its application id.
        application_id: i32,
    },
}

/// What is damaged in a store.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Damage {
    /// SQLite found the file malformed.
    Malformed {
        /// Its words, for developers.
        detail: String,
    },
    /// An event does not match its checksum.
    Checksum {
        /// Its number.
        seq: Seq,
    },
    /// An event is missing.
    Missing {
        /// Its number.
        seq: Seq,
    },
    /// What is derived from the log names an event that the log does not have: its end is lost.
    EndLost {
        /// The number named.
        seq: Seq,
    },
    /// The file is gone and its write-ahead log lies there alone.
    LogAlone,
    /// The file was in use when it was last written, and the write-ahead log beside it is gone: what
    /// was recorded after this event, if anything, is lost.
    LogMissing {
        /// The last event in the file.
        seq: Seq,
    },
    /// The write-ahead log beside the file is another file's.
    LogOfAnother,
    /// The write-ahead log is spoiled in its midst: it holds events that do not join on.
    LogBroken {
        /// The last event that is whole.
        seq: Seq,
        /// The last one in it.
        last: Seq,
    },
}

/// Why the store could not do what it was asked.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum StoreError {
    /// A newer release wrote the file. It was left as it is.
    #[error("{path:?} has format {found}, newer than {known}")]
    Newer {
        /// The file.
        path: PathBuf,
        /// Its format.
        found: u32,
        /// The newest format known here.
        known: u32,
    },
    /// The file, or the folder it is in, can't be written.
    #[error("{path:?} or its folder can't be written")]
    ReadOnly {
        /// The file.
        path: PathBuf,
    },
    /// The disk is full. The tap was not recorded; everything before it is safe, and the store
    /// goes on once there is room.
    #[error("no room left for {path:?}")]
    Full {
        /// The file.
        path: PathBuf,
    },
    /// Another process or another engine has the file.
    #[error("{path:?} is in use")]
    InUse {
        /// The file.
        path: PathBuf,
    },
    /// There is no such file.
    #[error("no file {path:?}")]
    NotThere {
        /// The file.
        path: PathBuf,
    },
    /// The folder for the file does not exist.
    #[error("no folder for {path:?}")]
    NoFolder {
        /// The file.
        path: PathBuf,
    },
    /// The file is something else. It was left as it is.
    #[error("{path:?} is not a store: {found:?}")]
    NotAStore {
        /// The file.
        path: PathBuf,
        /// What it is.
        found: Foreign,
    },
    /// The file is damaged: see [`crate::salvage`]. It was left as it is.
    #[error("{path:?} is damaged: {damage:?}")]
    Corrupt {
        /// The file.
        path: PathBuf,
        /// What was found.
        damage: Damage,
    },
    /// Rows derived from the log are spoiled. The log is not, as far as it was looked at:
    /// [`crate::Store::rebuild`] makes them anew.
    #[error("derived {rows} in {path:?} are spoiled")]
    Spoiled {
        /// The file.
        path: PathBuf,
        /// Which.
        rows: &'static str,
    },
    /// The file was renamed, removed, replaced or written over while it was open. What was
    /// acknowledged is in the file that was opened, wherever it is now. The store is closed.
    #[error("{path:?} is not the file that was opened")]
    Moved {
        /// Where it was.
        path: PathBuf,
    },
    /// The disk failed to sync or to write, so nobody knows what is on it: the connection is
    /// closed. [`crate::Store::reopen`], replay the log, and see whether the tap is in it.
    #[error("the disk failed under {path:?} (code {code})")]
    DiskFailed {
        /// The file.
        path: PathBuf,
        /// SQLite's extended code.
        code: i32,
    },
    /// A call on a store that is closed after [`StoreError::DiskFailed`]: reopen it first.
    #[error("{path:?} is closed after a failure")]
    Closed {
        /// The file.
        path: PathBuf,
    },
    /// The file system can't carry a write-ahead log.
    #[error("{path:?} got journal mode {mode} instead of a write-ahead log")]
    NoWriteAheadLog {
        /// The file.
        path: PathBuf,
        /// The mode it gave.
        mode: String,
    },
    /// A file is already where one was to be written.
    #[error("{path:?} exists already")]
    Exists {
        /// The file.
        path: PathBuf,
    },
    /// Anything else.
    #[error("{path:?}: {detail} (code {code})")]
    Failed {
        /// The file.
        path: PathBuf,
        /// SQLite's extended code, or the system's.
        code: i32,
        /// Words for developers.
        detail: String,
    },
}

impl StoreError {
    /// Sorts an error of SQLite's.
    pub(crate) fn from_sqlite(path: &Path, error: rusqlite::Error) -> Self {
        let path = path.to_path_buf();
        let (code, detail) = match error {
            rusqlite::Error::SqliteFailure(error, detail) => {
                (error.extended_code, detail.unwrap_or_default())
            }
            // A column that holds what the schema can't hold: not from our hand.
            error @ (rusqlite::Error::InvalidColumnType(..)
            | rusqlite::Error::IntegralValueOutOfRange(..)
            | rusqlite::Error::Utf8Error(..)
            | rusqlite::Error::FromSqlConversionFailure(..)) => {
                return Self::Corrupt {
                    path,
                    damage: Damage::Malformed { detail: error.to_string() },
                };
            }
            error => (0, error.to_string()),
        };
        if code == ffi::SQLITE_IOERR_NOMEM {
            return Self::Failed { path, code: ffi::SQLITE_NOMEM, detail };
        }
        match code & 0xff {
            ffi::SQLITE_READONLY | ffi::SQLITE_PERM | ffi::SQLITE_CANTOPEN => {
                Self::ReadOnly { path }
            }
            ffi::SQLITE_FULL => Self::Full { path },
            ffi::SQLITE_BUSY | ffi::SQLITE_LOCKED => Self::InUse { path },
            ffi::SQLITE_NOTADB => Self::NotAStore { path, found: Foreign::NotSqlite },
            ffi::SQLITE_CORRUPT => Self::Corrupt { path, damage: Damage::Malformed { detail } },
            ffi::SQLITE_IOERR => Self::DiskFailed { path, code },
            _ => Self::Failed { path, code, detail },
        }
    }

    /// Sorts an error of the file system's.
    pub(crate) fn from_io(path: &Path, error: &std::io::Error) -> Self {
        use std::io::ErrorKind;
        let path = path.to_path_buf();
        match error.kind() {
            ErrorKind::PermissionDenied | ErrorKind::ReadOnlyFilesystem => Self::ReadOnly { path },
            ErrorKind::StorageFull | ErrorKind::QuotaExceeded => Self::Full { path },
            ErrorKind::AlreadyExists => Self::Exists { path },
            ErrorKind::NotFound => Self::NoFolder { path },
            // As a bad sector answers (EIO), and whatever has no kind of its own.
            ErrorKind::Other => Self::DiskFailed { path, code: ffi::SQLITE_IOERR },
            _ if error.raw_os_error() == Some(5) => {
                Self::DiskFailed { path, code: ffi::SQLITE_IOERR }
            }
            _ => Self::Failed {
                path,
                code: error.raw_os_error().unwrap_or_default(),
                detail: error.to_string(),
            },
        }
    }
}
