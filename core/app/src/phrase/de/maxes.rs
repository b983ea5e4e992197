//! Maxes, working loads and body mass on one page.

use barwright_domain::call::HowMany;
use barwright_domain::owners::MaxOrigin;
use barwright_domain::quantity::{Mass, MassUnit, Numerals};

use super::{date, lift, words};

/// Its title.
pub fn title() -> &'static str {
    "Maxes and loads"
}

/// What can be typed.
pub fn subtitle() -> &'static str {
    "Write a load, or so many percent more or less. What it moves is shown before it counts."
}

/// A key that shows the page.
pub fn open() -> (&'static str, &'static str) {
    ("Maxes and loads", "Show maxes, working loads and body mass, to change them")
}

/// A heading.
pub fn maxes() -> &'static str {
    "Reference maxes"
}

/// A heading.
pub fn tracks() -> &'static str {
    "Working loads"
}

/// A heading.
pub fn body() -> &'static str {
    "Body mass"
}

/// None yet.
pub fn none() -> &'static str {
    "none yet"
}

/// How a max came to be known.
pub fn known(day: i32, origin: &MaxOrigin) -> String {
    format!("{} {}", lift::known(origin), date::day(day))
}

/// Since when, and why.
pub fn since(day: i32, why: Option<&str>) -> String {
    match why {
        Some(why) => format!("since {}. {why}", date::day(day)),
        None => format!("since {}", date::day(day)),
    }
}

/// "Bench press, 8 reps".
pub fn track(exercise: &str, asked: &HowMany, numerals: Numerals) -> String {
    format!("{exercise}, {}", words::how_many(asked, numerals))
}

/// What a field takes.
pub fn field(name: &str, unit: MassUnit) -> (String, String) {
    let load = match unit {
        MassUnit::Kilogram => "97.5 kg",
        MassUnit::Pound => "215 lb",
    };
    (name.to_owned(), format!("{load}, or -5 %"))
}

/// So many percent.
pub fn by_percent(percent: i32, name: &str) -> (String, String) {
    let way = if percent < 0 { "less" } else { "more" };
    let sign = if percent < 0 { "\u{2212}" } else { "+" };
    let figure = percent.unsigned_abs();
    (format!("{sign}{figure} %"), format!("{name}: {figure} percent {way}; nothing counts yet"))
}

/// What is entered, beside what stands.
pub fn entered(before: Option<Mass>, after: Mass, unit: MassUnit, numerals: Numerals) -> String {
    let after = words::or_help(after, unit, numerals);
    match before {
        Some(before) => format!("{after}, was {}", words::or_help(before, unit, numerals)),
        None => after,
    }
}

/// A heading of what it moves.
pub fn moves() -> &'static str {
    "What it moves"
}

/// It moves nothing.
pub fn moves_nothing() -> &'static str {
    "No load of the sessions to come changes by it."
}

/// More than is listed.
pub fn more_moves(count: usize) -> String {
    format!("and {} in the weeks after", words::count(count, "load", "loads"))
}

/// Taken.
pub fn take(after: Mass, unit: MassUnit, numerals: Numerals) -> (String, String) {
    let after = words::or_help(after, unit, numerals);
    (format!("Take {after}"), format!("{after} counts from now on"))
}

/// Let be.
pub fn leave() -> (&'static str, &'static str) {
    ("Leave it", "Leave it as it was")
}

/// When the body was weighed.
pub fn weighed(day: i32) -> String {
    format!("weighed {}", date::day(day))
}

/// Taken back.
pub fn undo() -> (&'static str, &'static str) {
    ("Undo", "Take back what was said last on this page")
}

/// Said again.
pub fn redo() -> (&'static str, &'static str) {
    ("Redo", "Say again what was taken back")
}
