//! What can be tapped, written or looked at.

use serde::{Deserialize, Serialize};

use super::{FormOf, Intent, LayAnew};

/// A screen to look at. Looking changes nothing.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
#[serde(deny_unknown_fields)]
pub enum Look {
    /// Today's sheet.
    Today {
        /// The row of a session; none is the one that is on.
        #[serde(default)]
        session: Option<String>,
        /// Minutes there are.
        #[serde(default)]
        minutes: Option<u32>,
    },
    /// The floor.
    Floor {
        /// What is being entered.
        #[serde(default)]
        draft: Draft,
    },
    /// The tally of the last session.
    Tally,
    /// The plan's weeks.
    Weeks,
    /// The plan's weeks as they would be with the rest laid anew.
    Anew {
        /// How.
        how: LayAnew,
    },
    /// One exercise over time.
    Lift {
        /// The exercise, by its slug or name; empty is the one on the floor, else the one done last.
        exercise: String,
        /// The page of its sessions, from 0.
        #[serde(default)]
        page: u32,
        /// All its sessions on one page, as paper has them.
        #[serde(default, skip_serializing_if = "std::ops::Not::not")]
        #[cfg_attr(feature = "uniffi", uniffi(default = false))]
        all: bool,
    },
    /// Balance.
    Balance {
        /// Over so many weeks, 1 to 52; none is this week.
        #[serde(default)]
        weeks: Option<u32>,
    },
    /// What this gym has.
    Equipment,
    /// The general cautions, and what is said of the lifter's age.
    Care,
    /// A plan.
    Plan {
        /// The text of a file to read; none is the plan that is on.
        #[serde(default)]
        text: Option<String>,
        /// The week to lay out, from 1; none is the whole plan in short.
        #[serde(default)]
        week: Option<u32>,
    },
    /// What is made and mended by hand.
    Form {
        /// What it is of.
        of: FormOf,
        /// The part of it that is open, as its keys name it; empty is the whole.
        #[serde(default)]
        at: String,
        /// What is looked for or being entered there, as it was typed.
        #[serde(default)]
        text: String,
    },
}

/// What is being entered on the floor and is not said yet. The shell keeps it and hands it back;
/// the core steps it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[derive(Default)]
#[serde(deny_unknown_fields)]
pub struct Draft {
    /// The amount shown in the big figure, in the unit of the call; none is as called.
    #[serde(default)]
    #[cfg_attr(feature = "uniffi", uniffi(default))]
    pub amount: Option<u32>,
    /// The load's figure in exact kilograms, for a correction.
    #[serde(default)]
    #[cfg_attr(feature = "uniffi", uniffi(default))]
    pub load: Option<String>,
    /// Repetitions with help.
    #[serde(default)]
    #[cfg_attr(feature = "uniffi", uniffi(default))]
    pub helped: u32,
    /// The earlier part that is corrected; none records the current one.
    #[serde(default)]
    #[cfg_attr(feature = "uniffi", uniffi(default))]
    pub correct: Option<String>,
    /// The panel that is open.
    #[serde(default)]
    #[cfg_attr(feature = "uniffi", uniffi(default))]
    pub panel: Option<String>,
}

/// What a tap does, as [`crate::Engine::act`] takes it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum Action {
    /// Dispatch this.
    Do {
        /// The intent.
        intent: Intent,
        /// The session it belongs to, by its number: a key kept from an earlier one is refused. None
        /// belongs to no session.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[cfg_attr(feature = "uniffi", uniffi(default = None))]
        session: Option<u64>,
        /// What is shown when it is recorded; none is wherever it leads.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[cfg_attr(feature = "uniffi", uniffi(default = None))]
        then: Option<Look>,
    },
    /// Show this.
    Show {
        /// The screen to look at.
        look: Look,
    },
}

/// Something to tap.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Key {
    /// Stable name within the screen.
    pub id: String,
    /// What stands on it.
    pub label: String,
    /// What it does, to be read aloud.
    pub says: String,
    /// Whether it can be tapped now.
    pub enabled: bool,
    /// It is the state that holds already: a chosen gym, kit that is worn.
    pub chosen: bool,
    /// What it does.
    pub action: Action,
}

/// Something to write, sent as [`Intent::Write`]. What is looked for is written too: it shows, and
/// records nothing.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Field {
    /// Its name.
    pub id: String,
    /// What it asks for.
    pub label: String,
    /// What stands in it.
    pub value: String,
    /// An example of what would do.
    pub hint: String,
    /// Digits are wanted, with a unit.
    pub numeric: bool,
}

/// A line of a sheet.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Row {
    /// Stable name within the screen.
    pub id: String,
    /// How deep it stands: 0 a heading, 1 an exercise, 2 its sets.
    pub depth: u8,
    /// Its text.
    pub text: String,
    /// A second, quieter line; empty for none.
    pub detail: String,
    /// Why: the derivation in words, a line a step; empty where there is none.
    pub why: Vec<String>,
    /// What can be done with it.
    pub keys: Vec<Key>,
    /// Something is missing, missed or wrong here; the text says it too.
    pub warns: bool,
    /// It is done.
    pub done: bool,
}

/// A list that opens over the thumb zone: what is seldom needed.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Panel {
    /// Its name.
    pub id: String,
    /// Its title.
    pub title: String,
    /// Lines in it.
    pub rows: Vec<Row>,
    /// What can be tapped.
    pub keys: Vec<Key>,
    /// What can be written.
    pub fields: Vec<Field>,
    /// Closes it.
    pub close: Key,
}
