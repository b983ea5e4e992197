//! What stands between sessions.

use std::collections::BTreeMap;

use barwright_domain::desk;
use barwright_domain::owners::Owners;
#[cfg(any(test, feature = "schema"))]
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::arranged::Arranged;
use super::equipment::{Equipment, Liked};
use super::quantity::Mass;
use super::said::Said;
use super::terms::RowOwner;
use crate::mirror::{Mirror, OutOfRange, is_default};

/// What stands between sessions. Its owners are facts of their own.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(any(test, feature = "schema"), derive(JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Desk {
    /// The plan that is on; those before it stand in the log.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub plan: Option<Adopted>,
    /// Plans that were on before, the latest last.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub kept: Vec<Kept>,
    /// What was arranged otherwise, by plan.
    #[serde(default, skip_serializing_if = "BTreeMap::is_empty")]
    pub arranged: BTreeMap<u64, Arranged>,
    /// Gyms of the lifter's own, beside the built-in ones.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub gyms: Vec<Equipment>,
    /// Their files' texts, by name, where they came with one.
    #[serde(default, skip_serializing_if = "BTreeMap::is_empty")]
    pub gym_files: BTreeMap<String, String>,
    /// The gym that is trained in, by name; none is the built-in one of the lifter's unit.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub gym: Option<String>,
    /// Exercises of the lifter's own, in the order they were made.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub exercises: Vec<OwnExercise>,
    /// The last name given to a track.
    #[serde(default, skip_serializing_if = "is_default")]
    pub next_track: u32,
    /// The last name given to a row.
    #[serde(default, skip_serializing_if = "is_default")]
    pub next_row: u32,
    /// The last body mass, and its local date.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub body_mass: Option<(Mass, i32)>,
    /// Body masses before it, oldest first.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub weighed: Vec<(Mass, i32)>,
    /// What a person said and may take back, the last one last.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub said: Vec<Said>,
    /// What was taken back and may be said again, the next one last.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub unsaid: Vec<Said>,
    /// Set-up of each exercise as it was noted last.
    #[serde(default, skip_serializing_if = "BTreeMap::is_empty")]
    pub set_ups: BTreeMap<String, Vec<String>>,
    /// Which loads are liked, by gym.
    #[serde(default, skip_serializing_if = "BTreeMap::is_empty")]
    pub liked_in: BTreeMap<String, Liked>,
    /// And by lift, by its slug.
    #[serde(default, skip_serializing_if = "BTreeMap::is_empty")]
    pub liked_of: BTreeMap<String, Liked>,
    /// An illness was over on this local date, and no session was decided since.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub was_ill: Option<i32>,
    /// The lifter is under 18.
    #[serde(default, skip_serializing_if = "is_default")]
    pub under_18: bool,
    /// The local date on which a coach is there.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub coached: Option<i32>,
    /// Changes that a coach sent and that were taken: files by id, the last one last, each with the
    /// ids of its changes.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub taken: Vec<(String, Vec<String>)>,
}

impl Mirror for Desk {
    type Of = desk::Desk;

    fn of(it: &Self::Of) -> Self {
        let desk::Desk {
            plan,
            kept,
            arranged,
            gyms,
            gym_files,
            gym,
            exercises,
            owners: _,
            next_track,
            next_row,
            body_mass,
            weighed,
            said,
            unsaid,
            set_ups,
            drafts: _,
            dropped: _,
            liked_in,
            liked_of,
            was_ill,
            under_18,
            coached,
            taken,
        } = it;
        Self {
            plan: Mirror::of(plan),
            kept: Mirror::of(kept),
            arranged: Mirror::of(arranged),
            gyms: Mirror::of(gyms),
            gym_files: gym_files.clone(),
            gym: Mirror::of(gym),
            exercises: Mirror::of(exercises),
            next_track: *next_track,
            next_row: *next_row,
            body_mass: Mirror::of(body_mass),
            weighed: Mirror::of(weighed),
            said: Mirror::of(said),
            unsaid: Mirror::of(unsaid),
            set_ups: Mirror::of(set_ups),
            liked_in: Mirror::of(liked_in),
            liked_of: Mirror::of(liked_of),
            was_ill: *was_ill,
            under_18: *under_18,
            coached: *coached,
            taken: taken.clone(),
        }
    }

    fn back(self) -> Result<Self::Of, OutOfRange> {
        let Self {
            plan,
            kept,
            arranged,
            gyms,
            gym_files,
            gym,
            exercises,
            next_track,
            next_row,
            body_mass,
            weighed,
            said,
            unsaid,
            set_ups,
            liked_in,
            liked_of,
            was_ill,
            under_18,
            coached,
            taken,
        } = self;
        Ok(desk::Desk {
            plan: plan.back()?,
            kept: kept.back()?,
            arranged: arranged.back()?,
            gyms: gyms.back()?,
            gym_files,
            gym,
            exercises: exercises.back()?,
            owners: Owners::default(),
            next_track,
            next_row,
            body_mass: body_mass.back()?,
            weighed: weighed.back()?,
            said: said.back()?,
            unsaid: unsaid.back()?,
            set_ups,
            drafts: BTreeMap::new(),
            dropped: BTreeMap::new(),
            liked_in: liked_in.back()?,
            liked_of: liked_of.back()?,
            was_ill,
            under_18,
            coached,
            taken,
        })
    }
}

/// An exercise of the lifter's own.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(any(test, feature = "schema"), derive(JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct OwnExercise {
    /// Its slug, for ever.
    pub slug: String,
    /// Its text.
    pub text: String,
}

mirror!(struct OwnExercise = desk::OwnExercise { slug, text });

/// An adopted plan.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(any(test, feature = "schema"), derive(JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Adopted {
    /// The log's number of its adoption: its name.
    pub seq: u64,
    /// The log's number of the event that has its text.
    pub text_seq: u64,
    /// The file's text.
    pub text: String,
    /// What it calls itself.
    pub name: String,
    /// Local date of adoption.
    pub day: i32,
    /// Each row with its track.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub rows: Vec<RowOwner>,
}

mirror!(struct Adopted = desk::Adopted { seq, text_seq, text, name, day, rows });

/// A plan that was on before, to go back to; its text stands in the log.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(any(test, feature = "schema"), derive(JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Kept {
    /// The log's number of its adoption: its name.
    pub seq: u64,
    /// The log's number of the event that has its text.
    pub text_seq: u64,
    /// What it calls itself.
    pub name: String,
    /// Local date of adoption.
    pub day: i32,
    /// Each row with its track.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub rows: Vec<RowOwner>,
}

mirror!(struct Kept = desk::Kept { seq, text_seq, name, day, rows });
