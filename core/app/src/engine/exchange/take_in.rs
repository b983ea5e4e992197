//! In: a whole log of the lossless form goes on from the one that is here.

use std::io::BufRead;

use barwright_store::Event;

use super::super::core::Core;
use super::super::derive::Anew;
use super::out::begins;
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

/// Compares a file with the records, and takes what is new unless it is only looked at: all of it in
/// one transaction, or nothing.
pub(super) fn take_in(
    core: &mut Core,
    from: impl BufRead,
    look_only: bool,
) -> Result<Imported, Fault> {
    let file = File::read(from)?;
    if !file.head.is_whole() {
        return Err(Refused::NotTaken(NotTaken::Part).into());
    }
    let here = core.store.last_seq();
    if here > 0 && core.store.uuid() != file.head.store {
        return Err(Refused::NotTaken(NotTaken::Others).into());
    }
    let rows: Vec<(Event, u32)> =
        file.rows.into_iter().map(|(row, sum)| (row, sum.unwrap_or_default())).collect();
    let same = same(core, &rows)?;
    let there = rows.len() as u64;
    if same < here.min(there) {
        return Err(Refused::NotTaken(NotTaken::Apart { after: same }).into());
    }
    let new = rows.get(usize::try_from(same).unwrap_or(usize::MAX)..).unwrap_or_default();
    let sessions = new.iter().filter(|(row, _)| begins(row)).count() as u64;
    let found = Imported { same, new: new.len() as u64, sessions, taken: false };
    if new.is_empty() || look_only {
        return Ok(found);
    }
    let mut anew = Anew::of(&core.store)?;
    for (row, _) in new {
        anew.look_ahead(row)?;
    }
    let uuid = (here == 0).then_some(file.head.store);
    core.store.take_in(uuid, new, &mut anew)?;
    core.rebuild()?;
    Ok(Imported { taken: true, ..found })
}

/// How many entries from the first on are the same here and in the file: an entry's checksum stands
/// for all before it.
pub(super) fn same(core: &Core, rows: &[(Event, u32)]) -> Result<u64, Fault> {
    let here = core.store.last_seq();
    let at = |seq: u64| usize::try_from(seq).ok().and_then(|seq| rows.get(seq.checked_sub(1)?));
    if here == 0 || at(here).is_some_and(|(_, sum)| *sum == core.store.last_sum()) {
        return Ok(here);
    }
    let (mut before, mut same) = (0, 0);
    core.store.each_event(1, |row| {
        before = row.sum(before);
        if same + 1 == row.seq && at(row.seq).is_some_and(|(_, sum)| *sum == before) {
            same = row.seq;
        }
        Ok::<(), barwright_store::StoreError>(())
    })?;
    Ok(same)
}
