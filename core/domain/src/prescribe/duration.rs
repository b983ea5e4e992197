//! How long a session takes, with its rests and plate changes.

use crate::call::{Amount, HowMany, Stop, Structure};
use crate::equipment::Rig;
use crate::session::{Block, Call, CallLoad, Entry, Run, Sheet};

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

/// How long a sheet takes.
pub fn duration(sheet: &Sheet) -> Duration {
    Duration {
        warm_up: sheet.warm_up.map_or(0, |seconds| u64::from(seconds.count())),
        entries: sheet
            .blocks
            .iter()
            .flat_map(|block| block.entries.iter().map(move |entry| (block, entry)))
            .map(|(block, entry)| entry_seconds(block, entry, u64::from(sheet.seconds_a_rep)))
            .collect(),
    }
}

/// Seconds that the sets still to do of a running session take.
pub fn seconds_to_go(run: &Run) -> u64 {
    let a_rep = u64::from(run.sheet.seconds_a_rep);
    run.in_order()
        .filter(|(_, _, entry)| entry.pending())
        .flat_map(|(lane, _, entry)| entry.sets.iter().map(move |set| (lane, set)))
        .filter(|(_, set)| set.pending())
        .map(|(lane, set)| {
            let rest = if lane.entries.len() > 1 && set.call.round > 0 {
                // A round's rest is shared by its exercises.
                u64::from(lane.rest_within.count())
                    + u64::from(lane.rest_after_round.count()) / lane.entries.len() as u64
            } else {
                u64::from(set.call.rest.count())
            };
            work_seconds(&set.call, a_rep) + rest
        })
        .sum()
}

fn entry_seconds(block: &Block, entry: &Entry, a_rep: u64) -> u64 {
    let shared = block.entries.len() as u64;
    let mut on: Option<&Rig> = None;
    let mut total = SETTING_UP;
    for call in &entry.calls {
        let rig = match &call.load {
            CallLoad::Known(load) => Some(&load.rig),
            CallLoad::AfterTop { .. } | CallLoad::Chosen { .. } => None,
        };
        let change = rig.map_or(0, |rig| plates_moved(on, rig) * A_PLATE);
        on = rig.or(on);
        let rest = if shared > 1 && call.round > 0 {
            u64::from(block.rest_within.count())
                + u64::from(block.rest_after_round.count()) / shared
        } else if call.side.is_some() {
            // Both sides of a set share its rest.
            (u64::from(entry.rest_between_sides.count()) + u64::from(call.rest.count())) / 2
        } else {
            u64::from(call.rest.count())
        };
        // Plates are changed while resting.
        total += work_seconds(call, a_rep) + rest.max(change);
    }
    total
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
