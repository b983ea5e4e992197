//! How long a session takes, with its rests and plate changes.

use crate::call::{Amount, Flow, HowMany, Stop, Structure};
use crate::equipment::Rig;
use crate::session::{Block, Call, CallLoad, Entry, EntryRun, Lane, Run, SetRun, Sheet};

/// Seconds to put one plate on each side, or to take one off (common practice).
const A_PLATE: u64 = 5;
/// Seconds to set up an exercise (common practice).
const SETTING_UP: u64 = 60;
/// Millimetres walked in a second under load (common practice).
const WALK: u64 = 1_000;
/// Repetitions that an open set is reckoned at beyond its floor (common practice).
const OPEN_BEYOND: u64 = 4;

/// How long a sheet takes, in seconds.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Duration {
    /// General warm-up.
    pub warm_up: u64,
    /// Each exercise in order, with its rests.
    pub entries: Vec<u64>,
}

impl Duration {
    /// All of it.
    pub fn total(&self) -> u64 {
        self.entries.iter().fold(self.warm_up, |sum, entry| sum.saturating_add(*entry))
    }
}

/// How long a sheet takes. Sets of which nobody knows how many it will take (a climb, a repeat, a
/// test) are reckoned at the most they may come to; of a total, at as many as called. A rest is taken
/// between sets; from one exercise to the next the longer of it and of setting up, once; after the
/// last set none.
pub fn duration(sheet: &Sheet) -> Duration {
    let a_rep = u64::from(sheet.seconds_a_rep);
    let mut entries = Vec::new();
    // The rest that the block before ends with: the time for setting up the next.
    let mut before = 0;
    for block in &sheet.blocks {
        let shared = block.entries.iter().filter(|entry| !entry.calls.is_empty()).count() as u64;
        let mut after = 0;
        for entry in &block.entries {
            let (seconds, last) = entry_seconds(block, entry, a_rep, shared);
            let setting_up = if entry.calls.is_empty() { 0 } else { SETTING_UP.max(before) };
            before = 0;
            entries.push(setting_up + seconds);
            after = after.max(last);
        }
        if shared > 1 {
            // The last round has its rests within, and none after it.
            if let Some(last) = entries.last_mut() {
                *last += u64::from(block.rest_within.count()) * (shared - 1);
            }
            after = block.rest_after_round.count().into();
        }
        before = after;
    }
    Duration { warm_up: sheet.warm_up.map_or(0, |seconds| u64::from(seconds.count())), entries }
}

/// Seconds that the sets still to do of a running session take, reckoned as [`duration`] does.
pub fn seconds_to_go(run: &Run) -> u64 {
    let a_rep = u64::from(run.sheet.seconds_a_rep);
    let mut total = 0;
    let mut last = 0;
    for (lane, _, entry) in run.in_order().filter(|(_, _, entry)| entry.pending()) {
        let (seconds, rest) = pending_seconds(lane, entry, a_rep);
        total += seconds;
        last = rest;
    }
    total - last
}

/// Seconds of an exercise's sets still to do, the rest after the last among them, and that rest.
fn pending_seconds(lane: &Lane, entry: &EntryRun, a_rep: u64) -> (u64, u64) {
    let shared = lane.entries.len() as u64;
    let within = u64::from(lane.rest_within.count());
    let after_round = u64::from(lane.rest_after_round.count());
    let between_sides = u64::from(entry.entry.rest_between_sides.count());
    let mut last = 0;
    let sets = entry.sets.iter().filter(|set| set.pending()).map(|set| {
        let call = &set.call;
        let of_row = |other: &&SetRun| {
            let other = &other.call;
            other.round > 0 && (other.row, other.side) == (call.row, call.side)
        };
        let over = entry.sets.iter().filter(of_row).filter(|other| !other.pending());
        let left = times(call).saturating_sub(over.count() as u64).max(1);
        let rest = if shared > 1 && call.round > 0 {
            shared_rest(within, after_round, shared)
        } else {
            own_rest(call, between_sides)
        };
        let one = one_set(call, a_rep, rest);
        last = one.saturating_sub(work_seconds(call, a_rep));
        left * one
    });
    (sets.sum(), last)
}

/// Seconds of an exercise without the rest after its last set, and that rest.
fn entry_seconds(block: &Block, entry: &Entry, a_rep: u64, shared: u64) -> (u64, u64) {
    let mut on: Option<&Rig> = None;
    let (mut total, mut last) = (0, 0);
    for call in &entry.calls {
        let rig = match &call.load {
            CallLoad::Known(load) => Some(&load.rig),
            CallLoad::AfterTop { .. } | CallLoad::Chosen { .. } => None,
        };
        let change = rig.map_or(0, |rig| plates_moved(on, rig) * A_PLATE);
        on = rig.or(on);
        let rest = if shared > 1 && call.round > 0 {
            let (within, after) = (block.rest_within.count(), block.rest_after_round.count());
            shared_rest(within.into(), after.into(), shared)
        } else {
            own_rest(call, entry.rest_between_sides.count().into())
        };
        // Plates are changed while resting.
        let one = one_set(call, a_rep, rest.max(change));
        total += times(call) * one;
        last = one.saturating_sub(work_seconds(call, a_rep));
    }
    (total.saturating_sub(last), last)
}

/// Work and rest of one set; by the clock it is what lies between two starts.
fn one_set(call: &Call, a_rep: u64, rest: u64) -> u64 {
    let work = work_seconds(call, a_rep);
    match call.flow {
        Flow::Clock { every } if call.round > 0 => work.max(every.count().into()),
        _ => work + rest,
    }
}

/// Rests between the exercises of a round, and each one's part of the rest after it.
fn shared_rest(within: u64, after_round: u64, shared: u64) -> u64 {
    (within * shared.saturating_sub(1) + after_round) / shared.max(1)
}

/// Rest after a set; both sides of one share it, and have the rest between them.
fn own_rest(call: &Call, between_sides: u64) -> u64 {
    let rest = u64::from(call.rest.count());
    if call.side.is_some() { (between_sides + rest) / 2 } else { rest }
}

/// How many sets a call stands for.
fn times(call: &Call) -> u64 {
    match call.flow {
        Flow::Climb { most, .. } | Flow::Repeat { most, .. } | Flow::Test { most, .. } => {
            u64::from(most.max(1))
        }
        Flow::Total { reps, most } => {
            let each = call.how_many.as_called().reps().unwrap_or(1).max(1);
            u64::from(reps).div_ceil(u64::from(each)).clamp(1, u64::from(most.max(1)))
        }
        Flow::Listed | Flow::Clock { .. } => 1,
    }
}

fn plates_moved(on: Option<&Rig>, to: &Rig) -> u64 {
    let was = on.map(Rig::side).unwrap_or_default();
    let is = to.side();
    let kept = was.iter().zip(is).take_while(|(a, b)| a == b).count();
    (was.len() + is.len() - 2 * kept) as u64
}

/// Seconds that one set's work takes, its pauses included.
pub(super) fn work_seconds(call: &Call, seconds_a_rep: u64) -> u64 {
    let tenths =
        call.manner.tempo.map_or(seconds_a_rep * 10, |tempo| u64::from(tempo.rep_tenths()));
    let one = |asked: &HowMany| -> u64 {
        match asked {
            HowMany::Open { stop: Stop::Time(seconds), .. } => u64::from(seconds.count()),
            HowMany::Open { at_least, .. } => (u64::from(*at_least) + OPEN_BEYOND) * tenths / 10,
            asked => match asked.as_called() {
                Amount::Reps(reps) => u64::from(reps) * tenths / 10,
                Amount::Seconds(seconds) => u64::from(seconds.count()),
                Amount::Metres(distance) => u64::from(distance.millimetres()) / WALK,
            },
        }
    };
    let own = one(&call.how_many);
    match &call.structure {
        Structure::Straight => own,
        Structure::Cluster { blocks, pause } => {
            let reps: u64 = blocks.iter().map(|reps| u64::from(*reps)).sum();
            reps * tenths / 10 + u64::from(pause.count()) * (blocks.len() as u64).saturating_sub(1)
        }
        Structure::RestPause { pause, each, total, most } => {
            let opening = call.how_many.as_called().reps().unwrap_or(0);
            let parts = match total {
                Some(total) => u64::from(total.saturating_sub(opening))
                    .div_ceil(u64::from((*each).max(1)))
                    .min(u64::from(*most)),
                None => u64::from(*most),
            };
            own + parts * (u64::from(pause.count()) + u64::from(*each) * tenths / 10)
        }
        // A drop is reckoned at half of what went before (common practice).
        Structure::Drop { off } => {
            own + (1..=off.len() as u64).map(|nth| own >> nth.min(10)).sum::<u64>()
        }
        Structure::Ranges { parts } => {
            parts.iter().map(|part| u64::from(part.reps.from) * tenths / 10).sum()
        }
        Structure::Continued { parts } => {
            own + parts
                .iter()
                .map(|part| {
                    one(&part.how_many) + part.pause.map_or(0, |pause| u64::from(pause.count()))
                })
                .sum::<u64>()
        }
    }
}
