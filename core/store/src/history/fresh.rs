//! Writing the derived rows of a whole log into tables that are empty. What rows come to together (their
//! numbers, totals, records, weeks) is held in memory meanwhile and written once at the end: kept up in
//! the tables, as a tap does it, it costs several times what the rows do.

use std::collections::{BTreeMap, BTreeSet};
use std::rc::Rc;

use barwright_domain::history::{
    Apart, Change, DoneSet, Measure, Record, SessionRow, SetKey, claims, week_of,
};
use barwright_domain::volume::Week;
use rusqlite::{Connection, Result, params};

use super::{total, write};

/// Derived rows that are being written into empty tables.
#[derive(Debug)]
pub(super) struct Fresh<'a> {
    connection: &'a Connection,
    sets: BTreeMap<SetKey, SetAt>,
    sessions: BTreeMap<u64, SessionAt>,
    /// How many sets were put of each exercise.
    put: BTreeMap<Rc<str>, u64>,
    records: BTreeMap<Rc<str>, BTreeMap<(Apart, Measure), Record>>,
    /// Exercises with a set that was put otherwise or taken away: it may have held a record.
    unsure: BTreeSet<Rc<str>>,
}

/// Where a set stands.
#[derive(Debug)]
struct SetAt {
    exercise: Rc<str>,
    day: i32,
    sum: u32,
    /// The numbers that it was written with: the right ones where rows come in order.
    nths: [u64; 2],
}

/// Where a session stands.
#[derive(Debug)]
struct SessionAt {
    day: i32,
    place: [u64; 3],
    ended: bool,
    sum: u32,
    /// As in [`SetAt`].
    nths: [u64; 3],
}

impl<'a> Fresh<'a> {
    /// Begins; the tables are empty.
    pub(super) fn into(connection: &'a Connection) -> Self {
        Self {
            connection,
            sets: BTreeMap::new(),
            sessions: BTreeMap::new(),
            put: BTreeMap::new(),
            records: BTreeMap::new(),
            unsure: BTreeSet::new(),
        }
    }

    /// Makes one change.
    pub(super) fn apply(&mut self, change: &Change) -> Result<()> {
        match change {
            Change::PutSet(set) => self.put_set(set),
            Change::RemoveSet(key) => self.remove_set(*key),
            Change::PutSession(row) => self.put_session(row),
            Change::RemoveSession(session) => self.remove_session(*session),
        }
    }

    fn put_set(&mut self, set: &DoneSet) -> Result<()> {
        let exercise = match self.put.get_key_value(set.exercise.as_str()) {
            Some((known, _)) => Rc::clone(known),
            None => Rc::from(set.exercise.as_str()),
        };
        let put = self.put.entry(Rc::clone(&exercise)).or_default();
        *put += 1;
        let nths = match self.sets.get(&set.key) {
            Some(before) => {
                self.unsure.insert(Rc::clone(&before.exercise));
                before.nths
            }
            None => [self.sets.len() as u64 + 1, *put],
        };
        let sum = write::write_set(self.connection, set, nths)?;
        for claim in claims(set) {
            self.offer(&exercise, claim);
        }
        self.sets.insert(set.key, SetAt { exercise, day: set.day, sum, nths });
        Ok(())
    }

    fn remove_set(&mut self, key: SetKey) -> Result<()> {
        let Some(before) = self.sets.remove(&key) else { return Ok(()) };
        self.unsure.insert(before.exercise);
        write::erase_set(self.connection, key)
    }

    /// Gives a claim its place where it beats the record that stands.
    fn offer(&mut self, exercise: &Rc<str>, claim: Record) {
        let records = match self.records.get_mut(exercise) {
            Some(records) => records,
            None => self.records.entry(Rc::clone(exercise)).or_default(),
        };
        let key = (claim.apart.clone(), claim.measure);
        if records.get(&key).is_none_or(|standing| claim.beats(standing)) {
            records.insert(key, claim);
        }
    }

    fn put_session(&mut self, row: &SessionRow) -> Result<()> {
        self.remove_session(row.session)?;
        let nths = [self.sessions.len() as u64 + 1; 3];
        let sum = write::write_session(self.connection, row, nths)?;
        let (day, place, ended) = (row.day, write::place_of(row), row.outcome.is_some());
        self.sessions.insert(row.session, SessionAt { day, place, ended, sum, nths });
        Ok(())
    }

    fn remove_session(&mut self, session: u64) -> Result<()> {
        if self.sessions.remove(&session).is_some() {
            self.connection
                .prepare_cached("DELETE FROM session WHERE session = ?1")?
                .execute([session])?;
        }
        Ok(())
    }

    /// Writes what all rows come to together.
    pub(super) fn end(mut self) -> Result<()> {
        self.settle_records()?;
        self.number_sessions()?;
        self.write_weeks()?;
        let connection = self.connection;
        let records: Vec<u32> = self
            .records
            .values()
            .flat_map(BTreeMap::values)
            .map(|record| write::write_record(connection, record))
            .collect::<Result<_>>()?;
        total::come_to(connection, "record", records.into_iter())?;
        self.number_sets_and_exercises()
    }

    /// Finds the records anew of exercises whose sets did not stay as they were put.
    fn settle_records(&mut self) -> Result<()> {
        for exercise in std::mem::take(&mut self.unsure) {
            self.records.remove(&exercise);
            write::each_set_of(self.connection, &exercise, |set| {
                claims(&set).for_each(|claim| self.offer(&exercise, claim));
                Ok(())
            })?;
        }
        Ok(())
    }

    /// Numbers sets, among all and among those of their exercise, and counts those.
    fn number_sets_and_exercises(&self) -> Result<()> {
        let connection = self.connection;
        let mut of_exercises: BTreeMap<&str, Vec<(i32, SetKey, u64)>> = BTreeMap::new();
        for (nth, (key, at)) in (1..).zip(&self.sets) {
            of_exercises.entry(&at.exercise).or_default().push((at.day, *key, nth));
        }
        let mut digests = Vec::new();
        for (exercise, mut sets) in of_exercises {
            sets.sort_unstable();
            for (nth_of_exercise, (_, key, nth)) in (1..).zip(&sets) {
                let nths = [*nth, nth_of_exercise];
                if self.sets.get(key).is_some_and(|at| at.nths != nths) {
                    write::number_set(connection, *key, nths)?;
                }
            }
            let records = self.records.get(exercise).map_or(0, BTreeMap::len);
            let counts =
                [sets.len(), records].map(|count| i64::try_from(count).unwrap_or(i64::MAX));
            let last = sets.last().map_or(0, |(day, ..)| *day);
            digests.push(write::write_exercise(connection, exercise, counts, last)?);
        }
        total::come_to(connection, "exercise", digests.into_iter())?;
        total::come_to(connection, "done_set", self.sets.values().map(|at| at.sum))
    }

    /// Numbers sessions by each of their orders.
    fn number_sessions(&self) -> Result<()> {
        let mut nths: BTreeMap<u64, [u64; 3]> = BTreeMap::new();
        let orders: [fn(&SessionAt) -> [i64; 3]; 3] = [
            |_| [0; 3],
            |at| [at.day.into(), 0, 0],
            |at| at.place.map(|number| i64::try_from(number).unwrap_or(i64::MAX)),
        ];
        for (which, order) in orders.iter().enumerate() {
            let mut all: Vec<_> = self.sessions.iter().map(|(key, at)| (order(at), *key)).collect();
            all.sort_unstable();
            for (nth, (_, session)) in (1..).zip(all) {
                if let Some(place) = nths.entry(session).or_default().get_mut(which) {
                    *place = nth;
                }
            }
        }
        for (session, at) in &self.sessions {
            let nths = nths.get(session).copied().unwrap_or_default();
            if nths != at.nths {
                let [nth, by_day, by_place] = nths;
                self.connection
                    .prepare_cached(
                        "UPDATE session SET nth = ?2, nth_by_day = ?3, nth_by_place = ?4
                         WHERE session = ?1",
                    )?
                    .execute(params![session, nth, by_day, by_place])?;
            }
        }
        total::come_to(self.connection, "session", self.sessions.values().map(|at| at.sum))
    }

    /// Writes the volume of the weeks that have any.
    fn write_weeks(&self) -> Result<()> {
        let ended = self.sessions.values().filter(|at| at.ended);
        let weeks: BTreeSet<Week> = ended.map(|at| week_of(at.day)).collect();
        let mut digests = Vec::new();
        for week in weeks {
            let volume = write::volume_of(self.connection, week)?;
            if !volume.is_empty() {
                let nth = digests.len() as u64 + 1;
                digests.push(write::write_week(self.connection, week, &volume, nth)?);
            }
        }
        total::come_to(self.connection, "week_volume", digests.into_iter())
    }
}
