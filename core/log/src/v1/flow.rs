//! How one set leads to the next.

use barwright_domain::call;
#[cfg(any(test, feature = "schema"))]
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::effort::EffortTarget;
use super::quantity::{Percent, Reps, Seconds};

/// Where the number of sets comes from.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[cfg_attr(any(test, feature = "schema"), derive(JsonSchema))]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum Flow {
    /// The sets listed, and no more.
    #[default]
    Listed,
    /// Sets with a rising load until one is as hard as asked: the top set.
    Climb {
        /// The effort of the top set.
        to: EffortTarget,
        /// How much a step adds to the load just lifted.
        step: Percent,
        /// The most sets.
        most: u8,
    },
    /// The same set again until it is as hard as asked.
    Repeat {
        /// The effort that ends it.
        until: EffortTarget,
        /// The most sets.
        most: u8,
    },
    /// As many sets as it takes to a total of repetitions.
    Total {
        /// Repetitions in all.
        reps: Reps,
        /// The most sets.
        most: u8,
    },
    /// A set every so many seconds, start to start.
    Clock {
        /// Seconds from start to start.
        every: Seconds,
    },
    /// Singles with a rising load to a max: the test day.
    Test {
        /// How much a step adds to the load just lifted, near the end.
        step: Percent,
        /// The most tries.
        most: u8,
    },
}

mirror!(enum Flow = call::Flow {
    Listed,
    Climb { to, step, most },
    Repeat { until, most },
    Total { reps, most },
    Clock { every },
    Test { step, most },
});
