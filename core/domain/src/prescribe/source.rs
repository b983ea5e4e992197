//! What a sheet is made from, the lifter apart.

use crate::catalogue::Catalogue;
use crate::equipment::Equipment;
use crate::plan::Plan;

/// What a sheet is made from, the lifter apart.
#[derive(Debug, Clone, Copy)]
pub struct Source<'a> {
    /// The plan.
    pub plan: &'a Plan,
    /// The log's number of its adoption; none for a plan that is only looked at.
    pub adopted: Option<u64>,
    /// The week, from 0.
    pub week: usize,
    /// The session of the week, from 0.
    pub index: usize,
    /// The exercises, the plan's own among them.
    pub catalogue: &'a Catalogue,
    /// The gym.
    pub equipment: &'a Equipment,
}
