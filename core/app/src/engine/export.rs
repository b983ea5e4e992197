//! Out: the log line by line, and what a lifter hands to a coach.

use std::io::Write;

use barwright_domain::desk::{Desk, DeskEvent, SaidOf};
use barwright_domain::session::Reading;
use barwright_log::form::{EventLine, FORM, FactLine, Head, LeftOut, Wrong, write_line};
use barwright_store::{Event, Store};
use serde_json::Value;
use serde_json::value::RawValue;

use super::codec::{self, DESK, SESSION};
use super::standing::{self, Failure};
use crate::facts::{Arrived, Handed, HandedPart};
use crate::fault::{Fault, Refused};

/// What is written out.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Export {
    /// Only what was recorded from this local date on, in days since 1970-01-01, with plan and maxes
    /// as they stand; none is all of it, without a loss.
    pub since: Option<i32>,
    /// With body mass; all of it has it.
    pub body_mass: bool,
    /// With notes; all of it has them.
    pub notes: bool,
}

/// What was written.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Exported {
    /// Events.
    pub events: u64,
    /// Sessions among them: those that began in what was written.
    pub sessions: u64,
}

/// Writes the records of a store whose desk stands so.
pub(super) fn write(
    store: &Store,
    desk: &Desk,
    what: Export,
    to: &mut impl Write,
) -> Result<Exported, Fault> {
    let exported = match what.since {
        None => whole(store, to)?,
        Some(since) => part(store, desk, (since, what), to)?,
    };
    to.flush().map_err(Wrong::Io)?;
    Ok(exported)
}

/// The most bytes that a screen hands on, or takes: of more, a copy of the file is. An old phone has
/// to have room for it several times over.
pub(super) const MOST_CARRIED: usize = 16 << 20;
/// How far back a coach gets records where no plan is on: eight weeks.
const DAYS_BACK: i32 = 56;

/// A part of the records, as a screen hands it on.
pub(super) fn handed(
    store: &Store,
    desk: &Desk,
    part: &str,
    at: &Reading,
    came: Option<Arrived>,
) -> Result<Handed, Fault> {
    let part = HandedPart::named(part).ok_or(Refused::NotHere)?;
    let today = at.local_day();
    let on = desk.plan.as_ref().map(|plan| plan.day);
    let since = on.unwrap_or(today.saturating_sub(DAYS_BACK));
    let what = match part {
        HandedPart::All => Export::default(),
        HandedPart::SinceADay { body_mass, notes } => {
            Export { since: Some(since), body_mass, notes }
        }
    };
    let mut file = Bounded { bytes: 0, text: Some(Vec::new()) };
    let Exported { sessions, .. } = write(store, desk, what, &mut file)?;
    let text = file.text.and_then(|text| String::from_utf8(text).ok());
    Ok(Handed { part, since, sessions, bytes: file.bytes, text, came })
}

/// A file as it is written, which is let go of where it is more than is handed on.
struct Bounded {
    bytes: usize,
    text: Option<Vec<u8>>,
}

impl Write for Bounded {
    fn write(&mut self, more: &[u8]) -> std::io::Result<usize> {
        self.bytes = self.bytes.saturating_add(more.len());
        if self.bytes > MOST_CARRIED {
            self.text = None;
        }
        self.text.iter_mut().for_each(|text| text.extend_from_slice(more));
        Ok(more.len())
    }

    fn flush(&mut self) -> std::io::Result<()> {
        Ok(())
    }
}

/// All of the log.
fn whole(store: &Store, to: &mut impl Write) -> Result<Exported, Fault> {
    let head = Head { events: store.last_seq(), ..head(store) };
    write_line(to, &head).map_err(Wrong::Io)?;
    let (mut before, mut exported) = (0, Exported { events: 0, sessions: 0 });
    store.each_event(1, |row| {
        before = row.sum(before);
        exported.count(&row);
        line(to, row, Some(before))
    })?;
    Ok(exported)
}

fn head(store: &Store) -> Head {
    Head {
        barwright_records: FORM,
        store: store.uuid().to_owned(),
        events: 0,
        facts: 0,
        last: store.last_seq(),
        since: None,
        left_out: Vec::new(),
    }
}

impl Exported {
    fn count(&mut self, row: &Event) {
        self.events += 1;
        self.sessions += u64::from(begins(row));
    }
}

/// Whether an event begins a session, told without reading all of it.
pub(super) fn begins(row: &Event) -> bool {
    row.kind == SESSION && row.body.contains("\"event\":{\"began\":")
}

fn line(to: &mut impl Write, row: Event, checksum: Option<u32>) -> Result<(), Failure> {
    let seq = row.seq;
    // A body that is no JSON was not written by a release that is known here.
    let body = RawValue::from_string(row.body).map_err(|_| Failure::Unreadable(seq))?;
    let line = EventLine {
        seq,
        tap: row.tap,
        kind: row.kind,
        version: row.version,
        wall_ms: row.at.wall_ms,
        offset_min: row.at.offset_minutes,
        checksum,
        body,
    };
    write_line(to, &line).map_err(|error| Failure::Written(Wrong::Io(error)))
}

/// Whether a fact of the desk is told in a part of the log. What is being made by hand is not, nor
/// what carried loads before: how they stand is told by itself.
fn is_told(event: &DeskEvent, since: i32, what: Export) -> bool {
    match event {
        DeskEvent::DraftBegun { .. }
        | DeskEvent::DraftChanged { .. }
        | DeskEvent::DraftTurned { .. }
        | DeskEvent::DraftDropped { .. } => false,
        DeskEvent::BodyMassKept { .. } => what.body_mass,
        // However late it came here, it is of its own day.
        DeskEvent::SessionBrought(brought) => brought.row.day >= since,
        _ => true,
    }
}

/// Since a day: the sessions that began on it or later, what was said at the desk from then on, and
/// the plan that was on before; then how everything stands.
fn part(
    store: &Store,
    desk: &Desk,
    (since, what): (i32, Export),
    to: &mut impl Write,
) -> Result<Exported, Fault> {
    let mut rows: Vec<Event> = Vec::new();
    // What the plan that was on at the beginning says, and exercises of the lifter's own.
    let mut before: Vec<Event> = Vec::new();
    let mut begun = false;
    store.each_event(1, |row| {
        let local = row.at.wall_ms.saturating_add(i64::from(row.at.offset_minutes) * 60_000);
        let here = i32::try_from(local.div_euclid(86_400_000)).unwrap_or(i32::MAX) >= since;
        match row.kind.as_str() {
            SESSION => {
                begun |= here && begins(&row);
                let note = !what.notes && row.body.contains("\"event\":{\"noted\":");
                if begun && !note {
                    rows.push(row);
                }
            }
            DESK if begun || here => {
                let told = is_told(&codec::desk(&row)?, since, what);
                rows.extend(told.then_some(row));
            }
            // Few facts of the desk are these: the others are not read.
            DESK if ["\"plan_", "\"exercise_kept\""].iter().any(|name| row.body.contains(name)) => {
                match codec::desk(&row)? {
                    DeskEvent::PlanAdopted { .. } | DeskEvent::PlanTakenUp { .. } => {
                        before.retain(|row| row.body.contains("\"exercise_kept\""));
                        before.push(row);
                    }
                    DeskEvent::PlanMended { .. } | DeskEvent::ExerciseKept { .. } => {
                        before.push(row);
                    }
                    _ => {}
                }
            }
            _ => {}
        }
        Ok::<(), Failure>(())
    })?;
    // A clock that was set back dates what comes later earlier.
    rows.append(&mut before);
    rows.sort_by_key(|row| row.seq);
    let desk = shared(desk, what);
    let facts = standing::written(&Desk::default(), &desk);
    let left_out = [(what.body_mass, LeftOut::BodyMass), (what.notes, LeftOut::Notes)];
    let head = Head {
        events: rows.len() as u64,
        facts: facts.len() as u64,
        since: Some(since),
        left_out: left_out.into_iter().filter(|(with, _)| !with).map(|(_, what)| what).collect(),
        ..head(store)
    };
    write_line(to, &head).map_err(Wrong::Io)?;
    let mut exported = Exported { events: 0, sessions: 0 };
    for mut row in rows {
        exported.count(&row);
        if !what.body_mass {
            row.body = without_body(row.body);
        }
        line(to, row, None)?;
    }
    for (key, body) in facts {
        let body = RawValue::from_string(body).map_err(|error| Wrong::Io(error.into()))?;
        write_line(to, &FactLine { key, body }).map_err(Wrong::Io)?;
    }
    Ok(exported)
}

/// The desk as it is handed on.
fn shared(desk: &Desk, what: Export) -> Desk {
    let mut desk = desk.clone();
    desk.drafts.clear();
    desk.dropped.clear();
    if !what.body_mass {
        desk.body_mass = None;
        desk.weighed.clear();
        desk.said.retain(|said| !matches!(said.what, SaidOf::BodyMass(_)));
        desk.unsaid.retain(|said| !matches!(said.what, SaidOf::BodyMass(_)));
    }
    desk
}

/// The body of an event without the lifter's own mass: of the session, in loads and in reasons.
fn without_body(body: String) -> String {
    if !["\"body", "\"session_brought\""].iter().any(|name| body.contains(name)) {
        return body;
    }
    let Ok(mut value) = serde_json::from_str::<Value>(&body) else { return body };
    take_out(&mut value);
    value.to_string()
}

fn take_out(value: &mut Value) {
    match value {
        Value::Object(all) => {
            all.remove("body_mass");
            let part = all.get("body").and_then(Value::as_object);
            if part.is_some_and(|part| part.contains_key("share")) {
                all.remove("body");
            }
            // What was moved beyond what was on is the body's part.
            if all.get("moved") != all.get("figure") {
                all.remove("moved");
            }
            all.values_mut().for_each(take_out);
        }
        Value::Array(all) => {
            // A reason that says what the body's part is.
            all.retain(|one| one.get("less_body").is_none());
            all.iter_mut().for_each(take_out);
        }
        _ => {}
    }
}
