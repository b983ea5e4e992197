//! One exercise over time, and charts as data.

use serde::{Deserialize, Serialize};

use super::{Field, Key, Row};

/// A mark on an axis.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct ChartTick {
    /// Where, in the unit of the axis.
    pub at: i64,
    /// Its label.
    pub label: String,
}

/// An axis with round ticks.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct ChartAxis {
    /// What it shows.
    pub label: String,
    /// Where it begins.
    pub from: i64,
    /// Where it ends.
    pub to: i64,
    /// Its ticks.
    pub ticks: Vec<ChartTick>,
}

/// A point; a band has a low and a high end, a line has both the same.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct ChartPoint {
    /// Along the first axis.
    pub x: i64,
    /// Low end along the second.
    pub low: i64,
    /// High end along the second.
    pub high: i64,
    /// The point in words.
    pub label: String,
}

/// How a series is drawn.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum SeriesKind {
    /// A line through its points.
    Line,
    /// Marks.
    Marks,
    /// A band between low and high.
    Band,
    /// Crosses, of what failed.
    Failed,
}

/// A series.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct ChartSeries {
    /// What it is.
    pub label: String,
    /// How it is drawn.
    pub kind: SeriesKind,
    /// Its points, in order of x.
    pub points: Vec<ChartPoint>,
}

/// A chart as data: each shell draws it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Chart {
    /// Its title.
    pub title: String,
    /// The first axis: days since 1970-01-01.
    pub across: ChartAxis,
    /// The second, in the unit of its label: grams for a load in kilograms or pounds, else
    /// repetitions, seconds or metres as they are counted.
    pub up: ChartAxis,
    /// Its series, those behind first.
    pub series: Vec<ChartSeries>,
    /// The chart in a sentence, to be read aloud.
    pub aloud: String,
}

/// One exercise over time.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct LiftScreen {
    /// The exercise.
    pub title: String,
    /// Its reference max and how it came about.
    pub subtitle: String,
    /// Loads and estimates; none with too little history.
    pub chart: Option<Chart>,
    /// Records.
    pub records: Vec<Row>,
    /// Its sessions, latest first, a page of them.
    pub sessions: Vec<Row>,
    /// What can be written: its max, the working load of its rows in the plan.
    #[serde(default)]
    #[cfg_attr(feature = "uniffi", uniffi(default))]
    pub fields: Vec<Field>,
    /// Pages and other exercises.
    pub keys: Vec<Key>,
    /// The whole screen read aloud.
    pub aloud: String,
}
