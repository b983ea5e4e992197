//! What a table's columns are.

use std::collections::BTreeMap;

use super::date::Dates;
use crate::catalogue::Counting;
use crate::quantity::{MassUnit, Numerals};

/// What a column may be, in the order in which they are written.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Field {
    /// The day.
    Date,
    /// The time of day at which the session began.
    Time,
    /// The session's title.
    Title,
    /// The exercise.
    Exercise,
    /// What the set was for: warm-up or work.
    Kind,
    /// The number of the set, or a word for a warm-up.
    Set,
    /// The side.
    Side,
    /// How many such sets.
    Sets,
    /// Repetitions.
    Reps,
    /// Seconds held.
    Seconds,
    /// How far.
    Distance,
    /// The load.
    Load,
    /// The unit of the load.
    Unit,
    /// RPE.
    Rpe,
    /// Repetitions left.
    Left,
}

impl Field {
    /// All of them.
    pub const ALL: [Self; 15] = [
        Self::Date,
        Self::Time,
        Self::Title,
        Self::Exercise,
        Self::Kind,
        Self::Set,
        Self::Side,
        Self::Sets,
        Self::Reps,
        Self::Seconds,
        Self::Distance,
        Self::Load,
        Self::Unit,
        Self::Rpe,
        Self::Left,
    ];

    /// Its key in a file of columns.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::Date => "date",
            Self::Time => "time",
            Self::Title => "title",
            Self::Exercise => "exercise",
            Self::Kind => "kind",
            Self::Set => "set",
            Self::Side => "side",
            Self::Sets => "sets",
            Self::Reps => "reps",
            Self::Seconds => "seconds",
            Self::Distance => "distance",
            Self::Load => "load",
            Self::Unit => "unit",
            Self::Rpe => "rpe",
            Self::Left => "left",
        }
    }
}

/// A column of a table.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Column {
    /// By what the first line calls it.
    Named(String),
    /// By its number, from 1.
    Nth(u16),
}

/// What stands between two cells.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Separator {
    /// `,`
    #[default]
    Comma,
    /// `;`
    Semicolon,
    /// A tab.
    Tab,
    /// `|`
    Bar,
}

impl Separator {
    /// All of them.
    pub const ALL: [Self; 4] = [Self::Comma, Self::Semicolon, Self::Tab, Self::Bar];

    /// The byte.
    #[must_use]
    pub const fn byte(self) -> u8 {
        match self {
            Self::Comma => b',',
            Self::Semicolon => b';',
            Self::Tab => b'\t',
            Self::Bar => b'|',
        }
    }
}

/// The unit of a distance.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum DistanceUnit {
    /// Metre.
    #[default]
    Metre,
    /// Kilometre.
    Kilometre,
    /// Foot, 0.3048 m exactly (NIST SP 811, App. B.8).
    Foot,
    /// Yard, 0.9144 m exactly (as above).
    Yard,
    /// Mile, 1 609.344 m exactly (as above).
    Mile,
}

impl DistanceUnit {
    /// All of them.
    pub const ALL: [Self; 5] = [Self::Metre, Self::Kilometre, Self::Foot, Self::Yard, Self::Mile];

    /// Tenths of a millimetre in one.
    pub(super) const fn tenths(self) -> i64 {
        match self {
            Self::Metre => 10_000,
            Self::Kilometre => 10_000_000,
            Self::Foot => 3_048,
            Self::Yard => 9_144,
            Self::Mile => 16_093_440,
        }
    }
}

/// Words of a table that mean something of a set, beside those that are known anyway.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct SetWords {
    /// A warm-up.
    pub warm_up: Vec<String>,
    /// A work set.
    pub work: Vec<String>,
    /// The left side.
    pub left: Vec<String>,
    /// The right side.
    pub right: Vec<String>,
}

/// What a table calls an exercise.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Named {
    /// As the table has it.
    pub name: String,
    /// The exercise, by its slug.
    pub is: String,
    /// What its loads count there; none as the exercise does.
    pub counted: Option<Counting>,
}

/// Which column of a table is what, and how its cells are written.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Columns {
    /// What the table is called: what was taken from it is known again by this.
    pub name: String,
    /// What stands between cells.
    pub separator: Separator,
    /// Whether the first line names the columns.
    pub header: bool,
    /// How numbers are written.
    pub numerals: Numerals,
    /// How dates are written.
    pub dates: Dates,
    /// The unit of a load that has none beside it.
    pub unit: Option<MassUnit>,
    /// The unit of distances.
    pub distance_unit: DistanceUnit,
    /// What loads count; none as each exercise does.
    pub counted: Option<Counting>,
    /// The columns: a date and an exercise at least, and one that says how much.
    pub at: BTreeMap<Field, Column>,
    /// Words of the table.
    pub words: SetWords,
    /// What it calls exercises, where that is none of their names.
    pub exercises: Vec<Named>,
}
