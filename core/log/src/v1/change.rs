//! Changes of an owner's state.

use barwright_domain::owners;
#[cfg(any(test, feature = "schema"))]
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::how_many::{Amount, HowMany};
use super::load::Counting;
use super::names::RowId;
use super::quantity::{Mass, Percent, Reps};
use super::rules::Miss;

/// One change of an owner's state.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(any(test, feature = "schema"), derive(JsonSchema))]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum Change {
    /// A max is this.
    Max {
        /// It.
        mass: Mass,
        /// How it came to be known.
        origin: MaxOrigin,
    },
    /// Estimates lay above the max once: the smaller of two such sessions raises it.
    AboveMax(Mass),
    /// A track's load is this, found or said for so many.
    Load {
        /// It.
        load: Mass,
        /// How it is counted.
        counting: Counting,
        /// What it was asked for.
        asked: HowMany,
    },
    /// A clean sheet: nothing that was carried says anything more.
    Fresh,
    /// A track's load goes by so much.
    Step(Mass),
    /// A place on a stack without numbers, in one gym.
    Place {
        /// The gym.
        gym: String,
        /// The place, as the stack names it.
        place: String,
    },
    /// What to try for within what is asked.
    Aim(Amount),
    /// The load is held, and the range goes on to this.
    Extend(Amount),
    /// Two or more over the goal in the last set, once, at this load.
    TwoOver {
        /// The load that was meant.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        load: Option<Mass>,
        /// What was done.
        done: Reps,
    },
    /// Well off its target once: so many half repetitions too easy, or too hard below nothing.
    WellOff(i16),
    /// Missed once more in its own session.
    Missed {
        /// The row.
        at: RowId,
        /// What was called there, before rounding.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        load: Option<Mass>,
        /// What the plan does about it now.
        then: Miss,
    },
    /// What was missed there is made.
    Cleared(RowId),
    /// This share of the load in its next session, and no longer.
    NextTime(Percent),
    /// Comes back from a lay-off with this share.
    LaidOff {
        /// Kept of the load.
        keep: Percent,
    },
    /// The lay-off is over.
    Back,
    /// It hurt, at this load at the least.
    Hurt {
        /// The lightest load that did, as it was called.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        at: Option<Mass>,
    },
    /// No pain: it comes back from this share.
    PainFree {
        /// Kept of the load.
        keep: Percent,
    },
    /// Nothing is left of the pain.
    Whole,
}

mirror!(enum Change = owners::Change {
    Max { mass, origin },
    AboveMax(it),
    Load { load, counting, asked },
    Fresh,
    Step(it),
    Place { gym, place },
    Aim(it),
    Extend(it),
    TwoOver { load, done },
    WellOff(it),
    Missed { at, load, then },
    Cleared(it),
    NextTime(it),
    LaidOff { keep },
    Back,
    Hurt { at },
    PainFree { keep },
    Whole,
});

/// How a max came to be known.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(any(test, feature = "schema"), derive(JsonSchema))]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum MaxOrigin {
    /// Entered by a person.
    Entered,
    /// Lifted in a test.
    Tested,
    /// Raised from estimates of two sessions, by the plan's rule.
    Raised {
        /// The formula, by its key.
        formula: String,
    },
}

mirror!(enum MaxOrigin = owners::MaxOrigin {
    Entered,
    Tested,
    Raised { formula },
});
