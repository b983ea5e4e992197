//! Words of today's sheet.

use barwright_domain::call::WeekKind;
use barwright_domain::quantity::Seconds;

use super::{floor, named, words};

/// The title without a plan.
pub fn nothing_on() -> &'static str {
    "Kein Plan"
}

/// What to do without a plan.
pub fn no_plan() -> &'static str {
    "Öffne eine Plandatei und übernimm sie."
}

/// The plan, the week from 1, and the gym: "Wintergrundlage · Woche 3 von 8 (Entlastung) · Keller".
pub fn subtitle(plan: &str, week: usize, weeks: usize, kind: WeekKind, gym: &str) -> String {
    let kind = match kind {
        WeekKind::Ordinary => String::new(),
        WeekKind::EaseIn | WeekKind::Deload | WeekKind::Test => {
            format!(" ({})", words::week_kind(kind))
        }
    };
    format!("{plan} · Woche {week} von {weeks}{kind} · {gym}")
}

/// "Allgemeines Aufwärmen · 8:00".
pub fn warm_up(takes: Seconds) -> String {
    format!("Allgemeines Aufwärmen · {}", takes.print())
}

/// Over a superset.
pub fn back_to_back(rest: Seconds) -> String {
    format!("Im Wechsel · Pause {} nach der Runde", rest.print())
}

/// An exercise as a heading.
pub fn exercise(name: &str, optional: bool) -> String {
    let optional = if optional { " (freiwillig)" } else { "" };
    format!("{name}{optional}")
}

/// What this gym lacks for an exercise, and what can be done instead.
pub fn lacks(lacks: &[String], instead: &[String]) -> String {
    let lacks = floor::lacks_here(lacks);
    match instead {
        [] => lacks,
        some => format!("{lacks}; stattdessen: {}", some.join(" oder ")),
    }
}

/// A key.
pub fn begin() -> (&'static str, &'static str) {
    ("Beginnen", "Diese Einheit beginnen")
}

/// A key.
pub fn back_to_floor() -> &'static str {
    "Zurück zur Einheit"
}

/// A key: what to leave out for so many minutes.
pub fn minutes(minutes: u32) -> (String, String) {
    (format!("{minutes} min"), format!("Was bei {minutes} Minuten wegfällt"))
}

/// A key.
pub fn all_of_it() -> &'static str {
    "Ganze Einheit"
}

/// A key.
pub fn another_session() -> &'static str {
    "Andere Einheit"
}

/// A key.
pub fn weeks() -> &'static str {
    "Wochen des Plans"
}

/// A key.
pub fn gym(name: &str) -> (String, String) {
    ("Was dieser Kraftraum hat".to_owned(), format!("Was es hier gibt: {}", named::gear(name)))
}

/// A key: train there.
pub fn in_gym(name: &str) -> (String, String) {
    {
        let name = named::gear(name);
        (format!("In „{name}“"), format!("Ab jetzt in „{name}“ trainieren"))
    }
}

/// A session was never ended: when the next begins, it is over as it stands.
pub fn left_open() -> &'static str {
    "Die letzte Einheit wurde nie beendet. Beginnst du diese, endet sie mit ihrem letzten Satz."
}

/// A max is not tested while pain stands.
pub fn pain_first(name: &str) -> String {
    format!("Bei {name} schmerzte es letztes Mal: kein Test vor einer Einheit ohne Schmerzen.")
}
