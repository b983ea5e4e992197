//! Sessions that were not lived in this store, as they come into its history.

use serde::{Deserialize, Serialize};

use super::row::{DoneSet, SessionRow, SetKey};

/// A session that another store, or an older table, has. It is history and nothing else: no owner of a
/// load hears of it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Brought {
    /// Where it is from: the id of a store, or the name of a table's form.
    pub from: String,
    /// Tells it apart from others from there: a checksum of what it is.
    pub sum: u32,
    /// Its row as it stood there; `session` is its number there.
    pub row: SessionRow,
    /// Its sets as they stood there, of the same number and date.
    pub sets: Vec<DoneSet>,
}

impl Brought {
    /// What tells it apart from every other: a session is brought once.
    pub fn identity(&self) -> (&str, u64, u32) {
        (&self.from, self.row.session, self.sum)
    }

    /// Its rows as they stand here, where it is named by the log's number of its coming, and dated
    /// `day`.
    pub fn rows(self, session: u64, day: i32) -> (SessionRow, Vec<DoneSet>) {
        let here = |set: DoneSet| DoneSet { key: SetKey { session, ..set.key }, day, ..set };
        (SessionRow { session, day, ..self.row }, self.sets.into_iter().map(here).collect())
    }
}
