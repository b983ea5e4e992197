//! What the lifter arranged otherwise than the plan says: sessions moved, left out, joined to
//! another, done again; weeks away; the place where the plan was taken up.

use std::collections::BTreeMap;

use serde::{Deserialize, Serialize};

use super::anew::Dates;
use super::at::At;
use super::for_once::ForOnce;

/// One thing arranged otherwise; each has its own way back.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
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
        left_out: bool,
    },
    /// A session is moved to another local date, or back to its own.
    Moved {
        /// The session.
        at: At,
        /// Local date, in days since 1970-01-01; none is its own.
        day: Option<i32>,
    },
    /// A session's work is done with another's, or apart again.
    With {
        /// The session.
        at: At,
        /// The one it is joined to; none is apart.
        other: Option<At>,
    },
    /// A session is done once more, or not.
    Again {
        /// The session.
        at: At,
        /// Whether it is.
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
        changes: Vec<ForOnce>,
    },
    /// The rest is laid anew.
    LaidAnew {
        /// What is set.
        to: Dates,
        /// What takes it back; nothing where this takes one back.
        back: Dates,
    },
}

impl Arrangement {
    /// Whether dates stand otherwise after it.
    const fn sets_dates(&self) -> bool {
        match self {
            Self::Entered { .. }
            | Self::LeftOut { .. }
            | Self::Moved { .. }
            | Self::Travel { .. }
            | Self::LaidAnew { .. } => true,
            Self::With { .. } | Self::Again { .. } | Self::ForOnce { .. } => false,
        }
    }
}

/// Everything arranged of one plan. Lists, since JSON has no keys but texts.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(default)]
pub struct Arranged {
    /// Where and when it was taken up, and the log's number of that.
    pub entered: Option<(At, i32, u64)>,
    /// Sessions left out.
    pub left_out: Vec<At>,
    /// Sessions moved, with their dates.
    pub moved: Vec<(At, i32)>,
    /// Sessions joined to others, with the log's number of that.
    pub with: Vec<(At, At, u64)>,
    /// Sessions to be done once more, with the log's number of that.
    pub again: Vec<(At, u64)>,
    /// Weeks away before a week.
    pub travel: BTreeMap<u16, u16>,
    /// What is changed in sessions for once.
    pub for_once: Vec<(At, Vec<ForOnce>)>,
    /// What takes back that the rest was laid anew, as long as no date was set since.
    pub back: Dates,
}

impl Arranged {
    /// Folds one in; `seq` is its number in the log.
    pub fn apply(&mut self, seq: u64, what: &Arrangement) {
        if what.sets_dates() {
            self.back = Dates::default();
        }
        match what.clone() {
            Arrangement::LaidAnew { to, back } => {
                self.set(&to);
                self.back = back;
            }
            Arrangement::Entered { at, day } => {
                self.entered = Some((at, day, seq));
                // Dates begin anew: what moved those before says nothing more.
                self.moved.clear();
                self.travel.retain(|week, _| *week > at.week);
                self.left_out.retain(|one| *one < at);
                self.again.clear();
                self.for_once.retain(|(one, _)| *one < at);
            }
            Arrangement::LeftOut { at, left_out } => {
                self.left_out.retain(|one| *one != at);
                if left_out {
                    self.left_out.push(at);
                }
            }
            Arrangement::Moved { at, day } => {
                self.moved.retain(|(one, _)| *one != at);
                self.moved.extend(day.map(|day| (at, day)));
            }
            Arrangement::With { at, other } => {
                self.with.retain(|(one, ..)| *one != at);
                self.with.extend(other.map(|other| (at, other, seq)));
            }
            Arrangement::Again { at, again } => {
                self.again.retain(|(one, _)| *one != at);
                if again {
                    self.again.push((at, seq));
                }
                // What was changed was changed for once.
                self.for_once.retain(|(one, _)| *one != at);
            }
            Arrangement::Travel { week, weeks } => {
                self.travel.remove(&week);
                if weeks > 0 {
                    self.travel.insert(week, weeks);
                }
            }
            Arrangement::ForOnce { at, changes } => {
                self.for_once.retain(|(one, _)| *one != at);
                if !changes.is_empty() {
                    self.for_once.push((at, changes));
                }
            }
        }
    }

    /// What is changed in a session for once.
    pub fn changes_of(&self, at: At) -> &[ForOnce] {
        let own = self.for_once.iter().find(|(one, _)| *one == at);
        own.map(|(_, changes)| changes.as_slice()).unwrap_or_default()
    }
}

impl Arranged {
    /// What would set the same as they stand now.
    pub fn standing(&self, of: &Dates) -> Dates {
        let day = |at: At| self.moved.iter().find(|(one, _)| *one == at).map(|(_, day)| *day);
        Dates {
            moved: of.moved.iter().map(|(at, _)| (*at, day(*at))).collect(),
            left_out: of.left_out.iter().map(|(at, _)| (*at, self.left_out.contains(at))).collect(),
            travel: of
                .travel
                .iter()
                .map(|(week, _)| (*week, self.travel.get(week).copied().unwrap_or(0)))
                .collect(),
        }
    }

    /// This, with these dates.
    #[must_use]
    pub fn with_dates(&self, dates: &Dates) -> Self {
        let mut with = self.clone();
        with.set(dates);
        with
    }

    /// Sets them.
    fn set(&mut self, to: &Dates) {
        for (at, day) in &to.moved {
            self.moved.retain(|(one, _)| one != at);
            self.moved.extend(day.map(|day| (*at, day)));
        }
        for (at, left_out) in &to.left_out {
            self.left_out.retain(|one| one != at);
            self.left_out.extend(left_out.then_some(*at));
        }
        for (week, weeks) in &to.travel {
            self.travel.remove(week);
            if *weeks > 0 {
                self.travel.insert(*week, *weeks);
            }
        }
    }
}
