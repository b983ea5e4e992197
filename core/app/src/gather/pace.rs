//! What past sets say of slowing: read once in a session for an exercise that a partner taps.

use barwright_domain::history::DoneSet;
use barwright_store::{Store, StoreError};

use crate::facts::Held;

/// Sessions that a fit of pace looks back over.
const SESSIONS: u32 = 60;

/// Reads what is not held yet; nothing where nobody taps.
pub(crate) fn paces(store: &Store, held: &mut Held) -> Result<(), StoreError> {
    let Held { state, paces, .. } = held;
    let Some(run) = state.running() else { return Ok(()) };
    if paces.session != run.session {
        paces.session = run.session;
        paces.of.clear();
    }
    for entry in run.entries.values() {
        let exercise = &entry.entry.exercise;
        // Where no effort is asked for, there are no calls to make anything of.
        let tapped = entry.sets.iter().filter(|set| set.call.effort.is_some());
        let slowed = tapped.flat_map(|set| &set.parts).any(|part| part.slowing().is_some());
        if !slowed || paces.of.contains_key(exercise) {
            continue;
        }
        let mut sets =
            store.history()?.sets_of(exercise, Some((run.day, run.session)), SESSIONS)?;
        sets.sort_by_key(|set| (set.day, set.key));
        paces.of.insert(exercise.clone(), sets.iter().filter_map(DoneSet::pace).collect());
    }
    Ok(())
}
