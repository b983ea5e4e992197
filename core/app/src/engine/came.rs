//! Which sessions are in the history, and which of them came from elsewhere, by what.

use std::collections::{BTreeMap, BTreeSet};

use barwright_domain::desk::DeskEvent;
use barwright_store::Store;

use super::codec::{self, DESK};
use super::export::begins;
use super::standing::Failure;
use crate::facts::Arrived;
use crate::fault::Fault;

/// What tells a session apart from every other: where it was lived, its number there, and a checksum.
pub(super) type Identity = (String, u64, u32);

/// The sessions that are in a history.
#[derive(Debug, Default)]
pub(super) struct Known {
    /// What tells each apart, by its number here: those that were lived here, and those that were
    /// brought and not taken out again.
    pub(super) sessions: BTreeMap<u64, Identity>,
    /// The numbers of those that were brought, by the tap that brought them.
    comings: BTreeMap<u64, Vec<u64>>,
}

impl Known {
    pub(super) fn of(store: &Store) -> Result<Self, Fault> {
        let (mut known, mut before) = (Self::default(), 0);
        store.each_event(1, |row| {
            before = row.sum(before);
            if begins(&row) {
                known.sessions.insert(row.seq, (store.uuid().to_owned(), row.seq, before));
            }
            // Few facts of the desk are these: the others are not read.
            let may = ["\"session_brought\"", "\"sessions_withdrawn\""];
            if row.kind == DESK && may.iter().any(|name| row.body.contains(name)) {
                match codec::desk(&row)? {
                    DeskEvent::SessionBrought(brought) => {
                        let (from, session, sum) = brought.identity();
                        known.sessions.insert(row.seq, (from.to_owned(), session, sum));
                        known.comings.entry(row.tap).or_default().push(row.seq);
                    }
                    DeskEvent::SessionsWithdrawn { tap } => {
                        for gone in known.comings.remove(&tap).unwrap_or_default() {
                            known.sessions.remove(&gone);
                        }
                    }
                    _ => {}
                }
            }
            Ok::<(), Failure>(())
        })?;
        Ok(known)
    }
}

/// What tells the sessions apart that are in the history.
pub(super) fn here(store: &Store) -> Result<BTreeSet<Identity>, Fault> {
    Ok(Known::of(store)?.sessions.into_values().collect())
}

/// The last coming that is still there; none where nothing was brought.
pub(super) fn last(store: &Store) -> Result<Option<Arrived>, Fault> {
    let last = Known::of(store)?.comings.pop_last();
    Ok(last.map(|(tap, sessions)| Arrived { tap, sessions: sessions.len() as u64 }))
}
