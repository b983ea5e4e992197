//! The facts between sessions.

use barwright_domain::desk;
#[cfg(any(test, feature = "schema"))]
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::arranged::Arrangement;
use super::brought::Brought;
use super::change::Change;
use super::draft::{DraftOf, Splice};
use super::equipment::{Equipment, Liked};
use super::names::{RowId, TrackId};
use super::outcome::Outcome;
use super::quantity::Mass;
use super::terms::{Owner, RowOwner};
use crate::mirror::is_default;

/// A fact kept at the desk.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(any(test, feature = "schema"), derive(JsonSchema))]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum DeskEvent {
    /// A plan was adopted; the one before is kept.
    PlanAdopted {
        /// The file's text, as it was read.
        text: String,
        /// What it calls itself.
        name: String,
        /// Local date of adoption, in days since 1970-01-01.
        day: i32,
        /// Each row with its track.
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        rows: Vec<RowOwner>,
        /// What it says to tracks that start.
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        said: Vec<(TrackId, Vec<Change>)>,
    },
    /// The plan that is on was read again, mended: weeks, dates and owners stay.
    PlanMended {
        /// The log's number of its adoption.
        plan: u64,
        /// The file's text.
        text: String,
        /// Local date of the mending.
        day: i32,
        /// Each row with its track.
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        rows: Vec<RowOwner>,
        /// What it says to tracks that start, or start anew.
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        said: Vec<(TrackId, Vec<Change>)>,
    },
    /// A plan that was kept is taken up again where it stood; the one before is kept.
    PlanTakenUp {
        /// The log's number of its adoption.
        plan: u64,
        /// The file's text.
        text: String,
        /// What it calls itself.
        name: String,
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
        /// The file's text; empty where it came without one.
        #[serde(default, skip_serializing_if = "String::is_empty")]
        text: String,
    },
    /// A gym of the lifter's own is no longer kept.
    GymGone {
        /// Its name.
        name: String,
    },
    /// An exercise of the lifter's own was made, or one of the same slug put right.
    ExerciseKept {
        /// Its slug, for ever: histories are kept under it.
        slug: String,
        /// Its text, with the keys that a plan's own exercise has.
        text: String,
    },
    /// Something is begun by hand, in place of what was begun before it.
    DraftBegun {
        /// What it is of.
        of: DraftOf,
        /// What it is begun from, by name; empty for nothing.
        #[serde(default, skip_serializing_if = "String::is_empty")]
        from: String,
        /// Its text.
        text: String,
    },
    /// A step of it.
    DraftChanged {
        /// What it is of.
        of: DraftOf,
        /// What changes.
        splice: Splice,
    },
    /// Its last step is taken back, or the one that was taken back last comes again.
    DraftTurned {
        /// What it is of.
        of: DraftOf,
        /// Back.
        #[serde(default, skip_serializing_if = "is_default")]
        back: bool,
    },
    /// It is dropped, or was taken up; it can be gone on with until another is begun.
    DraftDropped {
        /// What it is of.
        of: DraftOf,
    },
    /// This gym is trained in from now on.
    GymChosen {
        /// Its name.
        name: String,
    },
    /// A person says something to an owner: a max, a working load, a proposal accepted.
    Said {
        /// The owner.
        owner: Owner,
        /// What.
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        changes: Vec<Change>,
        /// Local date, in days since 1970-01-01.
        day: i32,
    },
    /// What a person said last, and was not taken back yet, is taken back.
    TakenBack {
        /// The log's number of it.
        seq: u64,
    },
    /// What was taken back last is said again.
    BroughtBack {
        /// The log's number of it.
        seq: u64,
    },
    /// A row gets a track of its own, from where the one it shared stands.
    TrackParted {
        /// The row.
        row: RowId,
        /// Its own track.
        track: TrackId,
        /// What it starts with.
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        changes: Vec<Change>,
        /// Local date, in days since 1970-01-01.
        day: i32,
    },
    /// What a session came to for each owner, in place of what it came to before.
    Decided {
        /// The session, by the log's number of its first event.
        session: u64,
        /// Its local date.
        day: i32,
        /// An outcome an owner; none where it is no longer over.
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        outcomes: Vec<Outcome>,
    },
    /// Which loads are liked in a gym, or for a lift wherever.
    LoadsLiked {
        /// The lift, by its slug; none is the gym.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        lift: Option<String>,
        /// The gym, by its name; of a lift none.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        gym: Option<String>,
        /// Which.
        #[serde(default, skip_serializing_if = "is_default")]
        liked: Liked,
    },
    /// Changes that a coach sent were taken; what each of them says is a fact of its own.
    ChangesTaken {
        /// The id of the file.
        file: String,
        /// The ids of those that were taken.
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        ids: Vec<String>,
    },
    /// A session that was not lived in this store comes into its history, named by the log's number
    /// of this.
    SessionBrought(Box<Brought>),
    /// The sessions that one tap brought are taken out of the history again.
    SessionsWithdrawn {
        /// The log's number of the tap's first.
        tap: u64,
    },
    /// A session that is past is of another local date than the clock said.
    SessionDated {
        /// The session, by the log's number of its first event.
        session: u64,
        /// Its local date, in days since 1970-01-01.
        day: i32,
    },
    /// An illness is over: the next session is the ease-in.
    WasIll {
        /// Local date, in days since 1970-01-01.
        day: i32,
    },
    /// Whether the lifter is under 18, and on which local date a coach is there.
    Minor {
        /// Under 18.
        under_18: bool,
        /// The date, in days since 1970-01-01; none is nobody.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        coached: Option<i32>,
    },
    /// Body mass.
    BodyMassKept {
        /// It.
        mass: Mass,
        /// Local date, in days since 1970-01-01.
        day: i32,
    },
}

mirror!(enum DeskEvent = desk::DeskEvent {
    PlanAdopted { text, name, day, rows, said },
    PlanMended { plan, text, day, rows, said },
    PlanTakenUp { plan, text, name, day },
    Arranged { plan, what },
    GymKept { equipment, text },
    GymGone { name },
    ExerciseKept { slug, text },
    DraftBegun { of, from, text },
    DraftChanged { of, splice },
    DraftTurned { of, back },
    DraftDropped { of },
    GymChosen { name },
    Said { owner, changes, day },
    TakenBack { seq },
    BroughtBack { seq },
    TrackParted { row, track, changes, day },
    Decided { session, day, outcomes },
    LoadsLiked { lift, gym, liked },
    ChangesTaken { file, ids },
    SessionBrought(it),
    SessionsWithdrawn { tap },
    SessionDated { session, day },
    WasIll { day },
    Minor { under_18, coached },
    BodyMassKept { mass, day },
});
