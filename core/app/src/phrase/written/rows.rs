//! What rows of sets have in common.

use barwright_domain::plan::SetCall;

/// Each of the sets in turn, or what they all have.
pub fn joined(sets: &[SetCall], print: impl Fn(&SetCall) -> String) -> String {
    let mut all: Vec<_> = sets.iter().map(print).collect();
    let first = all.first().cloned().unwrap_or_default();
    if all.iter().all(|one| *one == first) {
        all.truncate(1);
    }
    all.join(", ")
}

/// Whether two sets differ in how many, how heavy and how hard alone.
pub fn made_alike(one: &SetCall, other: &SetCall) -> bool {
    one.structure == other.structure
        && one.manner == other.manner
        && one.side == other.side
        && one.speed == other.speed
        && one.rest == other.rest
        && one.effort.is_some() == other.effort.is_some()
        && std::mem::discriminant(&one.how_many) == std::mem::discriminant(&other.how_many)
}
