//! Names within a session.

use serde::{Deserialize, Serialize};

/// Names an exercise of a running session; stays when others are swapped, added or moved.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(transparent)]
pub struct EntryId(pub u16);

/// Names a set of a running session.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
pub struct SetId {
    /// The exercise.
    pub entry: EntryId,
    /// Its set, from 0; never given to another.
    pub set: u16,
}
