//! Names of what is written into a form: what it is of, the part that is open, the place, and the step
//! of the draft that it was shown at.

use barwright_domain::catalogue::{IMPLEMENTS, SUPPORTS};
use barwright_domain::desk::DraftOf;
use barwright_domain::equipment::Equipment;
use barwright_domain::quantity::MassUnit;
use barwright_domain::text::edit::Written;

use crate::contract::{FormOf, Look};
use crate::phrase::Words;

/// Every form, by the word that its fields have.
const NAMES: [(FormOf, &str); 9] = [
    (FormOf::Start, "start"),
    (FormOf::Gym, "gym"),
    (FormOf::Maxes, "maxes"),
    (FormOf::Exercises, "exercises"),
    (FormOf::Plan, "plan"),
    (FormOf::Session, "session"),
    (FormOf::Liked, "liked"),
    (FormOf::Changes, "changes"),
    (FormOf::Records, "records"),
];

/// Body mass, which counts as it is written.
pub(crate) const BODY_MASS: &str = "body-mass";
/// What is looked for, in place of a place.
pub(crate) const FIND: &str = "find";

/// One more of a list, in place of a place in it.
pub(crate) const MORE: &str = "+";
/// A set of plates, in place of one.
pub(crate) const SET: &str = "set";
/// How a stack is set: by `loads` or by `pins`.
pub(crate) const BY: &str = "by";

/// Kinds of bars, loads and supports beside those of the built-in exercises that a gym may have, and
/// colours that plates are drawn in: words of a file that a person may type in their language.
const KINDS: [&str; 6] = ["safety-bar", "swiss-bar", "sandbag", "vest", "slant-board", "belt"];
const COLOURS: [&str; 8] = ["red", "blue", "yellow", "green", "white", "black", "grey", "orange"];

/// What was typed at a key of a gym as its file says it, where it is said so in the lifter's
/// language: `barbell` for "Langhantel". Anything else stays as it was typed.
pub(crate) fn file_word(key: &str, typed: &str, words: Words) -> String {
    let typed = typed.trim();
    let known: Vec<&str> = match key {
        "kind" => IMPLEMENTS.iter().chain(SUPPORTS).chain(&KINDS).copied().collect(),
        "colour" => COLOURS.to_vec(),
        _ => Vec::new(),
    };
    let same = |said: &str| said.to_lowercase() == typed.to_lowercase();
    let is = |word: &&&str| {
        same(&words.gym_form().file_word(key, word))
            || (key == "kind" && same(&words.by_hand().usual_name(word)))
    };
    known.iter().find(is).map_or(typed, |word| *word).to_owned()
}

/// The unit that a gym's text is written in.
pub(crate) fn written_unit(text: &str) -> Option<MassUnit> {
    let said = Written::of(text).and_then(|written| written.said("unit"));
    let named = [MassUnit::Kilogram, MassUnit::Pound];
    let named = named.into_iter().find(|unit| said.as_deref() == Some(unit.symbol()));
    named.or_else(|| Equipment::read(text).ok().map(|gym| gym.unit))
}

/// A field of a form.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct FormField {
    /// What the form is of.
    pub(crate) of: FormOf,
    /// The part that is open.
    pub(crate) at: String,
    /// The place.
    pub(crate) place: String,
    /// The step of the draft; 0 where there is none.
    pub(crate) step: u64,
}

impl FormField {
    /// Its name.
    pub(crate) fn id(&self) -> String {
        let name = NAMES.iter().find(|(of, _)| *of == self.of).map_or("", |(_, name)| name);
        format!("form/{name}/{}/{}/{}", self.at, self.place, self.step)
    }

    /// The field of a name; none where it is no form's.
    pub(crate) fn named(id: &str) -> Option<Self> {
        let mut parts = id.strip_prefix("form/")?.split('/');
        let name = parts.next()?;
        let (of, _) = NAMES.iter().find(|(_, known)| *known == name)?;
        let (at, place, step) = (parts.next()?, parts.next()?, parts.next()?.parse().ok()?);
        let (at, place) = (at.to_owned(), place.to_owned());
        parts.next().is_none().then_some(Self { of: *of, at, place, step })
    }

    /// What is shown once it is written: of a search, and of what is only entered, that itself.
    pub(crate) fn leads_to(&self, text: &str) -> Look {
        let of = self.of;
        let (at, text) = match (self.shows_only(), self.place.as_str()) {
            (true, FIND) => (self.at.clone(), text.trim().to_owned()),
            (true, place) => (place.to_owned(), text.trim().to_owned()),
            (false, _) => (self.at.clone(), String::new()),
        };
        Look::Form { of, at, text }
    }

    /// Whether writing it records nothing: it is looked for, or shown before it is taken.
    pub(crate) fn shows_only(&self) -> bool {
        self.place == FIND || (draft_of(self.of).is_none() && self.place != BODY_MASS)
    }
}

/// The draft that a form is of; none where it is of what stands.
pub(crate) const fn draft_of(of: FormOf) -> Option<DraftOf> {
    match of {
        FormOf::Gym => Some(DraftOf::Gym),
        FormOf::Plan => Some(DraftOf::Plan),
        FormOf::Exercises => Some(DraftOf::Exercise),
        FormOf::Start
        | FormOf::Maxes
        | FormOf::Session
        | FormOf::Liked
        | FormOf::Changes
        | FormOf::Records => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_field_is_known_by_its_name() {
        for (of, _) in NAMES {
            let (at, place) = ("bar.0".to_owned(), "bar.0.mass".to_owned());
            let field = FormField { of, at, place, step: 12 };
            assert_eq!(FormField::named(&field.id()), Some(field));
        }
        for other in
            ["note@57", "form/gym/a/b", "form/none/a/b/1", "form/gym/a/b/c", "form/gym/a/b/1/2"]
        {
            assert_eq!(FormField::named(other), None, "{other}");
        }
    }
}
