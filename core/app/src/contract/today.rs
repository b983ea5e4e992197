//! Today's sheet.

use serde::{Deserialize, Serialize};

use super::{Field, Key, Row};

/// What is on, with what loads, how long, what this gym lacks and what to do instead.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct TodayScreen {
    /// The session's title.
    pub title: String,
    /// The plan, the week and the gym.
    pub subtitle: String,
    /// How long it takes.
    pub duration: String,
    /// The sheet.
    pub rows: Vec<Row>,
    /// What to leave out for the minutes there are; empty for nothing.
    pub left_out: Vec<String>,
    /// Cautions.
    pub cautions: Vec<String>,
    /// What the sheet still needs: body mass, a max.
    pub needs: Vec<Field>,
    /// Begin, go on, other times.
    pub keys: Vec<Key>,
    /// The whole screen read aloud.
    pub aloud: String,
}
