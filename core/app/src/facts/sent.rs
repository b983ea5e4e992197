//! What a coach sent, beside what stands now.

use barwright_domain::desk::{At, Desk, Sent, SentChange, SentWhat};
use barwright_domain::owners::Owner;
use barwright_domain::plan::{Plan, by_hand};
use barwright_domain::quantity::Mass;

use super::{Held, mended, place};

/// A file of changes, each beside what stands now.
pub(crate) struct SentFile {
    pub(crate) file: Sent,
    pub(crate) changes: Vec<SentNow>,
}

/// A change beside what stands now.
pub(crate) struct SentNow {
    pub(crate) change: SentChange,
    /// Of a max or a load: what it is now.
    pub(crate) mass: Option<Mass>,
    pub(crate) state: SentState,
}

/// How a change stands to what is here.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum SentState {
    /// It was taken.
    Taken,
    /// What it was decided on stands still.
    Fits,
    /// The lifter did something since: what stands is no longer what it was decided on.
    Apart,
    /// There is nothing here that it could change.
    Nothing,
}

/// Puts each change beside what stands; `next` is the session whose turn it is.
pub(crate) fn sent(held: &Held, next: Option<At>, file: Sent) -> SentFile {
    let desk = held.desk_now();
    let changes = file.changes.iter().map(|change| {
        let (mass, mut state) = stands(held, (&desk, next), &change.what);
        if held.desk.has_taken(&file.id, &change.id) {
            state = SentState::Taken;
        }
        SentNow { change: change.clone(), mass, state }
    });
    SentFile { changes: changes.collect(), file }
}

fn stands(
    held: &Held,
    (desk, next): (&Desk, Option<At>),
    what: &SentWhat,
) -> (Option<Mass>, SentState) {
    let state = |here: bool, same: bool| match (here, same) {
        (false, _) => SentState::Nothing,
        (true, true) => SentState::Fits,
        (true, false) => SentState::Apart,
    };
    let on = |on: u64| held.desk.plan.as_ref().is_some_and(|plan| plan.text_seq == on);
    match what {
        SentWhat::Max { exercise, was, .. } => {
            let now = desk.owners.max(exercise).now.map(|(mass, ..)| mass);
            (now, state(held.catalogue.get(exercise).is_some(), now == *was))
        }
        SentWhat::Load { track, exercise, was, .. } => {
            let owner = Owner::Track(*track);
            let now = desk.owners.track(&owner).load;
            let here = exercise_of(held, &owner).is_some_and(|slug| slug == exercise);
            (now, state(here && now.is_some(), now == Some(*was)))
        }
        SentWhat::Swap { exercise, with, on: text } => {
            // Whether the plan's text lets it be exchanged is seen when it is: a file of many of them
            // is shown at once.
            let sessions = held.plan.iter().flat_map(|plan| &plan.sessions);
            let mut slots = sessions.flat_map(|session| &session.exercises);
            let here = slots.any(|slot| slot.exercise == *exercise)
                && exercise != with
                && held.catalogue.get(with).is_some();
            (None, state(here, on(*text)))
        }
        SentWhat::Plan { text, on: before } => {
            let read = Plan::read(text, &held.known).ok();
            let here = read.is_some_and(|read| mended(held, &read.plan, false).is_some());
            (None, state(here, on(*before)))
        }
        SentWhat::Week { week, next: was } => {
            let at = At { week: *week, session: 1 };
            let here = held.plan.as_deref().is_some_and(|plan| place::is_in(plan, at));
            (None, state(here, next.map(place::name) == *was))
        }
    }
}

/// The exercise of a row of the plan that is on whose load this owns.
pub(crate) fn exercise_of<'a>(held: &'a Held, owner: &Owner) -> Option<&'a str> {
    let rows = held.desk.plan.iter().flat_map(|plan| &plan.rows);
    let row = rows.into_iter().find(|row| Owner::Track(row.track) == *owner)?;
    let session = held.plan.as_deref()?.sessions.get(usize::from(row.session))?;
    Some(&session.exercises.get(usize::from(row.slot))?.exercise)
}

/// A plan's text with another exercise wherever one stands; none where that can't be.
pub(crate) fn swapped(held: &Held, text: &str, exercise: &str, with: &str) -> Option<String> {
    let found = held.catalogue.get(with).filter(|_| with != exercise)?;
    let plan = Plan::read(text, &held.known).ok()?.plan;
    let places = plan.sessions.iter().enumerate().flat_map(|(session, of)| {
        let slots = of.exercises.iter().enumerate();
        let slots = slots.filter(|(_, slot)| slot.exercise == exercise);
        slots.map(move |(slot, _)| (session, slot))
    });
    let mut swapped = None;
    for place in places {
        let before = swapped.as_deref().unwrap_or(text);
        swapped = Some(by_hand::exchange(before, place, found, &held.known).ok()?);
    }
    swapped.filter(|text| Plan::read(text, &held.known).is_ok())
}
