//! A plan as it was written.

use chrono::Weekday;
use serde::{Deserialize, Serialize};

use super::line::{Line, Rests, Weeks};
use super::rules::{Cut, LayOff, Miss, RaiseMax, Rule};
use crate::call::{EffortTarget, HowMany, LoadCall, WeekKind};
use crate::catalogue::{Counting, Exercise};
use crate::quantity::{Percent, Reps, Reserve, Seconds};

/// What the work is for; it sets the rests that the plan leaves open.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Goal {
    /// Strength.
    #[default]
    Strength,
    /// Size.
    Size,
}

impl Goal {
    /// Rest after a work set where nothing else is written: strength 180 s; size 120 s after a
    /// compound exercise and 90 s after another. The evidence overlaps, leaning to longer
    /// (ACSM position stand 2009, MSSE 41(3):687–708; Singer et al. 2024, Front Sports Act Living 6,
    /// journal from memory).
    pub const fn rest(self, compound: bool) -> Seconds {
        match (self, compound) {
            (Self::Strength, _) => Seconds::new(180),
            (Self::Size, true) => Seconds::new(120),
            (Self::Size, false) => Seconds::new(90),
        }
    }
}

/// A plan of several weeks.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Plan {
    /// Its name.
    pub name: String,
    /// A few words about it.
    pub about: Option<String>,
    /// What it is for.
    pub goal: Goal,
    /// Its weeks in order.
    pub weeks: Vec<Week>,
    /// Minutes a session should take.
    pub minutes: Option<u16>,
    /// Rests where a session or exercise says nothing.
    pub rest: Rests,
    /// What one press makes a rest shorter or longer by.
    pub rest_step: Seconds,
    /// Warm-up where a session says nothing.
    pub warm_up: WarmUp,
    /// The share of a reference max that is a working max, where a lift has none of its own.
    pub working_max: Percent,
    /// What may raise a reference max, where a lift says nothing.
    pub raise_max: RaiseMax,
    /// Lifts whose max has rules of its own.
    pub maxes: Vec<MaxRule>,
    /// What happens after a first, second, … miss.
    pub misses: Vec<Miss>,
    /// What happens after days without training, shortest first.
    pub lay_off: Vec<LayOff>,
    /// What a deload week takes off unless it says otherwise.
    pub deload: Cut,
    /// What an ease-in week takes off unless it says otherwise.
    pub ease_in: Cut,
    /// A set is hard with so many left or fewer.
    pub hard_at_left: Reserve,
    /// Seconds that a repetition takes where no tempo is given.
    pub seconds_a_rep: u8,
    /// Exercises that the plan adds to the catalogue.
    pub exercises: Vec<Exercise>,
    /// Its sessions in order.
    pub sessions: Vec<Session>,
    /// Findings of the checks that the coach accepts.
    pub accepted: Vec<Accepted>,
}

/// One week of a plan.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize)]
pub struct Week {
    /// What it is for.
    pub kind: WeekKind,
    /// Its name.
    pub name: Option<String>,
    /// What it takes off what is not written week by week; where it says nothing the plan's deload
    /// or ease-in does.
    pub cut: Option<Cut>,
}

/// Rules of one lift's max.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct MaxRule {
    /// The lift's slug.
    pub lift: String,
    /// The share that is its working max.
    pub working: Option<Percent>,
    /// What may raise it.
    pub raise: Option<RaiseMax>,
}

/// A finding of the checks that the coach accepts, with the reason.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Accepted {
    /// The check's name.
    pub check: String,
    /// The session it is about, by name; any where none is given.
    pub session: Option<String>,
    /// The exercise it is about, by slug; any where none is given.
    pub exercise: Option<String>,
    /// Why.
    pub because: String,
}

/// How a session or an exercise is warmed up for.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize)]
pub struct WarmUp {
    /// Minutes of general work.
    pub minutes: Option<u16>,
    /// The ramp of the first heavy lift.
    pub ramp: Option<Ramp>,
    /// A single step again after a pause longer than this.
    pub again_after: Option<Seconds>,
    /// How far a step may move from its share to save handling plates, as a share of the work
    /// load.
    pub slack: Option<Percent>,
}

impl WarmUp {
    /// This, and where it says nothing, `other`.
    #[must_use]
    pub fn or(&self, other: &Self) -> Self {
        Self {
            minutes: self.minutes.or(other.minutes),
            ramp: self.ramp.clone().or_else(|| other.ramp.clone()),
            again_after: self.again_after.or(other.again_after),
            slack: self.slack.or(other.slack),
        }
    }
}

/// Steps up to the first work load.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Ramp {
    /// None.
    None,
    /// One step, for a later exercise on muscles that are warm.
    Short,
    /// Steps spread between what it starts from and the work load.
    Usual,
    /// These steps.
    Steps(Vec<RampStep>),
}

/// One step of a ramp.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct RampStep {
    /// Share of the first work load; the empty bar where there is none.
    pub share: Option<Percent>,
    /// Repetitions.
    pub reps: Reps,
}

/// The share of a reference max that is a working max where the plan names none: what a lifter
/// makes on any day (common practice).
pub const USUAL_WORKING_MAX: Percent = Percent::whole(95);

/// A session that weeks repeat.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Session {
    /// Its name.
    pub name: String,
    /// The day of the week it is meant for.
    pub day: Option<Weekday>,
    /// The weeks it is in.
    pub weeks: Weeks,
    /// Minutes it should take.
    pub minutes: Option<u16>,
    /// Its warm-up.
    pub warm_up: WarmUp,
    /// Its rests.
    pub rest: Rests,
    /// Its exercises in order.
    pub exercises: Vec<Slot>,
}

/// An exercise in a session.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Slot {
    /// The exercise's slug.
    pub exercise: String,
    /// The weeks it is done in.
    pub weeks: Weeks,
    /// What it is for, where that is not the plan's goal.
    pub goal: Option<Goal>,
    /// Neighbours with the same name here are done back to back.
    pub superset: Option<String>,
    /// Offered, and left out without a mark.
    pub optional: bool,
    /// Kept whole when there is little time.
    pub keep: bool,
    /// Names the track that its rows carry, so that they share it with others or have it alone;
    /// where nothing is said, rows written alike share one.
    pub track: Option<String>,
    /// One side at a time, and which first; where nothing is said, as the exercise is.
    pub sides: Option<Sides>,
    /// How the number is meant, where not as in the catalogue.
    pub counting: Option<Counting>,
    /// Its ramp; where nothing is said, the first heavy lift gets the session's.
    pub ramp: Option<Ramp>,
    /// How it is set up.
    pub set_up: SetUp,
    /// What is worn.
    pub wear: Vec<Gear>,
    /// A few short cues.
    pub cues: Vec<String>,
    /// Its rests.
    pub rest: Rests,
    /// What to do instead, in order of preference.
    pub substitutes: Vec<Substitute>,
    /// What changes next time; several rules are asked in order.
    pub next: Vec<Rule>,
    /// Its own miss rule.
    pub misses: Option<Vec<Miss>>,
    /// Its sets.
    pub lines: Vec<Line>,
}

/// How sides are done.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Sides {
    /// Both at once.
    Together,
    /// One at a time, the weaker first; its repetitions are the stronger's limit.
    WeakerFirst,
    /// One at a time, the left first.
    LeftFirst,
    /// One at a time, the right first.
    RightFirst,
}

/// Settings of a rack, bench or machine.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize)]
pub struct SetUp {
    /// Height of pins or hooks.
    pub pins: Option<String>,
    /// Seat.
    pub seat: Option<String>,
    /// What hangs on the cable.
    pub attachment: Option<String>,
    /// Angle of the bench.
    pub bench: Option<String>,
}

impl SetUp {
    /// The keys that a plan file has for them.
    pub const KEYS: [&str; 4] = ["pins", "seat", "attachment", "bench"];

    /// What is set up, each by its key.
    pub fn parts(&self) -> impl Iterator<Item = (&'static str, &str)> {
        let all = [&self.pins, &self.seat, &self.attachment, &self.bench];
        Self::KEYS.into_iter().zip(all).filter_map(|(key, how)| Some((key, how.as_deref()?)))
    }
}

/// Worn gear; records with it stand apart.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Gear {
    /// Belt.
    Belt,
    /// Knee or wrist wraps.
    Wraps,
    /// Lifting straps.
    Straps,
    /// Knee or elbow sleeves.
    Sleeves,
}

/// An exercise to do instead. It has its own history; a load is never carried over.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Substitute {
    /// The exercise's slug.
    pub exercise: String,
    /// Sets, where not as many.
    pub sets: Option<u8>,
    /// Repetitions, seconds or metres, where not as many.
    pub how_many: Option<HowMany>,
    /// Its own load; where none is given, by feel from its own history.
    pub load: Option<LoadCall>,
    /// How hard, where not as hard.
    pub effort: Option<EffortTarget>,
}
