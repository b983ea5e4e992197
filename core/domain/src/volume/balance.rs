//! Planned against done: what falls behind, and where a set could go.

use serde::{Deserialize, Serialize};

use super::ledger::{Sides, Tally};
use crate::call::Side;
use crate::catalogue::{Exercise, Muscle};

/// A muscle that got less than was planned, in half sets of the fractional count.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct Behind {
    /// The muscle.
    pub muscle: Muscle,
    /// Planned.
    pub planned_halves: u32,
    /// Done.
    pub done_halves: u32,
}

/// A side that got less than the other, in half sets of the fractional count.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct BehindSide {
    /// The muscle.
    pub muscle: Muscle,
    /// The side with less.
    pub side: Side,
    /// Half sets that it has less.
    pub by_halves: u32,
}

/// Weekly sets of a muscle, by the published grouping: under 12 low, 12 to 20 moderate, over 20
/// high (Baz-Valle et al. 2022, J Hum Kinet 81:199–210).
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Level {
    /// Under 12.
    Low,
    /// 12 to 20.
    Moderate,
    /// Over 20.
    High,
}

impl Level {
    /// The level of so many half sets in a week.
    pub const fn of_halves(halves: u32) -> Self {
        match halves {
            0..24 => Self::Low,
            24..=40 => Self::Moderate,
            _ => Self::High,
        }
    }
}

/// Whether a muscle fell behind: by a set at least and by a tenth of what was planned, so that a
/// single half set here and there is no news. Common practice. Short sets count here too: what
/// was planned of them was to be done.
pub fn behind(muscle: Muscle, planned: Tally, done: Tally) -> Option<Behind> {
    let halves = |tally: Tally| tally.sets.and(tally.under_six).both().halves();
    let (planned_halves, done_halves) = (halves(planned), halves(done));
    let short = planned_halves.saturating_sub(done_halves);
    (short >= 2 && short.saturating_mul(10) >= planned_halves).then_some(Behind {
        muscle,
        planned_halves,
        done_halves,
    })
}

/// Whether one side fell behind the other: by a set at least more than was planned to.
pub fn behind_side(muscle: Muscle, planned: Tally, done: Tally) -> Option<BehindSide> {
    let sides = |tally: Tally| {
        let Sides { left, right } = tally.sets.and(tally.under_six);
        i64::from(left.halves()) - i64::from(right.halves())
    };
    let lead_of_left = sides(done) - sides(planned);
    let by_halves = u32::try_from(lead_of_left.unsigned_abs()).unwrap_or(u32::MAX);
    let side = if lead_of_left > 0 { Side::Right } else { Side::Left };
    (by_halves >= 2).then_some(BehindSide { muscle, side, by_halves })
}

/// Where a set for the muscle could go: the places, in their order, whose exercise trains it
/// directly.
pub fn places<'a, T>(
    muscle: Muscle,
    plan: impl IntoIterator<Item = (T, &'a Exercise)>,
) -> impl Iterator<Item = T> {
    plan.into_iter()
        .filter(move |(_, exercise)| exercise.direct.contains(&muscle))
        .map(|(place, _)| place)
}

#[cfg(test)]
mod tests {
    use super::super::ledger::Count;
    use super::*;
    use crate::catalogue::Catalogue;

    fn tally(left: u32, right: u32) -> Tally {
        let count = |direct| Count { direct, indirect: 0 };
        Tally { sets: Sides { left: count(left), right: count(right) }, ..Tally::default() }
    }

    #[test]
    fn a_muscle_below_plan_stands_out() {
        let muscle = Muscle::Hamstrings;
        let found = behind(muscle, tally(10, 10), tally(7, 7)).unwrap();
        assert_eq!((found.planned_halves, found.done_halves), (20, 14));
        // One set short of twenty is under a tenth; one of ten is not.
        assert_eq!(behind(muscle, tally(20, 20), tally(19, 19)), None);
        assert!(behind(muscle, tally(10, 10), tally(9, 9)).is_some());
        assert_eq!(behind(muscle, tally(10, 10), tally(12, 12)), None);
    }

    #[test]
    fn a_side_below_the_other_stands_out() {
        let muscle = Muscle::Quadriceps;
        let found = behind_side(muscle, tally(6, 6), tally(6, 4)).unwrap();
        assert_eq!((found.side, found.by_halves), (Side::Right, 4));
        // A plan that trains one side more means it.
        assert_eq!(behind_side(muscle, tally(3, 5), tally(3, 5)), None);
    }

    #[test]
    fn a_set_can_go_where_the_muscle_is_trained_directly() {
        let catalogue = Catalogue::builtin();
        let plan = [("Monday", "bench-press"), ("Wednesday", "pull-up"), ("Friday", "dip")]
            .map(|(day, slug)| (day, catalogue.get(slug).unwrap()));
        assert_eq!(places(Muscle::Chest, plan).collect::<Vec<_>>(), ["Monday", "Friday"]);
    }
}
