//! Writing the derived rows.

use std::collections::BTreeMap;

use barwright_domain::catalogue::Muscle;
use barwright_domain::history::{
    Change, DoneSet, MuscleTally, Record, SessionRow, SetKey, claims, first_day, week_of,
};
use barwright_domain::volume::{Tally, Week};
use rusqlite::{Connection, OptionalExtension, Result, ToSql, params};

use super::code::{self, Numbered};
use super::total;
use crate::digest;

/// Makes one change, and what follows from it for records and volume.
pub(super) fn apply(connection: &Connection, change: &Change) -> Result<()> {
    match change {
        Change::PutSet(set) => put_set(connection, set),
        Change::RemoveSet(key) => remove_set(connection, *key),
        Change::PutSession(row) => put_session(connection, row),
        Change::RemoveSession(session) => remove_session(connection, *session),
    }
}

fn put_set(connection: &Connection, set: &DoneSet) -> Result<()> {
    let before = set_at(connection, set.key)?;
    // A set that became another exercise's leaves its place there.
    if let Some(before) = before.as_ref().filter(|before| before.set.exercise != set.exercise) {
        take_out(connection, before)?;
    }
    let kept = before.as_ref().filter(|before| before.set.exercise == set.exercise);
    let [reps, seconds, mm] = code::amount(set.amount());
    let parts = match set.parts.as_slice() {
        // What the columns say already.
        [part] if part.figure == set.figure && part.slowing.is_none() => None,
        parts => Some(code::json(&parts)?),
    };
    let [nth, nth_of_exercise] = match kept {
        Some(kept) => [kept.nth, kept.nth_of_exercise],
        None => make_room(connection, set)?,
    };
    write_set(
        connection,
        params![
            set.key.session,
            set.key.set.entry.0,
            set.key.set.set,
            set.day,
            set.exercise,
            code::word(&set.kind)?,
            set.row,
            set.round,
            set.side.map(|side| code::word(&side)).transpose()?,
            code::json(&set.asked)?,
            set.target.map(|target| code::json(&target)).transpose()?,
            set.meant.map(|mass| mass.nanograms()),
            set.figure.map(|mass| mass.nanograms()),
            code::word(&set.counting)?,
            set.moved.map(|mass| mass.nanograms()),
            set.bands,
            set.technique,
            code::list(&set.set_up)?,
            code::list(&set.kit)?,
            reps,
            seconds,
            mm,
            parts,
            set.left.map(|left| left.halves()),
            set.helped,
            code::word(&set.ending)?,
        ],
        [nth, nth_of_exercise],
        kept.map(|kept| kept.sum),
    )?;
    count_exercise(connection, &set.exercise, if kept.is_some() { 0 } else { 1 })?;
    if let Some(before) = before {
        settle_records(connection, &before.set)?;
    }
    claims(set).try_for_each(|claim| offer(connection, &claim))
}

fn write_set(
    connection: &Connection,
    values: &[&dyn ToSql],
    [nth, nth_of_exercise]: [u64; 2],
    before: Option<u32>,
) -> Result<()> {
    let sum = digest::of(values)?;
    let sql = format!(
        "INSERT OR REPLACE INTO done_set ({}, sum, nth, nth_of_exercise) VALUES (?1, ?2, ?3, ?4, \
         ?5, ?6, ?7, ?8, ?9, ?10, ?11, ?12, ?13, ?14, ?15, ?16, ?17, ?18, ?19, ?20, ?21, ?22, \
         ?23, ?24, ?25, ?26, ?27, ?28, ?29)",
        code::SET
    );
    digest::execute(connection, &sql, values, &[&sum, &nth, &nth_of_exercise])?;
    total::changed(connection, "done_set", before, Some(sum))
}

fn remove_set(connection: &Connection, key: SetKey) -> Result<()> {
    let Some(before) = set_at(connection, key)? else { return Ok(()) };
    take_out(connection, &before)?;
    settle_records(connection, &before.set)
}

/// Takes a set out, and numbers those behind it anew.
fn take_out(connection: &Connection, before: &Numbered) -> Result<()> {
    let key = before.set.key;
    connection
        .prepare_cached("DELETE FROM done_set WHERE session = ?1 AND entry = ?2 AND number = ?3")?
        .execute(params![key.session, key.set.entry.0, key.set.set])?;
    total::changed(connection, "done_set", Some(before.sum), None)?;
    shift(connection, &before.set, -1)?;
    count_exercise(connection, &before.set.exercise, -1)
}

/// The two numbers of a new set, after those behind it were numbered anew: there are few, since a
/// set seldom comes before one that is there.
fn make_room(connection: &Connection, set: &DoneSet) -> Result<[u64; 2]> {
    let (session, entry, number) = (set.key.session, set.key.set.entry.0, set.key.set.set);
    let before = connection
        .prepare_cached(
            "SELECT nth FROM done_set WHERE (session, entry, number) < (?1, ?2, ?3)
             ORDER BY session DESC, entry DESC, number DESC LIMIT 1",
        )?
        .query_row(params![session, entry, number], |row| row.get::<_, u64>(0))
        .optional()?;
    let before_of_exercise = connection
        .prepare_cached(
            "SELECT nth_of_exercise FROM done_set
             WHERE exercise = ?4 AND session <= ?1 AND (session, entry, number) < (?1, ?2, ?3)
             ORDER BY session DESC, entry DESC, number DESC LIMIT 1",
        )?
        .query_row(params![session, entry, number, set.exercise], |row| row.get::<_, u64>(0))
        .optional()?;
    shift(connection, set, 1)?;
    Ok([before, before_of_exercise].map(|before| before.unwrap_or(0) + 1))
}

/// Changes the numbers of the sets behind one.
fn shift(connection: &Connection, set: &DoneSet, by: i64) -> Result<()> {
    let (session, entry, number) = (set.key.session, set.key.set.entry.0, set.key.set.set);
    connection
        .prepare_cached(
            "UPDATE done_set SET nth = nth + ?4 WHERE (session, entry, number) > (?1, ?2, ?3)",
        )?
        .execute(params![session, entry, number, by])?;
    connection
        .prepare_cached(
            "UPDATE done_set SET nth_of_exercise = nth_of_exercise + ?5
             WHERE exercise = ?4 AND session >= ?1 AND (session, entry, number) > (?1, ?2, ?3)",
        )?
        .execute(params![session, entry, number, set.exercise, by])?;
    Ok(())
}

/// Counts an exercise's sets, and keeps the day of the last.
fn count_exercise(connection: &Connection, exercise: &str, more: i64) -> Result<()> {
    let before = connection
        .prepare_cached("DELETE FROM exercise WHERE exercise = ?1 RETURNING sets, sum")?
        .query_row([exercise], |row| Ok((row.get::<_, i64>(0)?, row.get::<_, u32>(1)?)))
        .optional()?;
    let sets = before.map_or(0, |(sets, _)| sets) + more;
    let day = connection
        .prepare_cached(
            "SELECT day FROM done_set WHERE exercise = ?1 ORDER BY session DESC LIMIT 1",
        )?
        .query_row([exercise], |row| row.get::<_, i32>(0))
        .optional()?;
    let sum = match day {
        Some(day) if sets > 0 => Some(total::put(
            connection,
            "INSERT INTO exercise (exercise, sets, day, sum) VALUES (?1, ?2, ?3, ?4)",
            params![exercise, sets, day],
        )?),
        _ => None,
    };
    total::changed(connection, "exercise", before.map(|(_, sum)| sum), sum)
}

fn set_at(connection: &Connection, key: SetKey) -> Result<Option<Numbered>> {
    let sql = format!(
        "SELECT {}, sum, nth, nth_of_exercise FROM done_set
         WHERE session = ?1 AND entry = ?2 AND number = ?3",
        code::SET
    );
    connection
        .prepare_cached(&sql)?
        .query_row(params![key.session, key.set.entry.0, key.set.set], code::numbered)
        .optional()
}

fn put_session(connection: &Connection, row: &SessionRow) -> Result<()> {
    remove_session(connection, row.session)?;
    let sql = format!(
        "INSERT INTO session ({}, sum) VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11, ?12)",
        code::SESSION
    );
    let (place, outcome) = (row.place.as_ref(), row.outcome.as_ref());
    let sum = total::put(
        connection,
        &sql,
        params![
            row.session,
            row.day,
            row.title,
            place.map(|place| place.plan),
            place.map(|place| place.week),
            place.map(|place| place.session),
            code::word(&row.week_kind)?,
            outcome.map(|outcome| outcome.seconds),
            outcome.map(|outcome| outcome.owed),
            outcome.map(|outcome| outcome.done),
            outcome.map(|outcome| code::volume(&outcome.volume)),
        ],
    )?;
    total::changed(connection, "session", None, Some(sum))?;
    if outcome.is_some() {
        sum_week(connection, week_of(row.day))?;
    }
    Ok(())
}

fn remove_session(connection: &Connection, session: u64) -> Result<()> {
    let removed = connection
        .prepare_cached(
            "DELETE FROM session WHERE session = ?1 RETURNING day, volume IS NOT NULL, sum",
        )?
        .query_row([session], |row| Ok((row.get(0)?, row.get(1)?, row.get::<_, u32>(2)?)))
        .optional()?;
    let Some((day, ended, sum)) = removed else { return Ok(()) };
    total::changed(connection, "session", Some(sum), None)?;
    if ended { sum_week(connection, week_of(day)) } else { Ok(()) }
}

/// Sums the volume of a week's sessions.
fn sum_week(connection: &Connection, week: Week) -> Result<()> {
    let mut sum: BTreeMap<Muscle, Tally> = BTreeMap::new();
    let mut statement = connection.prepare_cached(
        "SELECT volume FROM session WHERE day BETWEEN ?1 AND ?2 AND volume IS NOT NULL",
    )?;
    let mut rows = statement.query([first_day(week), first_day(week.saturating_add(1)) - 1])?;
    while let Some(row) = rows.next()? {
        for MuscleTally { muscle, tally } in code::from_volume(row.get_ref(0)?.as_str()?)? {
            let sum = sum.entry(muscle).or_default();
            *sum = sum.and(tally);
        }
    }
    let sum: Vec<_> =
        sum.into_iter().map(|(muscle, tally)| MuscleTally { muscle, tally }).collect();
    let before = connection
        .prepare_cached("DELETE FROM week_volume WHERE week = ?1 RETURNING sum")?
        .query_row([week], |row| row.get(0))
        .optional()?;
    let after = if sum.is_empty() {
        None
    } else {
        Some(total::put(
            connection,
            "INSERT INTO week_volume (week, volume, sum) VALUES (?1, ?2, ?3)",
            params![week, code::volume(&sum)],
        )?)
    };
    total::changed(connection, "week_volume", before, after)
}

/// Gives a claim its place where it beats the record that stands.
fn offer(connection: &Connection, claim: &Record) -> Result<()> {
    let (apart, measure) = (code::json(&claim.apart)?, code::json(&claim.measure)?);
    let standing = connection
        .prepare_cached(
            "SELECT value, session, entry, number, sum FROM record
             WHERE exercise = ?1 AND apart = ?2 AND measure = ?3",
        )?
        .query_row(params![claim.exercise, apart, measure], |row| {
            let standing = Record { value: row.get(0)?, set: code::key(row, 1)?, ..claim.clone() };
            Ok((standing, row.get::<_, u32>(4)?))
        })
        .optional()?;
    if standing.as_ref().is_some_and(|(standing, _)| !claim.beats(standing)) {
        return Ok(());
    }
    let sum = total::put(
        connection,
        "INSERT OR REPLACE INTO record
         (exercise, apart, measure, value, session, entry, number, day, sum)
         VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9)",
        params![
            claim.exercise,
            apart,
            measure,
            claim.value,
            claim.set.session,
            claim.set.set.entry.0,
            claim.set.set.set,
            claim.day
        ],
    )?;
    total::changed(connection, "record", standing.map(|(_, sum)| sum), Some(sum))
}

/// Finds the records anew that a set held before it was changed or removed.
fn settle_records(connection: &Connection, before: &DoneSet) -> Result<()> {
    let key = before.key;
    let lost = connection
        .prepare_cached(
            "DELETE FROM record
             WHERE exercise = ?1 AND session = ?2 AND entry = ?3 AND number = ?4
             RETURNING apart, measure, sum",
        )?
        .query_map(params![before.exercise, key.session, key.set.entry.0, key.set.set], |row| {
            total::changed(connection, "record", Some(row.get(2)?), None)?;
            Ok((row.get(0)?, row.get(1)?))
        })?
        .collect::<Result<Vec<(String, String)>>>()?;
    if lost.is_empty() {
        return Ok(());
    }
    let sql = format!(
        "SELECT {}, sum, nth, nth_of_exercise FROM done_set WHERE exercise = ?1",
        code::SET
    );
    let mut statement = connection.prepare_cached(&sql)?;
    let sets = statement.query_map([&before.exercise], |row| Ok(code::numbered(row)?.set))?;
    let mut best: Vec<Record> = Vec::new();
    for set in sets {
        for claim in claims(&set?) {
            let place = (code::json(&claim.apart)?, code::json(&claim.measure)?);
            if !lost.contains(&place) {
                continue;
            }
            let same = |record: &&mut Record| {
                (&record.apart, record.measure) == (&claim.apart, claim.measure)
            };
            match best.iter_mut().find(same) {
                Some(record) if claim.beats(record) => *record = claim,
                Some(_) => {}
                None => best.push(claim),
            }
        }
    }
    best.iter().try_for_each(|claim| offer(connection, claim))
}
