//! What another max changes in the weeks to come.

use super::entry;
use super::lifter::Lifter;
use super::slot::Slot;
use super::source::Source;
use crate::call::{LoadCall, MaxOf};
use crate::plan::Entry;
use crate::quantity::Mass;
use crate::session::{CallLoad, EntryId};

/// A load of a later session, before and after a max changed.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct MovedLoad {
    /// The week, from 0.
    pub week: usize,
    /// The session of the week, from 0.
    pub index: usize,
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

/// The loads that a changed max of `lift` moves in the sessions after this place. Where the plan
/// has none after it, `from_the_start` asks what it would move in the plan done again: by the
/// plan's own numbers alone, since what is done by then nobody knows.
pub fn moved_loads(
    source: Source<'_>,
    lift: &str,
    before: &Lifter,
    after: &Lifter,
    from_the_start: bool,
) -> Vec<MovedLoad> {
    let plan = source.plan;
    let here = (source.week, source.index);
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
    let places = (0..plan.weeks.len())
        .flat_map(|week| (0..plan.sessions_of(week).len()).map(move |index| (week, index)))
        .filter(|place| from_the_start || *place > here);
    let mut moved = Vec::new();
    for (week, index) in places {
        let there = Source { week, index, ..source };
        let Some(session) = plan.session_as_written(week, index) else { continue };
        for of in session.exercises.iter().filter(|entry| takes_from(entry, lift)) {
            let Some(exercise) = source.catalogue.get(&of.exercise) else { continue };
            let first = |lifter: &Lifter| {
                let slot = Slot::new(there, lifter, &session, of, exercise);
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
                    week,
                    index,
                    session: session.name.clone(),
                    exercise: of.exercise.clone(),
                    name: exercise.name.to_string(),
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
