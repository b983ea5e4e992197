//! The end of a session.

use serde::{Deserialize, Serialize};

use super::{Field, Key, Row};

/// A load of a later session, moved by a max that changed: what a row of [`TallyScreen::changes`]
/// says in words, as data.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct MovedLoadData {
    /// The row that says it.
    pub row: String,
    /// The week, from 1.
    pub week: u32,
    /// The exercise, by its slug.
    pub exercise: String,
    /// The first work load as it was, in exact kilograms.
    pub before: String,
    /// And as it is now.
    pub after: String,
    /// Nothing of the plan is left to move: this is the plan done again.
    pub again: bool,
}

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
    /// Loads to come that a changed max moves, as data; the rows say them too.
    #[serde(default)]
    #[cfg_attr(feature = "uniffi", uniffi(default))]
    pub moved: Vec<MovedLoadData>,
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
