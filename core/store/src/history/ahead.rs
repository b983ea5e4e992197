//! What is queued, laid over the rows that are read: nothing is written for it, so looking takes no
//! lock and no transaction.

use std::collections::{BTreeMap, BTreeSet};

use barwright_domain::history::{Change, DoneSet, Record, SessionRow, SetKey, Turn, claims};
use rusqlite::{Connection, Result};

use super::moment::Moment;
use super::pending;
use crate::event::Seq;

/// The queued changes as they come out: what each set and each session will be, none where it is
/// taken back.
#[derive(Debug, Default)]
pub(super) struct Ahead {
    sets: BTreeMap<SetKey, Option<DoneSet>>,
    sessions: BTreeMap<Seq, Option<SessionRow>>,
}

impl Ahead {
    /// Reads the queue.
    pub(super) fn read(connection: &Connection) -> Result<Self> {
        let mut ahead = Self::default();
        pending::each(connection, |change| {
            match change {
                Change::PutSet(set) => ahead.sets.insert(set.key, Some(set)).is_some(),
                Change::RemoveSet(key) => ahead.sets.insert(key, None).is_some(),
                Change::PutSession(row) => ahead.sessions.insert(row.session, Some(row)).is_some(),
                Change::RemoveSession(session) => ahead.sessions.insert(session, None).is_some(),
            };
            Ok(())
        })?;
        Ok(ahead)
    }

    /// How many more sessions have to be read, so that enough are left whatever is taken back.
    pub(super) fn more(&self) -> u32 {
        let sets = self.sets.keys().map(|key| key.session);
        let touched: BTreeSet<Seq> = sets.chain(self.sessions.keys().copied()).collect();
        u32::try_from(touched.len()).unwrap_or(u32::MAX)
    }

    /// Sets as they will be: those that were read and `wanted` ones of the queue, in no order.
    pub(super) fn sets(
        &self,
        mut read: Vec<DoneSet>,
        wanted: impl Fn(&DoneSet) -> bool,
    ) -> Vec<DoneSet> {
        read.retain(|set| !self.sets.contains_key(&set.key));
        read.extend(self.sets.values().flatten().filter(|set| wanted(set)).cloned());
        read
    }

    /// Sets of one exercise before a session, the newest session first.
    pub(super) fn sets_of(
        &self,
        exercise: &str,
        before: Moment,
        read: Vec<DoneSet>,
    ) -> Vec<DoneSet> {
        let wanted =
            |set: &DoneSet| set.exercise == exercise && (set.day, set.key.session) < before;
        let mut sets = self.sets(read, wanted);
        sets.sort_by_key(|set| (std::cmp::Reverse((set.day, set.key.session)), set.key.set));
        sets
    }

    /// Sessions as they will be: those that were read and `wanted` ones of the queue, in no order.
    pub(super) fn sessions(
        &self,
        mut read: Vec<SessionRow>,
        wanted: impl Fn(&SessionRow) -> bool,
    ) -> Vec<SessionRow> {
        read.retain(|row| !self.sessions.contains_key(&row.session));
        read.extend(self.sessions.values().flatten().filter(|row| wanted(row)).cloned());
        read
    }

    /// As [`Ahead::sessions`], of each no more than a calendar asks for.
    pub(super) fn turns(&self, mut read: Vec<Turn>, wanted: impl Fn(&Turn) -> bool) -> Vec<Turn> {
        read.retain(|turn| !self.sessions.contains_key(&turn.session));
        read.extend(self.sessions.values().flatten().map(Turn::from).filter(wanted));
        read
    }

    /// What the queue says of a session: nothing, or its row, or that it is taken back.
    pub(super) fn session(&self, session: Seq) -> Option<&Option<SessionRow>> {
        self.sessions.get(&session)
    }

    /// The days of the sessions in the queue.
    pub(super) fn touched_sessions(&self) -> impl Iterator<Item = Seq> {
        self.sessions.keys().copied()
    }

    /// The sets in the queue.
    pub(super) fn touched_sets(&self) -> impl Iterator<Item = SetKey> {
        self.sets.keys().copied()
    }

    /// The exercises of the sets that the queue puts.
    pub(super) fn exercises(&self) -> impl Iterator<Item = &str> {
        self.sets.values().flatten().map(|set| set.exercise.as_str())
    }

    /// The records of an exercise as they will be. `all` reads its sets, for a record whose own set
    /// is in the queue.
    pub(super) fn records<E>(
        &self,
        exercise: &str,
        mut read: Vec<Record>,
        all: impl FnOnce() -> std::result::Result<Vec<DoneSet>, E>,
    ) -> std::result::Result<Vec<Record>, E> {
        let before = read.len();
        read.retain(|record| !self.sets.contains_key(&record.set));
        let offered = if read.len() == before {
            self.sets(Vec::new(), |set| set.exercise == exercise)
        } else {
            self.sets(all()?, |set| set.exercise == exercise)
        };
        for claim in offered.iter().flat_map(claims) {
            let same =
                |one: &&mut Record| (one.measure, &one.apart) == (claim.measure, &claim.apart);
            match read.iter_mut().find(same) {
                Some(stands) if claim.beats(stands) => *stands = claim,
                Some(_) => {}
                None => read.push(claim),
            }
        }
        Ok(read)
    }
}
