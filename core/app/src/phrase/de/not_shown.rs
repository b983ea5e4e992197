//! Words where a tap is recorded and its screen could not be made.

/// The title.
pub fn title() -> &'static str {
    "Eingetragen, aber nicht gezeigt"
}

/// What failed, and what was kept.
pub fn reason(what: &str) -> String {
    format!("Die Eingabe ist gespeichert. Die Ansicht danach ließ sich nicht erstellen. {what}")
}

/// A key.
pub fn today() -> &'static str {
    "Was ansteht"
}

/// A key.
pub fn floor() -> &'static str {
    "Zur Einheit"
}
