//! Deciding: a command against the state gives events, or a refusal.

mod again;
mod arrange;
mod guard;
mod load;
mod record;
mod rest;

use super::bounds::{MOST_ENTRIES, MOST_NOTE, MOST_SET_UP, MOST_SETS};
use super::command::Command;
use super::event::{Event, Stamped};
use super::next::Cursor;
use super::reading::{Passed, Reading};
use super::refusal::Refusal;
use super::sheet::Sheet;
use super::state::{EntryRun, Run, State};
use crate::call::{EntryId, SetId};

/// The events that a command comes to, in order; they are one tap.
///
/// # Errors
/// A [`Refusal`] when the command can't be carried out as things stand; nothing changes then.
pub fn decide(state: &State, command: &Command, at: &Reading) -> Result<Vec<Event>, Refusal> {
    if !at.is_sound() {
        return Err(Refusal::BadReading);
    }
    match command {
        Command::Begin { sheet, equipment, body_mass, paper } => {
            let mut events = Vec::new();
            if let Some(run) = state.running() {
                events = left_behind(run, at);
                if events.is_empty() {
                    return Err(Refusal::SessionRunning);
                }
            }
            check_sheet(sheet)?;
            events.push(Event::Began {
                sheet: sheet.clone(),
                equipment: equipment.clone(),
                body_mass: *body_mass,
            });
            if let Some(day) = *paper {
                check_day(day, at)?;
                events.push(Event::Dated { day, paper: true });
            }
            Ok(events)
        }
        Command::Undo => undo(state),
        Command::Redo => redo(state),
        Command::Wake => Ok(state.running().map(|run| rest::wake(run, at)).unwrap_or_default()),
        Command::Date(day) => {
            let run = state.run().ok_or(Refusal::NoSession)?;
            check_day(*day, at)?;
            if run.day == *day {
                return Err(Refusal::AlreadySo);
            }
            Ok(vec![Event::Dated { day: *day, paper: false }])
        }
        Command::HoldBack { owner, held } => {
            let run = state.run().ok_or(Refusal::NoSession)?;
            if run.held_back.contains(owner) == *held {
                return Err(Refusal::AlreadySo);
            }
            Ok(vec![Event::HeldBack { owner: owner.clone(), held: *held }])
        }
        Command::AnswerPain { exercise, free } => {
            let run = of_exercise(state, exercise)?;
            if run.pain_free.get(exercise) == Some(free) {
                return Err(Refusal::AlreadySo);
            }
            Ok(vec![Event::PainAnswered { exercise: exercise.clone(), free: *free }])
        }
        Command::PainOfJoint { exercise, of_joint } => {
            let run = of_exercise(state, exercise)?;
            if run.pain_of_joint.contains(exercise) == *of_joint {
                return Err(Refusal::AlreadySo);
            }
            let exercise = exercise.clone();
            Ok(vec![Event::PainOfJoint { exercise, of_joint: *of_joint }])
        }
        // A note may be written after the end, and a set put right on the tally.
        Command::Note { entry, text } => note(state.run().ok_or(Refusal::NoSession)?, *entry, text),
        Command::Correct { set, part, to, sure } => {
            record::correct(state.run().ok_or(Refusal::NoSession)?, *set, *part, to, *sure)
        }
        other => running(state.running().ok_or(Refusal::NoSession)?, other, at),
    }
}

impl State {
    /// Whether a tap can be taken back.
    pub fn can_undo(&self) -> bool {
        undo(self).is_ok()
    }

    /// Whether an undo can be taken back.
    pub fn can_redo(&self) -> bool {
        redo(self).is_ok()
    }
}

/// Hours after its last tap from which a running session of an earlier day counts as never ended.
const ABANDONED_MS: i64 = 4 * 3_600_000;

/// The events that end a running session which nobody ended, as of its last part; none while it may
/// still go on.
pub fn left_behind(run: &Run, at: &Reading) -> Vec<Event> {
    let Some(as_of) = abandoned(run, at) else { return Vec::new() };
    let left = arrange::leave_open_set(run);
    left.into_iter().chain([Event::Finished { as_of: Some(as_of) }]).collect()
}

/// When a running session was over that nobody ended: at its last part, where its last tap lies on
/// an earlier local day and some hours back. None while it may still go on.
pub fn abandoned(run: &Run, at: &Reading) -> Option<Reading> {
    let passed = Passed::between(&run.seen, at).ms();
    if run.seen.local_day() >= at.local_day() || passed < ABANDONED_MS {
        return None;
    }
    let parts = run.entries.values().flat_map(|entry| &entry.sets).flat_map(|set| &set.parts);
    Some(parts.map(|part| &part.at).max_by_key(|at| at.wall_ms).unwrap_or(&run.began).clone())
}

/// How far back a session's date may lie, in days: two years.
const FAR_BACK: i32 = 731;

/// A session's date lies before tomorrow, and not too far back.
fn check_day(day: i32, at: &Reading) -> Result<(), Refusal> {
    let back = at.local_day().saturating_sub(day);
    if (0..=FAR_BACK).contains(&back) { Ok(()) } else { Err(Refusal::OutOfRange) }
}

/// The session, where it has an exercise.
fn of_exercise<'a>(state: &'a State, exercise: &str) -> Result<&'a Run, Refusal> {
    let run = state.run().ok_or(Refusal::NoSession)?;
    let has = run.entries.values().any(|entry| entry.entry.exercise == exercise);
    if has { Ok(run) } else { Err(Refusal::NoSuchEntry) }
}

/// Commands that need a running session.
fn running(run: &Run, command: &Command, at: &Reading) -> Result<Vec<Event>, Refusal> {
    match command {
        Command::Start => record::start(run),
        Command::TapRep => record::tap_rep(run),
        Command::Record(set) => record::record(run, set, at),
        Command::RecordAll(entry) => record::all(run, *entry, at),
        Command::SkipSet => match run.cursor() {
            None => Err(Refusal::NothingLeft),
            Some(Cursor { set, part: 0 }) => Ok(vec![Event::SetSkipped { set }]),
            Some(Cursor { set, .. }) => Ok(vec![Event::SetLeft { set }]),
        },
        Command::SkipEntry(entry) => arrange::skip(run, *entry),
        Command::Swap { entry, to, cause } => arrange::swap(run, *entry, to, *cause),
        Command::AddEntry(entry) => arrange::add_entry(run, entry),
        Command::Postpone(entry) => arrange::postpone(run, *entry),
        Command::Return(entry) => arrange::take_up(run, *entry),
        Command::AddSet(entry) => arrange::add_set(run, *entry),
        Command::ChangeLoad { entry, load, only_next, sure } => {
            load::change(run, *entry, *load, *only_next, *sure)
        }
        Command::ChoosePin { entry, pin } => load::choose_pin(run, *entry, pin),
        Command::BarHolds(rig) => Ok(vec![Event::BarHolds { rig: rig.clone() }]),
        Command::RestBy(seconds) => rest::by(run, *seconds, at),
        Command::GuardedBy { entry, guard } => guard::by(run, *entry, *guard),
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
            events.push(Event::Finished { as_of: None });
            Ok(events)
        }
        Command::Begin { .. }
        | Command::Undo
        | Command::Redo
        | Command::Wake
        | Command::Date(_)
        | Command::HoldBack { .. }
        | Command::AnswerPain { .. }
        | Command::PainOfJoint { .. }
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
