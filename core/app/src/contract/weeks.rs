//! The plan as weeks.

use serde::{Deserialize, Serialize};

use super::{Key, Row};

/// A week.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct WeekOfPlan {
    /// "Week 3: ordinary".
    pub title: String,
    /// It is the week we are in.
    pub current: bool,
    /// Its sessions.
    pub rows: Vec<Row>,
}

/// The plan as weeks and sessions: where we are, what was missed.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct WeeksScreen {
    /// The plan's name.
    pub title: String,
    /// Where we are.
    pub subtitle: String,
    /// The weeks.
    pub weeks: Vec<WeekOfPlan>,
    /// What can be tapped.
    pub keys: Vec<Key>,
    /// The whole screen read aloud.
    pub aloud: String,
}
