//! Words of the loads that a lifter likes.

/// The title.
pub fn title(of: &str) -> String {
    format!("Loads you like: {of}")
}

/// Under it.
pub fn subtitle() -> &'static str {
    "Every call goes by it, and says so. What is liked for a lift goes before what is liked in a gym."
}

/// Every load.
pub fn any() -> &'static str {
    "any"
}

/// A line: multiples of this.
pub fn step() -> &'static str {
    "Whole steps of"
}

/// A line: no smaller plate.
pub fn smallest() -> &'static str {
    "Smallest plate"
}

/// A load of the next session.
pub fn next(name: &str, load: &str) -> String {
    format!("Next session: {name} {load}.")
}

/// A key of a gym or a lift.
pub fn open() -> (&'static str, &'static str) {
    ("Loads you like", "Which loads you like called: whole steps, no small plates")
}
