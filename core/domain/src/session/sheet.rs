//! Today's session laid out: every set with its resolved load, its rest and its reason.
//!
//! The sheet is a fact of the event that began the session, so a later release can never read it
//! differently.

use serde::{Deserialize, Serialize};

use super::reason::Reason;
use crate::call::{
    Amount, EffortTarget, EntryId, Flow, HowMany, Manner, SetKind, Side, Structure, WeekKind,
};
use crate::catalogue::{Counting, Region};
use crate::equipment::{Liked, Rig};
use crate::owners::Terms;
use crate::quantity::{Mass, Percent, Seconds};

/// The body's part in a load.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub struct BodyPart {
    /// Body mass on the day.
    pub mass: Mass,
    /// Share of it that the exercise moves.
    pub share: Percent,
}

/// A load that this gym can make.
#[derive(Debug, Clone, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub struct Load {
    /// What the rule meant, before this gym's plates: progress steps from here.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub meant: Option<Mass>,
    /// What is on: total, each hand, stack figure, or added to the body, as `counting` says; for
    /// help it is negative. None for a pin without a number or a set-up without figures.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub figure: Option<Mass>,
    /// How the figure is meant.
    pub counting: Counting,
    /// What to put on.
    pub rig: Rig,
    /// The body's part, where the exercise moves it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub body: Option<BodyPart>,
    /// Named bands or chains.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub set_up: Option<String>,
}

impl Load {
    /// Moved mass: share of the body + added − help, or the figure itself. None where the figure
    /// is not a mass, or past the range.
    pub fn moved(&self) -> Option<Mass> {
        if self.set_up.is_some() || self.counting == Counting::Unnumbered {
            return None;
        }
        let figure = self.figure?;
        match (self.body, self.counting) {
            (Some(body), _) => body.share.of(body.mass)?.checked_add(figure),
            // What hangs on a body of unknown mass says nothing of what is moved.
            (None, Counting::Added) => None,
            (None, _) => Some(figure),
        }
    }
}

/// What today's call says of the load.
#[derive(Debug, Clone, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum CallLoad {
    /// This load.
    Known(Load),
    /// A share of the top set, known when that is done.
    AfterTop {
        /// The share.
        share: Percent,
    },
    /// The lifter's choice: nothing to go by yet. What they load is recorded.
    Chosen {
        /// How the figure will be meant.
        counting: Counting,
        /// The body's part, where the exercise moves it.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        body: Option<BodyPart>,
    },
}

/// One set of today's sheet.
#[derive(Debug, Clone, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub struct Call {
    /// What it is for.
    #[serde(default)]
    pub kind: SetKind,
    /// The row of its exercise that it belongs to, in order: the climb, then the back-offs.
    #[serde(default)]
    pub row: u16,
    /// The round within its row, from 1; 0 for the ramp. The sides of one set share a round.
    pub round: u16,
    /// Where the number of sets of its row comes from.
    #[serde(default)]
    pub flow: Flow,
    /// The side, where each works for itself.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub side: Option<Side>,
    /// The load.
    pub load: CallLoad,
    /// Loads of the parts after the first, for drops and easier variations; empty where every part
    /// has the same.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub part_loads: Vec<Load>,
    /// How many.
    pub how_many: HowMany,
    /// What the rule of the exercise tries for within it: what one tap records.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub aim: Option<Amount>,
    /// How hard.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub effort: Option<EffortTarget>,
    /// The parts it is made of.
    #[serde(default)]
    pub structure: Structure,
    /// In what way.
    #[serde(default)]
    pub manner: Manner,
    /// Rest after it.
    pub rest: Seconds,
    /// Why this load.
    pub reason: Reason,
}

/// What to do where the equipment is lacking or taken.
#[derive(Debug, Clone, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub struct Substitute {
    /// The exercise, by its slug.
    pub exercise: String,
    /// Its name.
    pub name: String,
    /// Whether this gym has what it needs.
    pub possible: bool,
}

/// An exercise of today's sheet.
#[derive(Debug, Clone, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub struct Entry {
    /// Its name in this session.
    pub id: EntryId,
    /// The exercise, by its slug.
    pub exercise: String,
    /// Its name.
    pub name: String,
    /// The implement it is loaded with, as equipment names it.
    pub implement: String,
    /// Offered, not owed.
    #[serde(default)]
    pub optional: bool,
    /// A main lift: what little time takes sets of last.
    #[serde(default)]
    pub main: bool,
    /// Kept whole whatever time there is.
    #[serde(default)]
    pub keep: bool,
    /// Substitutes in order of preference.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub instead: Vec<Substitute>,
    /// What is worn for it from the start.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub wear: Vec<Kit>,
    /// Set-up remembered from last time or said by the plan: pin height, seat, attachment.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub set_up: Vec<String>,
    /// What equipment this gym lacks for it, by implement or support; empty when all is there.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub lacks: Vec<String>,
    /// Rest between the two sides of a set.
    #[serde(default)]
    pub rest_between_sides: Seconds,
    /// Its sets in order.
    pub calls: Vec<Call>,
    /// Last time's line: what was done, most recent session.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub last: Option<LastTime>,
    /// Whether a bar could come down on the lifter, so that failure work wants pins or a spotter.
    #[serde(default)]
    pub over_body: bool,
    /// The figure that the last four weeks' estimates support for the repetitions called; none with
    /// too little to go by. What is more than a tenth over it asks before it is loaded.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub supported: Option<Mass>,
    /// Which loads the lifter likes for it.
    #[serde(default, skip_serializing_if = "Liked::any")]
    pub liked: Liked,
    /// The exercise this one stands in for, by its slug.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub stands_in_for: Option<String>,
    /// What was asked of each of its rows, and what owns it.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub terms: Vec<Terms>,
    /// Pain that stands on it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub pain: Option<EntryPain>,
    /// What its singles are chosen from, where a max is tested.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub test: Option<Expected>,
}

/// Pain that stands on an exercise.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub struct EntryPain {
    /// Since this local date, in days since 1970-01-01.
    pub since: i32,
    /// Sessions running in which it hurt.
    pub running: u8,
    /// A session without it was done: it comes back by a tenth a session.
    pub comes_back: bool,
}

/// What a test of a max starts from.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub struct Expected {
    /// The max that is expected, as moved mass; none where nothing is known of it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub max: Option<Mass>,
    /// Upper or lower body: the steps of the protocol differ.
    pub region: Region,
}

/// What was done last time, for the line under the call.
#[derive(Debug, Clone, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub struct LastTime {
    /// Local date, in days since 1970-01-01.
    pub day: i32,
    /// Figure of the top work load.
    pub figure: Option<Mass>,
    /// What each work set reached.
    pub amounts: Vec<Amount>,
    /// Half repetitions left after the last set, where called.
    pub left_halves: Option<u8>,
}

/// Exercises done back to back; one alone is a block of its own.
#[derive(Debug, Clone, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub struct Block {
    /// The exercises in order.
    pub entries: Vec<Entry>,
    /// Rest between the exercises of a round.
    #[serde(default)]
    pub rest_within: Seconds,
    /// Rest after a round.
    #[serde(default)]
    pub rest_after_round: Seconds,
}

/// Which session of which plan.
#[derive(Debug, Clone, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub struct PlanPlace {
    /// The plan, by the log's number of its adoption.
    pub plan: u64,
    /// Week, from 1.
    pub week: u16,
    /// Session within the week, from 1.
    pub session: u16,
}

/// Today's session laid out.
#[derive(Debug, Clone, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub struct Sheet {
    /// Its title.
    pub title: String,
    /// Where it stands in a plan; none for a session made up on the spot.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub place: Option<PlanPlace>,
    /// What the week is for.
    #[serde(default)]
    pub week_kind: WeekKind,
    /// General warm-up before the first ramp.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub warm_up: Option<Seconds>,
    /// How much "shorter" and "longer" move a rest.
    pub rest_step: Seconds,
    /// Seconds that a repetition takes where no tempo says it.
    pub seconds_a_rep: u8,
    /// A pause longer than this calls for one warm-up step again.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub again_after: Option<Seconds>,
    /// The work, in order.
    pub blocks: Vec<Block>,
}

impl Sheet {
    /// Every exercise in order.
    pub fn entries(&self) -> impl Iterator<Item = &Entry> {
        self.blocks.iter().flat_map(|block| &block.entries)
    }
}

/// What was worn or used; records with it stand apart.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Kit {
    /// A belt.
    Belt,
    /// Wraps for knees or wrists.
    Wraps,
    /// Straps.
    Straps,
    /// Sleeves for knees or elbows.
    Sleeves,
}
