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
            "The file is damaged. It was left as it is. Recovering sets it aside and reads what is \
             good into a new one.",
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

/// There is no file to recover.
pub fn no_file(path: &str) -> String {
    format!("There is no file {path}. Nothing was made.")
}

/// Nothing is wrong with the file that was to be recovered.
pub fn nothing_damaged() -> String {
    "Nothing is wrong with this file; it was left as it is.".to_owned()
}

/// What was read back from a damaged file; `beyond` entries after the damage can't be joined on.
pub fn recovered(aside: &str, kept: u64, beyond: u64) -> String {
    let kept = match kept {
        0 => "Nothing in it could be read: the new file is empty.".to_owned(),
        1 => "Its first entry is in the new file.".to_owned(),
        _ => format!("Its first {kept} entries are in the new file, without a gap."),
    };
    let lost = match beyond {
        0 => String::new(),
        1 => " One later entry does not join on.".to_owned(),
        _ => format!(" {beyond} later entries do not join on."),
    };
    format!("The damaged file is kept as {aside}. {kept}{lost}")
}

/// The damaged file was set aside, and then the new one failed.
pub fn kept_aside(found: &StoreError, aside: &std::path::Path) -> EngineError {
    let aside = aside.display().to_string();
    let why = match error(found) {
        EngineError::Storage { reason, .. } | EngineError::NewerFile { reason } => reason,
        other => other.to_string(),
    };
    storage(&format!("The damaged file is kept as {aside}, but the new one failed. {why}"), aside)
}
