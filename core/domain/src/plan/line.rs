//! A row of sets as the plan writes it: what repeats, and what varies by week and by set.

use serde::{Deserialize, Serialize};

use crate::call::{EffortTarget, HowMany, LoadCall, Manner, Side, Structure};
use crate::quantity::{Percent, Reps, Seconds};

/// The same in all weeks, or one for each week; a shorter list starts again.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Varied<T> {
    /// The same in all weeks.
    Same(T),
    /// One for each week; never empty.
    ByWeek(Vec<T>),
}

impl<T> Varied<T> {
    /// That of a week, counted from 0.
    pub fn at(&self, week: usize) -> Option<&T> {
        match self {
            Self::Same(one) => Some(one),
            Self::ByWeek(list) => week.checked_rem(list.len()).and_then(|at| list.get(at)),
        }
    }

    /// Whether the plan says it week by week.
    pub const fn by_week(&self) -> bool {
        matches!(self, Self::ByWeek(_))
    }

    /// Each that is written.
    pub fn iter(&self) -> impl Iterator<Item = &T> {
        match self {
            Self::Same(one) => std::slice::from_ref(one).iter(),
            Self::ByWeek(list) => list.iter(),
        }
    }
}

/// One for each set of a row; a shorter list starts again, so that waves need no copying.
pub type PerSet<T> = Vec<T>;

/// The weeks in which something is done.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Weeks {
    /// All of them.
    #[default]
    All,
    /// These, from 1, rising.
    These(Vec<u16>),
}

impl Weeks {
    /// Whether a week, counted from 0, is among them.
    pub fn contain(&self, week: usize) -> bool {
        match self {
            Self::All => true,
            Self::These(weeks) => weeks.iter().any(|number| usize::from(*number) == week + 1),
        }
    }
}

/// The sets of a row that its structure is for; the others are straight.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum OnSets {
    /// All of them.
    #[default]
    All,
    /// The last.
    Last,
    /// These, from 1.
    These(Vec<u8>),
}

impl OnSets {
    /// Whether the set at `index`, counted from 0, of `count` is among them.
    pub fn contain(&self, index: usize, count: usize) -> bool {
        match self {
            Self::All => true,
            Self::Last => index + 1 == count,
            Self::These(sets) => sets.iter().any(|number| usize::from(*number) == index + 1),
        }
    }
}

/// Where the number of sets of a row comes from. Efforts stand with the row: of a climb its top
/// set's, of a repeat the one that ends it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Course {
    /// The number written.
    #[default]
    Listed,
    /// A rising load until a set is as hard as the row's effort: the top set.
    Climb {
        /// What a step adds to the load just lifted.
        step: Percent,
        /// The most sets.
        most_sets: u8,
    },
    /// The same set again until it is as hard as the row's effort.
    Repeat {
        /// The most sets.
        most_sets: u8,
    },
    /// As many sets as it takes to a total of repetitions.
    Total {
        /// Repetitions in all.
        reps: Reps,
        /// The most sets.
        most_sets: u8,
    },
    /// A set every so many seconds, start to start.
    Clock {
        /// From start to start.
        every: Seconds,
    },
    /// Singles to a max.
    Test {
        /// What a step adds near the end.
        step: Percent,
        /// The most tries.
        most_tries: u8,
    },
}

/// Rests by kind; what is not said here is said by the session, the plan or its goal.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
pub struct Rests {
    /// After a work set.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub after_set: Option<Seconds>,
    /// Between the parts of a set.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub in_set: Option<Seconds>,
    /// Between sides.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub between_sides: Option<Seconds>,
    /// Between the exercises of a superset.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub in_superset: Option<Seconds>,
    /// After a round of a superset.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub after_superset: Option<Seconds>,
}

impl Rests {
    /// These, and where they say nothing, `other`.
    #[must_use]
    pub fn or(self, other: Self) -> Self {
        Self {
            after_set: self.after_set.or(other.after_set),
            in_set: self.in_set.or(other.in_set),
            between_sides: self.between_sides.or(other.between_sides),
            in_superset: self.in_superset.or(other.in_superset),
            after_superset: self.after_superset.or(other.after_superset),
        }
    }
}

/// A row of sets.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Line {
    /// The weeks it is done in.
    pub weeks: Weeks,
    /// The one side it is for.
    pub side: Option<Side>,
    /// How many sets; none where it is left out of a week. Of no account where the course says
    /// otherwise.
    pub sets: Varied<u8>,
    /// How many repetitions, seconds or metres.
    pub how_many: Varied<PerSet<HowMany>>,
    /// The load.
    pub load: Varied<PerSet<LoadCall>>,
    /// How hard.
    pub effort: Option<Varied<PerSet<EffortTarget>>>,
    /// Where the number of sets comes from.
    pub course: Course,
    /// What a set is made of.
    pub structure: Structure,
    /// The sets that are so made.
    pub on_sets: OnSets,
    /// In what way.
    pub manner: Manner,
    /// Speed work: no effort is asked for, and nothing is estimated from it.
    pub speed: bool,
    /// Rests that are its own.
    pub rest: Rests,
}
