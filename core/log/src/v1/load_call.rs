//! The load of a set as a plan says it.

use barwright_domain::call;
#[cfg(any(test, feature = "schema"))]
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::quantity::{Mass, Percent, Range};

/// The max that a percentage is taken from.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(any(test, feature = "schema"), derive(JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum MaxOf {
    /// This lift's reference max.
    Own,
    /// This lift's working max: the plan's share of the reference max.
    Working,
    /// Another lift's reference max, by its slug.
    Lift(String),
    /// Another lift's working max, by its slug.
    WorkingOf(String),
}

mirror!(enum MaxOf = call::MaxOf {
    Own,
    Working,
    Lift(it),
    WorkingOf(it),
});

/// The load of a set as a plan says it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(any(test, feature = "schema"), derive(JsonSchema))]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum LoadCall {
    /// A percentage, or a range of them, of a max.
    Percent {
        /// The share or range of shares.
        share: Range<Percent>,
        /// Of which max.
        of: MaxOf,
    },
    /// A fixed load.
    Mass(Mass),
    /// Nothing but the body.
    Body,
    /// The body and so much more.
    Added(Mass),
    /// The body less so much help; the help is a positive mass.
    Assisted(Mass),
    /// A share of the top set just done.
    OfTopSet(Percent),
    /// A place on an unnumbered stack: "7".
    Pin(String),
    /// A named set-up of bands or chains, with a bar load where one is stated; its history stands
    /// apart and estimates nothing.
    SetUp {
        /// The name.
        name: String,
        /// Load beside the bands or chains.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        load: Option<Mass>,
    },
    /// What the lifter finds right for the effort and the repetitions asked; begun from last
    /// time's, or from what the rule of the exercise says.
    ByFeel,
}

mirror!(enum LoadCall = call::LoadCall {
    Percent { share, of },
    Mass(it),
    Body,
    Added(it),
    Assisted(it),
    OfTopSet(it),
    Pin(it),
    SetUp { name, load },
    ByFeel,
});
