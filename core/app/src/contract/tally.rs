//! The end of a session.

use serde::{Deserialize, Serialize};

use super::{Field, Key, Row};

/// What was done, and what changes next time and why.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct TallyScreen {
    /// The session's title.
    pub title: String,
    /// When, how long, how many sets.
    pub subtitle: String,
    /// What was done.
    pub done: Vec<Row>,
    /// What changes next time and why.
    pub changes: Vec<Row>,
    /// Notes.
    pub notes: Vec<String>,
    /// Cautions for the days after.
    pub cautions: Vec<String>,
    /// What can be written.
    pub fields: Vec<Field>,
    /// What can be tapped.
    pub keys: Vec<Key>,
    /// The whole screen read aloud.
    pub aloud: String,
}
