//! A session's place in a plan.

use serde::{Deserialize, Serialize};

/// A session of a plan, both from 1.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
pub struct At {
    /// The week.
    pub week: u16,
    /// The session within the week.
    pub session: u16,
}

impl At {
    /// Week and session as the plan's lists count them, from 0.
    #[must_use]
    pub fn nth(self) -> (usize, usize) {
        (usize::from(self.week).saturating_sub(1), usize::from(self.session).saturating_sub(1))
    }

    /// The place of a week and a session of the plan's lists, both from 0.
    #[must_use]
    pub fn of_nth(week: usize, session: usize) -> Option<Self> {
        let from_one = |nth: usize| u16::try_from(nth.checked_add(1)?).ok();
        Some(Self { week: from_one(week)?, session: from_one(session)? })
    }
}
