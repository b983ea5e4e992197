//! The text of a plan, built from the top down.

/// A plan's file that is being written.
#[derive(Debug, Clone)]
pub struct Plan {
    text: String,
}

impl Plan {
    /// A plan of so many weeks, with no session yet.
    #[must_use]
    pub fn new(name: &str, weeks: u32) -> Self {
        Self { text: format!("name = \"{name}\"\nweeks = {weeks}\n") }
    }

    /// A line, or several, of what was opened last: the plan, a session or an exercise.
    #[must_use]
    pub fn with(mut self, lines: &str) -> Self {
        self.text.push_str(lines.trim());
        self.text.push('\n');
        self
    }

    /// Opens a session.
    #[must_use]
    pub fn session(self, name: &str) -> Self {
        self.with(&format!("[[session]]\nname = \"{name}\""))
    }

    /// Opens an exercise of the session, with what the lines say of it.
    #[must_use]
    pub fn exercise(self, name: &str, lines: &str) -> Self {
        self.with(&format!("[[session.exercise]]\nname = \"{name}\"")).with(lines)
    }

    /// The file.
    #[must_use]
    pub fn text(self) -> String {
        self.text
    }
}
