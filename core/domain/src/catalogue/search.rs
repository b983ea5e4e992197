//! Exercises looked for in words: names, muscles, the movement, what they need.

use super::Exercise;
use super::find::{Catalogue, plain};

/// Where a word was found, the best first.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
enum Found {
    Name,
    Other,
}

impl Catalogue {
    /// Every exercise that all the words are of: each in a name of it, its movement, a muscle it
    /// trains, what it is loaded with or needs. Those named so come first; where none is, those whose
    /// name is most like it. No words find all.
    pub fn search(&self, text: &str) -> Vec<&Exercise> {
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
            return self.alike(&text, MOST_ALIKE);
        }
        // Stable: of equals the catalogue's order stands.
        found.sort_by_key(|(found, _)| *found);
        found.into_iter().map(|(_, exercise)| exercise).collect()
    }
}

/// The most that are offered where no name has the words.
const MOST_ALIKE: usize = 8;

impl Exercise {
    fn says(&self, word: &str) -> Option<Found> {
        let begins = |text: &str| plain(text).split('-').any(|part| part.starts_with(word));
        if self.names().any(begins) {
            return Some(Found::Name);
        }
        let muscles = self.direct.iter().chain(self.indirect.iter()).map(|one| one.slug());
        let mut others =
            muscles.chain([self.movement.slug(), self.implement.as_ref()]).chain(self.needs.iter());
        others.any(begins).then_some(Found::Other)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn slugs(text: &str) -> Vec<String> {
        Catalogue::builtin().search(text).iter().map(|found| found.slug.to_string()).collect()
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
    fn a_near_miss_finds_the_likely_ones_and_nothing_finds_all() {
        assert_eq!(slugs("bakc squat")[0], "back-squat");
        assert_eq!(slugs("").len(), Catalogue::builtin().iter().count());
        assert!(slugs("bicycle to work").is_empty());
    }
}
