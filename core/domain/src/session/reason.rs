//! Why a number is what it is, as data; the words stand in the app's phrases.

use serde::{Deserialize, Serialize};

use crate::call::Amount;
use crate::owners::{Cut, Why};
use crate::progress::test_day;
use crate::quantity::{Mass, Percent, Reps, Reserve, Seconds};

/// The derivation behind a load, one step after another.
///
/// Read in order they tell the whole story: "77.5 % of 142.5 kg = 110.44; nearest these plates
/// make: 110".
#[derive(Debug, Clone, PartialEq, Eq, Hash, Default, Serialize, Deserialize)]
#[serde(transparent)]
pub struct Reason(pub Vec<Because>);

/// One step of a derivation.
#[derive(Debug, Clone, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Because {
    /// The plan says so.
    PlanSays(Mass),
    /// A share of a max.
    ShareOfMax {
        /// The share taken.
        share: Percent,
        /// The max.
        max: Mass,
        /// Its local date, in days since 1970-01-01.
        day: i32,
        /// Another lift's, by name.
        of: Option<String>,
        /// What it comes to.
        gives: Mass,
    },
    /// A share of the max that the sets of the last four weeks estimate.
    ShareOfEstimate {
        /// The share taken.
        share: Percent,
        /// The best estimate.
        max: Mass,
        /// Its local date, in days since 1970-01-01.
        day: i32,
        /// What it comes to.
        gives: Mass,
    },
    /// A single of a test, after the one before it.
    Single {
        /// The rule of the protocol.
        rule: test_day::Because,
        /// What was tried last, as moved mass.
        last: Mass,
        /// What it comes to, as moved mass.
        gives: Mass,
    },
    /// A working max: a share of the reference max.
    WorkingMax {
        /// The share.
        share: Percent,
        /// Of the reference max.
        of: Mass,
        /// What it comes to.
        gives: Mass,
    },
    /// A range of shares: the load may be as heavy as this.
    UpTo {
        /// The upper share.
        share: Percent,
        /// What it comes to.
        gives: Mass,
    },
    /// What is moved is the body's part and the load.
    LessBody {
        /// What is to be moved.
        moved: Mass,
        /// The body's part.
        body: Mass,
        /// What is left to add; help is negative.
        gives: Mass,
    },
    /// The published table's share for so many repetitions with so many left.
    PercentForReps {
        /// Repetitions.
        reps: Reps,
        /// Left.
        left: Reserve,
        /// The share.
        share: Percent,
        /// It lies between two rows of the table.
        interpolated: bool,
    },
    /// A warm-up step: a share of the work load.
    RampShare {
        /// The share.
        share: Percent,
        /// Of the first work load.
        of: Mass,
        /// What it comes to.
        gives: Mass,
    },
    /// A warm-up step of several that are spread evenly up to the work load.
    RampSpread {
        /// Which it is, from 1.
        step: u8,
        /// Of how many.
        of: u8,
        /// What they start from.
        from: Mass,
        /// The first work load.
        to: Mass,
        /// Where it lies evenly.
        gives: Mass,
    },
    /// The empty bar.
    EmptyBar,
    /// The lightest load with full-size plates, which set the height of a bar on the floor.
    FullSizePlates,
    /// A warm-up with the body alone.
    BodyAlone,
    /// Moved within the slack to save handling plates.
    MovedWithinSlack {
        /// What was asked.
        asked: Mass,
    },
    /// A share of the top set just done.
    ShareOfTop {
        /// The share.
        share: Percent,
        /// The top set's load.
        top: Mass,
        /// What it comes to.
        gives: Mass,
    },
    /// A share off the part before.
    DropOff {
        /// The share taken off.
        off: Percent,
        /// What it comes to.
        gives: Mass,
    },
    /// Of the loads that this gym can make, the nearest that the lifter likes.
    Liked {
        /// The smallest plate that the lifter likes.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        smallest: Option<Mass>,
        /// The step that they like.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        step: Option<Mass>,
        /// What is made so.
        made: Mass,
    },
    /// The nearest that this gym can make.
    Made {
        /// What was asked.
        asked: Mass,
        /// What can be made.
        made: Mass,
    },
    /// What a track carries, since a local date in days since 1970-01-01.
    Carried {
        /// The load.
        load: Mass,
        /// Since when.
        since: i32,
    },
    /// What the last session said that counts, on its local date.
    Said {
        /// The date, in days since 1970-01-01.
        day: i32,
        /// What it found.
        why: Why,
        /// What it added to the load, where it did.
        by: Option<Mass>,
    },
    /// Another set of the row than the first: so much from it.
    FromFirst {
        /// The first set's load.
        first: Mass,
        /// What it comes to.
        gives: Mass,
    },
    /// A cut, for a while.
    Cut {
        /// It.
        cut: Cut,
        /// What it comes to.
        gives: Mass,
    },
    /// A place on a stack without numbers, as it was used last in this gym.
    PlaceOfLast(String),
    /// What to try for within what is asked.
    Aim(Amount),
    /// The range goes on to this while the load is held.
    Extended(Amount),
    /// Set by the lifter for the sets left.
    LifterChose(Mass),
    /// A place on an unnumbered stack, set by the lifter for the sets left.
    LifterChosePin(String),
    /// One step up on the way to the top set.
    ClimbStep {
        /// The step.
        step: Percent,
        /// From the set just done.
        from: Mass,
    },
    /// Neither pins nor a spotter under a bar: a set with two in reserve in place of a test.
    Unguarded,
    /// Nothing to go by: the lifter finds it.
    NothingToGoBy,
    /// A single step again after a long pause.
    AfterPause {
        /// How long it was.
        pause: Seconds,
    },
}
