//! Words of the plan's weeks.

use barwright_domain::call::WeekKind;
use barwright_domain::desk::{At, Dated, Kept, Standing};

use super::{date, words};
use crate::contract::LayAnew;

/// A key.
pub fn enter() -> &'static str {
    "Plan ab hier fortsetzen"
}
/// A key.
pub fn leave_out() -> &'static str {
    "Auslassen"
}
/// A key.
pub fn bring_back() -> &'static str {
    "Wieder aufnehmen"
}
/// A key.
pub fn do_today() -> &'static str {
    "Auf heute legen"
}
/// A key.
pub fn own_day() -> &'static str {
    "Zurück auf ihren Tag"
}
/// A key.
pub fn apart() -> &'static str {
    "Wieder trennen"
}
/// A key.
pub fn again() -> &'static str {
    "Noch einmal machen"
}
/// A key.
pub fn make_up() -> &'static str {
    "Nachholen"
}
/// A key.
pub fn not_again() -> &'static str {
    "Doch nicht noch einmal"
}
/// A key.
pub fn no_travel() -> &'static str {
    "Keine Woche weg"
}

/// "Auf Do., 12. Nov. legen".
pub fn to_day(day: i32) -> String {
    format!("Auf {} legen", date::day(day))
}

/// "Zusammen mit Drücken (2.2)".
pub fn join(name: &str, row: &str) -> String {
    format!("Zusammen mit {name} ({row})")
}

/// A key.
pub fn travel(away: u16) -> &'static str {
    if away == 0 { "Davor eine Woche weg" } else { "Noch eine Woche weg" }
}

/// "Woche 3: Entlastung, nach 1 Woche Abwesenheit".
pub fn title(week: u16, kind: WeekKind, away: u16) -> String {
    let away = match away {
        0 => String::new(),
        away => {
            format!(", nach {} Abwesenheit", words::count(usize::from(away), "Woche", "Wochen"))
        }
    };
    match kind {
        WeekKind::Ordinary => format!("Woche {week}{away}"),
        kind => format!("Woche {week}: {}{away}", words::week_kind(kind)),
    }
}

/// How a session stands: "als Nächstes, Mi., 12. Nov., 2 Tage überfällig".
pub fn state(dated: &Dated, today: i32, name: impl Fn(At) -> String) -> String {
    let on = |day: i32| date::dated(day, Some(today));
    let due = dated.due.map(|due| {
        let moved = if dated.moved { "verlegt auf " } else { "" };
        format!("{moved}{}", on(due))
    });
    let with = |word: &str| match &due {
        Some(due) => format!("{word}, {due}"),
        None => word.to_owned(),
    };
    match dated.standing {
        Standing::Done(day) => on(day),
        Standing::DoneWith(at, day) => format!("{}, mit {}", on(day), name(at)),
        Standing::With(at) => format!("mit {}", name(at)),
        Standing::Next => format!("{}{}", with("als Nächstes"), late(dated, today)),
        Standing::Again => "noch einmal".to_owned(),
        Standing::Missed => with("verpasst"),
        Standing::LeftOut => "ausgelassen".to_owned(),
        Standing::Before => "vor deinem Beginn".to_owned(),
        Standing::ToCome => due.unwrap_or_default(),
    }
}

fn late(dated: &Dated, today: i32) -> String {
    let days = dated.due.map_or(0, |due| today.saturating_sub(due));
    match usize::try_from(days) {
        Ok(0) if dated.due.is_some() => ", heute".to_owned(),
        Ok(0) | Err(_) => String::new(),
        Ok(days) => format!(", {} überfällig", words::count(days, "Tag", "Tage")),
    }
}

/// "Woche 3 von 12, als Nächstes Beine, Mi., 12. Nov., 2 Tage überfällig".
pub fn where_we_are(next: Option<(&Dated, &str)>, weeks: usize, today: i32) -> String {
    let Some((dated, name)) = next else {
        return "alle Einheiten sind gemacht".to_owned();
    };
    let due =
        dated.due.map(|due| format!(", {}", date::dated(due, Some(today)))).unwrap_or_default();
    format!("Woche {} von {weeks}, als Nächstes {name}{due}{}", dated.at.week, late(dated, today))
}

/// A key: its label, and as it is read aloud.
pub fn back_to(kept: &Kept, today: Option<i32>) -> (String, String) {
    let says = format!(
        "Zurück zu {}, übernommen am {}, wie er stand; der jetzige Plan wird aufgehoben",
        kept.name,
        date::dated(kept.day, today)
    );
    (format!("Zurück zu {}", kept.name), says)
}

/// The whole screen read aloud.
pub fn aloud(plan: &str, subtitle: &str, rows: &str) -> String {
    format!("{plan}, {subtitle}. {rows}")
}

/// A key.
pub fn lay_out() -> &'static str {
    "Einheit ansehen"
}

/// A key that shows the rest laid anew.
pub fn anew(how: LayAnew) -> (&'static str, &'static str) {
    match how {
        LayAnew::PushBack => {
            ("Nach hinten schieben", "Vorschau: alles um ganze Wochen später, nichts fällt weg")
        }
        LayAnew::Drop => {
            ("Verpasstes streichen", "Vorschau: Verpasstes fällt weg, der Rest bleibt, wo er ist")
        }
        LayAnew::Squeeze => (
            "An freien Tagen nachholen",
            "Vorschau: Verpasstes an freien Tagen, keine Übung an Nachbartagen schwer",
        ),
        LayAnew::SqueezeClose => (
            "Alles nachholen",
            "Vorschau: Verpasstes an freien Tagen, auch wenn Nachbartage schwer sind",
        ),
    }
}

/// What laying the rest anew comes to.
pub fn laid(how: LayAnew, moved: usize, left_out: usize, close: &[String]) -> String {
    let moved = match how {
        LayAnew::PushBack => {
            format!("{} später", words::count(moved, "Einheit kommt", "Einheiten kommen"))
        }
        LayAnew::Drop => String::new(),
        LayAnew::Squeeze | LayAnew::SqueezeClose => match moved {
            0 => String::new(),
            moved => {
                format!(
                    "{} auf freie Tage",
                    words::count(moved, "Einheit kommt", "Einheiten kommen")
                )
            }
        },
    };
    let gone = match left_out {
        0 => "nichts fällt weg".to_owned(),
        count => format!("{} weg", words::count(count, "Einheit fällt", "Einheiten fallen")),
    };
    let both: Vec<String> = [moved, gone].into_iter().filter(|part| !part.is_empty()).collect();
    let mut lines =
        vec![format!("{}. Noch ist nichts geändert.", words::sentence_case(&both.join(", ")))];
    lines.extend(close.iter().cloned());
    lines.join(" ")
}

/// A session whose date changes.
pub fn was(day: i32) -> String {
    format!("zuvor {}", date::day(day))
}

/// Two sessions with a lift heavy on neighbouring days.
pub fn close(before: &str, after: &str, lift: &str) -> String {
    format!("{lift} ist an Nachbartagen schwer: {before}, dann {after}.")
}

/// A key.
pub fn lay_so() -> (&'static str, &'static str) {
    ("So legen", "Der Rest des Plans wird so gelegt, wie er gezeigt ist")
}

/// A key.
pub fn take_back() -> (&'static str, &'static str) {
    ("Termine wie zuvor", "Zurücknehmen, dass der Rest neu gelegt wurde")
}

/// So many sessions lie behind.
pub fn behind(count: usize) -> String {
    format!(
        "{} zurück: Die Wochen lassen sich neu legen.",
        words::count(count, "Einheit liegt", "Einheiten liegen")
    )
}
