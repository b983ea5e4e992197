//! What guards a lifter, asked before a set.

use barwright_domain::catalogue::Exercise;
use barwright_domain::session::{EntryRun, Guard, SetKind, SetRun};

use crate::facts::Held;
use crate::phrase::Words;

/// Whether it is asked, by the session's own rule.
pub(super) fn asks_guard(entry: &EntryRun, set: &SetRun) -> bool {
    entry.asks_guard(set)
}

/// What to say before a set.
pub(super) fn before_set(held: &Held, entry: &EntryRun, set: &SetRun, words: Words) -> Vec<String> {
    let say = words.cautions();
    let guard = match entry.guard {
        _ if !asks_guard(entry, set) => None,
        None => Some(say.guarded().to_owned()),
        Some(Guard::Neither) => {
            let exercise = held.catalogue.get(&entry.entry.exercise);
            Some(say.unguarded(exercise.is_some_and(Exercise::is_bench_press)))
        }
        Some(Guard::Pins | Guard::Spotter) => None,
    };
    // A max is tried with a bar over the body or from the floor alike.
    let max = (set.call.kind == SetKind::Test).then(|| say.max_try().to_owned());
    guard.into_iter().chain(max).collect()
}
