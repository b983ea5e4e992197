//! Damaged files: what can still be read of them goes into a new file, and they are kept.

use rusqlite::Connection;

use crate::aside::{replace, set_aside};
use crate::chain::Chain;
use crate::error::StoreError;
use crate::event::{Event, Insert, Seq, Stamp};
use crate::pages::Pages;
use crate::place::{Place, remove};
use crate::store::Store;

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
    let mut insert = Insert::into(connection)?;
    rows.iter().try_for_each(|(event, sum)| {
        insert.row((event.seq, event.tap), event.at, &event.as_new(), *sum)
    })
}
