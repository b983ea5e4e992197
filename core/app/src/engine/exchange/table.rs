//! Out, for people and spreadsheets: tables of sets, sessions, maxes and body mass.

use std::collections::BTreeMap;
use std::io::Write;

use barwright_domain::call::Amount;
use barwright_domain::desk::{Desk, DeskEvent};
use barwright_domain::history::{DoneSet, SessionRow};
use barwright_domain::owners::Owner;
use barwright_domain::quantity::Mass;
use barwright_domain::shown::plain;
use barwright_log::form::Wrong;
use chrono::NaiveDate;
use serde::Serialize;

use super::super::codec::{self, DESK};
use super::super::core::Core;
use super::super::standing::Failure;
use crate::fault::Fault;

/// A table that is written out, a row a thing.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Table {
    /// Sets that were done.
    Sets,
    /// Sessions.
    Sessions,
    /// Reference maxes, each time one became another.
    Maxes,
    /// Body mass, each time it was said.
    BodyMass,
}

impl Table {
    /// All of them.
    pub const ALL: [Self; 4] = [Self::Sets, Self::Sessions, Self::Maxes, Self::BodyMass];

    /// The name of its file.
    #[must_use]
    pub const fn file(self) -> &'static str {
        match self {
            Self::Sets => "sets.csv",
            Self::Sessions => "sessions.csv",
            Self::Maxes => "maxes.csv",
            Self::BodyMass => "body-mass.csv",
        }
    }

    /// Its columns, in their order.
    #[must_use]
    pub const fn columns(self) -> &'static [&'static str] {
        match self {
            Self::Sets => &[
                "session",
                "date",
                "exercise",
                "entry",
                "set",
                "kind",
                "side",
                "reps",
                "seconds",
                "metres",
                "load_kg",
                "load_is",
                "moved_kg",
                "left",
                "target_left",
                "helped",
                "ending",
                "technique",
                "bands",
                "kit",
            ],
            Self::Sessions => &[
                "session",
                "date",
                "title",
                "plan",
                "week",
                "number",
                "week_kind",
                "seconds",
                "sets_owed",
                "sets_done",
            ],
            Self::Maxes => &["date", "exercise", "max_kg", "origin"],
            Self::BodyMass => &["date", "mass_kg"],
        }
    }
}

/// Writes a table as CSV (RFC 4180), its columns in the first line. Answers how many rows it has.
pub(super) fn write(
    core: &Core,
    table: Table,
    since: Option<i32>,
    to: &mut impl Write,
) -> Result<u64, Fault> {
    let mut out = Out { to: csv::Writer::from_writer(to), since, rows: 0 };
    out.to.write_record(table.columns()).map_err(failed)?;
    match table {
        Table::Sets => sets(core, &mut out)?,
        Table::Sessions => sessions(core, &mut out)?,
        Table::Maxes => maxes(core, &mut out)?,
        Table::BodyMass => body_mass(core, &mut out)?,
    }
    out.to.flush().map_err(Wrong::Io)?;
    Ok(out.rows)
}

struct Out<W: Write> {
    to: csv::Writer<W>,
    since: Option<i32>,
    rows: u64,
}

impl<W: Write> Out<W> {
    fn row(&mut self, day: i32, cells: &[String]) -> Result<(), Fault> {
        if self.since.is_none_or(|since| day >= since) {
            self.to.write_record(cells).map_err(failed)?;
            self.rows += 1;
        }
        Ok(())
    }
}

fn failed(error: csv::Error) -> Fault {
    Wrong::Io(error.into()).into()
}

/// All sessions, oldest first.
fn all(core: &Core) -> Result<Vec<SessionRow>, Fault> {
    let mut rows = core.store.history()?.last_sessions(None, u32::MAX)?;
    rows.sort_by_key(|row| (row.day, row.session));
    Ok(rows)
}

fn sets<W: Write>(core: &Core, out: &mut Out<W>) -> Result<(), Fault> {
    let sessions = all(core)?;
    let history = core.store.history()?;
    for session in sessions {
        if out.since.is_some_and(|since| session.day < since) {
            continue;
        }
        for set in history.sets_in(session.session)? {
            out.row(set.day, &set_cells(&set))?;
        }
    }
    Ok(())
}

fn set_cells(set: &DoneSet) -> [String; 20] {
    let amount = set.amount();
    let number = |of: Option<u32>| of.map(|count| count.to_string()).unwrap_or_default();
    let reps = number(amount.reps().map(u32::from));
    let (seconds, metres) = match amount {
        Amount::Reps(_) => (String::new(), String::new()),
        Amount::Seconds(seconds) => (seconds.count().to_string(), String::new()),
        Amount::Metres(distance) => {
            let mm = distance.millimetres();
            (String::new(), format!("{}.{:03}", mm / 1000, mm % 1000))
        }
    };
    [
        set.key.session.to_string(),
        date(set.day),
        text(&set.exercise),
        set.key.set.entry.0.to_string(),
        set.key.set.set.to_string(),
        word(&set.kind),
        set.side.map(|side| word(&side)).unwrap_or_default(),
        reps,
        seconds,
        metres,
        mass(set.figure),
        word(&set.counting),
        mass(set.moved),
        set.left.map(|left| halves(left.halves())).unwrap_or_default(),
        set.target.map(|target| halves(target.left.to.halves())).unwrap_or_default(),
        set.helped.to_string(),
        word(&set.ending),
        text(set.technique.as_deref().unwrap_or_default()),
        text(set.bands.as_deref().unwrap_or_default()),
        set.kit.iter().map(word).collect::<Vec<_>>().join(" "),
    ]
}

fn sessions<W: Write>(core: &Core, out: &mut Out<W>) -> Result<(), Fault> {
    for row in all(core)? {
        let place = row.place.as_ref();
        let ended = row.outcome.as_ref();
        let at = |number: Option<String>| number.unwrap_or_default();
        let cells = [
            row.session.to_string(),
            date(row.day),
            text(&row.title),
            at(place.map(|place| place.plan.to_string())),
            at(place.map(|place| place.week.to_string())),
            at(place.map(|place| place.session.to_string())),
            word(&row.week_kind),
            at(ended.map(|ended| ended.seconds.to_string())),
            at(ended.map(|ended| ended.owed.to_string())),
            at(ended.map(|ended| ended.done.to_string())),
        ];
        out.row(row.day, &cells)?;
    }
    Ok(())
}

/// Every fact of the desk in its turn.
fn each_fact(
    core: &Core,
    mut take: impl FnMut(u64, DeskEvent) -> Result<(), Fault>,
) -> Result<(), Fault> {
    let mut failed = None;
    core.store.each_event(1, |row| {
        if row.kind == DESK && failed.is_none() {
            failed = take(row.seq, codec::desk(&row)?).err();
        }
        Ok::<(), Failure>(())
    })?;
    failed.map_or(Ok(()), Err)
}

fn maxes<W: Write>(core: &Core, out: &mut Out<W>) -> Result<(), Fault> {
    let mut desk = Desk::default();
    let mut known = BTreeMap::new();
    each_fact(core, |seq, event| {
        let owners: Vec<Owner> = match &event {
            DeskEvent::Said { owner, .. } => vec![owner.clone()],
            DeskEvent::Decided { outcomes, .. } => {
                outcomes.iter().map(|outcome| outcome.owner.clone()).collect()
            }
            DeskEvent::TakenBack { .. } | DeskEvent::BroughtBack { .. } => {
                desk.owners.iter().map(|(owner, _)| owner.clone()).collect()
            }
            _ => Vec::new(),
        };
        desk.apply(seq, &event);
        for owner in owners {
            let Owner::Max(exercise) = owner else { continue };
            let now = desk.owners.max(&exercise).now;
            if known.get(&exercise) == Some(&now) {
                continue;
            }
            if let Some((max, day, origin)) = &now {
                let cells = [date(*day), text(&exercise), mass(Some(*max)), word(origin)];
                out.row(*day, &cells)?;
            }
            known.insert(exercise, now);
        }
        Ok(())
    })
}

fn body_mass<W: Write>(core: &Core, out: &mut Out<W>) -> Result<(), Fault> {
    let mut said = BTreeMap::new();
    let mut back = BTreeMap::new();
    each_fact(core, |seq, event| {
        match event {
            DeskEvent::BodyMassKept { mass, day } => {
                said.insert(seq, (day, mass));
            }
            DeskEvent::TakenBack { seq } => back.extend(said.remove(&seq).map(|it| (seq, it))),
            DeskEvent::BroughtBack { seq } => said.extend(back.remove(&seq).map(|it| (seq, it))),
            _ => {}
        }
        Ok(())
    })?;
    for (day, weighed) in said.into_values() {
        out.row(day, &[date(day), mass(Some(weighed))])?;
    }
    Ok(())
}

/// A local date as `2026-11-28`.
fn date(day: i32) -> String {
    NaiveDate::from_epoch_days(day).map(|date| date.to_string()).unwrap_or_default()
}

fn mass(mass: Option<Mass>) -> String {
    mass.map(Mass::kilograms).unwrap_or_default()
}

/// Halves as a decimal.
fn halves(halves: u8) -> String {
    format!("{}.{}", halves / 2, if halves % 2 == 1 { 5 } else { 0 })
}

/// The name of a choice, as the log writes it.
fn word<T: Serialize>(of: &T) -> String {
    match serde_json::to_value(of) {
        Ok(serde_json::Value::String(name)) => name,
        Ok(serde_json::Value::Object(named)) => named.keys().next().cloned().unwrap_or_default(),
        _ => String::new(),
    }
}

/// A text that people wrote. One that a spreadsheet would take for a formula begins with an
/// apostrophe.
fn text(text: &str) -> String {
    let shown = plain(text);
    let formula = shown.trim_start().starts_with(['=', '+', '-', '@']);
    if formula { format!("'{shown}") } else { shown }
}
