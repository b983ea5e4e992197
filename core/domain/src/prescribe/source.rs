//! What a sheet is made from, the lifter apart.

use crate::catalogue::Catalogue;
use crate::desk::At;
use crate::equipment::Equipment;
use crate::plan::{Plan, WeekSession};

/// What a sheet is made from, the lifter apart.
#[derive(Debug, Clone, Copy)]
pub struct Source<'a> {
    /// The plan.
    pub plan: &'a Plan,
    /// The log's number of its adoption; none for a plan that is only looked at.
    pub adopted: Option<u64>,
    /// The session of the plan.
    pub at: At,
    /// The exercises, the plan's own among them.
    pub catalogue: &'a Catalogue,
    /// The gym.
    pub equipment: &'a Equipment,
}

impl Source<'_> {
    /// The session as the plan writes it; none where it has none there.
    pub(super) fn session(&self) -> Option<WeekSession> {
        let (week, index) = self.at.nth();
        self.plan.session_as_written(week, index)
    }

    /// Every session of the plan, in its order.
    pub(super) fn everywhere(self) -> impl Iterator<Item = Self> {
        let places = (0..self.plan.weeks.len()).flat_map(move |week| {
            (0..self.plan.sessions_of(week).len()).filter_map(move |nth| At::of_nth(week, nth))
        });
        places.map(move |at| Self { at, ..self })
    }
}
