//! Records that go out as a file, and come in.

use barwright_domain::shown::plain;
use barwright_log::form::Wrong;

/// Why a file of records is not taken, or could not be written.
pub fn wrong(wrong: &Wrong) -> String {
    match wrong {
        Wrong::Io(error) => {
            format!("The file can't be read or written: {}.", plain(&error.to_string()))
        }
        Wrong::NoHead(why) => {
            format!("This is no file of records: {}. Nothing was changed.", plain(why))
        }
        Wrong::Newer { .. } => {
            "This file was written by a newer release. Nothing was changed: read \
                                it with that release."
                .to_owned()
        }
        Wrong::Line { line, what } => {
            format!("Line {line} of the file can't be taken: {}. Nothing was changed.", plain(what))
        }
        Wrong::Cut { said, found } => format!(
            "The file says that it has {said} lines of records, and has {found}: it was cut off. \
             Nothing was changed."
        ),
    }
}

/// A file has only a part of somebody's records.
pub fn part_only() -> &'static str {
    "This file has only a part of somebody's records: it can be looked at, but not taken in. Nothing \
     was changed."
}

/// A file has other records than those that are here.
pub fn of_others() -> &'static str {
    "This file has other records than those that are here. Nothing was changed: name another place \
     for them."
}

/// The records here and those of a file went on differently after an entry.
pub fn went_apart(after: u64) -> String {
    format!(
        "Up to entry {after} this file has the records that are here; then both went on, each for \
         itself. Nothing was changed: keep the file, and open it in a place of its own."
    )
}

/// What a file of records came to.
pub fn imported(same: u64, new: u64, sessions: u64, taken: bool) -> String {
    let entries = |count: u64| format!("{count} {}", if count == 1 { "entry" } else { "entries" });
    let sessions = format!("{sessions} {}", if sessions == 1 { "session" } else { "sessions" });
    match (new, taken) {
        (0, _) => format!("Nothing is new: {} here already.", entries(same)),
        (_, false) => format!(
            "New: {}, {sessions}. Here already, the same: {}. Nothing was changed.",
            entries(new),
            entries(same)
        ),
        (_, true) => format!(
            "Taken in: {}, {sessions}. Here already, the same: {}.",
            entries(new),
            entries(same)
        ),
    }
}
