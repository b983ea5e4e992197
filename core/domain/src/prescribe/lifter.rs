//! What is known of the lifter today.

use std::collections::BTreeMap;

use serde::{Deserialize, Serialize};

use crate::desk::Desk;
use crate::history::DoneSet;

/// The most past sessions of an exercise that are looked at.
pub const MOST_PAST: u32 = 12;

/// Past sessions of an exercise that are looked at however long ago they were; further ones only
/// within [`RECENT_DAYS`], so that the sheet costs as much after ten years as after a month.
pub const ENOUGH_PAST: u32 = 4;

/// Days of history that what is asked is held against: four weeks.
pub const RECENT_DAYS: i32 = 28;

/// One past session of an exercise.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Past {
    /// Local date, in days since 1970-01-01.
    pub day: i32,
    /// Its sets of the exercise, in order.
    pub sets: Vec<DoneSet>,
}

/// The lifter: what stands at the desk, and what was done.
#[derive(Debug, Clone, Default)]
pub struct Lifter {
    /// The owners of loads, body mass, set-ups.
    pub desk: Desk,
    /// Today's local date, in days since 1970-01-01.
    pub today: i32,
    /// Past sessions by exercise, the latest first: [`ENOUGH_PAST`], those of the last
    /// [`RECENT_DAYS`] beyond, and [`MOST_PAST`] at the most. They are looked at for last time's
    /// line, for what estimates support and for how long a lift was left; no load is worked out
    /// from them.
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
    /// A session without pain, before the max of a lift is tested; by its slug.
    NoPain(String),
    /// A coach there, before a minor's max of a lift is tested; by its slug.
    Coach(String),
}

impl Lifter {
    /// Past sessions of an exercise, the latest first.
    pub fn past(&self, exercise: &str) -> &[Past] {
        self.past.get(exercise).map(Vec::as_slice).unwrap_or_default()
    }
}
