//! Looking exercises up.

use super::table::BUILTIN;
use super::{Exercise, Tongue};

/// Characters of a name that are compared: none of the names is longer.
pub(super) const LONGEST: usize = 48;
/// Likeness, in ten-thousandths, from which a name is worth offering among several.
const ALIKE_A_LITTLE: usize = 5_000;

/// The built-in exercises and a plan's own; where both have a slug, the plan's own holds.
#[derive(Debug, Clone, Default)]
pub struct Catalogue {
    own: Vec<Exercise>,
    tongue: Tongue,
}

impl Catalogue {
    /// The built-in exercises. Costs nothing.
    pub const fn builtin() -> Self {
        Self { own: Vec::new(), tongue: Tongue::English }
    }

    /// The built-in exercises with these before them.
    #[must_use]
    pub fn with_own(mut self, exercises: impl IntoIterator<Item = Exercise>) -> Self {
        self.own.extend(exercises);
        self
    }

    /// The same, whose names are written in this language; those of every language are read.
    #[must_use]
    pub fn speaking(self, tongue: Tongue) -> Self {
        Self { tongue, ..self }
    }

    /// The language that names are written in.
    pub const fn tongue(&self) -> Tongue {
        self.tongue
    }

    /// The exercises that were added.
    pub fn own(&self) -> &[Exercise] {
        &self.own
    }

    /// All exercises, the plan's own first; a built-in one whose slug was taken is left out.
    pub fn iter(&self) -> impl Iterator<Item = &Exercise> {
        let built_in =
            BUILTIN.iter().filter(|exercise| !self.own.iter().any(|own| own.slug == exercise.slug));
        self.own.iter().chain(built_in)
    }

    /// The exercise with exactly this slug, as histories name it.
    pub fn get(&self, slug: &str) -> Option<&Exercise> {
        self.own.iter().chain(BUILTIN).find(|exercise| exercise.slug == slug)
    }

    /// The exercise a person means: by slug, name or another usual name, in any language. Case,
    /// spaces, hyphens, underscores and apostrophes do not matter, and `ue` and `ss` are read as `ü`
    /// and `ß`.
    pub fn find(&self, text: &str) -> Option<&Exercise> {
        let wanted = key(text);
        self.iter().find(|one| one.names().any(|name| key_chars(name).eq(wanted.chars())))
    }

    /// What a file calls an exercise: its name in the language of this catalogue, or its slug where
    /// another exercise goes by that name.
    pub fn written<'e>(&self, exercise: &'e Exercise) -> &'e str {
        let name = exercise.name_in(self.tongue);
        let means = self.find(name).is_some_and(|found| found.slug == exercise.slug);
        if means { name } else { &exercise.slug }
    }

    /// The exercise whose name is most like a misspelt one, when any is near.
    pub fn nearest(&self, text: &str) -> Option<&Exercise> {
        most_alike(
            text,
            self.iter().flat_map(|exercise| exercise.names().map(move |n| (n, exercise))),
        )
    }

    /// Up to `most` exercises that a misspelt or shortened name may mean: those with all its words
    /// in their name, then those whose name is most like it.
    pub fn alike(&self, text: &str, most: usize) -> Vec<&Exercise> {
        let wanted: String = plain_chars(text).take(LONGEST).collect();
        let words: Vec<&str> = wanted.split('-').filter(|word| word.len() > 2).collect();
        let mut found: Vec<(bool, usize, &Exercise)> = self
            .iter()
            .filter_map(|exercise| {
                let each = exercise.names().map(|name| {
                    let name = plain(name);
                    let within = !words.is_empty() && words.iter().all(|word| name.contains(word));
                    (within, likeness(&wanted, &name))
                });
                let (within, alike) = each.max()?;
                (within || alike >= ALIKE_A_LITTLE).then_some((within, alike, exercise))
            })
            .collect();
        // Stable: of equals the catalogue's order stands.
        found.sort_by_key(|(within, alike, _)| std::cmp::Reverse((*within, *alike)));
        found.into_iter().take(most).map(|(_, _, exercise)| exercise).collect()
    }
}

/// Whether two names are the same as names are compared.
pub(super) fn same(one: &str, other: &str) -> bool {
    key_chars(one).eq(key_chars(other))
}

/// What names are compared by: two with the same one are the same name.
pub(crate) fn key(text: &str) -> String {
    key_chars(text).collect()
}

fn key_chars(text: &str) -> impl Iterator<Item = char> {
    plain_chars(text).filter(|c| *c != '-')
}

/// A text in small letters, with a hyphen between its words and none that German writes in two ways.
pub(crate) fn plain(text: &str) -> String {
    plain_chars(text).collect()
}

fn plain_chars(text: &str) -> impl Iterator<Item = char> {
    let spelt = |c| match c {
        ' ' | '_' | '-' => ['-', NOTHING],
        '\'' | '’' => [NOTHING; 2],
        'ä' => ['a', 'e'],
        'ö' => ['o', 'e'],
        'ü' => ['u', 'e'],
        'ß' => ['s', 's'],
        // The dots alone, after their letter: some systems write file names and texts so.
        '\u{308}' => ['e', NOTHING],
        other => [other, NOTHING],
    };
    let small = text.trim().chars().flat_map(char::to_lowercase);
    small.flat_map(spelt).filter(|c| *c != NOTHING)
}

/// Stands for no character; no name that is read has it.
const NOTHING: char = '\0';

/// How like two plain names are, in ten-thousandths, so that it compares without a float.
fn likeness(wanted: &str, name: &str) -> usize {
    let name: String = name.chars().take(LONGEST).collect();
    let length = wanted.chars().count().max(name.chars().count()).max(1);
    let off = strsim::osa_distance(wanted, &name);
    10_000 - 10_000 * off.min(length) / length
}

/// The candidate whose name is most like the text, when at least six characters in ten agree.
/// Long texts are cut: none of the names is longer, and a file may hold anything.
pub(super) fn most_alike<'a, T>(
    text: &str,
    candidates: impl Iterator<Item = (&'a str, T)>,
) -> Option<T> {
    let wanted: String = plain_chars(text).take(LONGEST).collect();
    candidates
        .map(|(name, value)| (likeness(&wanted, &plain(name)), value))
        .filter(|(likeness, _)| *likeness >= 6_000)
        // The first of the best: `max_by_key` would take the last.
        .fold(None, |best: Option<(usize, T)>, next| match best {
            Some(best) if best.0 >= next.0 => Some(best),
            _ => Some(next),
        })
        .map(|(_, value)| value)
}

#[cfg(test)]
mod tests {
    use super::super::Names;
    use super::*;

    #[test]
    fn finds_what_a_person_means() {
        let catalogue = Catalogue::builtin();
        for text in ["front-squat", "Front squat", " FRONT SQUAT ", "front_squat"] {
            assert_eq!(catalogue.find(text).unwrap().slug, "front-squat", "{text}");
        }
        assert_eq!(catalogue.find("press").unwrap().slug, "overhead-press");
        assert!(catalogue.find("frnt squat").is_none());
        assert!(catalogue.find("").is_none());
    }

    #[test]
    fn finds_what_a_person_means_in_german() {
        let catalogue = Catalogue::builtin();
        for (text, slug) in [
            ("Kniebeuge", "back-squat"),
            ("Kreuzheben", "deadlift"),
            ("Bankdrücken", "bench-press"),
            ("BANKDRÜCKEN", "bench-press"),
            ("Bankdruecken", "bench-press"),
            ("Bankdru\u{308}cken", "bench-press"),
            ("Schulterdrücken", "overhead-press"),
            ("überkopfdrücken", "overhead-press"),
            ("Rudern vorgebeugt", "barbell-row"),
            ("Klimmzüge", "pull-up"),
            ("Liegestuetz", "push-up"),
            ("Ausfallschritt", "walking-lunge"),
            ("Farmers Walk", "farmer-carry"),
            ("Farmer’s Walk", "farmer-carry"),
            ("Koffertragen", "farmer-carry"),
            ("Unterarmstütz", "plank"),
            ("Ausstoßen", "jerk"),
            ("AUSSTOSSEN", "jerk"),
            ("AUSSTOẞEN", "jerk"),
            ("Kurzhantelbankdrücken", "dumbbell-bench-press"),
            ("Kurzhantel Bankdrücken", "dumbbell-bench-press"),
        ] {
            assert_eq!(catalogue.find(text).map(|one| one.slug.as_ref()), Some(slug), "{text}");
        }
        assert!(catalogue.find("Radfahren").is_none());
    }

    #[test]
    fn every_name_of_every_language_finds_its_exercise() {
        let catalogue = Catalogue::builtin();
        for exercise in catalogue.iter() {
            for name in exercise.names() {
                let two = name.replace('ä', "ae").replace('ö', "oe").replace('ü', "ue");
                let two = two.replace('Ü', "Ue").replace('ß', "ss").replace(' ', "-");
                for text in [name.to_owned(), name.to_uppercase(), two] {
                    let found = catalogue.find(&text).map(|found| &found.slug);
                    assert_eq!(found, Some(&exercise.slug), "{text}");
                }
            }
        }
    }

    #[test]
    fn suggests_the_nearest() {
        let catalogue = Catalogue::builtin();
        for (text, slug) in [
            ("frnt squat", "front-squat"),
            ("romanian dedlift", "romanian-deadlift"),
            ("bench pres", "bench-press"),
            ("pull upp", "pull-up"),
            ("Bankdrüken", "bench-press"),
            ("Bankdrucken", "bench-press"),
            ("Kniebeuche", "back-squat"),
        ] {
            assert_eq!(catalogue.nearest(text).unwrap().slug, slug, "{text}");
        }
        assert!(catalogue.nearest("bicycle to work").is_none());
        assert!(catalogue.nearest(&"x".repeat(100_000)).is_none());
    }

    #[test]
    fn offers_several_that_may_be_meant() {
        let catalogue = Catalogue::builtin();
        let slugs = |text| -> Vec<String> {
            catalogue.alike(text, 4).into_iter().map(|found| found.slug.to_string()).collect()
        };
        assert_eq!(slugs("bakc squat")[0], "back-squat");
        assert!(slugs("squat").iter().all(|slug| slug.contains("squat")), "{:?}", slugs("squat"));
        assert_eq!(slugs("squat").len(), 4);
        assert!(slugs("bicycle to work").is_empty() && slugs("").is_empty());
        assert!(slugs(&"x".repeat(100_000)).is_empty());
    }

    #[test]
    fn a_plans_own_exercise_stands_in_front() {
        let mut own = Catalogue::builtin().get("front-squat").unwrap().clone();
        own.name = "Front squat, heels raised".into();
        let count = Catalogue::builtin().iter().count();
        let catalogue = Catalogue::builtin().with_own([own.clone()]);
        assert_eq!(catalogue.get("front-squat"), Some(&own));
        assert_eq!(catalogue.find("front squat, heels raised"), Some(&own));
        assert_eq!(catalogue.iter().count(), count);
        assert_eq!(catalogue.own().len(), 1);
        // One of the lifter's own has the one name it was given.
        own.german = Names::NONE;
        for tongue in [Tongue::English, Tongue::German] {
            assert_eq!(own.name_in(tongue), "Front squat, heels raised");
        }
    }

    #[test]
    fn an_exercise_survives_serialisation() {
        for exercise in Catalogue::builtin().iter() {
            let text = serde_json::to_string(exercise).unwrap();
            assert_eq!(&serde_json::from_str::<Exercise>(&text).unwrap(), exercise);
        }
    }
}
