//! Keys in short.

use crate::contract::{Action, Draft, Intent, Key, Look};

/// A key that dispatches.
pub(super) fn does(id: impl Into<String>, label: impl Into<String>, intent: Intent) -> Key {
    key(id.into(), label.into(), Action::Do { intent })
}

/// A key that shows.
pub(super) fn shows(id: impl Into<String>, label: impl Into<String>, look: Look) -> Key {
    key(id.into(), label.into(), Action::Show { look })
}

/// A key that shows the floor with another draft.
pub(super) fn drafts(id: impl Into<String>, label: impl Into<String>, draft: Draft) -> Key {
    shows(id, label, Look::Floor { draft })
}

/// A key that opens a panel of the floor.
pub(super) fn opens(id: &str, label: &str, panel: impl Into<String>) -> Key {
    drafts(id, label, Draft { panel: Some(panel.into()), ..Draft::default() })
}

fn key(id: String, label: String, action: Action) -> Key {
    Key { id, says: label.clone(), label, enabled: true, chosen: false, action }
}

impl Key {
    /// The same key, read aloud in other words than its label.
    pub(super) fn says(mut self, words: impl Into<String>) -> Self {
        self.says = words.into();
        self
    }

    /// The same key, tappable only so.
    pub(super) fn enabled(mut self, enabled: bool) -> Self {
        self.enabled = enabled;
        self
    }

    /// The same key, marked as what holds already.
    pub(super) fn chosen(mut self, chosen: bool) -> Self {
        self.chosen = chosen;
        self
    }
}
