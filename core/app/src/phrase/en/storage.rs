//! When the file can't be read or written: what is wrong, what was kept and where, what to do.

use barwright_store::{Foreign, StoreError};

use crate::contract::EngineError;

/// An error of the store in words.
pub fn error(error: &StoreError) -> EngineError {
    let at = |path: &std::path::Path| path.display().to_string();
    let (reason, path) = match error {
        StoreError::Newer { path, .. } => {
            return EngineError::NewerFile {
                reason: format!(
                    "{} was written by a newer release. It was left as it is: open it with that \
                     release, or name another file.",
                    at(path)
                ),
            };
        }
        StoreError::ReadOnly { path } => (
            "The file or its folder can't be written. Nothing was recorded, and what is there is \
             untouched: allow writing there, or name another place.",
            path,
        ),
        StoreError::Full { path } => (
            "No room is left on this device. The tap was not recorded; everything before it is \
             kept. Make room and tap again.",
            path,
        ),
        StoreError::InUse { path } => {
            ("Another program has this file open. Close it there first; nothing was changed.", path)
        }
        StoreError::NoFolder { path } => {
            ("There is no folder for this file. Make it, or name another place.", path)
        }
        StoreError::NotAStore { path, found } => (
            match found {
                Foreign::Folder => "This is a folder. Name a file.",
                Foreign::NotSqlite | Foreign::OtherDatabase { .. } => {
                    "This file is not one of ours. It was left as it is: name another."
                }
            },
            path,
        ),
        StoreError::Corrupt { path, .. } => (
            "The file is damaged. It was left as it is; set it aside and what can still be read \
             goes into a new one.",
            path,
        ),
        StoreError::DiskFailed { path, .. } => (
            "The disk failed. The tap may not have been recorded: look at the screen before you \
             tap again. Everything before it is kept.",
            path,
        ),
        StoreError::Closed { path } => ("The file is closed after a failure. Open it again.", path),
        StoreError::NoWriteAheadLog { path, .. } => {
            ("This place can't keep a log that survives a power cut. Name another place.", path)
        }
        StoreError::Exists { path } => {
            ("There is a file of this name already. It was left as it is: name another.", path)
        }
        StoreError::Failed { path, .. } => {
            ("The file could not be used. What is in it is kept.", path)
        }
    };
    storage(reason, at(path))
}

fn storage(reason: &str, kept_at: String) -> EngineError {
    EngineError::Storage { reason: reason.to_owned(), kept_at }
}

/// An event in the log that this release can't read.
pub fn unreadable_event(seq: u64) -> EngineError {
    EngineError::NewerFile {
        reason: format!(
            "Entry {seq} of the log was written by a newer release. The file was left as it is: \
             open it with that release."
        ),
    }
}

/// The engine was shut down.
pub fn closed() -> EngineError {
    EngineError::Closed { reason: "This was shut down. Open it again.".to_owned() }
}

/// A defect of ours.
pub fn broken(what: &str) -> EngineError {
    EngineError::Broken {
        reason: "Something broke inside. What was recorded is kept, and you can go on.".to_owned(),
        report: format!("barwright {}: {what}", env!("CARGO_PKG_VERSION")),
    }
}
