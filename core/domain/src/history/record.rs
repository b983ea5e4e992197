//! Records: the best of each kind, those with a belt apart from those without.

use serde::{Deserialize, Serialize};

use super::row::{DoneSet, SetKey};
use crate::call::{Amount, Side};
use crate::catalogue::Counting;
use crate::quantity::{Mass, Reps};
use crate::session::Kit;

/// What keeps a record apart from others of its exercise.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
pub struct Apart {
    /// The side, where each works for itself.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub side: Option<Side>,
    /// How figures are meant.
    pub counting: Counting,
    /// What was worn.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub kit: Vec<Kit>,
    /// Named bands or chains.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub bands: Option<String>,
    /// Grip, stance, handle or range of movement.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub technique: Option<String>,
}

/// What a record is the best of.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Measure {
    /// The heaviest figure in nanograms, for so many repetitions in one go.
    HeaviestFor(Reps),
    /// The most repetitions in one go, where the load has no figure.
    MostReps,
    /// The longest hold in seconds, at a figure.
    LongestAt(Option<Mass>),
    /// The farthest carry in millimetres, at a figure.
    FarthestAt(Option<Mass>),
}

/// A record, or a set's claim to one.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Record {
    /// The exercise, by its slug.
    pub exercise: String,
    /// What keeps it apart.
    pub apart: Apart,
    /// What it is the best of.
    pub measure: Measure,
    /// How good, in the unit of the measure.
    pub value: i64,
    /// The set it was done in.
    pub set: SetKey,
    /// Local date of it, in days since 1970-01-01.
    pub day: i32,
}

impl Record {
    /// Whether it takes the place of another of the same measure: better, or as good and earlier.
    pub fn beats(&self, other: &Self) -> bool {
        (self.value, std::cmp::Reverse(self.set)) > (other.value, std::cmp::Reverse(other.set))
    }
}

/// The records that a set claims. Each part claims for itself, since a pause lies between them; a
/// warm-up claims nothing, and neither does a part without a repetition.
pub fn claims(set: &DoneSet) -> impl Iterator<Item = Record> {
    let parts = if set.is_work() { set.parts.as_slice() } else { &[] };
    parts.iter().filter_map(move |part| {
        let (measure, value) = match (part.amount, part.figure) {
            (Amount::Reps(0), _) => return None,
            (Amount::Reps(reps), Some(figure)) => (Measure::HeaviestFor(reps), figure.nanograms()),
            (Amount::Reps(reps), None) => (Measure::MostReps, reps.into()),
            (Amount::Seconds(held), figure) => (Measure::LongestAt(figure), held.count().into()),
            (Amount::Metres(far), figure) => {
                (Measure::FarthestAt(figure), far.millimetres().into())
            }
        };
        let apart = Apart {
            side: set.side,
            counting: set.counting,
            kit: set.kit.clone(),
            bands: set.bands.clone(),
            technique: set.technique.clone(),
        };
        Some(Record {
            exercise: set.exercise.clone(),
            apart,
            measure,
            value,
            set: set.key,
            day: set.day,
        })
    })
}
