//! Sessions that were not lived in this store.

use barwright_domain::catalogue::Muscle;
use barwright_domain::history::{self, SetKey};
use barwright_domain::progress::pace;
use barwright_domain::volume::{self, Count, Sides};
#[cfg(any(test, feature = "schema"))]
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::effort::{EffortTarget, Ending, SetKind};
use super::how_many::{Amount, HowMany};
use super::load::Counting;
use super::manner::{Side, WeekKind};
use super::names::SetId;
use super::quantity::{Mass, Reserve};
use super::sheet::{Kit, PlanPlace};
use crate::mirror::{Mirror, OutOfRange, is_default};

/// A session that another store, or an older table, has.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(any(test, feature = "schema"), derive(JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Brought {
    /// Where it is from: the id of a store, or the name of a table's form.
    pub from: String,
    /// Tells it apart from others from there: a checksum of what it is.
    pub sum: u32,
    /// Its row as it stood there.
    pub row: SessionRow,
    /// Its sets as they stood there.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub sets: Vec<DoneSet>,
}

impl Mirror for Brought {
    type Of = history::Brought;

    fn of(it: &Self::Of) -> Self {
        let history::Brought { from, sum, row, sets } = it;
        let sets = sets.iter().map(DoneSet::of).collect();
        Self { from: from.clone(), sum: *sum, row: Mirror::of(row), sets }
    }

    fn back(self) -> Result<Self::Of, OutOfRange> {
        let Self { from, sum, row, sets } = self;
        let row = row.back()?;
        let sets = sets.into_iter().map(|set| set.back(&row)).collect::<Result<_, _>>()?;
        Ok(history::Brought { from, sum, row, sets })
    }
}

/// A session.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(any(test, feature = "schema"), derive(JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct SessionRow {
    /// Its number there.
    pub session: u64,
    /// Local date of its beginning, in days since 1970-01-01.
    pub day: i32,
    /// Its title.
    #[serde(default, skip_serializing_if = "is_default")]
    pub title: String,
    /// Where it stands in a plan that both have.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub place: Option<PlanPlace>,
    /// What the week was for.
    #[serde(default, skip_serializing_if = "is_default")]
    pub week_kind: WeekKind,
    /// What it came to.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub outcome: Option<CameTo>,
}

mirror!(struct SessionRow = history::SessionRow { session, day, title, place, week_kind, outcome });

/// What a session came to.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(any(test, feature = "schema"), derive(JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct CameTo {
    /// Seconds from its beginning to its end; 0 where that is not known.
    pub seconds: u32,
    /// Work sets that were owed.
    pub owed: u16,
    /// Of those, how many were done.
    pub done: u16,
    /// Hard sets of each muscle that had any.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub volume: Vec<MuscleTally>,
}

mirror!(struct CameTo = history::Outcome { seconds, owed, done, volume });

/// Hard sets of one muscle, those under six repetitions apart: left direct, left indirect, right
/// direct, right indirect.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(any(test, feature = "schema"), derive(JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct MuscleTally {
    /// The muscle, by its slug.
    pub muscle: String,
    /// Of six repetitions and more.
    pub sets: [u32; 4],
    /// Of fewer.
    #[serde(default, skip_serializing_if = "is_default")]
    pub under_six: [u32; 4],
}

impl Mirror for MuscleTally {
    type Of = history::MuscleTally;

    fn of(it: &Self::Of) -> Self {
        let history::MuscleTally { muscle, tally: volume::Tally { sets, under_six } } = it;
        let counts =
            |of: &Sides| [of.left.direct, of.left.indirect, of.right.direct, of.right.indirect];
        Self { muscle: muscle.slug().to_owned(), sets: counts(sets), under_six: counts(under_six) }
    }

    fn back(self) -> Result<Self::Of, OutOfRange> {
        let muscle = Muscle::ALL.into_iter().find(|muscle| muscle.slug() == self.muscle);
        let muscle = muscle.ok_or_else(|| OutOfRange {
            quantity: "muscle",
            found: self.muscle,
            wanted: "one of those that are counted".to_owned(),
        })?;
        let sides = |[left, left_indirect, right, right_indirect]: [u32; 4]| Sides {
            left: Count { direct: left, indirect: left_indirect },
            right: Count { direct: right, indirect: right_indirect },
        };
        let tally = volume::Tally { sets: sides(self.sets), under_six: sides(self.under_six) };
        Ok(history::MuscleTally { muscle, tally })
    }
}

/// A set that was done.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(any(test, feature = "schema"), derive(JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct DoneSet {
    /// Its place in the session.
    pub set: SetId,
    /// The exercise, by its slug.
    pub exercise: String,
    /// What it was for.
    #[serde(default, skip_serializing_if = "is_default")]
    pub kind: SetKind,
    /// The row of its exercise that it belonged to.
    #[serde(default, skip_serializing_if = "is_default")]
    pub row: u16,
    /// The round within the row, from 1; 0 for the ramp.
    #[serde(default, skip_serializing_if = "is_default")]
    pub round: u16,
    /// The side, where each works for itself.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub side: Option<Side>,
    /// How many were asked for.
    pub asked: HowMany,
    /// How hard it was to be.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub target: Option<EffortTarget>,
    /// What the rule meant, before the gym's plates.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub meant: Option<Mass>,
    /// What was on, for the first part.
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
    /// What was worn.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub kit: Vec<Kit>,
    /// The parts.
    pub parts: Vec<DonePart>,
    /// What the lifter called after the last part.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub left: Option<Reserve>,
    /// Repetitions that a spotter helped with.
    #[serde(default, skip_serializing_if = "is_default")]
    pub helped: u16,
    /// How the last part ended.
    #[serde(default, skip_serializing_if = "is_default")]
    pub ending: Ending,
}

impl DoneSet {
    fn of(it: &history::DoneSet) -> Self {
        Self {
            set: Mirror::of(&it.key.set),
            exercise: it.exercise.clone(),
            kind: Mirror::of(&it.kind),
            row: it.row,
            round: it.round,
            side: Mirror::of(&it.side),
            asked: Mirror::of(&it.asked),
            target: Mirror::of(&it.target),
            meant: Mirror::of(&it.meant),
            figure: Mirror::of(&it.figure),
            counting: Mirror::of(&it.counting),
            moved: Mirror::of(&it.moved),
            bands: it.bands.clone(),
            technique: it.technique.clone(),
            set_up: it.set_up.clone(),
            kit: Mirror::of(&it.kit),
            parts: Mirror::of(&it.parts),
            left: Mirror::of(&it.left),
            helped: it.helped,
            ending: Mirror::of(&it.ending),
        }
    }

    /// As the domain has it, in the session of a row.
    fn back(self, row: &history::SessionRow) -> Result<history::DoneSet, OutOfRange> {
        Ok(history::DoneSet {
            key: SetKey { session: row.session, set: self.set.back()? },
            day: row.day,
            exercise: self.exercise,
            kind: self.kind.back()?,
            row: self.row,
            round: self.round,
            side: self.side.back()?,
            asked: self.asked.back()?,
            target: self.target.back()?,
            meant: self.meant.back()?,
            figure: self.figure.back()?,
            counting: self.counting.back()?,
            moved: self.moved.back()?,
            bands: self.bands,
            technique: self.technique,
            set_up: self.set_up,
            kit: self.kit.back()?,
            parts: self.parts.back()?,
            left: self.left.back()?,
            helped: self.helped,
            ending: self.ending.back()?,
        })
    }
}

/// One part of a set that was done.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(any(test, feature = "schema"), derive(JsonSchema))]
#[serde(deny_unknown_fields)]
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

mirror!(struct DonePart = history::DonePart { amount, figure, slowing });

/// How much slower the last two repetitions were than the first two, in thousandths.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(any(test, feature = "schema"), derive(JsonSchema))]
#[serde(transparent)]
pub struct Slowing(pub i32);

mirror!(name Slowing = pace::Slowing);
