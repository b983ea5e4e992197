//! What a person said, to be taken back.

use serde::{Deserialize, Serialize};

use crate::owners::{Change, Owner};
use crate::quantity::Mass;

/// The most that can be taken back, and be brought again.
pub const MOST_SAID: usize = 20;
/// The most body masses that are kept, for a chart of some two years of weekly ones.
pub const MOST_WEIGHED: usize = 120;

/// Something that a person said.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Said {
    /// The log's number of it.
    pub seq: u64,
    /// Its local date, in days since 1970-01-01.
    pub day: i32,
    /// What.
    pub what: SaidOf,
}

/// What a person said.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum SaidOf {
    /// To an owner of loads.
    Owner {
        /// It.
        owner: Owner,
        /// What.
        changes: Vec<Change>,
    },
    /// Body mass.
    BodyMass(Mass),
}
