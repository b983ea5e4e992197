//! What a session changes for the next time, and the loads that a changed max moves.

use barwright_domain::desk::{At, DeskEvent};
use barwright_domain::plan::Plan;
use barwright_domain::prescribe;
use barwright_domain::session::{Reading, Run};
use barwright_store::{Store, StoreError};

use super::past::lifter;
use super::sheet::{place_with, source};
use crate::facts::{Held, MaxMoved, NextTime, TallyOf, place as places};

pub(super) fn of<'a>(
    store: &Store,
    held: &'a Held,
    run: &'a Run,
    at: &Reading,
) -> Result<TallyOf<'a>, StoreError> {
    let Some((plan, place)) = in_plan(held, run) else {
        return Ok(TallyOf { run, next_times: Vec::new(), maxes: Vec::new() });
    };
    let next_times = next_times(store, held, run, (plan, place), at)?;
    let maxes = maxes_moved(store, held, run, (plan, place), at)?;
    Ok(TallyOf { run, next_times, maxes })
}

/// Where a session stands in the plan that is on; none where it is of another plan or of none.
fn in_plan<'a>(held: &'a Held, run: &Run) -> Option<(&'a Plan, At)> {
    let place = run.sheet.place.as_ref()?;
    let on = held.desk.plan.as_ref().filter(|plan| plan.seq == place.plan);
    Some((held.plan.as_deref().filter(|_| on.is_some())?, places::of_plan(place)))
}

/// What the exercises of a session will be the next time the plan has them.
fn next_times(
    store: &Store,
    held: &Held,
    run: &Run,
    (plan, place): (&Plan, At),
    at: &Reading,
) -> Result<Vec<NextTime>, StoreError> {
    let slugs: Vec<String> = run
        .in_order()
        .filter(|(_, _, entry)| entry.sets.iter().any(|set| set.begun() && set.call.round > 0))
        .map(|(_, _, entry)| entry.entry.exercise.clone())
        .collect();
    let mut lifter = lifter(store, held, held.desk_after(run), &slugs, at, None)?;
    // What it will be is asked as of the next time, not of today.
    lifter.last_day = None;
    Ok(slugs
        .into_iter()
        .filter_map(|exercise| {
            let place = place_with(held, plan, place, &exercise);
            let source = source(held, plan, &run.equipment, place);
            let entry = prescribe::next_time(source, &lifter, &exercise)?;
            Some(NextTime { exercise, entry })
        })
        .collect())
}

/// The maxes that a session changes, and the loads that they move.
fn maxes_moved(
    store: &Store,
    held: &Held,
    run: &Run,
    (plan, place): (&Plan, At),
    at: &Reading,
) -> Result<Vec<MaxMoved>, StoreError> {
    let source = source(held, plan, &run.equipment, place);
    let mut moved = Vec::new();
    for event in held.maxes_changed(run) {
        let DeskEvent::MaxKept { exercise, fact } = event else { continue };
        let slugs = prescribe::taking_from(source, &exercise);
        let mut after = lifter(store, held, held.desk_after(run), &slugs, at, None)?;
        after.last_day = None;
        let mut before = after.clone();
        before.desk.maxes.clone_from(&held.desk.maxes);
        let to_come = prescribe::moved_loads(source, &exercise, &before, &after, false);
        let again = to_come.is_empty();
        let loads = if again {
            prescribe::moved_loads(source, &exercise, &before, &after, true)
        } else {
            to_come
        };
        moved.push(MaxMoved {
            before: held.desk.max_on(&exercise, fact.day).cloned(),
            exercise,
            after: fact,
            loads,
            again,
        });
    }
    Ok(moved)
}
