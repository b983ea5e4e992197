//! What guards a lifter, asked before a set.

use barwright_domain::session::{EntryRun, Guard, SetRun};

use crate::phrase::Words;

/// Whether it is asked, by the session's own rule.
pub(super) fn asks_guard(entry: &EntryRun, set: &SetRun) -> bool {
    entry.asks_guard(set)
}

/// What to say before a set.
pub(super) fn before_set(entry: &EntryRun, set: &SetRun, words: Words) -> Vec<String> {
    if !asks_guard(entry, set) {
        return Vec::new();
    }
    match entry.guard {
        None => vec![words.cautions().guarded().to_owned()],
        Some(Guard::Neither) => vec![words.cautions().unguarded().to_owned()],
        Some(Guard::Pins | Guard::Spotter) => Vec::new(),
    }
}
