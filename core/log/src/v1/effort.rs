//! How hard a set is meant to be, what it is for, and how it ended.

use barwright_domain::call;
#[cfg(any(test, feature = "schema"))]
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::quantity::{Range, Reserve};
use crate::mirror::is_default;

/// The words a target was written in; it is shown back in the same ones.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[cfg_attr(any(test, feature = "schema"), derive(JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum EffortScale {
    /// Repetitions left: "1–2 left".
    #[default]
    Left,
    /// Rating: "RPE 8".
    Rpe,
}

mirror!(enum EffortScale = call::EffortScale {
    Left,
    Rpe,
});

/// A target for effort: a range of repetitions left.
///
/// A target is never stored as the lifter's judgement; that is theirs alone.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(any(test, feature = "schema"), derive(JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct EffortTarget {
    /// Repetitions left, fewest first.
    pub left: Range<Reserve>,
    /// How it was written.
    #[serde(default, skip_serializing_if = "is_default")]
    pub scale: EffortScale,
}

mirror!(struct EffortTarget = call::EffortTarget { left, scale });

/// How a part or set ended.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[cfg_attr(any(test, feature = "schema"), derive(JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum Ending {
    /// As called.
    #[default]
    AsCalled,
    /// A repetition was tried and failed; not the same as none left.
    Failed,
    /// Form went.
    Form,
    /// Pain.
    Pain,
    /// Interrupted.
    Interrupted,
    /// The equipment.
    Equipment,
}

mirror!(enum Ending = call::Ending {
    AsCalled,
    Failed,
    Form,
    Pain,
    Interrupted,
    Equipment,
});

/// What a set is for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[cfg_attr(any(test, feature = "schema"), derive(JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum SetKind {
    /// A warm-up step; never evidence, never volume.
    Ramp,
    /// A work set.
    #[default]
    Work,
    /// A set on the way to the top set, or the top set itself.
    Top,
    /// At a share of the top set.
    BackOff,
    /// A single or step of a test.
    Test,
    /// Done for speed: no effort is asked, nothing is estimated, and it is no hard set.
    Speed,
}

mirror!(enum SetKind = call::SetKind {
    Ramp,
    Work,
    Top,
    BackOff,
    Test,
    Speed,
});
