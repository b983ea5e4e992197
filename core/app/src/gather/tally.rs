//! What a session comes to for the owners of loads, what the exercises will be next time, and the
//! loads that a changed max moves.

use barwright_domain::call::Ending;
use barwright_domain::desk::At;
use barwright_domain::owners::{Change, Outcome, Owner};
use barwright_domain::plan::Plan;
use barwright_domain::prescribe::{self, MovedFrom, Moves};
use barwright_domain::session::{EntryRun, Reading, Run};
use barwright_store::{Store, StoreError};

use super::past::lifter;
use super::sheet::{place_with, source};
use crate::facts::{Came, Held, MaxMoved, TallyOf, place as places};

pub(super) fn of<'a>(
    store: &Store,
    held: &'a Held,
    run: &'a Run,
    at: &Reading,
) -> Result<TallyOf<'a>, StoreError> {
    let after = held.desk_after(run);
    let outcomes: Vec<Outcome> =
        after.owners.decided_in(run.session).into_iter().cloned().collect();
    let done: Vec<&EntryRun> = run
        .in_order()
        .map(|(_, _, entry)| entry)
        .filter(|entry| entry.sets.iter().any(|set| set.begun() && set.call.round > 0))
        .collect();
    let slugs: Vec<String> = done.iter().map(|entry| entry.entry.exercise.clone()).collect();
    let lifter = lifter(store, after, &slugs, at, None)?;
    let mut came: Vec<Came> = Vec::new();
    for entry in done {
        let exercise = &entry.entry.exercise;
        if came.iter().any(|before| before.exercise == *exercise) {
            continue;
        }
        let next = in_plan(held, run).and_then(|(plan, place)| {
            let place = place_with(held, plan, place, exercise);
            prescribe::next_time(source(held, plan, &run.equipment, place), &lifter, exercise)
        });
        // Pain first: it says more of the next load than a step.
        let care = Owner::Care(exercise.clone());
        let owners = std::iter::once(&care).chain(entry.entry.terms.iter().map(|of| &of.track));
        let told = |owner: &Owner| outcomes.iter().find(|outcome| outcome.owner == *owner).cloned();
        came.push(Came {
            exercise: exercise.clone(),
            name: entry.entry.name.clone(),
            next,
            outcomes: owners.filter_map(told).collect(),
            no_pain: asks_pain(run, entry),
        });
    }
    Ok(TallyOf { maxes: maxes(store, held, run, &outcomes, at)?, run, came })
}

/// Where a session stands in the plan that is on; none where it is of another plan or of none.
fn in_plan<'a>(held: &'a Held, run: &Run) -> Option<(&'a Plan, At)> {
    let place = run.sheet.place.as_ref()?;
    let on = held.desk.plan.as_ref().filter(|plan| plan.seq == place.plan);
    Some((held.plan.as_deref().filter(|_| on.is_some())?, places::of_plan(place)))
}

/// Pain stands on an exercise and did not come again: whether it was without it is the lifter's to
/// say, and what was said.
fn asks_pain(run: &Run, entry: &EntryRun) -> Option<bool> {
    entry.entry.pain.filter(|pain| !pain.comes_back)?;
    let parts = || entry.sets.iter().flat_map(|set| &set.parts);
    if parts().any(|part| part.done.ending == Ending::Pain) {
        return None;
    }
    Some(run.pain_free.get(&entry.entry.exercise) == Some(&true))
}

/// What the session says to maxes, and the loads that a max it changes moves.
fn maxes(
    store: &Store,
    held: &Held,
    run: &Run,
    outcomes: &[Outcome],
    at: &Reading,
) -> Result<Vec<MaxMoved>, StoreError> {
    let mut moved = Vec::new();
    for outcome in outcomes {
        let Owner::Max(exercise) = &outcome.owner else { continue };
        let new = outcome.changes.iter().find_map(|change| match change {
            Change::Max { mass, origin } => Some((*mass, origin.clone())),
            _ => None,
        });
        let after = new.filter(|_| !outcome.held);
        let known = held.desk.owners.before(run.session).max(exercise).now;
        let (mut loads, mut again) = (Vec::new(), false);
        if let Some((plan, place)) = in_plan(held, run).filter(|_| after.is_some()) {
            let source = source(held, plan, &run.equipment, place);
            let slugs = prescribe::taking_from(source, exercise);
            let moves = Moves::Max(exercise);
            let after = lifter(store, held.desk_after(run), &slugs, at, None)?;
            let mut before = after.clone();
            before.desk.owners = held.desk.owners.before(run.session);
            loads = prescribe::moved_loads(source, moves, MovedFrom::After, &before, &after);
            again = loads.is_empty();
            if again {
                loads = prescribe::moved_loads(source, moves, MovedFrom::Start, &before, &after);
            }
        }
        moved.push(MaxMoved {
            exercise: exercise.clone(),
            outcome: outcome.clone(),
            before: known.map(|(mass, ..)| mass),
            after,
            loads,
            again,
        });
    }
    Ok(moved)
}
