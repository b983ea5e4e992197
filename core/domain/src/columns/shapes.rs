//! The keys of a file of columns.

use super::bounds;
use crate::plan::COUNTINGS;
use crate::text::Holds::{self, Any, Flag, List, Table, Text, Whole, Word};
use crate::text::{Key, Shape};

pub(super) const SEPARATORS: &[&str] = &[",", ";", "tab", "|"];
pub(super) const DECIMALS: &[&str] = &["point", "comma"];
pub(super) const DATES: &[&str] = &["iso", "day first", "month first"];
pub(super) const UNITS: &[&str] = &["kg", "lb"];
pub(super) const DISTANCES: &[&str] = &["m", "km", "ft", "yd", "mi"];

const NAME: Holds = Text(bounds::NAME);
const COLUMN: Holds = Any(&[Whole(1, bounds::CELLS as i64), NAME]);
const WORDS_OF: Holds = List(&NAME, bounds::WORDS);

/// The whole file.
pub static COLUMNS: Shape = Shape {
    name: "columns",
    keys: &[
        Key::must("name", NAME),
        Key::may("separator", Word(SEPARATORS)),
        Key::may("header", Flag),
        Key::may("decimals", Word(DECIMALS)),
        Key::must("dates", Text(bounds::CELL)),
        Key::may("unit", Word(UNITS)),
        Key::may("distance_unit", Word(DISTANCES)),
        Key::may("counted", Word(COUNTINGS)),
        Key::must("columns", Table(&AT)),
        Key::may("words", Table(&WORDS)),
        Key::may("exercise", List(&Table(&EXERCISE), bounds::EXERCISES)),
    ],
};

pub(super) static AT: Shape = Shape {
    name: "column",
    keys: &[
        Key::must("date", COLUMN),
        Key::may("time", COLUMN),
        Key::may("title", COLUMN),
        Key::must("exercise", COLUMN),
        Key::may("kind", COLUMN),
        Key::may("set", COLUMN),
        Key::may("side", COLUMN),
        Key::may("sets", COLUMN),
        Key::may("reps", COLUMN),
        Key::may("seconds", COLUMN),
        Key::may("distance", COLUMN),
        Key::may("load", COLUMN),
        Key::may("unit", COLUMN),
        Key::may("rpe", COLUMN),
        Key::may("left", COLUMN),
    ],
};

pub(super) static WORDS: Shape = Shape {
    name: "words",
    keys: &[
        Key::may("warm_up", WORDS_OF),
        Key::may("work", WORDS_OF),
        Key::may("left", WORDS_OF),
        Key::may("right", WORDS_OF),
    ],
};

pub(super) static EXERCISE: Shape = Shape {
    name: "exercise",
    keys: &[Key::must("name", NAME), Key::must("is", NAME), Key::may("counted", Word(COUNTINGS))],
};
