//! Names that the log keeps, by their key: shown as they are called now.

use barwright_domain::equipment;
use barwright_domain::session::{EntryRun, Run};

use crate::facts::Held;
use crate::phrase::Words;

/// An exercise by its slug; one that is known no more, as an old plan's own, by the name kept.
pub(crate) fn exercise(held: &Held, slug: &str, kept: &str, words: Words) -> String {
    match held.catalogue.get(slug) {
        Some(known) => words.words().exercise(known),
        None => kept.to_owned(),
    }
}

/// The exercise of an entry.
pub(crate) fn entry(held: &Held, entry: &EntryRun, words: Words) -> String {
    exercise(held, &entry.entry.exercise, &entry.entry.name, words)
}

/// A gym: the built-in ones by their key, which is their name, the lifter's own as they are called.
pub(crate) fn gym(held: &Held, name: &str, words: Words) -> String {
    let own = held.desk.gyms.iter().any(|gym| gym.name == name);
    if !own && equipment::builtin().iter().any(|gym| gym.name == name) {
        words.gym().built_in(name)
    } else {
        name.to_owned()
    }
}

/// The next set in a few words; empty when nothing is left.
pub(crate) fn next_in_short(held: &Held, run: &Run, words: Words) -> String {
    words.floor().next_in_short(run, |of| entry(held, of, words))
}
