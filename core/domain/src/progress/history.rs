//! What was done before, as the rules read it.

use crate::call::{Amount, EffortTarget, HowMany, Side, WeekKind};
use crate::quantity::{Mass, Reserve};
use crate::session::Ending;

/// One past session of one row of sets of an exercise. Loads are those of the row's first set, in
/// the terms the exercise counts in: on the bar, in each hand, added to the body (help is
/// negative). They are absent where a load has no number.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PastSession {
    /// What its week was for. Only ordinary weeks are evidence.
    pub kind: WeekKind,
    /// What the plan's own number came to, before any rule.
    pub planned: Option<Mass>,
    /// What was meant, before rounding to what could be made.
    pub meant: Option<Mass>,
    /// What was made of it.
    pub made: Option<Mass>,
    /// The share of body mass that the exercise moved beside the load; nothing for most.
    pub body: Mass,
    /// How many sets were called.
    pub sets_called: u8,
    /// Whether each side was to do each of them.
    pub each_side: bool,
    /// The sets that were begun; the others say nothing.
    pub sets: Vec<PastSet>,
}

/// One set that was done, or that one side did.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct PastSet {
    /// Its place among the sets called, from 0.
    pub place: u8,
    /// The side that did it.
    pub side: Option<Side>,
    /// The load that was lifted.
    pub made: Option<Mass>,
    /// How many were asked.
    pub asked: HowMany,
    /// How hard it was meant to be.
    pub target: Option<EffortTarget>,
    /// How many were done of what was asked, without help: all blocks of a cluster, the first part
    /// of any other set made of parts.
    pub done: Amount,
    /// What the lifter called; never the target.
    pub left: Option<Reserve>,
    /// How it ended.
    pub ending: Ending,
    /// Whether a spotter helped with further repetitions: nothing is estimated from it.
    pub helped: bool,
}
