//! Damaged files: set aside by renaming, never deleted; and what can still be read of them.

use rusqlite::{Connection, params};

use crate::backup::remove;
use crate::error::{Damage, StoreError};
use crate::event::{COLUMNS, Chain, Event, Seq};
use crate::store::{Place, Store, connect, log_of};

/// Where a damaged file was put.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SetAside {
    /// Its new name; its write-ahead log, where it had one, lies beside it.
    pub place: Place,
    /// The file was there; none means that its write-ahead log was alone.
    pub file: bool,
}

/// What could be read of a damaged file.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Salvage {
    /// Events from the first on, all good, which are now in the new store.
    pub kept: Seq,
    /// What ended them; none when every event was good.
    pub damage: Option<Damage>,
    /// Later events that can still be read in the file set aside, but do not join on.
    pub beyond: u64,
}

/// Whether a store, or what is left of one, lies at a place: its file, or its write-ahead log alone.
///
/// # Errors
/// Where the file system does not say.
pub fn is_at(place: &Place) -> Result<bool, StoreError> {
    Ok(place.is_there()? || log_of(place).is_there()?)
}

/// Sets a damaged file aside under a name of its own, with its write-ahead log, so that a new store
/// can take its place. Nothing is deleted.
///
/// # Errors
/// What renaming answers.
pub fn quarantine(place: &Place) -> Result<SetAside, StoreError> {
    let files = place.on().files;
    let failed = |error| StoreError::from_io(place.path(), &error);
    let (file, log) = (place.is_there()?, log_of(place).is_there()?);
    let mut number = 1_u32;
    let aside = loop {
        let aside = place.beside(&format!(".damaged-{number}"));
        // A log that a cut-off attempt left behind belongs with its file.
        if !(log_of(&aside).is_there()? || file && aside.is_there()?) {
            break aside;
        }
        number = number.saturating_add(1);
    };
    if file {
        files.rename(place.path(), aside.path()).map_err(failed)?;
    }
    if log {
        files.rename(log_of(place).path(), log_of(&aside).path()).map_err(failed)?;
    }
    files.sync_names(place.path()).map_err(failed)?;
    Ok(SetAside { place: aside, file })
}

/// Reads what is good in a file set aside into a new store: the events from the first up to the
/// damage, under their own numbers. What is derived from them is to be made anew
/// ([`Store::rebuild`]).
///
/// The file set aside is only copied, never written.
///
/// # Errors
/// [`StoreError::Exists`], or what reading the copy and writing the new store answer.
pub fn salvage(aside: &Place, to: &Place) -> Result<(Store, Salvage), StoreError> {
    if to.is_there()? {
        return Err(StoreError::Exists { path: to.path().to_path_buf() });
    }
    let copy = to.beside(".reading");
    remove(&copy);
    let result = read_into(aside, &copy, to);
    remove(&copy);
    if result.is_err() {
        remove(to);
    }
    result
}

fn read_into(aside: &Place, copy: &Place, to: &Place) -> Result<(Store, Salvage), StoreError> {
    let files = aside.on().files;
    let copied = |from: &Place, to: &Place| {
        let copied = files.copy(from.path(), to.path());
        copied.map_err(|error| StoreError::from_io(from.path(), &error))
    };
    copied(aside, copy)?;
    if log_of(aside).is_there()? {
        copied(&log_of(aside), &log_of(copy))?;
    }
    let from = connect(copy)?;
    from.pragma_update(None, "locking_mode", "EXCLUSIVE")
        .map_err(|error| StoreError::from_sqlite(aside.path(), error))?;

    let mut store = Store::open_in(to.clone())?;
    let uuid = from.query_row("SELECT uuid FROM store", [], |row| row.get::<_, String>(0)).ok();
    store.take_over(uuid.as_deref())?;
    let mut chain = Chain::default();
    let damage = loop {
        let mut good = Vec::new();
        let mut next = chain;
        let stopped = read_some(&from, &mut next, &mut good);
        store.append_as_they_were(&good)?;
        chain = next;
        match stopped {
            Ok(true) => {}
            Ok(false) => break None,
            Err(damage) => break Some(damage),
        }
    };
    let beyond = if damage.is_some() { count_beyond(&from, chain.seq) } else { 0 };
    Ok((store, Salvage { kept: chain.seq, damage, beyond }))
}

/// Reads some thousand rows that continue the chain; false at the end.
fn read_some(
    from: &Connection,
    chain: &mut Chain,
    good: &mut Vec<(Event, u32)>,
) -> Result<bool, Damage> {
    let malformed = |error: rusqlite::Error| Damage::Malformed { detail: error.to_string() };
    let sql = format!("SELECT {COLUMNS} FROM event WHERE seq > ?1 ORDER BY seq LIMIT 1000");
    let mut statement = from.prepare_cached(&sql).map_err(malformed)?;
    let mut rows = statement.query([chain.seq]).map_err(malformed)?;
    while let Some(row) = rows.next().map_err(malformed)? {
        let (event, sum) = Event::from_row(row).map_err(malformed)?;
        chain.follow(&event, sum)?;
        good.push((event, sum));
    }
    Ok(!good.is_empty())
}

/// Counts rows after the damage that can be read and follow from the row before them.
fn count_beyond(from: &Connection, kept: Seq) -> u64 {
    let last = from
        .query_row("SELECT max(seq) FROM event", [], |row| row.get(0))
        .or_else(|_| from.query_row("SELECT max(seq) FROM standing", [], |row| row.get(0)))
        .ok()
        .flatten()
        .unwrap_or(kept);
    let sql = format!("SELECT {COLUMNS} FROM event WHERE seq = ?1");
    let Ok(mut statement) = from.prepare(&sql) else { return 0 };
    let mut before: Option<u32> = None;
    let mut count = 0;
    for seq in kept.saturating_add(1)..=last {
        let row = statement.query_row([seq], Event::from_row).ok();
        if let (Some((event, sum)), Some(checksum)) = (&row, before) {
            let mut chain = Chain { seq: seq - 1, checksum };
            if chain.follow(event, *sum).is_ok() {
                count += 1;
            }
        }
        before = row.map(|(_, sum)| sum);
    }
    count
}

impl Store {
    /// Becomes the store that it is filled from, with all that is derived still to be made.
    fn take_over(&mut self, uuid: Option<&str>) -> Result<(), StoreError> {
        self.connection()?
            .execute("UPDATE store SET history = 0, uuid = ifnull(?1, uuid)", [uuid])
            .map(|_| ())
            .map_err(|error| self.sorted(error))
    }

    /// Appends rows under their own numbers and checksums.
    fn append_as_they_were(&mut self, rows: &[(Event, u32)]) -> Result<(), StoreError> {
        let Some((last, checksum)) = rows.last() else { return Ok(()) };
        let head = Chain { seq: last.seq, checksum: *checksum };
        let connection = self.connection()?;
        let write = || {
            let transaction = connection.unchecked_transaction()?;
            let sql =
                format!("INSERT INTO event ({COLUMNS}) VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8)");
            for (event, sum) in rows {
                transaction.prepare_cached(&sql)?.execute(params![
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
            transaction.commit()
        };
        write().map_err(|error| self.sorted(error))?;
        self.set_head(head);
        Ok(())
    }
}
