//! A load that was resolved.

use barwright_domain::{catalogue, session};
#[cfg(any(test, feature = "schema"))]
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::quantity::{Mass, Percent};
use super::rig::Rig;

/// How the load of an exercise is meant.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(any(test, feature = "schema"), derive(JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Counting {
    /// All that is lifted, the bar with its plates.
    Total,
    /// What each hand holds, with one in each.
    EachHand,
    /// The one dumbbell, kettlebell, ball or plate, in one hand or both.
    One,
    /// What the pin of a stack says.
    Stack,
    /// What is loaded on one side of a machine.
    EachSide,
    /// What hangs on the body or is taken off it; nothing for the body alone.
    Added,
    /// No load that has a number: a band, a named set-up.
    Unnumbered,
}

mirror!(enum Counting = catalogue::Counting {
    Total,
    EachHand,
    One,
    Stack,
    EachSide,
    Added,
    Unnumbered,
});

/// The body's part in a load.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(any(test, feature = "schema"), derive(JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct BodyPart {
    /// Body mass on the day.
    pub mass: Mass,
    /// Share of it that the exercise moves.
    pub share: Percent,
}

mirror!(struct BodyPart = session::BodyPart { mass, share });

/// A load that this gym can make.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(any(test, feature = "schema"), derive(JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Load {
    /// What the rule meant, before this gym's plates: progress steps from here.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub meant: Option<Mass>,
    /// What is on: total, each hand, stack figure, or added to the body, as `counting` says; for
    /// help it is negative. None for a pin without a number or a set-up without figures.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub figure: Option<Mass>,
    /// How the figure is meant.
    pub counting: Counting,
    /// What to put on.
    pub rig: Rig,
    /// The body's part, where the exercise moves it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub body: Option<BodyPart>,
    /// Named bands or chains.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub set_up: Option<String>,
}

mirror!(struct Load = session::Load { meant, figure, counting, rig, body, set_up });

/// What today's call says of the load.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(any(test, feature = "schema"), derive(JsonSchema))]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum CallLoad {
    /// This load.
    Known(Load),
    /// A share of the top set, known when that is done.
    AfterTop {
        /// The share.
        share: Percent,
    },
    /// The lifter's choice: nothing to go by yet. What they load is recorded.
    Chosen {
        /// How the figure will be meant.
        counting: Counting,
        /// The body's part, where the exercise moves it.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        body: Option<BodyPart>,
    },
}

mirror!(enum CallLoad = session::CallLoad {
    Known(it),
    AfterTop { share },
    Chosen { counting, body },
});
