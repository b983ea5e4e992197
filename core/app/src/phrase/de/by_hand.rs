//! What is made by hand.

use super::{named, words};
use crate::contract::FileFault;

/// What it says holds from now on.
pub fn take_up() -> (&'static str, &'static str) {
    ("Übernehmen", "Ab jetzt verwenden")
}

/// It goes as it was begun.
pub fn drop_it() -> (&'static str, &'static str) {
    ("Verwerfen", "Verwerfen, was hier geändert wurde")
}

/// A step back.
pub fn undo() -> (&'static str, &'static str) {
    ("Rückgängig", "Den letzten Schritt zurücknehmen")
}

/// A step forth.
pub fn redo() -> (&'static str, &'static str) {
    ("Wiederherstellen", "Den zurückgenommenen Schritt wiederherstellen")
}

/// The whole again.
pub fn back() -> &'static str {
    "Zurück"
}

/// A line opened.
pub fn open() -> &'static str {
    "Öffnen"
}

/// A line gone.
pub fn remove() -> &'static str {
    "Entfernen"
}

/// A step of what a line says.
pub fn step(up: bool, what: &str) -> (&'static str, String) {
    if up { ("+", format!("{what}: mehr")) } else { ("\u{2212}", format!("{what}: weniger")) }
}

/// A fault in a sentence, with what to do.
pub fn said(fault: &FileFault) -> String {
    let problem = words::sentence_case(&fault.problem);
    match fault.advice.as_str() {
        "" => format!("{problem}."),
        advice => format!("{problem}. {advice}"),
    }
}

/// How a draft stands.
pub fn stands(faults: usize) -> String {
    match faults {
        0 => "In Arbeit: Noch richtet sich nichts danach.".to_owned(),
        _ => format!(
            "In Arbeit: {} zu berichtigen, bevor es gilt.",
            words::count(faults, "Stelle", "Stellen")
        ),
    }
}

/// A gym that is begun.
pub fn new_gym() -> String {
    "Mein Kraftraum".to_owned()
}

/// A copy.
pub fn copy_of(name: &str) -> String {
    format!("{name}, Kopie")
}

/// The usual name of what a gym has, by its kind.
pub fn usual_name(kind: &str) -> String {
    match kind {
        "barbell" => "Langhantelstange".to_owned(),
        "trap-bar" => "Trap-Bar".to_owned(),
        "ez-bar" => "SZ-Stange".to_owned(),
        "dumbbell" => "Kurzhanteln".to_owned(),
        "kettlebell" => "Kettlebells".to_owned(),
        "medicine-ball" => "Medizinbälle".to_owned(),
        "cable" => "Kabelzug".to_owned(),
        kind => words::sentence_case(&named::thing(kind)),
    }
}
