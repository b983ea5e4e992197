//! Hard sets done over a span of weeks.

use std::collections::BTreeMap;

use barwright_domain::history::session_volume;
use barwright_domain::plan::Plan;
use barwright_store::{Store, StoreError};

use super::calendar;
use crate::facts::{Balance, Held, Tallies};

/// The most weeks that are laid together.
const MOST_WEEKS: u16 = 52;

/// Over so many weeks of the plan, the current one last.
pub(super) fn of<'a>(
    store: &Store,
    held: &Held,
    plan: &'a Plan,
    weeks: Option<u32>,
) -> Result<Balance<'a>, StoreError> {
    let calendar = calendar::on(store, held)?;
    let of_plan = u16::try_from(plan.weeks.len()).unwrap_or(u16::MAX).max(1);
    let last = calendar.next.map_or(of_plan, |next| next.week);
    let count = u16::try_from(weeks.unwrap_or(1)).unwrap_or(u16::MAX).clamp(1, MOST_WEEKS);
    let span = (last.saturating_sub(count.min(last).saturating_sub(1)).max(1), last);
    Ok(Balance { plan, calendar, span, done: done(store, held, plan, span)? })
}

/// Week by week, the running session's among them.
fn done(
    store: &Store,
    held: &Held,
    plan: &Plan,
    (first, last): (u16, u16),
) -> Result<BTreeMap<u16, Tallies>, StoreError> {
    let mut done: BTreeMap<u16, Tallies> = BTreeMap::new();
    let Some(adopted) = &held.desk.plan else { return Ok(done) };
    let history = store.history()?;
    for session in history.sessions_of_plan(adopted.seq, first..=last)? {
        let volume = match session.outcome {
            Some(outcome) => outcome.volume,
            None => {
                let sets = history.sets_in(session.session)?;
                session_volume(&sets, &held.catalogue, plan.hard_at_left)
            }
        };
        let Some(place) = &session.place else { continue };
        let week = done.entry(place.week).or_default();
        for row in volume {
            let sum = week.entry(row.muscle).or_default();
            *sum = sum.and(row.tally);
        }
    }
    Ok(done)
}
