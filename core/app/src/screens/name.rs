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

/// Lines of what is set up. The log keeps what it is by its key in a plan file, so that it is said in the
/// language it is read in; a line that begins with none of them is the lifter's own.
pub(crate) fn set_up(lines: &[String], words: Words) -> Vec<String> {
    let said = |line: &String| {
        let (key, how) = line.split_once(' ')?;
        Some(format!("{} {how}", words.words().part_set_up(key)?))
    };
    lines.iter().map(|line| said(line).unwrap_or_else(|| line.clone())).collect()
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
