//! What is wrong in a file and where, as data.

use std::ops::Range;

use crate::quantity::Unreadable;

/// One thing that is wrong, and its place.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Fault {
    /// Line, from 1.
    pub line: usize,
    /// Column in characters, from 1.
    pub column: usize,
    /// Bytes of the file to underline; always within it, on character boundaries and on one line.
    pub span: Range<usize>,
    /// What is wrong.
    pub problem: Problem,
}

/// What is wrong at a place of a file.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Problem {
    /// The file is larger than [`super::bounds::FILE_BYTES`].
    TooManyBytes {
        /// The most that is read.
        most: usize,
    },
    /// Lists and tables lie too deep in each other.
    TooDeep {
        /// The greatest depth.
        most: usize,
    },
    /// More keys and items than are read of one file.
    TooManyItems {
        /// The most that are read.
        most: usize,
    },
    /// Not UTF-8 text.
    NotText,
    /// More faults than are reported at once.
    MoreFaults {
        /// How many are shown.
        shown: usize,
    },
    /// Not TOML.
    Syntax(Syntax),
    /// A key that is not read here.
    UnknownKey {
        /// The key as written, cut to 80 characters.
        key: String,
        /// The known key it most resembles, if any does.
        nearest: Option<&'static str>,
        /// Every key that is read here.
        known: Vec<&'static str>,
    },
    /// A key that must be here and is not.
    MissingKey {
        /// The key.
        key: &'static str,
    },
    /// One of these keys must be here and none is.
    MissingOneOf {
        /// The keys.
        keys: &'static [&'static str],
    },
    /// Keys that can't stand together.
    Clash {
        /// The key at the place.
        key: &'static str,
        /// The key it can't stand with.
        with: &'static str,
    },
    /// A key that says nothing without another.
    Needs {
        /// The key at the place.
        key: &'static str,
        /// The key it needs.
        needs: &'static str,
    },
    /// A value of the wrong type.
    WrongType {
        /// What is read here.
        expected: Expected,
        /// What stands here.
        found: Found,
    },
    /// A whole number outside its bounds.
    OutOfRange {
        /// The least.
        least: i64,
        /// The greatest.
        greatest: i64,
    },
    /// A quantity that can't be read.
    Quantity(Unreadable),
    /// A text that is none of the forms read here.
    Unread {
        /// What is read here.
        expected: Expected,
    },
    /// A word that is none of those read here.
    UnknownWord {
        /// The word as written, cut to 80 characters.
        word: String,
        /// The known word it most resembles, if any does.
        nearest: Option<String>,
        /// Every word that is read here; empty where there are too many to list.
        known: Vec<&'static str>,
    },
    /// A name that nothing in the file or the catalogue has.
    UnknownName {
        /// The name as written, cut to 80 characters.
        name: String,
        /// The known name it most resembles, if any does.
        nearest: Option<String>,
        /// What kind of thing was looked for.
        what: &'static str,
    },
    /// A text or list with nothing in it.
    Empty,
    /// A character in a text that is not seen.
    Hidden {
        /// The character.
        character: char,
    },
    /// A text of too many characters.
    TooLong {
        /// The most characters.
        most: usize,
    },
    /// A list of too many items.
    TooMany {
        /// The most items.
        most: usize,
    },
    /// A list whose length must match another number.
    WrongCount {
        /// How many there should be.
        expected: usize,
        /// How many there are.
        found: usize,
    },
    /// Plates of so many different masses that what they add up to can't be searched.
    TooManySums,
    /// A max tested with an exercise of one joint.
    OneJoint,
    /// A rule that adds load to a row whose load is owned otherwise.
    TwoOwners {
        /// By what.
        row: RowKind,
    },
    /// A name that was given before.
    Repeated {
        /// The line where it was given first.
        first_line: usize,
    },
}

/// What owns the load of a row, so that no rule may add to it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum RowKind {
    /// A max: the row is in percent.
    Percent,
    /// The plan: a load is written for each week.
    ByWeek,
}

/// What is not TOML.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Syntax {
    /// The file ends in the middle of something.
    EndsEarly,
    /// A character that can't stand here.
    Unexpected(char),
    /// A character that can't stand in a text in quotes.
    CharInText(char),
    /// An escape that is none.
    Escape,
    /// A text whose closing quote is missing.
    OpenText,
    /// A text without quotes.
    NoQuotes,
    /// A number that is none, or a date.
    Number,
    /// Something else was expected here: a value, a key, an equals sign, the end of the line.
    Wanted(Piece),
    /// A key or a table that was given before.
    Twice {
        /// Its name, cut to 80 characters.
        name: String,
        /// The line where it was given first.
        first_line: usize,
    },
    /// A table, and a list of tables of the same name.
    TableAndList,
    /// A dotted key through something that is no table.
    NotATable,
    /// Lists and tables lie too deep in each other.
    TooDeep,
}

/// A piece of TOML.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Piece {
    /// A value: a text in quotes, a number, true or false, a list, a table.
    Value,
    /// A key.
    Key,
    /// `=`
    Equals,
    /// The end of the line.
    LineEnd,
    /// `,` or the closing bracket.
    CommaOrBracket,
    /// Anything else.
    Other,
}

/// What a reader takes at a place.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Expected {
    /// A text in quotes.
    Text,
    /// A whole number.
    Whole,
    /// True or false.
    Flag,
    /// A list.
    List,
    /// A table.
    Table,
    /// A mass in quotes.
    Mass,
    /// A percentage in quotes.
    Percent,
    /// Repetitions: a whole number, or a range in quotes.
    Reps,
    /// Repetitions left: a number, or a range in quotes.
    Reserve,
    /// An RPE: a number, or a range in quotes.
    Rpe,
    /// A tempo in quotes.
    Tempo,
    /// A duration in quotes.
    Seconds,
    /// A distance in quotes.
    Distance,
    /// A length in millimetres, in quotes.
    Length,
    /// A text, or a list of texts.
    TextOrList,
    /// A text, or a table.
    TextOrTable,
    /// A whole number, or a text in quotes.
    WholeOrText,
    /// A whole number, or a list.
    WholeOrList,
    /// A load of a set.
    Load,
    /// Repetitions, a range of them, or an open number.
    RepsOrOpen,
    /// Weeks of a plan.
    Weeks,
    /// The load of a ramp's step.
    RampLoad,
    /// What follows a miss.
    Miss,
    /// The max that a percentage is of.
    Max,
    /// A word for all of it, or the numbers of sets.
    Sets,
    /// How a table writes dates: a word, or a pattern.
    Dates,
}

/// What stands at a place.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Found {
    /// A text in quotes.
    Text,
    /// A whole number.
    Whole,
    /// A number with decimals.
    Decimal,
    /// True or false.
    Flag,
    /// A list.
    List,
    /// A table.
    Table,
}
