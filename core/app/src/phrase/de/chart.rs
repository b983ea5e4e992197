//! Words of charts.

use barwright_domain::call::Amount;
use barwright_domain::progress::estimate::Estimate;
use barwright_domain::quantity::{Mass, MassUnit, Numerals};

use super::{date, words};

/// The label of the axis of dates.
pub fn dates() -> &'static str {
    "Datum"
}

/// A series.
pub fn band() -> &'static str {
    "Schätzung, ihr Bereich"
}

/// A series.
pub fn estimates() -> &'static str {
    "Schätzung"
}

/// A series: the heaviest work load, or all that was moved with it.
pub fn heaviest(with_the_body: bool) -> &'static str {
    if with_the_body { "Schwerstes, mit Körpergewicht" } else { "Schwerstes Arbeitsgewicht" }
}

/// A series.
pub fn most() -> &'static str {
    "Meiste in einem Satz"
}

/// A point: "Mo., 12. Okt.: 120 kg".
pub fn load(
    day: i32,
    today: Option<i32>,
    load: Mass,
    unit: MassUnit,
    numerals: Numerals,
) -> String {
    format!("{}: {}", date::dated(day, today), load.print(unit, numerals))
}

/// A series: tries that failed.
pub fn failed() -> &'static str {
    "Fehlversuch"
}

/// A point: "Mo., 12. Okt.: 140 kg nicht geschafft".
pub fn failed_at(
    day: i32,
    today: Option<i32>,
    load: Mass,
    unit: MassUnit,
    numerals: Numerals,
) -> String {
    format!("{}: {} nicht geschafft", date::dated(day, today), load.print(unit, numerals))
}

/// A point of a band: "Mo., 12. Okt.: 122 kg bis 140 kg".
pub fn range(
    day: i32,
    today: Option<i32>,
    estimate: &Estimate,
    unit: MassUnit,
    numerals: Numerals,
) -> String {
    let whole = |mass| words::whole(mass, unit, numerals);
    let (low, high) = (whole(estimate.low), whole(estimate.high));
    format!("{}: {low} bis {high}", date::dated(day, today))
}

/// A point: "Mo., 12. Okt.: Schätzung 131 kg".
pub fn estimate(
    day: i32,
    today: Option<i32>,
    estimate: &Estimate,
    unit: MassUnit,
    numerals: Numerals,
) -> String {
    format!("{}: Schätzung {}", date::dated(day, today), words::whole(estimate.max, unit, numerals))
}

/// A point: "Mo., 12. Okt.: 12 Wdh."; the value is in the unit of the amount.
pub fn amount(day: i32, today: Option<i32>, value: i64, of: &Amount) -> String {
    format!("{}: {value} {}", date::dated(day, today), words::unit(of))
}

/// The chart in a sentence: how many sessions, and its first and last points.
pub fn from_to(name: &str, sessions: usize, first: &str, last: &str) -> String {
    let (first, last) = (first.replace(": ", ", "), last.replace(": ", ", "));
    words::end(format!("{name}, {sessions} Einheiten: von {first} bis {last}"))
}
