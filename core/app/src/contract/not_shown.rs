//! What stands where a screen could not be made.

use serde::{Deserialize, Serialize};

use super::Key;

/// The tap is recorded, with everything before it; only its screen is missing.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct NotShownScreen {
    /// That it is recorded.
    pub title: String,
    /// What failed, what was kept, what to do.
    pub reason: String,
    /// What to send the makers, where it is a defect; empty otherwise.
    pub report: String,
    /// Where to go from here.
    pub keys: Vec<Key>,
    /// The whole screen read aloud.
    pub aloud: String,
}
