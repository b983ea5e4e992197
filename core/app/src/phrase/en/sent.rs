//! Changes that a coach sent.

use barwright_domain::desk::At;
use barwright_domain::quantity::{Mass, MassUnit, Numerals};

use super::{date, words};

/// Its title.
pub fn title() -> &'static str {
    "Changes from your coach"
}

/// For whom, and when they were decided.
pub fn decided(lifter: &str, day: i32) -> String {
    format!("For {lifter}, decided {}. Nothing counts before it is taken.", date::day(day))
}

/// The file has faults.
pub fn unreadable() -> &'static str {
    "This file can't be read. Nothing of it was taken."
}

/// A max.
pub fn max(name: &str) -> String {
    format!("{name}: reference max")
}

/// A working load.
pub fn load(name: &str) -> String {
    format!("{name}: working load")
}

/// "150 kg → 142.5 kg"; "stays 80 kg".
pub fn from_to(was: Option<Mass>, to: Mass, unit: MassUnit, numerals: Numerals) -> String {
    let said = |mass| words::or_help(mass, unit, numerals);
    match was {
        Some(was) if was == to => format!("stays {}", said(to)),
        Some(was) => format!("{} → {}", said(was), said(to)),
        None => format!("none → {}", said(to)),
    }
}

/// An exercise is exchanged.
pub fn swap(of: &str, with: &str) -> String {
    format!("{with} in the place of {of}, from now on")
}

/// The plan mended.
pub fn plan() -> &'static str {
    "The plan, mended: weeks, dates and loads stay"
}

/// A week once more.
pub fn week(week: u16) -> String {
    format!("Week {week} once more: the plan goes on from it")
}

/// It was taken.
pub fn taken() -> &'static str {
    "taken"
}

/// There is nothing that it could change.
pub fn nothing() -> &'static str {
    "There is nothing here that it could change."
}

/// The load is another one since.
pub fn mass_apart(now: Option<Mass>, unit: MassUnit, numerals: Numerals) -> String {
    match now {
        Some(now) => {
            let now = words::or_help(now, unit, numerals);
            format!("You went on since: it is {now} now. It is taken only if you say so.")
        }
        None => "You went on since: none stands now. It is taken only if you say so.".to_owned(),
    }
}

/// The plan is another one since.
pub fn plan_apart() -> &'static str {
    "The plan was changed since. It is taken only if you say so."
}

/// Another session is next since.
pub fn next_apart(next: Option<At>) -> String {
    let was = match next {
        Some(At { week, session }) => format!("session {session} of week {week} came next"),
        None => "the plan was through".to_owned(),
    };
    format!("When it was decided {was}. It is taken only if you say so.")
}

/// Takes those that fit.
pub fn take_up(count: usize) -> (String, String) {
    let changes = words::count(count, "change", "changes");
    (format!("Take {changes}"), format!("{changes} count from now on"))
}

/// Takes one that does not.
pub fn take_all_the_same() -> (&'static str, &'static str) {
    ("Take it all the same", "It counts from now on, whatever you did since")
}

/// The file is for another lifter.
pub fn of_other(lifter: &str) -> String {
    let lifter: String = lifter.chars().take(60).collect();
    format!("This file is for the records of “{lifter}”, and these are others. Nothing was taken.")
}

/// Nothing of it can be taken so.
pub fn nothing_to_take() -> &'static str {
    "Nothing of it can be taken so: what fits was taken, or you went on since. Nothing was changed."
}

/// A coach's words that are no change.
pub fn unknown_change(said: &str) -> String {
    let said: String = said.chars().take(60).collect();
    format!(
        "“{said}” is no change. Write one of: max LIFT -5 %, load LIFT 80 kg, hold LIFT, \
         swap LIFT with LIFT, week 3."
    )
}

/// No load of an exercise.
pub fn no_load(name: &str) -> String {
    let name: String = name.chars().take(60).collect();
    format!("“{name}” has no working load of its own: its max or the plan says what it is.")
}

/// Several loads of an exercise.
pub fn several_loads(name: &str, loads: &[String]) -> String {
    let name: String = name.chars().take(60).collect();
    format!("“{name}” has several working loads. Name one: {}.", loads.join(", "))
}

/// A plan of another name.
pub fn other_plan(name: &str) -> String {
    format!("That is another plan: the one that is on is called “{name}”.")
}
