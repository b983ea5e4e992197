//! In, from a table of any make: its cells, what its columns are guessed to be, and its rows as
//! sessions.

use std::collections::BTreeSet;

use barwright_domain::columns::{
    BadRow, Columns, Guess, Lifted, Reader, Separator, Sessions, bounds,
};
use barwright_domain::history::Brought;
use barwright_domain::session::Reading;
use barwright_domain::volume::EASIEST_HARD;
use barwright_store::{Event, Stamp};
use csv::ByteRecord;

use super::super::Engine;
use super::super::came;
use super::super::codec::VERSION;
use super::super::core::Core;
use super::bring::{self, Joined};
use crate::contract::{self, EngineError, FileFault};
use crate::fault::{Fault, NoTable, Refused};
use crate::phrase::Words;

/// Rows that are left out and told one by one.
const TOLD: usize = 1_000;
/// Rows by which it is told which separator a table has.
const TRIED: usize = 50;
/// Bytes by which it is told that a file is no table.
const BEGINNING: usize = 1_024;
/// Rows from one report of how far it is to the next.
const REPORTED: u64 = 2_000;

/// What a table of old records comes to.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct OldTable {
    /// Sessions in it.
    pub sessions: usize,
    /// Sets of those.
    pub sets: usize,
    /// Rows that are left out, each by its line and with the reason; the first thousand.
    pub left_out: Vec<(u64, BadRow)>,
    /// How many rows are left out.
    pub left_out_in_all: usize,
    /// Sessions that came from the table before and stand otherwise in it now: they stay as they came.
    pub changed: usize,
    /// Days of new sessions on which the history has another session already.
    pub shared_days: usize,
    /// What they come to beside the history.
    pub joined: Joined,
}

impl OldTable {
    /// It in the words of a language, a line a thing.
    #[must_use]
    pub fn said(&self, words: Words) -> String {
        let say = words.columns();
        let mut lines = vec![say.read(self.sessions, self.sets, self.left_out_in_all)];
        lines.extend(self.left_out.iter().map(|(line, why)| say.left_out(*line, why)));
        let more = self.left_out_in_all.saturating_sub(self.left_out.len());
        lines.extend((more > 0).then(|| say.more_left_out(more)));
        lines.push(self.joined.said(words));
        lines.extend((self.changed > 0).then(|| say.changed(self.changed)));
        lines.extend((self.shared_days > 0).then(|| say.shared_days(self.shared_days)));
        lines.join("\n")
    }
}

impl Engine {
    /// A file that says what the columns of a table of old sets are, guessed from the table: a CSV of
    /// any make, at most [`bounds::BYTES`]. Beside each line stands what it was guessed from; what
    /// can't be guessed is left to a person. `name` is what the table is called. Nothing is recorded.
    ///
    /// # Errors
    /// [`EngineError::Refused`] for a table that is too large or has nothing in it.
    pub fn guess_columns(
        &self,
        table: &[u8],
        name: &str,
        reading: contract::Reading,
    ) -> Result<String, EngineError> {
        let at = Reading::from(reading);
        self.with(|core| guess(core, table, name, &at))
    }

    /// What is wrong in a file of columns, each in its place; nothing where it is in order.
    ///
    /// # Errors
    /// As [`Engine::view`].
    pub fn check_columns(&self, text: &str) -> Result<Vec<FileFault>, EngineError> {
        self.with(|core| Ok(faults(core, text)))
    }

    /// The sets of an older table come into the history as sessions, each once, by a file that says
    /// what its columns are (`docs/columns-format.md`); loads and plan stay as they are here. All in
    /// one transaction, or nothing; with `look_only` it is only said. `seen` is told now and then how
    /// many bytes of the table are read.
    ///
    /// # Errors
    /// [`EngineError::Refused`] for a file of columns with faults, and for a table that is too large,
    /// has nothing in it or lacks a column; [`EngineError::Storage`] when it can't be written. Nothing
    /// changed then.
    pub fn import_table(
        &self,
        table: &[u8],
        columns: &str,
        reading: contract::Reading,
        look_only: bool,
        seen: &dyn Fn(u64),
    ) -> Result<OldTable, EngineError> {
        let at = Reading::from(reading);
        self.with(|core| take_in(core, table, columns, &at, look_only, seen))
    }
}

/// A row: its line, and its cells.
type Row<'r> = (u64, Result<Vec<&'r str>, BadRow>);

/// The rows of a table, a cell a text.
struct Rows<'t> {
    table: &'t [u8],
    reader: csv::Reader<&'t [u8]>,
    record: ByteRecord,
    rows: u64,
    /// Up to which byte lines are counted, and how many began.
    counted: usize,
    lines: u64,
}

impl<'t> Rows<'t> {
    fn of(table: &'t [u8], separator: Separator) -> Self {
        let mut builder = csv::ReaderBuilder::new();
        builder.delimiter(separator.byte()).has_headers(false).flexible(true);
        let reader = builder.from_reader(table);
        Self { table, reader, record: ByteRecord::new(), rows: 0, counted: 0, lines: 1 }
    }

    /// The line of a row that begins at a byte, or behind the ends of lines that stand there: the
    /// library counts a line late where two characters end it.
    fn line_at(&mut self, byte: usize) -> u64 {
        let byte_at = |at: usize| self.table.get(at).copied();
        let ends = |at: usize| match byte_at(at) {
            Some(b'\n') => true,
            Some(b'\r') => byte_at(at + 1) != Some(b'\n'),
            _ => false,
        };
        let mut at = self.counted;
        while at < byte.min(self.table.len()) || matches!(byte_at(at), Some(b'\n' | b'\r')) {
            self.lines += u64::from(ends(at));
            at += 1;
        }
        self.counted = at;
        self.lines
    }

    /// The next row with its line; cells beyond those that are read are left out.
    fn next(&mut self) -> Result<Option<Row<'_>>, Fault> {
        // Read from memory, and of any length of row: nothing of it can fail.
        let more = self.reader.read_byte_record(&mut self.record);
        if !more.map_err(|_| Fault::Broken("a table could not be taken apart"))? {
            return Ok(None);
        }
        self.rows += 1;
        if self.rows > bounds::ROWS {
            return Err(Refused::Table(NoTable::TooLarge).into());
        }
        let byte = self.record.position().map_or(0, csv::Position::byte);
        let line = self.line_at(usize::try_from(byte).unwrap_or(usize::MAX));
        let cells = self.record.iter().take(bounds::CELLS).map(std::str::from_utf8);
        let cells: Result<Vec<&str>, _> = cells.collect();
        Ok(Some((line, cells.map_err(|_| BadRow::NotText))))
    }
}

/// Nothing of a table that is too large is read, nor of a file that is none: no text has a nothing
/// among its first bytes, but for one of two bytes a letter.
fn bounded(table: &[u8]) -> Result<(), Fault> {
    let why = match table {
        _ if u64::try_from(table.len()).is_ok_and(|size| size > bounds::BYTES) => NoTable::TooLarge,
        _ if table.iter().take(BEGINNING).any(|byte| *byte == 0) => NoTable::NotText,
        _ => return Ok(()),
    };
    Err(Refused::Table(why).into())
}

/// The separator by which most of the first rows have the same number of cells; of equals the one
/// that makes most cells.
fn separator(table: &[u8]) -> Result<Separator, Fault> {
    let mut best = (0, 0, Separator::Comma);
    for separator in Separator::ALL {
        let mut rows = Rows::of(table, separator);
        let mut widths: Vec<usize> = Vec::new();
        while let Some((_, cells)) = rows.next()?
            && widths.len() < TRIED
        {
            widths.push(cells.map_or(0, |cells| cells.len()));
        }
        let alike = |width: usize| widths.iter().filter(|other| **other == width).count();
        let most = widths.iter().filter(|width| **width > 1).map(|width| (alike(*width), *width));
        if let Some((alike, width)) = most.max()
            && (alike, width) > (best.0, best.1)
        {
            best = (alike, width, separator);
        }
    }
    Ok(best.2)
}

/// A file of columns as it is guessed from a table.
fn guess(core: &Core, table: &[u8], name: &str, at: &Reading) -> Result<String, Fault> {
    bounded(table)?;
    let separator = separator(table)?;
    let mut rows = Rows::of(table, separator);
    let mut first: Option<Vec<String>> = None;
    let mut others: Vec<Vec<String>> = Vec::new();
    while others.len() < bounds::LOOKED_AT
        && let Some((_, cells)) = rows.next()?
    {
        let cells = match cells {
            Ok(cells) => cells,
            Err(_) if first.is_none() => return Err(Refused::Table(NoTable::NotText).into()),
            // What is no text shows when the rows are read.
            Err(_) => continue,
        };
        let cells = cells.into_iter().map(str::to_owned).collect();
        match first {
            None => first = Some(cells),
            Some(_) => others.push(cells),
        }
    }
    let first = first.ok_or(Refused::Table(NoTable::Empty))?;
    let (catalogue, words) = (&core.held.catalogue, core.held.locale.words());
    let guess = Guess::of(separator, &first, &others, catalogue, at.local_day());
    Ok(guess.write(name, catalogue, &|note| words.columns().note(note)))
}

/// What is wrong in a file of columns.
fn faults(core: &Core, text: &str) -> Vec<FileFault> {
    let words = core.held.locale.words();
    let faults = Columns::read(text, &core.held.catalogue).err().unwrap_or_default();
    faults.iter().map(|one| words.faults().in_place(one, text)).collect()
}

/// Brings the sessions of a table that are new.
fn take_in(
    core: &mut Core,
    table: &[u8],
    columns: &str,
    at: &Reading,
    look_only: bool,
    seen: &dyn Fn(u64),
) -> Result<OldTable, Fault> {
    let (mut sessions, mut found) = sessions(core, table, columns, at, seen)?;
    let here = came::here(&core.store)?;
    let known = |one: &Brought| {
        let (from, session, sum) = one.identity();
        here.contains(&(from.to_owned(), session, sum))
    };
    // One that has its number and is another would be there twice.
    let numbers: BTreeSet<(&str, u64)> =
        here.iter().map(|(from, session, _)| (from.as_str(), *session)).collect();
    let all = sessions.len();
    sessions.retain(|one| known(one) || !numbers.contains(&(one.from.as_str(), one.row.session)));
    found.changed = all - sessions.len();
    let days: BTreeSet<i32> =
        core.store.history()?.last_sessions(None, u32::MAX)?.iter().map(|row| row.day).collect();
    let new: BTreeSet<i32> =
        sessions.iter().filter(|one| !known(one)).map(|one| one.row.day).collect();
    found.shared_days = new.intersection(&days).count();
    found.joined = bring::bring(core, here, sessions, at, look_only)?;
    Ok(found)
}

/// The sessions of a table, and what is to be said of it. `seen` is told now and then how many of its
/// bytes are read.
fn sessions(
    core: &Core,
    table: &[u8],
    columns: &str,
    at: &Reading,
    seen: &dyn Fn(u64),
) -> Result<(Vec<Brought>, OldTable), Fault> {
    bounded(table)?;
    let catalogue = &core.held.catalogue;
    let columns = Columns::read(columns, catalogue)
        .map_err(|faults| Refused::Table(NoTable::Columns(faults.len())))?;
    let mut found = OldTable::default();
    let mut leave_out = |line: u64, why: BadRow| {
        found.left_out_in_all += 1;
        if found.left_out.len() < TOLD {
            found.left_out.push((line, why));
        }
    };
    let mut sessions = Sessions::default();
    let mut rows = Rows::of(table, columns.separator);
    let (_, first) = rows.next()?.ok_or(Refused::Table(NoTable::Empty))?;
    let first = first.map_err(|_| Refused::Table(NoTable::NotText))?;
    let reader = Reader::new(&columns, &first, catalogue, at.local_day());
    let mut reader = reader.map_err(|lacks| Refused::Table(NoTable::Lacks(lacks)))?;
    if !columns.header {
        rows = Rows::of(table, columns.separator);
    }
    while let Some((line, cells)) = rows.next()? {
        let set: Result<Option<Lifted>, BadRow> = cells.and_then(|cells| reader.row(&cells));
        if let Err(why) = set.and_then(|set| set.map_or(Ok(()), |set| sessions.add(set))) {
            leave_out(line, why);
        }
        if rows.rows.is_multiple_of(REPORTED) {
            seen(rows.reader.position().byte());
        }
    }
    let easiest = core.held.plan.as_deref().map_or(EASIEST_HARD, |plan| plan.hard_at_left);
    let together = sessions.put_together(&columns.name, catalogue, easiest);
    let from = format!("table:{}", columns.name);
    let mut brought = Vec::with_capacity(together.len());
    for (row, sets) in together {
        let mut one = Brought { from: from.clone(), sum: 0, row, sets };
        one.sum = sum(&one)?;
        brought.push(one);
    }
    found.sessions = brought.len();
    found.sets = brought.iter().map(|one| one.sets.len()).sum();
    Ok((brought, found))
}

/// Tells a session from another of its number: the log's checksum of what the table says of it. What
/// is worked out from that, and may be worked out otherwise another time, is not in it.
fn sum(brought: &Brought) -> Result<u32, Fault> {
    let what = (brought.row.day, &brought.row.title, &brought.sets);
    let body = serde_json::to_string(&what);
    let body = body.map_err(|_| Fault::Broken("a session of a table could not be summed up"))?;
    let seq = brought.row.session;
    let at = Stamp { wall_ms: 0, offset_minutes: 0 };
    let kind = brought.from.clone();
    Ok(Event { seq, tap: seq, kind, version: VERSION, at, body }.sum(0))
}
