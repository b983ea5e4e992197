//! The tally: what was done, and what changes next time and why.

use barwright_domain::quantity::Numerals;
use barwright_domain::session::{EntryRun, PartRun, Passed, Reading, Run, SetKind, SetRun};

use super::floor::undo_keys;
use super::key::{does, shows};
use super::row::{aloud, row};
use super::{bar, changes};
use crate::contract::{Draft, EngineError, Field, Intent, Look, Row, TallyScreen};
use crate::engine::Core;
use crate::phrase::en::{cautions, floor as phrases, pace as en_pace, words};

/// The tally of a session, running or over.
pub(super) fn screen(core: &Core, run: &Run, at: &Reading) -> Result<TallyScreen, EngineError> {
    let numerals = core.locale.numerals;
    let done = done(run, numerals);
    let mut changes = changes::rows(core, run, at)?;
    let (maxes, moved) = changes::maxes(core, run, at)?;
    changes.extend(maxes);
    let end = run.finished.as_ref().unwrap_or(at);
    let minutes = Passed::between(&run.began, end).ms() / 60_000;
    let sets = run
        .entries
        .values()
        .flat_map(|entry| &entry.sets)
        .filter(|set| set.begun() && set.call.kind != SetKind::Ramp)
        .count();
    let state = if run.finished.is_some() { "over" } else { "so far" };
    let subtitle =
        format!("{}, {minutes} min, {state}", words::count(sets, "work set", "work sets"));
    let (undo, redo) = undo_keys(core);
    let mut keys: Vec<_> = undo.into_iter().chain(redo).collect();
    if run.finished.is_none() {
        keys.insert(
            0,
            shows("floor", "Back to the floor", Look::Floor { draft: Draft::default() }),
        );
        keys.push(does("finish", "Finish the session", Intent::Finish));
    } else {
        keys.push(shows("today", "What is on next", Look::Today { session: None, minutes: None }));
    }
    let spoken = format!("{}. {subtitle}. {} {}", run.sheet.title, aloud(&done), aloud(&changes));
    Ok(TallyScreen {
        title: run.sheet.title.clone(),
        subtitle,
        done,
        changes,
        moved,
        notes: run.notes.iter().map(|note| note.text.clone()).collect(),
        cautions: vec![cautions::AFTER.to_owned()],
        fields: vec![Field {
            id: "note".to_owned(),
            label: "Note on the session".to_owned(),
            value: String::new(),
            hint: "slept badly".to_owned(),
            numeric: false,
        }],
        keys,
        aloud: spoken,
    })
}

/// What was done, exercise by exercise.
fn done(run: &Run, numerals: Numerals) -> Vec<Row> {
    let mut rows = Vec::new();
    for (_, id, entry) in run.in_order() {
        let begun: Vec<_> = entry.sets.iter().filter(|set| set.begun()).collect();
        let left = entry.sets.iter().filter(|set| !set.begun()).count();
        let mut heading = row(format!("entry-{}", id.0), 1, entry.entry.name.clone());
        if begun.is_empty() {
            let why = if entry.entry.optional { "optional, left out" } else { "not begun" };
            heading = heading.detail(why);
        } else if left > 0 {
            heading = heading.detail(format!("{} not begun", words::count(left, "set", "sets")));
        }
        rows.push(heading.done(!begun.is_empty()));
        for (at, set) in entry.sets.iter().enumerate().filter(|(_, set)| set.begun()) {
            rows.push(set_row(run, id.0, at, entry, set, numerals));
        }
    }
    rows
}

fn set_row(
    run: &Run,
    id: u16,
    at: usize,
    entry: &EntryRun,
    set: &SetRun,
    numerals: Numerals,
) -> Row {
    let unit = run.equipment.unit;
    let side = set.call.side.map(|side| format!(", {}", words::side(side))).unwrap_or_default();
    // Parts at one load share it; a drop names each.
    let loads: Vec<String> =
        set.parts.iter().map(|part| bar::total(&part.done.load, unit, numerals)).collect();
    let one_load = loads.windows(2).all(|pair| matches!(pair, [a, b] if a == b));
    let amounts: Vec<String> =
        set.parts.iter().map(|part| words::figure(&part.done.amount, numerals)).collect();
    let work = if one_load {
        let load = loads.first().cloned().unwrap_or_default();
        let kind = set.parts.first().map(|part| words::unit(&part.done.amount)).unwrap_or_default();
        let figures = amounts.join(" + ");
        if kind == "reps" || kind == "rep" {
            format!("{load} × {figures}")
        } else {
            format!("{load}, {figures} {kind}")
        }
    } else {
        let pairs: Vec<String> =
            loads.iter().zip(&amounts).map(|(load, amount)| format!("{load} × {amount}")).collect();
        pairs.join(", ")
    };
    let last = set.parts.last().map(|part| &part.done);
    let left = match last.and_then(|done| done.left) {
        Some(left) => format!("{} left", left.print(numerals)),
        None if set.call.effort.is_some() => "not called".to_owned(),
        None => String::new(),
    };
    let helped: u16 = set.parts.iter().map(|part| part.done.helped).sum();
    let notes = [
        Some(left).filter(|left| !left.is_empty()),
        (helped > 0).then(|| format!("{helped} with help")),
        last.and_then(|done| words::ending(done.ending)).map(str::to_owned),
        set.left.then(|| "left in the middle".to_owned()),
        set.parts.last().and_then(PartRun::slowing).map(en_pace::slowed_short),
        set.parts.iter().any(|part| part.corrected).then(|| "put right".to_owned()),
    ];
    let notes: Vec<String> = notes.into_iter().flatten().collect();
    row(format!("set-{id}-{at}"), 2, format!("{}{side}: {work}", phrases::which_set(entry, set)))
        .detail(notes.join(" · "))
        .done(true)
}
