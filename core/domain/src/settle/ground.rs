//! What a session is settled with, and what every outcome begins as.

use crate::catalogue::Catalogue;
use crate::owners::{Outcome, Owner, Owners, RowOwner, Why};

/// What a session is settled with.
#[derive(Debug, Clone, Copy)]
pub struct Ground<'a> {
    /// The owners as they stood before it.
    pub owners: &'a Owners,
    /// The exercises.
    pub catalogue: &'a Catalogue,
    /// The rows of the plan that is on: which of them share a track.
    pub rows: &'a [RowOwner],
    /// The session was entered for an earlier day: owners that have a word of a later day keep it.
    pub late: bool,
}

/// An outcome with nothing in it yet.
pub(super) fn outcome(owner: &Owner, why: Why) -> Outcome {
    Outcome {
        owner: owner.clone(),
        changes: Vec::new(),
        why,
        sets: Vec::new(),
        silent: false,
        held: false,
        proposal: None,
    }
}
