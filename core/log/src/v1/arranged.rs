//! What was arranged otherwise than the plan says.

use std::collections::BTreeMap;

use barwright_domain::desk;
#[cfg(any(test, feature = "schema"))]
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use crate::mirror::is_default;

/// A session of a plan, both from 1.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(any(test, feature = "schema"), derive(JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct At {
    /// The week.
    pub week: u16,
    /// The session within the week.
    pub session: u16,
}

mirror!(struct At = desk::At { week, session });

/// One change to a session that is still to come. Exercises are named by their slugs.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(any(test, feature = "schema"), derive(JsonSchema))]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
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

mirror!(enum ForOnce = desk::ForOnce {
    Instead { of, exercise },
    Added { exercise },
    LeftOut { exercise },
    Earlier { exercise },
});

/// What is set at once when the rest of a plan is laid anew.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize)]
#[cfg_attr(any(test, feature = "schema"), derive(JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Dates {
    /// Sessions on a local date, in days since 1970-01-01; none is their own.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub moved: Vec<(At, Option<i32>)>,
    /// Sessions left out, or no longer.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub left_out: Vec<(At, bool)>,
    /// Weeks away before a week, from 1.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub travel: Vec<(u16, u16)>,
}

mirror!(struct Dates = desk::Dates { moved, left_out, travel });

/// One thing arranged otherwise; each has its own way back.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(any(test, feature = "schema"), derive(JsonSchema))]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum Arrangement {
    /// The plan goes on from here, from this local date on: what comes before is not owed, and what
    /// comes after is done anew if it was done before.
    Entered {
        /// The session.
        at: At,
        /// Local date, in days since 1970-01-01.
        day: i32,
    },
    /// A session is left out, or no longer.
    LeftOut {
        /// The session.
        at: At,
        /// Whether it is.
        #[serde(default, skip_serializing_if = "is_default")]
        left_out: bool,
    },
    /// A session is moved to another local date, or back to its own.
    Moved {
        /// The session.
        at: At,
        /// Local date, in days since 1970-01-01; none is its own.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        day: Option<i32>,
    },
    /// A session's work is done with another's, or apart again.
    With {
        /// The session.
        at: At,
        /// The one it is joined to; none is apart.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        other: Option<At>,
    },
    /// A session is done once more, or not.
    Again {
        /// The session.
        at: At,
        /// Whether it is.
        #[serde(default, skip_serializing_if = "is_default")]
        again: bool,
    },
    /// So many weeks away before a week: it and those after it come later. None takes it back.
    Travel {
        /// The week, from 1.
        week: u16,
        /// Weeks away.
        weeks: u16,
    },
    /// What is changed in a session for once: all of it, in order. None is as the plan has it.
    ForOnce {
        /// The session.
        at: At,
        /// The changes.
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        changes: Vec<ForOnce>,
    },
    /// The rest is laid anew.
    LaidAnew {
        /// What is set.
        #[serde(default, skip_serializing_if = "is_default")]
        to: Dates,
        /// What takes it back; nothing where this takes one back.
        #[serde(default, skip_serializing_if = "is_default")]
        back: Dates,
    },
}

mirror!(enum Arrangement = desk::Arrangement {
    Entered { at, day },
    LeftOut { at, left_out },
    Moved { at, day },
    With { at, other },
    Again { at, again },
    Travel { week, weeks },
    ForOnce { at, changes },
    LaidAnew { to, back },
});

/// Everything arranged of one plan. Lists, since JSON has no keys but texts.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(any(test, feature = "schema"), derive(JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Arranged {
    /// Where and when it was taken up, and the log's number of that.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub entered: Option<(At, i32, u64)>,
    /// Sessions left out.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub left_out: Vec<At>,
    /// Sessions moved, with their dates.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub moved: Vec<(At, i32)>,
    /// Sessions joined to others, with the log's number of that.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub with: Vec<(At, At, u64)>,
    /// Sessions to be done once more, with the log's number of that.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub again: Vec<(At, u64)>,
    /// Weeks away before a week.
    #[serde(default, skip_serializing_if = "BTreeMap::is_empty")]
    pub travel: BTreeMap<u16, u16>,
    /// What is changed in sessions for once.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub for_once: Vec<(At, Vec<ForOnce>)>,
    /// What takes back that the rest was laid anew, as long as no date was set since.
    #[serde(default, skip_serializing_if = "is_default")]
    pub back: Dates,
}

mirror!(struct Arranged = desk::Arranged { entered, left_out, moved, with, again, travel, for_once, back });
