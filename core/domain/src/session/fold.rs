//! Folding events into the state. Nothing here can fail: an event that no longer fits (its tap was
//! taken back, say) changes nothing.

use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

use super::event::{Event, Stamped, SwapCause};
use super::reading::between;
use super::rest::{Rest, RestKind};
use super::sheet::Entry;
use super::state::{EntryRun, Lane, Note, PartRun, Run, SetRun, State};
use crate::call::{EntryId, SetId};
use crate::quantity::Seconds;

impl State {
    /// Folds one event of the log in.
    pub fn apply(&mut self, stamped: Stamped) {
        match &stamped.event {
            Event::Began { .. } => {
                self.log = vec![stamped];
                self.refold();
            }
            Event::Undone { .. } => {
                self.log.push(stamped);
                self.refold();
            }
            _ => {
                if let Some(run) = &mut self.run {
                    run.fold(&stamped);
                }
                self.log.push(stamped);
            }
        }
    }

    /// The state after all the events of one session's log.
    pub fn replay(log: Vec<Stamped>) -> Self {
        let mut state = Self { log, run: None };
        state.refold();
        state
    }

    /// The taps that are taken back: each undo takes its tap back unless it is itself taken back.
    pub(super) fn taken_back(&self) -> BTreeSet<u64> {
        let mut taken = BTreeSet::new();
        for stamped in self.log.iter().rev() {
            if let Event::Undone { tap } = stamped.event
                && !taken.contains(&stamped.tap)
            {
                taken.insert(tap);
            }
        }
        taken
    }

    fn refold(&mut self) {
        let taken = self.taken_back();
        let mut run = None;
        for stamped in self.log.iter().filter(|stamped| !taken.contains(&stamped.tap)) {
            match (&stamped.event, &mut run) {
                (Event::Began { .. }, _) => run = Run::begin(stamped),
                (_, Some(run)) => run.fold(stamped),
                (_, None) => {}
            }
        }
        if let (Some(run), Some(last)) = (&mut run, self.log.last()) {
            run.seen = last.at.clone();
        }
        self.run = run;
    }
}

impl Run {
    fn begin(stamped: &Stamped) -> Option<Self> {
        let Event::Began { sheet, equipment, body_mass } = &stamped.event else { return None };
        let mut entries = BTreeMap::new();
        let mut lanes = Vec::new();
        for block in &sheet.blocks {
            lanes.push(Lane {
                entries: block.entries.iter().map(|entry| entry.id).collect(),
                rest_within: block.rest_within,
                rest_after_round: block.rest_after_round,
            });
            for entry in &block.entries {
                entries.insert(entry.id, Arc::new(EntryRun::new(entry.clone())));
            }
        }
        Some(Self {
            session: stamped.seq,
            began: stamped.at.clone(),
            day: stamped.at.local_day(),
            paper: false,
            sheet: Arc::new(sheet.clone()),
            equipment: Arc::new(equipment.clone()),
            body_mass: *body_mass,
            entries,
            lanes,
            rest: None,
            seen: stamped.at.clone(),
            on: None,
            started: None,
            paused: None,
            finished: None,
            notes: Vec::new(),
            held_back: Vec::new(),
            pain_free: BTreeMap::new(),
            pain_of_joint: Vec::new(),
        })
    }

    pub(super) fn fold(&mut self, stamped: &Stamped) {
        match &stamped.event {
            Event::Began { .. } | Event::Undone { .. } => {}
            Event::SetStarted { set } => {
                self.started = Some((*set, stamped.at.clone()));
                // The work has begun: nobody rests any more.
                self.rest = None;
            }
            Event::RepTapped { set, part } => {
                let fits = |run: &SetRun| run.parts.len() == usize::from(*part) && run.pending();
                if let Some(run) = self.set_mut(*set).filter(|run| fits(run)) {
                    run.taps.push(stamped.at.clone());
                    if run.taps.len() == 1 {
                        self.started = Some((*set, stamped.at.clone()));
                        self.rest = None;
                    }
                }
            }
            Event::PartDone(part) => self.fold_part(part, stamped),
            Event::Corrected { set, part, done } => {
                if let Some(run) =
                    self.set_mut(*set).and_then(|set| set.parts.get_mut(usize::from(*part)))
                {
                    run.done = done.clone();
                    run.corrected = true;
                }
            }
            Event::SetLeft { set } => {
                if let Some(set) = self.set_mut(*set) {
                    set.closed = true;
                    set.left = true;
                }
            }
            Event::SetSkipped { set } => {
                if let Some(set) = self.set_mut(*set) {
                    set.skipped = true;
                }
            }
            Event::EntrySkipped { entry, pain } => self.with(*entry, |entry| {
                entry.skipped = true;
                entry.left_for = pain.then_some(SwapCause::Pain);
            }),
            Event::Swapped { entry, to, cause } => self.swap(*entry, to, *cause),
            Event::EntryAdded { entry } => {
                self.lanes.push(Lane::alone(entry.id));
                self.entries.insert(entry.id, Arc::new(EntryRun::new(entry.clone())));
            }
            Event::Postponed { entry } => self.postpone(*entry),
            Event::Returned { entry } => {
                if let Some(at) = self.lanes.iter().position(|lane| lane.entries.contains(entry)) {
                    let lane = self.lanes.remove(at);
                    self.lanes.insert(0, lane);
                }
            }
            Event::SetAdded { set, call } => {
                let call = call.clone();
                self.with(set.entry, |entry| entry.sets.push(SetRun::new(call)));
            }
            Event::SetCalled { set, call } => {
                if let Some(set) = self.set_mut(*set).filter(|set| !set.begun()) {
                    set.call = Arc::new(call.clone());
                    (set.load, set.next_load) = (None, None);
                    set.part_loads.clear();
                }
            }
            Event::LoadsSet { loads } => {
                for row in loads {
                    if let Some(set) = self.set_mut(row.set) {
                        set.load = Some(row.load.clone());
                        set.part_loads.clone_from(&row.part_loads);
                        Arc::make_mut(&mut set.call).reason = row.reason.clone();
                    }
                }
            }
            Event::BarHolds { rig } => self.on = Some(rig.clone()),
            Event::RestBegan { rest } | Event::RestSet { rest } => self.rest = Some(rest.clone()),
            Event::RestRebased { was, rest } => {
                if self.rest.as_ref() == Some(was) {
                    self.rest = Some(rest.clone());
                }
            }
            Event::Guarded { entry, guard } => {
                self.with(*entry, |entry| entry.guard = Some(*guard));
            }
            Event::KitUsed { entry, kit } => {
                self.with(*entry, |entry| entry.kit.clone_from(kit));
            }
            Event::SetUpNoted { entry, set_up } => {
                self.with(*entry, |entry| entry.set_up.clone_from(set_up));
            }
            Event::Noted { entry, text } => {
                self.notes.push(Note { entry: *entry, text: text.clone() });
            }
            Event::Dated { day, paper } => {
                (self.day, self.paper) = (*day, self.paper || *paper);
            }
            Event::Paused => self.paused = Some(stamped.at.clone()),
            Event::Resumed => self.paused = None,
            Event::Finished { as_of } => {
                self.finished = Some(as_of.as_ref().unwrap_or(&stamped.at).clone());
                self.rest = None;
                self.paused = None;
            }
            Event::PainAnswered { exercise, free } => {
                self.pain_free.insert(exercise.clone(), *free);
            }
            Event::PainOfJoint { exercise, of_joint } => {
                self.pain_of_joint.retain(|other| other != exercise);
                if *of_joint {
                    self.pain_of_joint.push(exercise.clone());
                }
            }
            Event::HeldBack { owner, held } => {
                self.held_back.retain(|other| other != owner);
                if *held {
                    self.held_back.push(owner.clone());
                }
            }
        }
        self.seen = stamped.at.clone();
    }

    fn with(&mut self, entry: EntryId, change: impl FnOnce(&mut EntryRun)) {
        if let Some(entry) = self.entries.get_mut(&entry) {
            change(Arc::make_mut(entry));
        }
    }

    fn fold_part(&mut self, part: &super::event::PartDone, stamped: &Stamped) {
        let rest_before: Option<(Rest, i64)> = self.rest.take().map(|rest| {
            let left = rest.standing(Some(&self.seen), &stamped.at).left_ms;
            (rest, left)
        });
        let started = self.started.take().filter(|(set, _)| *set == part.set).map(|(_, at)| at);
        // The sets of a clock-driven series start when the clock says so.
        let started = started.or_else(|| {
            rest_before
                .as_ref()
                .filter(|(rest, left_ms)| rest.kind == RestKind::Clock && *left_ms <= 0)
                .map(|(_, left_ms)| stamped.at.earlier_by(left_ms.saturating_neg()))
        });
        let kit = self.entries.get(&part.set.entry).map(|entry| entry.kit.clone());
        if let Some(set) = self.set_mut(part.set) {
            if set.started.is_none() {
                set.started = started;
            }
            set.kit = kit.unwrap_or_default();
            set.closed = part.closes;
            set.next_load.clone_from(&part.next_load);
            let taps = std::mem::take(&mut set.taps);
            set.parts.push(PartRun {
                reps_ms: between(&taps),
                done: part.done.clone(),
                at: stamped.at.clone(),
                rest_before,
                corrected: false,
            });
        }
        if part.done.load.rig.holds_plates() {
            self.on = Some(part.done.load.rig.clone());
        }
    }

    fn swap(&mut self, entry: EntryId, to: &Entry, cause: SwapCause) {
        self.with(entry, |entry| {
            entry.swapped_for = Some(to.id);
            entry.left_for = Some(cause);
        });
        for place in self.lanes.iter_mut().flat_map(|lane| &mut lane.entries) {
            if *place == entry {
                *place = to.id;
            }
        }
        // What was done of the old one stays in the order, behind the one that took its place.
        self.lanes.push(Lane::alone(entry));
        self.entries.insert(to.id, Arc::new(EntryRun::new(to.clone())));
    }

    fn postpone(&mut self, entry: EntryId) {
        for lane in &mut self.lanes {
            lane.entries.retain(|id| *id != entry);
        }
        self.lanes.retain(|lane| !lane.entries.is_empty());
        self.lanes.push(Lane::alone(entry));
    }
}

impl EntryRun {
    fn new(entry: Entry) -> Self {
        Self {
            sets: entry.calls.iter().cloned().map(SetRun::new).collect(),
            set_up: entry.set_up.clone(),
            kit: entry.wear.clone(),
            entry: Arc::new(entry),
            skipped: false,
            swapped_for: None,
            left_for: None,
            guard: None,
        }
    }

    /// The name that its next set would have.
    pub(super) fn next_set(&self) -> Option<SetId> {
        Some(SetId { entry: self.entry.id, set: u16::try_from(self.sets.len()).ok()? })
    }
}

impl Lane {
    fn alone(entry: EntryId) -> Self {
        Self {
            entries: vec![entry],
            rest_within: Seconds::default(),
            rest_after_round: Seconds::default(),
        }
    }
}
