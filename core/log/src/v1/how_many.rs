//! How many a set asks for, and how much was done.

use barwright_domain::call;
#[cfg(any(test, feature = "schema"))]
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::quantity::{Distance, Range, Reps, Reserve, Seconds};

/// What ends an open set.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(any(test, feature = "schema"), derive(JsonSchema))]
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

mirror!(enum Stop = call::Stop {
    Reserve(it),
    Form,
    Pace,
    Time(it),
});

/// How many a set asks for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(any(test, feature = "schema"), derive(JsonSchema))]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum HowMany {
    /// Repetitions, or a range of them.
    Reps(Range<Reps>),
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

mirror!(enum HowMany = call::HowMany {
    Reps(it),
    Seconds(it),
    Metres(it),
    Open { at_least, stop },
});

/// How much was done.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(any(test, feature = "schema"), derive(JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum Amount {
    /// Repetitions.
    Reps(Reps),
    /// Seconds held.
    Seconds(Seconds),
    /// Metres carried.
    Metres(Distance),
}

mirror!(enum Amount = call::Amount {
    Reps(it),
    Seconds(it),
    Metres(it),
});
