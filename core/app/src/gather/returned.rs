//! One lifter's week, as whoever wrote the plan asks for it.

use barwright_domain::history::DoneSet;
use barwright_domain::session::Reading;
use barwright_store::Store;

use super::calendar;
use crate::facts::{Held, Returned};
use crate::fault::{Fault, Refused};

/// The week of the plan in which a session was done last; before the first one the week that comes
/// next.
pub(crate) fn returned<'a>(
    store: &Store,
    held: &'a Held,
    at: &Reading,
) -> Result<Returned<'a>, Fault> {
    let plan = held.plan.as_deref().ok_or(Refused::NothingToGoBy)?;
    let on = held.desk.plan.as_ref().ok_or(Refused::NothingToGoBy)?;
    let calendar = calendar::on(store, held)?;
    let trained = calendar::trained(store, held, on.seq, plan)?;
    let week = trained.last().map(|last| last.at.week);
    let week = week.or(calendar.next.map(|next| next.week)).unwrap_or(1);
    let history = store.history()?;
    let mut sets: Vec<DoneSet> = Vec::new();
    let mut outcomes = Vec::new();
    for one in trained.iter().filter(|one| one.at.week == week) {
        sets.extend(history.sets_in(one.session)?.into_iter().filter(DoneSet::is_work));
        outcomes.extend(held.desk.owners.decided_in(one.session).into_iter().cloned());
    }
    let last = history.last_sessions(None, 1)?.first().map(|session| session.day);
    Ok(Returned { plan, week, calendar, sets, outcomes, last, today: at.local_day() })
}
