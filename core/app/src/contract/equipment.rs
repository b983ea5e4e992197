//! What this gym has.

use serde::{Deserialize, Serialize};

use super::{FormFile, Key, Row};

/// Bars, plates, dumbbells, stacks and machines of one gym.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct EquipmentScreen {
    /// The gym.
    pub title: String,
    /// Its unit, and what it comes to in short.
    pub subtitle: String,
    /// What it has.
    pub rows: Vec<Row>,
    /// Gyms to choose from.
    pub gyms: Vec<Key>,
    /// The gym as a file, to be saved or handed on.
    #[serde(default)]
    #[cfg_attr(feature = "uniffi", uniffi(default))]
    pub file: Option<FormFile>,
    /// What can be tapped.
    pub keys: Vec<Key>,
    /// The whole screen read aloud.
    pub aloud: String,
}
