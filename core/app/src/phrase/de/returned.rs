//! Words of what many lifters send back.

use barwright_domain::call::EffortTarget;
use barwright_domain::history::DoneSet;
use barwright_domain::quantity::{MassUnit, Numerals, Reserve};

use super::words;

/// Over the columns of a line a lifter.
pub fn columns() -> Vec<&'static str> {
    vec![
        "wer",
        "Woche",
        "Einheiten",
        "harte Sätze",
        "Gewicht ab",
        "Anstr. ab",
        "verfehlt",
        "Schmerz",
        "Tage Pause",
        "als Nächstes",
    ]
}

/// "2 von 3".
pub fn out_of(done: u32, planned: u32) -> String {
    format!("{done} von {planned}")
}

/// What comes next: "Beine: als Nächstes, Mi., 12. Nov., 2 Tage zu spät".
pub fn next(session: &str, state: &str) -> String {
    if state.is_empty() { session.to_owned() } else { format!("{session}: {state}") }
}

/// An exercise hurt.
pub fn hurt(name: &str) -> String {
    format!("{name}: tat weh.")
}

/// A set came to less than asked: "Kniebeuge: 100 kg, 4 Wdh. von 5.".
pub fn missed(name: &str, set: &DoneSet, unit: MassUnit, numerals: Numerals) -> String {
    let load = set.figure.map(|figure| words::load(figure, set.counting, unit, numerals));
    let load = load.map(|load| format!("{load}, ")).unwrap_or_default();
    let asked = words::how_many_short(&set.asked, numerals);
    format!("{name}: {load}{} von {asked}.", words::amount(&set.amount(), numerals))
}

/// An effort was called outside what was asked: "Kniebeuge: RPE 9 angegeben, RPE 7–8 verlangt.".
pub fn effort_off(name: &str, left: Reserve, target: &EffortTarget, numerals: Numerals) -> String {
    let called = words::reserve(left, target.scale, numerals);
    format!("{name}: {called} angegeben, {} verlangt.", words::effort(target, numerals))
}

/// What an exercise came to: "Kniebeuge: weniger Gewicht als vorgegeben.".
pub fn about(name: &str, what: &str) -> String {
    if name.is_empty() { what.to_owned() } else { format!("{name}: {what}") }
}

/// No lifter has that name; how many there are.
pub fn lacks(name: &str, in_short: &str) -> String {
    format!("Von „{name}“ ist keine Rückgabe hier: {in_short}.")
}

/// What the keys do.
pub fn keys() -> &'static str {
    "↑ ↓ wählen  Enter öffnen  q beenden"
}

/// How many lifters there are, and of how many files none can be read.
pub fn in_short(lifters: usize, unread: usize) -> String {
    let lifters = words::count(lifters, "Person", "Personen");
    match unread {
        0 => lifters,
        _ => format!("{lifters}, {} nicht lesbar", words::count(unread, "Datei", "Dateien")),
    }
}
