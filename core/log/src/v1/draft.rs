//! What is being made by hand.

use barwright_domain::desk;
#[cfg(any(test, feature = "schema"))]
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use crate::mirror::is_default;

/// What a draft is of.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(any(test, feature = "schema"), derive(JsonSchema))]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum DraftOf {
    /// A gym.
    Gym,
    /// A plan.
    Plan,
    /// An exercise of the lifter's own.
    Exercise,
}

mirror!(enum DraftOf = desk::DraftOf { Gym, Plan, Exercise });

/// A piece of a text in place of another.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(any(test, feature = "schema"), derive(JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Splice {
    /// Bytes before it.
    pub at: u32,
    /// Bytes that go.
    #[serde(default, skip_serializing_if = "is_default")]
    pub gone: u32,
    /// What comes there.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub put: String,
}

mirror!(struct Splice = desk::Splice { at, gone, put });

/// Something that is being made.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(any(test, feature = "schema"), derive(JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Draft {
    /// What it was begun from, by name; empty for nothing.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub from: String,
    /// Its text.
    pub text: String,
    /// The log's number of its last step.
    pub step: u64,
    /// What takes its steps back, the last one last.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub back: Vec<Splice>,
    /// What brings steps that were taken back again, the next one last.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub forth: Vec<Splice>,
}

mirror!(struct Draft = desk::Draft { from, text, step, back, forth });
