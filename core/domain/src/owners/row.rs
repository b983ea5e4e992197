//! What a row of sets belongs to, and what was asked of it: facts of the sheet.

use std::fmt;

use serde::{Deserialize, Serialize};

use crate::call::{EffortTarget, HowMany};
use crate::catalogue::Counting;
use crate::plan::{Miss, RaiseMax, Rule};
use crate::quantity::{Mass, Percent};

/// Names a track for ever.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(transparent)]
pub struct TrackId(pub u32);

/// Names a row of a plan in its own session: stays when the plan is mended. A miss stands there.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(transparent)]
pub struct RowId(pub u32);

/// What carries something from session to session.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
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

impl Owner {
    /// Its name as a key: `max:back-squat`, `track:12`.
    pub fn name(&self) -> String {
        self.to_string()
    }

    /// The owner of a name.
    pub fn of_name(name: &str) -> Option<Self> {
        let (kind, of) = name.split_once(':')?;
        Some(match kind {
            "max" => Self::Max(of.to_owned()),
            "track" => Self::Track(TrackId(of.parse().ok()?)),
            "loose" => Self::Loose(of.to_owned()),
            "care" => Self::Care(of.to_owned()),
            _ => return None,
        })
    }
}

impl fmt::Display for Owner {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Max(slug) => write!(f, "max:{slug}"),
            Self::Track(id) => write!(f, "track:{}", id.0),
            Self::Loose(slug) => write!(f, "loose:{slug}"),
            Self::Care(slug) => write!(f, "care:{slug}"),
        }
    }
}

/// Which row of a plan belongs to which track: decided when the plan is adopted, and a fact since.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
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

/// Why less is called than the owner says, for a while. It never touches the owner.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Cutting {
    /// A lighter week of the plan.
    Deload,
    /// A reduced first week, of the plan or after an illness.
    EaseIn,
    /// Days without the lift.
    LayOff {
        /// Since it was done last; none where it comes back since.
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

/// A cut: the share of the owner's load that is kept.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub struct Cut {
    /// Kept of the load.
    pub keep: Percent,
    /// Left out of the sets.
    #[serde(default)]
    pub sets_off: Percent,
    /// Why.
    pub why: Cutting,
}

/// What was asked of a row in a session: all that its evidence is judged by, so that no plan is read
/// again for it.
#[derive(Debug, Clone, PartialEq, Eq, Hash, Serialize, Deserialize)]
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
    pub each_side: bool,
    /// Whether what is asked is asked of all parts together: a cluster.
    pub all_parts: bool,
    /// Only its last set is evidence: a climb to a top set.
    pub top_only: bool,
    /// Its rules in order.
    pub rules: Vec<Rule>,
    /// What follows misses.
    pub misses: Vec<Miss>,
    /// What may raise the exercise's max.
    pub raise: RaiseMax,
    /// Its number is written week by week: nothing of it is carried.
    pub by_week: bool,
    /// Speed work: no effort is asked, nothing is estimated.
    pub speed: bool,
}
