//! The dates of a plan's rest, laid anew at once.

use serde::{Deserialize, Serialize};

use super::at::At;

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
