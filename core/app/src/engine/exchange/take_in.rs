//! In: a whole log of the lossless form goes on from the one that is here.

use barwright_store::Event;

use super::super::core::Core;
use super::super::derive::Anew;
use super::super::export::begins;
use super::read::File;
use crate::fault::{Fault, NotTaken, Refused};
use crate::phrase::Words;

/// What a file of records comes to beside those that are here.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Imported {
    /// Entries that are here already, the same.
    pub same: u64,
    /// Entries that are new.
    pub new: u64,
    /// Sessions that begin in those.
    pub sessions: u64,
    /// They are in the records now; otherwise this was only a look.
    pub taken: bool,
}

impl Imported {
    /// It in the words of a language.
    #[must_use]
    pub fn said(&self, words: Words) -> String {
        let Self { same, new, sessions, taken } = *self;
        words.records().imported(same, new, sessions, taken)
    }
}

/// Compares a file with the records.
pub(super) fn found(core: &Core, file: &File) -> Result<Imported, Fault> {
    let here = core.store.last_seq();
    if here > 0 && core.store.uuid() != file.head.store {
        return Err(Refused::NotTaken(NotTaken::Others).into());
    }
    let same = same(core, &file.rows)?;
    let there = file.rows.len() as u64;
    if same < here.min(there) {
        return Err(Refused::NotTaken(NotTaken::Apart { after: same }).into());
    }
    let new = file.rows.iter().skip(known(same));
    let sessions = new.filter(|(row, _)| begins(row)).count() as u64;
    Ok(Imported { same, new: there.saturating_sub(same), sessions, taken: false })
}

/// Compares a file with the records, and takes what is new unless it is only looked at: all of it in
/// one transaction, or nothing.
pub(super) fn take_in(core: &mut Core, file: File, look_only: bool) -> Result<Imported, Fault> {
    let found = found(core, &file)?;
    if found.new == 0 || look_only {
        return Ok(found);
    }
    let new = file.rows.into_iter().skip(known(found.same));
    let new: Vec<(Event, u32)> = new.map(|(row, sum)| (row, sum.unwrap_or_default())).collect();
    let becomes = (core.store.last_seq() == 0).then_some(file.head.store);
    append(core, becomes, &new)?;
    Ok(Imported { taken: true, ..found })
}

/// How many lines those are that are here already.
fn known(same: u64) -> usize {
    usize::try_from(same).unwrap_or(usize::MAX)
}

/// Appends rows, and makes what is derived anew, in one transaction; an empty store becomes the one of
/// an id.
pub(super) fn append(
    core: &mut Core,
    uuid: Option<String>,
    rows: &[(Event, u32)],
) -> Result<(), Fault> {
    let mut anew = Anew::of(&core.store)?;
    for (row, _) in rows {
        anew.look_ahead(row)?;
    }
    core.store.take_in(uuid, rows, &mut anew)?;
    core.catch_up()
}

/// How many entries from the first on are the same here and in the file: an entry's checksum stands
/// for all before it.
pub(super) fn same(core: &Core, rows: &[(Event, Option<u32>)]) -> Result<u64, Fault> {
    let here = core.store.last_seq();
    let at = |seq: u64| usize::try_from(seq).ok().and_then(|seq| rows.get(seq.checked_sub(1)?));
    if here == 0 || at(here).is_some_and(|(_, sum)| *sum == Some(core.store.last_sum())) {
        return Ok(here);
    }
    let (mut before, mut same) = (0, 0);
    core.store.each_event(1, |row| {
        before = row.sum(before);
        if same + 1 == row.seq && at(row.seq).is_some_and(|(_, sum)| *sum == Some(before)) {
            same = row.seq;
        }
        Ok::<(), barwright_store::StoreError>(())
    })?;
    Ok(same)
}
