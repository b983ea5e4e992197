//! What stands with an owner after all that was said to it.

use std::collections::BTreeMap;

use serde::{Deserialize, Serialize};

use super::change::{Change, MaxOrigin, Word};
use super::row::RowId;
use crate::call::{Amount, HowMany};
use crate::catalogue::Counting;
use crate::plan::Miss;
use crate::quantity::{Mass, Percent, Reps};

/// A reference max.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(default)]
pub struct Max {
    /// The max that holds: the mass moved, its local date in days since 1970-01-01, and how it came
    /// to be known.
    pub now: Option<(Mass, i32, MaxOrigin)>,
    /// An estimate lay above it in the last session that said anything.
    pub above: Option<Mass>,
}

/// A miss that stands in a row's own session until it is made there.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct Missed {
    /// The row.
    pub at: RowId,
    /// Sessions running.
    pub times: u8,
    /// What was called there first, before rounding.
    pub load: Option<Mass>,
    /// What the plan does about it.
    pub then: Miss,
}

/// What a track carries.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(default)]
pub struct Track {
    /// The load of a row's first set, before rounding: on the bar, in each hand, added to the body
    /// (help is negative). None where it is not found yet or has no number.
    pub load: Option<Mass>,
    /// Local date since which it is that, in days since 1970-01-01.
    pub since: i32,
    /// How it is counted; none before it was found.
    pub counting: Option<Counting>,
    /// What it was found for.
    pub asked: Option<HowMany>,
    /// Places on stacks without numbers, by gym.
    pub places: BTreeMap<String, String>,
    /// What to try for within what is asked.
    pub aim: Option<Amount>,
    /// The range goes on to this while the load is held.
    pub top: Option<Amount>,
    /// Two or more over the goal once: the load that was meant, and the last set.
    pub over: Option<(Option<Mass>, Reps)>,
    /// Well off its target once, in half repetitions.
    pub off: Option<i16>,
    /// The share of the load in its next session alone.
    pub next: Option<Percent>,
    /// Misses that stand.
    pub missed: Vec<Missed>,
}

/// A lay-off that is being taken back.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct LaidOff {
    /// Kept of the load.
    pub keep: Percent,
}

/// Pain that stands on an exercise.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct Pain {
    /// Since this local date, in days since 1970-01-01.
    pub since: i32,
    /// The lightest load that hurt last, as it was called.
    pub at: Option<Mass>,
    /// Sessions running in which it hurt.
    pub running: u8,
    /// A session without it was done: the share of the load it comes back from.
    pub back: Option<Percent>,
}

/// What is careful of an exercise.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(default)]
pub struct Care {
    /// A lay-off that is being taken back.
    pub laid_off: Option<LaidOff>,
    /// Pain.
    pub pain: Option<Pain>,
}

/// The state of an owner of any kind.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum State {
    /// Of a max.
    Max(Max),
    /// Of a track.
    Track(Track),
    /// Of what is careful of an exercise.
    Care(Care),
}

impl State {
    /// Folds a word in: what lasts one session ends with the next that says anything.
    pub(super) fn take(&mut self, word: &Word) {
        let said = &word.outcome;
        if said.held || said.silent {
            return;
        }
        match self {
            Self::Max(max) => {
                max.above = None;
                for change in &said.changes {
                    max.take(change, word.day);
                }
            }
            Self::Track(track) => {
                (track.next, track.over, track.off, track.aim) = (None, None, None, None);
                for change in &said.changes {
                    track.take(change, word.day);
                }
            }
            Self::Care(care) => {
                for change in &said.changes {
                    care.take(change, word.day);
                }
            }
        }
    }
}

impl Max {
    fn take(&mut self, change: &Change, day: i32) {
        match change {
            Change::Max { mass, origin } => self.now = Some((*mass, day, origin.clone())),
            Change::AboveMax(estimate) => self.above = Some(*estimate),
            _ => {}
        }
    }
}

impl Track {
    fn take(&mut self, change: &Change, day: i32) {
        match change {
            Change::Load { load, counting, asked } => {
                self.load = Some(*load);
                self.since = day;
                self.counting = Some(*counting);
                self.asked = Some(*asked);
                // A load newly said begins its range, and misses of another say nothing of it.
                self.top = None;
                self.missed.clear();
            }
            Change::Fresh => *self = Self::default(),
            Change::Step(by) => {
                self.load = self.load.and_then(|load| load.checked_add(*by)).or(self.load);
                self.since = day;
                self.top = None;
            }
            Change::Place { gym, place } => {
                self.places.insert(gym.clone(), place.clone());
                self.top = None;
            }
            Change::Aim(aim) => self.aim = Some(*aim),
            Change::Extend(top) => self.top = Some(*top),
            Change::TwoOver { load, done } => self.over = Some((*load, *done)),
            Change::WellOff(halves) => self.off = Some(*halves),
            Change::NextTime(share) => self.next = Some(*share),
            Change::Missed { at, load, then } => {
                match self.missed.iter_mut().find(|missed| missed.at == *at) {
                    Some(missed) => {
                        missed.times = missed.times.saturating_add(1);
                        missed.then = *then;
                    }
                    None => {
                        self.missed.push(Missed { at: *at, times: 1, load: *load, then: *then })
                    }
                }
            }
            Change::Cleared(at) => self.missed.retain(|missed| missed.at != *at),
            _ => {}
        }
    }

    /// The miss that stands in a row's own session.
    pub fn missed_at(&self, row: Option<RowId>) -> Option<&Missed> {
        self.missed.iter().find(|missed| Some(missed.at) == row)
    }
}

impl Care {
    fn take(&mut self, change: &Change, day: i32) {
        match change {
            Change::LaidOff { keep } => self.laid_off = Some(LaidOff { keep: *keep }),
            Change::Back => self.laid_off = None,
            Change::Hurt { at } => {
                let before = self.pain.filter(|pain| pain.back.is_none());
                self.pain = Some(Pain {
                    since: before.map_or(day, |pain| pain.since),
                    at: *at,
                    running: before.map_or(0, |pain| pain.running).saturating_add(1),
                    back: None,
                });
            }
            Change::PainFree { keep } => {
                if let Some(pain) = &mut self.pain {
                    pain.back = Some(*keep);
                    pain.running = 0;
                }
            }
            Change::Whole => self.pain = None,
            _ => {}
        }
    }
}
