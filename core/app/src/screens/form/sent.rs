//! Changes that a coach sent, before they are taken.

use barwright_domain::desk::SentWhat;
use barwright_domain::text::Fault;

use super::super::key::{does, shows};
use super::super::name;
use super::{aloud, form_row};
use crate::contract::{Edit, FormOf, FormRow, FormScreen, Intent, Key, Look};
use crate::facts::{Held, SentFile, SentNow, SentState, place};
use crate::phrase::Words;

/// The file as it stands to what is here; `text` is its own.
pub(in crate::screens) fn screen(
    held: &Held,
    (file, text): (&Result<SentFile, Vec<Fault>>, &str),
    words: Words,
) -> FormScreen {
    let say = words.sent();
    let title = say.title();
    let today = Look::Today { session: None, minutes: None };
    let leave = shows("leave", words.by_hand().back(), today);
    let (subtitle, rows, notes, keys) = match file {
        Ok(file) => {
            let subtitle = say.decided(&file.file.lifter, file.file.day);
            let rows: Vec<FormRow> =
                file.changes.iter().map(|one| row(held, one, text, words)).collect();
            let fit = file.changes.iter().filter(|one| one.state == SentState::Fits).count();
            let take = take("take-up", say.take_up(fit), "", text);
            let free = held.state.running().is_none();
            let keys = vec![take.enabled(free && fit > 0), leave];
            (subtitle, rows, Vec::new(), keys)
        }
        Err(faults) => {
            let said = |fault| words.by_hand().said(&words.faults().in_place(fault, text));
            let notes: Vec<String> = faults.iter().map(said).collect();
            (say.unreadable().to_owned(), Vec::new(), notes, vec![leave])
        }
    };
    let spoken = [aloud(title, &subtitle, &rows, words)];
    let spoken: Vec<&str> = spoken.iter().chain(&notes).map(String::as_str).collect();
    FormScreen {
        aloud: words.words().spoken(&spoken),
        title: title.to_owned(),
        subtitle,
        rows,
        notes,
        chart: None,
        plan_file: false,
        file: None,
        keys,
    }
}

/// A key that takes one of them, or all that fit, and shows the file again.
fn take(id: &str, said: (String, String), which: &str, text: &str) -> Key {
    let (of, place) = (FormOf::Changes, which.to_owned());
    let edit = Edit::Put { text: text.to_owned() };
    does(id, said, Intent::Edit { of, place, edit, step: None })
}

fn row(held: &Held, one: &SentNow, text: &str, words: Words) -> FormRow {
    let (say, unit, numerals) = (words.sent(), held.load_unit(), words.numerals);
    let named = |slug: &String| name::exercise(held, slug, slug, words);
    let masses = |was, to| say.from_to(was, to, unit, numerals);
    let (what, value) = match &one.change.what {
        SentWhat::Max { exercise, was, to } => (say.max(&named(exercise)), masses(*was, *to)),
        SentWhat::Load { exercise, was, to, .. } => {
            (say.load(&named(exercise)), masses(Some(*was), *to))
        }
        SentWhat::Swap { exercise, with, .. } => {
            (say.swap(&named(exercise), &named(with)), String::new())
        }
        SentWhat::Plan { .. } => (say.plan().to_owned(), String::new()),
        SentWhat::Week { week, .. } => (say.week(*week), String::new()),
    };
    let detail = match (one.state, &one.change.what) {
        (SentState::Taken, _) => say.taken().to_owned(),
        (SentState::Fits, _) => String::new(),
        (SentState::Nothing, _) => say.nothing().to_owned(),
        (SentState::Apart, SentWhat::Max { .. } | SentWhat::Load { .. }) => {
            say.mass_apart(one.mass, unit, numerals)
        }
        (SentState::Apart, SentWhat::Swap { .. } | SentWhat::Plan { .. }) => {
            say.plan_apart().to_owned()
        }
        (SentState::Apart, SentWhat::Week { next, .. }) => {
            let next = next.as_deref().and_then(place::named);
            say.next_apart(next)
        }
    };
    let mut row = form_row(one.change.id.as_str(), 1, what).value(value).detail(detail);
    row.warns = matches!(one.state, SentState::Apart | SentState::Nothing);
    if one.state == SentState::Apart {
        let all_the_same = say.take_all_the_same();
        let said = (all_the_same.0.to_owned(), all_the_same.1.to_owned());
        let free = held.state.running().is_none();
        row = row.keys(vec![take("take", said, &one.change.id, text).enabled(free)]);
    }
    row
}
