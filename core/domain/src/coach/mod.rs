//! A plan read as a coach would: what can be read, and yet is worth a second look.
//!
//! [`look_over`] is a pure function of a plan file, the exercises and a gym. What it finds advises
//! and refuses nothing: each finding has its place in the file, a [`Level`], and figures; the words
//! are the app's. A coach who means it so writes `[[accept]]` with a reason, and an acceptance that
//! names nothing, or that nothing needs any more, is a finding too.
//!
//! Every threshold stands in the module of its check, with its source. Where it says "common
//! practice" there is no one source, and our own choice of the figure is all there is.

mod accept;
mod anew;
mod laid;
mod load;
mod order;
mod steps;
mod stuck;
mod time;
mod volume;

pub use anew::{Anew, Close, Rest};

use std::ops::Range;

use serde::{Deserialize, Serialize};

use crate::catalogue::{Catalogue, Muscle};
use crate::equipment::Equipment;
use crate::plan::{Plan, PlanFile};
use crate::quantity::{Mass, Percent, Reps, Reserve};

/// What is looked for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Check {
    /// The load of a lift jumps from one week to the next.
    LoadJump,
    /// The sets of a muscle jump from one week to the next.
    VolumeJump,
    /// A muscle gets far less than the rest.
    MuscleLow,
    /// A muscle gets far more than the rest.
    MuscleHigh,
    /// A session takes longer than its time.
    TooLong,
    /// A percentage, a number of repetitions and an effort that don't go together.
    PercentAndReps,
    /// The equipment can't step a lift as finely as its rule wants.
    CoarseSteps,
    /// A row that its own rule can never move.
    CannotProgress,
    /// Equipment that a gym may well lack, and nothing is named instead.
    NoSubstitute,
    /// Heavy lifts on the same muscles on neighbouring days.
    HeavyNeighbours,
    /// A deload that takes nothing off.
    DeloadNotLighter,
    /// An acceptance that names no check or session there is.
    AcceptUnknown,
    /// An acceptance that nothing needs.
    AcceptUnused,
}

impl Check {
    /// All of them.
    pub const ALL: [Self; 13] = [
        Self::LoadJump,
        Self::VolumeJump,
        Self::MuscleLow,
        Self::MuscleHigh,
        Self::TooLong,
        Self::PercentAndReps,
        Self::CoarseSteps,
        Self::CannotProgress,
        Self::NoSubstitute,
        Self::HeavyNeighbours,
        Self::DeloadNotLighter,
        Self::AcceptUnknown,
        Self::AcceptUnused,
    ];

    /// As a plan file accepts it: `load-jump`.
    pub const fn slug(self) -> &'static str {
        match self {
            Self::LoadJump => "load-jump",
            Self::VolumeJump => "volume-jump",
            Self::MuscleLow => "muscle-low",
            Self::MuscleHigh => "muscle-high",
            Self::TooLong => "too-long",
            Self::PercentAndReps => "percent-and-reps",
            Self::CoarseSteps => "coarse-steps",
            Self::CannotProgress => "cannot-progress",
            Self::NoSubstitute => "no-substitute",
            Self::HeavyNeighbours => "heavy-neighbours",
            Self::DeloadNotLighter => "deload-not-lighter",
            Self::AcceptUnknown => "accept-unknown",
            Self::AcceptUnused => "accept-unused",
        }
    }

    /// Whether a file can accept it: not what is said of acceptances themselves.
    pub const fn can_be_accepted(self) -> bool {
        !matches!(self, Self::AcceptUnknown | Self::AcceptUnused)
    }
}

/// How much a finding matters.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Level {
    /// Worth a look: many plans mean it so.
    LookAt,
    /// Worth a change: hardly any plan means it so.
    Change,
}

/// A load as far as a plan alone knows it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Figure {
    /// A share of a max.
    Share(Percent),
    /// A mass.
    Mass(Mass),
}

/// What was found, in figures. Weeks are counted from 1, halves are half sets.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum About {
    /// The load of a lift from one ordinary week to the next.
    LoadJump {
        /// The weeks.
        weeks: (usize, usize),
        /// The loads.
        loads: (Figure, Figure),
        /// The rise with the repetitions reckoned in, in hundredths of a percent.
        rise: i32,
    },
    /// Hard sets of muscles from one ordinary week to the next, the greatest rise first.
    VolumeJump {
        /// The weeks.
        weeks: (usize, usize),
        /// Muscles with the half sets before and after.
        muscles: Vec<(Muscle, u32, u32)>,
    },
    /// A muscle against the middle of the large ones, in tenths of sets in an ordinary week.
    Muscle {
        /// It.
        muscle: Muscle,
        /// What it gets.
        tenths: u32,
        /// The middle.
        middle: u32,
    },
    /// A session and its time.
    TooLong {
        /// The week it takes longest in.
        week: usize,
        /// Seconds it takes.
        seconds: u64,
        /// Minutes it should take.
        minutes: u16,
    },
    /// Too many repetitions for a share of the max.
    TooHeavy {
        /// The week.
        week: usize,
        /// The share of the reference max.
        share: Percent,
        /// Repetitions asked.
        reps: Reps,
        /// The share that goes with them to failure, by the table.
        table: Percent,
    },
    /// A share, repetitions and an effort that don't go together.
    EffortApart {
        /// The week.
        week: usize,
        /// The share of the reference max.
        share: Percent,
        /// Repetitions asked.
        reps: Reps,
        /// What is to be left.
        left: Reserve,
        /// The share that goes with both, by the table.
        table: Percent,
        /// Too heavy for that effort, or else too light.
        heavy: bool,
    },
    /// The next load that can be made lies far off.
    Coarse {
        /// From this load.
        load: Mass,
        /// The next is so much more.
        step: Mass,
        /// That is such a share of it.
        share: Percent,
    },
    /// The rule's step is finer than what can be made.
    StepUnmade {
        /// The rule's.
        asked: Mass,
        /// The gym's.
        step: Mass,
        /// At this load.
        load: Mass,
    },
    /// Two weeks' loads that this gym makes the same.
    MadeTheSame {
        /// The weeks.
        weeks: (usize, usize),
        /// Their loads.
        loads: (Mass, Mass),
        /// What both come to.
        made: Mass,
    },
    /// A rule by effort, and no effort is asked.
    NoTarget,
    /// A rule that steps a load, and the load is bands or chains without a figure.
    NoFigure,
    /// Nothing heavier than this can be made here.
    NothingHeavier {
        /// The load.
        load: Mass,
    },
    /// Nothing can be made here that is a whole step heavier.
    StepTooFar {
        /// From this load.
        load: Mass,
        /// The rule's step.
        step: Mass,
    },
    /// A range is to be filled, and it is a single number.
    RangeOfOne,
    /// Something that is needed and may not be there.
    Rare {
        /// What, by its slug.
        needs: Vec<String>,
        /// This gym has it not; else many have it not.
        lacking: bool,
    },
    /// Heavy on the same muscles the day before.
    HeavyBefore {
        /// The session of the day before.
        session: String,
        /// Its exercise, by slug.
        exercise: String,
        /// The muscles of both.
        muscles: Vec<Muscle>,
    },
    /// A deload and the ordinary week before it.
    Deload {
        /// The weeks, the ordinary one first.
        weeks: (usize, usize),
        /// Their work sets.
        sets: (u32, u32),
        /// The load that is left on average, in hundredths of a percent; none where no load says.
        load: Option<i32>,
    },
    /// An exercise that its deload leaves as it was.
    DeloadSame {
        /// The weeks, the ordinary one first.
        weeks: (usize, usize),
    },
    /// No check is called so.
    UnknownCheck {
        /// As written.
        name: String,
        /// The nearest.
        nearest: Option<&'static str>,
    },
    /// No session is called so.
    UnknownSession {
        /// As written.
        name: String,
    },
    /// Nothing is found that it accepts.
    Unused,
}

/// Something found.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Finding {
    /// By which check.
    pub check: Check,
    /// How much it matters.
    pub level: Level,
    /// The session it is about, in the plan's list from 0.
    pub session: Option<usize>,
    /// The exercise it is about, in the session's list from 0.
    pub exercise: Option<usize>,
    /// Bytes of the file.
    pub span: Range<usize>,
    /// What was found.
    pub about: About,
    /// Why the coach means it so, where the file accepts it.
    pub accepted: Option<String>,
}

/// What a check looks at.
#[derive(Clone, Copy)]
struct Look<'a> {
    file: &'a PlanFile,
    plan: &'a Plan,
    catalogue: &'a Catalogue,
    equipment: &'a Equipment,
    laid: &'a laid::Laid,
}

impl Look<'_> {
    /// A finding about an exercise, at the first of these keys that is written of it.
    fn at_exercise(
        &self,
        (check, level): (Check, Level),
        (session, exercise): (usize, usize),
        row: usize,
        keys: &[&str],
        about: About,
    ) -> Finding {
        let place = self.file.places.exercise(session, exercise);
        let span = place.map(|place| place.at(row, keys)).unwrap_or_default();
        let (session, exercise) = (Some(session), Some(exercise));
        Finding { check, level, session, exercise, span, about, accepted: None }
    }

    /// A finding about the whole plan.
    fn at_plan(&self, (check, level): (Check, Level), keys: &[&str], about: About) -> Finding {
        let span = self.file.places.plan().at(keys);
        Finding { check, level, session: None, exercise: None, span, about, accepted: None }
    }
}

/// Looks a plan over; `catalogue` need not have the plan's own exercises. In the order of the file,
/// with what the file accepts among it.
pub fn look_over(file: &PlanFile, catalogue: &Catalogue, equipment: &Equipment) -> Vec<Finding> {
    let plan = &file.plan;
    let catalogue = catalogue.clone().with_own(plan.exercises.iter().cloned());
    let laid = laid::Laid::of(plan);
    let look = Look { file, plan, catalogue: &catalogue, equipment, laid: &laid };
    let mut found = load::jumps(look);
    found.extend(load::percent_and_reps(look));
    found.extend(volume::jumps(look));
    found.extend(volume::muscles(look));
    found.extend(volume::deloads(look));
    found.extend(time::too_long(look));
    found.extend(steps::coarse(look));
    found.extend(stuck::rows(look));
    found.extend(order::substitutes(look));
    found.extend(order::neighbours(look));
    accept::mark(look, &mut found);
    found.sort_by_key(|finding| (finding.span.start, finding.check));
    once_in_turn(look, found)
}

/// Of remarks that are the same word for word, about one exercise in sessions that take turns, the
/// first: no week has both.
fn once_in_turn(look: Look<'_>, found: Vec<Finding>) -> Vec<Finding> {
    let exercise = |finding: &Finding| {
        let (session, slot) = finding.session.zip(finding.exercise)?;
        Some((session, &look.plan.sessions.get(session)?.exercises.get(slot)?.exercise))
    };
    let mut kept: Vec<Finding> = Vec::with_capacity(found.len());
    for finding in found {
        let said = exercise(&finding).is_some_and(|(session, of)| {
            kept.iter().any(|before| {
                (before.check, &before.about) == (finding.check, &finding.about)
                    && before.accepted == finding.accepted
                    && exercise(before).is_some_and(|(other, same)| {
                        other != session && same == of && look.laid.take_turns(other, session)
                    })
            })
        });
        if !said {
            kept.push(finding);
        }
    }
    kept
}
