//! Reading the derived rows.

use std::collections::{BTreeMap, BTreeSet};
use std::ops::RangeInclusive;

use barwright_domain::catalogue::Muscle;
use barwright_domain::history::{
    DoneSet, MuscleTally, Record, SessionRow, SetKey, first_day, week_of,
};
use barwright_domain::session::{EntryId, SetId};
use barwright_domain::volume::{Tally, Week};
use rusqlite::{Params, Row};

use super::ahead::Ahead;
use super::code;
use crate::error::StoreError;
use crate::event::Seq;
use crate::store::Store;

/// Hard sets of one week, over the sessions that ended.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct VolumeRow {
    /// The week.
    pub week: Week,
    /// Each muscle that had any, in the order of their declaration.
    pub muscles: Vec<MuscleTally>,
}

/// The derived rows, as they stand after the last tap.
#[derive(Debug)]
pub struct History<'a> {
    store: &'a Store,
    /// What is queued, laid over what is read.
    ahead: Ahead,
}

impl Store {
    /// Opens the derived rows for reading. Nothing is written by it.
    ///
    /// # Errors
    /// [`StoreError::DiskFailed`] and its kin, as for every reading here.
    pub fn history(&self) -> Result<History<'_>, StoreError> {
        let ahead = if self.pending() > 0 {
            Ahead::read(self.connection()?).map_err(|error| self.sorted(error))?
        } else {
            Ahead::default()
        };
        Ok(History { store: self, ahead })
    }
}

/// After every session there is.
const END: Seq = i64::MAX as u64;

impl History<'_> {
    /// The sets of an exercise in its last sessions before one (none for the latest of all), the
    /// newest session first, each session's sets in their order.
    ///
    /// # Errors
    /// As [`Store::history`].
    pub fn sets_of(
        &self,
        exercise: &str,
        before: Option<Seq>,
        sessions: u32,
    ) -> Result<Vec<DoneSet>, StoreError> {
        let sql = format!(
            "WITH last AS (
                 SELECT DISTINCT session FROM done_set
                 WHERE exercise = ?1 AND session < ?2 ORDER BY session DESC LIMIT ?3
             )
             SELECT {} FROM done_set
             WHERE exercise = ?1 AND session < ?2
               AND session >= (SELECT min(session) FROM last)
             ORDER BY session DESC, entry, number",
            code::SET
        );
        let before = before.unwrap_or(END);
        let more = sessions.saturating_add(self.ahead.more());
        let read = self.rows(&sql, (exercise, before, more), code::set)?;
        let mut sets = self.ahead.sets_of(exercise, before, read);
        keep_sessions(&mut sets, |nth, _| nth < sessions);
        Ok(sets)
    }

    /// The work sets of an exercise in its last sessions, so many or a few more, as
    /// [`History::sets_of`]: half of what there is of a heavy lift are warm-ups.
    ///
    /// # Errors
    /// As [`Store::history`].
    pub fn work_of(&self, exercise: &str, sessions: u32) -> Result<Vec<DoneSet>, StoreError> {
        // Which sessions they are is read from the index alone.
        let sql = "SELECT ifnull(min(session), 0), count(*) FROM (
                SELECT DISTINCT session FROM done_set
                WHERE exercise = ?1 ORDER BY session DESC LIMIT ?2
            )";
        let more = sessions.saturating_add(self.ahead.more());
        let found: Vec<(Seq, u32)> =
            self.rows(sql, (exercise, more), |row| Ok((row.get(0)?, row.get(1)?)))?;
        let from = found.first().map_or(0, |(first, count)| if *count < more { 0 } else { *first });
        let sql = format!(
            "SELECT {} FROM done_set
             WHERE exercise = ?1 AND session >= ?2 AND kind <> 'ramp'
             ORDER BY session DESC, entry, number",
            code::SET
        );
        let read = self.rows(&sql, (exercise, from), code::set)?;
        let mut sets = self.ahead.sets_of(exercise, END, read);
        sets.retain(|set| set.is_work() && set.key.session >= from);
        Ok(sets)
    }

    /// The sets of an exercise in its last sessions before one, as [`History::sets_of`]: in `enough`
    /// of them however long ago, and further ones from the session `since` on, `most` in all.
    ///
    /// # Errors
    /// As [`Store::history`].
    pub fn recent_sets_of(
        &self,
        exercise: &str,
        before: Option<Seq>,
        [enough, most]: [u32; 2],
        since: Option<Seq>,
    ) -> Result<Vec<DoneSet>, StoreError> {
        let sql = format!(
            "WITH last AS (
                 SELECT DISTINCT session FROM done_set
                 WHERE exercise = ?1 AND session < ?2 ORDER BY session DESC LIMIT ?4
             )
             SELECT {} FROM done_set
             WHERE exercise = ?1 AND session < ?2 AND session >= min(
                 (SELECT min(session) FROM (SELECT session FROM last LIMIT ?3)),
                 max((SELECT min(session) FROM last), ?5)
             )
             ORDER BY session DESC, entry, number",
            code::SET
        );
        let (before, since) = (before.unwrap_or(END), since.unwrap_or(END));
        let more = |count: u32| count.saturating_add(self.ahead.more());
        let read =
            self.rows(&sql, (exercise, before, more(enough), more(most), since), code::set)?;
        let mut sets = self.ahead.sets_of(exercise, before, read);
        keep_sessions(&mut sets, |nth, session| nth < enough || (nth < most && session >= since));
        Ok(sets)
    }

    /// The first session begun on a day or later; none where there is none.
    ///
    /// # Errors
    /// As [`Store::history`].
    pub fn first_since(&self, day: i32) -> Result<Option<Seq>, StoreError> {
        // In the order of the index: the least number by itself would be looked for from the first
        // session of all.
        let sql = format!(
            "SELECT {} FROM session WHERE day >= ?1 ORDER BY day, session LIMIT ?2",
            code::SESSION
        );
        let more = self.ahead.more().saturating_add(1);
        let read = self.rows(&sql, (day, more), code::session)?;
        let sessions = self.ahead.sessions(read, |row| row.day >= day);
        Ok(sessions.iter().min_by_key(|row| (row.day, row.session)).map(|row| row.session))
    }

    /// The sets of a session, in the order of its exercises.
    ///
    /// # Errors
    /// As [`Store::history`].
    pub fn sets_in(&self, session: Seq) -> Result<Vec<DoneSet>, StoreError> {
        let sql =
            format!("SELECT {} FROM done_set WHERE session = ?1 ORDER BY entry, number", code::SET);
        let read = self.rows(&sql, [session], code::set)?;
        let mut sets = self.ahead.sets(read, |set| set.key.session == session);
        sets.sort_by_key(|set| set.key);
        Ok(sets)
    }

    /// The exercises that have a history, each with the day it was last done, by slug.
    ///
    /// # Errors
    /// As [`Store::history`].
    pub fn exercises_done(&self) -> Result<Vec<(String, i32)>, StoreError> {
        // From one exercise to the next along the index, so that it costs by exercises, not sets.
        let sql = "WITH RECURSIVE each (exercise) AS (
                SELECT min(exercise) FROM done_set
                UNION ALL
                SELECT (SELECT min(exercise) FROM done_set WHERE exercise > each.exercise)
                FROM each WHERE each.exercise IS NOT NULL
            )
            SELECT exercise, (SELECT day FROM done_set WHERE exercise = each.exercise
                              ORDER BY session DESC LIMIT 1)
            FROM each WHERE exercise IS NOT NULL";
        let read = self.rows(sql, [], |row| Ok((row.get(0)?, row.get(1)?)))?;
        let mut done: BTreeMap<String, i32> = read.into_iter().collect();
        for exercise in self.touched_exercises()? {
            match self.sets_of(&exercise, None, 1)?.first() {
                Some(set) => done.insert(exercise, set.day),
                None => done.remove(&exercise),
            };
        }
        Ok(done.into_iter().collect())
    }

    /// The exercises that the queue puts a set of, or takes one from.
    fn touched_exercises(&self) -> Result<BTreeSet<String>, StoreError> {
        let sql = "SELECT exercise FROM done_set WHERE session = ?1 AND entry = ?2 AND number = ?3";
        let mut touched: BTreeSet<String> = self.ahead.exercises().map(str::to_owned).collect();
        for SetKey { session, set } in self.ahead.touched_sets() {
            touched.extend(self.rows(sql, (session, set.entry.0, set.set), |row| row.get(0))?);
        }
        Ok(touched)
    }

    /// The records of an exercise.
    ///
    /// # Errors
    /// As [`Store::history`].
    pub fn records(&self, exercise: &str) -> Result<Vec<Record>, StoreError> {
        let sql = "SELECT apart, measure, value, session, entry, number, day FROM record
             WHERE exercise = ?1";
        let read = self.rows(sql, [exercise], |row| {
            Ok(Record {
                exercise: exercise.to_owned(),
                apart: code::from_json(row.get_ref(0)?.as_str()?)?,
                measure: code::from_json(row.get_ref(1)?.as_str()?)?,
                value: row.get(2)?,
                set: SetKey {
                    session: row.get(3)?,
                    set: SetId { entry: EntryId(row.get(4)?), set: row.get(5)? },
                },
                day: row.get(6)?,
            })
        })?;
        let all = format!("SELECT {} FROM done_set WHERE exercise = ?1", code::SET);
        let all = || self.rows(&all, [exercise], code::set);
        let mut records = self.ahead.records(exercise, read, all)?;
        records.sort_by_cached_key(|record| (record.apart.clone(), record.set, record.measure));
        Ok(records)
    }

    /// A session.
    ///
    /// # Errors
    /// As [`Store::history`].
    pub fn session(&self, session: Seq) -> Result<Option<SessionRow>, StoreError> {
        let sql = format!("SELECT {} FROM session WHERE session = ?1", code::SESSION);
        match self.ahead.session(session) {
            Some(row) => Ok(row.clone()),
            None => self.rows(&sql, [session], code::session).map(|mut rows| rows.pop()),
        }
    }

    /// The last sessions before one (none for the latest of all), the newest first.
    ///
    /// # Errors
    /// As [`Store::history`].
    pub fn last_sessions(
        &self,
        before: Option<Seq>,
        count: u32,
    ) -> Result<Vec<SessionRow>, StoreError> {
        let sql = format!(
            "SELECT {} FROM session WHERE session < ?1 ORDER BY session DESC LIMIT ?2",
            code::SESSION
        );
        let before = before.unwrap_or(END);
        let more = count.saturating_add(self.ahead.more());
        let read = self.rows(&sql, (before, more), code::session)?;
        let mut sessions = self.ahead.sessions(read, |row| row.session < before);
        sessions.sort_by_key(|row| std::cmp::Reverse(row.session));
        sessions.truncate(usize::try_from(count).unwrap_or(usize::MAX));
        Ok(sessions)
    }

    /// The sessions of a plan in a run of its weeks, by week, session and time.
    ///
    /// # Errors
    /// As [`Store::history`].
    pub fn sessions_of_plan(
        &self,
        plan: Seq,
        weeks: RangeInclusive<u16>,
    ) -> Result<Vec<SessionRow>, StoreError> {
        let sql = format!(
            "SELECT {} FROM session WHERE plan = ?1 AND week BETWEEN ?2 AND ?3
             ORDER BY week, number, session",
            code::SESSION
        );
        let read = self.rows(&sql, (plan, weeks.start(), weeks.end()), code::session)?;
        let at = |row: &SessionRow| {
            row.place.as_ref().map(|place| (place.plan, place.week, place.session))
        };
        let mut sessions = self.ahead.sessions(read, |row| {
            at(row).is_some_and(|(of, week, _)| of == plan && weeks.contains(&week))
        });
        sessions.sort_by_key(|row| (at(row), row.session));
        Ok(sessions)
    }

    /// The sessions begun from one day to another, both included, in the log's order.
    ///
    /// # Errors
    /// As [`Store::history`].
    pub fn sessions_between(
        &self,
        days: RangeInclusive<i32>,
    ) -> Result<Vec<SessionRow>, StoreError> {
        let sql = format!(
            "SELECT {} FROM session WHERE day BETWEEN ?1 AND ?2 ORDER BY session",
            code::SESSION
        );
        let read = self.rows(&sql, (days.start(), days.end()), code::session)?;
        let mut sessions = self.ahead.sessions(read, |row| days.contains(&row.day));
        sessions.sort_by_key(|row| row.session);
        Ok(sessions)
    }

    /// Hard sets of each muscle in each week of a run of weeks, as
    /// [`week_of`](barwright_domain::history::week_of) counts them, in their order. Over the
    /// sessions that ended: a running one's are not in it.
    ///
    /// # Errors
    /// As [`Store::history`].
    pub fn volume(&self, weeks: RangeInclusive<Week>) -> Result<Vec<VolumeRow>, StoreError> {
        let sql = "SELECT week, volume FROM week_volume WHERE week BETWEEN ?1 AND ?2";
        let read = self.rows(sql, (weeks.start(), weeks.end()), |row| {
            Ok((row.get(0)?, code::from_volume(row.get_ref(1)?.as_str()?)?))
        })?;
        let mut volume: BTreeMap<Week, Vec<MuscleTally>> = read.into_iter().collect();
        for week in self.touched_weeks()? {
            if weeks.contains(&week) {
                let days = first_day(week)..=first_day(week.saturating_add(1)) - 1;
                match sum(&self.sessions_between(days)?) {
                    muscles if muscles.is_empty() => volume.remove(&week),
                    muscles => volume.insert(week, muscles),
                };
            }
        }
        Ok(volume.into_iter().map(|(week, muscles)| VolumeRow { week, muscles }).collect())
    }

    /// The weeks of the sessions that the queue puts or takes back.
    fn touched_weeks(&self) -> Result<BTreeSet<Week>, StoreError> {
        let sql = "SELECT day FROM session WHERE session = ?1";
        let mut touched = BTreeSet::new();
        for session in self.ahead.touched_sessions() {
            touched.extend(self.rows(sql, [session], |row| row.get(0))?.into_iter().map(week_of));
            let ahead = self.ahead.session(session).and_then(Option::as_ref);
            touched.extend(ahead.map(|row| week_of(row.day)));
        }
        Ok(touched)
    }

    fn rows<T, P: Params>(
        &self,
        sql: &str,
        params: P,
        read: impl FnMut(&Row<'_>) -> rusqlite::Result<T>,
    ) -> Result<Vec<T>, StoreError> {
        self.store
            .connection()?
            .prepare_cached(sql)
            .and_then(|mut statement| statement.query_map(params, read)?.collect())
            .map_err(|error| self.store.sorted(error))
    }
}

/// Keeps the sets of the sessions that `keep` says, by their place from the newest, from 0, and their
/// number. The newest session comes first.
fn keep_sessions(sets: &mut Vec<DoneSet>, keep: impl Fn(u32, Seq) -> bool) {
    let mut seen: Option<(u32, Seq)> = None;
    sets.retain(|set| {
        let session = set.key.session;
        let nth = match seen {
            Some((nth, last)) if last == session => nth,
            Some((nth, _)) => nth.saturating_add(1),
            None => 0,
        };
        seen = Some((nth, session));
        keep(nth, session)
    });
}

/// The volume of sessions together, in the order of the muscles; none of those that run.
fn sum(sessions: &[SessionRow]) -> Vec<MuscleTally> {
    let mut sum: BTreeMap<Muscle, Tally> = BTreeMap::new();
    let volumes = sessions.iter().filter_map(|row| row.outcome.as_ref());
    for MuscleTally { muscle, tally } in volumes.flat_map(|outcome| &outcome.volume) {
        let sum = sum.entry(*muscle).or_default();
        *sum = sum.and(*tally);
    }
    sum.into_iter().map(|(muscle, tally)| MuscleTally { muscle, tally }).collect()
}
