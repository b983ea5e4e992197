//! What a rehearsal shows.

use barwright_domain::call::WeekKind;
use barwright_domain::catalogue::{Counting, Measure, Muscle};
use barwright_domain::plan::RuleKind;
use barwright_domain::quantity::Mass;
use serde::{Serialize, Serializer};

/// A plan as the invented lifters went through it.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Report {
    /// How many lifters.
    pub lifters: u32,
    /// What their chance was drawn from.
    pub seed: u64,
    /// What each week is for, in order.
    pub weeks: Vec<WeekKind>,
    /// Sessions that were trained.
    pub trained: u64,
    /// Sessions that were missed.
    pub missed: u64,
    /// Taps that the session refused. With any, the rehearsal is not to be believed.
    pub refused: u64,
    /// What stands out, the gravest first.
    pub findings: Vec<Finding>,
    /// Each exercise of each session, by its first row of sets.
    pub lines: Vec<Line>,
    /// How long the sessions take.
    pub sessions: Vec<Session>,
    /// Hard sets of the muscles that the plan trains.
    pub muscles: Vec<Volume>,
}

/// The middle of many, and how far they spread: the 10th, the 50th and the 90th of a hundred, each
/// the figure of one lifter.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
pub struct Spread<T> {
    /// The 10th.
    pub low: T,
    /// The 50th.
    pub middle: T,
    /// The 90th.
    pub high: T,
}

/// A mass as it is written in JSON: exact kilograms, as a string.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub struct Kilograms(pub Mass);

impl Serialize for Kilograms {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.serialize_str(&self.0.kilograms())
    }
}

/// An exercise of a session over the weeks.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Line {
    /// The session's name.
    pub session: String,
    /// The exercise's slug.
    pub exercise: String,
    /// Its name.
    pub name: String,
    /// How its figures are meant.
    pub counting: Counting,
    /// What a set of it is measured in.
    pub measure: Measure,
    /// The rules that the plan names for it.
    pub rules: Vec<RuleKind>,
    /// The weeks in which anyone did it.
    pub weeks: Vec<LineWeek>,
}

/// An exercise of a session in one week. Shares are of the lifters who did it.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct LineWeek {
    /// The week, from 1.
    pub week: usize,
    /// How many did it.
    pub lifters: u32,
    /// The heaviest load of its first row; none where it has no number.
    pub load: Option<Spread<Kilograms>>,
    /// The mean amount of a set of that row: repetitions, seconds or metres.
    pub amount: Spread<f64>,
    /// A set came to less than was asked.
    pub missed: f64,
    /// The rules held the load or took some off: after misses, for want of a step that fits.
    pub held: f64,
    /// No more load, nor as much with more repetitions, in this and the two ordinary sessions before
    /// it than ever before those. None where no rule is to move it, and before there are enough.
    pub stalled: Option<f64>,
    /// The first set was more than the lifter had, even fresh.
    pub too_heavy: f64,
    /// The last set left three more than was asked; none where no effort is asked.
    pub too_light: f64,
}

/// How long a session takes, in minutes.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Session {
    /// Its name.
    pub name: String,
    /// What the plan says it should take.
    pub planned: Option<u16>,
    /// The weeks in which anyone trained it.
    pub weeks: Vec<SessionWeek>,
}

/// How long a session took in one week, in minutes.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct SessionWeek {
    /// The week, from 1.
    pub week: usize,
    /// As the sheet is reckoned before it begins.
    pub reckoned: Spread<u32>,
    /// As it went.
    pub took: Spread<u32>,
}

/// Hard sets of a muscle, each direct one whole and each indirect one half.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Volume {
    /// The muscle.
    pub muscle: Muscle,
    /// Each week in order.
    pub weeks: Vec<VolumeWeek>,
}

/// Hard sets of a muscle in one week.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct VolumeWeek {
    /// Planned.
    pub planned: f64,
    /// Done, by all the lifters.
    pub done: Spread<f64>,
}

/// Something that stands out.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Finding {
    /// A rule stalls: to the end of the plan this share of lifters gets no further.
    Stalls {
        /// The line, by its place.
        line: usize,
        /// The first week of it, from 1.
        from_week: usize,
        /// Share of lifters.
        share: f64,
        /// What the rules mostly say of it.
        cause: Cause,
    },
    /// A rule runs away: the load called is more than this share of lifters has.
    RunsAway {
        /// The line, by its place.
        line: usize,
        /// The first week of it.
        from_week: usize,
        /// Share of lifters.
        share: f64,
    },
    /// A week asks what many can't do.
    Missed {
        /// The line, by its place.
        line: usize,
        /// The weeks.
        weeks: Vec<usize>,
        /// Share of lifters in the worst of them.
        share: f64,
    },
    /// The load falls behind what lifters can do, to the end of the plan.
    TooLight {
        /// The line, by its place.
        line: usize,
        /// The first week of it.
        from_week: usize,
        /// Share of lifters.
        share: f64,
    },
    /// A session takes longer than the plan has for it.
    TooLong {
        /// The session, by its place.
        session: usize,
        /// The weeks.
        weeks: Vec<usize>,
        /// Minutes of the middle lifter in the longest.
        minutes: u32,
    },
    /// A muscle gets clearly less than planned.
    FallsShort {
        /// The muscle.
        muscle: Muscle,
        /// Share of the planned hard sets that the middle lifter does.
        share: f64,
    },
    /// This gym has not what an exercise needs, and the plan names nothing that it has: nobody did
    /// it.
    Lacking {
        /// Its name.
        exercise: String,
    },
}

/// Why a line stalls.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Cause {
    /// The estimate holds the step, which would fall below the range.
    StepTooBig {
        /// The step, in the middle.
        step: Kilograms,
        /// What it comes to, in percent of the load.
        percent: f64,
    },
    /// Misses follow the steps up.
    MissedAfterSteps {
        /// The step, in the middle.
        step: Kilograms,
        /// What it comes to, in percent of the load.
        percent: f64,
    },
    /// Sets are missed, whether the load had gone up or not.
    Missed,
    /// This gym makes nothing heavier.
    NothingHeavier,
    /// Not all sets reach the top of the range.
    BelowTop,
    /// Two over the goal in the last set do not come twice running.
    NotYetTwo,
    /// Anything else.
    Other,
}
