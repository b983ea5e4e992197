//! Which row belongs to which owner, and on which terms.

use barwright_domain::owners;
#[cfg(any(test, feature = "schema"))]
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::effort::EffortTarget;
use super::how_many::HowMany;
use super::load::Counting;
use super::names::{RowId, TrackId};
use super::quantity::{Mass, Percent};
use super::rules::{Miss, RaiseMax, Rule};
use crate::mirror::is_default;

/// What carries something from session to session.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(any(test, feature = "schema"), derive(JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum Owner {
    /// The reference max of an exercise, by its slug.
    Max(String),
    /// A track of rows of the plan.
    Track(TrackId),
    /// The track of an exercise that stands in no row of a plan: a substitute, an exercise added.
    Loose(String),
    /// What is careful of an exercise for a while.
    Care(String),
}

mirror!(enum Owner = owners::Owner {
    Max(it),
    Track(it),
    Loose(it),
    Care(it),
});

/// Which row of a plan belongs to which track: decided when the plan is adopted, and a fact since.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(any(test, feature = "schema"), derive(JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct RowOwner {
    /// The session, by its place in the plan's list, from 0.
    pub session: u16,
    /// The exercise, by its place in the session's list, from 0.
    pub slot: u16,
    /// The row, by its place in the exercise's list, from 0.
    pub line: u16,
    /// The row's name.
    pub row: RowId,
    /// Its track.
    pub track: TrackId,
}

mirror!(struct RowOwner = owners::RowOwner { session, slot, line, row, track });

/// Why less is called than the owner says, for a while. It never touches the owner.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(any(test, feature = "schema"), derive(JsonSchema))]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum Cutting {
    /// A lighter week of the plan.
    Deload,
    /// A reduced first week, of the plan or after an illness.
    EaseIn,
    /// Days without the lift.
    LayOff {
        /// Since it was done last; none where it comes back since.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        days: Option<u16>,
    },
    /// Pain since a local date, in days since 1970-01-01.
    Pain {
        /// The date.
        since: i32,
    },
    /// Coming back from pain: at most a tenth more a session.
    BackFromPain,
    /// Missed in its own session so many times running.
    Missed {
        /// Times.
        times: u8,
        /// What the plan does about it.
        then: Miss,
    },
    /// Called harder than asked, for one session; above the whole where the plan says up as well.
    Effort,
}

mirror!(enum Cutting = owners::Cutting {
    Deload,
    EaseIn,
    LayOff { days },
    Pain { since },
    BackFromPain,
    Missed { times, then },
    Effort,
});

/// A cut: the share of the owner's load that is kept.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(any(test, feature = "schema"), derive(JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Cut {
    /// Kept of the load.
    pub keep: Percent,
    /// Left out of the sets.
    #[serde(default, skip_serializing_if = "is_default")]
    pub sets_off: Percent,
    /// Why.
    pub why: Cutting,
}

mirror!(struct Cut = owners::Cut { keep, sets_off, why });

/// What was asked of a row in a session: all that its evidence is judged by, so that no plan is read
/// again for it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(any(test, feature = "schema"), derive(JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Terms {
    /// The row of its exercise, as [`RowOwner::line`] counts.
    pub row: u16,
    /// Its name; none for what stands in no row of the plan.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub id: Option<RowId>,
    /// What owns its load.
    pub load: Owner,
    /// What carries its aim and misses, and its load unless a max does.
    pub track: Owner,
    /// The load of its first set as its owner says it, before any cut and before this gym.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub own: Option<Mass>,
    /// The cut that counts today.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub cut: Option<Cut>,
    /// How many its first set asks, before anything was added to the range.
    pub asked: HowMany,
    /// How hard.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub target: Option<EffortTarget>,
    /// How its figures are meant.
    pub counting: Counting,
    /// Sets that the plan has in this week, before a cut or a lack of minutes.
    pub sets: u8,
    /// Whether each side is to do each of them.
    #[serde(default, skip_serializing_if = "is_default")]
    pub each_side: bool,
    /// Whether what is asked is asked of all parts together: a cluster.
    #[serde(default, skip_serializing_if = "is_default")]
    pub all_parts: bool,
    /// Only its last set is evidence: a climb to a top set.
    #[serde(default, skip_serializing_if = "is_default")]
    pub top_only: bool,
    /// Its rules in order.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub rules: Vec<Rule>,
    /// What follows misses.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub misses: Vec<Miss>,
    /// What may raise the exercise's max.
    pub raise: RaiseMax,
    /// Its number is written week by week: nothing of it is carried.
    #[serde(default, skip_serializing_if = "is_default")]
    pub by_week: bool,
    /// Speed work: no effort is asked, nothing is estimated.
    #[serde(default, skip_serializing_if = "is_default")]
    pub speed: bool,
}

mirror!(struct Terms = owners::Terms { row, id, load, track, own, cut, asked, target, counting, sets, each_side, all_parts, top_only, rules, misses, raise, by_week, speed });
