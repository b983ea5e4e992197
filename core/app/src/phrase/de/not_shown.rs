//! Words where a tap is recorded and its screen could not be made.

/// The title.
pub fn title() -> &'static str {
    "Recorded, but not shown"
}

/// What failed, and what was kept.
pub fn reason(what: &str) -> String {
    format!("The tap is recorded. The screen after it could not be made. {what}")
}

/// A key.
pub fn today() -> &'static str {
    "What is on"
}

/// A key.
pub fn floor() -> &'static str {
    "The floor"
}
