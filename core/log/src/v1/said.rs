//! What a person said, to be taken back.

use barwright_domain::desk;
#[cfg(any(test, feature = "schema"))]
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::change::Change;
use super::quantity::Mass;
use super::terms::Owner;

/// Something that a person said.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(any(test, feature = "schema"), derive(JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Said {
    /// The log's number of it.
    pub seq: u64,
    /// Its local date, in days since 1970-01-01.
    pub day: i32,
    /// What.
    pub what: SaidOf,
}

mirror!(struct Said = desk::Said { seq, day, what });

/// What a person said.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(any(test, feature = "schema"), derive(JsonSchema))]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum SaidOf {
    /// To an owner of loads.
    Owner {
        /// It.
        owner: Owner,
        /// What.
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        changes: Vec<Change>,
    },
    /// Body mass.
    BodyMass(Mass),
}

mirror!(enum SaidOf = desk::SaidOf {
    Owner { owner, changes },
    BodyMass(it),
});
