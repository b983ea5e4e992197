//! Rests, and readings of the clocks.

use barwright_domain::session;
#[cfg(any(test, feature = "schema"))]
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use crate::mirror::is_default;

/// A reading of the clocks. The domain never asks for the time: it comes in with every tap.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(any(test, feature = "schema"), derive(JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Reading {
    /// Milliseconds of wall time since 1970-01-01T00:00Z.
    pub wall_ms: i64,
    /// Minutes that local time is ahead of UTC.
    pub offset_minutes: i32,
    /// Milliseconds since the device started, counting sleep; a browser has none.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub boot_ms: Option<i64>,
    /// Tells one start of the device from another; a browser has none.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub boot_id: Option<String>,
}

mirror!(struct Reading = session::Reading { wall_ms, offset_minutes, boot_ms, boot_id });

/// What a rest is between.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(any(test, feature = "schema"), derive(JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum RestKind {
    /// Inside a set, between its parts.
    Pause,
    /// Between the two sides.
    Sides,
    /// Between the exercises of a superset.
    Within,
    /// After a round of a superset.
    Round,
    /// After a set.
    Set,
    /// Until the next set of a clock-driven series starts.
    Clock,
}

mirror!(enum RestKind = session::RestKind {
    Pause,
    Sides,
    Within,
    Round,
    Set,
    Clock,
});

/// A rest that was begun.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(any(test, feature = "schema"), derive(JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Rest {
    /// What it is between.
    pub kind: RestKind,
    /// When it began: the tap that ended the work before it.
    pub began: Reading,
    /// How long it is to last, in milliseconds.
    pub length_ms: i64,
    /// What had passed of it when it was begun anew on another clock, in milliseconds.
    #[serde(default, skip_serializing_if = "is_default")]
    pub passed_ms: i64,
}

mirror!(struct Rest = session::Rest { kind, began, length_ms, passed_ms });
