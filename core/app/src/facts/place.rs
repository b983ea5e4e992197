//! A session of the plan: its name as a row, and where the plan has it.

use barwright_domain::desk::At;
use barwright_domain::plan::Plan;
use barwright_domain::session::PlanPlace;

/// Its name as a row: "2.1".
pub(crate) fn name(at: At) -> String {
    format!("{}.{}", at.week, at.session)
}

/// The place of a row's name.
pub(crate) fn named(name: &str) -> Option<At> {
    let (week, session) = name.split_once('.')?;
    let from_one = |text: &str| text.parse::<u16>().ok().filter(|number| *number > 0);
    Some(At { week: from_one(week)?, session: from_one(session)? })
}

/// Where a session of the log stands in its plan.
pub(crate) fn of_plan(place: &PlanPlace) -> At {
    At { week: place.week, session: place.session }
}

/// Whether the plan has it.
pub(crate) fn is_in(plan: &Plan, at: At) -> bool {
    let (week, session) = at.nth();
    week < plan.weeks.len() && session < plan.sessions_of(week).len()
}

/// Where a session of this name stands now that was done at a place: a plan that was mended may have
/// it elsewhere in the week.
pub(crate) fn in_plan(plan: &Plan, at: At, name: &str) -> At {
    let (week, _) = at.nth();
    if called(plan, at) == Some(name) || week >= plan.weeks.len() {
        return at;
    }
    let sessions = plan.sessions_of(week);
    let named = |session: &usize| plan.sessions.get(*session).is_some_and(|one| one.name == name);
    let found = sessions.iter().position(named).and_then(|at| u16::try_from(at + 1).ok());
    found.map_or(at, |session| At { week: at.week, session })
}

/// What the plan calls it.
pub(crate) fn called(plan: &Plan, at: At) -> Option<&str> {
    let (week, session) = at.nth();
    let session = *plan.sessions_of(week).get(session)?;
    plan.sessions.get(session).map(|session| session.name.as_str())
}

/// A local date as it is typed: "2026-11-23", in days since 1970-01-01.
pub(crate) fn day_of(text: &str) -> Option<i32> {
    let date = chrono::NaiveDate::parse_from_str(text.trim(), "%Y-%m-%d").ok()?;
    Some(date.to_epoch_days())
}
