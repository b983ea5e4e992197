//! The form of a gym.

use barwright_domain::equipment::Reach;
use barwright_domain::quantity::{Mass, MassUnit, Numerals};

use super::{named, words};
use crate::phrase::written::figures;

/// Its title.
pub fn title(name: &str) -> String {
    format!("Kraftraum: {name}")
}

/// What a key of the file is called, and what would do there.
pub fn field(key: &str, unit: MassUnit) -> (&'static str, String) {
    let mass = |kilograms: &str, pounds: &str| {
        let figure = match unit {
            MassUnit::Kilogram => kilograms,
            MassUnit::Pound => pounds,
        };
        format!("{figure} {}", unit.symbol())
    };
    match key {
        "name" => ("Name", "Bootshaus".to_owned()),
        "unit" => ("Gewichte zeigen in", unit.symbol().to_owned()),
        "kind" => ("Art", file_word(key, "barbell")),
        "mass" => ("Gewicht", mass("20", "45")),
        "weighs" => ("Nachgewogen wiegt eine", mass("19", "44")),
        "collars" => ("Beide Verschlüsse", mass("5", "10")),
        "sleeve" => ("Platz auf einer Hülse", "415 mm".to_owned()),
        "pairs" => ("Paare", "2".to_owned()),
        "single" => ("Eine mehr ohne Partner", "1".to_owned()),
        "thickness" => ("Dicke", "27 mm".to_owned()),
        "diameter" => ("Durchmesser, große haben 450 mm", "450 mm".to_owned()),
        "colour" => ("Farbe", file_word(key, "red")),
        "from" => ("Leichtestes", mass("2", "5")),
        "to" => ("Schwerstes", mass("30", "70")),
        "step" => ("Schritt", mass("2", "5")),
        "pins" => ("Stiftplätze", "14".to_owned()),
        "ratio" => ("Verhältnis Hand zu Gewichtsblock", "1:2".to_owned()),
        "start" => ("Ohne Scheibe", mass("20", "45")),
        "posts" => ("Dorne für Scheiben", "2".to_owned()),
        _ => ("Wert", String::new()),
    }
}

/// What can be added to a list.
pub fn add_to(list: &str) -> &'static str {
    match list {
        "bar" => "Stange hinzufügen",
        "plate" => "Scheibengröße hinzufügen",
        "dumbbells" => "In der Hand Gehaltenes hinzufügen",
        "stack" => "Gewichtsblock mit Stift hinzufügen",
        "machine" => "Maschine für Scheiben hinzufügen",
        "loads" => "Gewicht hinzufügen",
        "add_ons" => "Gewicht für obenauf hinzufügen",
        _ => "Hinzufügen",
    }
}

/// One more of another kind or size.
pub fn add_other(list: &str, unit: MassUnit) -> (&'static str, String) {
    let mass = match unit {
        MassUnit::Kilogram => "7 kg",
        MassUnit::Pound => "15 lb",
    };
    match list {
        "plate" => ("Andere Größe", mass.to_owned()),
        "loads" | "add_ons" => (add_to(list), mass.to_owned()),
        "also" => ("Etwas anderes, das es hier gibt", file_word("kind", "slant-board")),
        "bar" => ("Andere Art", file_word("kind", "safety-bar")),
        _ => ("Andere Art", file_word("kind", "calf-machine")),
    }
}

/// A small set of plates.
pub fn a_set() -> (&'static str, &'static str) {
    ("Ein kleiner Satz", "Einen kleinen Satz Scheiben hinzufügen, die Größen, die hier noch fehlen")
}

/// The one that is taken.
pub fn usual_one() -> (&'static str, &'static str) {
    ("Die übliche", "Zu der machen, die zuerst genommen wird")
}

/// How many pairs.
pub fn pairs(count: u32) -> String {
    match count {
        0 => "kein Paar".to_owned(),
        1 => "1 Paar".to_owned(),
        count => format!("{count} Paare"),
    }
}

/// Pairs, as a field asks for them.
pub fn pairs_field(plate: &str) -> (String, &'static str) {
    (format!("Paare zu {plate}"), "2")
}

/// A plate that was weighed.
pub fn weighs(mass: Mass, unit: MassUnit, numerals: Numerals) -> String {
    format!("wiegt {}", words::mass(mass, unit, numerals))
}

/// The most loads that are named as missing.
const NAMED: usize = 5;

/// From where to where, in which steps, and what can't be made.
pub fn reach(reach: &Reach, unit: MassUnit, numerals: Numerals) -> String {
    let mass = |mass: Mass| words::mass(mass, unit, numerals);
    if reach.count == 1 {
        return format!("{} und nichts anderes", mass(reach.least));
    }
    let span = format!("{} bis {}", mass(reach.least), mass(reach.most));
    let Some(step) = reach.step else {
        return format!("{span}, {} Gewichte, ungleich verteilt", reach.count);
    };
    let every = format!("{span}, alle {}", mass(step));
    if reach.missing.is_empty() {
        return every;
    }
    let figures = reach.missing.iter().take(NAMED).map(|load| load.figure(unit, numerals));
    let named = figures::in_a_row(&figures.collect::<Vec<_>>());
    let more = reach.missing.len().saturating_sub(NAMED);
    let more = if more > 0 { format!(" und {more} mehr") } else { String::new() };
    format!("{every}; nicht möglich: {named}{more}")
}

/// More than is listed.
pub fn reach_unlisted() -> &'static str {
    "so viele Gewichte, dass sie nicht aufgezählt werden"
}

/// On top of a stack.
pub fn add_on(mass: &str) -> String {
    format!("{mass} obenauf")
}

/// Pins without loads.
pub fn pins(count: usize) -> String {
    format!("{}, Gewichte unbekannt", words::count(count, "Stiftplatz", "Stiftplätze"))
}

/// How a stack is set.
pub fn by(pins: bool) -> &'static str {
    if pins { "Nummern ohne Gewichte" } else { "Gewichte sind bekannt" }
}

/// One or two of each.
pub fn flag(key: &str, on: bool) -> &'static str {
    match (key, on) {
        ("pairs", true) => "Je zwei davon",
        ("pairs", false) => "Je eine davon",
        (_, true) => "Ja",
        (_, false) => "Nein",
    }
}

/// A support.
pub fn support(slug: &str) -> String {
    words::sentence_case(&match slug {
        "pull-up-bar" => "Klimmzugstange".to_owned(),
        "band" => "Bänder".to_owned(),
        other => named::thing(other),
    })
}

/// A word of the file that a line is of: "Langhantel" for `barbell`, "rot" for `red`. A word of the
/// file's own stays.
pub fn file_word(key: &str, word: &str) -> String {
    match (key, word) {
        ("kind", "") => String::new(),
        ("kind", kind) => words::sentence_case(&named::thing(kind)),
        ("colour", "red") => "rot".to_owned(),
        ("colour", "blue") => "blau".to_owned(),
        ("colour", "yellow") => "gelb".to_owned(),
        ("colour", "green") => "grün".to_owned(),
        ("colour", "white") => "weiß".to_owned(),
        ("colour", "black") => "schwarz".to_owned(),
        ("colour", "grey" | "gray") => "grau".to_owned(),
        _ => word.to_owned(),
    }
}

/// Here or not.
pub fn here(here: bool) -> &'static str {
    if here { "vorhanden" } else { "nicht vorhanden" }
}

/// Said to be here, or not.
pub fn toggle(here: bool, what: &str) -> (&'static str, String) {
    if here {
        ("Fehlt", format!("{what} fehlt hier"))
    } else {
        ("Vorhanden", format!("{what} ist vorhanden"))
    }
}
