//! Words of the end of a session.

use barwright_domain::quantity::{MassUnit, Numerals};
use barwright_domain::session::{EntryRun, PartRun, SetRun, SwapCause};

use super::{bar, lift, pace, panel, words};

/// "14 work sets, 52 min, over".
pub fn subtitle(sets: usize, minutes: i64, over: bool) -> String {
    let state = if over { "over" } else { "so far" };
    format!("{}, {minutes} min, {state}", words::count(sets, "work set", "work sets"))
}

/// Of an exercise that was not begun.
pub fn not_begun(optional: bool) -> &'static str {
    if optional { "optional, skipped" } else { "not done" }
}

/// Of an exercise that was swapped for another or stopped, and why: "swapped for Leg press: pain",
/// "stopped: pain", "swapped for Dip".
pub fn left_for(cause: Option<SwapCause>, to: Option<&str>) -> String {
    let what = to.map_or_else(|| "stopped".to_owned(), |to| format!("swapped for {to}"));
    match cause {
        Some(SwapCause::Pain) => format!("{what}: pain"),
        Some(SwapCause::Taken) => format!("{what}: it was taken"),
        Some(SwapCause::Lacking) => format!("{what}: not in this gym"),
        Some(SwapCause::Wish) | None => what,
    }
}

/// Of an exercise with sets left.
pub fn sets_not_begun(sets: usize) -> String {
    format!("{} not done", words::count(sets, "set", "sets"))
}

/// A set that was done: "Set 1 of 3, left: 14 kg × 12", and the quieter line below it.
pub fn set(entry: &EntryRun, set: &SetRun, unit: MassUnit, numerals: Numerals) -> (String, String) {
    let side = set.call.side.map(|side| format!(", {}", words::side(side))).unwrap_or_default();
    let text = format!("{}{side}: {}", panel::which_set(entry, set), work(set, unit, numerals));
    let last = set.parts.last().map(|part| &part.done);
    let left = match last.and_then(|done| done.left) {
        Some(left) => {
            let scale = set.call.effort.map(|effort| effort.scale).unwrap_or_default();
            words::reserve(left, scale, numerals)
        }
        None if set.call.effort.is_some() => lift::no_effort_called().to_owned(),
        None => String::new(),
    };
    let helped: u16 = set.parts.iter().map(|part| part.done.helped).sum();
    let notes = [
        Some(left).filter(|left| !left.is_empty()),
        (helped > 0).then(|| format!("{helped} with help")),
        last.and_then(|done| words::ending(done.ending)).map(str::to_owned),
        set.left.then(|| "set left unfinished".to_owned()),
        set.parts.last().and_then(PartRun::slowing).map(pace::slowed_short),
        set.parts.iter().any(|part| part.corrected).then(|| "corrected".to_owned()),
    ];
    let notes: Vec<String> = notes.into_iter().flatten().collect();
    (text, notes.join(" · "))
}

/// Parts at one load share it; a drop names each.
fn work(set: &SetRun, unit: MassUnit, numerals: Numerals) -> String {
    let loads: Vec<String> =
        set.parts.iter().map(|part| bar::in_line(&part.done.load, unit, numerals)).collect();
    let one_load = loads.windows(2).all(|pair| matches!(pair, [a, b] if a == b));
    let amounts: Vec<String> =
        set.parts.iter().map(|part| words::figure(&part.done.amount, numerals)).collect();
    if !one_load {
        let pairs: Vec<String> =
            set.parts.iter().map(|part| panel::done_short(part, unit, numerals)).collect();
        return pairs.join(", ");
    }
    let load = loads.first().cloned().unwrap_or_default();
    let kind = set.parts.first().map(|part| words::unit(&part.done.amount)).unwrap_or_default();
    let figures = amounts.join(" + ");
    if kind == "reps" || kind == "rep" {
        format!("{load} × {figures}")
    } else {
        format!("{load}, {figures} {kind}")
    }
}

/// What an exercise will be next time: "Back squat: 4 × 5 · 112.5 kg".
pub fn next_time(name: &str, line: &str) -> String {
    format!("{name}: {line}")
}

/// A key: a change for next time is held back, or let go.
pub fn hold_back(held: bool) -> &'static str {
    if held { "Change it after all" } else { "Keep it as it was" }
}

/// A key.
pub fn finish() -> &'static str {
    "Finish the session"
}

/// A key.
pub fn what_is_next() -> &'static str {
    "Next session"
}
