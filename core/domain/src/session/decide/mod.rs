//! Deciding: a command against the state gives events, or a refusal.

mod again;
mod arrange;
mod load;
mod record;
mod rest;

use super::command::Command;
use super::event::{Event, Stamped};
use super::next::Cursor;
use super::reading::Reading;
use super::refusal::Refusal;
use super::sheet::{EntryId, SetId, Sheet};
use super::state::{EntryRun, Run, State};
use super::{MOST_ENTRIES, MOST_NOTE, MOST_SET_UP, MOST_SETS};

/// The events that a command comes to, in order; they are one tap.
///
/// # Errors
/// A [`Refusal`] when the command can't be carried out as things stand; nothing changes then.
pub fn decide(state: &State, command: &Command, at: &Reading) -> Result<Vec<Event>, Refusal> {
    if !at.is_sound() {
        return Err(Refusal::BadReading);
    }
    match command {
        Command::Begin { sheet, equipment, body_mass } => {
            if state.running().is_some() {
                return Err(Refusal::SessionRunning);
            }
            check_sheet(sheet)?;
            Ok(vec![Event::Began {
                sheet: sheet.clone(),
                equipment: equipment.clone(),
                body_mass: *body_mass,
            }])
        }
        Command::Undo => undo(state),
        Command::Redo => redo(state),
        Command::Wake => Ok(state.running().map(|run| rest::wake(run, at)).unwrap_or_default()),
        Command::HoldBack { exercise, held } => {
            let run = state.run().ok_or(Refusal::NoSession)?;
            if !run.entries.values().any(|entry| entry.entry.exercise == *exercise) {
                return Err(Refusal::NoSuchEntry);
            }
            if run.held_back.contains(exercise) == *held {
                return Err(Refusal::AlreadySo);
            }
            Ok(vec![Event::HeldBack { exercise: exercise.clone(), held: *held }])
        }
        // A note may be written after the end, and a set put right on the tally.
        Command::Note { entry, text } => note(state.run().ok_or(Refusal::NoSession)?, *entry, text),
        Command::Correct { set, part, to } => {
            record::correct(state.run().ok_or(Refusal::NoSession)?, *set, *part, to)
        }
        other => running(state.running().ok_or(Refusal::NoSession)?, other, at),
    }
}

/// Commands that need a running session.
fn running(run: &Run, command: &Command, at: &Reading) -> Result<Vec<Event>, Refusal> {
    match command {
        Command::Start => record::start(run),
        Command::TapRep => record::tap_rep(run),
        Command::Record(set) => record::record(run, set, at),
        Command::SkipSet => match run.cursor() {
            None => Err(Refusal::NothingLeft),
            Some(Cursor { set, part: 0 }) => Ok(vec![Event::SetSkipped { set }]),
            Some(Cursor { set, .. }) => Ok(vec![Event::SetLeft { set }]),
        },
        Command::SkipEntry(entry) => arrange::skip(run, *entry),
        Command::Swap { entry, to, cause } => arrange::swap(run, *entry, to, *cause),
        Command::Postpone(entry) => arrange::postpone(run, *entry),
        Command::Return(entry) => arrange::take_up(run, *entry),
        Command::AddSet(entry) => arrange::add_set(run, *entry),
        Command::ChangeLoad { entry, load, only_next, sure } => {
            load::change(run, *entry, *load, *only_next, *sure)
        }
        Command::ChoosePin { entry, pin } => load::choose_pin(run, *entry, pin),
        Command::BarHolds(rig) => Ok(vec![Event::BarHolds { rig: rig.clone() }]),
        Command::RestBy(seconds) => rest::by(run, *seconds, at),
        Command::GuardedBy { entry, guard } => {
            exercise(run, *entry)?;
            Ok(vec![Event::Guarded { entry: *entry, guard: *guard }])
        }
        Command::UseKit { entry, kit } => {
            exercise(run, *entry)?;
            let mut kit = kit.clone();
            kit.sort_unstable();
            kit.dedup();
            Ok(vec![Event::KitUsed { entry: *entry, kit }])
        }
        Command::NoteSetUp { entry, set_up } => {
            exercise(run, *entry)?;
            let (most, lines) = MOST_SET_UP;
            let fits = |line: &String| !line.trim().is_empty() && line.chars().count() <= most;
            if set_up.len() > lines || !set_up.iter().all(fits) {
                return Err(Refusal::BadText);
            }
            Ok(vec![Event::SetUpNoted { entry: *entry, set_up: set_up.clone() }])
        }
        Command::Pause if run.paused.is_none() => Ok(vec![Event::Paused]),
        Command::Resume if run.paused.is_some() => {
            Ok([Event::Resumed].into_iter().chain(again::step(run, at)).collect())
        }
        Command::Pause | Command::Resume => Err(Refusal::AlreadySo),
        Command::Finish => {
            let mut events: Vec<Event> = arrange::leave_open_set(run).into_iter().collect();
            events.push(Event::Finished);
            Ok(events)
        }
        Command::Begin { .. }
        | Command::Undo
        | Command::Redo
        | Command::Wake
        | Command::HoldBack { .. }
        | Command::Note { .. }
        | Command::Correct { .. } => Err(Refusal::NoSession),
    }
}

fn check_sheet(sheet: &Sheet) -> Result<(), Refusal> {
    let mut ids = Vec::new();
    for entry in sheet.entries() {
        if entry.calls.is_empty() {
            return Err(Refusal::EmptySheet);
        }
        if entry.calls.len() > MOST_SETS || ids.contains(&entry.id) {
            return Err(Refusal::SheetTooLarge);
        }
        ids.push(entry.id);
    }
    match ids.len() {
        0 => Err(Refusal::EmptySheet),
        n if n > MOST_ENTRIES => Err(Refusal::SheetTooLarge),
        _ => Ok(()),
    }
}

fn note(run: &Run, entry: Option<EntryId>, text: &str) -> Result<Vec<Event>, Refusal> {
    if let Some(entry) = entry {
        exercise(run, entry)?;
    }
    if text.trim().is_empty() || text.chars().count() > MOST_NOTE {
        return Err(Refusal::BadText);
    }
    Ok(vec![Event::Noted { entry, text: text.trim().to_owned() }])
}

fn exercise(run: &Run, entry: EntryId) -> Result<&EntryRun, Refusal> {
    run.entries.get(&entry).map(AsRef::as_ref).ok_or(Refusal::NoSuchEntry)
}

/// An exercise that still has sets to do.
fn pending(run: &Run, entry: EntryId) -> Result<&EntryRun, Refusal> {
    let found = exercise(run, entry)?;
    if found.pending() { Ok(found) } else { Err(Refusal::NothingLeftOf) }
}

/// Events as they are decided, and the session as they leave it: what follows is decided on that.
struct Course<'a> {
    events: Vec<Event>,
    now: Run,
    at: &'a Reading,
}

impl<'a> Course<'a> {
    fn from(run: &Run, at: &'a Reading) -> Self {
        Self { events: Vec::new(), now: run.clone(), at }
    }

    fn extend(&mut self, events: impl IntoIterator<Item = Event>) {
        for event in events {
            let stamped = Stamped { seq: 0, tap: 0, at: self.at.clone(), event };
            self.now.fold(&stamped);
            self.events.push(stamped.event);
        }
    }
}

/// The last tap that stands and was the lifter's own.
pub(super) fn undo(state: &State) -> Result<Vec<Event>, Refusal> {
    let taken = state.taken_back();
    state
        .log
        .iter()
        .rev()
        .filter(|stamped| !taken.contains(&stamped.tap))
        .find(|stamped| !matches!(stamped.event, Event::Undone { .. } | Event::RestRebased { .. }))
        .map(|stamped| vec![Event::Undone { tap: stamped.tap }])
        .ok_or(Refusal::NothingToUndo)
}

/// The last undo that stands, where nothing was done since.
pub(super) fn redo(state: &State) -> Result<Vec<Event>, Refusal> {
    let taken = state.taken_back();
    state
        .log
        .iter()
        .rev()
        .filter(|stamped| !matches!(stamped.event, Event::RestRebased { .. }))
        // An undo that was taken back, and the one that took it back, say nothing more.
        .filter(|stamped| {
            !matches!(stamped.event, Event::Undone { tap }
                if taken.contains(&stamped.tap) || is_undo(state, tap))
        })
        .map(|stamped| match stamped.event {
            Event::Undone { .. } => Some(Event::Undone { tap: stamped.tap }),
            _ => None,
        })
        .next()
        .flatten()
        .map(|event| vec![event])
        .ok_or(Refusal::NothingToRedo)
}

fn is_undo(state: &State, tap: u64) -> bool {
    state
        .log
        .iter()
        .any(|stamped| stamped.tap == tap && matches!(stamped.event, Event::Undone { .. }))
}

/// A set by name.
fn set_of(run: &Run, id: SetId) -> Result<&super::state::SetRun, Refusal> {
    run.set(id).ok_or(Refusal::NoSuchPart)
}
