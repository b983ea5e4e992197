//! A gym that is being made.

use barwright_domain::desk::Draft;
use barwright_domain::equipment::{Equipment, bounds};
use barwright_domain::text::edit::Written;

use super::{Form, aloud, beside, form_row};
use crate::contract::{Edit, FormFile, FormOf, FormRow, FormScreen};
use crate::facts::Held;
use crate::phrase::Words;

/// The gym, or the part of it that is open.
pub(in crate::screens) fn screen(held: &Held, draft: &Draft, at: &str, words: Words) -> FormScreen {
    let _ = held;
    let form = Form::of_draft(FormOf::Gym, draft, at, words);
    let say = words.by_hand();
    let read = Equipment::read(&draft.text);
    let faults = read.as_ref().err().map(Vec::as_slice).unwrap_or_default();
    let written = Written::of(&draft.text);
    let name = written.as_ref().and_then(|gym| gym.said("name")).unwrap_or_default();
    let mut rows = written.map(|gym| rows(&form, &gym)).unwrap_or_default();
    let notes = beside(&mut rows, &draft.text, faults, words);
    let (title, subtitle) = (say.gym(&name), say.stands(faults.len()));
    FormScreen {
        aloud: aloud(&title, &subtitle, &rows, words),
        title,
        subtitle,
        rows,
        notes,
        chart: None,
        file: Some(FormFile { name: file_name(&name), text: draft.text.clone() }),
        keys: form.keys(draft, faults.is_empty()),
    }
}

/// A file's name out of what something is called.
fn file_name(name: &str) -> String {
    let plain: String = name
        .chars()
        .map(|one| if one.is_alphanumeric() { one } else { '-' })
        .flat_map(char::to_lowercase)
        .collect();
    let parts: Vec<&str> = plain.split('-').filter(|part| !part.is_empty()).collect();
    format!("{}.toml", if parts.is_empty() { "gym".to_owned() } else { parts.join("-") })
}

fn rows(form: &Form<'_>, gym: &Written) -> Vec<FormRow> {
    let say = form.words.by_hand();
    let name = gym.said("name").unwrap_or_default();
    let field = form.field("name", say.gym_name(), name.clone(), false);
    let mut rows = vec![form_row("name", 1, say.gym_name().0).value(name).field(field)];
    rows.push(form_row("plates", 0, form.words.gym().plates()));
    for at in 0..gym.count("plate") {
        let id = format!("plate.{at}");
        let place = format!("{id}.pairs");
        let mass = gym.said(&format!("{id}.mass")).unwrap_or_default();
        let said = gym.said(&place).unwrap_or_default();
        let pairs: Option<u32> = said.parse().ok();
        let down = pairs.and_then(|pairs| pairs.checked_sub(1)).map(|pairs| pairs.to_string());
        let up = pairs.unwrap_or(0).saturating_add(1);
        let up = (up <= u32::from(bounds::PAIRS)).then(|| up.to_string());
        let remove = form.edits("remove", say.remove(), &id, Edit::Remove);
        rows.push(
            form_row(id, 1, mass.clone())
                .value(pairs.map_or_else(|| said.clone(), |pairs| say.pairs(pairs)))
                .steps(form.steps(&place, &mass, down, up))
                .field(form.field(&place, say.pairs_field(&mass), said, true))
                .keys(vec![remove]),
        );
    }
    rows
}
