//! When a lifter is asked what guards them: a bar over the body, and a set that is hard enough for
//! it to come down.

use super::event::Guard;
use super::reason::{Because, Reason};
use super::sheet::{Call, Load};
use super::state::{EntryRun, SetRun};
use crate::call::{EffortTarget, Flow, HowMany, SetKind, Stop, Structure};
use crate::progress::percent;
use crate::quantity::{Mass, Percent, Reserve};

/// From this share of the max on a set is heavy enough to ask (common practice).
const HEAVY: Percent = Percent::whole(85);

/// What is kept in reserve where nothing guards, and from where on it is asked (common practice).
pub(super) const TWO_LEFT: Reserve = match Reserve::from_halves(4) {
    Some(reserve) => reserve,
    None => Reserve::NONE,
};

impl EntryRun {
    /// Whether they are under a bar with neither pins nor a spotter.
    pub fn unguarded(&self) -> bool {
        self.entry.over_body && self.guard == Some(Guard::Neither)
    }

    /// Whether what guards them is asked for a set: under a bar, and within two of failure, open,
    /// a test, or at 85 % of the max and more. Never for a warm-up step.
    pub fn asks_guard(&self, set: &SetRun) -> bool {
        let call = &set.call;
        self.entry.over_body
            && call.kind != SetKind::Ramp
            && (call.kind == SetKind::Test || is_near_failure(call) || self.is_heavy(set))
    }

    fn is_heavy(&self, set: &SetRun) -> bool {
        let load = set.first_load().and_then(|load| Load::moved(load).max(load.meant));
        let least = self.max().and_then(|max| HEAVY.of(max));
        let by_max = load.zip(least).is_some_and(|(load, least)| load >= least);
        let table = || {
            let HowMany::Reps(reps) = set.call.how_many else { return None };
            Some(percent::for_reps(reps.from, set.call.effort?.left.from)?.percent)
        };
        by_max || table().is_some_and(|percent| percent >= HEAVY)
    }

    /// The max that its loads are taken from, where one is.
    fn max(&self) -> Option<Mass> {
        let tested = self.entry.test.and_then(|expected| expected.max);
        tested.or_else(|| self.entry.calls.iter().find_map(|call| max_of(&call.reason)))
    }
}

fn max_of(reason: &Reason) -> Option<Mass> {
    let working = reason.0.iter().find_map(|because| match because {
        Because::WorkingMax { of, .. } => Some(*of),
        _ => None,
    });
    working.or_else(|| {
        reason.0.iter().find_map(|because| match because {
            Because::ShareOfMax { max, .. } | Because::ShareOfEstimate { max, .. } => Some(*max),
            _ => None,
        })
    })
}

/// Within two of failure, by what is asked.
fn is_near_failure(call: &Call) -> bool {
    let near = |target: EffortTarget| target.left.from <= TWO_LEFT;
    let until = match call.flow {
        Flow::Climb { to, .. } => Some(to),
        Flow::Repeat { until, .. } => Some(until),
        Flow::Listed | Flow::Clock { .. } | Flow::Test { .. } | Flow::Total { .. } => None,
    };
    let open = match call.how_many {
        HowMany::Open { stop: Stop::Reserve(left), .. } => left <= TWO_LEFT,
        HowMany::Open { stop: Stop::Form | Stop::Pace | Stop::Time(_), .. } => true,
        HowMany::Reps(_) | HowMany::Seconds(_) | HowMany::Metres(_) => false,
    };
    let to_failure = goes_to_failure(&call.structure) && call.effort.is_none();
    open || to_failure || call.effort.is_some_and(near) || until.is_some_and(near)
}

/// Sets of parts whose first part is meant near failure, unless something else is said.
pub(super) const fn goes_to_failure(structure: &Structure) -> bool {
    matches!(structure, Structure::RestPause { .. } | Structure::Drop { .. })
}
