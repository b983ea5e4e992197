//! Reading the log's rows out of the pages themselves, where SQLite can't or does not: whatever of
//! the file is lost or spoiled, a page that holds rows of the log still holds them.
//!
//! The layout is that of <https://www.sqlite.org/fileformat2.html#b_tree_pages>: a leaf of a table
//! begins with the byte 13; its rows are a number, then a record of typed values, of which what does
//! not fit lies in a chain of further pages.

use std::collections::HashMap;

use crate::bytes::{PAGE_BYTES, be_u16, be_u32, part, varint};
use crate::chain::Chain;
use crate::error::StoreError;
use crate::event::{Event, Seq, Stamp};
use crate::marks::Glimpse;
use crate::place::Place;
use crate::wal::Log;

const PAGE: usize = PAGE_BYTES as usize;
/// A leaf of a table.
const LEAF: u8 = 13;
/// Bytes of a record that a leaf holds itself, at most, and at least where the rest lies elsewhere.
const MOST_HERE: usize = PAGE - 35;
const LEAST_HERE: usize = (PAGE - 12) * 32 / 255 - 23;

/// A file's pages and those of its write-ahead log.
#[derive(Debug)]
pub(crate) struct Pages {
    file: Vec<u8>,
    log: Option<Log>,
    /// Frames that SQLite takes from the log.
    taken: usize,
}

/// One value of a record.
#[derive(Debug, Clone, PartialEq, Eq)]
enum Value {
    Null,
    Number(i64),
    Text(String),
    Other,
}

/// The log's rows as they were found, each with its checksum.
#[derive(Debug, Default)]
pub(crate) struct Rows {
    /// As SQLite would have them.
    seen: HashMap<Seq, Vec<(Event, u32)>>,
    /// In parts of the write-ahead log that SQLite passes over.
    passed: HashMap<Seq, Vec<(Event, u32)>>,
    /// The last number of any.
    pub(crate) last: Seq,
    /// Something in the file looks as if it held more than could be read.
    pub(crate) doubtful: bool,
}

impl Pages {
    /// Reads a file and its log whole.
    pub(crate) fn read(place: &Place) -> Result<Self, StoreError> {
        let failed = |error| StoreError::from_io(place.path(), &error);
        let files = place.on().files;
        let length = files.look(place.path()).map_err(failed)?.map_or(0, |found| found.bytes);
        let mut file = vec![0; usize::try_from(length).unwrap_or(usize::MAX)];
        if length > 0 {
            let read = files.read_at(place.path(), 0, &mut file).map_err(failed)?;
            file.truncate(read);
        }
        let log = Log::read(place)?;
        let taken = log.as_ref().map_or(0, Log::taken);
        Ok(Self { file, log, taken })
    }

    /// The file as it stands with what SQLite takes from its log, in one piece, marked as one
    /// without a log.
    pub(crate) fn image(&self) -> Vec<u8> {
        let mut image = self.file.clone();
        let frames = self.log.iter().flat_map(|log| log.frames().take(self.taken));
        let mut pages = 0;
        for frame in frames {
            let at = (frame.page.saturating_sub(1) as usize).saturating_mul(PAGE);
            if image.len() < at.saturating_add(PAGE) {
                image.resize(at.saturating_add(PAGE), 0);
            }
            if let Some(page) = image.get_mut(at..at + PAGE) {
                page.copy_from_slice(frame.bytes);
            }
            pages = if frame.ends > 0 { frame.ends as usize } else { pages };
        }
        if pages > 0 {
            image.truncate(pages * PAGE);
        }
        // How it is read and written: 1 is without a log.
        if let Some(versions) = image.get_mut(18..20) {
            versions.fill(1);
        }
        image
    }

    /// Whether every row of the log's table in the write-ahead log is in the file itself, the same.
    pub(crate) fn log_says_nothing_new(&self) -> bool {
        let alone = Self { file: self.file.clone(), log: None, taken: 0 };
        let known = alone.rows();
        let Some(log) = &self.log else { return true };
        let mut said = log.frames().flat_map(|frame| self.leaf(frame.bytes, 0, None));
        said.all(|row| known.seen.get(&row.0.seq).is_some_and(|rows| rows.contains(&row)))
    }

    /// A page as SQLite has it, or as the file itself has it.
    fn page(&self, number: u32, newest: bool) -> &[u8] {
        let at = (number as usize).checked_sub(1).and_then(|before| before.checked_mul(PAGE));
        let frames = self.log.iter().flat_map(|log| log.frames());
        let in_log = newest.then(|| frames.filter(|frame| frame.page == number).last()).flatten();
        match (in_log, at) {
            (Some(frame), _) => frame.bytes,
            (None, Some(at)) => part(&self.file, at, PAGE.min(self.file.len().saturating_sub(at))),
            (None, None) => &[],
        }
    }

    /// Finds all rows of the log.
    pub(crate) fn rows(&self) -> Rows {
        let mut rows = Rows::default();
        // A page that the log holds too is an older state of it; its rows are as good.
        let file = self.file.chunks(PAGE).enumerate();
        for (at, page) in file {
            let skip = if at == 0 { 100 } else { 0 };
            let found = self.leaf(page, skip, None);
            let cells = usize::from(be_u16(page, skip + 3));
            rows.doubtful |= (!found.is_empty() && found.len() < cells)
                || (at > 0 && no_kind(page))
                || page.len() < PAGE;
            for found in found {
                rows.add(true, found);
            }
        }
        let Some(log) = &self.log else { return rows };
        let written = log.written();
        rows.doubtful |= self.taken < written;
        for (at, frame) in log.frames().enumerate().take(written.max(self.taken)) {
            for found in self.leaf(frame.bytes, 0, None) {
                rows.add(at < self.taken, found);
            }
        }
        rows
    }

    /// Rows that lie beyond what SQLite takes of the write-ahead log, in transactions that were
    /// written whole: the last tap that one of them belongs to.
    pub(crate) fn last_tap_passed_over(log: &Log, taken: usize) -> Option<Seq> {
        let pages = Self { file: Vec::new(), log: None, taken: 0 };
        let beyond = log.frames().skip(taken);
        beyond.flat_map(|frame| pages.leaf(frame.bytes, 0, None)).map(|(event, _)| event.tap).max()
    }

    /// Reads the rows of a page that is a leaf of the log's table; `only` the one of a number.
    fn leaf(&self, page: &[u8], skip: usize, only: Option<Seq>) -> Vec<(Event, u32)> {
        if page.get(skip) != Some(&LEAF) {
            return Vec::new();
        }
        let rows = usize::from(be_u16(page, skip + 3)).min(PAGE / 4);
        let cells = (0..rows).map(|row| usize::from(be_u16(page, skip + 8 + 2 * row)));
        cells.filter_map(|cell| self.cell(page, cell, only)).collect()
    }

    fn cell(&self, page: &[u8], cell: usize, only: Option<Seq>) -> Option<(Event, u32)> {
        let (length, one) = varint(page, cell)?;
        let (seq, two) = varint(page, cell + one)?;
        if only.is_some_and(|only| only != seq) || seq == 0 || seq > i64::MAX as u64 {
            return None;
        }
        let length = usize::try_from(length).ok().filter(|length| *length < 1 << 28)?;
        let at = cell + one + two;
        if length <= MOST_HERE {
            return event(seq, page.get(at..at.checked_add(length)?)?);
        }
        let here = kept_here(length);
        let first = be_u32(page, at + here);
        let begins = page.get(at..at + here)?;
        // The shape tells what is worth following.
        looks_like_event(begins)?;
        [true, false].into_iter().find_map(|newest| {
            let (record, _) = self.chain(begins, first, length, newest);
            if record.len() < length { None } else { event(seq, &record) }
        })
    }

    /// Tries to put a row right that follows the chain but for one bit: its checksum says which.
    pub(crate) fn mend(&self, chain: Chain) -> Option<(Event, u32)> {
        let wanted = chain.seq + 1;
        let fits = |(event, sum): &(Event, u32)| {
            let mut chain = chain;
            chain.follow(event, *sum).is_ok()
        };
        for page in self.near(wanted) {
            let mut page = page.to_vec();
            for bit in 0..page.len() * 8 {
                flip(&mut page, bit);
                let found = self.leaf(&page, 0, Some(wanted)).into_iter().find(fits);
                if found.is_some() {
                    return found;
                }
                flip(&mut page, bit);
            }
            // The rest of a long row lies in other pages.
            if let Some(found) = self.mend_chain(&page, wanted, &fits) {
                return Some(found);
            }
        }
        None
    }

    /// Pages that may hold a row: those that name it first, then those with a neighbour of it, then
    /// those that should be leaves. Of each page its newest states, and as the file has it.
    fn near(&self, wanted: Seq) -> Vec<&[u8]> {
        let mut states: HashMap<u32, usize> = HashMap::new();
        let frames: Vec<_> = self.log.iter().flat_map(Log::frames).collect();
        let newest = frames.iter().rev().filter(|frame| {
            let seen = states.entry(frame.page).or_default();
            *seen += 1;
            *seen <= 3
        });
        let mut pages: Vec<(u8, &[u8])> = newest
            .map(|frame| frame.bytes)
            .chain(self.file.chunks(PAGE).skip(1))
            .filter(|page| page.len() == PAGE)
            .filter_map(|page| {
                let names = |seq| cells(page).any(|(_, number, _)| number == seq);
                let holds = |seq| !self.leaf(page, 0, Some(seq)).is_empty();
                if names(wanted) {
                    Some((0, page))
                } else if holds(wanted - 1) || holds(wanted + 1) {
                    Some((1, page))
                } else if no_kind(page) {
                    Some((2, page))
                } else {
                    None
                }
            })
            .collect();
        pages.sort_by_key(|(order, _)| *order);
        pages.into_iter().map(|(_, page)| page).take(24).collect()
    }

    /// As [`Pages::mend`], for a row whose rest lies in a chain of further pages: a bit of them, or
    /// of what leads from one to the next.
    fn mend_chain(
        &self,
        page: &[u8],
        wanted: Seq,
        fits: &impl Fn(&(Event, u32)) -> bool,
    ) -> Option<(Event, u32)> {
        for (length, seq, at) in cells(page) {
            if seq != wanted || length <= MOST_HERE || length > 1 << 20 {
                continue;
            }
            let here = kept_here(length);
            let begins = part(page, at, here);
            let first = be_u32(page, at + here);
            for newest in [true, false] {
                let (mut record, pages) = self.chain(begins, first, length, newest);
                if record.len() == length {
                    for bit in 0..record.len() * 8 {
                        flip(&mut record, bit);
                        let found = event(seq, &record).filter(fits);
                        if found.is_some() {
                            return found;
                        }
                        flip(&mut record, bit);
                    }
                }
                // Where a page leads to another than it did.
                for (before, number) in pages {
                    for bit in 0..32 {
                        let next = be_u32(self.page(number, newest), 0) ^ (1 << bit);
                        let (record, _) = self.chain(&before, next, length, newest);
                        let found = event(seq, &record).filter(fits);
                        if found.is_some() {
                            return found;
                        }
                    }
                }
            }
        }
        None
    }

    /// A record from its beginning and the chain of pages that has the rest, as far as it goes, and
    /// for each of those pages the record up to its end.
    fn chain(
        &self,
        begins: &[u8],
        first: u32,
        length: usize,
        newest: bool,
    ) -> (Vec<u8>, Vec<(Vec<u8>, u32)>) {
        let mut record = begins.to_vec();
        let mut pages = Vec::new();
        let mut next = first;
        while record.len() < length && next != 0 {
            let more = self.page(next, newest);
            let rest = (length - record.len()).min(PAGE - 4);
            let Some(bytes) = more.get(4..4 + rest) else { break };
            record.extend_from_slice(bytes);
            pages.push((record.clone(), next));
            next = be_u32(more, 0);
        }
        (record, pages)
    }

    /// The store's row about itself, where it can be found: the one that was sealed last.
    pub(crate) fn marks(&self) -> Option<Glimpse> {
        let frames = self.log.iter().flat_map(Log::frames).map(|frame| frame.bytes);
        let pages = self.file.chunks(PAGE).chain(frames);
        pages.filter_map(glimpse).max_by_key(|found| found.sealed)
    }
}

/// Whether the write-ahead log beside a file began there, as far as the file itself can tell: it was
/// looked at before SQLite took it over, since its pages would lie over those of another file.
pub(crate) fn began_here(place: &Place, log: &Log) -> Result<bool, StoreError> {
    let mut page = vec![0; PAGE];
    let read = place.on().files.read_at(place.path(), PAGE as u64, &mut page);
    let read = read.map_err(|error| StoreError::from_io(place.path(), &error))?;
    // The store's own row is in the first table; where it can't be read, there is more to say.
    let Some(marks) = glimpse(part(&page, 0, read)) else { return Ok(true) };
    let mut first = log.frames().filter(|frame| frame.page == 2);
    Ok(marks.log_born == Some(log.born())
        || first.any(|frame| glimpse(frame.bytes).is_some_and(|found| found.token == marks.token)))
}

/// The store's row about itself, in a page that holds nothing else.
fn glimpse(page: &[u8]) -> Option<Glimpse> {
    if page.first() != Some(&LEAF) || be_u16(page, 3) != 1 {
        return None;
    }
    let cell = usize::from(be_u16(page, 8));
    let (length, one) = varint(page, cell)?;
    let (1, two) = varint(page, cell + one)? else { return None };
    let record = part(page, cell + one + two, usize::try_from(length).ok()?);
    let number = |value: &Value| match value {
        Value::Number(number) => u32::try_from(*number).ok(),
        _ => None,
    };
    match record_of(record)?.as_slice() {
        [Value::Null, Value::Text(uuid), _, _, Value::Number(sealed), _, _, token, born, _, _]
            if uuid::Uuid::try_parse(uuid).is_ok() =>
        {
            Some(Glimpse {
                uuid: uuid.clone(),
                sealed: u64::try_from(*sealed).ok()?,
                token: number(token)?,
                log_born: number(born),
            })
        }
        _ => None,
    }
}

impl Rows {
    fn add(&mut self, seen: bool, row: (Event, u32)) {
        self.last = self.last.max(row.0.seq);
        let rows = if seen { &mut self.seen } else { &mut self.passed };
        let rows = rows.entry(row.0.seq).or_default();
        if !rows.contains(&row) {
            rows.push(row);
        }
    }

    /// The row that continues a chain.
    pub(crate) fn next(&self, chain: Chain) -> Option<&(Event, u32)> {
        let fits = |(event, sum): &&(Event, u32)| {
            let mut chain = chain;
            chain.follow(event, *sum).is_ok()
        };
        let places = [&self.seen, &self.passed];
        places.iter().filter_map(|rows| rows.get(&(chain.seq + 1))).flatten().find(fits)
    }

    /// Rows after a number that can be read, one of each, in order.
    pub(crate) fn after(&self, seq: Seq) -> Vec<&(Event, u32)> {
        let mut after: Vec<_> = self
            .seen
            .iter()
            .chain(&self.passed)
            .filter(|(number, _)| **number > seq)
            .filter_map(|(_, rows)| rows.first())
            .collect();
        after.sort_by_key(|(event, _)| event.seq);
        after.dedup_by_key(|(event, _)| event.seq);
        after
    }
}

/// The rows of a leaf: the length of each record, its number, and where it begins.
fn cells(page: &[u8]) -> impl Iterator<Item = (usize, Seq, usize)> {
    let leaf = page.first() == Some(&LEAF);
    let rows = if leaf { usize::from(be_u16(page, 3)).min(PAGE / 4) } else { 0 };
    let places = (0..rows).map(|row| usize::from(be_u16(page, 8 + 2 * row)));
    places.filter_map(|cell| {
        let (length, one) = varint(page, cell)?;
        let (seq, two) = varint(page, cell + one)?;
        Some((usize::try_from(length).ok()?, seq, cell + one + two))
    })
}

/// Bytes of a record that its leaf holds, where the rest lies elsewhere.
fn kept_here(length: usize) -> usize {
    let fitting = LEAST_HERE + (length - LEAST_HERE) % (PAGE - 4);
    if fitting <= MOST_HERE { fitting } else { LEAST_HERE }
}

fn flip(bytes: &mut [u8], bit: usize) {
    if let Some(byte) = bytes.get_mut(bit / 8) {
        *byte ^= 1 << (bit % 8);
    }
}

/// Whether a page's first byte is none that a page of a tree begins with.
fn no_kind(page: &[u8]) -> bool {
    !matches!(page.first(), Some(0 | 2 | 5 | 10 | 13))
}

/// The types of the values of a row of the log, where a record has them.
fn looks_like_event(record: &[u8]) -> Option<()> {
    let (header, one) = varint(record, 0)?;
    let header = usize::try_from(header).ok().filter(|header| *header < 64)?;
    let mut at = one;
    let mut types = [0_u64; 8];
    for kind in &mut types {
        let (read, length) = varint(record, at)?;
        (*kind, at) = (read, at + length);
    }
    let number = |kind: u64| matches!(kind, 1..=6 | 8 | 9);
    let text = |kind: u64| kind >= 13 && kind % 2 == 1;
    let [seq, tap, kind, version, wall, offset, body, sum] = types;
    let sound = at == header
        && seq == 0
        && [tap, version, wall, offset, sum].into_iter().all(number)
        && text(kind)
        && text(body);
    sound.then_some(())
}

/// Reads a record as a row of the log.
fn event(seq: Seq, record: &[u8]) -> Option<(Event, u32)> {
    looks_like_event(record)?;
    let values: [Value; 8] = record_of(record)?.try_into().ok()?;
    let [
        Value::Null,
        Value::Number(tap),
        Value::Text(kind),
        Value::Number(version),
        Value::Number(wall_ms),
        Value::Number(offset),
        Value::Text(body),
        Value::Number(sum),
    ] = values
    else {
        return None;
    };
    let event = Event {
        seq,
        tap: u64::try_from(tap).ok().filter(|tap| (1..=seq).contains(tap))?,
        kind,
        version: u32::try_from(version).ok()?,
        at: Stamp { wall_ms, offset_minutes: i32::try_from(offset).ok()? },
        body,
    };
    Some((event, u32::try_from(sum).ok()?))
}

/// The values of a record.
fn record_of(record: &[u8]) -> Option<Vec<Value>> {
    let (header, mut at) = varint(record, 0)?;
    let header = usize::try_from(header).ok()?;
    let mut body = header;
    let mut values = Vec::new();
    while at < header {
        let (kind, length) = varint(record, at)?;
        at += length;
        let bytes = match kind {
            0 | 8 | 9 => 0,
            1..=4 => usize::try_from(kind).ok()?,
            5 => 6,
            6 | 7 => 8,
            10 | 11 => return None,
            kind => usize::try_from((kind - 12) / 2).ok()?,
        };
        let value = record.get(body..body.checked_add(bytes)?)?;
        body += bytes;
        values.push(match kind {
            0 => Value::Null,
            8 => Value::Number(0),
            9 => Value::Number(1),
            1..=6 => {
                let negative = value.first().is_some_and(|first| first & 0x80 != 0);
                let start = if negative { -1_i64 } else { 0 };
                Value::Number(value.iter().fold(start, |all, byte| all << 8 | i64::from(*byte)))
            }
            kind if kind >= 13 && kind % 2 == 1 => {
                Value::Text(std::str::from_utf8(value).ok()?.to_owned())
            }
            _ => Value::Other,
        });
    }
    (body == record.len()).then_some(values)
}
