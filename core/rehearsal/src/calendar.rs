//! The days of a plan's sessions.

use barwright_domain::plan::Plan;

/// The Monday that a rehearsal begins on; any would do (2024-01-01, in days since 1970-01-01).
pub(crate) const BEGINS: i32 = 19_723;

/// One session of the plan, week and place counted from 0.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) struct Date {
    pub(crate) week: usize,
    pub(crate) index: usize,
    pub(crate) day: i32,
}

/// Every session with its day: the plan's own, else spread evenly over the week; never before the
/// one that stands before it.
pub(crate) fn dates(plan: &Plan) -> Vec<Date> {
    let mut dates = Vec::new();
    for week in 0..plan.weeks.len() {
        let sessions = plan.sessions_of(week);
        let count = i32::try_from(sessions.len()).unwrap_or(1).max(1);
        let monday = BEGINS + 7 * i32::try_from(week).unwrap_or(0);
        let mut last = 0;
        for (index, at) in sessions.into_iter().enumerate() {
            let said = plan.sessions.get(at).and_then(|session| session.day);
            let place = i32::try_from(index).unwrap_or(0);
            let day = match said {
                Some(day) => i32::try_from(day.num_days_from_monday()).unwrap_or(0),
                None => place * 7 / count,
            };
            last = day.max(last);
            dates.push(Date { week, index, day: monday + last });
        }
    }
    dates
}
