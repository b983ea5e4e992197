//! How hard a set is meant to be.

use serde::{Deserialize, Serialize};

use crate::quantity::{Range, Reserve, Rpe};

/// The words a target was written in; it is shown back in the same ones.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum EffortScale {
    /// Repetitions left: "1–2 left".
    #[default]
    Left,
    /// Rating: "RPE 8".
    Rpe,
}

/// A target for effort: a range of repetitions left.
///
/// A target is never stored as the lifter's judgement; that is theirs alone.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub struct EffortTarget {
    /// Repetitions left, fewest first.
    pub left: Range<Reserve>,
    /// How it was written.
    #[serde(default)]
    pub scale: EffortScale,
}

impl EffortTarget {
    /// A target written as repetitions left.
    pub const fn left(from: Reserve, to: Reserve) -> Self {
        Self { left: Range { from, to }, scale: EffortScale::Left }
    }

    /// A target written as a rating; the harder end leaves the fewer repetitions.
    pub const fn rpe(from: Rpe, to: Rpe) -> Self {
        Self { left: Range { from: to.reserve(), to: from.reserve() }, scale: EffortScale::Rpe }
    }
}
