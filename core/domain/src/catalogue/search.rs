//! Exercises looked for in words: names, muscles, the movement, what they need.

use super::find::{Catalogue, plain};
use super::{Exercise, german};

/// Where a word was found, the best first.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
enum Found {
    /// A word of a name begins with it.
    Name,
    /// It stands within one, as in a German word made of two.
    Within,
    Other,
}

/// What was found, the likeliest first.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Searched<'a> {
    /// The exercises.
    pub exercises: Vec<&'a Exercise>,
    /// None has all the words: those found are only like them.
    pub near: bool,
}

impl Catalogue {
    /// Every exercise that all the words are of: each in a name of it, its movement, a muscle it
    /// trains, what it is loaded with or needs, in any language. Those named so come first; where
    /// none is, those whose name is most like it. No words find all.
    pub fn search(&self, text: &str) -> Searched<'_> {
        let text = plain(text);
        let words: Vec<&str> = text.split('-').filter(|word| !word.is_empty()).collect();
        let mut found: Vec<(Found, &Exercise)> = self
            .iter()
            .filter_map(|exercise| {
                let each = words.iter().map(|word| exercise.says(word));
                let all: Option<Vec<Found>> = each.collect();
                Some((all?.into_iter().max().unwrap_or(Found::Name), exercise))
            })
            .collect();
        if found.is_empty() {
            return Searched { exercises: self.alike(&text, MOST_ALIKE), near: true };
        }
        // Stable: of equals the catalogue's order stands.
        found.sort_by_key(|(found, _)| *found);
        let exercises = found.into_iter().map(|(_, exercise)| exercise).collect();
        Searched { exercises, near: false }
    }
}

/// The most that are offered where no name has the words.
const MOST_ALIKE: usize = 8;
/// Characters that a word has at least to be looked for within others.
const LOOKED_WITHIN: usize = 4;

impl Exercise {
    fn says(&self, word: &str) -> Option<Found> {
        let begins = |text: &str| plain(text).split('-').any(|part| part.starts_with(word));
        if self.names().any(begins) {
            return Some(Found::Name);
        }
        if word.chars().count() >= LOOKED_WITHIN
            && self.names().any(|name| plain(name).contains(word))
        {
            return Some(Found::Within);
        }
        let muscles = self.direct.iter().chain(self.indirect.iter());
        let muscles = muscles.flat_map(|one| [one.slug(), german::muscle(*one)]);
        let movement = [self.movement.slug(), german::movement(self.movement)];
        let things = std::iter::once(self.implement.as_ref()).chain(self.needs.iter());
        let things = things.flat_map(|one| [one, german::thing(one)]);
        muscles.chain(movement).chain(things).any(begins).then_some(Found::Other)
    }
}

#[cfg(test)]
mod tests {
    use super::super::{IMPLEMENTS, SUPPORTS};
    use super::*;

    fn slugs(text: &str) -> Vec<String> {
        let catalogue = Catalogue::builtin();
        catalogue.search(text).exercises.iter().map(|found| found.slug.to_string()).collect()
    }

    #[test]
    fn by_name_muscle_movement_and_equipment() {
        assert_eq!(slugs("front squat")[0], "front-squat");
        let hamstrings = slugs("hamstrings dumbbell");
        assert!(!hamstrings.is_empty());
        for slug in &hamstrings {
            let found = Catalogue::builtin().get(slug).unwrap().clone();
            assert_eq!(found.implement, "dumbbell", "{slug}");
        }
        assert!(slugs("horizontal push").contains(&"bench-press".to_owned()));
        assert!(slugs("squ").iter().take(3).all(|slug| slug.contains("squat")));
        // A name goes before what else has the word.
        assert!(slugs("bench")[0].contains("bench"));
    }

    #[test]
    fn in_german_as_well() {
        assert_eq!(slugs("Kniebeuge")[0], "back-squat");
        // A word within a longer one, after those that begin with it.
        assert!(slugs("kniebeuge").contains(&"front-squat".to_owned()));
        assert_eq!(slugs("Rudern Langhantel")[0], "barbell-row");
        for (text, english) in [
            ("Trizeps Kurzhantel", "triceps dumbbell"),
            ("waden", "calves"),
            ("gesaess", "glutes"),
            ("Gesäß Kabelzug", "glutes cable"),
        ] {
            let (german, mut english) = (slugs(text), slugs(english));
            english.retain(|slug| !german.contains(slug));
            assert!(!german.is_empty() && english.is_empty(), "{text}: without {english:?}");
        }
        // Both languages in one breath.
        assert!(slugs("brust dumbbell").contains(&"dumbbell-bench-press".to_owned()));
    }

    #[test]
    fn what_is_loaded_or_needed_has_a_german_word_or_is_called_the_same() {
        let same = ["kettlebell", "landmine", "rack"];
        for slug in IMPLEMENTS.iter().chain(SUPPORTS) {
            assert_eq!(german::thing(slug).is_empty(), same.contains(slug), "{slug}");
        }
    }

    #[test]
    fn a_near_miss_finds_the_likely_ones_and_nothing_finds_all() {
        assert_eq!(slugs("bakc squat")[0], "back-squat");
        assert_eq!(slugs("Bankdrüken")[0], "bench-press");
        assert!(Catalogue::builtin().search("bakc squat").near);
        assert!(!Catalogue::builtin().search("squat").near);
        assert_eq!(slugs("").len(), Catalogue::builtin().iter().count());
        assert!(slugs("bicycle to work").is_empty());
    }
}
