//! Words of today's sheet.

use barwright_domain::call::WeekKind;
use barwright_domain::quantity::Seconds;

use super::{floor, words};

/// The title without a plan.
pub fn nothing_on() -> &'static str {
    "No plan"
}

/// What to do without a plan.
pub fn no_plan() -> &'static str {
    "Open a plan file and adopt it."
}

/// The plan, the week from 1, and the gym: "Winter base · week 3 of 8 (deload) · Cellar".
pub fn subtitle(plan: &str, week: usize, weeks: usize, kind: WeekKind, gym: &str) -> String {
    let kind = match kind {
        WeekKind::Ordinary => String::new(),
        WeekKind::EaseIn | WeekKind::Deload | WeekKind::Test => {
            format!(" ({})", words::week_kind(kind))
        }
    };
    format!("{plan} · week {week} of {weeks}{kind} · {gym}")
}

/// "General warm-up · 8:00".
pub fn warm_up(takes: Seconds) -> String {
    format!("General warm-up · {}", takes.print())
}

/// Over a superset.
pub fn back_to_back(rest: Seconds) -> String {
    format!("Back to back · rest {} after the round", rest.print())
}

/// An exercise as a heading.
pub fn exercise(name: &str, optional: bool) -> String {
    let optional = if optional { " (optional)" } else { "" };
    format!("{name}{optional}")
}

/// What this gym lacks for an exercise, and what can be done instead.
pub fn lacks(lacks: &[String], instead: &[String]) -> String {
    let lacks = floor::lacks_here(lacks);
    match instead {
        [] => lacks,
        some => format!("{lacks}; instead: {}", some.join(" or ")),
    }
}

/// A key.
pub fn begin() -> (&'static str, &'static str) {
    ("Begin", "Begin this session")
}

/// A key.
pub fn back_to_floor() -> &'static str {
    "Back to the session"
}

/// A key: what to leave out for so many minutes.
pub fn minutes(minutes: u32) -> (String, String) {
    (format!("{minutes} min"), format!("What to skip for {minutes} minutes"))
}

/// A key.
pub fn all_of_it() -> &'static str {
    "Whole session"
}

/// A key.
pub fn another_session() -> &'static str {
    "Another session"
}

/// A key.
pub fn weeks() -> &'static str {
    "The plan's weeks"
}

/// A key.
pub fn gym(name: &str) -> (String, String) {
    ("What this gym has".to_owned(), format!("What {name} has"))
}

/// A key: train there.
pub fn in_gym(name: &str) -> (String, String) {
    (format!("In {name}"), format!("Train in {name} from now on"))
}

/// A session was never ended: when the next begins, it is over as it stands.
pub fn left_open() -> &'static str {
    "The last session was never finished. Begin this one, and it ends with its last set."
}

/// A max is not tested while pain stands.
pub fn pain_first(name: &str) -> String {
    format!("{name} hurt last time: no test before a session without pain.")
}
