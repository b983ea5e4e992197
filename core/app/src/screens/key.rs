//! Keys in short.

use barwright_domain::desk::At;
use barwright_domain::session::Run;

use crate::contract::{Action, Arrange, Draft, Intent, Key, Look};
use crate::facts::place;

/// What stands on a key, and what it does as it is read aloud, where that is more.
pub(super) struct Said {
    label: String,
    says: Option<String>,
}

impl From<&str> for Said {
    fn from(label: &str) -> Self {
        Self { label: label.to_owned(), says: None }
    }
}

impl From<String> for Said {
    fn from(label: String) -> Self {
        Self { label, says: None }
    }
}

impl<L: Into<String>, S: Into<String>> From<(L, S)> for Said {
    fn from((label, says): (L, S)) -> Self {
        Self { label: label.into(), says: Some(says.into()) }
    }
}

/// A key that dispatches, whatever session there is.
pub(super) fn does(id: impl Into<String>, said: impl Into<Said>, intent: Intent) -> Key {
    key(id.into(), said.into(), Action::Do { intent, session: None, then: None })
}

/// A key that arranges a session of the plan.
pub(super) fn arranges(id: impl Into<String>, said: impl Into<Said>, at: At, how: Arrange) -> Key {
    does(id, said, Intent::Arrange { session: place::name(at), how })
}

/// A key of a session: kept from it, it does nothing to another.
pub(super) fn taps(run: &Run, id: impl Into<String>, said: impl Into<Said>, intent: Intent) -> Key {
    let session = Some(run.session);
    key(id.into(), said.into(), Action::Do { intent, session, then: None })
}

/// A key that shows.
pub(super) fn shows(id: impl Into<String>, said: impl Into<Said>, look: Look) -> Key {
    key(id.into(), said.into(), Action::Show { look })
}

/// A key that shows the floor with another draft.
pub(super) fn drafts(id: impl Into<String>, said: impl Into<Said>, draft: Draft) -> Key {
    shows(id, said, Look::Floor { draft })
}

/// A key that opens a panel of the floor.
pub(super) fn opens(id: &str, said: impl Into<Said>, panel: impl Into<String>) -> Key {
    drafts(id, said, Draft { panel: Some(panel.into()), ..Draft::default() })
}

fn key(id: String, said: Said, action: Action) -> Key {
    let Said { label, says } = said;
    let says = says.unwrap_or_else(|| label.clone());
    Key { id, label, says, enabled: true, chosen: false, action }
}

impl Key {
    /// The same key, after which this is shown and not wherever the tap leads.
    pub(super) fn then(mut self, look: Look) -> Self {
        if let Action::Do { then, .. } = &mut self.action {
            *then = Some(look);
        }
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
