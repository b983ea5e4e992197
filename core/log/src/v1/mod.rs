//! The first version, as it is written.
//!
//! Each type mirrors the domain's of the same name; the domain says what they are for.

#[cfg(any(test, feature = "schema"))]
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

pub mod account;
pub mod arranged;
pub mod because;
pub mod brought;
pub mod change;
pub mod desk;
pub mod desk_event;
pub mod draft;
pub mod effort;
pub mod equipment;
pub mod event;
pub mod flow;
pub mod how_many;
pub mod load;
pub mod load_call;
pub mod manner;
pub mod names;
pub mod outcome;
pub mod quantity;
pub mod rest;
pub mod rig;
pub mod rules;
pub mod said;
pub mod sheet;
pub mod structure;
pub mod terms;
pub mod why;

/// The body of an event: the part of its reading that the log has no column for, and the event.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(any(test, feature = "schema"), derive(JsonSchema))]
#[cfg_attr(any(test, feature = "schema"), schemars(rename = "Body_of_{T}"))]
#[serde(deny_unknown_fields)]
pub struct Body<T> {
    /// Milliseconds since the device started, counting sleep; a browser has none.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub boot_ms: Option<i64>,
    /// Tells one start of the device from another; a browser has none.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub boot_id: Option<String>,
    /// What happened.
    pub event: T,
}
