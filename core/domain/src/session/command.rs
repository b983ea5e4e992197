//! What a lifter can ask for.

use super::event::{Guard, SwapCause};
use super::sheet::{Entry, Kit, Sheet};
use crate::call::{Amount, Ending};
use crate::call::{EntryId, SetId};
use crate::equipment::{Equipment, Rig};
use crate::owners::Owner;
use crate::quantity::{Mass, Reps, Reserve};

/// What the lifter says of a part; what is not said is as called.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Set {
    /// How much; none is as called.
    pub amount: Option<Amount>,
    /// The figure of the load, counted as the exercise counts; none is as called.
    pub load: Option<Mass>,
    /// Repetitions left; none is not called.
    pub left: Option<Reserve>,
    /// How it ended.
    pub ending: Ending,
    /// Repetitions with a spotter's help, beyond the amount.
    pub helped: Reps,
    /// This part ends its set, whatever was still to come of it.
    pub last: bool,
}

/// A command to the session.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Command {
    /// Begin a session.
    Begin {
        /// The sheet.
        sheet: Sheet,
        /// The gym.
        equipment: Equipment,
        /// Body mass on the day.
        body_mass: Option<Mass>,
        /// The local date that it was done on, where it is entered from paper.
        paper: Option<i32>,
    },
    /// Everything left, or what is left of an exercise and of what is done back to back with it, was
    /// done as called. Of a session from paper alone.
    RecordAll(Option<EntryId>),
    /// The session is of this local date, whatever the clock said.
    Date(i32),
    /// The work of the current set begins now.
    Start,
    /// A partner taps: the first repetition of the current part begins, or one is over.
    TapRep,
    /// The current part is over.
    Record(Set),
    /// Put an earlier part right; what is not said stays, but for effort, which becomes what is
    /// said.
    Correct {
        /// The set.
        set: SetId,
        /// The part.
        part: u16,
        /// What it really came to.
        to: Set,
        /// Whether a load far from the recorded one is meant.
        sure: bool,
    },
    /// Leave the current set out, or what is left of its parts.
    SkipSet,
    /// Leave out what is left of an exercise.
    SkipEntry(EntryId),
    /// Do another exercise instead.
    Swap {
        /// The exercise.
        entry: EntryId,
        /// What is done instead; its id is given here.
        to: Entry,
        /// Why.
        cause: SwapCause,
    },
    /// One more exercise, at the end; its id is given here.
    AddEntry(Entry),
    /// Put off what is left of an exercise to the end.
    Postpone(EntryId),
    /// Take up an exercise now.
    Return(EntryId),
    /// One more set like the last.
    AddSet(EntryId),
    /// Change the load for the sets left of an exercise.
    ChangeLoad {
        /// The exercise.
        entry: EntryId,
        /// The figure, counted as the exercise counts.
        load: Mass,
        /// Only of the next set.
        only_next: bool,
        /// It is more than the last weeks support, and meant all the same.
        sure: bool,
    },
    /// Choose a place on an unnumbered stack for the sets left of an exercise.
    ChoosePin {
        /// The exercise.
        entry: EntryId,
        /// The place, as the stack names it.
        pin: String,
    },
    /// The bar holds this.
    BarHolds(Rig),
    /// Make the running rest longer, or shorter, by so many seconds.
    RestBy(i32),
    /// Pins, a spotter, or neither.
    GuardedBy {
        /// The exercise.
        entry: EntryId,
        /// Which.
        guard: Guard,
    },
    /// What is worn for an exercise from here on.
    UseKit {
        /// The exercise.
        entry: EntryId,
        /// All of it.
        kit: Vec<Kit>,
    },
    /// Remember a set-up.
    NoteSetUp {
        /// The exercise.
        entry: EntryId,
        /// Its lines.
        set_up: Vec<String>,
    },
    /// Write a note.
    Note {
        /// Of an exercise, or of the session.
        entry: Option<EntryId>,
        /// Its text.
        text: String,
    },
    /// Pause.
    Pause,
    /// Go on.
    Resume,
    /// The session is over, whatever was left of it.
    Finish,
    /// Say whether an exercise on which pain stands was done without it.
    AnswerPain {
        /// The exercise, by its slug.
        exercise: String,
        /// It was.
        free: bool,
    },
    /// Say whether the pain is of a joint.
    PainOfJoint {
        /// The exercise that hurt, by its slug.
        exercise: String,
        /// It is.
        of_joint: bool,
    },
    /// Hold an outcome of the session back, or let it go again.
    HoldBack {
        /// The owner.
        owner: Owner,
        /// Held.
        held: bool,
    },
    /// Take back the last tap.
    Undo,
    /// Take back the last undo.
    Redo,
    /// The device started, its clocks were changed, or the program came back: put the rest right.
    Wake,
}
