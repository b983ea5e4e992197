//! A session of the plan laid out for the lifter.

use barwright_domain::desk::{At, ForOnce};
use barwright_domain::equipment::Equipment;
use barwright_domain::plan::Plan;
use barwright_domain::prescribe::{self, Prescribed, Source};
use barwright_domain::session::{Entry, EntryId, Reading};
use barwright_store::Store;

use super::past::lifter;
use crate::facts::{Held, LaidOut, place as places};
use crate::fault::{Fault, Refused};

/// The sheet of a session, cut to the minutes there are.
pub(crate) fn laid_out(
    store: &Store,
    held: &Held,
    place: At,
    minutes: Option<u32>,
    at: &Reading,
) -> Result<LaidOut, Fault> {
    let gym = held.gym();
    let plan = held.plan.as_deref().ok_or(Refused::NothingToGoBy)?;
    let mut prescribed: Option<Prescribed> = None;
    for place in std::iter::once(place).chain(joined(held, place)) {
        let mut exercises = exercises_of(plan, place);
        exercises.extend(held.desk.arranged().changes_of(place).iter().filter_map(|change| {
            match change {
                ForOnce::Instead { exercise, .. } | ForOnce::Added { exercise } => {
                    Some(exercise.clone())
                }
                ForOnce::LeftOut { .. } | ForOnce::Earlier { .. } => None,
            }
        }));
        let lifter = lifter(store, held.desk_now(), &exercises, at, None)?;
        let source = source(held, plan, &gym, place);
        let Some(more) = prescribe::sheet(source, &lifter) else { continue };
        match &mut prescribed {
            None => prescribed = Some(more),
            Some(all) => all.join(more),
        }
    }
    let Prescribed { sheet, needs } = prescribed.ok_or(Refused::NotHere)?;
    let (sheet, left_out) = match minutes {
        Some(minutes) => prescribe::fit_minutes(&sheet, minutes),
        None => (sheet, Vec::new()),
    };
    Ok(LaidOut { sheet, needs, left_out })
}

/// The sheet's entry for another exercise in the place of one of the session that runs; for one more
/// in the place of none.
pub(crate) fn substitute(
    store: &Store,
    held: &Held,
    entry: Option<EntryId>,
    exercise: &str,
    at: &Reading,
) -> Result<Entry, Fault> {
    let run = held.state.running().ok_or(Refused::NotHere)?;
    let old = match entry {
        Some(entry) => Some(run.entries.get(&entry).ok_or(Refused::NotHere)?),
        None => None,
    };
    let plan = held.plan.as_deref().ok_or(Refused::NothingToGoBy)?;
    let place = run.sheet.place.as_ref().map(places::of_plan).ok_or(Refused::NotHere)?;
    let exercises = [exercise.to_owned()];
    let lifter = lifter(store, held.desk_now(), &exercises, at, Some((run.day, run.session)))?;
    // What was swapped in may be swapped again: the plan knows the first.
    let first = old.map(|old| old.entry.stands_in_for.as_deref().unwrap_or(&old.entry.exercise));
    let place = first.map_or(place, |first| place_with(held, plan, place, first));
    let source = source(held, plan, &run.equipment, place);
    let entry = match first {
        Some(first) => prescribe::substitute(source, &lifter, first, exercise),
        None => prescribe::added(source, &lifter, exercise),
    };
    Ok(entry.ok_or(Refused::NotHere)?)
}

/// What a sheet of a place is made from, the lifter apart.
pub(super) fn source<'a>(
    held: &'a Held,
    plan: &'a Plan,
    gym: &'a Equipment,
    place: At,
) -> Source<'a> {
    Source {
        plan,
        adopted: held.desk.plan.as_ref().map(|adopted| adopted.seq),
        at: place,
        catalogue: &held.catalogue,
        equipment: gym,
    }
}

/// Of a session and those joined to it, the one whose exercise it is.
pub(super) fn place_with(held: &Held, plan: &Plan, place: At, exercise: &str) -> At {
    let joined = joined(held, place);
    if joined.is_empty() {
        return place;
    }
    std::iter::once(place)
        .chain(joined)
        .find(|place| exercises_of(plan, *place).iter().any(|one| one == exercise))
        .unwrap_or(place)
}

/// The sessions whose work is done with that of a place.
fn joined(held: &Held, place: At) -> Vec<At> {
    let on = held.desk.plan.as_ref().and_then(|plan| held.desk.arranged.get(&plan.seq));
    let with = on.map(|arranged| arranged.with.as_slice()).unwrap_or_default();
    with.iter().filter(|(_, other, _)| *other == place).map(|(at, ..)| *at).collect()
}

/// The exercises of a session, by slug.
fn exercises_of(plan: &Plan, place: At) -> Vec<String> {
    let (week, session) = place.nth();
    plan.session(week, session)
        .map(|session| session.exercises.into_iter().map(|entry| entry.exercise).collect())
        .unwrap_or_default()
}
