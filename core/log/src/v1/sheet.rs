//! Today's sheet.

use barwright_domain::{catalogue, session};
#[cfg(any(test, feature = "schema"))]
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::because::Reason;
use super::effort::{EffortTarget, SetKind};
use super::equipment::Liked;
use super::flow::Flow;
use super::how_many::{Amount, HowMany};
use super::load::{CallLoad, Load};
use super::manner::{Manner, Side, WeekKind};
use super::names::EntryId;
use super::quantity::{Mass, Seconds};
use super::structure::Structure;
use super::terms::Terms;
use crate::mirror::is_default;

/// Today's session laid out.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(any(test, feature = "schema"), derive(JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Sheet {
    /// Its title.
    pub title: String,
    /// Where it stands in a plan; none for a session made up on the spot.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub place: Option<PlanPlace>,
    /// What the week is for.
    #[serde(default, skip_serializing_if = "is_default")]
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
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub blocks: Vec<Block>,
}

mirror!(struct Sheet = session::Sheet { title, place, week_kind, warm_up, rest_step, seconds_a_rep, again_after, blocks });

/// Which session of which plan.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(any(test, feature = "schema"), derive(JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct PlanPlace {
    /// The plan, by the log's number of its adoption.
    pub plan: u64,
    /// Week, from 1.
    pub week: u16,
    /// Session within the week, from 1.
    pub session: u16,
}

mirror!(struct PlanPlace = session::PlanPlace { plan, week, session });

/// Exercises done back to back; one alone is a block of its own.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(any(test, feature = "schema"), derive(JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Block {
    /// The exercises in order.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub entries: Vec<Entry>,
    /// Rest between the exercises of a round.
    #[serde(default, skip_serializing_if = "is_default")]
    pub rest_within: Seconds,
    /// Rest after a round.
    #[serde(default, skip_serializing_if = "is_default")]
    pub rest_after_round: Seconds,
}

mirror!(struct Block = session::Block { entries, rest_within, rest_after_round });

/// An exercise of today's sheet.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(any(test, feature = "schema"), derive(JsonSchema))]
#[serde(deny_unknown_fields)]
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
    #[serde(default, skip_serializing_if = "is_default")]
    pub optional: bool,
    /// A main lift: what little time takes sets of last.
    #[serde(default, skip_serializing_if = "is_default")]
    pub main: bool,
    /// Kept whole whatever time there is.
    #[serde(default, skip_serializing_if = "is_default")]
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
    #[serde(default, skip_serializing_if = "is_default")]
    pub rest_between_sides: Seconds,
    /// Its sets in order.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub calls: Vec<Call>,
    /// Last time's line: what was done, most recent session.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub last: Option<LastTime>,
    /// Whether a bar could come down on the lifter, so that failure work wants pins or a spotter.
    #[serde(default, skip_serializing_if = "is_default")]
    pub over_body: bool,
    /// The figure that the last four weeks' estimates support for the repetitions called; none with
    /// too little to go by. What is more than a tenth over it asks before it is loaded.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub supported: Option<Mass>,
    /// The exercise this one stands in for, by its slug.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub stands_in_for: Option<String>,
    /// Which loads the lifter likes for it.
    #[serde(default, skip_serializing_if = "is_default")]
    pub liked: Liked,
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

mirror!(struct Entry = session::Entry { id, exercise, name, implement, optional, main, keep, instead, wear, set_up, lacks, rest_between_sides, calls, last, over_body, supported, liked, stands_in_for, terms, pain, test });

/// What to do where the equipment is lacking or taken.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(any(test, feature = "schema"), derive(JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Substitute {
    /// The exercise, by its slug.
    pub exercise: String,
    /// Its name.
    pub name: String,
    /// Whether this gym has what it needs.
    #[serde(default, skip_serializing_if = "is_default")]
    pub possible: bool,
}

mirror!(struct Substitute = session::Substitute { exercise, name, possible });

/// What was done last time, for the line under the call.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(any(test, feature = "schema"), derive(JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct LastTime {
    /// Local date, in days since 1970-01-01.
    pub day: i32,
    /// Figure of the top work load.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub figure: Option<Mass>,
    /// What each work set reached.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub amounts: Vec<Amount>,
    /// Half repetitions left after the last set, where called.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub left_halves: Option<u8>,
}

mirror!(struct LastTime = session::LastTime { day, figure, amounts, left_halves });

/// Pain that stands on an exercise.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(any(test, feature = "schema"), derive(JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct EntryPain {
    /// Since this local date, in days since 1970-01-01.
    pub since: i32,
    /// Sessions running in which it hurt.
    pub running: u8,
    /// A session without it was done: it comes back by a tenth a session.
    #[serde(default, skip_serializing_if = "is_default")]
    pub comes_back: bool,
}

mirror!(struct EntryPain = session::EntryPain { since, running, comes_back });

/// What a test of a max starts from.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(any(test, feature = "schema"), derive(JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Expected {
    /// The max that is expected, as moved mass; none where nothing is known of it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub max: Option<Mass>,
    /// Upper or lower body: the steps of the protocol differ.
    pub region: Region,
}

mirror!(struct Expected = session::Expected { max, region });

/// One set of today's sheet.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(any(test, feature = "schema"), derive(JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Call {
    /// What it is for.
    #[serde(default, skip_serializing_if = "is_default")]
    pub kind: SetKind,
    /// The row of its exercise that it belongs to, in order: the climb, then the back-offs.
    #[serde(default, skip_serializing_if = "is_default")]
    pub row: u16,
    /// The round within its row, from 1; 0 for the ramp. The sides of one set share a round.
    pub round: u16,
    /// Where the number of sets of its row comes from.
    #[serde(default, skip_serializing_if = "is_default")]
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
    #[serde(default, skip_serializing_if = "is_default")]
    pub structure: Structure,
    /// In what way.
    #[serde(default, skip_serializing_if = "is_default")]
    pub manner: Manner,
    /// Rest after it.
    pub rest: Seconds,
    /// Why this load.
    pub reason: Reason,
}

mirror!(struct Call = session::Call { kind, row, round, flow, side, load, part_loads, how_many, aim, effort, structure, manner, rest, reason });

/// Upper body, lower body, or the trunk between.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(any(test, feature = "schema"), derive(JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Region {
    /// Arms, shoulders, chest, upper back.
    Upper,
    /// Hips and legs; also what is lifted from the floor, carried or pushed.
    Lower,
    /// Trunk.
    Trunk,
}

mirror!(enum Region = catalogue::Region {
    Upper,
    Lower,
    Trunk,
});

/// What was worn or used; records with it stand apart.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(any(test, feature = "schema"), derive(JsonSchema))]
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

mirror!(enum Kit = session::Kit {
    Belt,
    Wraps,
    Straps,
    Sleeves,
});
