//! What a session comes to for an owner.

use barwright_domain::owners;
#[cfg(any(test, feature = "schema"))]
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::change::Change;
use super::names::{RowId, SetId};
use super::quantity::Mass;
use super::terms::Owner;
use super::why::Why;
use crate::mirror::is_default;

/// What a session comes to for one owner: at most one in a session.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(any(test, feature = "schema"), derive(JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Outcome {
    /// The owner.
    pub owner: Owner,
    /// What changes; nothing where it only says why not.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub changes: Vec<Change>,
    /// Why.
    pub why: Why,
    /// The sets that it comes from.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub sets: Vec<SetId>,
    /// It said nothing: what waits for more evidence goes on waiting.
    #[serde(default, skip_serializing_if = "is_default")]
    pub silent: bool,
    /// The lifter holds it back: nothing changes.
    #[serde(default, skip_serializing_if = "is_default")]
    pub held: bool,
    /// What may be accepted.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub proposal: Option<Proposal>,
}

mirror!(struct Outcome = owners::Outcome { owner, changes, why, sets, silent, held, proposal });

/// A change that one press accepts.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(any(test, feature = "schema"), derive(JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Proposal {
    /// What it is about.
    pub question: Question,
    /// The load, or max, that it would be.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub to: Option<Mass>,
}

mirror!(struct Proposal = owners::Proposal { question, to });

/// What only a person can answer, shown in the tally.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(any(test, feature = "schema"), derive(JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum Question {
    /// The range went on as far as it may: take the jump, at the range's bottom?
    Jump,
    /// Two sessions well off the target: go by so much?
    WellOff,
    /// Missed again and again: go down?
    Missed,
    /// Two misses in one session of several that share a track: a track of its own?
    OwnTrack(RowId),
    /// A test came out lower, or was not ended: take it all the same?
    Test,
}

mirror!(enum Question = owners::Question {
    Jump,
    WellOff,
    Missed,
    OwnTrack(it),
    Test,
});
