//! What the shell knows of the time.

use serde::{Deserialize, Serialize};

/// A reading of the clocks, taken at the tap.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Reading {
    /// Milliseconds of wall time since 1970-01-01T00:00Z; the years 2000 to 2199.
    pub wall_ms: i64,
    /// Minutes that local time is ahead of UTC, -1439 to 1439.
    pub offset_minutes: i32,
    /// Milliseconds since the device started, counting sleep. Leave it out where there is none.
    #[serde(default)]
    #[cfg_attr(feature = "uniffi", uniffi(default))]
    pub boot_ms: Option<i64>,
    /// Tells one start of the device from another, 1 to 64 bytes. Leave it out where there is none.
    #[serde(default)]
    #[cfg_attr(feature = "uniffi", uniffi(default))]
    pub boot_id: Option<String>,
}

impl From<Reading> for barwright_domain::session::Reading {
    fn from(reading: Reading) -> Self {
        let Reading { wall_ms, offset_minutes, boot_ms, boot_id } = reading;
        Self { wall_ms, offset_minutes, boot_ms, boot_id }
    }
}
