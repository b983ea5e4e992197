//! The count itself: a fold over sets, planned or done.

use std::collections::BTreeMap;

use serde::{Deserialize, Serialize};

use super::hard::{Closeness, is_hard};
use crate::call::Side;
use crate::catalogue::{Exercise, Muscle};
use crate::quantity::{Reps, Reserve};

/// A week: any numbering that grows by one a week, the caller's choice.
pub type Week = i32;

/// One work set as the count sees it; warm-up sets are left out before. A set of one-sided work
/// is one set for each side, or one without a side where both sides are its parts.
#[derive(Debug, Clone, Copy)]
pub struct Set<'a> {
    /// The week it belongs to.
    pub week: Week,
    /// The exercise.
    pub exercise: &'a Exercise,
    /// The side it trained; none for both.
    pub side: Option<Side>,
    /// Repetitions over all its parts; none for a hold or a carry.
    pub reps: Option<Reps>,
    /// How near failure it was.
    pub closeness: Closeness,
}

/// Sets of one muscle on one side.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
pub struct Count {
    /// Sets that train it directly.
    pub direct: u32,
    /// Sets that train it indirectly.
    pub indirect: u32,
}

impl Count {
    /// Direct and indirect alike.
    pub const fn total(self) -> u32 {
        self.direct + self.indirect
    }

    /// Direct 1, indirect a half, in half sets.
    pub const fn halves(self) -> u32 {
        2 * self.direct + self.indirect
    }

    /// Both counts together.
    #[must_use]
    pub const fn and(self, other: Self) -> Self {
        Self { direct: self.direct + other.direct, indirect: self.indirect + other.indirect }
    }
}

/// A count for each side of the body; a set for both sides is in both.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
pub struct Sides {
    /// Left.
    pub left: Count,
    /// Right.
    pub right: Count,
}

impl Sides {
    /// What both sides have had: the count of the side that has less. What one side has beyond it
    /// is seen by side.
    pub fn both(self) -> Count {
        if self.left.halves() <= self.right.halves() { self.left } else { self.right }
    }

    /// Both together, side by side.
    #[must_use]
    pub const fn and(self, other: Self) -> Self {
        Self { left: self.left.and(other.left), right: self.right.and(other.right) }
    }

    fn each_mut(&mut self, side: Option<Side>) -> impl Iterator<Item = &mut Count> {
        let left = (side != Some(Side::Right)).then_some(&mut self.left);
        let right = (side != Some(Side::Left)).then_some(&mut self.right);
        left.into_iter().chain(right)
    }
}

/// Hard sets of one muscle.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
pub struct Tally {
    /// Sets of six repetitions or more, and holds and carries.
    pub sets: Sides,
    /// Sets under six repetitions, which stand apart.
    pub under_six: Sides,
}

impl Tally {
    /// Both together.
    #[must_use]
    pub const fn and(self, other: Self) -> Self {
        Self { sets: self.sets.and(other.sets), under_six: self.under_six.and(other.under_six) }
    }
}

/// Tallies of one week, one for each muscle in the order of their declaration.
type Tallies = [Tally; Muscle::ALL.len()];

/// Hard sets of every muscle in every week.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Ledger {
    weeks: BTreeMap<Week, Tallies>,
}

impl Ledger {
    /// Counts sets, hard with `easiest` or fewer left.
    pub fn of<'a>(easiest: Reserve, sets: impl IntoIterator<Item = Set<'a>>) -> Self {
        let mut ledger = Self::default();
        for set in sets {
            ledger.add(easiest, &set);
        }
        ledger
    }

    /// Counts one set more. Easy sets, jumps and throws, and sets without a repetition add nothing.
    pub fn add(&mut self, easiest: Reserve, set: &Set<'_>) {
        let speed_work = set.exercise.movement.is_speed_work();
        if speed_work || set.reps == Some(0) || !is_hard(set.closeness, easiest) {
            return;
        }
        let tallies = self.weeks.entry(set.week).or_default();
        let mut count = |muscles: &[Muscle], add: fn(&mut Count)| {
            for muscle in muscles {
                let Some(tally) = tallies.get_mut(*muscle as usize) else { continue };
                let under_six = set.reps.is_some_and(|reps| reps < 6);
                let sides = if under_six { &mut tally.under_six } else { &mut tally.sets };
                sides.each_mut(set.side).for_each(add);
            }
        };
        count(&set.exercise.direct, |count| count.direct += 1);
        count(&set.exercise.indirect, |count| count.indirect += 1);
    }

    /// The tally of a muscle in a week.
    pub fn week(&self, week: Week, muscle: Muscle) -> Tally {
        self.weeks
            .get(&week)
            .and_then(|tallies| tallies.get(muscle as usize))
            .copied()
            .unwrap_or_default()
    }

    /// The tally of a muscle over the weeks from one to another, both included.
    pub fn over(&self, from: Week, to: Week, muscle: Muscle) -> Tally {
        // An inverted range would panic in the map.
        let to = to.max(from);
        self.weeks
            .range(from..=to)
            .filter_map(|(_, tallies)| tallies.get(muscle as usize))
            .fold(Tally::default(), |sum, tally| sum.and(*tally))
    }

    /// The weeks in which anything counted, in order.
    pub fn weeks(&self) -> impl Iterator<Item = Week> {
        self.weeks.keys().copied()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::catalogue::Catalogue;
    use crate::volume::EASIEST_HARD;

    const CATALOGUE: Catalogue = Catalogue::builtin();

    fn ledger(sets: &[(&str, Option<Side>, Option<Reps>, Closeness)]) -> Ledger {
        let catalogue = CATALOGUE;
        Ledger::of(
            EASIEST_HARD,
            sets.iter().map(|&(slug, side, reps, closeness)| Set {
                week: 1,
                exercise: catalogue.get(slug).unwrap(),
                side,
                reps,
                closeness,
            }),
        )
    }

    const HARD: Closeness = Closeness::Called(Reserve::NONE);

    #[test]
    fn direct_counts_one_and_indirect_a_half() {
        let ledger = ledger(&[("bench-press", None, Some(8), HARD); 3]);
        let chest = ledger.week(1, Muscle::Chest).sets.both();
        assert_eq!((chest.direct, chest.total(), chest.halves()), (3, 3, 6));
        let front = ledger.week(1, Muscle::FrontDeltoid).sets.both();
        assert_eq!((front.direct, front.total(), front.halves()), (0, 3, 3));
        assert_eq!(ledger.week(2, Muscle::Chest), Tally::default());
    }

    #[test]
    fn what_does_not_count() {
        let easy = Closeness::Called(Reserve::from_halves(10).unwrap());
        let ledger = ledger(&[
            ("bench-press", None, Some(8), easy),
            ("bench-press", None, Some(0), Closeness::Failed),
            ("bench-press", None, Some(8), Closeness::CutShort),
            ("box-jump", None, Some(5), HARD),
        ]);
        assert_eq!(ledger, Ledger::default());
    }

    #[test]
    fn few_repetitions_stand_apart_and_holds_do_not() {
        let ledger = ledger(&[
            ("back-squat", None, Some(5), HARD),
            ("back-squat", None, Some(6), HARD),
            ("plank", None, None, HARD),
        ]);
        let quadriceps = ledger.week(1, Muscle::Quadriceps);
        assert_eq!((quadriceps.sets.both().direct, quadriceps.under_six.both().direct), (1, 1));
        assert_eq!(ledger.week(1, Muscle::Abdominals).sets.both().direct, 1);
    }

    #[test]
    fn sides_are_counted_apart() {
        let ledger = ledger(&[
            ("split-squat", Some(Side::Left), Some(10), HARD),
            ("split-squat", Some(Side::Left), Some(10), HARD),
            ("split-squat", Some(Side::Right), Some(10), HARD),
            ("back-squat", None, Some(8), HARD),
        ]);
        let sides = ledger.week(1, Muscle::Quadriceps).sets;
        assert_eq!((sides.left.direct, sides.right.direct, sides.both().direct), (3, 2, 2));
    }

    #[test]
    fn weeks_add_up() {
        let catalogue = CATALOGUE;
        let exercise = catalogue.get("pull-up").unwrap();
        let set = |week| Set { week, exercise, side: None, reps: Some(8), closeness: HARD };
        let ledger = Ledger::of(EASIEST_HARD, [1, 1, 2, 5].map(set));
        let lats = |from, to| ledger.over(from, to, Muscle::Lats).sets.both().direct;
        assert_eq!((lats(1, 2), lats(2, 5), lats(1, 5), lats(5, 1)), (3, 2, 4, 1));
        assert_eq!(ledger.weeks().collect::<Vec<_>>(), [1, 2, 5]);
    }
}
