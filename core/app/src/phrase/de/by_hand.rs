//! What is made by hand.

use super::words;
use crate::contract::FileFault;

/// What it says holds from now on.
pub fn take_up() -> (&'static str, &'static str) {
    ("Use it", "Use it from now on")
}

/// It goes as it was begun.
pub fn drop_it() -> (&'static str, &'static str) {
    ("Drop it", "Drop what was changed here")
}

/// A step back.
pub fn undo() -> (&'static str, &'static str) {
    ("Undo", "Take the last step back")
}

/// A step forth.
pub fn redo() -> (&'static str, &'static str) {
    ("Redo", "Bring the step again that was taken back")
}

/// The whole again.
pub fn back() -> &'static str {
    "Back"
}

/// A line opened.
pub fn open() -> &'static str {
    "Open"
}

/// A line gone.
pub fn remove() -> &'static str {
    "Remove"
}

/// A step of what a line says.
pub fn step(up: bool, what: &str) -> (&'static str, String) {
    if up { ("+", format!("{what}: more")) } else { ("\u{2212}", format!("{what}: less")) }
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
        0 => "Being made: nothing goes by it yet.".to_owned(),
        _ => format!(
            "Being made: {} to put right before it can be used.",
            words::count(faults, "thing", "things")
        ),
    }
}

/// A gym that is begun.
pub fn new_gym() -> String {
    "My gym".to_owned()
}

/// A copy.
pub fn copy_of(name: &str) -> String {
    format!("{name}, copy")
}

/// The usual name of what a gym has, by its kind.
pub fn usual_name(kind: &str) -> String {
    match kind {
        "barbell" => "Long bar".to_owned(),
        "trap-bar" => "Hex bar".to_owned(),
        "ez-bar" => "Curl bar".to_owned(),
        "dumbbell" => "Dumbbells".to_owned(),
        "kettlebell" => "Kettlebells".to_owned(),
        "medicine-ball" => "Medicine balls".to_owned(),
        "cable" => "Cable column".to_owned(),
        kind => words::sentence_case(&kind.replace('-', " ")),
    }
}
