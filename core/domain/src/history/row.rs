//! The rows.

use serde::{Deserialize, Serialize};

use crate::call::{Amount, EffortTarget, HowMany, Side, WeekKind};
use crate::catalogue::{Counting, Muscle};
use crate::progress::pace::{Point, Slowing};
use crate::quantity::{Distance, Mass, Reps, Reserve, Seconds};
use crate::session::{Ending, Kit, PlanPlace, SetId, SetKind};
use crate::volume::{Closeness, Tally, Week};

/// Names a set for ever: sets of different sessions sort by session.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
pub struct SetKey {
    /// The session, by the log's number of its first event.
    pub session: u64,
    /// The set within it.
    pub set: SetId,
}

/// One part of a set that was done.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct DonePart {
    /// How much.
    pub amount: Amount,
    /// The figure of its load, where it has one.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub figure: Option<Mass>,
    /// How it slowed, where a partner tapped for each repetition.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub slowing: Option<Slowing>,
}

/// A set that was done, however many parts it had.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct DoneSet {
    /// Its name.
    pub key: SetKey,
    /// Local date of its session, in days since 1970-01-01.
    pub day: i32,
    /// The exercise, by its slug.
    pub exercise: String,
    /// What it was for.
    pub kind: SetKind,
    /// The row of its exercise that it belonged to.
    pub row: u16,
    /// The round within the row, from 1; 0 for the ramp.
    pub round: u16,
    /// The side, where each works for itself.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub side: Option<Side>,
    /// How many were asked for.
    pub asked: HowMany,
    /// How hard it was to be; never the lifter's judgement.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub target: Option<EffortTarget>,
    /// What the rule meant, before the gym's plates.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub meant: Option<Mass>,
    /// What was on, for the first part, counted as `counting` says.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub figure: Option<Mass>,
    /// How the figure is meant.
    pub counting: Counting,
    /// What was moved: with the body's share.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub moved: Option<Mass>,
    /// Named bands or chains.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub bands: Option<String>,
    /// Grip, stance, handle or range of movement.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub technique: Option<String>,
    /// Pin height, seat, attachment.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub set_up: Vec<String>,
    /// What was worn, in the order of its declaration.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub kit: Vec<Kit>,
    /// The parts, one at least.
    pub parts: Vec<DonePart>,
    /// What the lifter called after the last part.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub left: Option<Reserve>,
    /// Repetitions that a spotter helped with, in no amount.
    pub helped: Reps,
    /// How the last part ended.
    pub ending: Ending,
}

impl DoneSet {
    /// All its parts together, in the measure of the first.
    pub fn amount(&self) -> Amount {
        let sum = |of: fn(&Amount) -> u32| {
            self.parts.iter().map(|part| of(&part.amount)).fold(0_u32, u32::saturating_add)
        };
        match self.parts.first().map(|part| part.amount) {
            Some(Amount::Seconds(_)) => Amount::Seconds(Seconds::new(sum(|amount| match amount {
                Amount::Seconds(seconds) => seconds.count(),
                _ => 0,
            }))),
            Some(Amount::Metres(_)) => {
                Amount::Metres(Distance::from_millimetres(sum(|amount| match amount {
                    Amount::Metres(distance) => distance.millimetres(),
                    _ => 0,
                })))
            }
            Some(Amount::Reps(_)) | None => {
                let reps = sum(|amount| amount.reps().unwrap_or(0).into());
                Amount::Reps(Reps::try_from(reps).unwrap_or(Reps::MAX))
            }
        }
    }

    /// Whether anything of it was made: a single that failed was not.
    pub fn made(&self) -> bool {
        self.parts.iter().any(|part| match part.amount {
            Amount::Reps(reps) => reps > 0,
            Amount::Seconds(seconds) => seconds.count() > 0,
            Amount::Metres(distance) => distance.millimetres() > 0,
        })
    }

    /// Whether all its parts were done at the load of the first.
    pub fn at_one_load(&self) -> bool {
        self.parts.iter().all(|part| part.figure == self.figure)
    }

    /// What it says of slowing and reserve: a set of one part with taps and a call, without help.
    pub fn pace(&self) -> Option<Point> {
        let [part] = self.parts.as_slice() else { return None };
        let said = self.is_work() && self.helped == 0 && self.ending == Ending::AsCalled;
        Some(Point { slowing: part.slowing?, left: self.left? }).filter(|_| said)
    }

    /// Whether it was work and no warm-up.
    pub fn is_work(&self) -> bool {
        self.kind != SetKind::Ramp
    }

    /// What is known of how near failure it was.
    pub fn closeness(&self) -> Closeness {
        match (self.left, self.ending) {
            (Some(left), _) => Closeness::Called(left),
            (None, Ending::Failed | Ending::Form) => Closeness::Failed,
            (None, Ending::AsCalled) => Closeness::NotCalled { target: self.target },
            (None, Ending::Pain | Ending::Interrupted | Ending::Equipment) => Closeness::CutShort,
        }
    }
}

/// Hard sets of one muscle in a session.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct MuscleTally {
    /// The muscle.
    pub muscle: Muscle,
    /// Its sets.
    pub tally: Tally,
}

/// A session.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct SessionRow {
    /// Its name: the log's number of its first event.
    pub session: u64,
    /// Local date of its beginning, in days since 1970-01-01.
    pub day: i32,
    /// Its title.
    pub title: String,
    /// Where it stands in a plan.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub place: Option<PlanPlace>,
    /// What the week was for.
    pub week_kind: WeekKind,
    /// What it came to; none while it runs.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub outcome: Option<Outcome>,
}

/// A session as a calendar asks for it: without what it came to, which is most of what is to be read.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Turn {
    /// Its name: the log's number of its first event.
    pub session: u64,
    /// Local date of its beginning, in days since 1970-01-01.
    pub day: i32,
    /// Its title.
    pub title: String,
    /// Where it stands in a plan.
    pub place: Option<PlanPlace>,
    /// Whether it ended.
    pub over: bool,
}

impl From<&SessionRow> for Turn {
    fn from(row: &SessionRow) -> Self {
        let SessionRow { session, day, ref title, ref place, ref outcome, .. } = *row;
        let (title, place, over) = (title.clone(), place.clone(), outcome.is_some());
        Self { session, day, title, place, over }
    }
}

/// What a session came to.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Outcome {
    /// Seconds from its beginning to its end, pauses included.
    pub seconds: u32,
    /// Work sets that were owed: those of optional exercises are not.
    pub owed: u16,
    /// Of those, how many were done, in part at least.
    pub done: u16,
    /// Hard sets, in the order of [`Muscle`]; muscles without any are left out.
    pub volume: Vec<MuscleTally>,
}

/// The week of a day, from Monday to Sunday, counted from that of 1970-01-01 (a Thursday).
pub const fn week_of(day: i32) -> Week {
    // Divided before the shift, so that no day overflows.
    day.div_euclid(7) + if day.rem_euclid(7) >= 4 { 1 } else { 0 }
}

/// The first day of a week, a Monday.
pub const fn first_day(week: Week) -> i32 {
    week.saturating_mul(7).saturating_sub(3)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn weeks_run_from_monday_to_sunday() {
        // 1970-01-01 was a Thursday; 2026-11-23 a Monday, the 20 780th day after it.
        for (day, week) in [(-4, -1), (-3, 0), (0, 0), (3, 0), (4, 1), (20_780, 2969)] {
            assert_eq!(week_of(day), week, "{day}");
            assert!((first_day(week)..first_day(week + 1)).contains(&day), "{day}");
        }
        assert_eq!(first_day(week_of(20_780)), 20_780);
        assert!(week_of(i32::MAX) > week_of(i32::MIN));
    }
}
