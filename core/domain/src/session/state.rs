//! The session as it stands: a fold of its events.

use std::collections::BTreeMap;
use std::sync::Arc;

use super::event::{Done, Guard, Stamped, SwapCause};
use super::reading::Reading;
use super::rest::Rest;
use super::sheet::{Call, Entry, Kit, Load, Sheet};
use crate::call::{EntryId, SetId};
use crate::equipment::{Equipment, Rig};
use crate::owners::Owner;
use crate::progress::pace::Slowing;
use crate::quantity::{Mass, Reps, Seconds};

/// The running or last session: its log, and what stands of it.
///
/// The log keeps what was taken back too, so that an undo can be undone.
#[derive(Debug, Clone, Default)]
pub struct State {
    pub(super) log: Vec<Stamped>,
    pub(super) run: Option<Run>,
}

/// A session as it stands.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Run {
    /// The log's number of its first event: the session's name.
    pub session: u64,
    /// When it began.
    pub began: Reading,
    /// The local date it counts for, in days since 1970-01-01: that of its beginning, unless the
    /// lifter said otherwise.
    pub day: i32,
    /// It is entered from paper.
    pub paper: bool,
    /// The sheet as it was begun.
    pub sheet: Arc<Sheet>,
    /// The gym.
    pub equipment: Arc<Equipment>,
    /// Body mass on the day.
    pub body_mass: Option<Mass>,
    /// Every exercise, swapped ones included. Shared, so that a copy of the session costs only what
    /// changes in it.
    pub entries: BTreeMap<EntryId, Arc<EntryRun>>,
    /// The order of work: each lane is one exercise, or a superset.
    pub lanes: Vec<Lane>,
    /// The rest that is running.
    pub rest: Option<Rest>,
    /// The reading of the last event that stands or was taken back.
    pub seen: Reading,
    /// What is on the bar, the posts or the belt now; none when nothing is known of it.
    pub on: Option<Rig>,
    /// When the work of the current set began, where that was said.
    pub started: Option<(SetId, Reading)>,
    /// When the pause began.
    pub paused: Option<Reading>,
    /// When it ended.
    pub finished: Option<Reading>,
    /// Notes in order.
    pub notes: Vec<Note>,
    /// Owners whose outcome of this session is held back.
    pub held_back: Vec<Owner>,
    /// Of exercises on which pain stands, by slug: whether they were done without it.
    pub pain_free: BTreeMap<String, bool>,
    /// Exercises whose pain is of a joint, by slug.
    pub pain_of_joint: Vec<String>,
}

/// A note.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Note {
    /// Of an exercise, or of the session.
    pub entry: Option<EntryId>,
    /// Its text.
    pub text: String,
}

/// Exercises that go round together; one alone is a lane of its own.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Lane {
    /// The exercises in order.
    pub entries: Vec<EntryId>,
    /// Rest between exercises of a round.
    pub rest_within: Seconds,
    /// Rest after a round.
    pub rest_after_round: Seconds,
}

/// An exercise as it stands.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct EntryRun {
    /// As the sheet laid it out; its calls are in `sets`.
    pub entry: Arc<Entry>,
    /// Its sets.
    pub sets: Vec<SetRun>,
    /// What is left of it was left out.
    pub skipped: bool,
    /// It was swapped for this one.
    pub swapped_for: Option<EntryId>,
    /// Why it was swapped, or what is left of it skipped; none where that was the lifter's wish.
    pub left_for: Option<SwapCause>,
    /// Pins, a spotter, or neither; none when nobody was asked.
    pub guard: Option<Guard>,
    /// What is worn from here on.
    pub kit: Vec<Kit>,
    /// Set-up.
    pub set_up: Vec<String>,
}

/// A set as it stands.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SetRun {
    /// What was called.
    pub call: Arc<Call>,
    /// The load, where it was resolved or changed after the sheet.
    pub load: Option<Load>,
    /// Loads of further parts, as `load`.
    pub part_loads: Vec<Load>,
    /// Parts done.
    pub parts: Vec<PartRun>,
    /// No part is to come.
    pub closed: bool,
    /// Left in the middle of its parts.
    pub left: bool,
    /// Left out.
    pub skipped: bool,
    /// The load of the next part, where it differs.
    pub next_load: Option<Load>,
    /// When its work began, where that was said or is known from the clock.
    pub started: Option<Reading>,
    /// What was worn.
    pub kit: Vec<Kit>,
    /// A partner's taps of the part that runs: its beginning and the end of each repetition.
    pub taps: Vec<Reading>,
}

/// A part as it stands.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PartRun {
    /// What it came to.
    pub done: Done,
    /// When it was recorded.
    pub at: Reading,
    /// The rest before it, and how much of it was left (over is negative) when it was recorded.
    pub rest_before: Option<(Rest, i64)>,
    /// It was put right later.
    pub corrected: bool,
    /// Milliseconds that each repetition took, where a partner tapped.
    pub reps_ms: Vec<u32>,
}

impl PartRun {
    /// How it slowed; nothing where nobody tapped, or another number than was done.
    pub fn slowing(&self) -> Option<Slowing> {
        let reps = usize::from(self.done.amount.reps()?);
        Slowing::of(&self.reps_ms).filter(|_| self.reps_ms.len() == reps)
    }
}

impl SetRun {
    /// A set as called, with nothing done.
    pub(super) fn new(call: Call) -> Self {
        Self {
            call: Arc::new(call),
            load: None,
            part_loads: Vec::new(),
            parts: Vec::new(),
            closed: false,
            left: false,
            skipped: false,
            next_load: None,
            started: None,
            kit: Vec::new(),
            taps: Vec::new(),
        }
    }

    /// Whether something of it is still to do.
    pub fn pending(&self) -> bool {
        !self.closed && !self.skipped
    }

    /// Repetitions that a partner tapped of the part that runs, and how it has slowed so far.
    pub fn tapped(&self) -> Option<(Reps, Option<Slowing>)> {
        let reps = Reps::try_from(self.taps.len().checked_sub(1)?).ok()?;
        Some((reps, Slowing::of(&super::reading::between(&self.taps))))
    }

    /// Whether any of it was done.
    pub fn begun(&self) -> bool {
        !self.parts.is_empty()
    }
}

impl EntryRun {
    /// Whether any set is still to do.
    pub fn pending(&self) -> bool {
        !self.skipped && self.swapped_for.is_none() && self.sets.iter().any(SetRun::pending)
    }
}

impl Run {
    /// A set by name.
    pub fn set(&self, id: SetId) -> Option<&SetRun> {
        self.entries.get(&id.entry)?.sets.get(usize::from(id.set))
    }

    pub(super) fn set_mut(&mut self, id: SetId) -> Option<&mut SetRun> {
        Arc::make_mut(self.entries.get_mut(&id.entry)?).sets.get_mut(usize::from(id.set))
    }

    /// The exercises in the order of work, those put off last.
    pub fn in_order(&self) -> impl Iterator<Item = (&Lane, EntryId, &EntryRun)> {
        self.lanes.iter().flat_map(move |lane| {
            lane.entries
                .iter()
                .filter_map(move |id| self.entries.get(id).map(|entry| (lane, *id, &**entry)))
        })
    }
}

impl State {
    /// The session as it stands, running or finished; none where none was ever begun, or its
    /// beginning was taken back.
    pub fn run(&self) -> Option<&Run> {
        self.run.as_ref()
    }

    /// The session, where it is running.
    pub fn running(&self) -> Option<&Run> {
        self.run.as_ref().filter(|run| run.finished.is_none())
    }

    /// The log of the session, with what was taken back.
    pub fn log(&self) -> &[Stamped] {
        &self.log
    }
}
