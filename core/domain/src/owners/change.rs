//! What a session, a person or a plan says to an owner.

use serde::{Deserialize, Serialize};

use super::row::{Owner, RowId};
use crate::call::SetId;
use crate::call::{Amount, HowMany};
use crate::catalogue::Counting;
use crate::plan::{Miss, RuleKind};
use crate::progress::estimate::{EstimatedReps, Formula};
use crate::quantity::{Mass, Percent, Reps, Reserve};

/// How a max came to be known.
#[derive(Debug, Clone, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
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

/// One change of an owner's state.
#[derive(Debug, Clone, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
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

/// Why.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Why {
    /// A person wrote it.
    Entered,
    /// The plan says so from its adoption on.
    PlanSays,
    /// Nothing was begun, or it ended by pain, an interruption or the equipment.
    Silent,
    /// Less than half its sets were called or done: too few to step on.
    TooFew {
        /// Done.
        done: u8,
        /// What the plan has.
        of: u8,
    },
    /// Less load than called: neither made nor missed.
    LessLoad,
    /// Done under a cut: no step, and the earlier load comes back.
    UnderCut,
    /// More load than called, and made: it is the load now.
    MoreLoad,
    /// Found by the lifter.
    Found,
    /// Made, and the plan's own numbers go on.
    AsPlanned,
    /// Made, and no rule says more.
    NoRule,
    /// All sets were made: more load.
    AllMade,
    /// All sets reached the top of the range: more load, or less help.
    TopReached {
        /// The rule.
        rule: RuleKind,
        /// The top.
        top: Amount,
    },
    /// The weakest set has not reached the top: the same load, more of it.
    BelowTop {
        /// The rule.
        rule: RuleKind,
        /// The weakest set.
        done: Amount,
        /// The top.
        top: Amount,
    },
    /// All sets reached the top, and the stack has no further place, or none is known.
    NoPlace {
        /// The top.
        top: Amount,
    },
    /// The next that can be made would fall below the range: held with more repetitions.
    StepTooBig {
        /// The load of the step.
        step_to: Mass,
        /// Repetitions that the most careful estimate expects there.
        expected: EstimatedReps,
        /// The least of the range.
        floor: Reps,
        /// That estimate's formula.
        formula: Formula,
    },
    /// The next that can be made is a jump, and the set lies outside every formula's range: held.
    Rough {
        /// The load of the step.
        step_to: Mass,
    },
    /// The equipment makes nothing heavier: held with more repetitions.
    NothingHeavier,
    /// Two or more over the goal in the last set, two sessions running: more load.
    TwoForTwo {
        /// The goal.
        goal: Reps,
        /// The last sets of the two sessions, the earlier first.
        done: [Reps; 2],
    },
    /// Not yet two or more over the goal two sessions running.
    NotYetTwo {
        /// The goal.
        goal: Reps,
        /// The last set.
        done: Reps,
        /// Sessions running with two over: none or one.
        times: u8,
    },
    /// The calls lay outside the target, by their median: so much less or more.
    OffTarget {
        /// The median call; none left where a repetition failed.
        called: Reserve,
        /// The edge of the target that it passed.
        edge: Reserve,
        /// The change of what is moved.
        change: Percent,
    },
    /// The calls lay in the target.
    OnTarget {
        /// The median call.
        called: Reserve,
    },
    /// No effort was called.
    NotCalled,
    /// Missed so many times running in its own session.
    Missed {
        /// Times.
        times: u8,
        /// What the plan does about it.
        then: Miss,
    },
    /// What was missed is made.
    MissMade,
    /// Singles of a test.
    Tested,
    /// Estimates lay above the max: once, and a second session raises it.
    AboveOnce {
        /// The estimate.
        estimate: Mass,
    },
    /// Estimates of two sessions lay above the max: the smaller counts, at most 2.5 % at once.
    AboveTwice {
        /// The smaller.
        estimate: Mass,
    },
    /// Estimates did not lie above the max.
    NotAbove {
        /// The best.
        estimate: Mass,
    },
    /// Pain.
    Pain,
    /// Half the work sets or more, and no pain.
    PainFree,
    /// Back after days without the lift.
    Back,
    /// A later word was said already: what is entered for an earlier day comes too late.
    LaterWord,
}

/// What only a person can answer, shown in the tally.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Question {
    /// The range went on as far as it may: take the jump, at the range's bottom?
    Jump,
    /// Two sessions well off the target: go by so much?
    WellOff,
    /// Missed again and again: go down?
    Missed,
    /// Two misses in one session of several that share a track: a track of its own?
    OwnTrack(RowId),
    /// A test came out lower, or was not ended: take it all the same?
    Test,
}

/// A change that one press accepts.
#[derive(Debug, Clone, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub struct Proposal {
    /// What it is about.
    pub question: Question,
    /// The load, or max, that it would be.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub to: Option<Mass>,
}

/// What a session comes to for one owner: at most one in a session.
#[derive(Debug, Clone, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub struct Outcome {
    /// The owner.
    pub owner: Owner,
    /// What changes; nothing where it only says why not.
    pub changes: Vec<Change>,
    /// Why.
    pub why: Why,
    /// The sets that it comes from.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub sets: Vec<SetId>,
    /// It said nothing: what waits for more evidence goes on waiting.
    #[serde(default)]
    pub silent: bool,
    /// The lifter holds it back: nothing changes.
    #[serde(default)]
    pub held: bool,
    /// What may be accepted.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub proposal: Option<Proposal>,
}

/// Something said to an owner.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Word {
    /// The session that said it, by the log's number of its first event; none for a person or a plan.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub session: Option<u64>,
    /// Its local date, in days since 1970-01-01.
    pub day: i32,
    /// What.
    pub outcome: Outcome,
}
