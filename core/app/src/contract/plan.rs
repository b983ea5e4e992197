//! A plan file read.

use serde::{Deserialize, Serialize};

use super::{Key, Row};

/// Something wrong with a file, in its place.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct FileFault {
    /// Line, from 1.
    pub line: u32,
    /// Column in characters, from 1.
    pub column: u32,
    /// The line's text.
    pub text: String,
    /// Spaces and carets that underline the place in it.
    pub underline: String,
    /// What is wrong.
    pub problem: String,
    /// What to write instead.
    pub advice: String,
    /// It only advises: the plan can be adopted all the same.
    pub advises: bool,
    /// What it is, in words: a fault, or what a coach would change or look at.
    pub label: String,
    /// The check that advises, as the file can accept it; empty for a fault.
    pub check: String,
}

/// A plan: what it says, or what is wrong with it and where.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct PlanScreen {
    /// The plan's name, or what the matter is.
    pub title: String,
    /// Weeks and sessions in short.
    pub subtitle: String,
    /// What it says.
    pub rows: Vec<Row>,
    /// What is wrong.
    pub faults: Vec<FileFault>,
    /// Adopt, other weeks.
    pub keys: Vec<Key>,
    /// The whole screen read aloud.
    pub aloud: String,
}
