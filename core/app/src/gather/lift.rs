//! One exercise over time.

use barwright_domain::history::DoneSet;
use barwright_store::Store;

use crate::facts::{Held, Lift};
use crate::fault::{Fault, Refused};

/// Sessions on a page.
pub(crate) const PAGE: usize = 20;
/// Sessions that the chart goes back over: two years of a lift that stands in the plan twice a week.
pub(crate) const CHARTED: u32 = 208;
/// Names that are offered where none was found.
const NEAR: usize = 5;

/// An exercise by slug or name; without one, the one at hand.
pub(super) fn of<'a>(
    store: &Store,
    held: &'a Held,
    exercise: &str,
    page: u32,
    all: bool,
) -> Result<Lift<'a>, Fault> {
    let history = store.history()?;
    let done = history.exercises_done()?;
    let named = if exercise.is_empty() { at_hand(held, &done)? } else { exercise.to_owned() };
    let exercise = held.catalogue.find(&named).ok_or_else(|| {
        let near = held.catalogue.alike(&named, NEAR);
        let near = near.iter().map(|near| held.locale.words().words().exercise(near)).collect();
        Refused::NoExercise(named.clone(), near)
    })?;
    // A page further back than the chart goes is read as well, and whether one lies behind it.
    let first = usize::try_from(page).unwrap_or(usize::MAX).saturating_mul(PAGE);
    // Sessions with nothing but warm-ups are no line of it, and are seldom.
    let needed = u32::try_from(first.saturating_add(PAGE * 2)).unwrap_or(u32::MAX);
    let sessions = if all { EVERY } else { CHARTED.max(needed) };
    // Warm-ups are read too: a row that is missing is known by its neighbours' numbers.
    let mut sets = history.sets_of(&exercise.slug, None, sessions)?;
    sets.retain(DoneSet::is_work);
    let records = history.records(&exercise.slug)?;
    Ok(Lift { exercise, sets, records, done })
}

/// More sessions than there can be.
const EVERY: u32 = i32::MAX as u32;

/// The exercise on the floor, else one of those done last: a main lift, if there was any.
fn at_hand(held: &Held, done: &[(String, i32)]) -> Result<String, Refused> {
    let run = held.state.running();
    let current = run.and_then(|run| run.entries.get(&run.cursor()?.set.entry));
    if let Some(entry) = current {
        return Ok(entry.entry.exercise.clone());
    }
    let main = |slug: &str| held.catalogue.get(slug).is_some_and(|exercise| exercise.main_lift);
    let last = done.iter().max_by_key(|(slug, day)| (*day, main(slug)));
    last.map(|(slug, _)| slug.clone()).ok_or(Refused::NothingToGoBy)
}
