//! Maxes, working loads and body mass on one page.

use barwright_domain::call::HowMany;
use barwright_domain::owners::MaxOrigin;
use barwright_domain::quantity::{Mass, MassUnit, Numerals};

use super::{date, lift, words};

/// Its title.
pub fn title() -> &'static str {
    "Maxima und Gewichte"
}

/// What can be typed.
pub fn subtitle() -> &'static str {
    "Schreib ein Gewicht, oder so viele Prozent mehr oder weniger. Was es bewegt, wird gezeigt, \
     bevor es gilt."
}

/// A key that shows the page.
pub fn open() -> (&'static str, &'static str) {
    ("Maxima und Gewichte", "Maxima, Arbeitsgewichte und Körpergewicht zeigen und ändern")
}

/// A heading.
pub fn maxes() -> &'static str {
    "Maxima"
}

/// A heading.
pub fn tracks() -> &'static str {
    "Arbeitsgewichte"
}

/// A heading.
pub fn body() -> &'static str {
    "Körpergewicht"
}

/// None yet.
pub fn none() -> &'static str {
    "noch keins"
}

/// How a max came to be known.
pub fn known(day: i32, origin: &MaxOrigin) -> String {
    format!("{} {}", lift::known(origin), date::day(day))
}

/// Since when, and why.
pub fn since(day: i32, why: Option<&str>) -> String {
    match why {
        Some(why) => format!("seit {} – {why}", date::day(day)),
        None => format!("seit {}", date::day(day)),
    }
}

/// "Bankdrücken, 8 Wdh.".
pub fn track(exercise: &str, asked: &HowMany, numerals: Numerals) -> String {
    format!("{exercise}, {}", words::how_many(asked, numerals))
}

/// What a field takes.
pub fn field(name: &str, unit: MassUnit) -> (String, String) {
    let load = match unit {
        MassUnit::Kilogram => "97 kg",
        MassUnit::Pound => "215 lb",
    };
    (name.to_owned(), format!("{load} oder -5 %"))
}

/// So many percent.
pub fn by_percent(percent: i32, name: &str) -> (String, String) {
    let way = if percent < 0 { "weniger" } else { "mehr" };
    let sign = if percent < 0 { "\u{2212}" } else { "+" };
    let figure = percent.unsigned_abs();
    (format!("{sign}{figure} %"), format!("{name}: {figure} Prozent {way}; noch gilt nichts"))
}

/// What is entered, beside what stands.
pub fn entered(before: Option<Mass>, after: Mass, unit: MassUnit, numerals: Numerals) -> String {
    let after = words::or_help(after, unit, numerals);
    match before {
        Some(before) => format!("{after}, zuvor {}", words::or_help(before, unit, numerals)),
        None => after,
    }
}

/// A heading of what it moves.
pub fn moves() -> &'static str {
    "Was es bewegt"
}

/// It moves nothing.
pub fn moves_nothing() -> &'static str {
    "Kein Gewicht der kommenden Einheiten ändert sich dadurch."
}

/// More than is listed.
pub fn more_moves(count: usize) -> String {
    format!("und {} in den Wochen danach", words::count(count, "Gewicht", "Gewichte"))
}

/// Taken.
pub fn take(after: Mass, unit: MassUnit, numerals: Numerals) -> (String, String) {
    let after = words::or_help(after, unit, numerals);
    (format!("{after} nehmen"), format!("Ab jetzt gilt: {after}"))
}

/// Let be.
pub fn leave() -> (&'static str, &'static str) {
    ("So lassen", "Lassen, wie es war")
}

/// When the body was weighed.
pub fn weighed(day: i32) -> String {
    format!("gewogen {}", date::day(day))
}

/// Taken back.
pub fn undo() -> (&'static str, &'static str) {
    ("Rückgängig", "Zurücknehmen, was auf dieser Seite zuletzt gesagt wurde")
}

/// Said again.
pub fn redo() -> (&'static str, &'static str) {
    ("Wiederherstellen", "Noch einmal sagen, was zurückgenommen wurde")
}
