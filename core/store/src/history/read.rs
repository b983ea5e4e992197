//! Reading the derived rows.

use std::collections::{BTreeMap, BTreeSet};
use std::ops::RangeInclusive;

use barwright_domain::catalogue::Muscle;
use barwright_domain::history::{
    DoneSet, MuscleTally, Record, SessionRow, SetKey, Turn, first_day, week_of,
};
use barwright_domain::session::{EntryId, PlanPlace, SetId};
use barwright_domain::volume::{Tally, Week};
use rusqlite::{Params, Row};

use super::ahead::Ahead;
use super::code::{self, Numbered};
use super::moment::{END, END_OF_TIME, Moment};
use super::total;
use crate::digest;
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
        if self.is_spoiled() {
            return Err(self.spoiled("rows"));
        }
        let mut history = History::of_tables(self);
        if self.pending() > 0 {
            history.ahead =
                Ahead::read(self.connection()?).map_err(|error| history.sorted(error))?;
        }
        Ok(history)
    }
}

impl<'a> History<'a> {
    /// Without what is queued.
    pub(super) fn of_tables(store: &'a Store) -> Self {
        Self { store, ahead: Ahead::default() }
    }

    /// The sets of an exercise in its last sessions before one (none for the latest of all), the
    /// newest session first, each session's sets in their order.
    ///
    /// # Errors
    /// As [`Store::history`].
    pub fn sets_of(
        &self,
        exercise: &str,
        before: Option<Moment>,
        sessions: u32,
    ) -> Result<Vec<DoneSet>, StoreError> {
        self.recent_sets_of(exercise, before, [sessions; 2], i32::MAX)
    }

    /// The sets of an exercise in its last sessions before one, as [`History::sets_of`]: in `enough`
    /// of them however long ago, and further ones from the local date `since` on, `most` in all.
    ///
    /// # Errors
    /// As [`Store::history`].
    pub fn recent_sets_of(
        &self,
        exercise: &str,
        before: Option<Moment>,
        [enough, most]: [u32; 2],
        since: i32,
    ) -> Result<Vec<DoneSet>, StoreError> {
        let before = before.map_or(END_OF_TIME, |(day, session)| (day, session.min(END)));
        let more = |count: u32| count.saturating_add(self.ahead.more());
        let (far, near) = (more(most), more(enough));
        let last = self.rows(
            "SELECT DISTINCT day, session FROM done_set
             WHERE exercise = ?1 AND (day, session) < (?2, ?3)
             ORDER BY day DESC, session DESC LIMIT ?4",
            (exercise, before.0, before.1, far),
            |row| Ok((row.get(0)?, row.get(1)?)),
        )?;
        let wanted = |&(nth, moment): &(u32, &Moment)| nth < near || moment.0 >= since;
        let from = (0..).zip(&last).take_while(wanted).last().map_or(before, |(_, moment)| *moment);
        let sql = format!(
            "SELECT {}, sum, nth, nth_of_exercise FROM done_set
             WHERE exercise = ?1 AND (day, session) >= (?2, ?3) AND (day, session) < (?4, ?5)
             ORDER BY day DESC, session DESC, entry, number",
            code::SET
        );
        let params = (exercise, from.0, from.1, before.0, before.1);
        let read = self.rows(&sql, params, code::numbered)?;
        let read = self.none_missing(exercise, [from, before], read)?;
        let mut sets = self.ahead.sets_of(exercise, before, read);
        keep_sessions(&mut sets, |nth, day| nth < enough || (nth < most && day >= since));
        Ok(sets)
    }

    /// The sets of a session, in the order of its exercises.
    ///
    /// # Errors
    /// As [`Store::history`].
    pub fn sets_in(&self, session: Seq) -> Result<Vec<DoneSet>, StoreError> {
        let read = self.sets_carried_out(session)?;
        let mut sets = self.ahead.sets(read, |set| set.key.session == session);
        sets.sort_by_key(|set| set.key);
        Ok(sets)
    }

    /// The sets of a session without what is queued.
    fn sets_carried_out(&self, session: Seq) -> Result<Vec<DoneSet>, StoreError> {
        let session = session.min(END);
        let sql = format!(
            "SELECT {}, sum, nth, nth_of_exercise FROM done_set
             WHERE session = ?1 ORDER BY entry, number",
            code::SET
        );
        let sets = self.rows(&sql, [session], code::numbered)?;
        let before = self.number(
            "SELECT nth FROM done_set WHERE session < ?1
             ORDER BY session DESC, entry DESC, number DESC LIMIT 1",
            [session],
        )?;
        let after = self.number(
            "SELECT nth FROM done_set WHERE session > ?1
             ORDER BY session, entry, number LIMIT 1",
            [session],
        )?;
        let numbers = sets.iter().map(|set| set.nth).collect();
        self.none_between(before, numbers, after, "done_set")?;
        Ok(sets.into_iter().map(|set| set.set).collect())
    }

    /// The exercises that have a history, each with the day it was last done, by slug.
    ///
    /// # Errors
    /// As [`Store::history`].
    pub fn exercises_done(&self) -> Result<Vec<(String, i32)>, StoreError> {
        self.check_exercises()?;
        let sql = "SELECT exercise, day FROM exercise WHERE sets > 0 ORDER BY exercise";
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
        let mut touched: BTreeSet<String> = self.ahead.exercises().map(str::to_owned).collect();
        let keys: BTreeSet<SetKey> = self.ahead.touched_sets().collect();
        let sessions: BTreeSet<Seq> = keys.iter().map(|key| key.session).collect();
        for session in sessions {
            let sets = self.sets_carried_out(session)?;
            let before = sets.into_iter().filter(|set| keys.contains(&set.key));
            touched.extend(before.map(|set| set.exercise));
        }
        Ok(touched)
    }

    /// The records of an exercise.
    ///
    /// # Errors
    /// As [`Store::history`].
    pub fn records(&self, exercise: &str) -> Result<Vec<Record>, StoreError> {
        self.check_exercises()?;
        let sql = "SELECT exercise, apart, measure, value, session, entry, number, day, sum
             FROM record WHERE exercise = ?1";
        let read = self.rows(sql, [exercise], |row| {
            if digest::of_row(row, 8)? != row.get::<_, u32>(8)? {
                return Err(digest::mismatch("a record"));
            }
            Ok(Record {
                exercise: exercise.to_owned(),
                apart: code::from_json(row.get_ref(1)?.as_str()?)?,
                measure: code::from_json(row.get_ref(2)?.as_str()?)?,
                value: row.get(3)?,
                set: SetKey {
                    session: row.get(4)?,
                    set: SetId { entry: EntryId(row.get(5)?), set: row.get(6)? },
                },
                day: row.get(7)?,
            })
        })?;
        let sql = "SELECT records FROM exercise WHERE exercise = ?1";
        if self.number(sql, [exercise])?.unwrap_or(0) != read.len() as u64 {
            return Err(self.store.spoiled("records"));
        }
        let all = || {
            let sql = format!(
                "SELECT {}, sum, nth, nth_of_exercise FROM done_set WHERE exercise = ?1",
                code::SET
            );
            let all = self.rows(&sql, [exercise], code::numbered)?;
            self.none_missing(exercise, [(i32::MIN, 0), END_OF_TIME], all)
        };
        let mut records = self.ahead.records(exercise, read, all)?;
        records.sort_by_cached_key(|record| (record.apart.clone(), record.set, record.measure));
        Ok(records)
    }

    /// A session.
    ///
    /// # Errors
    /// As [`Store::history`].
    pub fn session(&self, session: Seq) -> Result<Option<SessionRow>, StoreError> {
        match self.ahead.session(session) {
            Some(row) => Ok(row.clone()),
            None => self.session_carried_out(session),
        }
    }

    /// A session without what is queued.
    fn session_carried_out(&self, session: Seq) -> Result<Option<SessionRow>, StoreError> {
        let session = session.min(END);
        let sql = format!("SELECT {}, sum, nth FROM session WHERE session = ?1", code::SESSION);
        let rows = self.rows(&sql, [session], code::session)?;
        let below = self.number(
            "SELECT nth FROM session WHERE session < ?1 ORDER BY session DESC LIMIT 1",
            [session],
        )?;
        let above = self.number(
            "SELECT nth FROM session WHERE session > ?1 ORDER BY session LIMIT 1",
            [session],
        )?;
        self.sessions(below, rows, above).map(|mut rows| rows.pop())
    }

    /// The last sessions before one (none for the latest of all), the newest first.
    ///
    /// # Errors
    /// As [`Store::history`].
    pub fn last_sessions(
        &self,
        before: Option<Moment>,
        count: u32,
    ) -> Result<Vec<SessionRow>, StoreError> {
        let sql = format!(
            "SELECT {}, sum, nth_by_day FROM session WHERE (day, session) < (?1, ?2)
             ORDER BY day DESC, session DESC LIMIT ?3",
            code::SESSION
        );
        let before = before.map_or(END_OF_TIME, |(day, session)| (day, session.min(END)));
        let more = count.saturating_add(self.ahead.more());
        let rows = self.rows(&sql, (before.0, before.1, more), code::session)?;
        let oldest = rows.last().map_or(before, |(row, _)| (row.day, row.session));
        let below = self.number(
            "SELECT nth_by_day FROM session WHERE (day, session) < (?1, ?2)
             ORDER BY day DESC, session DESC LIMIT 1",
            oldest,
        )?;
        let above = self.number(
            "SELECT nth_by_day FROM session WHERE (day, session) >= (?1, ?2)
             ORDER BY day, session LIMIT 1",
            before,
        )?;
        let read = self.sessions(below, rows, above)?;
        let mut sessions = self.ahead.sessions(read, |row| (row.day, row.session) < before);
        sessions.sort_by_key(|row| std::cmp::Reverse((row.day, row.session)));
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
        let read = self.of_plan(plan, &weeks, code::session)?;
        let mut sessions = self.ahead.sessions(read, |row| is_in(row.place.as_ref(), plan, &weeks));
        sessions.sort_by_key(|row| (at(row.place.as_ref()), row.session));
        Ok(sessions)
    }

    /// All sessions of a plan, the oldest first.
    ///
    /// # Errors
    /// As [`Store::history`].
    pub fn turns_of_plan(&self, plan: Seq) -> Result<Vec<Turn>, StoreError> {
        let weeks = 0..=u16::MAX;
        let read = self.of_plan(plan, &weeks, code::turn)?;
        let mut turns = self.ahead.turns(read, |turn| is_in(turn.place.as_ref(), plan, &weeks));
        turns.sort_by_key(|turn| (turn.day, turn.session));
        Ok(turns)
    }

    /// The sessions of a plan in a run of its weeks without what is queued, once it is certain that
    /// none is missing among them or beside them.
    fn of_plan<T>(
        &self,
        plan: Seq,
        weeks: &RangeInclusive<u16>,
        read: impl FnMut(&Row<'_>) -> rusqlite::Result<(T, u64)>,
    ) -> Result<Vec<T>, StoreError> {
        let plan = plan.min(END);
        let sql = format!(
            "SELECT {}, sum, nth_by_place FROM session
             WHERE plan = ?1 AND week BETWEEN ?2 AND ?3 ORDER BY week, number, session",
            code::SESSION
        );
        let rows = self.rows(&sql, (plan, weeks.start(), weeks.end()), read)?;
        let below = self.number(
            "SELECT nth_by_place FROM session WHERE (plan, week) < (?1, ?2)
             ORDER BY plan DESC, week DESC, number DESC, session DESC LIMIT 1",
            (plan, weeks.start()),
        )?;
        let above = self.number(
            "SELECT nth_by_place FROM session WHERE (plan, week) > (?1, ?2)
             ORDER BY plan, week, number, session LIMIT 1",
            (plan, weeks.end()),
        )?;
        self.sessions(below, rows, above)
    }

    /// The sessions begun from one day to another, both included, the oldest first.
    ///
    /// # Errors
    /// As [`Store::history`].
    pub fn sessions_between(
        &self,
        days: RangeInclusive<i32>,
    ) -> Result<Vec<SessionRow>, StoreError> {
        let sql = format!(
            "SELECT {}, sum, nth_by_day FROM session
             WHERE day BETWEEN ?1 AND ?2 ORDER BY day, session",
            code::SESSION
        );
        let rows = self.rows(&sql, (days.start(), days.end()), code::session)?;
        let below = self.number(
            "SELECT nth_by_day FROM session WHERE day < ?1
             ORDER BY day DESC, session DESC LIMIT 1",
            [days.start()],
        )?;
        let above = self.number(
            "SELECT nth_by_day FROM session WHERE day > ?1 ORDER BY day, session LIMIT 1",
            [days.end()],
        )?;
        let read = self.sessions(below, rows, above)?;
        let mut sessions = self.ahead.sessions(read, |row| days.contains(&row.day));
        sessions.sort_by_key(|row| (row.day, row.session));
        Ok(sessions)
    }

    /// Hard sets of each muscle in each week of a run of weeks, as
    /// [`week_of`](barwright_domain::history::week_of) counts them, in their order. Over the
    /// sessions that ended: a running one's are not in it.
    ///
    /// # Errors
    /// As [`Store::history`].
    pub fn volume(&self, weeks: RangeInclusive<Week>) -> Result<Vec<VolumeRow>, StoreError> {
        let sql = "SELECT week, volume, sum, nth FROM week_volume WHERE week BETWEEN ?1 AND ?2
             ORDER BY week";
        let rows = self.rows(sql, (weeks.start(), weeks.end()), |row| {
            if digest::of_row(row, 2)? != row.get::<_, u32>(2)? {
                return Err(digest::mismatch("a week"));
            }
            let muscles = code::from_volume(row.get_ref(1)?.as_str()?)?;
            Ok(((row.get(0)?, muscles), row.get(3)?))
        })?;
        let below = self.number(
            "SELECT nth FROM week_volume WHERE week < ?1 ORDER BY week DESC LIMIT 1",
            [weeks.start()],
        )?;
        let above = self.number(
            "SELECT nth FROM week_volume WHERE week > ?1 ORDER BY week LIMIT 1",
            [weeks.end()],
        )?;
        let numbers = rows.iter().map(|(_, nth)| *nth).collect();
        self.none_between(below, numbers, above, "week_volume")?;
        let mut volume: BTreeMap<Week, Vec<MuscleTally>> =
            rows.into_iter().map(|(row, _)| row).collect();
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
        let mut touched = BTreeSet::new();
        for session in self.ahead.touched_sessions() {
            touched.extend(self.session_carried_out(session)?.map(|row| week_of(row.day)));
            let ahead = self.ahead.session(session).and_then(Option::as_ref);
            touched.extend(ahead.map(|row| week_of(row.day)));
        }
        Ok(touched)
    }

    /// Sets of an exercise from one session on and before another, once it is certain that none is
    /// missing among them or beside them.
    fn none_missing(
        &self,
        exercise: &str,
        [from, before]: [Moment; 2],
        sets: Vec<Numbered>,
    ) -> Result<Vec<DoneSet>, StoreError> {
        self.check_exercises()?;
        let below = self.number(
            "SELECT nth_of_exercise FROM done_set WHERE exercise = ?1 AND (day, session) < (?2, ?3)
             ORDER BY day DESC, session DESC, entry DESC, number DESC LIMIT 1",
            (exercise, from.0, from.1),
        )?;
        let above = self.number(
            "SELECT nth_of_exercise FROM done_set WHERE exercise = ?1 AND (day, session) >= (?2, ?3)
             ORDER BY day, session, entry, number LIMIT 1",
            (exercise, before.0, before.1),
        )?;
        let total = self.number("SELECT sets FROM exercise WHERE exercise = ?1", [exercise])?;
        let numbers = sets.iter().map(|set| set.nth_of_exercise).collect();
        self.gapless(below, numbers, above, total.unwrap_or(0))?;
        Ok(sets.into_iter().map(|set| set.set).collect())
    }

    /// Sessions, once it is certain that none is missing among them or beside them.
    fn sessions<T>(
        &self,
        below: Option<u64>,
        rows: Vec<(T, u64)>,
        above: Option<u64>,
    ) -> Result<Vec<T>, StoreError> {
        let numbers = rows.iter().map(|(_, nth)| *nth).collect();
        self.none_between(below, numbers, above, "session")?;
        Ok(rows.into_iter().map(|(row, _)| row).collect())
    }

    /// As [`History::gapless`], up to as many rows as a table has.
    fn none_between(
        &self,
        below: Option<u64>,
        numbers: Vec<u64>,
        above: Option<u64>,
        table: &'static str,
    ) -> Result<(), StoreError> {
        let total = self.number("SELECT rows FROM total WHERE name = ?1", [table])?;
        self.gapless(below, numbers, above, total.ok_or_else(|| self.store.spoiled(table))?)
    }

    /// Whether the numbers of rows follow each other without a gap, from the row below them, or from
    /// one, to the row above them, or to the last.
    fn gapless(
        &self,
        below: Option<u64>,
        mut numbers: Vec<u64>,
        above: Option<u64>,
        total: u64,
    ) -> Result<(), StoreError> {
        numbers.sort_unstable();
        let expected = below.map_or(1, |below| below + 1)..;
        let found = numbers.into_iter().chain([above.unwrap_or(total + 1)]);
        if found.zip(expected).all(|(found, expected)| found == expected) {
            Ok(())
        } else {
            Err(self.store.spoiled("rows"))
        }
    }

    fn number(&self, sql: &str, params: impl Params) -> Result<Option<u64>, StoreError> {
        self.rows(sql, params, |row| row.get(0)).map(|rows| rows.first().copied())
    }

    /// Reads everything in every order that it is read in.
    pub(super) fn check_all(&self) -> Result<(), StoreError> {
        for session in self.last_sessions(None, u32::MAX)? {
            self.session(session.session)?;
        }
        self.sessions_between(i32::MIN..=i32::MAX)?;
        for plan in self.rows("SELECT DISTINCT plan FROM session", [], |row| row.get(0))? {
            self.sessions_of_plan(plan, 0..=u16::MAX)?;
        }
        self.volume(Week::MIN..=Week::MAX)?;
        let sessions = "SELECT DISTINCT session FROM done_set";
        for session in self.rows(sessions, [], |row| row.get(0))? {
            self.sets_in(session)?;
        }
        for (exercise, _) in self.exercises_done()? {
            self.sets_of(&exercise, None, u32::MAX)?;
            self.records(&exercise)?;
        }
        Ok(())
    }

    /// All rows of a query.
    pub(super) fn whole(&self, sql: &str) -> Result<Vec<String>, StoreError> {
        self.store.whole(sql)
    }

    /// Compares the small table of exercises with its total, once after opening.
    fn check_exercises(&self) -> Result<(), StoreError> {
        if self.store.is_checked() {
            return Ok(());
        }
        let columns = ("exercise, sets, records, day", 4);
        let checked = total::check(self.store.connection()?, "exercise", columns);
        checked.map_err(|error| self.sorted(error))?;
        self.store.set_checked();
        Ok(())
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
            .map_err(|error| self.sorted(error))
    }

    /// Sorts an error: damage met here is first taken for that of derived rows. Making them anew
    /// tells whether it is more.
    fn sorted(&self, error: rusqlite::Error) -> StoreError {
        match self.store.sorted(error) {
            StoreError::Corrupt { .. } => self.store.spoiled("rows"),
            error => error,
        }
    }
}

/// A place as numbers, in the order that sessions of plans are read in.
fn at(place: Option<&PlanPlace>) -> Option<(u64, u16, u16)> {
    place.map(|place| (place.plan, place.week, place.session))
}

/// Whether a place is in these weeks of a plan.
fn is_in(place: Option<&PlanPlace>, plan: Seq, weeks: &RangeInclusive<u16>) -> bool {
    place.is_some_and(|place| place.plan == plan && weeks.contains(&place.week))
}

/// Keeps the sets of the sessions that `keep` says, by their place from the newest, from 0, and their
/// local date. The newest session comes first.
fn keep_sessions(sets: &mut Vec<DoneSet>, keep: impl Fn(u32, i32) -> bool) {
    let mut seen: Option<(u32, Seq)> = None;
    sets.retain(|set| {
        let session = set.key.session;
        let nth = match seen {
            Some((nth, last)) if last == session => nth,
            Some((nth, _)) => nth.saturating_add(1),
            None => 0,
        };
        seen = Some((nth, session));
        keep(nth, set.day)
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
