//! The records as lines of JSON, to be carried elsewhere without a loss.
//!
//! The first line is the [`Head`]; each line after it is one event of the log, or one fact as it
//! stood. `docs/records-format.md` specifies the form. A file of it may come from anyone: the reader
//! holds every line to bounds, and takes nothing that the log could not have written.

use std::io::{self, BufRead, Read, Write};

use serde::{Deserialize, Serialize};
use serde_json::Value;
use serde_json::value::RawValue;

use crate::codec::{Unreadable, decode_desk, decode_session};

/// The form's version.
pub const FORM: u32 = 1;
/// Bytes of a line, at the most.
pub const MOST_LINE: u64 = 4 << 20;
/// Bytes of a file, at the most.
pub const MOST_FILE: u64 = 1 << 30;
/// Events of a file, at the most: some centuries of training.
pub const MOST_EVENTS: u64 = 5_000_000;
/// How deep objects and lists of a body may lie in each other. Ours are less than half as deep.
pub const MOST_DEEP: usize = 64;
/// Bytes of a text in a body, at the most; those of whole files apart.
const MOST_TEXT: usize = 16 << 10;
/// Bytes of a file's text within a body: a plan's, a gym's, a draft's.
const MOST_FILE_TEXT: usize = 1 << 20;

/// Whether a text means to be such a file.
#[must_use]
pub fn is_meant(text: &str) -> bool {
    text.starts_with("{\"barwright_records\"")
}

/// What was left out of a file on purpose.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum LeftOut {
    /// Body mass, and the body's part of loads.
    BodyMass,
    /// Notes.
    Notes,
}

/// The first line.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Head {
    /// [`FORM`].
    pub barwright_records: u32,
    /// The id of the store that they are from.
    pub store: String,
    /// How many lines are events: fewer tell of a file that was cut off.
    pub events: u64,
    /// How many lines are facts as they stood.
    #[serde(default, skip_serializing_if = "is_none")]
    pub facts: u64,
    /// The number of the last event of the store.
    pub last: u64,
    /// Only sessions from this local date on, in days since 1970-01-01; none is all of the log.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub since: Option<i32>,
    /// What was left out on purpose.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub left_out: Vec<LeftOut>,
}

#[allow(clippy::trivially_copy_pass_by_ref, reason = "serde asks so; on the web it is not small")]
const fn is_none(count: &u64) -> bool {
    *count == 0
}

impl Head {
    /// Whether the file has the whole log, each event as it was written.
    #[must_use]
    pub fn is_whole(&self) -> bool {
        self.since.is_none() && self.left_out.is_empty() && self.events == self.last
    }
}

/// An event of the log, with the columns of the table `event`.
#[derive(Debug, Clone, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct EventLine {
    /// Its number in the log.
    pub seq: u64,
    /// Number of the first event of its tap.
    pub tap: u64,
    /// `session` or `desk`.
    pub kind: String,
    /// Version of the body.
    pub version: u32,
    /// Wall time, milliseconds since 1970-01-01T00:00Z.
    pub wall_ms: i64,
    /// Minutes that local time was ahead of UTC.
    pub offset_min: i32,
    /// Its checksum in the log it is from; in a file with events left out there is none.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub checksum: Option<u32>,
    /// The body, byte for byte.
    pub body: Box<RawValue>,
}

/// A fact as it stood when the file was written, with the columns of the table `standing`.
#[derive(Debug, Clone, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct FactLine {
    /// Its key.
    pub key: String,
    /// Its body.
    pub body: Box<RawValue>,
}

/// A line after the first.
#[derive(Debug, Clone)]
pub enum Line {
    /// An event.
    Event(EventLine),
    /// A fact.
    Fact(FactLine),
}

/// What is wrong with a file of the form, in technical words.
#[derive(Debug, thiserror::Error)]
pub enum Wrong {
    /// It can't be read.
    #[error("can't be read: {0}")]
    Io(#[from] io::Error),
    /// It is no such file at all.
    #[error("no file of records: {0}")]
    NoHead(NoHead),
    /// A later version of the form.
    #[error("written in version {found} of the form; {FORM} is the latest that is read here")]
    Newer {
        /// The version.
        found: u64,
    },
    /// A line that can't be.
    #[error("line {line}: {what}")]
    Line {
        /// Its number, from 1.
        line: u64,
        /// What is wrong.
        what: BadLine,
    },
    /// Its end is missing, or there is more than it says.
    #[error("says that it has {said} lines of records, and has {found}")]
    Cut {
        /// By its head.
        said: u64,
        /// There are.
        found: u64,
    },
}

/// Why a first line is none of the form's.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum NoHead {
    /// There is none.
    #[error("it is empty")]
    Empty,
    /// It can't be read.
    #[error("its first line is not JSON of ours")]
    NotJson,
    /// It has no version of the form.
    #[error("its first line does not say so")]
    NotOurs,
    /// It lacks something, or has it otherwise: in the words of who reads JSON.
    #[error("{0}")]
    Unread(String),
    /// The store's name or the counts are beyond their bounds.
    #[error("its first line names no store of ours, or too many events")]
    OutOfBounds,
}

/// Why a line after the first is not taken.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum BadLine {
    /// The file has more bytes than any of ours.
    #[error("the file is too large")]
    FileTooLarge,
    /// It has more bytes than any of ours.
    #[error("a line is too long")]
    TooLong,
    /// A fact's key is longer than any of ours.
    #[error("the key is too long")]
    KeyTooLong,
    /// It can't be read: in the words of who reads JSON.
    #[error("{0}")]
    Unread(String),
    /// The event before it is not there, or it has no checksum.
    #[error("an event is missing before it, or its checksum")]
    Gap,
    /// Its checksum is not that of the log up to it.
    #[error("its checksum does not fit")]
    Checksum,
    /// Its number, or its tap's, can't stand here.
    #[error("its number is out of order")]
    OutOfOrder,
    /// It is of no kind that is known here.
    #[error("no kind of event")]
    NoKind,
    /// A fact that is not known here, or can't be read.
    #[error("no fact that is known here")]
    NoFact,
    /// Its reading can't be.
    #[error("its time can't be")]
    Time,
    /// A text in it has so many bytes, more than can be entered.
    #[error("a text of {0} bytes")]
    TextTooLong(usize),
    /// A name in it is longer than any of ours.
    #[error("a name that is too long")]
    NameTooLong,
    /// It lies deeper in itself than anything of ours.
    #[error("too deep")]
    TooDeep,
}

/// Writes a value as a line.
///
/// # Errors
/// What writing answers.
pub fn write_line<T: Serialize>(to: &mut impl Write, line: &T) -> io::Result<()> {
    serde_json::to_writer(&mut *to, line)?;
    to.write_all(b"\n")
}

/// Reads a file of the form line by line, each held to the bounds.
#[derive(Debug)]
pub struct Reader<R> {
    from: R,
    /// The line at hand, kept so that the next finds room.
    text: Vec<u8>,
    head: Head,
    line: u64,
    bytes: u64,
    events: u64,
    facts: u64,
    /// Of the last event.
    seq: u64,
    over: bool,
}

impl<R: BufRead> Reader<R> {
    /// Reads the first line.
    ///
    /// # Errors
    /// [`Wrong`].
    pub fn new(mut from: R) -> Result<Self, Wrong> {
        let mut text = Vec::new();
        if !next_line(&mut from, 1, &mut text)? {
            return Err(Wrong::NoHead(NoHead::Empty));
        }
        let head: Value =
            serde_json::from_slice(&text).map_err(|_| Wrong::NoHead(NoHead::NotJson))?;
        match head.get("barwright_records").and_then(Value::as_u64) {
            None | Some(0) => return Err(Wrong::NoHead(NoHead::NotOurs)),
            Some(found) if found > u64::from(FORM) => return Err(Wrong::Newer { found }),
            Some(_) => {}
        }
        let head: Head = serde_json::from_value(head)
            .map_err(|error| Wrong::NoHead(NoHead::Unread(error.to_string())))?;
        let named = (1..=64).contains(&head.store.len())
            && head.store.bytes().all(|byte| byte.is_ascii_hexdigit() || byte == b'-');
        let counted = head.events <= MOST_EVENTS
            && head.facts <= 10_000
            && head.events <= head.last
            && head.last <= MOST_EVENTS;
        if !named || !counted {
            return Err(Wrong::NoHead(NoHead::OutOfBounds));
        }
        let bytes = text.len() as u64;
        Ok(Self { from, text, head, line: 1, bytes, events: 0, facts: 0, seq: 0, over: false })
    }

    /// The first line.
    pub const fn head(&self) -> &Head {
        &self.head
    }

    fn read(&mut self) -> Result<Option<Line>, Wrong> {
        if !next_line(&mut self.from, self.line + 1, &mut self.text)? {
            let (said, found) = (self.head.events + self.head.facts, self.events + self.facts);
            return if said == found { Ok(None) } else { Err(Wrong::Cut { said, found }) };
        }
        let text = &self.text;
        self.line += 1;
        self.bytes = self.bytes.saturating_add(text.len() as u64);
        let line = self.line;
        let wrong = |what: BadLine| Wrong::Line { line, what };
        let unread = |error: serde_json::Error| wrong(BadLine::Unread(error.to_string()));
        if self.bytes > MOST_FILE {
            return Err(wrong(BadLine::FileTooLarge));
        }
        // Which it is: only facts have a key, and it comes first.
        if text.starts_with(b"{\"key\"") {
            let fact: FactLine = serde_json::from_slice(text).map_err(unread)?;
            if fact.key.len() > 200 {
                return Err(wrong(BadLine::KeyTooLong));
            }
            longest_text(fact.body.get()).map_err(wrong)?;
            self.facts += 1;
            return Ok(Some(Line::Fact(fact)));
        }
        let event: EventLine = serde_json::from_slice(text).map_err(unread)?;
        check(&event, self.seq, self.head.last).map_err(wrong)?;
        if self.head.is_whole() && (event.checksum.is_none() || event.seq != self.seq + 1) {
            return Err(wrong(BadLine::Gap));
        }
        self.seq = event.seq;
        self.events += 1;
        Ok(Some(Line::Event(event)))
    }
}

impl<R: BufRead> Iterator for Reader<R> {
    type Item = Result<Line, Wrong>;

    fn next(&mut self) -> Option<Self::Item> {
        if self.over {
            return None;
        }
        let read = self.read();
        self.over = !matches!(read, Ok(Some(_)));
        read.transpose()
    }
}

/// The next line, of that number, without its end; false at the end of the file.
fn next_line(from: &mut impl BufRead, line: u64, text: &mut Vec<u8>) -> Result<bool, Wrong> {
    text.clear();
    from.by_ref().take(MOST_LINE + 1).read_until(b'\n', text)?;
    if text.is_empty() {
        return Ok(false);
    }
    if text.len() as u64 > MOST_LINE {
        return Err(Wrong::Line { line, what: BadLine::TooLong });
    }
    while matches!(text.last(), Some(b'\n' | b'\r')) {
        text.pop();
    }
    Ok(true)
}

/// Holds an event to what the log could have written, behind the event numbered `before`.
fn check(event: &EventLine, before: u64, last: u64) -> Result<(), BadLine> {
    if event.seq <= before || event.seq > last || event.tap == 0 || event.tap > event.seq {
        return Err(BadLine::OutOfOrder);
    }
    let body = event.body.get();
    let longest = longest_text(body)?;
    let (version, wall_ms, offset) = (event.version, event.wall_ms, event.offset_min);
    let unreadable = |error: Unreadable| BadLine::Unread(error.to_string());
    let reading = match event.kind.as_str() {
        "session" => decode_session(version, body, wall_ms, offset).map_err(unreadable)?.0,
        "desk" => decode_desk(version, body, wall_ms, offset).map_err(unreadable)?.0,
        _ => return Err(BadLine::NoKind),
    };
    if !reading.is_sound() {
        return Err(BadLine::Time);
    }
    // Written with its escapes a text is never shorter: hardly a body has to be taken apart for them.
    if longest <= MOST_TEXT {
        return Ok(());
    }
    let value: Value =
        serde_json::from_str(body).map_err(|error| BadLine::Unread(error.to_string()))?;
    texts(&value, "")
}

/// Texts are no longer than what is entered can be; masses are held to their bounds by the codec.
fn texts(value: &Value, key: &str) -> Result<(), BadLine> {
    match value {
        Value::String(text) => {
            let most = if key == "text" { MOST_FILE_TEXT } else { MOST_TEXT };
            if text.len() > most {
                return Err(BadLine::TextTooLong(text.len()));
            }
            Ok(())
        }
        Value::Array(all) => all.iter().try_for_each(|one| texts(one, key)),
        Value::Object(all) => all.iter().try_for_each(|(key, one)| {
            if key.len() > MOST_TEXT {
                return Err(BadLine::NameTooLong);
            }
            texts(one, key)
        }),
        Value::Null | Value::Bool(_) | Value::Number(_) => Ok(()),
    }
}

/// The bytes of the longest text of a body, with its escapes; how deep it goes is told on the way,
/// before any of it is read.
fn longest_text(body: &str) -> Result<usize, BadLine> {
    let (mut deep, mut longest, mut rest) = (0_usize, 0, body.as_bytes().iter());
    while let Some(byte) = rest.next() {
        match byte {
            b'"' => {
                let text = rest.as_slice().len();
                while let Some(byte) = rest.next() {
                    match byte {
                        b'"' => break,
                        // What comes after it ends no text.
                        b'\\' => _ = rest.next(),
                        _ => {}
                    }
                }
                longest = longest.max(text - rest.as_slice().len());
            }
            b'{' | b'[' => {
                deep += 1;
                if deep > MOST_DEEP {
                    return Err(BadLine::TooDeep);
                }
            }
            b'}' | b']' => deep = deep.saturating_sub(1),
            _ => {}
        }
    }
    Ok(longest)
}
