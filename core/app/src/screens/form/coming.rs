//! A file of records that was opened: what it comes to before it is taken, and what came of it.

use super::super::key::{does, shows};
use super::{form_row, form_screen};
use crate::contract::{Edit, FormOf, FormScreen, Intent, Key, Look};
use crate::facts::{Arrived, Coming, Done, Found, Held, Taking};
use crate::phrase::Words;

/// What there is to say of it.
pub(in crate::screens) fn screen(held: &Held, coming: &Coming, words: Words) -> FormScreen {
    let say = words.records();
    let (said, mut keys) = match coming {
        Coming::Asked => (vec![say.from_file().1.to_owned()], Vec::new()),
        Coming::Closed => (vec![say.closed().to_owned()], Vec::new()),
        Coming::Open { file, found } => found_in(held, *file, found, words),
        Coming::Done { done, changes, came } => done_so(held, (*done, changes, *came), words),
    };
    let today = Look::Today { session: None, minutes: None };
    keys.push(shows("leave", words.by_hand().back(), today));
    let rows =
        (1..).zip(said).map(|(nth, said): (u32, _)| form_row(format!("said:{nth}"), 1, said));
    let form = form_screen(say.from_file().0, "", rows.collect(), keys, words);
    FormScreen { plan_file: matches!(coming, Coming::Asked | Coming::Closed), ..form }
}

fn found_in(held: &Held, file: u32, found: &Found, words: Words) -> (Vec<String>, Vec<Key>) {
    let say = words.records();
    // Invented records take none of one's own.
    let key = |id, said: (&str, &str), taking, new| {
        takes(id, said, taking, Edit::TakeUp).enabled(new > 0 && !held.demo)
    };
    match found {
        Found::GoesOn { same, new, sessions } => {
            let key = key("go-on", say.take_in(), Taking::GoOn(file), *new);
            (vec![say.imported(*same, *new, *sessions, false)], vec![key])
        }
        Found::Apart { why, new, same, open } => {
            let key = key("as-history", say.as_history(), Taking::AsHistory(file), *new);
            (vec![why.reason(words), say.joined(*new, *same, *open, false)], vec![key])
        }
        Found::Refused(refused) => (vec![refused.reason(words)], Vec::new()),
    }
}

fn done_so(
    held: &Held,
    (done, changes, came): (Done, &str, Option<Arrived>),
    words: Words,
) -> (Vec<String>, Vec<Key>) {
    let say = words.records();
    let mut keys = Vec::new();
    let said = match done {
        Done::GoneOn { same, new, sessions } => say.imported(same, new, sessions, true),
        Done::AsHistory { new, same, open, differing } => {
            if differing > 0 && !changes.is_empty() {
                let (of, text) = (FormOf::Changes, changes.to_owned());
                let look = Look::Form { of, at: String::new(), text };
                keys.push(shows("differing", say.differing(differing), look));
            }
            keys.extend(withdraws(held, came, words));
            say.joined(new, same, open, true)
        }
        Done::Withdrawn { sessions } => say.withdrawn(sessions),
    };
    (vec![said], keys)
}

/// The key that takes out of the history again what came into it last.
pub(super) fn withdraws(held: &Held, came: Option<Arrived>, words: Words) -> Option<Key> {
    let Arrived { tap, sessions } = came.filter(|_| !held.demo)?;
    let said = words.records().withdraw(sessions);
    Some(takes("withdraw", said, Taking::Withdraw(tap), Edit::Remove))
}

fn takes(id: &str, said: impl Into<super::super::key::Said>, taking: Taking, edit: Edit) -> Key {
    let (of, place) = (FormOf::Records, taking.place());
    does(id, said, Intent::Edit { of, place, edit, step: None })
}
