//! Where a plan stands: the date of each session, what was done, what was missed, what is next.
//!
//! Dates are local calendar days and nothing else, counted from the day the plan was taken up: a
//! change of time zone or of summer time moves none of them.

use chrono::Weekday;

use super::arranged::Arranged;
use super::at::At;
use crate::history::{first_day, week_of};
use crate::plan::Plan;

/// A session of the plan that was trained.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct TrainedAt {
    /// Where it stands in the plan.
    pub at: At,
    /// Its local date.
    pub day: i32,
    /// The log's number of its beginning.
    pub session: u64,
}

/// How a session of the plan stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Standing {
    /// Done on this local date.
    Done(i32),
    /// Its work was done with another session's, on this local date.
    DoneWith(At, i32),
    /// Its work is to be done with another's.
    With(At),
    /// It comes next.
    Next,
    /// It was done and comes once more.
    Again,
    /// A later one was done and it was not.
    Missed,
    /// It was left out on purpose.
    LeftOut,
    /// It stands before the place where the plan was taken up.
    Before,
    /// It is still to come.
    ToCome,
}

/// A session with its date and how it stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Dated {
    /// Where it stands in the plan.
    pub at: At,
    /// The local date it is meant for, where the plan or the lifter names one.
    pub due: Option<i32>,
    /// It was moved there.
    pub moved: bool,
    /// How it stands.
    pub standing: Standing,
}

/// The sessions of a plan in the order they are to be done.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Calendar {
    /// The sessions.
    pub sessions: Vec<Dated>,
    /// The one that comes next; none when all is done.
    pub next: Option<At>,
}

impl Calendar {
    /// How many sessions that are still to come were meant for a day before this local date.
    pub fn behind(&self, today: i32) -> usize {
        let behind = |one: &&Dated| {
            matches!(one.standing, Standing::Next | Standing::ToCome | Standing::Again)
                && one.due.is_some_and(|due| due < today)
        };
        self.sessions.iter().filter(behind).count()
    }
}

/// The calendar of a plan taken up on a local date.
pub fn calendar(plan: &Plan, day: i32, arranged: &Arranged, trained: &[TrainedAt]) -> Calendar {
    let places = places(plan);
    let Some(first) = places.first().map(|(at, _)| *at) else { return Calendar::default() };
    let (entry, from, since) = arranged.entered.unwrap_or((first, day, 0));
    let weekday_of_entry = places.iter().find(|(at, _)| *at == entry).and_then(|(_, day)| *day);
    // The week of the first such weekday on or after the day it was taken up.
    let monday = first_day(week_of(match weekday_of_entry {
        Some(weekday) => on_or_after(from, weekday),
        None => from,
    }));
    let own = |at: At, weekday: Option<Weekday>| {
        let away: i32 = arranged.travel.range(..=at.week).map(|(_, weeks)| i32::from(*weeks)).sum();
        let weeks = i32::from(at.week).checked_sub(i32::from(entry.week))?.checked_add(away)?;
        let days = i32::try_from(weekday?.num_days_from_monday()).ok()?;
        monday.checked_add(weeks.checked_mul(7)?)?.checked_add(days)
    };
    let mut dated: Vec<(i32, Dated)> = Vec::with_capacity(places.len());
    let mut before = i32::MIN;
    for (at, weekday) in places {
        let own = own(at, weekday).filter(|_| at >= entry);
        let moved = arranged.moved.iter().find(|(one, _)| *one == at).map(|(_, day)| *day);
        let due = moved.or(own);
        // Where the plan names no days, a date alone changes no order.
        let order = own.and(due).unwrap_or(before);
        before = own.unwrap_or(before);
        let standing = Standing::ToCome;
        dated.push((order, Dated { at, due, moved: moved.is_some(), standing }));
    }
    dated.sort_by_key(|(order, _)| *order);
    let mut sessions: Vec<Dated> = dated.into_iter().map(|(_, one)| one).collect();
    let done = |at: At, since: u64| {
        trained.iter().rev().find(|one| one.at == at && one.session > since).copied()
    };
    let furthest = sessions.iter().rposition(|one| done(one.at, since).is_some());
    let mut next = None;
    for (nth, one) in sessions.iter_mut().enumerate() {
        let at = one.at;
        let joined = arranged.with.iter().find(|(joined, ..)| *joined == at);
        let again = arranged.again.iter().find(|(one, _)| *one == at);
        let open = again.is_some_and(|(_, seq)| done(at, *seq).is_none());
        one.standing = if open {
            Standing::Again
        } else if let Some(done) = done(at, since) {
            Standing::Done(done.day)
        } else if let Some((_, other, seq)) = joined {
            done(*other, *seq)
                .map_or(Standing::With(*other), |done| Standing::DoneWith(*other, done.day))
        } else if at < entry {
            done(at, 0).map_or(Standing::Before, |done| Standing::Done(done.day))
        } else if arranged.left_out.contains(&at) {
            Standing::LeftOut
        } else if furthest.is_some_and(|furthest| nth < furthest) {
            Standing::Missed
        } else {
            Standing::ToCome
        };
        if next.is_none() && matches!(one.standing, Standing::ToCome | Standing::Again) {
            next = Some(at);
            if one.standing == Standing::ToCome {
                one.standing = Standing::Next;
            }
        }
    }
    Calendar { sessions, next }
}

/// The sessions of a plan in its own order, each with its weekday.
fn places(plan: &Plan) -> Vec<(At, Option<Weekday>)> {
    let mut places = Vec::new();
    for week in 0..plan.weeks.len() {
        for (index, session) in plan.sessions_of(week).into_iter().enumerate() {
            let (Ok(week), Ok(index)) = (u16::try_from(week + 1), u16::try_from(index + 1)) else {
                continue;
            };
            let weekday = plan.sessions.get(session).and_then(|session| session.day);
            places.push((At { week, session: index }, weekday));
        }
    }
    places
}

/// The first such weekday on or after a day.
fn on_or_after(day: i32, weekday: Weekday) -> i32 {
    // 1970-01-01 was a Thursday, the fourth day from Monday.
    let today = day.wrapping_add(3).rem_euclid(7);
    let wanted = i32::try_from(weekday.num_days_from_monday()).unwrap_or(0);
    day.saturating_add((wanted - today).rem_euclid(7))
}
