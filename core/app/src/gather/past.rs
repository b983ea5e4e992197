//! What was done before: the lifter as the sheet sees them.

use std::collections::BTreeMap;

use barwright_domain::desk::Desk;
use barwright_domain::prescribe::{ENOUGH_PAST, Lifter, MOST_PAST, Past, RECENT_DAYS};
use barwright_domain::session::Reading;
use barwright_store::{Moment, Store, StoreError};

/// The lifter with this desk, and what was done of these exercises before a session.
pub(super) fn lifter(
    store: &Store,
    desk: Desk,
    exercises: &[String],
    at: &Reading,
    before: Option<Moment>,
) -> Result<Lifter, StoreError> {
    let history = store.history()?;
    let today = at.local_day();
    let since = today.saturating_sub(RECENT_DAYS);
    let mut past = BTreeMap::new();
    for exercise in exercises {
        let sets = history.recent_sets_of(exercise, before, [ENOUGH_PAST, MOST_PAST], since)?;
        let mut sessions: Vec<Past> = Vec::new();
        let mut of = None;
        for set in sets {
            if of != Some(set.key.session) {
                of = Some(set.key.session);
                sessions.push(Past { day: set.day, sets: Vec::new() });
            }
            if let Some(session) = sessions.last_mut() {
                session.sets.push(set);
            }
        }
        past.insert(exercise.clone(), sessions);
    }
    Ok(Lifter { desk, today, past })
}
