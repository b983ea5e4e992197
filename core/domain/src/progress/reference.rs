//! The max that percentages are taken from: entered, tested, or raised from estimates; dated, so
//! that past sessions keep theirs.

use serde::{Deserialize, Serialize};

use super::estimate::{Estimate, Formula, MOST_REPS_FOR_REFERENCE, Nearness};
use crate::plan::RaiseMax;
use crate::quantity::{Mass, Percent, Reps, Reserve, Rounding};
use crate::volume::EASIEST_HARD;

/// Where a reference max comes from.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum MaxSource {
    /// Somebody entered it.
    Entered,
    /// It was lifted.
    Tested,
    /// An estimate raised it.
    Estimated(Estimate),
}

/// A reference max from a day on.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct ReferenceMax {
    /// Local date, in days since 1970-01-01.
    pub day: i32,
    /// The max.
    pub max: Mass,
    /// Where it comes from.
    pub source: MaxSource,
}

/// A set that a max may be raised by.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct RaisingSet {
    /// What was moved.
    pub moved: Mass,
    /// Repetitions made without help.
    pub reps: Reps,
    /// What was called; none where it was not.
    pub left: Option<Reserve>,
    /// Whether the next repetition failed.
    pub failed: bool,
    /// Whether it was a try of a test.
    pub test: bool,
    /// Whether a spotter helped.
    pub helped: bool,
}

/// The max that held on a day: the latest entry that is not after it.
pub fn on(history: &[ReferenceMax], day: i32) -> Option<&ReferenceMax> {
    history
        .iter()
        .filter(|entry| entry.day <= day)
        // Of two on one day the later entry holds, which `max_by_key` gives.
        .max_by_key(|entry| entry.day)
}

/// A working max: a share of the reference max. `None` past the range.
pub fn working(max: Mass, share: Percent) -> Option<Mass> {
    share.of(max)
}

/// The max that today's sets raise it to, if the plan lets them: the heaviest single of a test; or
/// the best estimate of a hard set with no more than ten repetitions to failure. Never lower than
/// it was, and an estimate is taken down to a multiple of `step`.
pub fn raised(
    current: Option<Mass>,
    rule: RaiseMax,
    day: i32,
    sets: &[RaisingSet],
    formula: Formula,
    step: Mass,
) -> Option<ReferenceMax> {
    let tested = sets
        .iter()
        .filter(|set| rule != RaiseMax::Never && set.test && set.reps >= 1 && !set.helped)
        .map(|set| ReferenceMax { day, max: set.moved, source: MaxSource::Tested })
        .max_by_key(|entry| entry.max);
    if let Some(tested) = tested {
        // A test says what the max is today, higher or lower.
        return Some(tested).filter(|tested| current != Some(tested.max));
    }
    if rule != RaiseMax::Estimates {
        return None;
    }
    sets.iter()
        .filter_map(|set| estimate(set, formula))
        .max_by_key(|estimate| estimate.max)
        .and_then(|estimate| {
            let max = estimate.max.to_multiple(step, Rounding::Down)?;
            Some(ReferenceMax { day, max, source: MaxSource::Estimated(estimate) })
        })
        .filter(|entry| current.is_none_or(|current| entry.max > current))
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

fn estimate(set: &RaisingSet, formula: Formula) -> Option<Estimate> {
    let nearness = match (set.failed, set.left) {
        (true, _) => Nearness::Failed,
        (false, Some(left)) if left <= EASIEST_HARD => Nearness::Called(left),
        // An easy or uncalled set is no evidence of a max.
        (false, _) => return None,
    };
    let left = match nearness {
        Nearness::Failed => 0,
        Nearness::Called(left) => u16::from(left.halves()),
    };
    let to_failure = set.reps.saturating_mul(2).saturating_add(left);
    if set.helped || to_failure > MOST_REPS_FOR_REFERENCE * 2 {
        return None;
    }
    Estimate::of(set.moved, set.reps, nearness, formula).ok()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::Numerals;

    fn kg(text: &str) -> Mass {
        Mass::read(&format!("{text} kg"), Numerals::Point).unwrap()
    }

    fn set(moved: &str, reps: Reps, halves_left: Option<u8>) -> RaisingSet {
        RaisingSet {
            moved: kg(moved),
            reps,
            left: halves_left.and_then(Reserve::from_halves),
            failed: false,
            test: false,
            helped: false,
        }
    }

    fn raise(rule: RaiseMax, current: &str, sets: &[RaisingSet]) -> Option<ReferenceMax> {
        raised(Some(kg(current)), rule, 20_000, sets, Formula::Epley, kg("0.5"))
    }

    #[test]
    fn past_sessions_keep_theirs() {
        let entry = |day, max| ReferenceMax { day, max: kg(max), source: MaxSource::Entered };
        let history = [entry(10, "100"), entry(20, "105"), entry(20, "107.5"), entry(30, "95")];
        let max = |day| on(&history, day).map(|entry| entry.max);
        assert_eq!(max(9), None);
        assert_eq!((max(10), max(19)), (Some(kg("100")), Some(kg("100"))));
        assert_eq!((max(20), max(31)), (Some(kg("107.5")), Some(kg("95"))));
    }

    #[test]
    fn estimates_raise_and_never_lower() {
        // 140 · (1 + 6/30) = 168, five with one left.
        let sets = [set("140", 5, Some(2)), set("130", 5, Some(2))];
        let raised = raise(RaiseMax::Estimates, "160", &sets).unwrap();
        assert_eq!(raised.max, kg("168"));
        assert!(
            matches!(raised.source, MaxSource::Estimated(estimate) if estimate.max == kg("168"))
        );
        assert_eq!(raise(RaiseMax::Estimates, "170", &sets), None);
        assert_eq!(raise(RaiseMax::Tests, "160", &sets), None);
        assert_eq!(raise(RaiseMax::Never, "160", &sets), None);
        // 142.5 · (1 + 6.5/30) = 173.375, taken down to a half kilogram.
        let sets = [set("142.5", 6, Some(1))];
        assert_eq!(raise(RaiseMax::Estimates, "160", &sets).unwrap().max, kg("173"));
    }

    #[test]
    fn what_raises_no_max() {
        let helped = RaisingSet { helped: true, ..set("140", 5, Some(0)) };
        for set in [
            set("140", 11, Some(0)),
            set("140", 9, Some(3)),
            set("140", 5, Some(9)),
            set("140", 5, None),
            helped,
        ] {
            assert_eq!(raise(RaiseMax::Estimates, "100", &[set]), None, "{set:?}");
        }
        let failed = RaisingSet { failed: true, ..set("140", 10, None) };
        assert!(raise(RaiseMax::Estimates, "100", &[failed]).is_some());
    }

    #[test]
    fn a_test_says_what_it_is() {
        let try_of = |moved, reps| RaisingSet { test: true, ..set(moved, reps, None) };
        let tries = [try_of("150", 1), try_of("157.5", 1), try_of("162.5", 0)];
        let tested = raise(RaiseMax::Tests, "160", &tries).unwrap();
        assert_eq!((tested.max, tested.source), (kg("157.5"), MaxSource::Tested));
        assert_eq!(raise(RaiseMax::Never, "160", &tries), None);
        assert_eq!(raise(RaiseMax::Tests, "160", &[try_of("165", 0)]), None);
    }

    #[test]
    fn what_the_estimates_support() {
        let estimate = |load| Estimate::of(kg(load), 5, Nearness::Failed, Formula::Epley).unwrap();
        let left = Reserve::from_halves(2).unwrap();
        // The best is 120 · 7/6 = 140; for four with one left, 140 / (1 + 5/30) = 120.
        let figure = supported([estimate("110"), estimate("120")], 4, left, Mass::ZERO);
        assert_eq!(figure, Some(kg("120")));
        assert_eq!(supported([estimate("120")], 4, left, kg("80")), Some(kg("40")));
        assert_eq!(supported([estimate("120")], 1, Reserve::NONE, Mass::ZERO), Some(kg("140")));
        assert_eq!(supported([], 4, left, Mass::ZERO), None);
        assert_eq!(supported([estimate("120")], 30, left, Mass::ZERO), None);
    }
}
