//! What the coach wrote: the model, reading it from text, printing it back.
//!
//! [`Plan::read`] takes a TOML text (docs/plan-format.md shows every row of it) and gives the plan
//! or every fault at once. [`Plan::session`] gives one session of one week with that week's changes
//! applied; nothing after it sees variations.

pub mod bounds;
pub mod by_hand;
mod line;
mod model;
mod print;
mod read;
mod rules;
mod shapes;
mod week;

pub use line::{Course, Line, OnSets, PerSet, Rests, Varied, Weeks};
pub use model::{
    Accepted, Gear, Goal, MaxRule, Plan, Ramp, RampStep, Session, SetUp, Sides, Slot, Substitute,
    USUAL_WORKING_MAX, WarmUp, Week,
};
pub use read::{OWN_EXERCISE, Place, Places, PlanFile, SlotPlace, read_exercise};
pub use rules::{Cut, LayOff, Miss, RaiseMax, Rule, RuleKind, Step, USUAL_LAY_OFF, USUAL_MISSES};
pub(crate) use shapes::COUNTINGS;
pub use week::{Block, Entry, SetCall, WeekSession};
