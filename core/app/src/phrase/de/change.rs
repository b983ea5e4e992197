//! Words of a session that is changed for once.

use barwright_domain::catalogue::Exercise;
use barwright_domain::prescribe::Candidate;

use super::{floor, muscle, named, words};

/// The title.
pub fn title(session: &str) -> String {
    format!("{session}, einmalig geändert")
}

/// How many changes there are.
pub fn subtitle(changes: usize) -> String {
    match changes {
        0 => "Wie im Plan.".to_owned(),
        _ => format!(
            "{}, nur dieses eine Mal. Der Plan bleibt, wie er ist.",
            words::count(changes, "Änderung", "Änderungen")
        ),
    }
}

/// A key on Today.
pub fn open() -> (&'static str, &'static str) {
    ("Ändern", "Diese Einheit einmalig ändern: tauschen, dazunehmen, weglassen, umordnen")
}

/// A key: this gym lacks something.
pub fn fit() -> (&'static str, &'static str) {
    ("An den Raum anpassen", "Was hier fehlt, durch das ersetzen, was es hier gibt")
}

/// A key.
pub fn add() -> (&'static str, &'static str) {
    ("Übung dazunehmen", "Am Ende eine Übung dazunehmen")
}

/// A key.
pub fn back() -> (&'static str, &'static str) {
    ("Rückgängig", "Die letzte Änderung zurücknehmen")
}

/// A key.
pub fn as_planned() -> (&'static str, &'static str) {
    ("Wie geplant", "Alle Änderungen zurücknehmen")
}

/// A key.
pub fn to_session() -> &'static str {
    "Zurück zur Einheit"
}

/// A key of an exercise.
pub fn instead(name: &str) -> (&'static str, String) {
    ("Tauschen", format!("Eine andere Übung statt {name}"))
}

/// A key of an exercise.
pub fn earlier(name: &str) -> (&'static str, String) {
    ("Früher", format!("{name} einen Platz früher"))
}

/// A key of an exercise.
pub fn leave_out(name: &str) -> (&'static str, String) {
    ("Weglassen", format!("{name} weglassen"))
}

/// The title of the list.
pub fn swap_title(name: &str) -> String {
    format!("Statt {name}")
}

/// Under it.
pub fn swap_subtitle() -> &'static str {
    "Das Naheliegendste zuerst: gleiche Bewegung, gleiche Muskeln, hier vorhanden. Ein Gewicht \
     wird nie übertragen: Jede Übung hat ihren eigenen Verlauf."
}

/// The title of the list.
pub fn add_title() -> &'static str {
    "Übung dazunehmen"
}

/// Under it.
pub fn add_subtitle() -> &'static str {
    "Sie kommt zuletzt, wird gezählt, und niemand ist sie schuldig."
}

/// A key: for this session alone.
pub fn once(name: &str) -> (&'static str, String) {
    ("Einmalig", format!("{name}, nur dieses eine Mal"))
}

/// A key: the plan is mended.
pub fn always(name: &str) -> (&'static str, String) {
    ("Ab jetzt", format!("{name} ab jetzt: erst sehen, was das im Plan ändert"))
}

/// The field that looks, and an example.
pub fn find() -> (&'static str, &'static str) {
    ("Suchen", "Beinbeuger Kurzhantel")
}

/// Nothing has these words.
pub fn none_found(text: &str) -> String {
    format!(
        "Keine Übung zu „{text}“: Versuch es mit einem Muskel, einer Bewegung oder einem \
             Gerät."
    )
}

/// What an exercise is, in short.
pub fn candidate(one: &Candidate<'_>) -> String {
    let planned = one.planned.then(|| "so vom Plan vorgesehen".to_owned());
    planned.into_iter().chain([what(one.exercise)]).collect::<Vec<_>>().join(" · ")
}

/// What an exercise is: its movement, its muscles.
pub fn what(exercise: &Exercise) -> String {
    let movement = named::movement(exercise.movement.slug());
    let muscles: Vec<String> =
        exercise.direct.iter().map(|one| muscle::in_line(*one).to_owned()).collect();
    format!("{movement} · {}", muscles.join(", "))
}

/// What this gym lacks for an exercise.
pub fn lacks(lacks: &[String]) -> String {
    format!("{}.", words::sentence_case(&floor::lacks_here(lacks)))
}

/// A session that was done without the tool.
pub fn paper_title(session: &str) -> String {
    format!("{session}, vom Papier")
}

/// Under it.
pub fn paper_subtitle() -> &'static str {
    "An welchem Tag wurde sie gemacht? Sie zählt ab diesem Tag: Was seither gesagt oder trainiert \
     wurde, bleibt."
}

/// A session whose date is wrong.
pub fn date_title(session: &str) -> String {
    format!("{session}, anderes Datum")
}

/// Under it.
pub fn date_subtitle() -> &'static str {
    "An welchem Tag wurde sie gemacht? Verlauf, Bestwerte und Wochen folgen; die Sätze bleiben, \
     wie sie sind."
}

/// A key.
pub fn on_day(date: &str) -> (&'static str, String) {
    ("Dieser Tag", format!("Sie wurde am {date} gemacht"))
}

/// The field for any other day, and an example.
pub fn other_day() -> (&'static str, &'static str) {
    ("Anderer Tag", "2026-11-23")
}

/// What was typed is no date.
pub fn not_a_day() -> &'static str {
    "Das ist kein Datum. Schreib Jahr, Monat und Tag: 2026-11-23."
}

/// A key of a session of the plan.
pub fn from_paper() -> (&'static str, &'static str) {
    ("Vom Papier\u{2026}", "Sie wurde ohne das Programm gemacht: eintragen")
}

/// A key of a session that was done.
pub fn other_date() -> (&'static str, &'static str) {
    ("Anderes Datum\u{2026}", "Sie wurde an einem anderen Tag gemacht, als hier steht")
}

/// While a session is entered from paper.
pub fn paper(date: &str) -> String {
    format!(
        "Vom Papier: {date}. Es laufen keine Pausen; was übrig ist, lässt sich wie vorgegeben \
             eintragen."
    )
}

/// A key.
pub fn as_called(name: &str) -> (String, String) {
    (
        "Alles wie vorgegeben".to_owned(),
        format!(
            "Alle übrigen Sätze von {name} wurden wie \
                                                 vorgegeben gemacht"
        ),
    )
}

/// A key.
pub fn everything_as_called() -> (&'static str, &'static str) {
    ("Ganze Einheit wie vorgegeben", "Alle übrigen Sätze wurden wie vorgegeben gemacht")
}
