//! Words of the plan's weeks.

use barwright_domain::call::WeekKind;
use barwright_domain::desk::{At, Dated, Kept, Standing};

use super::{date, words};

/// A key.
pub const ENTER: &str = "Go on from here";
/// A key.
pub const LEAVE_OUT: &str = "Leave it out";
/// A key.
pub const BRING_BACK: &str = "Bring it back";
/// A key.
pub const DO_TODAY: &str = "To today";
/// A key.
pub const OWN_DAY: &str = "Back to its own day";
/// A key.
pub const APART: &str = "On its own again";
/// A key.
pub const AGAIN: &str = "Do it once more";
/// A key.
pub const MAKE_UP: &str = "Make it up";
/// A key.
pub const NOT_AGAIN: &str = "Not once more";
/// A key.
pub const NO_TRAVEL: &str = "No week away";

/// "To Thu 12 Nov".
pub fn to_day(day: i32) -> String {
    format!("To {}", date::day(day))
}

/// "Do it with Push (2.2)".
pub fn join(name: &str, row: String) -> String {
    format!("Do it with {name} ({row})")
}

/// A key.
pub fn travel(away: u16) -> &'static str {
    if away == 0 { "A week away first" } else { "One more week away" }
}

/// "Week 3: deload, after 1 week away".
pub fn title(week: usize, kind: WeekKind, away: u16) -> String {
    let away = match away {
        0 => String::new(),
        away => format!(", after {} away", words::count(usize::from(away), "week", "weeks")),
    };
    format!("Week {}: {}{away}", week + 1, words::week_kind(kind))
}

/// How a session stands: "next, Wed 12 Nov, 2 days late".
pub fn state(dated: &Dated, today: i32, name: impl Fn(At) -> String) -> String {
    let due = dated.due.map(|due| {
        let moved = if dated.moved { "moved to " } else { "" };
        format!("{moved}{}", date::day(due))
    });
    let with = |word: &str| match &due {
        Some(due) => format!("{word}, {due}"),
        None => word.to_owned(),
    };
    match dated.standing {
        Standing::Done(day) => date::day(day),
        Standing::DoneWith(at, day) => format!("{}, with {}", date::day(day), name(at)),
        Standing::With(at) => format!("with {}", name(at)),
        Standing::Next => format!("{}{}", with("next"), late(dated, today)),
        Standing::Again => "once more".to_owned(),
        Standing::Missed => with("missed"),
        Standing::LeftOut => "left out".to_owned(),
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
pub fn where_we_are(next: Option<(usize, usize, String, Dated)>, today: i32) -> String {
    let Some((week, weeks, name, dated)) = next else {
        return "every session is done".to_owned();
    };
    let due = dated.due.map(|due| format!(", {}", date::day(due))).unwrap_or_default();
    format!("week {} of {weeks}, next {name}{due}{}", week + 1, late(&dated, today))
}

/// A key.
pub fn back_to(name: &str) -> String {
    format!("Back to {name}")
}

/// As read aloud.
pub fn back_to_says(kept: &Kept) -> String {
    format!(
        "Go back to {}, adopted {}, where it stood; the plan that is on is kept",
        kept.name,
        date::day(kept.day)
    )
}
