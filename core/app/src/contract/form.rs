//! What is made and mended by hand: one form for all of it.

use serde::{Deserialize, Serialize};

use super::{Chart, Field, Key};

/// What a form is of.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum FormOf {
    /// How to begin: the demo, a new plan, a plan file.
    Start,
    /// A gym that is being made or mended.
    Gym,
    /// Maxes, working loads and body mass.
    Maxes,
    /// The exercises there are, and those of one's own.
    Exercises,
    /// A plan that is being made or mended.
    Plan,
    /// A session of the plan, changed for once before it begins.
    Session,
    /// Which loads a lifter likes, in a gym or for a lift.
    Liked,
    /// Changes that a coach sent: the look's text is the file's. They are taken by putting that text:
    /// all that fit, or the one whose id is the place.
    Changes,
    /// The records as a file to be handed on: all of them, or what a coach gets; and a file of them
    /// that was opened, before it is taken. A shell opens one as it opens a plan, and is answered
    /// this.
    Records,
}

/// How something that is made by hand is changed. What is changed is a draft: each step of it is on
/// disk before it is shown, and nothing goes by it until it is taken up.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum Edit {
    /// A draft is begun; the place says from what.
    Open,
    /// The place says this.
    Put {
        /// What, as it is written.
        text: String,
    },
    /// One more in the list at the place.
    Add {
        /// Of what, where there are kinds; empty for the usual.
        what: String,
    },
    /// What is at the place goes.
    Remove,
    /// What is at the place goes so many places down its list; negative is up.
    Move {
        /// Places.
        by: i32,
    },
    /// The last step is taken back.
    Undo,
    /// What was taken back comes again.
    Redo,
    /// The draft is dropped.
    Drop,
    /// What it says holds from now on.
    TakeUp,
}

/// A line of a form.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct FormRow {
    /// Stable name within the form.
    pub id: String,
    /// How deep it stands: 0 a heading.
    pub depth: u8,
    /// What it is.
    pub text: String,
    /// A second, quieter line: what follows from it. Empty for none.
    pub detail: String,
    /// What it says now, as it stands between down and up; empty where it says nothing.
    pub value: String,
    /// Something is missing or wrong here; the text, a fault or a remark says it too.
    pub warns: bool,
    /// What is wrong here, a sentence each, with what to do.
    pub faults: Vec<String>,
    /// What a coach would look at here, a sentence each.
    pub remarks: Vec<String>,
    /// One step down; none where it has no steps.
    pub down: Option<Key>,
    /// One step up.
    pub up: Option<Key>,
    /// Its value typed; none where it can't be.
    pub field: Option<Field>,
    /// What else can be done with it; the first opens it, where it opens.
    pub keys: Vec<Key>,
}

/// What a form says as a file, to be saved or handed on.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct FormFile {
    /// A name for it: `boathouse.toml`.
    pub name: String,
    /// Its text.
    pub text: String,
}

/// What is made and mended by hand.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct FormScreen {
    /// What it is of.
    pub title: String,
    /// How it stands.
    pub subtitle: String,
    /// Its lines.
    pub rows: Vec<FormRow>,
    /// What follows from it as a whole: what can be made and what can't, what is wrong nowhere in
    /// particular.
    pub notes: Vec<String>,
    /// What it was over time; none where that says nothing.
    pub chart: Option<Chart>,
    /// A file is a way on from here: the shell opens one, and shows its text as a plan's.
    pub plan_file: bool,
    /// It as a file; none where it is none.
    pub file: Option<FormFile>,
    /// Take up, drop, undo, add, and back.
    pub keys: Vec<Key>,
    /// The whole form read aloud.
    pub aloud: String,
}
