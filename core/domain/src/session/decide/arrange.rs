//! The order of work: skip, swap, postpone, take up, add.

use super::super::event::{Event, SwapCause};
use super::super::offer::Offer;
use super::super::refusal::Refusal;
use super::super::sheet::{Call, CallLoad, Entry};
use super::super::state::Run;
use super::guard::within_reserve;
use super::{MOST_ENTRIES, MOST_SETS, exercise, pending};
use crate::call::EntryId;
use crate::call::SetKind;

/// A set in the middle of its parts is left where it is before something else is taken up.
pub(super) fn leave_open_set(run: &Run) -> Option<Event> {
    run.under_way().map(|cursor| Event::SetLeft { set: cursor.set })
}

fn leave_open_set_of(run: &Run, entry: EntryId) -> Option<Event> {
    run.under_way()
        .filter(|cursor| cursor.set.entry == entry)
        .map(|cursor| Event::SetLeft { set: cursor.set })
}

pub(super) fn skip(run: &Run, entry: EntryId) -> Result<Vec<Event>, Refusal> {
    pending(run, entry)?;
    let skipped = Event::EntrySkipped { entry, pain: hurts(run, entry) };
    Ok(leave_open_set_of(run, entry).into_iter().chain([skipped]).collect())
}

/// Whether the set that was done last is of this exercise, and hurt: what is stopped or swapped then
/// is so for pain, whichever key it was.
fn hurts(run: &Run, entry: EntryId) -> bool {
    let of_it = |offer: &Offer| matches!(offer, Offer::Pain { entry: hurt, .. } if *hurt == entry);
    run.offers().iter().any(of_it)
}

pub(super) fn swap(
    run: &Run,
    entry: EntryId,
    to: &Entry,
    cause: SwapCause,
) -> Result<Vec<Event>, Refusal> {
    pending(run, entry)?;
    let to = one_more(run, to)?;
    let cause = if hurts(run, entry) { SwapCause::Pain } else { cause };
    Ok(leave_open_set_of(run, entry)
        .into_iter()
        .chain([Event::Swapped { entry, to, cause }])
        .collect())
}

/// One more exercise, at the end.
pub(super) fn add_entry(run: &Run, entry: &Entry) -> Result<Vec<Event>, Refusal> {
    Ok(vec![Event::EntryAdded { entry: one_more(run, entry)? }])
}

/// An exercise with the next name of the session.
fn one_more(run: &Run, entry: &Entry) -> Result<Entry, Refusal> {
    if entry.calls.is_empty() {
        return Err(Refusal::EmptySheet);
    }
    if run.entries.len() >= MOST_ENTRIES || entry.calls.len() > MOST_SETS {
        return Err(Refusal::TooMany);
    }
    let next = run.entries.keys().next_back().map_or(0, |id| id.0.saturating_add(1));
    Ok(Entry { id: EntryId(next), ..entry.clone() })
}

pub(super) fn postpone(run: &Run, entry: EntryId) -> Result<Vec<Event>, Refusal> {
    pending(run, entry)?;
    let others = run.entries.iter().any(|(id, other)| *id != entry && other.pending());
    if !others {
        return Err(Refusal::AlreadyThere);
    }
    Ok(leave_open_set_of(run, entry).into_iter().chain([Event::Postponed { entry }]).collect())
}

pub(super) fn take_up(run: &Run, entry: EntryId) -> Result<Vec<Event>, Refusal> {
    pending(run, entry)?;
    if run.cursor().is_some_and(|cursor| cursor.set.entry == entry) {
        return Err(Refusal::AlreadyThere);
    }
    Ok(leave_open_set(run).into_iter().chain([Event::Returned { entry }]).collect())
}

/// One more set like the last of the exercise; both sides where each works for itself.
pub(super) fn add_set(run: &Run, entry: EntryId) -> Result<Vec<Event>, Refusal> {
    let found = exercise(run, entry)?;
    if found.skipped || found.swapped_for.is_some() {
        return Err(Refusal::NothingLeftOf);
    }
    let works = || found.sets.iter().filter(|set| set.call.kind != SetKind::Ramp);
    let last = works().map(|set| (set.call.row, set.call.round)).max();
    let (row, round) = last.ok_or(Refusal::NothingLeftOf)?;
    let mut events = Vec::new();
    let mut id = found.next_set().ok_or(Refusal::TooMany)?;
    for set in works().filter(|set| (set.call.row, set.call.round) == (row, round)) {
        if usize::from(id.set) >= MOST_SETS {
            return Err(Refusal::TooMany);
        }
        let mut call = Call::clone(&set.call);
        call.round = round.saturating_add(1);
        if let Some(load) = &set.load {
            call.load = CallLoad::Known(load.clone());
            call.part_loads.clone_from(&set.part_loads);
        }
        let call = within_reserve(run, found, call);
        events.push(Event::SetAdded { set: id, call });
        id.set = id.set.saturating_add(1);
    }
    Ok(events)
}
