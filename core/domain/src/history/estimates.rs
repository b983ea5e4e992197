//! What sets that were done say of a max.

use super::row::DoneSet;
use crate::call::{Ending, SetKind};
use crate::progress::estimate::{Estimate, Formula, MOST_REPS_FOR_REFERENCE, Nearness};
use crate::quantity::{Mass, Reps, Reserve};
use crate::volume::EASIEST_HARD;

/// The estimate that a set gives, if it is evidence of one: called or failed, no parts, no help,
/// no bands, and not of a warm-up.
pub fn estimate(set: &DoneSet, formula: Formula) -> Option<Estimate> {
    let (reps, nearness) = evidence(set)?;
    Estimate::of(set.moved?, reps, nearness, formula).ok()
}

/// As [`estimate`], of a hard set with ten repetitions to failure or fewer: it may raise a max.
pub fn hard_estimate(set: &DoneSet, formula: Formula) -> Option<Estimate> {
    let (reps, nearness) = evidence(set)?;
    let left = match nearness {
        Nearness::Failed => Reserve::NONE,
        Nearness::Called(left) => left,
    };
    let halves = reps.saturating_mul(2).saturating_add(u16::from(left.halves()));
    let raises = left <= EASIEST_HARD && halves <= MOST_REPS_FOR_REFERENCE * 2;
    raises.then(|| Estimate::of(set.moved?, reps, nearness, formula).ok()).flatten()
}

/// The figure that estimates support for so many repetitions with so many left: what is moved by
/// the best of them, less the body's part. `None` with none to go by, or outside their range.
pub fn supported(
    estimates: impl IntoIterator<Item = Estimate>,
    reps: Reps,
    left: Reserve,
    body: Mass,
) -> Option<Mass> {
    let best = estimates.into_iter().max_by_key(|estimate| estimate.max)?;
    best.formula.load_for(best.max, reps, left).ok()?.checked_sub(body)
}

fn evidence(set: &DoneSet) -> Option<(Reps, Nearness)> {
    let [part] = set.parts.as_slice() else { return None };
    if !set.is_work() || set.kind == SetKind::Speed || set.helped > 0 || set.bands.is_some() {
        return None;
    }
    let nearness = match (set.ending, set.left) {
        (Ending::Failed, _) => Nearness::Failed,
        (Ending::AsCalled | Ending::Form, Some(left)) => Nearness::Called(left),
        _ => return None,
    };
    Some((part.amount.reps()?, nearness))
}
