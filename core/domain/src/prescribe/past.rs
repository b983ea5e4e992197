//! What was done before, as the sheet shows it and holds what it asks against it.

use std::cmp::Ordering;

use super::lifter::{Past, RECENT_DAYS};
use super::slot::Slot;
use crate::call::{Amount, Side};
use crate::history::{self, DoneSet};
use crate::progress::estimate::{Formula, is_estimated};
use crate::quantity::{Mass, Percent, Reserve};
use crate::session::{Because, Call, LastTime};

/// Last time's line: the latest session with work in it.
pub(super) fn last_time(past: &[Past]) -> Option<LastTime> {
    let work = past.iter().find(|work| work.sets.iter().any(DoneSet::is_work))?;
    let sets = || work.sets.iter().filter(|set| set.is_work());
    Some(LastTime {
        day: work.day,
        figure: sets().filter_map(|set| set.figure).max(),
        amounts: sets().map(DoneSet::amount).collect(),
        left_halves: sets().next_back().and_then(|set| set.left).map(Reserve::halves),
    })
}

/// The weaker side, as the latest session in which the two differ shows it: less on, then less done.
/// Once the weaker works first the stronger stops where it did, so later ones may show nothing.
pub(super) fn weaker(past: &[Past]) -> Option<Side> {
    past.iter().find_map(|work| {
        let of = |side| {
            let sets = || work.sets.iter().filter(|set| set.is_work() && set.side == Some(side));
            let rounds: Vec<_> = sets().map(|set| (set.row, set.round)).collect();
            (
                sets().filter_map(|set| set.figure).max(),
                sets().map(|set| size(set.amount())).sum::<u32>(),
                rounds,
            )
        };
        let (left, right) = (of(Side::Left), of(Side::Right));
        // A side that was not worked as often says nothing.
        if left.2 != right.2 {
            return None;
        }
        match (left.0, left.1).cmp(&(right.0, right.1)) {
            Ordering::Less => Some(Side::Left),
            Ordering::Equal => None,
            Ordering::Greater => Some(Side::Right),
        }
    })
}

fn size(amount: Amount) -> u32 {
    match amount {
        Amount::Reps(reps) => reps.into(),
        Amount::Seconds(seconds) => seconds.count(),
        Amount::Metres(distance) => distance.millimetres(),
    }
}

/// The figure that the last four weeks' estimates support for the fewest repetitions called.
pub(super) fn supported(slot: &Slot<'_>, calls: &[Call]) -> Option<Mass> {
    if !is_estimated(slot.exercise) {
        return None;
    }
    let (reps, left) = calls
        .iter()
        .filter(|call| call.round > 0)
        .filter_map(|call| {
            let reps = call.how_many.as_called().reps()?;
            let left = call.effort.map_or(Reserve::NONE, |target| target.left.from);
            Some((reps.max(1), left))
        })
        .min_by_key(|(reps, left)| u32::from(*reps) * 2 + u32::from(left.halves()))?;
    let formula = Formula::default();
    let since = slot.lifter.today.saturating_sub(RECENT_DAYS);
    let estimates = slot
        .past()
        .iter()
        .filter(|work| work.day >= since)
        .flat_map(|work| &work.sets)
        .filter(|set| set.counting == slot.here.counting)
        .filter_map(|set| history::estimate(set, formula));
    let body = match slot.body {
        Some(body) => body.share.of(body.mass)?,
        None if slot.exercise.body_share.hundredths() > 0 => return None,
        None => Mass::ZERO,
    };
    history::supported(estimates, reps, left, body)
}

/// The max that a test starts from.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct ExpectedMax {
    pub(super) max: Mass,
    /// Local date of what it is known by.
    pub(super) day: i32,
    /// It is an estimate and no reference max.
    pub(super) estimated: bool,
}

impl ExpectedMax {
    /// A share of it, and why.
    pub(super) fn share(&self, share: Percent) -> Option<(Mass, Because)> {
        let Self { max, day, estimated } = *self;
        let gives = share.of(max)?;
        let why = if estimated {
            Because::ShareOfEstimate { share, max, day, gives }
        } else {
            Because::ShareOfMax { share, max, day, of: None, gives }
        };
        Some((gives, why))
    }
}

/// What a test is to start from: the best estimate of the hard sets of the last four weeks, for a
/// lift that is estimated; else, or where it is newer than those sets, the reference max.
pub(super) fn expected(slot: &Slot<'_>) -> Option<ExpectedMax> {
    let known = slot.lifter.desk.owners.max(&slot.exercise.slug).now;
    let known = known.map(|(max, day, _)| ExpectedMax { max, day, estimated: false });
    if !is_estimated(slot.exercise) {
        return known;
    }
    let since = slot.lifter.today.saturating_sub(RECENT_DAYS);
    let sets = slot.past().iter().filter(|work| work.day >= since).flat_map(|work| &work.sets);
    let best = sets
        .filter(|set| set.counting == slot.here.counting)
        .filter_map(|set| {
            let estimate = history::hard_estimate(set, Formula::default())?;
            Some(ExpectedMax { max: estimate.max, day: set.day, estimated: true })
        })
        .max_by_key(|one| one.max);
    match (best, known) {
        (Some(best), Some(known)) if known.day > best.day => Some(known),
        (best, known) => best.or(known),
    }
}
