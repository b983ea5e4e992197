//! What another max or working load changes in the weeks to come.

use super::entry;
use super::lifter::Lifter;
use super::slot::{Slot, liked_gym};
use super::source::Source;
use crate::call::{LoadCall, MaxOf};
use crate::desk::At;
use crate::owners::TrackId;
use crate::plan::{Entry, Plan};
use crate::quantity::Mass;
use crate::session::{CallLoad, EntryId};

/// A load of a later session, before and after a max changed.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct MovedLoad {
    /// The session of the plan.
    pub at: At,
    /// The session's name.
    pub session: String,
    /// The exercise, by its slug.
    pub exercise: String,
    /// Its name.
    pub name: String,
    /// The first work load as it was, counted as the exercise counts.
    pub before: Mass,
    /// And as it is now.
    pub after: Mass,
}

/// Whose loads move.
#[derive(Debug, Clone, Copy)]
pub enum Moves<'a> {
    /// Those that are a share of a lift's max.
    Max(&'a str),
    /// Those of a track of the plan that is on.
    Track(TrackId),
}

/// Which sessions are asked about.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum MovedFrom {
    /// The one of the place, and those after it.
    Here,
    /// Those after it.
    After,
    /// The plan done again: by the plan's own numbers alone, since what is done by then nobody knows.
    Start,
}

/// The loads that a changed owner moves in sessions of the plan.
pub fn moved_loads(
    source: Source<'_>,
    what: Moves<'_>,
    from: MovedFrom,
    before: &Lifter,
    after: &Lifter,
) -> Vec<MovedLoad> {
    let from_the_start = from == MovedFrom::Start;
    let rows = after.desk.plan.as_ref().map(|plan| plan.rows.as_slice()).unwrap_or_default();
    let moves = |place: usize, entry: &Entry| match what {
        Moves::Max(lift) => takes_from(entry, lift),
        Moves::Track(track) => rows.iter().any(|row| {
            row.track == track
                && (usize::from(row.session), usize::from(row.slot)) == (place, entry.slot)
        }),
    };
    let again = |lifter: &Lifter| Lifter {
        desk: lifter.desk.clone(),
        today: lifter.today,
        ..Lifter::default()
    };
    let (before, after) = if from_the_start {
        (again(before), again(after))
    } else {
        (before.clone(), after.clone())
    };
    let sessions = source.everywhere().filter(|there| match from {
        MovedFrom::Start => true,
        MovedFrom::Here => there.at >= source.at,
        MovedFrom::After => there.at > source.at,
    });
    let mut moved = Vec::new();
    for there in sessions {
        let Some(session) = there.session() else { continue };
        for of in session.exercises.iter().filter(|entry| moves(session.session, entry)) {
            let Some(exercise) = source.catalogue.get(&of.exercise) else { continue };
            let first = |lifter: &Lifter| {
                let gym = liked_gym(there, lifter, exercise);
                let liked = Source { equipment: &gym, ..there };
                let slot = Slot::new(liked, lifter, &session, of, exercise);
                let laid_out = entry::entry(&slot, EntryId(0), &[], &mut Vec::new());
                laid_out.calls.iter().filter(|call| call.round > 0).find_map(|call| {
                    match &call.load {
                        CallLoad::Known(load) => load.figure,
                        CallLoad::AfterTop { .. } | CallLoad::Chosen { .. } => None,
                    }
                })
            };
            if let (Some(before), Some(after)) = (first(&before), first(&after))
                && before != after
            {
                moved.push(MovedLoad {
                    at: there.at,
                    session: session.name.clone(),
                    exercise: of.exercise.clone(),
                    name: exercise.name_in(source.catalogue.tongue()).to_owned(),
                    before,
                    after,
                });
            }
        }
    }
    moved
}

/// The exercises of the plan whose loads are a share of a lift's max.
pub fn taking_from(source: Source<'_>, lift: &str) -> Vec<String> {
    let plan = source.plan;
    let sessions = (0..plan.weeks.len())
        .flat_map(|week| (0..plan.sessions_of(week).len()).map(move |index| (week, index)));
    let mut slugs: Vec<String> = sessions
        .filter_map(|(week, index)| plan.session(week, index))
        .flat_map(|session| session.exercises)
        .filter(|entry| takes_from(entry, lift))
        .map(|entry| entry.exercise)
        .collect();
    slugs.sort();
    slugs.dedup();
    slugs
}

/// Whether a load of an exercise is a share of a lift's max.
fn takes_from(entry: &Entry, lift: &str) -> bool {
    entry.blocks.iter().flat_map(|block| &block.sets).any(|set| match &set.load {
        LoadCall::Percent { of: MaxOf::Own | MaxOf::Working, .. } => entry.exercise == lift,
        LoadCall::Percent { of: MaxOf::Lift(other) | MaxOf::WorkingOf(other), .. } => other == lift,
        _ => false,
    })
}

/// The lifts whose maxes the plan takes loads from, by slug.
pub fn lifts_of(plan: &Plan) -> Vec<String> {
    let places = (0..plan.weeks.len())
        .flat_map(|week| (0..plan.sessions_of(week).len()).map(move |index| (week, index)));
    let mut lifts = Vec::new();
    for entry in
        places.filter_map(|(week, index)| plan.session(week, index)).flat_map(|it| it.exercises)
    {
        for set in entry.blocks.iter().flat_map(|block| &block.sets) {
            let lift = match &set.load {
                LoadCall::Percent { of: MaxOf::Own | MaxOf::Working, .. } => &entry.exercise,
                LoadCall::Percent { of: MaxOf::Lift(other) | MaxOf::WorkingOf(other), .. } => other,
                _ => continue,
            };
            if !lifts.contains(lift) {
                lifts.push(lift.clone());
            }
        }
    }
    lifts
}
