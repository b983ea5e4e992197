//! What stands with an owner.

use std::collections::BTreeMap;

use barwright_domain::owners;
#[cfg(any(test, feature = "schema"))]
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::change::MaxOrigin;
use super::how_many::{Amount, HowMany};
use super::load::Counting;
use super::names::RowId;
use super::outcome::Outcome;
use super::quantity::{Mass, Percent, Reps};
use super::rules::Miss;
use crate::mirror::{Mirror, OutOfRange, is_default};

/// What stands with one owner.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(any(test, feature = "schema"), derive(JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Account {
    /// The state before the words.
    pub base: State,
    /// The last words, in the log's order.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub words: Vec<Word>,
}

impl Mirror for Account {
    type Of = owners::Account;

    fn of(it: &Self::Of) -> Self {
        Self { base: Mirror::of(it.base()), words: it.words().iter().map(Mirror::of).collect() }
    }

    fn back(self) -> Result<Self::Of, OutOfRange> {
        let Self { base, words } = self;
        Ok(owners::Account::restored(base.back()?, words.back()?))
    }
}

/// Something said to an owner.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(any(test, feature = "schema"), derive(JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Word {
    /// The session that said it, by the log's number of its first event; none for a person or a plan.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub session: Option<u64>,
    /// Its local date, in days since 1970-01-01.
    pub day: i32,
    /// What.
    pub outcome: Outcome,
}

mirror!(struct Word = owners::Word { session, day, outcome });

/// The state of an owner of any kind.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(any(test, feature = "schema"), derive(JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum State {
    /// Of a max.
    Max(Max),
    /// Of a track.
    Track(Track),
    /// Of what is careful of an exercise.
    Care(Care),
}

mirror!(enum State = owners::State {
    Max(it),
    Track(it),
    Care(it),
});

/// A reference max.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(any(test, feature = "schema"), derive(JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Max {
    /// The max that holds: the mass moved, its local date in days since 1970-01-01, and how it came
    /// to be known.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub now: Option<(Mass, i32, MaxOrigin)>,
    /// An estimate lay above it in the last session that said anything.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub above: Option<Mass>,
}

mirror!(struct Max = owners::Max { now, above });

/// What a track carries.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(any(test, feature = "schema"), derive(JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Track {
    /// The load of a row's first set, before rounding: on the bar, in each hand, added to the body
    /// (help is negative). None where it is not found yet or has no number.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub load: Option<Mass>,
    /// Local date since which it is that, in days since 1970-01-01.
    #[serde(default, skip_serializing_if = "is_default")]
    pub since: i32,
    /// How it is counted; none before it was found.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub counting: Option<Counting>,
    /// What it was found for.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub asked: Option<HowMany>,
    /// Places on stacks without numbers, by gym.
    #[serde(default, skip_serializing_if = "BTreeMap::is_empty")]
    pub places: BTreeMap<String, String>,
    /// What to try for within what is asked.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub aim: Option<Amount>,
    /// The range goes on to this while the load is held.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub top: Option<Amount>,
    /// Two or more over the goal once: the load that was meant, and the last set.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub over: Option<(Option<Mass>, Reps)>,
    /// Well off its target once, in half repetitions.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub off: Option<i16>,
    /// The share of the load in its next session alone.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub next: Option<Percent>,
    /// Misses that stand.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub missed: Vec<Missed>,
}

mirror!(struct Track = owners::Track { load, since, counting, asked, places, aim, top, over, off, next, missed });

/// A miss that stands in a row's own session until it is made there.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(any(test, feature = "schema"), derive(JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Missed {
    /// The row.
    pub at: RowId,
    /// Sessions running.
    pub times: u8,
    /// What was called there first, before rounding.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub load: Option<Mass>,
    /// What the plan does about it.
    pub then: Miss,
}

mirror!(struct Missed = owners::Missed { at, times, load, then });

/// What is careful of an exercise.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(any(test, feature = "schema"), derive(JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Care {
    /// A lay-off that is being taken back.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub laid_off: Option<LaidOff>,
    /// Pain.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub pain: Option<Pain>,
}

mirror!(struct Care = owners::Care { laid_off, pain });

/// A lay-off that is being taken back.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(any(test, feature = "schema"), derive(JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct LaidOff {
    /// Kept of the load.
    pub keep: Percent,
}

mirror!(struct LaidOff = owners::LaidOff { keep });

/// Pain that stands on an exercise.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(any(test, feature = "schema"), derive(JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Pain {
    /// Since this local date, in days since 1970-01-01.
    pub since: i32,
    /// The lightest load that hurt last, as it was called.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub at: Option<Mass>,
    /// Sessions running in which it hurt.
    pub running: u8,
    /// A session without it was done: the share of the load it comes back from.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub back: Option<Percent>,
}

mirror!(struct Pain = owners::Pain { since, at, running, back });
