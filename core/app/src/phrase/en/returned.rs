//! Words of what many lifters send back.

use barwright_domain::call::EffortTarget;
use barwright_domain::history::DoneSet;
use barwright_domain::quantity::{MassUnit, Numerals, Reserve};

use super::words;

/// Over the columns of a line a lifter.
pub fn columns() -> Vec<&'static str> {
    vec![
        "lifter",
        "week",
        "sessions",
        "hard sets",
        "loads off",
        "effort off",
        "misses",
        "pain",
        "days off",
        "next",
    ]
}

/// "2 of 3".
pub fn out_of(done: u32, planned: u32) -> String {
    format!("{done} of {planned}")
}

/// What comes next: "Legs: next, Wed 12 Nov, 2 days late".
pub fn next(session: &str, state: &str) -> String {
    if state.is_empty() { session.to_owned() } else { format!("{session}: {state}") }
}

/// An exercise hurt.
pub fn hurt(name: &str) -> String {
    format!("{name} hurt.")
}

/// A set came to less than asked: "Back squat: 100 kg, 4 reps of 5.".
pub fn missed(name: &str, set: &DoneSet, unit: MassUnit, numerals: Numerals) -> String {
    let load = set.figure.map(|figure| words::load(figure, set.counting, unit, numerals));
    let load = load.map(|load| format!("{load}, ")).unwrap_or_default();
    let asked = words::how_many_short(&set.asked, numerals);
    format!("{name}: {load}{} of {asked}.", words::amount(&set.amount(), numerals))
}

/// An effort was called outside what was asked: "Back squat: RPE 9 called, RPE 7–8 asked.".
pub fn effort_off(name: &str, left: Reserve, target: &EffortTarget, numerals: Numerals) -> String {
    let called = words::reserve(left, target.scale, numerals);
    format!("{name}: {called} called, {} asked.", words::effort(target, numerals))
}

/// What an exercise came to: "Back squat: less load than called.".
pub fn about(name: &str, what: &str) -> String {
    if name.is_empty() { what.to_owned() } else { format!("{name}: {what}") }
}

/// No lifter has that name; how many there are.
pub fn lacks(name: &str, in_short: &str) -> String {
    format!("No return of “{name}” is here: {in_short}.")
}

/// What the keys do.
pub fn keys() -> &'static str {
    "↑ ↓ choose  Enter open  q quit"
}

/// How many lifters there are, and of how many files none can be read.
pub fn in_short(lifters: usize, unread: usize) -> String {
    let lifters = words::count(lifters, "lifter", "lifters");
    match unread {
        0 => lifters,
        _ => format!("{lifters}, {} not read", words::count(unread, "file", "files")),
    }
}
