//! What was done before: the lifter as the sheet sees them.

use std::collections::BTreeMap;

use barwright_domain::desk::Desk;
use barwright_domain::prescribe::{ENOUGH_PAST, Lifter, MOST_PAST, Past, RECENT_DAYS};
use barwright_domain::session::{PlanPlace, Reading};
use barwright_store::{Store, StoreError};

use super::sheet::place_with;
use crate::facts::{Held, place as places};

/// The lifter with this desk, and what was done of these exercises before a session.
pub(super) fn lifter(
    store: &Store,
    held: &Held,
    desk: Desk,
    exercises: &[String],
    at: &Reading,
    before: Option<u64>,
) -> Result<Lifter, StoreError> {
    let history = store.history()?;
    let last_day = history.last_sessions(before, 1)?.first().map(|session| session.day);
    let today = at.local_day();
    let since = history.first_since(today.saturating_sub(RECENT_DAYS))?;
    let mut past = BTreeMap::new();
    for exercise in exercises {
        let sets = history.recent_sets_of(exercise, before, [ENOUGH_PAST, MOST_PAST], since)?;
        let mut sessions: Vec<Past> = Vec::new();
        let mut of = None;
        for set in sets {
            if of != Some(set.key.session) {
                of = Some(set.key.session);
                let row = history.session(set.key.session)?;
                let place = row.as_ref().and_then(|row| row.place.clone());
                sessions.push(Past {
                    day: set.day,
                    place: place.map(|place| own_place(held, place, exercise)),
                    week_kind: row.map(|row| row.week_kind).unwrap_or_default(),
                    sets: Vec::new(),
                });
            }
            if let Some(session) = sessions.last_mut() {
                session.sets.push(set);
            }
        }
        past.insert(exercise.clone(), sessions);
    }
    Ok(Lifter { desk, today, last_day, past })
}

/// Where the plan has an exercise that was done at a place: there, or in the session joined to it.
fn own_place(held: &Held, place: PlanPlace, exercise: &str) -> PlanPlace {
    let here = held.desk.plan.as_ref().is_some_and(|adopted| adopted.seq == place.plan);
    let (Some(plan), true) = (held.plan.as_deref(), here) else { return place };
    let own = place_with(held, plan, places::of_plan(&place), exercise);
    PlanPlace { week: own.week, session: own.session, ..place }
}
