//! A plan made or mended by hand.

use barwright_domain::desk::Draft;
use barwright_domain::plan::by_hand;
use barwright_domain::text::edit::{Written, remove, shift};

use super::not_edited;
use crate::contract::Edit;
use crate::facts::{Held, PlanFrom};
use crate::fault::{Fault, Refused};

/// Of what a place to begin from says.
pub(super) fn begun(held: &Held, place: &str) -> Result<(String, String), Fault> {
    let (plans, hand) = (held.locale.words().plan_form(), held.locale.words().by_hand());
    let on = || held.desk.plan.as_ref().ok_or(Refused::NothingToGoBy);
    Ok(match PlanFrom::named(place).ok_or(Refused::NotHere)? {
        PlanFrom::Nothing => {
            let text = by_hand::empty(plans.new_plan(), plans.new_session(0));
            (String::new(), text)
        }
        PlanFrom::Own => (on()?.name.clone(), on()?.text.clone()),
        PlanFrom::Copy => {
            let copy = hand.copy_of(&on()?.name);
            (String::new(), by_hand::named(&on()?.text, &copy).map_err(not_edited)?)
        }
    })
}

pub(super) fn changed(
    held: &Held,
    draft: &Draft,
    place: &str,
    edit: &Edit,
) -> Result<String, Fault> {
    let text = draft.text.as_str();
    let changed = match edit {
        Edit::Put { text: said } => match place.strip_prefix("kind:") {
            Some(week) => {
                let week = week.parse().map_err(|_| Refused::NotHere)?;
                by_hand::week_kind(text, week, said)
            }
            None => by_hand::write(text, place, said),
        },
        Edit::Remove => remove(text, place),
        Edit::Move { by } => shift(text, place, *by),
        Edit::Add { what } => match place.rsplit_once('.') {
            None if place == "session" => {
                let count = Written::of(text).map_or(0, |written| written.count("session"));
                let name = held.locale.words().plan_form().new_session(count);
                match what.strip_prefix("session.").map(str::parse) {
                    Some(Ok(of)) => by_hand::session_again(text, of, name),
                    _ => by_hand::one_session(text, name),
                }
            }
            Some((session, "exercise")) => {
                let found = held.catalogue.get(what).ok_or(Refused::NotHere)?;
                by_hand::one_exercise(text, session, found, &held.catalogue)
            }
            Some((exercise, "set")) => by_hand::one_row(text, exercise),
            _ => return Err(Refused::NotHere.into()),
        },
        // It is taken up by adopting it, once it was seen.
        Edit::Open | Edit::Undo | Edit::Redo | Edit::Drop | Edit::TakeUp => {
            return Err(Refused::NotHere.into());
        }
    };
    changed.map_err(not_edited)
}
