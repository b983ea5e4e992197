//! Records that go out as a file, and come in.

use barwright_domain::shown::plain;
use barwright_log::form::{BadLine, NoHead, Wrong};

use super::date;

/// Why a file of records is not taken, or could not be written.
pub fn wrong(wrong: &Wrong) -> String {
    match wrong {
        Wrong::Io(error) => {
            format!("The file can't be read or written: {}.", plain(&error.to_string()))
        }
        Wrong::NoHead(why) => {
            format!("This is no file of records: {}. Nothing was changed.", plain(&no_head(why)))
        }
        Wrong::Newer { .. } => {
            "This file was written by a newer release. Nothing was changed: read \
                                it with that release."
                .to_owned()
        }
        Wrong::Line { line, what } => {
            format!(
                "Line {line} of the file can't be taken: {}. Nothing was changed.",
                plain(&bad_line(what))
            )
        }
        Wrong::Cut { said, found } => format!(
            "The file says that it has {said} lines of records, and has {found}: it was cut off. \
             Nothing was changed."
        ),
    }
}

/// Why a first line is none of the form's; what a reader of JSON says is technical, in any language.
fn no_head(why: &NoHead) -> String {
    match why {
        NoHead::Empty => "it is empty".to_owned(),
        NoHead::NotJson => "its first line is not JSON of ours".to_owned(),
        NoHead::NotOurs => "its first line does not say so".to_owned(),
        NoHead::OutOfBounds => {
            "its first line names no store of ours, or too many events".to_owned()
        }
        NoHead::Unread(said) => said.clone(),
    }
}

/// Why a line is not taken.
fn bad_line(what: &BadLine) -> String {
    match what {
        BadLine::FileTooLarge => "the file is too large".to_owned(),
        BadLine::TooLong => "a line is too long".to_owned(),
        BadLine::KeyTooLong => "the key is too long".to_owned(),
        BadLine::Gap => "an event is missing before it, or its checksum".to_owned(),
        BadLine::Checksum => "its checksum does not fit".to_owned(),
        BadLine::OutOfOrder => "its number is out of order".to_owned(),
        BadLine::NoKind => "no kind of event".to_owned(),
        BadLine::NoFact => "no fact that is known here".to_owned(),
        BadLine::Time => "its time can't be".to_owned(),
        BadLine::NameTooLong => "a name that is too long".to_owned(),
        BadLine::TooDeep => "too deep".to_owned(),
        BadLine::TextTooLong(bytes) => format!("a text of {bytes} bytes"),
        BadLine::Unread(said) => said.clone(),
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
     for them, or let its sessions come in as history."
}

/// The records here and those of a file went on differently after an entry.
pub fn went_apart(after: u64) -> String {
    format!(
        "Up to entry {after} this file has the records that are here; then both went on, each for \
         itself. Nothing was changed: let its sessions come in as history, or open it in a place of \
         its own."
    )
}

/// What history from elsewhere came to.
pub fn joined(new: u64, same: u64, open: u64, taken: bool) -> String {
    let sessions = |count: u64| match count {
        1 => "1 session".to_owned(),
        _ => format!("{count} sessions"),
    };
    let mut said = match (new, taken) {
        (0, _) => format!("Nothing is new: {} here already.", sessions(same)),
        (_, false) => format!(
            "New in the history: {}. Here already: {}. Nothing was changed.",
            sessions(new),
            sessions(same)
        ),
        (_, true) => format!(
            "Come into the history: {}. Here already: {}. Loads and plan stay as they are here.",
            sessions(new),
            sessions(same)
        ),
    };
    if open > 0 {
        said.push_str(&format!(" Not over there, so left there: {}.", sessions(open)));
    }
    said
}

/// A key that opens what is handed on.
pub fn open() -> (&'static str, &'static str) {
    ("Hand on records", "Hand the records on as a file: to a coach, or all of them")
}

/// Its title.
pub fn title() -> &'static str {
    "Records as a file"
}

/// How much it is.
pub fn handed(sessions: u64, bytes: usize) -> String {
    let sessions =
        if sessions == 1 { "1 session".to_owned() } else { format!("{sessions} sessions") };
    format!("{sessions}, {} kB", bytes.div_ceil(1000))
}

/// What a coach gets.
pub fn for_coach(since: i32) -> (String, &'static str) {
    (
        format!("For your coach, since {}", date::day(since)),
        "Sessions, plan, maxes and loads as they stand. Nothing else unless you say so.",
    )
}

/// With body mass.
pub fn body_mass() -> (String, &'static str) {
    ("Body mass".to_owned(), "What you weighed, and the body's part in loads.")
}

/// With notes.
pub fn notes() -> (String, &'static str) {
    ("Notes".to_owned(), "What you wrote beside sets and exercises.")
}

/// All of them.
pub fn all() -> (String, &'static str) {
    ("All records".to_owned(), "Without a loss, in a form that other programs read too.")
}

/// A key that chooses a line.
pub fn choose() -> (&'static str, &'static str) {
    ("This", "Hand this on")
}

/// A key that puts something in, or takes it out again.
pub fn turn(is_in: bool) -> (&'static str, &'static str) {
    if is_in { ("In it", "Take it out again") } else { ("Not in it", "Put it in") }
}

/// It is too large.
pub fn too_large() -> &'static str {
    "This is too large to be handed on from here. Save a copy of the records instead."
}

/// A file can be opened.
pub fn from_file() -> (&'static str, &'static str) {
    (
        "Records of another phone",
        "Open the file that it handed on, as you open a plan. You see what is new before any of it is \
         taken.",
    )
}

/// Asks for one.
pub fn to_file() -> (&'static str, &'static str) {
    ("From a file", "Take records in from a file")
}

/// It is open no longer.
pub fn closed() -> &'static str {
    "The file is no longer open. Open it again: nothing was changed."
}

/// Takes in what is new.
pub fn take_in() -> (&'static str, &'static str) {
    ("Take in", "Take in what is new in the file")
}

/// Takes sessions in as history.
pub fn as_history() -> (&'static str, &'static str) {
    (
        "As history",
        "Take the file's sessions into the history. Loads and plan stay as they are here",
    )
}

/// Loads that stand otherwise there.
pub fn differing(count: u64) -> (String, String) {
    match count {
        1 => {
            ("1 load differs".to_owned(), "Look at the load that stands otherwise there".to_owned())
        }
        _ => (
            format!("{count} loads differ"),
            format!("Look at the {count} loads that stand otherwise there"),
        ),
    }
}

/// Takes sessions out of the history.
pub fn withdraw(count: u64) -> (&'static str, String) {
    let says = match count {
        1 => "Take the session that came last out of the history again".to_owned(),
        _ => format!("Take the {count} sessions that came last out of the history again"),
    };
    ("Take out again", says)
}

/// They went.
pub fn withdrawn(count: u64) -> String {
    match count {
        1 => "Taken out of the history again: 1 session.".to_owned(),
        _ => format!("Taken out of the history again: {count} sessions."),
    }
}

/// What the records are called that history came from.
pub fn other_records() -> &'static str {
    "Other records"
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
