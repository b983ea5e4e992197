//! What a reader of quantities refuses, as data.

use serde::{Deserialize, Serialize};

use crate::shown::excerpt;

/// What was being read.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Kind {
    /// A mass with its unit: `142.5 kg`, `45lb`.
    Mass,
    /// A percentage, halves allowed: `67.5 %`.
    Percent,
    /// A number of repetitions, or a range: `5`, `6-10`.
    Reps,
    /// Repetitions left: `2`, `1.5`, `1-2`.
    Reserve,
    /// Rating of perceived exertion, 1 to 10 by halves.
    Rpe,
    /// Lowering, pause, lifting, pause: `3-0-1-0`, `2-1-X-0`.
    Tempo,
    /// A duration: `90 s`, `2:30`, `2 min`.
    Seconds,
    /// A distance: `40 m`.
    Distance,
    /// A length on the bar: `415 mm`.
    Length,
}

/// What is wrong at the place.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Problem {
    /// Nothing was written.
    Empty,
    /// A number was expected here.
    NotANumber,
    /// A decimal comma where numbers are written with a point.
    CommaHere,
    /// A unit was expected here.
    MissingUnit,
    /// The unit is none of those this quantity takes.
    UnknownUnit,
    /// More decimals than can be kept exactly, or than the quantity has.
    TooFine,
    /// Only whole and half steps are read here.
    NotAHalf,
    /// Below the least value taken, given as it would be written.
    TooSmall {
        /// The least value.
        least: String,
    },
    /// Above the greatest value taken, given as it would be written.
    TooLarge {
        /// The greatest value.
        greatest: String,
    },
    /// A range that runs from more to less.
    Backwards,
    /// Something stands after what was read.
    Trailing,
    /// A tempo has four phases.
    FourPhases,
}

/// A text that could not be read as a quantity: the text, the place and what is wrong there.
///
/// The words for a lifter come from the app crate's phrases; this `Display` is for developers.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, thiserror::Error)]
#[error("{kind:?} unreadable at character {at} of {text:?}: {problem:?}")]
pub struct Unreadable {
    /// What was being read.
    pub kind: Kind,
    /// The whole text, as given (cut to 80 characters).
    pub text: String,
    /// Characters before the place, counted in Unicode scalar values.
    pub at: usize,
    /// What is wrong there.
    pub problem: Problem,
}

impl Unreadable {
    /// An error at `place`, a slice of `text`; a place that is not part of it counts as its end.
    pub(crate) fn at(kind: Kind, text: &str, place: &str, problem: Problem) -> Self {
        let offset = text.len().saturating_sub(place.len());
        let at = text.char_indices().take_while(|(i, _)| *i < offset).count();
        Self { kind, text: excerpt(text), at, problem }
    }
}
