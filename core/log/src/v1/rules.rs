//! What a plan does from session to session.

use barwright_domain::plan;
#[cfg(any(test, feature = "schema"))]
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::quantity::{Mass, Percent};
use crate::mirror::is_default;

/// A rule for next time.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(any(test, feature = "schema"), derive(JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Rule {
    /// Which rule.
    pub kind: RuleKind,
    /// By effort on a row in percent: up as well as down.
    #[serde(default, skip_serializing_if = "is_default")]
    pub up: bool,
    /// The step it takes; where none is given, 2.5 kg or 5 lb on plates, else the smallest that the
    /// equipment makes (by effort: 2 % for each half point).
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub step: Option<Step>,
}

mirror!(struct Rule = plan::Rule { kind, up, step });

/// Rules a plan can name.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(any(test, feature = "schema"), derive(JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum RuleKind {
    /// The plan's own numbers by week.
    AsPlanned,
    /// More repetitions, seconds or metres to the end of the range, then more load.
    DoubleProgression,
    /// More load after two or more repetitions over the goal in the last set of two sessions
    /// running (NSCA Essentials, ch. 17).
    TwoForTwo,
    /// More load after every session in which all called sets were made (common practice).
    AddWhenMade,
    /// The load follows the effort called (Helms et al. 2018).
    ByEffort,
    /// Less help.
    LessAssistance,
    /// More weight on the body.
    MoreAddedLoad,
}

mirror!(enum RuleKind = plan::RuleKind {
    AsPlanned,
    DoubleProgression,
    TwoForTwo,
    AddWhenMade,
    ByEffort,
    LessAssistance,
    MoreAddedLoad,
});

/// The step of a rule.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(any(test, feature = "schema"), derive(JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum Step {
    /// So much.
    Mass(Mass),
    /// Such a share of the load.
    Share(Percent),
}

mirror!(enum Step = plan::Step {
    Mass(it),
    Share(it),
});

/// What follows a miss.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(any(test, feature = "schema"), derive(JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum Miss {
    /// The same again.
    Repeat,
    /// So much less.
    Less(Percent),
    /// Hold, and ask the coach.
    Hold,
}

mirror!(enum Miss = plan::Miss {
    Repeat,
    Less(it),
    Hold,
});

/// What may raise a reference max.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(any(test, feature = "schema"), derive(JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum RaiseMax {
    /// Nothing but an entry by hand.
    Never,
    /// A test.
    Tests,
    /// A test, or an estimate from sets of ten repetitions or fewer.
    Estimates,
}

mirror!(enum RaiseMax = plan::RaiseMax {
    Never,
    Tests,
    Estimates,
});
