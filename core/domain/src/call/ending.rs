//! How work ended, and what a set was for.

use serde::{Deserialize, Serialize};

/// How a part or set ended.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Ending {
    /// As called.
    #[default]
    AsCalled,
    /// A repetition was tried and failed; not the same as none left.
    Failed,
    /// Form went.
    Form,
    /// Pain.
    Pain,
    /// Interrupted.
    Interrupted,
    /// The equipment.
    Equipment,
}

impl Ending {
    /// Whether it says anything for the next load: only sets as called, failed or ended for form.
    pub const fn is_evidence(self) -> bool {
        matches!(self, Self::AsCalled | Self::Failed | Self::Form)
    }
}

/// What a set is for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum SetKind {
    /// A warm-up step; never evidence, never volume.
    Ramp,
    /// A work set.
    #[default]
    Work,
    /// A set on the way to the top set, or the top set itself.
    Top,
    /// At a share of the top set.
    BackOff,
    /// A single or step of a test.
    Test,
    /// Done for speed: no effort is asked, nothing is estimated, and it is no hard set.
    Speed,
}
