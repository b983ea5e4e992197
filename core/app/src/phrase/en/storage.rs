//! When the file can't be read or written: what is wrong, what was kept and where, what to do.

use barwright_store::{Foreign, Kept, Salvage, Stamp, StoreError};
use chrono::Datelike;

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
            "The file or its folder can't be written, so it can only be looked at. Nothing was \
             recorded, and what is there is untouched: allow writing there, or name another place.",
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
        StoreError::NotThere { path } => ("There is no such file. Nothing was changed.", path),
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
        StoreError::Spoiled { path, .. } => (
            "What is worked out from the records did not fit them, and is being made anew. What was \
             recorded is kept.",
            path,
        ),
        StoreError::Moved { path } => (
            "This file was moved, replaced or written over by something else while it was open. The \
             tap was not recorded. What was recorded before is in the file that was opened, \
             wherever it is now: put it back, or open it there.",
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
        reason:
            "Something broke inside. What was recorded is kept, and you can go on. If it comes \
                 again, make a copy of the records and have them checked."
                .to_owned(),
        report: format!("For the makers: “barwright {}: {what}”", env!("CARGO_PKG_VERSION")),
    }
}

/// There is no file to recover.
pub fn no_file(path: &str) -> String {
    format!("There is no file {path}. Nothing was made.")
}

/// Nothing is wrong with the file that was to be recovered.
pub fn nothing_damaged(mended: u64) -> String {
    match mended {
        0 => "Nothing is wrong with this file; it was left as it is.".to_owned(),
        _ => {
            "No record in this file is damaged. What is worked out from them did not fit, and was \
              made anew."
                .to_owned()
        }
    }
}

/// What was read back from a damaged file.
pub fn recovered(aside: &str, read: &Salvage) -> String {
    let kept = match read.kept {
        1 => "Its first entry is in the new file.".to_owned(),
        kept if kept == read.last => format!("All its {kept} entries are in the new file."),
        kept => format!("Its first {kept} entries are in the new file, without a gap."),
    };
    let mended = match read.mended {
        0 => String::new(),
        1 => " One of them had a wrong bit, which its checksum put right.".to_owned(),
        mended => format!(" {mended} of them had a wrong bit, which their checksums put right."),
    };
    let until = read.kept_at.map(|at| format!(", recorded after {}", moment(at)));
    let lost = match read.last - read.kept {
        0 => String::new(),
        lost => {
            let what = if lost == 1 { "One later entry is" } else { "Later entries are" };
            let many = if lost == 1 { String::new() } else { format!(" ({lost} or more)") };
            format!(" {what} not{many}{}.", until.unwrap_or_default())
        }
    };
    let beyond = match (read.beyond, read.beyond_at) {
        (0, _) | (_, None) => String::new(),
        (1, Some(at)) => format!(
            " One of those can still be read in the damaged file, but does not join on; it was \
             recorded on {}.",
            moment(at)
        ),
        (beyond, Some(at)) => format!(
            " {beyond} of those can still be read in the damaged file, but do not join on; the last \
             was recorded on {}.",
            moment(at)
        ),
    };
    format!("The damaged file is kept as {aside}. {kept}{mended}{lost}{beyond}")
}

/// A backup was put in the place of the records; what was there lies `aside`.
pub fn restored(entries: u64, aside: Option<&str>) -> String {
    let entries = counted(entries, "entry", "entries");
    let aside = aside.map(|aside| format!(" What was there is kept as {aside}."));
    format!("{entries}, all good, are in its place.{}", aside.unwrap_or_default())
}

/// What a folder of backups has after one was kept there, or was not due.
pub fn kept_backup(kept: &Kept) -> String {
    let made = match &kept.made {
        Some((path, verified)) => format!(
            "{}: {}, a whole copy.",
            path.display(),
            counted(verified.events, "entry", "entries")
        ),
        None => {
            let last = kept.days.last().map(|day| super::date::day(*day)).unwrap_or_default();
            format!("No backup is due: the last is of {last}.")
        }
    };
    let removed = match kept.removed {
        0 => String::new(),
        removed => {
            format!(" {} removed.", counted(removed.into(), "older one was", "older ones were"))
        }
    };
    format!("{made}{removed} {} kept.", counted(kept.days.len() as u64, "backup is", "backups are"))
}

/// The day of a tap, where it was made.
fn moment(at: Stamp) -> String {
    let local = at.wall_ms.saturating_add(i64::from(at.offset_minutes) * 60_000);
    let day = super::date::day(i32::try_from(local.div_euclid(86_400_000)).unwrap_or(0));
    let year = chrono::DateTime::from_timestamp_millis(local).map(|date| date.year());
    format!("{day} {}", year.unwrap_or_default())
}

/// What a whole file was looked at for.
pub fn examined(entries: u64, derived: u64, mended: u64, sealed: u64) -> String {
    let entries = counted(entries, "entry", "entries");
    let derived = counted(derived, "row", "rows");
    let mended = match mended {
        0 => String::new(),
        1 => " One or more of those rows did not fit and were made anew.".to_owned(),
        mended => format!(" {mended} of those rows did not fit and were made anew."),
    };
    format!(
        "{entries}, all good. Looked at: the file's structure, each entry against its checksum and \
         the one before it, and {derived} worked out from them, each against what they come to.\
         {mended} A loss of any entry up to number {sealed} would be known."
    )
}

fn counted(count: u64, one: &str, many: &str) -> String {
    format!("{count} {}", if count == 1 { one } else { many })
}

/// Nothing at all could be read of a damaged file, which was moved out of the way.
pub fn nothing_read(aside: &std::path::Path, beyond: u64) -> EngineError {
    let found = match beyond {
        0 => "Nothing in this file could be read.".to_owned(),
        _ => format!("{beyond} entries of this file can be read, but not the first ones."),
    };
    let reason = format!(
        "{found} It was moved and kept as it is. A copy of it from before may be put in its place; \
         otherwise opening begins with nothing."
    );
    storage(&reason, aside.display().to_string())
}
