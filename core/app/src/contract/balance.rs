//! Each muscle and side, planned and done.

use serde::{Deserialize, Serialize};

use super::{Key, Row};

/// One muscle's bar. Lengths are in half sets.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct MuscleBar {
    /// The muscle.
    pub muscle: String,
    /// Hard sets planned.
    pub planned_halves: u32,
    /// Hard sets done.
    pub done_halves: u32,
    /// Of those done, on the left; none where sides don't matter.
    pub left_halves: Option<u32>,
    /// Of those done, on the right.
    pub right_halves: Option<u32>,
    /// Hard sets done that train it directly; on the side that has less, as the next two.
    pub direct: u32,
    /// Hard sets done that train it directly or not.
    pub total: u32,
    /// Of those done, sets under six repetitions.
    pub under_six_halves: u32,
    /// The bar in words.
    pub text: String,
    /// A second, quieter line: the other counts; empty where nothing was done.
    pub detail: String,
    /// It falls behind; the text says it too.
    pub behind: bool,
}

/// Hard sets a muscle, planned against done.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct BalanceScreen {
    /// Its title.
    pub title: String,
    /// Which weeks.
    pub subtitle: String,
    /// The length that fills the width, in half sets.
    pub full_halves: u32,
    /// The muscles.
    pub bars: Vec<MuscleBar>,
    /// What falls behind, and where a set could go.
    pub sentences: Vec<Row>,
    /// A week of each kind on average, its muscles below it; empty where all weeks are of one kind.
    pub kinds: Vec<Row>,
    /// Other spans.
    pub keys: Vec<Key>,
    /// The whole screen read aloud.
    pub aloud: String,
}
