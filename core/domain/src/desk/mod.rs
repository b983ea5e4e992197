//! What stands between sessions: the adopted plan, the gyms, the maxes, the body mass.
//!
//! [`Desk`] is a fold of [`DeskEvent`]s, small enough to be kept whole beside the log, so that
//! opening never reads ten years of them.

mod arranged;
mod calendar;

pub use arranged::{Arranged, Arrangement, At};
pub use calendar::{Calendar, Dated, Standing, TrainedAt, calendar};

use std::collections::BTreeMap;

use serde::{Deserialize, Serialize};

use crate::catalogue::Catalogue;
use crate::equipment::Equipment;
use crate::plan::Plan;
use crate::quantity::Mass;
use crate::session::Run;

/// How a max came to be known.
#[derive(Debug, Clone, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum MaxOrigin {
    /// Entered by the lifter.
    Entered,
    /// Lifted in a test.
    Tested,
    /// Raised from an estimate, by the plan's rule.
    Raised {
        /// The formula, by its key.
        formula: String,
    },
}

/// A reference max as of a day.
#[derive(Debug, Clone, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub struct MaxFact {
    /// The max.
    pub mass: Mass,
    /// Local date, in days since 1970-01-01.
    pub day: i32,
    /// How it came to be known.
    pub origin: MaxOrigin,
}

/// A fact kept at the desk.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum DeskEvent {
    /// A plan was adopted; the one before is kept.
    PlanAdopted {
        /// The file's text, as it was read.
        text: String,
        /// Local date of adoption, in days since 1970-01-01.
        day: i32,
    },
    /// A plan that was kept is taken up again where it stood; the one before is kept.
    PlanTakenUp {
        /// The log's number of its adoption.
        plan: u64,
        /// The file's text.
        text: String,
        /// Local date of its adoption, in days since 1970-01-01.
        day: i32,
    },
    /// Something of a plan is arranged otherwise than it says.
    Arranged {
        /// The log's number of its adoption.
        plan: u64,
        /// What.
        what: Arrangement,
    },
    /// A gym was added, or one of the same name put right.
    GymKept {
        /// What it has.
        equipment: Equipment,
    },
    /// This gym is trained in from now on.
    GymChosen {
        /// Its name.
        name: String,
    },
    /// A reference max.
    MaxKept {
        /// The exercise, by its slug.
        exercise: String,
        /// The max.
        fact: MaxFact,
    },
    /// Body mass.
    BodyMassKept {
        /// It.
        mass: Mass,
        /// Local date, in days since 1970-01-01.
        day: i32,
    },
}

impl DeskEvent {
    /// Whether another plan is on after it.
    pub const fn changes_plan(&self) -> bool {
        matches!(self, Self::PlanAdopted { .. } | Self::PlanTakenUp { .. })
    }
}

/// An adopted plan.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Adopted {
    /// The log's number of its adoption: its name.
    pub seq: u64,
    /// The file's text.
    pub text: String,
    /// Local date of adoption.
    pub day: i32,
}

/// A plan that was on before, to go back to; its text stands in the log.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Kept {
    /// The log's number of its adoption: its name.
    pub seq: u64,
    /// What it calls itself.
    pub name: String,
    /// Local date of adoption.
    pub day: i32,
}

/// What stands between sessions.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize)]
pub struct Desk {
    /// The plan that is on; those before it stand in the log.
    pub plan: Option<Adopted>,
    /// Plans that were on before, the latest last, [`MOST_KEPT`] at the most.
    #[serde(default)]
    pub kept: Vec<Kept>,
    /// What was arranged otherwise, by plan.
    #[serde(default)]
    pub arranged: BTreeMap<u64, Arranged>,
    /// Gyms of the lifter's own, beside the built-in ones.
    #[serde(default)]
    pub gyms: Vec<Equipment>,
    /// The gym that is trained in, by name; none is the built-in one of the lifter's unit.
    #[serde(default)]
    pub gym: Option<String>,
    /// Reference maxes by exercise, oldest first, the last [`MOST_MAXES`] of each.
    #[serde(default)]
    pub maxes: BTreeMap<String, Vec<MaxFact>>,
    /// The last body mass, and its local date.
    #[serde(default)]
    pub body_mass: Option<(Mass, i32)>,
    /// Set-up of each exercise as it was noted last.
    #[serde(default)]
    pub set_ups: BTreeMap<String, Vec<String>>,
    /// Exercises whose change the lifter held back on the last tally.
    #[serde(default)]
    pub held_back: Vec<String>,
}

/// The most maxes of one exercise that stand beside the log.
pub const MOST_MAXES: usize = 30;
/// The most plans to go back to.
pub const MOST_KEPT: usize = 20;
/// The most gyms of the lifter's own.
pub const MOST_GYMS: usize = 50;

impl Desk {
    /// Folds a fact in; `seq` is its number in the log.
    pub fn apply(&mut self, seq: u64, event: &DeskEvent) {
        match event {
            DeskEvent::PlanAdopted { text, day } => {
                self.take_up(Adopted { seq, text: text.clone(), day: *day });
            }
            DeskEvent::PlanTakenUp { plan, text, day } => {
                self.take_up(Adopted { seq: *plan, text: text.clone(), day: *day });
            }
            DeskEvent::Arranged { plan, what } => {
                self.arranged.entry(*plan).or_default().apply(seq, what);
            }
            DeskEvent::GymKept { equipment } => {
                self.gyms.retain(|gym| gym.name != equipment.name);
                self.gyms.push(equipment.clone());
            }
            DeskEvent::GymChosen { name } => self.gym = Some(name.clone()),
            DeskEvent::MaxKept { exercise, fact } => {
                let facts = self.maxes.entry(exercise.clone()).or_default();
                facts.push(fact.clone());
                let over = facts.len().saturating_sub(MOST_MAXES);
                facts.drain(..over);
            }
            DeskEvent::BodyMassKept { mass, day } => self.body_mass = Some((*mass, *day)),
        }
    }

    /// Puts a plan on and keeps the one before.
    fn take_up(&mut self, plan: Adopted) {
        self.kept.retain(|kept| kept.seq != plan.seq);
        if let Some(before) = self.plan.replace(plan) {
            let read = Plan::read(&before.text, &Catalogue::builtin());
            let name = read.map(|file| file.plan.name).unwrap_or_default();
            self.kept.push(Kept { seq: before.seq, name, day: before.day });
            let over = self.kept.len().saturating_sub(MOST_KEPT);
            for gone in self.kept.drain(..over) {
                self.arranged.remove(&gone.seq);
            }
        }
    }

    /// What was arranged of the plan that is on.
    pub fn arranged(&self) -> Arranged {
        let on = self.plan.as_ref().and_then(|plan| self.arranged.get(&plan.seq));
        on.cloned().unwrap_or_default()
    }

    /// Takes over what a session that is past leaves behind: set-ups, and what was held back.
    ///
    /// A session's own events can be undone until the next one begins; only then is it settled.
    pub fn settle(&mut self, run: &Run) {
        for entry in run.entries.values() {
            if entry.set_up != entry.entry.set_up {
                self.set_ups.insert(entry.entry.exercise.clone(), entry.set_up.clone());
            }
        }
        self.held_back.clone_from(&run.held_back);
    }

    /// The reference max of an exercise that holds on a day: the latest of the latest date up to
    /// it.
    pub fn max_on(&self, exercise: &str, day: i32) -> Option<&MaxFact> {
        self.maxes.get(exercise)?.iter().filter(|fact| fact.day <= day).max_by_key(|fact| fact.day)
    }

    /// The reference max that a session of a past day was made with: what that day's own sets
    /// raised or tested came after it.
    pub fn max_before(&self, exercise: &str, day: i32) -> Option<&MaxFact> {
        let stood = |fact: &&MaxFact| {
            fact.day < day || (fact.day == day && fact.origin == MaxOrigin::Entered)
        };
        self.maxes.get(exercise)?.iter().filter(stood).max_by_key(|fact| fact.day)
    }
}
