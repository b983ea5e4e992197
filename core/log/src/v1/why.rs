//! Why an owner changes, or does not.

use barwright_domain::{owners, progress};
#[cfg(any(test, feature = "schema"))]
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::how_many::Amount;
use super::quantity::{EstimatedReps, Mass, Percent, Reps, Reserve};
use super::rules::{Miss, RuleKind};

/// Why.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(any(test, feature = "schema"), derive(JsonSchema))]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
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

mirror!(enum Why = owners::Why {
    Entered,
    PlanSays,
    Silent,
    TooFew { done, of },
    LessLoad,
    UnderCut,
    MoreLoad,
    Found,
    AsPlanned,
    NoRule,
    AllMade,
    TopReached { rule, top },
    BelowTop { rule, done, top },
    NoPlace { top },
    StepTooBig { step_to, expected, floor, formula },
    Rough { step_to },
    NothingHeavier,
    TwoForTwo { goal, done },
    NotYetTwo { goal, done, times },
    OffTarget { called, edge, change },
    OnTarget { called },
    NotCalled,
    Missed { times, then },
    MissMade,
    Tested,
    AboveOnce { estimate },
    AboveTwice { estimate },
    NotAbove { estimate },
    Pain,
    PainFree,
    Back,
    LaterWord,
});

/// A published formula for the one-repetition max. With `w` the load and `r` the repetitions to
/// failure:
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(any(test, feature = "schema"), derive(JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum Formula {
    /// `w (1 + r/30)`. Epley 1985. The default: a coach can check it in the head, it is neither
    /// the highest nor the lowest of the seven from 2 to 10 repetitions, and it has no pole.
    Epley,
    /// `36 w / (37 − r)`. Brzycki 1993.
    Brzycki,
    /// `100 w / (101.3 − 2.67123 r)`. Lander 1985.
    Lander,
    /// `w r^0.10`. Lombardi 1989.
    Lombardi,
    /// `100 w / (52.2 + 41.9 e^(−0.055 r))`. Mayhew et al. 1992.
    Mayhew,
    /// `w (1 + 0.025 r)`. O'Conner et al. 1989.
    Oconner,
    /// `100 w / (48.8 + 53.8 e^(−0.075 r))`. Wathan 1994.
    Wathan,
}

mirror!(enum Formula = progress::estimate::Formula {
    Epley,
    Brzycki,
    Lander,
    Lombardi,
    Mayhew,
    Oconner,
    Wathan,
});
