//! Why a load is what it is.

use barwright_domain::{progress, session};
#[cfg(any(test, feature = "schema"))]
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::how_many::Amount;
use super::quantity::{Mass, Percent, Reps, Reserve, Seconds};
use super::terms::Cut;
use super::why::Why;
use crate::mirror::{Mirror, OutOfRange, is_default};

/// The derivation behind a load, one step after another.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(any(test, feature = "schema"), derive(JsonSchema))]
#[serde(transparent)]
pub struct Reason(pub Vec<Because>);

impl Mirror for Reason {
    type Of = session::Reason;

    fn of(it: &Self::Of) -> Self {
        let session::Reason(steps) = it;
        Self(Mirror::of(steps))
    }

    fn back(self) -> Result<Self::Of, OutOfRange> {
        let Self(steps) = self;
        Ok(session::Reason(steps.back()?))
    }
}

/// One step of a derivation.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(any(test, feature = "schema"), derive(JsonSchema))]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
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
        #[serde(default, skip_serializing_if = "Option::is_none")]
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
        rule: SingleRule,
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
        #[serde(default, skip_serializing_if = "is_default")]
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
        #[serde(default, skip_serializing_if = "Option::is_none")]
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

mirror!(enum Because = session::Because {
    PlanSays(it),
    ShareOfMax { share, max, day, of, gives },
    ShareOfEstimate { share, max, day, gives },
    Single { rule, last, gives },
    WorkingMax { share, of, gives },
    UpTo { share, gives },
    LessBody { moved, body, gives },
    PercentForReps { reps, left, share, interpolated },
    RampShare { share, of, gives },
    RampSpread { step, of, from, to, gives },
    EmptyBar,
    FullSizePlates,
    BodyAlone,
    MovedWithinSlack { asked },
    ShareOfTop { share, top, gives },
    DropOff { off, gives },
    Liked { smallest, step, made },
    Made { asked, made },
    Carried { load, since },
    Said { day, why, by },
    FromFirst { first, gives },
    Cut { cut, gives },
    PlaceOfLast(it),
    Aim(it),
    Extended(it),
    LifterChose(it),
    LifterChosePin(it),
    ClimbStep { step, from },
    Unguarded,
    NothingToGoBy,
    AfterPause { pause },
});

/// Why a single has its load.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(any(test, feature = "schema"), derive(JsonSchema))]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum SingleRule {
    /// The first: this share of what is expected.
    First(Percent),
    /// The last was lifted: this much more.
    Lifted(Percent),
    /// The last was missed: this much less.
    Missed(Percent),
    /// Halfway between the heaviest lifted and the lightest missed.
    Between {
        /// The heaviest that was lifted.
        lifted: Mass,
        /// The lightest that was missed.
        missed: Mass,
    },
    /// The next that the equipment makes above the heaviest lifted.
    Next {
        /// The heaviest that was lifted.
        lifted: Mass,
    },
}

mirror!(enum SingleRule = progress::test_day::Because {
    First(it),
    Lifted(it),
    Missed(it),
    Between { lifted, missed },
    Next { lifted },
});
