//! Words of the loads that a lifter likes.

use super::words;

/// The title.
pub fn title(of: &str) -> String {
    format!("Beliebte Gewichte: {of}")
}

/// Under it.
pub fn subtitle() -> &'static str {
    "Jede Vorgabe richtet sich danach und sagt es. Was für eine Übung gilt, geht vor dem, was für \
     einen Kraftraum gilt."
}

/// Every load.
pub fn any() -> &'static str {
    "beliebig"
}

/// A line: multiples of this.
pub fn step() -> &'static str {
    "Ganze Schritte von"
}

/// A line: no smaller plate.
pub fn smallest() -> &'static str {
    "Kleinste Scheibe"
}

/// A load of the next session.
pub fn next(name: &str, load: &str) -> String {
    words::end(format!("Nächste Einheit: {name} {load}"))
}

/// A key of a gym or a lift.
pub fn open() -> (&'static str, &'static str) {
    ("Beliebte Gewichte", "Welche Gewichte dir lieb sind: ganze Schritte, keine kleinen Scheiben")
}
