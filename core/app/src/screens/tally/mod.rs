//! The tally: what was done, and what changes next time and why.

mod changes;

use barwright_domain::session::{Passed, Reading, Run, SetKind};

use super::floor::undo_keys;
use super::key::{shows, taps};
use super::name;
use super::row::{aloud, row};
use crate::contract::{Draft, Field, FormOf, Intent, Look, Row, TallyScreen};
use crate::facts::{Held, TallyOf, part};
use crate::phrase::Words;

/// The tally of a session, running or over.
pub(super) fn screen(held: &Held, tally: &TallyOf<'_>, at: &Reading, words: Words) -> TallyScreen {
    let run = tally.run;
    let done = done(held, run, words);
    let mut changes = changes::rows(held, tally, words);
    let (maxes, moved) = changes::maxes(held, tally, words);
    changes.extend(maxes);
    let end = run.finished.as_ref().unwrap_or(at);
    let minutes = Passed::between(&run.began, end).ms() / 60_000;
    let sets = run
        .entries
        .values()
        .flat_map(|entry| &entry.sets)
        .filter(|set| set.begun() && set.call.kind != SetKind::Ramp)
        .count();
    let over = run.finished.is_some();
    let subtitle = words.tally().subtitle(sets, minutes, over);
    let (undo, redo) = undo_keys(held, run, words);
    let mut keys: Vec<_> = undo.into_iter().chain(redo).collect();
    if over {
        if run.sheet.place.is_some() {
            let (of, at) = (FormOf::Session, ":date".to_owned());
            let look = Look::Form { of, at, text: String::new() };
            keys.push(shows("date", words.change().other_date(), look));
        }
        let look = Look::Today { session: None, minutes: None };
        keys.push(shows("today", words.tally().what_is_next(), look));
    } else {
        let floor = Look::Floor { draft: Draft::default() };
        keys.insert(0, shows("floor", words.today().back_to_floor(), floor));
        keys.push(taps(run, "finish", words.tally().finish(), Intent::Finish));
    }
    let title = run.sheet.title.clone();
    let rows = [aloud(&done, words), aloud(&changes, words)].join(" ");
    let (label, hint) = words.panel().session_note();
    TallyScreen {
        aloud: words.words().spoken(&[&title, &subtitle, &rows]),
        title,
        subtitle,
        done,
        changes,
        moved,
        notes: run.notes.iter().map(|note| note.text.clone()).collect(),
        cautions: vec![words.cautions().after().to_owned()],
        fields: vec![Field {
            id: part::field(run, "note", None),
            label: label.to_owned(),
            value: String::new(),
            hint: hint.to_owned(),
            numeric: false,
        }],
        keys,
    }
}

/// What was done, exercise by exercise.
fn done(held: &Held, run: &Run, words: Words) -> Vec<Row> {
    let say = words.tally();
    let mut rows = Vec::new();
    for (_, id, entry) in run.in_order() {
        let begun: Vec<_> = entry.sets.iter().filter(|set| set.begun()).collect();
        let left = entry.sets.iter().filter(|set| !set.begun()).count();
        let mut heading = row(format!("entry-{}", id.0), 1, name::entry(held, entry, words));
        let to = entry.swapped_for.and_then(|to| run.entries.get(&to));
        let to = to.map(|to| name::entry(held, to, words));
        let not_done = if begun.is_empty() {
            Some(say.not_begun(entry.entry.optional).to_owned())
        } else {
            (left > 0).then(|| say.sets_not_begun(left))
        };
        let why = (to.is_some() || entry.left_for.is_some())
            .then(|| say.left_for(entry.left_for, to.as_deref()));
        let said: Vec<String> = not_done.into_iter().chain(why).collect();
        heading = heading.detail(said.join(" · "));
        rows.push(heading.done(!begun.is_empty()));
        for (at, set) in entry.sets.iter().enumerate().filter(|(_, set)| set.begun()) {
            let (text, detail) = say.set(entry, set, run.equipment.unit, words.numerals);
            rows.push(row(format!("set-{}-{at}", id.0), 2, text).detail(detail).done(true));
        }
    }
    rows
}
