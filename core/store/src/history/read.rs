//! Reading the derived rows.

use std::ops::RangeInclusive;

use barwright_domain::history::{DoneSet, MuscleTally, Record, SessionRow, SetKey};
use barwright_domain::session::{EntryId, SetId};
use barwright_domain::volume::Week;
use rusqlite::{Params, Row};

use super::{carry_out, code};
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
    /// Queued changes were carried out for this reading, in a transaction of its own.
    ahead: bool,
}

impl Store {
    /// Opens the derived rows for reading. Nothing is written by it.
    ///
    /// # Errors
    /// [`StoreError::DiskFailed`] and its kin, as for every reading here.
    pub fn history(&mut self) -> Result<History<'_>, StoreError> {
        let ahead = self.pending() > 0;
        if ahead {
            let connection = self.connection()?;
            let carried_out =
                connection.execute_batch("BEGIN IMMEDIATE").and_then(|()| carry_out(connection));
            if let Err(error) = carried_out {
                return Err(self.failed(error));
            }
        }
        Ok(History { store: self, ahead })
    }
}

impl Drop for History<'_> {
    fn drop(&mut self) {
        if let (true, Ok(connection)) = (self.ahead, self.store.connection()) {
            // Where it fails the transaction is still open, and the next tap's start says so.
            let _ = connection.execute_batch("ROLLBACK");
        }
    }
}

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
        let before = before.unwrap_or(i64::MAX as u64);
        self.rows(&sql, (exercise, before, sessions), code::set)
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
        let end = i64::MAX as u64;
        let (before, since) = (before.unwrap_or(end), since.unwrap_or(end));
        self.rows(&sql, (exercise, before, enough, most, since), code::set)
    }

    /// The first session begun on a day or later; none where there is none.
    ///
    /// # Errors
    /// As [`Store::history`].
    pub fn first_since(&self, day: i32) -> Result<Option<Seq>, StoreError> {
        // In the order of the index: the least number by itself would be looked for from the first
        // session of all.
        let sql = "SELECT session FROM session WHERE day >= ?1 ORDER BY day, session LIMIT 1";
        Ok(self.rows(sql, [day], |row| row.get(0))?.first().copied())
    }

    /// The sets of a session, in the order of its exercises.
    ///
    /// # Errors
    /// As [`Store::history`].
    pub fn sets_in(&self, session: Seq) -> Result<Vec<DoneSet>, StoreError> {
        let sql =
            format!("SELECT {} FROM done_set WHERE session = ?1 ORDER BY entry, number", code::SET);
        self.rows(&sql, [session], code::set)
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
        self.rows(sql, [], |row| Ok((row.get(0)?, row.get(1)?)))
    }

    /// The records of an exercise.
    ///
    /// # Errors
    /// As [`Store::history`].
    pub fn records(&self, exercise: &str) -> Result<Vec<Record>, StoreError> {
        let sql = "SELECT apart, measure, value, session, entry, number, day FROM record
             WHERE exercise = ?1 ORDER BY apart, session, entry, number, measure";
        self.rows(sql, [exercise], |row| {
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
        })
    }

    /// A session.
    ///
    /// # Errors
    /// As [`Store::history`].
    pub fn session(&self, session: Seq) -> Result<Option<SessionRow>, StoreError> {
        let sql = format!("SELECT {} FROM session WHERE session = ?1", code::SESSION);
        self.rows(&sql, [session], code::session).map(|mut rows| rows.pop())
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
        self.rows(&sql, (before.unwrap_or(i64::MAX as u64), count), code::session)
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
        self.rows(&sql, (plan, weeks.start(), weeks.end()), code::session)
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
        self.rows(&sql, (days.start(), days.end()), code::session)
    }

    /// Hard sets of each muscle in each week of a run of weeks, as
    /// [`week_of`](barwright_domain::history::week_of) counts them, in their order. Over the
    /// sessions that ended: a running one's are not in it.
    ///
    /// # Errors
    /// As [`Store::history`].
    pub fn volume(&self, weeks: RangeInclusive<Week>) -> Result<Vec<VolumeRow>, StoreError> {
        let sql = "SELECT week, volume FROM week_volume WHERE week BETWEEN ?1 AND ?2";
        self.rows(sql, (weeks.start(), weeks.end()), |row| {
            Ok(VolumeRow {
                week: row.get(0)?,
                muscles: code::from_volume(row.get_ref(1)?.as_str()?)?,
            })
        })
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
