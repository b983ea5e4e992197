//! Words of the plan's weeks.

use barwright_domain::call::WeekKind;
use barwright_domain::desk::{At, Dated, Kept, Standing};

use super::{date, words};
use crate::contract::LayAnew;

/// A key.
pub fn enter() -> &'static str {
    "Continue the plan from here"
}
/// A key.
pub fn leave_out() -> &'static str {
    "Skip it"
}
/// A key.
pub fn bring_back() -> &'static str {
    "Bring it back"
}
/// A key.
pub fn do_today() -> &'static str {
    "Move to today"
}
/// A key.
pub fn own_day() -> &'static str {
    "Back to its own day"
}
/// A key.
pub fn apart() -> &'static str {
    "Separate again"
}
/// A key.
pub fn again() -> &'static str {
    "Repeat it"
}
/// A key.
pub fn make_up() -> &'static str {
    "Make it up"
}
/// A key.
pub fn not_again() -> &'static str {
    "Cancel the repeat"
}
/// A key.
pub fn no_travel() -> &'static str {
    "No week away"
}

/// "Move to Thu 12 Nov".
pub fn to_day(day: i32) -> String {
    format!("Move to {}", date::day(day))
}

/// "Do it with Push (2.2)".
pub fn join(name: &str, row: &str) -> String {
    format!("Do it with {name} ({row})")
}

/// A key.
pub fn travel(away: u16) -> &'static str {
    if away == 0 { "Add a week away before it" } else { "Add another week away" }
}

/// "Week 3: deload, after 1 week away".
pub fn title(week: u16, kind: WeekKind, away: u16) -> String {
    let away = match away {
        0 => String::new(),
        away => format!(", after {} away", words::count(usize::from(away), "week", "weeks")),
    };
    match kind {
        WeekKind::Ordinary => format!("Week {week}{away}"),
        kind => format!("Week {week}: {}{away}", words::week_kind(kind)),
    }
}

/// How a session stands: "next, Wed 12 Nov, 2 days late".
pub fn state(dated: &Dated, today: i32, name: impl Fn(At) -> String) -> String {
    let on = |day: i32| date::dated(day, Some(today));
    let due = dated.due.map(|due| {
        let moved = if dated.moved { "moved to " } else { "" };
        format!("{moved}{}", on(due))
    });
    let with = |word: &str| match &due {
        Some(due) => format!("{word}, {due}"),
        None => word.to_owned(),
    };
    match dated.standing {
        Standing::Done(day) => on(day),
        Standing::DoneWith(at, day) => format!("{}, with {}", on(day), name(at)),
        Standing::With(at) => format!("with {}", name(at)),
        Standing::Next => format!("{}{}", with("next"), late(dated, today)),
        Standing::Again => "repeat".to_owned(),
        Standing::Missed => with("missed"),
        Standing::LeftOut => "skipped".to_owned(),
        Standing::Before => "before you began".to_owned(),
        Standing::ToCome => due.unwrap_or_default(),
    }
}

fn late(dated: &Dated, today: i32) -> String {
    let days = dated.due.map_or(0, |due| today.saturating_sub(due));
    match usize::try_from(days) {
        Ok(0) if dated.due.is_some() => ", today".to_owned(),
        Ok(0) | Err(_) => String::new(),
        Ok(days) => format!(", {} late", words::count(days, "day", "days")),
    }
}

/// "week 3 of 12, next Legs, Wed 12 Nov, 2 days late".
pub fn where_we_are(next: Option<(&Dated, &str)>, weeks: usize, today: i32) -> String {
    let Some((dated, name)) = next else {
        return "every session is done".to_owned();
    };
    let due =
        dated.due.map(|due| format!(", {}", date::dated(due, Some(today)))).unwrap_or_default();
    format!("week {} of {weeks}, next {name}{due}{}", dated.at.week, late(dated, today))
}

/// A key: its label, and as it is read aloud.
pub fn back_to(kept: &Kept, today: Option<i32>) -> (String, String) {
    let says = format!(
        "Go back to {}, adopted {}, where it stood; the plan that is on is kept",
        kept.name,
        date::dated(kept.day, today)
    );
    (format!("Back to {}", kept.name), says)
}

/// The whole screen read aloud.
pub fn aloud(plan: &str, subtitle: &str, rows: &str) -> String {
    format!("{plan}, {subtitle}. {rows}")
}

/// A key.
pub fn lay_out() -> &'static str {
    "Show its sheet"
}

/// A key that shows the rest laid anew.
pub fn anew(how: LayAnew) -> (&'static str, &'static str) {
    match how {
        LayAnew::PushBack => {
            ("Push it back", "See it pushed back: all of it whole weeks later, nothing left out")
        }
        LayAnew::Drop => {
            ("Drop what was missed", "See what lies behind left out, the rest where it is")
        }
        LayAnew::Squeeze => (
            "Squeeze it in",
            "See what lies behind on free days, no lift heavy on neighbouring days",
        ),
        LayAnew::SqueezeClose => (
            "Squeeze all of it in",
            "See what lies behind on free days, whatever is heavy on neighbouring days",
        ),
    }
}

/// What laying the rest anew comes to.
pub fn laid(how: LayAnew, moved: usize, left_out: usize, close: &[String]) -> String {
    let moved = match how {
        LayAnew::PushBack => {
            format!("{} later", words::count(moved, "session comes", "sessions come"))
        }
        LayAnew::Drop => String::new(),
        LayAnew::Squeeze | LayAnew::SqueezeClose => match moved {
            0 => String::new(),
            moved => {
                format!("{} on free days", words::count(moved, "session comes", "sessions come"))
            }
        },
    };
    let gone = match left_out {
        0 => "nothing is left out".to_owned(),
        count => format!("{} left out", words::count(count, "session is", "sessions are")),
    };
    let both: Vec<String> = [moved, gone].into_iter().filter(|part| !part.is_empty()).collect();
    let mut lines =
        vec![format!("{}. Nothing is changed yet.", words::sentence_case(&both.join(", ")))];
    lines.extend(close.iter().cloned());
    lines.join(" ")
}

/// A session whose date changes.
pub fn was(day: i32) -> String {
    format!("was {}", date::day(day))
}

/// Two sessions with a lift heavy on neighbouring days.
pub fn close(before: &str, after: &str, lift: &str) -> String {
    format!("{lift} is heavy on neighbouring days: {before}, then {after}.")
}

/// A key.
pub fn lay_so() -> (&'static str, &'static str) {
    ("Lay it so", "The rest of the plan is laid as it is shown")
}

/// A key.
pub fn take_back() -> (&'static str, &'static str) {
    ("Dates as they were", "Take back that the rest was laid anew")
}

/// So many sessions lie behind.
pub fn behind(count: usize) -> String {
    format!(
        "{} behind: the weeks can be laid anew.",
        words::count(count, "session lies", "sessions lie")
    )
}
