//! Changes that a coach sent.

use barwright_domain::desk::At;
use barwright_domain::quantity::{Mass, MassUnit, Numerals};

use super::{date, words};

/// Its title.
pub fn title() -> &'static str {
    "Änderungen vom Trainer"
}

/// For whom, and when they were decided.
pub fn decided(lifter: &str, day: i32) -> String {
    format!("Für {lifter}, entschieden {} – gilt erst, wenn du es übernimmst", date::day(day))
}

/// The file has faults.
pub fn unreadable() -> &'static str {
    "Diese Datei ist nicht lesbar. Nichts davon wurde übernommen."
}

/// A max.
pub fn max(name: &str) -> String {
    format!("{name}: Maximum")
}

/// A working load.
pub fn load(name: &str) -> String {
    format!("{name}: Arbeitsgewicht")
}

/// "150 kg → 142,5 kg"; "bleibt 80 kg".
pub fn from_to(was: Option<Mass>, to: Mass, unit: MassUnit, numerals: Numerals) -> String {
    let said = |mass| words::or_help(mass, unit, numerals);
    match was {
        Some(was) if was == to => format!("bleibt {}", said(to)),
        Some(was) => format!("{} → {}", said(was), said(to)),
        None => format!("keins → {}", said(to)),
    }
}

/// An exercise is exchanged.
pub fn swap(of: &str, with: &str) -> String {
    format!("Ab jetzt {with} statt {of}")
}

/// The plan mended.
pub fn plan() -> &'static str {
    "Der Plan, geändert: Wochen, Termine und Gewichte bleiben"
}

/// A week once more.
pub fn week(week: u16) -> String {
    format!("Woche {week} noch einmal: Der Plan geht dort weiter")
}

/// It was taken.
pub fn taken() -> &'static str {
    "übernommen"
}

/// There is nothing that it could change.
pub fn nothing() -> &'static str {
    "Hier ist nichts, was es ändern könnte."
}

/// The load is another one since.
pub fn mass_apart(now: Option<Mass>, unit: MassUnit, numerals: Numerals) -> String {
    match now {
        Some(now) => {
            let now = words::or_help(now, unit, numerals);
            format!("Du hast seither weitergemacht: Jetzt gilt {now}. Es wird nur übernommen, wenn du es sagst.")
        }
        None => "Du hast seither weitergemacht: Jetzt gilt keins. Es wird nur übernommen, wenn du es sagst.".to_owned(),
    }
}

/// The plan is another one since.
pub fn plan_apart() -> &'static str {
    "Der Plan wurde seither geändert. Es wird nur übernommen, wenn du es sagst."
}

/// Another session is next since.
pub fn next_apart(next: Option<At>) -> String {
    let was = match next {
        Some(At { week, session }) => format!("war Einheit {session} von Woche {week} dran"),
        None => "war der Plan durch".to_owned(),
    };
    format!("Als es entschieden wurde, {was}. Es wird nur übernommen, wenn du es sagst.")
}

/// Takes those that fit.
pub fn take_up(count: usize) -> (String, String) {
    let changes = words::count(count, "Änderung", "Änderungen");
    (format!("{changes} übernehmen"), format!("Ab jetzt gilt: {changes}"))
}

/// Takes one that does not.
pub fn take_all_the_same() -> (&'static str, &'static str) {
    ("Trotzdem übernehmen", "Es gilt ab jetzt, was du seither auch gemacht hast")
}

/// The file is for another lifter.
pub fn of_other(lifter: &str) -> String {
    let lifter: String = lifter.chars().take(60).collect();
    format!(
        "Diese Datei ist für die Aufzeichnungen von „{lifter}“, hier sind andere. Nichts wurde übernommen."
    )
}

/// Nothing of it can be taken so.
pub fn nothing_to_take() -> &'static str {
    "So lässt sich nichts davon übernehmen: Was passt, ist übernommen, oder du hast seither weitergemacht. Nichts wurde geändert."
}

/// A coach's words that are no change.
pub fn unknown_change(said: &str) -> String {
    let said: String = said.chars().take(60).collect();
    format!(
        "„{said}“ ist keine Änderung. Schreib eines von: max ÜBUNG -5 %, load ÜBUNG 80 kg, \
         hold ÜBUNG, swap ÜBUNG with ÜBUNG, week 3."
    )
}

/// No load of an exercise.
pub fn no_load(name: &str) -> String {
    let name: String = name.chars().take(60).collect();
    format!("„{name}“ hat kein eigenes Arbeitsgewicht: Das Maximum oder der Plan sagt es.")
}

/// Several loads of an exercise.
pub fn several_loads(name: &str, loads: &[String]) -> String {
    let name: String = name.chars().take(60).collect();
    format!("„{name}“ hat mehrere Arbeitsgewichte. Nenne eines: {}.", loads.join(", "))
}

/// A plan of another name.
pub fn other_plan(name: &str) -> String {
    format!("Das ist ein anderer Plan: Der jetzige heißt „{name}“.")
}
