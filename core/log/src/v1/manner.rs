//! In what way a set is done.

use barwright_domain::call;
#[cfg(any(test, feature = "schema"))]
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::quantity::Tempo;

/// A side of the body.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(any(test, feature = "schema"), derive(JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum Side {
    /// Left.
    Left,
    /// Right.
    Right,
}

mirror!(enum Side = call::Side {
    Left,
    Right,
});

/// Tempo, technique and the few words shown with a set.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize)]
#[cfg_attr(any(test, feature = "schema"), derive(JsonSchema))]
#[serde(deny_unknown_fields)]
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

mirror!(struct Manner = call::Manner { tempo, technique, part_techniques, cues });

/// What a week of a plan is for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[cfg_attr(any(test, feature = "schema"), derive(JsonSchema))]
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

mirror!(enum WeekKind = call::WeekKind {
    Ordinary,
    EaseIn,
    Deload,
    Test,
});
