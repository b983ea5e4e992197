//! An exercise of one's own, made or mended by hand.

use barwright_domain::desk::{DeskEvent, Draft, MOST_EXERCISES};
use barwright_domain::plan::{OWN_EXERCISE, read_exercise};
use barwright_domain::session::Refusal;
use barwright_domain::text::edit::{Put, add, put, remove};
use barwright_domain::text::typed;

use super::not_edited;
use crate::contract::Edit;
use crate::facts::Held;
use crate::fault::{Fault, Refused};

/// Like another one (`like:back-squat`), or one of the lifter's own put right (`own:…`).
pub(super) fn begun(held: &Held, place: &str) -> Result<(String, String), Fault> {
    let (how, slug) = place.split_once(':').ok_or(Refused::NotHere)?;
    if how == "own" {
        let own = held.desk.exercises.iter().find(|own| own.slug == slug);
        let own = own.ok_or(Refused::NotHere)?;
        return Ok((own.slug.clone(), own.text.clone()));
    }
    let like = held.known.get(slug).filter(|_| how == "like").ok_or(Refused::NotHere)?;
    let words = held.locale.words();
    let name = words.exercises().own_name(&words.words().exercise(like));
    let numbered = (2..1_000).map(|nth| format!("{name} {nth}"));
    let free = |name: &String| held.catalogue.find(name).is_none();
    let name = std::iter::once(name.clone()).chain(numbered).find(free).unwrap_or(name);
    let text = put("", "name", &name.into()).map_err(not_edited)?;
    let text = put(&text, "like", &held.known.written(like).into()).map_err(not_edited)?;
    Ok((String::new(), text))
}

pub(super) fn changed(draft: &Draft, place: &str, edit: &Edit) -> Result<String, Fault> {
    let text = draft.text.as_str();
    let changed = match edit {
        Edit::Put { text: said } if said.trim().is_empty() => remove(text, place),
        Edit::Put { text: said } => {
            let value = typed(OWN_EXERCISE, place, said).ok_or(Refused::NotHere)?;
            put(text, place, &value)
        }
        Edit::Remove => remove(text, place),
        _ => return Err(Refused::NotHere.into()),
    };
    changed.map_err(not_edited)
}

pub(super) fn taken_up(held: &Held, draft: &Draft) -> Result<Vec<DeskEvent>, Fault> {
    let read = |text: &str| {
        read_exercise(text, &held.known).map_err(|faults| Refused::Faults(faults.len()))
    };
    let exercise = read(&draft.text)?;
    let before = held.known.own().iter().find(|own| own.slug == draft.from);
    let same = |slug: &str| slug == draft.from;
    // A name means one exercise: its history is kept under it.
    for name in exercise.names() {
        if held.catalogue.find(name).is_some_and(|other| !same(&other.slug)) {
            return Err(Refused::ExerciseThere(name.to_owned()).into());
        }
    }
    if before.is_none() && held.desk.exercises.len() >= MOST_EXERCISES {
        return Err(Refused::BySession(Refusal::TooMany, held.load_unit()).into());
    }
    let (slug, mut text) = match before {
        Some(before) => (before.slug.to_string(), draft.text.clone()),
        None => (exercise.slug.to_string(), draft.text.clone()),
    };
    // Plans that name it by what it was called still mean it.
    if let Some(before) = before.filter(|before| held.catalogue.find(&before.name).is_some())
        && exercise.names().all(|name| name != before.name)
    {
        let was = Put::Text(before.name.to_string());
        text = add(&text, "also", &was).map_err(not_edited)?;
        read(&text)?;
    }
    Ok(vec![DeskEvent::ExerciseKept { slug, text }])
}
