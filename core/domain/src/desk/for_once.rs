//! What a lifter changes in one session of the plan, for once: before it begins.

use serde::{Deserialize, Serialize};

/// One change to a session that is still to come. Exercises are named by their slugs.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum ForOnce {
    /// Another exercise in the place of one.
    Instead {
        /// The one that is not done.
        of: String,
        /// The one that is.
        exercise: String,
    },
    /// One more, at the end.
    Added {
        /// It.
        exercise: String,
    },
    /// One is left out.
    LeftOut {
        /// It.
        exercise: String,
    },
    /// One, with what is done back to back with it, a place earlier.
    Earlier {
        /// It.
        exercise: String,
    },
}

/// The most changes to one session.
pub const MOST_FOR_ONCE: usize = 60;
