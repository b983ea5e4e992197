//! In what way a set is done.

use serde::{Deserialize, Serialize};

use crate::quantity::Tempo;

/// A side of the body.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Side {
    /// Left.
    Left,
    /// Right.
    Right,
}

impl Side {
    /// The other one.
    #[must_use]
    pub const fn other(self) -> Self {
        match self {
            Self::Left => Self::Right,
            Self::Right => Self::Left,
        }
    }
}

/// Tempo, technique and the few words shown with a set.
#[derive(Debug, Clone, PartialEq, Eq, Hash, Default, Serialize, Deserialize)]
pub struct Manner {
    /// Lowering – pause – lifting – pause.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub tempo: Option<Tempo>,
    /// Grip, stance, handle or range of movement.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub technique: Option<String>,
    /// The technique of each part in turn, where the parts of a set differ.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub part_techniques: Vec<String>,
    /// A few short cues.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub cues: Vec<String>,
}

/// What a week of a plan is for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum WeekKind {
    /// An ordinary week.
    #[default]
    Ordinary,
    /// A reduced first week.
    EaseIn,
    /// Less, to recover.
    Deload,
    /// Testing maxes.
    Test,
}
