//! Damaged files: what can still be read of them goes into a new file, and they are kept.

use rusqlite::{Connection, params};

use crate::backup::remove;
use crate::error::StoreError;
use crate::event::{COLUMNS, Chain, Event, Seq, Stamp};
use crate::pages::Pages;
use crate::store::{Place, Store, log_of};

/// What could be read of a damaged file.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Salvage {
    /// Events from the first on, all good, without a gap.
    pub kept: Seq,
    /// Of those, how many had one bit wrong, which their checksums put right.
    pub mended: u64,
    /// The last number that anything in the file speaks of: what lies between is lost.
    pub last: Seq,
    /// Later events that can still be read in the file set aside, but do not join on.
    pub beyond: u64,
    /// When the last event that was kept was recorded.
    pub kept_at: Option<Stamp>,
    /// When the last event that can be read, and was not kept, was recorded.
    pub beyond_at: Option<Stamp>,
}

/// How many rows with a wrong bit are put right: more are no accident of a bit.
const MOST_MENDED: u64 = 64;

/// Whether a store, or what is left of one, lies at a place: its file, or its write-ahead log alone.
///
/// # Errors
/// Where the file system does not say.
pub fn is_at(place: &Place) -> Result<bool, StoreError> {
    Ok(place.is_there()? || log_of(place).is_there()?)
}

/// Reads what is good in a damaged file, page by page and whatever SQLite makes of it, into a new
/// store beside it: the events from the first up to what is lost, under their own numbers. The
/// damaged file is only read. What is derived is to be made anew ([`Store::rebuild`]); then
/// [`take_its_place`].
///
/// # Errors
/// What reading and writing answer.
pub fn salvage(place: &Place) -> Result<(Store, Salvage), StoreError> {
    let to = place.beside(".recovering");
    remove(&to);
    let result = read_into(place, &to);
    if result.is_err() {
        remove(&to);
    }
    result
}

fn read_into(from: &Place, to: &Place) -> Result<(Store, Salvage), StoreError> {
    let pages = Pages::read(from)?;
    let rows = pages.rows();
    let marks = pages.marks();
    let last = rows.last.max(marks.as_ref().map_or(0, |marks| marks.sealed));
    let mut store = Store::open_in(to.clone())?;
    store.take_over(marks.map(|marks| marks.uuid))?;
    let mut chain = Chain::default();
    let mut good: Vec<(Event, u32)> = Vec::new();
    let (mut mended, mut kept_at) = (0, None);
    loop {
        let next = match rows.next(chain) {
            Some(next) => Some(next.clone()),
            None if mended < MOST_MENDED && (last > chain.seq || rows.doubtful) => {
                let next = pages.mend(chain);
                mended += u64::from(next.is_some());
                next
            }
            None => None,
        };
        let Some((event, sum)) = next else { break };
        chain = Chain { seq: event.seq, checksum: sum };
        kept_at = Some(event.at);
        good.push((event, sum));
        if good.len() >= 1_000 {
            store.append_as_they_were(&std::mem::take(&mut good))?;
        }
    }
    store.append_as_they_were(&good)?;
    let beyond = rows.after(chain.seq);
    let read = Salvage {
        kept: chain.seq,
        mended,
        last: last.max(chain.seq),
        beyond: beyond.len() as u64,
        kept_at,
        beyond_at: beyond.last().map(|(event, _)| event.at),
    };
    Ok((store, read))
}

/// Removes a store that was read from a damaged file and is of no use.
///
/// # Errors
/// What closing answers.
pub fn discard(store: Store) -> Result<(), StoreError> {
    let place = store.place().clone();
    store.close()?;
    remove(&place);
    Ok(())
}

/// Puts a store that was read from a damaged file in its place. The damaged file, with its
/// write-ahead log, is copied to a name of its own first, so that at no moment there is none.
/// Answers where it lies.
///
/// # Errors
/// What checking, copying and renaming answer; the damaged file is where it was then.
pub fn take_its_place(store: Store, place: &Place) -> Result<Place, StoreError> {
    let from = store.place().clone();
    let done = store.verify().and_then(|_| store.close()).and_then(|()| {
        let aside = set_aside(place, ".damaged-")?;
        replace(&from, place)?;
        Ok(aside)
    });
    if done.is_err() {
        remove(&from);
    }
    done
}

/// Copies a file and its write-ahead log to names of their own.
pub(crate) fn set_aside(place: &Place, name: &str) -> Result<Place, StoreError> {
    let files = place.on().files;
    let failed = |error| StoreError::from_io(place.path(), &error);
    let mut number = 1_u32;
    let aside = loop {
        let aside = place.beside(&format!("{name}{number}"));
        if !(aside.is_there()? || log_of(&aside).is_there()?) {
            break aside;
        }
        number = number.saturating_add(1);
    };
    for (from, to) in [(place.clone(), aside.clone()), (log_of(place), log_of(&aside))] {
        if from.is_there()?
            && let Err(error) = files.copy(from.path(), to.path())
        {
            remove(&aside);
            return Err(failed(error));
        }
    }
    files.sync_names(place.path()).map_err(failed)?;
    Ok(aside)
}

/// Puts a closed store in the place of another file that was set aside.
pub(crate) fn replace(from: &Place, place: &Place) -> Result<(), StoreError> {
    let files = place.on().files;
    let failed = |error| StoreError::from_io(place.path(), &error);
    files.rename(from.path(), place.path()).map_err(failed)?;
    // Were it left, it would be told from the new file's own.
    if log_of(place).is_there()? {
        files.remove(log_of(place).path()).map_err(failed)?;
    }
    files.sync_names(place.path()).map_err(failed)
}

/// Gives the write-ahead log beside a file a name of its own.
pub(crate) fn put_log_aside(place: &Place) -> Result<(), StoreError> {
    let files = place.on().files;
    let failed = |error| StoreError::from_io(place.path(), &error);
    let mut number = 1_u32;
    let aside = loop {
        let aside = place.beside(&format!(".left-{number}-wal"));
        if !aside.is_there()? {
            break aside;
        }
        number = number.saturating_add(1);
    };
    files.rename(log_of(place).path(), aside.path()).map_err(failed)?;
    files.sync_names(place.path()).map_err(failed)
}

/// Puts a write-ahead log aside that is not the file's own, where all that it says is in the file:
/// the file took another's place, and the log was left. Answers whether it was so.
pub(crate) fn put_left_log_aside(place: &Place) -> Result<bool, StoreError> {
    if !Pages::read(place)?.log_says_nothing_new() {
        return Ok(false);
    }
    put_log_aside(place)?;
    Ok(true)
}

/// Where nothing at all could be read, moves a file and its write-ahead log out of the way, so that
/// a new one can begin. Answers where they lie.
///
/// # Errors
/// What renaming answers.
pub fn move_aside(place: &Place) -> Result<Place, StoreError> {
    let files = place.on().files;
    let failed = |error| StoreError::from_io(place.path(), &error);
    let aside = set_aside(place, ".damaged-")?;
    for place in [place.clone(), log_of(place)] {
        if place.is_there()? {
            files.remove(place.path()).map_err(failed)?;
        }
    }
    files.sync_names(place.path()).map_err(failed)?;
    Ok(aside)
}

/// Whether a file that SQLite, or its header, calls something else holds a log of ours.
pub(crate) fn holds_a_log(place: &Place) -> bool {
    let small = |found: crate::Found| !found.folder && found.bytes < 1 << 30;
    place.on().files.look(place.path()).ok().flatten().is_some_and(small)
        && Pages::read(place).is_ok_and(|pages| {
            pages.marks().is_some() && pages.rows().next(Chain::default()).is_some()
        })
}

impl Store {
    /// Appends rows under their own numbers and checksums.
    fn append_as_they_were(&mut self, rows: &[(Event, u32)]) -> Result<(), StoreError> {
        let Some((last, checksum)) = rows.last() else { return Ok(()) };
        let head = Chain { seq: last.seq, checksum: *checksum };
        let connection = self.connection()?;
        let write = || {
            let transaction = connection.unchecked_transaction()?;
            insert(&transaction, rows)?;
            transaction.commit()
        };
        write().map_err(|error| self.sorted(error))?;
        self.unmoved_after()?;
        self.set_head(head);
        self.checkpoint()
    }

    /// As [`Store::append_as_they_were`], within the caller's transaction.
    pub(crate) fn insert_as_they_were(&self, rows: &[(Event, u32)]) -> rusqlite::Result<()> {
        match self.connection() {
            Ok(connection) => insert(connection, rows),
            // Nothing is written where nothing is open.
            Err(_) => Err(rusqlite::Error::InvalidQuery),
        }
    }
}

fn insert(connection: &Connection, rows: &[(Event, u32)]) -> rusqlite::Result<()> {
    let sql = format!("INSERT INTO event ({COLUMNS}) VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8)");
    let mut insert = connection.prepare_cached(&sql)?;
    for (event, sum) in rows {
        insert.execute(params![
            event.seq,
            event.tap,
            event.kind,
            event.version,
            event.at.wall_ms,
            event.at.offset_minutes,
            event.body,
            sum
        ])?;
    }
    Ok(())
}
