//! Why a command was refused, as data. A refusal changes nothing.

use crate::equipment::CannotMake;
use crate::quantity::Mass;

/// A command refused; the state is as it was.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum Refusal {
    /// The reading's figures are outside what a clock can show.
    #[error("reading out of range")]
    BadReading,
    /// No session is running.
    #[error("no session is running")]
    NoSession,
    /// A session is running already.
    #[error("a session is running")]
    SessionRunning,
    /// Every set is done or left out.
    #[error("nothing is left to do")]
    NothingLeft,
    /// The sheet has no set in it.
    #[error("the sheet is empty")]
    EmptySheet,
    /// The sheet is past its bounds.
    #[error("the sheet is too large")]
    SheetTooLarge,
    /// Repetitions for a hold, or seconds for a set of reps.
    #[error("an amount of another kind than the call's")]
    WrongKind,
    /// An amount, help or load past its bounds.
    #[error("out of range")]
    OutOfRange,
    /// Nothing was done: a part of nothing can only have failed or been stopped.
    #[error("nothing done, and ended as called")]
    NothingDone,
    /// The load has to be said: there is nothing to go by.
    #[error("the load is needed")]
    LoadNeeded,
    /// There is no such exercise in this session.
    #[error("no such exercise")]
    NoSuchEntry,
    /// There is no such set or part, or it is not done yet.
    #[error("no such part")]
    NoSuchPart,
    /// Nothing of the exercise is left to do.
    #[error("nothing is left of the exercise")]
    NothingLeftOf,
    /// It is what is done now already.
    #[error("it is the current exercise")]
    AlreadyThere,
    /// The exercise already has as many sets, or the session as many exercises, as it can hold.
    #[error("too many")]
    TooMany,
    /// The load can't be made here.
    #[error("cannot make the load: {0:?}")]
    CannotMake(CannotMake),
    /// The exact load can't be made here; the nearest can.
    #[error("nearest is {nearest:?}")]
    NotExact {
        /// The nearest that can.
        nearest: Mass,
    },
    /// More than a tenth over what the last four weeks support: it asks first.
    #[error("over what {supported:?} supports")]
    OverSupported {
        /// What they support.
        supported: Mass,
    },
    /// A load below nothing, or more help than there is body.
    #[error("no load is that small")]
    BelowNothing,
    /// A load that was put right is far from the one that was recorded: it asks first.
    #[error("far from {recorded:?}")]
    FarFromRecorded {
        /// The one that was recorded.
        recorded: Mass,
    },
    /// The stack has no such place.
    #[error("no such pin")]
    NoSuchPin,
    /// No rest is running.
    #[error("no rest is running")]
    NoRest,
    /// The session is paused already, or not paused.
    #[error("already so")]
    AlreadySo,
    /// A text is empty or past its bound.
    #[error("text empty or too long")]
    BadText,
    /// There is nothing to take back.
    #[error("nothing to undo")]
    NothingToUndo,
    /// There is no undo to take back.
    #[error("nothing to redo")]
    NothingToRedo,
    /// The set has started already.
    #[error("already started")]
    AlreadyStarted,
}
