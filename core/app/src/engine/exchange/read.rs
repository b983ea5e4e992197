//! In, to be looked at: a file of the lossless form as a store in memory.

use std::io::BufRead;

use barwright_domain::desk::Desk;
use barwright_domain::owners::Owner;
use barwright_log::form::{BadLine, Head, Line, Reader, Wrong};
use barwright_log::{decode_account, decode_standing_desk};
use barwright_store::{ABSENT, Event, Stamp, Store};

use super::super::codec::VERSION;
use super::super::core::Core;
use super::super::derive::Anew;
use super::super::standing::DESK_KEY;
use crate::fault::{Fault, NotTaken, Refused};
use crate::locale::Locale;

/// What a file has.
#[derive(Debug)]
pub(super) struct File {
    pub(super) head: Head,
    /// Its events under their own numbers, each with the checksum that it says.
    pub(super) rows: Vec<(Event, Option<u32>)>,
    /// The desk as it stood, in a file that says so.
    pub(super) desk: Option<Desk>,
}

impl File {
    /// As [`File::read`], of all of a log: a part of one is refused.
    pub(super) fn read_whole(from: impl BufRead) -> Result<Self, Fault> {
        let file = Self::read(from)?;
        if file.head.is_whole() { Ok(file) } else { Err(Refused::NotTaken(NotTaken::Part).into()) }
    }

    /// Reads all of it, each line held to its bounds; of a whole log each checksum, too.
    pub(super) fn read(from: impl BufRead) -> Result<Self, Fault> {
        let reader = Reader::new(from)?;
        let head = reader.head().clone();
        let (mut rows, mut desk, mut before) = (Vec::new(), None, 0);
        let wrong = |line: u64, what: BadLine| Wrong::Line { line, what };
        // The head is the first line.
        for (nth, line) in (2..).zip(reader) {
            match line? {
                Line::Event(line) => {
                    let row = Event {
                        seq: line.seq,
                        tap: line.tap,
                        kind: line.kind,
                        version: line.version,
                        at: Stamp { wall_ms: line.wall_ms, offset_minutes: line.offset_min },
                        body: Box::<str>::from(line.body).into_string(),
                    };
                    if head.is_whole() {
                        before = row.sum(before);
                        if line.checksum != Some(before) {
                            return Err(wrong(nth, BadLine::Checksum).into());
                        }
                    }
                    rows.push((row, line.checksum));
                }
                Line::Fact(fact) => {
                    let desk = desk.get_or_insert_with(Desk::default);
                    let taken = take_fact(desk, &fact.key, fact.body.get());
                    taken.ok_or_else(|| wrong(nth, BadLine::NoFact))?;
                }
            }
        }
        Ok(Self { head, rows, desk })
    }
}

/// The desk comes first, then its owners.
fn take_fact(desk: &mut Desk, key: &str, body: &str) -> Option<()> {
    if key == DESK_KEY {
        let owners = std::mem::take(&mut desk.owners);
        *desk = decode_standing_desk(body).ok()?;
        desk.owners = owners;
        return Some(());
    }
    let owner = Owner::of_name(key.strip_prefix("owner:")?)?;
    desk.owners.put(owner, decode_account(body).ok()?);
    Some(())
}

/// A core in memory with what a file has.
pub(super) fn read(from: impl BufRead, locale: Locale) -> Result<Core, Fault> {
    holding(File::read(from)?, locale)
}

/// As [`read`], of a file that was read.
pub(super) fn holding(file: File, locale: Locale) -> Result<Core, Fault> {
    Core::load(in_memory(file)?, locale)
}

/// Events that are not in the file leave their numbers to placeholders, one for all between two that
/// are, so that everything is named as it is where the file is from.
fn in_memory(file: File) -> Result<Store, Fault> {
    let mut store = Store::in_memory()?;
    let mut rows: Vec<(Event, u32)> = Vec::with_capacity(file.rows.len());
    let mut sum = 0;
    let mut put = |row: Event| {
        sum = row.sum(sum);
        rows.push((row, sum));
    };
    let mut next = 1;
    for (row, _) in file.rows {
        if next < row.seq {
            put(placeholder(row.seq - 1, row.at));
        }
        next = row.seq.saturating_add(1);
        put(row);
    }
    let mut anew = Anew::of_rows(rows.iter().map(|(row, _)| row))?;
    anew.stands_as(file.desk);
    store.take_in(Some(file.head.store), &rows, &mut anew)?;
    Ok(store)
}

fn placeholder(seq: u64, at: Stamp) -> Event {
    Event { seq, tap: seq, kind: ABSENT.to_owned(), version: VERSION, at, body: "{}".to_owned() }
}
