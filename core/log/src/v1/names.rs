//! Names of exercises, sets, rows and tracks.

use barwright_domain::{call, owners};
#[cfg(any(test, feature = "schema"))]
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Names an exercise of a running session.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(any(test, feature = "schema"), derive(JsonSchema))]
#[serde(transparent)]
pub struct EntryId(pub u16);

mirror!(name EntryId = call::EntryId);

/// Names a set of a running session.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(any(test, feature = "schema"), derive(JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct SetId {
    /// The exercise.
    pub entry: EntryId,
    /// Its set, from 0.
    pub set: u16,
}

mirror!(struct SetId = call::SetId { entry, set });

/// Names a track.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(any(test, feature = "schema"), derive(JsonSchema))]
#[serde(transparent)]
pub struct TrackId(pub u32);

mirror!(name TrackId = owners::TrackId);

/// Names a row of a plan.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(any(test, feature = "schema"), derive(JsonSchema))]
#[serde(transparent)]
pub struct RowId(pub u32);

mirror!(name RowId = owners::RowId);
