//! What a shell can act on when a call did not do what was asked.

use serde::{Deserialize, Serialize};

use super::Action;

/// Why an intent was refused, for programs; [`EngineError::Refused`] has the words.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum RefusalCode {
    /// The reading is outside what a clock can show.
    BadReading,
    /// There is no session, or none is running.
    NoSession,
    /// A session is running already.
    SessionRunning,
    /// Nothing is left to do, of the session or the exercise.
    NothingLeft,
    /// There is no such exercise, set, part, field or row here.
    NotHere,
    /// The tap was meant for another part than the current one, or for another session.
    Stale,
    /// The amount, load or text is out of range, of another kind, or can't be read.
    BadValue,
    /// The load can't be made here.
    CannotMake,
    /// The load has to be said first.
    LoadNeeded,
    /// It is more than the last weeks support, or the clock is far from what was recorded: [`EngineError::Refused`] asks, and carries the yes.
    Ask,
    /// There are as many as there can be.
    TooMany,
    /// It is so already.
    AlreadySo,
    /// There is nothing to take back, or nothing to bring back.
    NothingToUndo,
    /// There is no plan, gym or max to go by.
    NothingToGoBy,
    /// The file has faults; the Plan screen shows them in place.
    Faults,
}

/// The engine's answer when it did not do what was asked.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, thiserror::Error)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Error))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum EngineError {
    /// Nothing changed: say it, and stay where you are.
    #[error("{reason}")]
    Refused {
        /// For programs.
        code: RefusalCode,
        /// What is wrong, what was kept, what to do, in words.
        reason: String,
        /// The reason asks, and this is the yes to it; none where it does not ask.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        ask: Option<Action>,
    },
    /// The file could not be read or written. The tap was not recorded; everything before it is
    /// kept.
    #[error("{reason}")]
    Storage {
        /// What is wrong, what was kept and where, in words.
        reason: String,
        /// Where what was kept lies; empty where there is no file.
        kept_at: String,
    },
    /// The file was written by a newer release: it is left untouched.
    #[error("{reason}")]
    NewerFile {
        /// In words.
        reason: String,
    },
    /// The engine was shut down.
    #[error("{reason}")]
    Closed {
        /// In words.
        reason: String,
    },
    /// A defect. The state was rebuilt from the log and the next call works.
    #[error("{reason}")]
    Broken {
        /// In words.
        reason: String,
        /// What to send the makers; nothing personal is in it.
        report: String,
    },
}

impl EngineError {
    /// A refusal that does not ask.
    pub(crate) const fn refused(code: RefusalCode, reason: String) -> Self {
        Self::Refused { code, reason, ask: None }
    }
}
