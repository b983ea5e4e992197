//! What a lifter asks for.

use serde::{Deserialize, Serialize};

use super::{Edit, FormOf};

/// How a set ended.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
#[derive(Default)]
pub enum HowEnded {
    /// As called.
    #[default]
    AsCalled,
    /// A repetition was tried and failed.
    Failed,
    /// Form went.
    Form,
    /// Pain.
    Pain,
    /// Interrupted.
    Interrupted,
    /// The equipment.
    Equipment,
}

/// What guards a lifter under a bar.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum GuardChoice {
    /// Safety pins or arms.
    Pins,
    /// A spotter.
    Spotter,
    /// Neither.
    Neither,
}

/// What is worn or used.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum KitChoice {
    /// A belt.
    Belt,
    /// Wraps.
    Wraps,
    /// Straps.
    Straps,
    /// Sleeves.
    Sleeves,
}

/// Why an exercise is swapped.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum SwapReason {
    /// The gym lacks the equipment.
    Lacking,
    /// It is taken.
    Taken,
    /// Pain.
    Pain,
    /// The lifter's wish.
    Wish,
}

/// How the rest of a plan is laid anew after an absence.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum LayAnew {
    /// All of it comes whole weeks later.
    PushBack,
    /// What lies behind is left out.
    Drop,
    /// What lies behind comes on free days, no lift heavy on neighbouring ones.
    Squeeze,
    /// The same, whatever is heavy on neighbouring days.
    SqueezeClose,
}

/// What is changed in a session that is still to come, for once. Exercises go by their slugs.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum SessionChange {
    /// Another exercise in the place of one.
    Instead {
        /// The one that is not done.
        of: String,
        /// The one that is.
        exercise: String,
    },
    /// One more, at the end.
    Add {
        /// It.
        exercise: String,
    },
    /// One is left out.
    Leave {
        /// It.
        exercise: String,
    },
    /// One comes a place earlier, with what is done back to back with it.
    Earlier {
        /// It.
        exercise: String,
    },
    /// What this gym has not is done with what it has, or left out.
    Fit,
    /// The last change is taken back.
    Back,
    /// All of them are.
    AsPlanned,
}

/// How a session of the plan is arranged otherwise than it says.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum Arrange {
    /// The plan goes on from here, from today.
    Enter,
    /// It is left out, or no longer.
    LeaveOut {
        /// Whether it is.
        left_out: bool,
    },
    /// It is moved to another day, or back to its own.
    Move {
        /// Local date, in days since 1970-01-01; none is its own.
        day: Option<i32>,
    },
    /// Its work is done with another session's, or apart again.
    Join {
        /// The row of the other; none is apart.
        with: Option<String>,
    },
    /// It is done once more, or not.
    Again {
        /// Whether it is.
        again: bool,
    },
    /// So many weeks away before its week; none takes it back.
    Travel {
        /// Weeks, 8 at the most.
        weeks: u32,
    },
    /// It is changed for once.
    Change {
        /// What.
        change: SessionChange,
    },
}

/// A tap. Most come ready-made with a [`super::Key`]; a shell makes none up but `Wake`, `AdoptPlan`,
/// `AddGym` and `Write`.
///
/// Amounts are in the unit of the call: repetitions, seconds, or millimetres. Parts are named as
/// the floor names them: exercise, set and part, joined by points (`"0.2.1"`).
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
#[serde(deny_unknown_fields)]
pub enum Intent {
    /// Begin a session.
    Begin {
        /// The row of a session as Today or Weeks names it; none is the one that is on.
        #[serde(default)]
        session: Option<String>,
        /// Minutes there are; what has to be left out for it is.
        #[serde(default)]
        minutes: Option<u32>,
        /// The clock was asked about, and is right.
        #[serde(default)]
        #[cfg_attr(feature = "uniffi", uniffi(default = false))]
        sure: bool,
    },
    /// Begin to enter a session that was done without the tool.
    EnterPaper {
        /// The row of a session as Weeks names it; none is the one that is on.
        #[serde(default)]
        session: Option<String>,
        /// The local date that it was done on, in days since 1970-01-01.
        day: i32,
    },
    /// Of a session from paper: what is left was done as called.
    AllAsCalled {
        /// An exercise of the session, with what is done back to back with it; none is all.
        #[serde(default)]
        entry: Option<u32>,
    },
    /// A recorded session is of this local date, whatever the clock said.
    DateSession {
        /// Its number, as its key gives it; none is the last.
        #[serde(default)]
        session: Option<u64>,
        /// In days since 1970-01-01.
        day: i32,
    },
    /// Lay the rest of the plan anew, or take that back.
    LayAnew {
        /// How; none takes it back.
        #[serde(default)]
        how: Option<LayAnew>,
    },
    /// The work of the current set begins now: a hold, a clock-driven series.
    Start,
    /// A partner taps: the first repetition of the current part begins, or one is over. Never the
    /// lifter under a bar.
    TapRep {
        /// The part it is meant for.
        part: String,
    },
    /// The current part is over.
    Record {
        /// The part it is meant for: a tap that comes late or twice is refused, not recorded on the
        /// next one. None is the current one.
        #[serde(default)]
        part: Option<String>,
        /// How much; none is as called.
        #[serde(default)]
        amount: Option<u32>,
        /// Half repetitions left in the lifter's judgement; none is not called.
        #[serde(default)]
        left_halves: Option<u8>,
        /// How it ended.
        #[serde(default)]
        ended: HowEnded,
        /// Repetitions with a spotter's help, beyond the amount.
        #[serde(default)]
        helped: u32,
        /// The set ends with this part.
        #[serde(default)]
        last: bool,
    },
    /// An earlier part is corrected.
    Correct {
        /// The part.
        part: String,
        /// How much; none stays.
        #[serde(default)]
        amount: Option<u32>,
        /// The load's figure in exact kilograms; none stays.
        #[serde(default)]
        load: Option<String>,
        /// Half repetitions left; none is not called.
        #[serde(default)]
        left_halves: Option<u8>,
        /// How it ended.
        #[serde(default)]
        ended: HowEnded,
        /// Repetitions with a spotter's help.
        #[serde(default)]
        helped: u32,
        /// A load far from the recorded one is meant: without it the engine asks first.
        #[serde(default)]
        #[cfg_attr(feature = "uniffi", uniffi(default = false))]
        sure: bool,
    },
    /// Leave the current set out, or what is left of its parts.
    SkipSet,
    /// Leave out what is left of an exercise.
    SkipExercise {
        /// The exercise of the session.
        entry: u32,
    },
    /// Do another exercise instead.
    Swap {
        /// The exercise of the session.
        entry: u32,
        /// What is done instead, by its slug.
        exercise: String,
        /// Why.
        why: SwapReason,
    },
    /// One more exercise, at the end.
    AddExercise {
        /// It, by its slug.
        exercise: String,
    },
    /// Put off what is left of an exercise to the end.
    Postpone {
        /// The exercise of the session.
        entry: u32,
    },
    /// Take up an exercise now.
    TakeUp {
        /// The exercise of the session.
        entry: u32,
    },
    /// One more set like the last.
    AddSet {
        /// The exercise of the session.
        entry: u32,
    },
    /// Change the load.
    ChangeLoad {
        /// The exercise of the session.
        entry: u32,
        /// The figure with its unit, or exact kilograms without.
        load: String,
        /// Only of the next set, not of those after it.
        #[serde(default)]
        only_next: bool,
        /// It was asked and is meant all the same.
        #[serde(default)]
        sure: bool,
    },
    /// The bar holds these plates on each side, from the inside out, as the equipment writes them.
    BarHolds {
        /// The plates.
        side: Vec<String>,
    },
    /// Make the running rest longer, or shorter.
    RestBy {
        /// Seconds; negative is shorter.
        seconds: i32,
    },
    /// Pins, a spotter, or neither.
    GuardedBy {
        /// The exercise of the session.
        entry: u32,
        /// Which.
        guard: GuardChoice,
    },
    /// What is worn for an exercise from here on: all of it.
    UseKit {
        /// The exercise of the session.
        entry: u32,
        /// The kit.
        kit: Vec<KitChoice>,
    },
    /// The text of a [`super::Field`].
    Write {
        /// The field's id.
        field: String,
        /// What was written.
        text: String,
        /// It was asked and is meant all the same.
        #[serde(default)]
        #[cfg_attr(feature = "uniffi", uniffi(default = false))]
        sure: bool,
    },
    /// Pause.
    Pause,
    /// Go on.
    Resume,
    /// The session is over.
    Finish,
    /// Hold back what the session comes to for an owner of loads, or let it go.
    HoldBack {
        /// The owner, as the tally names it.
        owner: String,
        /// Held.
        held: bool,
    },
    /// Yes to what the tally asks of an owner of loads.
    Accept {
        /// The owner, as the tally names it.
        owner: String,
    },
    /// An exercise on which pain stands was done without it, or not.
    AnswerPain {
        /// The exercise, by its slug.
        exercise: String,
        /// Without pain.
        free: bool,
    },
    /// What hurt is the joint: exercises that move the same one are to be careful too, or not.
    PainOfJoint {
        /// The exercise that hurt, by its slug.
        exercise: String,
        /// Whether it is.
        of_joint: bool,
    },
    /// An illness is over: the next session is an ease-in.
    WasIll,
    /// Whether the lifter is under 18, and whether a coach is there today: no max of a minor is
    /// tested without.
    Minor {
        /// Under 18.
        under_18: bool,
        /// A coach is there today.
        coached: bool,
    },
    /// Take back the last tap.
    Undo,
    /// Bring back what was last taken back.
    Redo,
    /// The device started, its clocks were changed, or the program came back to the front. Answers
    /// with every effect that stands: a running rest's ring, the screen kept on.
    Wake,
    /// Adopt a plan. One of the name of the plan that is on is that plan mended: week, dates, loads
    /// and misses stay.
    AdoptPlan {
        /// The file's text.
        text: String,
        /// Where it is entered, as a row of Weeks: "3.1"; none is the first session, or where the
        /// mended plan stands.
        #[serde(default)]
        #[cfg_attr(feature = "uniffi", uniffi(default = None))]
        from: Option<String>,
        /// A new plan, whatever its name.
        #[serde(default)]
        #[cfg_attr(feature = "uniffi", uniffi(default = false))]
        as_new: bool,
        /// Where a number was changed in one of several rows that share a load: all of them start at
        /// the new one, not it alone.
        #[serde(default)]
        #[cfg_attr(feature = "uniffi", uniffi(default = false))]
        all_rows: bool,
    },
    /// Arrange a session of the plan otherwise than it says.
    Arrange {
        /// Its row, as Weeks names it.
        session: String,
        /// How.
        how: Arrange,
    },
    /// Go back to a plan that was on before.
    TakeUpPlan {
        /// Its name, as the key gives it.
        plan: String,
    },
    /// Add a gym, or put one of the same name right.
    AddGym {
        /// The file's text.
        text: String,
    },
    /// Show the demo in the place of the records, or the records again: all of it is invented, in a file
    /// of its own, and the records stay as they are.
    Demo {
        /// The demo.
        on: bool,
    },
    /// Change what is being made by hand.
    Edit {
        /// What it is.
        of: FormOf,
        /// Where, as its keys name the place.
        place: String,
        /// How.
        edit: Edit,
        /// The step of the draft that it was meant for: a tap that comes late or twice is refused.
        /// None is the last.
        #[serde(default)]
        #[cfg_attr(feature = "uniffi", uniffi(default = None))]
        step: Option<u64>,
    },
    /// Train in this gym from now on.
    ChooseGym {
        /// Its name.
        name: String,
    },
}

impl Intent {
    /// Adopts a plan as it is usual: mended where it has the name of the one that is on, else from its
    /// first session.
    pub fn adopt(text: impl Into<String>) -> Self {
        Self::AdoptPlan { text: text.into(), from: None, as_new: false, all_rows: false }
    }
}
