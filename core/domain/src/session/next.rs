//! What comes next.

use super::sheet::{Call, CallLoad, Load};
use super::state::{EntryRun, Lane, Run, SetRun};
use crate::call::{Amount, EffortTarget, HowMany, Structure};
use crate::call::{EntryId, SetId};
use crate::quantity::{Range, RepRange, Reps, Seconds};

/// The part that is to be done now.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Cursor {
    /// The set.
    pub set: SetId,
    /// The part within it, from 0.
    pub part: u16,
}

impl Run {
    /// The part to be done now: the next one of a set that is under way, or the first set in order.
    pub fn cursor(&self) -> Option<Cursor> {
        self.under_way().or_else(|| {
            self.lanes.iter().find_map(|lane| self.next_in(lane)).map(|set| Cursor { set, part: 0 })
        })
    }

    /// The next part of a set that is under way.
    pub fn under_way(&self) -> Option<Cursor> {
        self.entries.iter().find_map(|(id, run)| {
            if run.skipped || run.swapped_for.is_some() {
                return None;
            }
            let (at, set) =
                run.sets.iter().enumerate().find(|(_, set)| set.begun() && set.pending())?;
            Some(Cursor {
                set: SetId { entry: *id, set: u16::try_from(at).ok()? },
                part: u16::try_from(set.parts.len()).ok()?,
            })
        })
    }

    /// The next set of a lane: ramps exercise by exercise, then round by round.
    fn next_in(&self, lane: &Lane) -> Option<SetId> {
        lane.entries
            .iter()
            .enumerate()
            .filter_map(|(place, id)| {
                let run = self.entries.get(id).filter(|run| run.pending())?;
                let (at, set) = run.next_pending()?;
                let turn = if set.call.round == 0 { 0 } else { 1 + run.turn_of(set) };
                Some(((turn, place), SetId { entry: *id, set: u16::try_from(at).ok()? }))
            })
            .min_by_key(|(order, _)| *order)
            .map(|(_, set)| set)
    }

    /// The lane an exercise is in.
    pub fn lane_of(&self, entry: EntryId) -> Option<&Lane> {
        self.lanes.iter().find(|lane| lane.entries.contains(&entry))
    }

    /// The load called for a part; none where it is the lifter's to find.
    pub fn load_at(&self, cursor: &Cursor) -> Option<&Load> {
        let set = self.set(cursor.set)?;
        if cursor.part > 0 {
            if let Some(load) = &set.next_load {
                return Some(load);
            }
            let further = usize::from(cursor.part) - 1;
            let resolved = if set.load.is_some() { &set.part_loads } else { &set.call.part_loads };
            if let Some(load) = resolved.get(further) {
                return Some(load);
            }
            // The same load as the part before, whatever that really was.
            return set.parts.last().map(|part| &part.done.load);
        }
        set.first_load()
    }

    /// How many a part asks for: its own figure, cut by what the other side did or what is left
    /// of a total.
    pub fn how_many_at(&self, cursor: &Cursor) -> Option<HowMany> {
        let entry = self.entries.get(&cursor.set.entry)?;
        let set = entry.sets.get(usize::from(cursor.set.set))?;
        let asked = part_how_many(&set.call, &set.done_reps(), cursor.part)?;
        Some(match self.other_side_reps(entry, set, cursor.part) {
            Some(limit) => limited(asked, limit),
            None => asked,
        })
    }

    /// What one tap records of a part, and the figure shows: what a partner tapped; else what the rule tries for where it lies in
    /// what is asked, else the least that is asked.
    pub fn as_called_at(&self, cursor: &Cursor) -> Option<Amount> {
        let asked = self.how_many_at(cursor)?;
        let set = self.set(cursor.set)?;
        if let Some((reps @ 1.., _)) = set.tapped() {
            return Some(Amount::Reps(reps));
        }
        let aim = set.call.aim.filter(|_| cursor.part == 0);
        Some(aim.filter(|aim| asked.holds(aim)).unwrap_or_else(|| asked.as_called()))
    }

    /// How many the part after this one asks, when this one ends as called and another follows.
    pub fn part_after(&self, cursor: &Cursor) -> Option<HowMany> {
        let set = self.set(cursor.set)?;
        let mut done = set.done_reps();
        done.push(self.as_called_at(cursor)?.reps().unwrap_or(0));
        part_how_many(&set.call, &done, cursor.part.checked_add(1)?)
    }

    /// The load of the part after this one, where the sheet gives it another.
    pub fn load_after(&self, cursor: &Cursor) -> Option<&Load> {
        let set = self.set(cursor.set)?;
        let resolved = if set.load.is_some() { &set.part_loads } else { &set.call.part_loads };
        resolved.get(usize::from(cursor.part))
    }

    /// Repetitions that the side worked first did in this part of this round: the limit of the
    /// side that follows.
    fn other_side_reps(&self, entry: &EntryRun, set: &SetRun, part: u16) -> Option<Reps> {
        let side = set.call.side?;
        let first = entry
            .sets
            .iter()
            .find(|other| {
                (other.call.row, other.call.round) == (set.call.row, set.call.round)
                    && other.call.side == Some(side.other())
            })
            .filter(|other| other.closed)?;
        first.parts.get(usize::from(part))?.done.amount.reps()
    }

    /// The effort target of a set.
    pub fn effort_at(&self, set: SetId) -> Option<EffortTarget> {
        self.set(set)?.call.effort
    }
}

impl EntryRun {
    /// The first set that is still to do: by row, then by round, as they were called. The ramp
    /// comes before all.
    fn next_pending(&self) -> Option<(usize, &SetRun)> {
        self.sets
            .iter()
            .enumerate()
            .filter(|(_, set)| set.pending())
            .min_by_key(|(at, set)| (set.call.round > 0, set.call.row, set.call.round, *at))
    }

    /// How many rounds of work come before a set in its exercise; both sides of one share a turn.
    pub fn turn_of(&self, set: &SetRun) -> usize {
        let key = |set: &SetRun| (set.call.row, set.call.round);
        let mut before: Vec<_> = self
            .sets
            .iter()
            .filter(|other| other.call.round > 0 && key(other) < key(set))
            .map(key)
            .collect();
        before.sort_unstable();
        before.dedup();
        before.len()
    }

    /// How many rounds of work the exercise has come to so far.
    pub fn turns(&self) -> usize {
        let mut all: Vec<_> = self
            .sets
            .iter()
            .filter(|set| set.call.round > 0)
            .map(|set| (set.call.row, set.call.round))
            .collect();
        all.sort_unstable();
        all.dedup();
        all.len()
    }
}

impl SetRun {
    /// The load its first part is called with.
    pub fn first_load(&self) -> Option<&Load> {
        self.load.as_ref().or(match &self.call.load {
            CallLoad::Known(load) => Some(load),
            CallLoad::AfterTop { .. } | CallLoad::Chosen { .. } => None,
        })
    }

    /// Repetitions of each part done.
    pub fn done_reps(&self) -> Vec<Reps> {
        self.parts.iter().map(|part| part.done.amount.reps().unwrap_or(0)).collect()
    }

    /// All repetitions of the set, a spotter's help apart.
    pub fn reps(&self) -> Reps {
        self.done_reps().iter().fold(0, |sum: Reps, reps| sum.saturating_add(*reps))
    }
}

/// How many a part of a call asks for, with what the parts before it came to. None past the last.
pub(super) fn part_how_many(call: &Call, done: &[Reps], part: u16) -> Option<HowMany> {
    let at = usize::from(part);
    match &call.structure {
        Structure::Straight => (at == 0).then_some(call.how_many),
        Structure::Cluster { blocks, .. } => {
            blocks.get(at).map(|reps| HowMany::Reps(RepRange::just(*reps)))
        }
        Structure::RestPause { each, total, most, .. } => {
            if at == 0 {
                return Some(call.how_many);
            }
            if at > usize::from(*most) {
                return None;
            }
            let so_far: u32 = done.iter().map(|reps| u32::from(*reps)).sum();
            let remaining =
                total.map_or(u32::from(*each), |total| u32::from(total).saturating_sub(so_far));
            if remaining == 0 {
                return None;
            }
            let reps = Reps::try_from(remaining.min(u32::from(*each))).ok()?;
            Some(HowMany::Reps(RepRange::just(reps)))
        }
        Structure::Drop { off } => (at <= off.len()).then_some(call.how_many),
        Structure::Ranges { parts } => parts.get(at).map(|part| HowMany::Reps(part.reps)),
        Structure::Continued { parts } => match at.checked_sub(1) {
            None => Some(call.how_many),
            Some(further) => parts.get(further).map(|part| part.how_many),
        },
    }
}

/// Whether a part ends its set: it was the last, it fell short, or it ended otherwise.
pub(super) fn closes(call: &Call, done: &[Reps], part: u16, amount: &Amount) -> bool {
    let Some(asked) = part_how_many(call, done.get(..usize::from(part)).unwrap_or(done), part)
    else {
        return true;
    };
    let short = match &call.structure {
        // Nobody can fall short of a drop's part, or of an opening that is taken near failure.
        Structure::Straight | Structure::Drop { .. } => false,
        Structure::RestPause { .. } => part > 0 && !asked.reached_by(amount),
        Structure::Cluster { .. } => !asked.reached_by(amount),
        Structure::Ranges { .. } | Structure::Continued { .. } => false,
    };
    short || part_how_many(call, done, part.saturating_add(1)).is_none()
}

/// The pause after a part that is not the last.
pub(super) fn pause_after(call: &Call, part: u16) -> Option<Seconds> {
    match &call.structure {
        Structure::Cluster { pause, .. } | Structure::RestPause { pause, .. } => Some(*pause),
        Structure::Continued { parts } => parts.get(usize::from(part))?.pause,
        Structure::Straight | Structure::Drop { .. } | Structure::Ranges { .. } => None,
    }
}

fn limited(asked: HowMany, limit: Reps) -> HowMany {
    match asked {
        HowMany::Reps(range) if range.to > limit => {
            HowMany::Reps(Range { from: range.from.min(limit), to: limit })
        }
        HowMany::Open { at_least, stop } => HowMany::Open { at_least: at_least.min(limit), stop },
        other => other,
    }
}
