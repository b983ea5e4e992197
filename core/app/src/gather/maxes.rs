//! What carries loads, and what one that is entered moves.

use barwright_domain::owners::{Owner, Why};
use barwright_domain::prescribe::{self, MovedFrom, MovedLoad, Moves};
use barwright_domain::session::Reading;
use barwright_store::Store;

use super::calendar::next_place;
use super::past::lifter;
use super::sheet::source;
use crate::facts::{Entered, Held, MaxOf, Maxes, TrackOf, entered, says, standing};
use crate::fault::Fault;

/// The page, with what is entered at a place of it.
pub(super) fn of(
    store: &Store,
    held: &Held,
    place: &str,
    text: &str,
    at: &Reading,
) -> Result<Maxes, Fault> {
    let entered = match (place, text) {
        (_, "") | ("", _) => None,
        (place, text) => {
            let after = entered(held, place, text)?;
            let loads = moved(store, held, place, after, at)?;
            let place = place.to_owned();
            Some(Entered { before: standing(held, &place), place, after, loads })
        }
    };
    Ok(Maxes { maxes: maxes(held), tracks: tracks(held), entered })
}

/// Those that are known, and those that the plan takes loads from.
fn maxes(held: &Held) -> Vec<MaxOf> {
    let desk = held.desk_now();
    let mut slugs: Vec<String> = held.plan.as_deref().map(prescribe::lifts_of).unwrap_or_default();
    for (owner, _) in desk.owners.iter() {
        if let Owner::Max(slug) = owner
            && !slugs.contains(slug)
            && desk.owners.max(slug).now.is_some()
        {
            slugs.push(slug.clone());
        }
    }
    let max = |exercise: String| MaxOf { now: desk.owners.max(&exercise).now, exercise };
    slugs.into_iter().map(max).collect()
}

/// Those of the rows of the plan that is on, where a load was found or said.
pub(crate) fn tracks(held: &Held) -> Vec<TrackOf> {
    let desk = held.desk_now();
    let (Some(on), Some(plan)) = (&desk.plan, held.plan.as_deref()) else { return Vec::new() };
    let mut found: Vec<TrackOf> = Vec::new();
    for row in &on.rows {
        let owner = Owner::Track(row.track);
        if found.iter().any(|known| known.owner == owner) {
            continue;
        }
        let session = plan.sessions.get(usize::from(row.session));
        let slot = session.and_then(|session| session.exercises.get(usize::from(row.slot)));
        let track = desk.owners.track(&owner);
        let (Some(slot), Some(load), Some(asked)) = (slot, track.load, track.asked) else {
            continue;
        };
        let words = desk.owners.account(&owner).map(|account| account.words().to_vec());
        let why = words.unwrap_or_default().into_iter().rev().map(|word| word.outcome);
        let why = why
            .filter(|said| !said.held && !said.silent && said.why != Why::Silent)
            .find(|said| !said.changes.is_empty());
        let (exercise, since) = (slot.exercise.clone(), track.since);
        found.push(TrackOf { owner, exercise, load, since, asked, why });
    }
    found
}

/// The loads that it would move, from the session whose turn it is on.
fn moved(
    store: &Store,
    held: &Held,
    place: &str,
    after: barwright_domain::quantity::Mass,
    at: &Reading,
) -> Result<Vec<MovedLoad>, Fault> {
    let (Some(plan), Some((owner, changes))) = (held.plan.as_deref(), says(held, place, after))
    else {
        return Ok(Vec::new());
    };
    let Some(next) = next_place(store, held)? else { return Ok(Vec::new()) };
    let gym = held.gym();
    let source = source(held, plan, &gym, next);
    let (moves, slugs) = match &owner {
        Owner::Max(lift) => (Moves::Max(lift), prescribe::taking_from(source, lift)),
        Owner::Track(track) => {
            let of = tracks(held).into_iter().find(|known| known.owner == owner);
            (Moves::Track(*track), of.into_iter().map(|of| of.exercise).collect())
        }
        Owner::Loose(_) | Owner::Care(_) => return Ok(Vec::new()),
    };
    let before = lifter(store, held.desk_now(), &slugs, at, None)?;
    let mut then = before.clone();
    then.desk.owners.said(&owner, at.local_day(), Why::Entered, changes);
    Ok(prescribe::moved_loads(source, moves, MovedFrom::Here, &before, &then))
}
