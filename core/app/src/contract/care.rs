//! The general cautions.

use serde::{Deserialize, Serialize};

use super::{Key, Row};

/// What every lifter should know, whoever asks and whenever: who asks a clinician first, how to try a
/// max, what guards a lifter, when to stop; and whether the lifter is under 18. Its place in a shell is
/// beside the help.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct CareScreen {
    /// Its title.
    pub title: String,
    /// Who decides.
    pub subtitle: String,
    /// The cautions, under headings.
    pub rows: Vec<Row>,
    /// What can be tapped: under 18, a coach is there today.
    pub keys: Vec<Key>,
    /// The whole screen read aloud.
    pub aloud: String,
}
