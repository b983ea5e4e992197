//! What happened: the facts of a session, each complete in itself.

use serde::{Deserialize, Serialize};

use super::reading::Reading;
use super::reason::Reason;
use super::rest::Rest;
use super::sheet::{Call, Entry, Kit, Load, Sheet};
use crate::call::{Amount, Ending};
use crate::call::{EntryId, SetId};
use crate::equipment::{Equipment, Rig};
use crate::owners::Owner;
use crate::quantity::{Mass, Reps, Reserve};

/// What guards a lifter under a bar before work to failure.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Guard {
    /// Safety pins or arms.
    Pins,
    /// A spotter.
    Spotter,
    /// Neither: two are kept in reserve, and no max is tried.
    Neither,
}

/// Why an exercise was swapped.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum SwapCause {
    /// The gym lacks the equipment.
    Lacking,
    /// It is taken.
    Taken,
    /// Pain.
    Pain,
    /// The lifter's wish.
    Wish,
}

/// What one part came to.
#[derive(Debug, Clone, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub struct Done {
    /// How much.
    pub amount: Amount,
    /// The load that was on.
    pub load: Load,
    /// The lifter's own judgement; none when it was not called. A target is never put here.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub left: Option<Reserve>,
    /// How it ended.
    #[serde(default)]
    pub ending: Ending,
    /// Repetitions beyond the amount that a spotter helped with: counted apart, estimating nothing.
    #[serde(default)]
    pub helped: Reps,
}

/// A part is over.
#[derive(Debug, Clone, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub struct PartDone {
    /// The set.
    pub set: SetId,
    /// The part within it, from 0.
    pub part: u16,
    /// What it came to.
    pub done: Done,
    /// The set is over with it.
    pub closes: bool,
    /// The load of the next part, where it differs.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub next_load: Option<Load>,
}

/// A load newly resolved for a set that is still to come.
#[derive(Debug, Clone, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub struct LoadForSet {
    /// The set.
    pub set: SetId,
    /// Its load.
    pub load: Load,
    /// Loads of its further parts, where they differ.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub part_loads: Vec<Load>,
    /// Why.
    pub reason: Reason,
}

/// A fact of a session.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Event {
    /// A session began, with all that it is to be.
    Began {
        /// Today's sheet.
        sheet: Sheet,
        /// The gym it is done in.
        equipment: Equipment,
        /// Body mass on the day.
        body_mass: Option<Mass>,
    },
    /// The work of a set began: for holds, clocks and measured sets.
    SetStarted {
        /// The set.
        set: SetId,
    },
    /// A partner tapped: the first repetition of a part began, or one was over. An event of its own,
    /// so that nothing of a set lies in memory alone.
    RepTapped {
        /// The set.
        set: SetId,
        /// The part within it, from 0.
        part: u16,
    },
    /// A part is over.
    PartDone(PartDone),
    /// An earlier part was put right.
    Corrected {
        /// The set.
        set: SetId,
        /// The part.
        part: u16,
        /// What it really came to.
        done: Done,
    },
    /// A set in the middle of its parts was left there.
    SetLeft {
        /// The set.
        set: SetId,
    },
    /// A set was left out.
    SetSkipped {
        /// The set.
        set: SetId,
    },
    /// What is left of an exercise was left out.
    EntrySkipped {
        /// For pain: the last set of it hurt.
        #[serde(default)]
        pain: bool,
        /// The exercise.
        entry: EntryId,
    },
    /// An exercise was swapped for another, which takes its place.
    Swapped {
        /// The exercise.
        entry: EntryId,
        /// What is done instead.
        to: Entry,
        /// Why.
        cause: SwapCause,
    },
    /// An exercise was added, at the end.
    EntryAdded {
        /// It.
        entry: Entry,
    },
    /// What is left of an exercise was put off to the end.
    Postponed {
        /// The exercise.
        entry: EntryId,
    },
    /// An exercise was taken up now.
    Returned {
        /// The exercise.
        entry: EntryId,
    },
    /// A set was added after the last of its exercise.
    SetAdded {
        /// Its name.
        set: SetId,
        /// Its call.
        call: Call,
    },
    /// A set that is still to come is called otherwise.
    SetCalled {
        /// The set.
        set: SetId,
        /// Its call from here on.
        call: Call,
    },
    /// Loads of sets to come were resolved or changed.
    LoadsSet {
        /// One row a set.
        loads: Vec<LoadForSet>,
    },
    /// What is really on.
    BarHolds {
        /// It.
        rig: Rig,
    },
    /// A rest began.
    RestBegan {
        /// It.
        rest: Rest,
    },
    /// The running rest was made shorter or longer.
    RestSet {
        /// It, as it is now.
        rest: Rest,
    },
    /// The running rest was begun anew with what remained, on a clock that its old beginning can't
    /// be compared with.
    RestRebased {
        /// It, as it was: another rest is left alone.
        was: Rest,
        /// It, as it is now.
        rest: Rest,
    },
    /// Pins, a spotter, or neither.
    Guarded {
        /// The exercise.
        entry: EntryId,
        /// Which.
        guard: Guard,
    },
    /// What is worn for an exercise from here on.
    KitUsed {
        /// The exercise.
        entry: EntryId,
        /// All of it.
        kit: Vec<Kit>,
    },
    /// Set-up, to be remembered.
    SetUpNoted {
        /// The exercise.
        entry: EntryId,
        /// Its lines.
        set_up: Vec<String>,
    },
    /// A note.
    Noted {
        /// Of an exercise, or of the session.
        entry: Option<EntryId>,
        /// Its text.
        text: String,
    },
    /// The session was paused.
    Paused,
    /// And taken up again.
    Resumed,
    /// The session is of another local date than the clock said when it began.
    Dated {
        /// Local date, in days since 1970-01-01.
        day: i32,
        /// It is entered from paper: nobody trains while it runs.
        #[serde(default)]
        paper: bool,
    },
    /// The session is over.
    Finished {
        /// As of this reading, where it was only ended by the next one's beginning.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        as_of: Option<Reading>,
    },
    /// Whether an exercise on which pain stands was done without it.
    PainAnswered {
        /// The exercise, by its slug.
        exercise: String,
        /// It was.
        free: bool,
    },
    /// The pain is of a joint: it stands on every exercise that works it, or no longer.
    PainOfJoint {
        /// The exercise that hurt, by its slug.
        exercise: String,
        /// It is.
        of_joint: bool,
    },
    /// An outcome of the session is held back.
    HeldBack {
        /// The owner.
        owner: Owner,
        /// Held, or let go again.
        held: bool,
    },
    /// A tap is taken back; taking back an undo brings its tap back.
    Undone {
        /// The tap, by the log's number of its first event.
        tap: u64,
    },
}

/// An event as it stands in the log.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Stamped {
    /// Its number in the log.
    pub seq: u64,
    /// The number of the first event of its tap.
    pub tap: u64,
    /// When.
    pub at: Reading,
    /// What.
    pub event: Event,
}
