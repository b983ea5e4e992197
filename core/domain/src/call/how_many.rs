//! How much of the work a set asks for, and how much was done.

use serde::{Deserialize, Serialize};

use crate::quantity::{Distance, Range, RepRange, Reps, Reserve, Seconds};

/// What ends an open set.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Stop {
    /// With so many repetitions left.
    Reserve(Reserve),
    /// When form goes.
    Form,
    /// When repetitions slow down.
    Pace,
    /// When the time is over.
    Time(Seconds),
}

/// How many a set asks for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum HowMany {
    /// Repetitions, or a range of them.
    Reps(RepRange),
    /// A hold, in seconds.
    Seconds(Range<Seconds>),
    /// A carry, in metres.
    Metres(Range<Distance>),
    /// As many repetitions as possible: at least so many, ended by the stop rule.
    Open {
        /// The floor below which the set fell short.
        at_least: Reps,
        /// What ends it.
        stop: Stop,
    },
}

/// How much was done.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Amount {
    /// Repetitions.
    Reps(Reps),
    /// Seconds held.
    Seconds(Seconds),
    /// Metres carried.
    Metres(Distance),
}

impl HowMany {
    /// What "as called" means when the lifter says no more: the least that was asked, so that
    /// nobody's one tap writes down more than that.
    pub fn as_called(&self) -> Amount {
        match self {
            Self::Reps(range) => Amount::Reps(range.from),
            Self::Seconds(range) => Amount::Seconds(range.from),
            Self::Metres(range) => Amount::Metres(range.from),
            Self::Open { at_least, .. } => Amount::Reps(*at_least),
        }
    }

    /// Whether an amount lies within what is asked.
    pub fn holds(&self, amount: &Amount) -> bool {
        let at_most = match (self, amount) {
            (Self::Reps(range), Amount::Reps(done)) => *done <= range.to,
            (Self::Seconds(range), Amount::Seconds(done)) => *done <= range.to,
            (Self::Metres(range), Amount::Metres(done)) => *done <= range.to,
            (Self::Open { .. }, Amount::Reps(_)) => true,
            _ => false,
        };
        at_most && self.reached_by(amount)
    }

    /// Whether an amount is of this kind of work.
    pub fn same_kind(&self, amount: &Amount) -> bool {
        matches!(
            (self, amount),
            (Self::Reps(_) | Self::Open { .. }, Amount::Reps(_))
                | (Self::Seconds(_), Amount::Seconds(_))
                | (Self::Metres(_), Amount::Metres(_))
        )
    }

    /// Whether an amount reaches the least that was asked.
    pub fn reached_by(&self, amount: &Amount) -> bool {
        match (self, amount) {
            (Self::Reps(range), Amount::Reps(done)) => *done >= range.from,
            (Self::Open { at_least, .. }, Amount::Reps(done)) => done >= at_least,
            (Self::Seconds(range), Amount::Seconds(done)) => *done >= range.from,
            (Self::Metres(range), Amount::Metres(done)) => *done >= range.from,
            _ => false,
        }
    }
}

impl Amount {
    /// The repetitions; nothing for a hold or a carry.
    pub fn reps(&self) -> Option<Reps> {
        match self {
            Self::Reps(reps) => Some(*reps),
            Self::Seconds(_) | Self::Metres(_) => None,
        }
    }
}
