//! Where the parts of a plan stand in its text.

use std::collections::BTreeMap;
use std::ops::Range;

use crate::text::Table;

/// A table, and each of its keys with its value.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Place {
    span: Range<usize>,
    keys: BTreeMap<String, Range<usize>>,
}

impl Place {
    pub(super) fn of(table: &Table<'_>) -> Self {
        Self { span: table.span(), keys: table.key_spans() }
    }

    /// The first of these keys that is written, from the key to the end of its value.
    pub fn key(&self, keys: &[&str]) -> Option<Range<usize>> {
        keys.iter().find_map(|key| self.keys.get(*key)).cloned()
    }

    /// As [`Place::key`], or else the name, or else where the table begins.
    pub fn at(&self, keys: &[&str]) -> Range<usize> {
        self.key(keys).or_else(|| self.key(&["name"])).unwrap_or_else(|| self.span.clone())
    }
}

/// An exercise of a session, and its rows of sets.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct SlotPlace {
    pub(super) own: Place,
    pub(super) rows: Vec<Place>,
}

impl SlotPlace {
    /// The first of these keys, in a row of sets (from 0) or else in the exercise.
    pub fn at(&self, row: usize, keys: &[&str]) -> Range<usize> {
        let in_row = self.rows.get(row).and_then(|place| place.key(keys));
        in_row.unwrap_or_else(|| self.own.at(keys))
    }
}

/// A session and its exercises.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub(super) struct SessionPlace {
    pub(super) own: Place,
    pub(super) exercises: Vec<SlotPlace>,
}

/// Where the parts of a plan stand in its text: bytes, in the order of the plan.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Places {
    pub(super) plan: Place,
    /// What is written about a week, by its number from 0.
    pub(super) weeks: BTreeMap<usize, Place>,
    pub(super) sessions: Vec<SessionPlace>,
    pub(super) accepted: Vec<Place>,
}

impl Places {
    /// The plan itself.
    pub fn plan(&self) -> &Place {
        &self.plan
    }

    /// What is written about a week, counted from 0; of a week nothing may be.
    pub fn week(&self, week: usize) -> Option<&Place> {
        self.weeks.get(&week)
    }

    /// A session, counted from 0.
    pub fn session(&self, session: usize) -> Option<&Place> {
        self.sessions.get(session).map(|place| &place.own)
    }

    /// An exercise of a session, both counted from 0.
    pub fn exercise(&self, session: usize, exercise: usize) -> Option<&SlotPlace> {
        self.sessions.get(session).and_then(|place| place.exercises.get(exercise))
    }

    /// An accepted finding, counted from 0.
    pub fn accepted(&self, accepted: usize) -> Option<&Place> {
        self.accepted.get(accepted)
    }
}
