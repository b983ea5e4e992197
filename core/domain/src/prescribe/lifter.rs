//! What is known of the lifter today.

use std::collections::BTreeMap;

use serde::{Deserialize, Serialize};

use crate::call::WeekKind;
use crate::desk::Desk;
use crate::history::DoneSet;
use crate::session::PlanPlace;

/// The most past sessions of an exercise that are looked at.
pub const MOST_PAST: usize = 12;

/// One past session of an exercise.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Past {
    /// Local date, in days since 1970-01-01.
    pub day: i32,
    /// Where it stood in a plan.
    pub place: Option<PlanPlace>,
    /// What its week was for.
    pub week_kind: WeekKind,
    /// Its sets of the exercise, in order.
    pub sets: Vec<DoneSet>,
}

/// The lifter: what stands at the desk, and what was done.
#[derive(Debug, Clone, Default)]
pub struct Lifter {
    /// Maxes, body mass, set-ups, what is held back.
    pub desk: Desk,
    /// Today's local date, in days since 1970-01-01.
    pub today: i32,
    /// Local date of the last session of any kind.
    pub last_day: Option<i32>,
    /// Past sessions by exercise, the latest first, [`MOST_PAST`] at the most.
    pub past: BTreeMap<String, Vec<Past>>,
}

/// Something that would let the sheet say more.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Need {
    /// Body mass.
    BodyMass,
    /// The reference max of a lift, by its slug.
    Max(String),
}

impl Lifter {
    /// Past sessions of an exercise, the latest first.
    pub fn past(&self, exercise: &str) -> &[Past] {
        self.past.get(exercise).map(Vec::as_slice).unwrap_or_default()
    }

    /// Days without training before today.
    pub fn days_off(&self) -> u16 {
        self.last_day.map_or(0, |last| {
            u16::try_from(self.today.saturating_sub(last).max(0)).unwrap_or(u16::MAX)
        })
    }
}
