//! The dates of a plan's rest, laid anew at once.

use serde::{Deserialize, Serialize};

use super::arranged::{Arranged, At};

/// What is set at once when the rest of a plan is laid anew.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(default)]
pub struct Dates {
    /// Sessions on a local date, in days since 1970-01-01; none is their own.
    pub moved: Vec<(At, Option<i32>)>,
    /// Sessions left out, or no longer.
    pub left_out: Vec<(At, bool)>,
    /// Weeks away before a week, from 1.
    pub travel: Vec<(u16, u16)>,
}

impl Dates {
    /// Whether it sets nothing.
    pub fn is_empty(&self) -> bool {
        self.moved.is_empty() && self.left_out.is_empty() && self.travel.is_empty()
    }
}

impl Arranged {
    /// What would set the same as they stand now.
    pub fn standing(&self, of: &Dates) -> Dates {
        let day = |at: At| self.moved.iter().find(|(one, _)| *one == at).map(|(_, day)| *day);
        Dates {
            moved: of.moved.iter().map(|(at, _)| (*at, day(*at))).collect(),
            left_out: of.left_out.iter().map(|(at, _)| (*at, self.left_out.contains(at))).collect(),
            travel: of
                .travel
                .iter()
                .map(|(week, _)| (*week, self.travel.get(week).copied().unwrap_or(0)))
                .collect(),
        }
    }

    /// This, with these dates.
    #[must_use]
    pub fn with_dates(&self, dates: &Dates) -> Self {
        let mut with = self.clone();
        with.set(dates);
        with
    }

    /// Sets them.
    pub(super) fn set(&mut self, to: &Dates) {
        for (at, day) in &to.moved {
            self.moved.retain(|(one, _)| one != at);
            self.moved.extend(day.map(|day| (*at, day)));
        }
        for (at, left_out) in &to.left_out {
            self.left_out.retain(|one| one != at);
            self.left_out.extend(left_out.then_some(*at));
        }
        for (week, weeks) in &to.travel {
            self.travel.remove(week);
            if *weeks > 0 {
                self.travel.insert(*week, *weeks);
            }
        }
    }
}
