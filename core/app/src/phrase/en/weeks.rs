//! Words of the plan's weeks.

use barwright_domain::call::WeekKind;
use barwright_domain::desk::{At, Dated, Kept, Standing};

use super::{date, words};

/// A key.
pub fn enter() -> &'static str {
    "Go on from here"
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
