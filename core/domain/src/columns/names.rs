//! Names of exercises and words of sets in a table: which are known, and what is near the others.

use std::collections::BTreeMap;

use super::model::Field;
use super::{bounds, cell};
use crate::catalogue::find::key;
use crate::catalogue::{Catalogue, Exercise};
use crate::quantity::Numerals;
use crate::shown::{excerpt, plain};

/// Different names that are counted at the most.
const COUNTED: usize = 5_000;
/// Words that are told of at the most, where none is known.
const TOLD: usize = 12;

/// Names that are known and those that are not, each with how many rows have it.
pub(super) type Names<'a> =
    (Vec<(String, &'a Exercise, usize)>, Vec<(String, Vec<&'a Exercise>, usize)>);

/// The names of exercises, those of most rows first.
pub(super) fn exercises<'a>(cells: &[&str], catalogue: &'a Catalogue) -> Names<'a> {
    let mut counts: BTreeMap<String, (&str, usize)> = BTreeMap::new();
    for cell in cells {
        let short = cell.chars().nth(bounds::NAME).is_none();
        let name = key(&plain(cell));
        if short && (counts.contains_key(&name) || counts.len() < COUNTED) {
            counts.entry(name).or_insert((cell, 0)).1 += 1;
        }
    }
    let mut counts: Vec<(&str, usize)> = counts.into_values().collect();
    counts.sort_by_key(|(_, count)| std::cmp::Reverse(*count));
    let (mut known, mut unknown) = (Vec::new(), Vec::new());
    for (cell, count) in counts {
        let name = plain(cell);
        match catalogue.find(&name) {
            Some(exercise) => known.push((name, exercise, count)),
            None => {
                // Looking for what is near costs: no more than can be told.
                let look = unknown.len() < bounds::TOLD;
                let near = if look { near(&name, catalogue) } else { Vec::new() };
                unknown.push((name, near, count));
            }
        }
    }
    (known, unknown)
}

/// Exercises that all the words are of, or else those whose name is like it.
fn near<'a>(name: &str, catalogue: &'a Catalogue) -> Vec<&'a Exercise> {
    let words: String = name.chars().map(|c| if c.is_alphanumeric() { c } else { ' ' }).collect();
    let searched = catalogue.search(&words);
    let mut found =
        if searched.near { catalogue.alike(&words, bounds::SHOWN) } else { searched.exercises };
    found.truncate(bounds::SHOWN);
    found
}

/// Words of a column that mean nothing of a set as they stand.
pub(super) fn unknown_words(field: Field, cells: &[&str]) -> Vec<String> {
    let known = |cell: &str| match field {
        Field::Side => cell::side(cell, &[], &[]).is_some(),
        Field::Set if cell::count(cell, Numerals::Point).is_some() => true,
        _ => cell::kind(cell, &[], &[]).is_some(),
    };
    let mut words: Vec<String> = Vec::new();
    for cell in cells.iter().filter(|cell| !known(cell)) {
        let word = excerpt(cell);
        if words.len() < TOLD && !words.contains(&word) {
            words.push(word);
        }
    }
    words
}
