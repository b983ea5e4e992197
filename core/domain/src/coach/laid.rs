//! The plan laid out week by week, as the checks walk it.

use crate::call::{Flow, HowMany, LoadCall, MaxOf, Structure, WeekKind};
use crate::plan::{Block, Entry, Plan, SetCall, WeekSession};
use crate::quantity::{Percent, Reps};

/// Every session of every week.
pub(super) struct Laid {
    weeks: Vec<(WeekKind, Vec<WeekSession>)>,
}

/// A row of sets in a week, and whose it is.
#[derive(Clone, Copy)]
pub(super) struct Row<'a> {
    pub(super) entry: &'a Entry,
    pub(super) block: &'a Block,
}

impl Laid {
    pub(super) fn of(plan: &Plan) -> Self {
        let of_week = |week: usize| -> Vec<WeekSession> {
            let count = plan.sessions_of(week).len();
            (0..count).filter_map(|index| plan.session(week, index)).collect()
        };
        let weeks = plan.weeks.iter().enumerate();
        Self { weeks: weeks.map(|(week, of)| (of.kind, of_week(week))).collect() }
    }

    /// The weeks of a kind, from 0, with their sessions.
    pub(super) fn of_kind(&self, kind: WeekKind) -> impl Iterator<Item = (usize, &[WeekSession])> {
        let weeks = self.weeks.iter().enumerate();
        weeks.filter(move |(_, (of, _))| *of == kind).map(|(at, (_, all))| (at, all.as_slice()))
    }

    /// Every week, from 0, with its kind and its sessions.
    pub(super) fn weeks(&self) -> impl Iterator<Item = (usize, WeekKind, &[WeekSession])> {
        let weeks = self.weeks.iter().enumerate();
        weeks.map(|(week, (kind, sessions))| (week, *kind, sessions.as_slice()))
    }

    /// The sessions of a week.
    pub(super) fn week(&self, week: usize) -> &[WeekSession] {
        self.weeks.get(week).map(|(_, sessions)| sessions.as_slice()).unwrap_or_default()
    }

    /// Whether no week has both of two sessions.
    pub(super) fn take_turns(&self, one: usize, other: usize) -> bool {
        let has = |all: &[WeekSession], session| all.iter().any(|of| of.session == session);
        !self.weeks.iter().any(|(_, all)| has(all, one) && has(all, other))
    }

    /// The ordinary week last before one.
    pub(super) fn ordinary_before(&self, week: usize) -> Option<usize> {
        self.of_kind(WeekKind::Ordinary).map(|(at, _)| at).take_while(|at| *at < week).last()
    }
}

/// The rows of an exercise of a session in the week's sessions, both by their place in the plan.
pub(super) fn rows(
    sessions: &[WeekSession],
    (session, exercise): (usize, usize),
) -> impl Iterator<Item = Row<'_>> {
    let entries = sessions.iter().filter(move |of| of.session == session);
    let entries = entries.flat_map(|of| &of.exercises).filter(move |of| of.slot == exercise);
    entries.flat_map(|entry| entry.blocks.iter().map(move |block| Row { entry, block }))
}

/// Work sets of a row: the most it may come to where the day decides.
pub(super) fn sets(block: &Block) -> u32 {
    match block.flow {
        Flow::Listed | Flow::Clock { .. } => u32::try_from(block.sets.len()).unwrap_or(u32::MAX),
        Flow::Climb { most, .. }
        | Flow::Repeat { most, .. }
        | Flow::Total { most, .. }
        | Flow::Test { most, .. } => u32::from(most),
    }
}

/// Repetitions that a set asks for in one go, at the least; none for a hold or a carry.
pub(super) fn reps(set: &SetCall) -> Option<Reps> {
    match (&set.structure, set.how_many) {
        (Structure::Cluster { blocks, .. }, _) => blocks.iter().copied().max(),
        (_, HowMany::Reps(range)) => Some(range.from),
        (_, HowMany::Open { at_least, .. }) => Some(at_least),
        (_, HowMany::Seconds(_) | HowMany::Metres(_)) => None,
    }
}

/// The share of the lift's own reference max that a set asks for, at the least.
pub(super) fn share(plan: &Plan, exercise: &str, set: &SetCall) -> Option<Percent> {
    let LoadCall::Percent { share, of } = &set.load else { return None };
    match of {
        MaxOf::Own => Some(share.from),
        MaxOf::Working => {
            let own = plan.maxes.iter().find(|rule| rule.lift == exercise);
            let working = own.and_then(|rule| rule.working).unwrap_or(plan.working_max);
            let both = i64::from(share.from.hundredths()) * i64::from(working.hundredths());
            i32::try_from((both + 5_000) / 10_000).ok().map(Percent::from_hundredths)
        }
        // Another lift's max says nothing of how many repetitions this one allows.
        MaxOf::Lift(_) | MaxOf::WorkingOf(_) => None,
    }
}
