//! A gym made or mended by hand.

use barwright_domain::desk::{DeskEvent, Draft, MOST_GYMS};
use barwright_domain::equipment::{self, Equipment, by_hand};
use barwright_domain::quantity::MassUnit;
use barwright_domain::session::Refusal;
use barwright_domain::text::edit::{Written, put, shift};

use super::not_edited;
use crate::contract::Edit;
use crate::facts::form::{BY, MORE, SET, file_word, written_unit};
use crate::facts::{GymFrom, Held};
use crate::fault::{Fault, Refused};

/// Of what a place to begin from says.
pub(super) fn begun(held: &Held, place: &str) -> Result<(String, String), Fault> {
    let words = held.locale.words().by_hand();
    let free = |name: String| held.free_gym_name(&name);
    Ok(match GymFrom::named(place).ok_or(Refused::NotHere)? {
        GymFrom::Nothing(unit) => (String::new(), by_hand::bare(&free(words.new_gym()), unit)),
        GymFrom::Usual(unit) => (String::new(), by_hand::of_builtin(&free(words.new_gym()), unit)),
        GymFrom::Copy(name) => {
            let copy = free(words.copy_of(&name));
            let text = file(held, &name).ok_or(Refused::NotHere)?;
            (String::new(), put(&text, "name", &copy.into()).map_err(not_edited)?)
        }
        GymFrom::Own(name) => {
            let text = file(held, &name).ok_or(Refused::NotHere)?;
            (name, text)
        }
    })
}

/// The file of a gym by its name.
fn file(held: &Held, name: &str) -> Option<String> {
    let built_in = equipment::builtin();
    let gym = held.desk.gyms.iter().chain(built_in).find(|gym| gym.name == name)?;
    Some(held.gym_file(gym))
}

pub(super) fn changed(
    held: &Held,
    draft: &Draft,
    place: &str,
    edit: &Edit,
) -> Result<String, Fault> {
    let text = draft.text.as_str();
    let unit = unit_of(held, text);
    let more = |list: &str, what: &str| {
        let name = free_name(text, list, held.locale.words().by_hand().usual_name(what));
        by_hand::one_more(text, list, what, &name, unit)
    };
    let changed = match edit {
        Edit::Put { text: said } => {
            let said = as_written(held, place, said, unit);
            match (place.rsplit_once('.'), said.as_str()) {
                // One more, typed.
                (Some((list, MORE)), said) if said.is_empty() || list.contains('.') => {
                    by_hand::one_load_more(text, list, said)
                }
                (Some((list, MORE)), said) => more(list, said),
                (Some((stack, BY)), by) => by_hand::by_pins(text, stack, by == "pins", unit),
                _ => by_hand::write(text, place, &said),
            }
        }
        Edit::Remove => by_hand::take_away(text, place),
        Edit::Move { by } => shift(text, place, *by),
        Edit::Add { what } if what == SET => by_hand::a_set(text, unit),
        Edit::Add { what } => more(place, what),
        Edit::Open | Edit::Undo | Edit::Redo | Edit::Drop | Edit::TakeUp => {
            return Err(Refused::NotHere.into());
        }
    };
    changed.map_err(not_edited)
}

/// What was typed as a file writes it: a mass with its unit and a point, a length in millimetres, a
/// kind and a colour in the file's own word. What
/// can't be read stays as it was typed, and the reader says what is wrong with it.
fn as_written(held: &Held, place: &str, said: &str, unit: MassUnit) -> String {
    let of_loads = [".loads.", ".add_ons.", "plate.+"].iter().any(|of| place.contains(of));
    let key = place.rsplit('.').next().unwrap_or(place);
    let said = said.trim();
    let one = |said: &str| match held.locale.typed_mass(said, unit) {
        Ok((mass, unit)) => by_hand::mass_text(mass, unit),
        Err(_) => said.to_owned(),
    };
    match key {
        _ if said.is_empty() => String::new(),
        "mass" | "weighs" | "collars" | "from" | "to" | "step" | "start" => one(said),
        "sleeve" | "thickness" | "diameter" if said.chars().all(|c| c.is_ascii_digit()) => {
            format!("{said} mm")
        }
        _ if of_loads => one(said),
        MORE => file_word("kind", said, held.locale.words()),
        "kind" | "colour" => file_word(key, said, held.locale.words()),
        _ => said.to_owned(),
    }
}

/// The unit that a draft is written in.
fn unit_of(held: &Held, text: &str) -> MassUnit {
    written_unit(text).unwrap_or(held.locale.unit)
}

/// A name that nothing else in the list has.
fn free_name(text: &str, list: &str, name: String) -> String {
    let Some(written) = Written::of(text) else { return name };
    let taken = |name: &str| {
        (0..written.count(list))
            .any(|at| written.said(&format!("{list}.{at}.name")).as_deref() == Some(name))
    };
    if !taken(&name) {
        return name;
    }
    let numbered = (2..100).map(|nth| format!("{name} {nth}")).find(|name| !taken(name));
    numbered.unwrap_or(name)
}

pub(super) fn taken_up(held: &Held, draft: &Draft) -> Result<Vec<DeskEvent>, Fault> {
    let text = draft.text.clone();
    let equipment = Equipment::read(&text).map_err(|faults| Refused::Faults(faults.len()))?;
    let (own, name) = (&held.desk.gyms, equipment.name.clone());
    let known = |name: &str| own.iter().any(|gym| gym.name == name);
    if name != draft.from && known(&name) {
        return Err(Refused::GymThere(name).into());
    }
    if own.len() >= MOST_GYMS && !known(&draft.from) {
        return Err(Refused::BySession(Refusal::TooMany, held.load_unit()).into());
    }
    let mut events = vec![DeskEvent::GymKept { equipment, text }];
    // Under another name it is the same gym, not one more.
    if known(&draft.from) && draft.from != name {
        events.push(DeskEvent::GymGone { name: draft.from.clone() });
    }
    events.push(DeskEvent::GymChosen { name });
    Ok(events)
}
