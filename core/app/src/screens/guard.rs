//! When what guards a lifter is asked.

use barwright_domain::call::{HowMany, Stop};
use barwright_domain::quantity::Reserve;
use barwright_domain::session::{EntryRun, Guard, SetKind, SetRun};

use crate::phrase::Words;

/// Whether a set is near enough failure, under a bar, to ask what guards the lifter.
pub(super) fn asks_guard(entry: &EntryRun, set: &SetRun) -> bool {
    let near = set.call.effort.is_some_and(|target| target.left.from.halves() < 4);
    let open = matches!(
        set.call.how_many,
        HowMany::Open { stop: Stop::Reserve(Reserve::NONE) | Stop::Form | Stop::Pace, .. }
    );
    entry.entry.over_body && (near || open || set.call.kind == SetKind::Test)
}

/// What to say before a set.
pub(super) fn before_set(entry: &EntryRun, set: &SetRun, words: Words) -> Vec<String> {
    if !asks_guard(entry, set) || set.call.kind == SetKind::Ramp {
        return Vec::new();
    }
    match entry.guard {
        None => vec![words.cautions().guarded().to_owned()],
        Some(Guard::Neither) => vec![words.cautions().unguarded().to_owned()],
        Some(Guard::Pins | Guard::Spotter) => Vec::new(),
    }
}
