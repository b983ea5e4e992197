//! What the device is to do.

use serde::{Deserialize, Serialize};

/// A short mark to be felt.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum HapticKind {
    /// Recorded.
    Recorded,
    /// Refused or taken back.
    Changed,
}

/// Something for the device to carry out. There are few, and they are data.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum Effect {
    /// Ring once at a deadline; replaces the ring asked for before. Three short marks before it,
    /// one at it.
    RingAt {
        /// The deadline as wall time, in milliseconds.
        wall_ms: i64,
        /// The deadline on the boot clock, where there is one: it rules while the device runs.
        boot_ms: Option<i64>,
        /// What a notification says, and a voice for those who want it aloud.
        text: String,
        /// What comes next: a notification's second line, and the voice's.
        next: String,
    },
    /// No ring is wanted any more.
    CancelRing,
    /// A mark to be felt.
    Haptic {
        /// Which.
        kind: HapticKind,
    },
    /// Keep the screen on, or no longer.
    KeepAwake {
        /// On.
        on: bool,
    },
}
