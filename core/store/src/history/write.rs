//! Writing the derived rows.

use std::collections::BTreeMap;

use barwright_domain::catalogue::Muscle;
use barwright_domain::history::{
    Change, DoneSet, MuscleTally, Record, SessionRow, SetKey, claims, first_day, week_of,
};
use barwright_domain::volume::{Tally, Week};
use rusqlite::{Connection, OptionalExtension, Result, params};

use super::code;

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
    let [reps, seconds, mm] = code::amount(set.amount());
    let parts = match set.parts.as_slice() {
        // What the columns say already.
        [part] if part.figure == set.figure && part.slowing.is_none() => None,
        parts => Some(code::json(&parts)?),
    };
    let sql = format!(
        "INSERT OR REPLACE INTO done_set ({}) VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, \
         ?11, ?12, ?13, ?14, ?15, ?16, ?17, ?18, ?19, ?20, ?21, ?22, ?23, ?24, ?25, ?26)",
        code::SET
    );
    connection.prepare_cached(&sql)?.execute(params![
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
    ])?;
    if let Some(before) = before {
        settle_records(connection, &before)?;
    }
    claims(set).try_for_each(|claim| offer(connection, &claim))
}

fn remove_set(connection: &Connection, key: SetKey) -> Result<()> {
    let Some(before) = set_at(connection, key)? else { return Ok(()) };
    connection
        .prepare_cached("DELETE FROM done_set WHERE session = ?1 AND entry = ?2 AND number = ?3")?
        .execute(params![key.session, key.set.entry.0, key.set.set])?;
    settle_records(connection, &before)
}

fn set_at(connection: &Connection, key: SetKey) -> Result<Option<DoneSet>> {
    let sql = format!(
        "SELECT {} FROM done_set WHERE session = ?1 AND entry = ?2 AND number = ?3",
        code::SET
    );
    connection
        .prepare_cached(&sql)?
        .query_row(params![key.session, key.set.entry.0, key.set.set], code::set)
        .optional()
}

fn put_session(connection: &Connection, row: &SessionRow) -> Result<()> {
    remove_session(connection, row.session)?;
    let sql = format!(
        "INSERT INTO session ({}) VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11)",
        code::SESSION
    );
    let (place, outcome) = (row.place.as_ref(), row.outcome.as_ref());
    connection.prepare_cached(&sql)?.execute(params![
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
    ])?;
    if outcome.is_some() {
        sum_week(connection, week_of(row.day))?;
    }
    Ok(())
}

fn remove_session(connection: &Connection, session: u64) -> Result<()> {
    let removed = connection
        .prepare_cached("DELETE FROM session WHERE session = ?1 RETURNING day, volume IS NOT NULL")?
        .query_row([session], |row| Ok((row.get(0)?, row.get(1)?)))
        .optional()?;
    match removed {
        Some((day, true)) => sum_week(connection, week_of(day)),
        _ => Ok(()),
    }
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
    if sum.is_empty() {
        connection.prepare_cached("DELETE FROM week_volume WHERE week = ?1")?.execute([week])?;
    } else {
        connection
            .prepare_cached("INSERT OR REPLACE INTO week_volume (week, volume) VALUES (?1, ?2)")?
            .execute(params![week, code::volume(&sum)])?;
    }
    Ok(())
}

/// Gives a claim its place where it beats the record that stands.
fn offer(connection: &Connection, claim: &Record) -> Result<()> {
    let (apart, measure) = (code::json(&claim.apart)?, code::json(&claim.measure)?);
    let standing = connection
        .prepare_cached(
            "SELECT value, session, entry, number FROM record
             WHERE exercise = ?1 AND apart = ?2 AND measure = ?3",
        )?
        .query_row(params![claim.exercise, apart, measure], |row| {
            Ok(Record { value: row.get(0)?, set: code::key(row, 1)?, ..claim.clone() })
        })
        .optional()?;
    if standing.is_some_and(|standing| !claim.beats(&standing)) {
        return Ok(());
    }
    connection
        .prepare_cached(
            "INSERT OR REPLACE INTO record
             (exercise, apart, measure, value, session, entry, number, day)
             VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8)",
        )?
        .execute(params![
            claim.exercise,
            apart,
            measure,
            claim.value,
            claim.set.session,
            claim.set.set.entry.0,
            claim.set.set.set,
            claim.day
        ])?;
    Ok(())
}

/// Finds the records anew that a set held before it was changed or removed.
fn settle_records(connection: &Connection, before: &DoneSet) -> Result<()> {
    let key = before.key;
    let lost = connection
        .prepare_cached(
            "DELETE FROM record
             WHERE exercise = ?1 AND session = ?2 AND entry = ?3 AND number = ?4
             RETURNING apart, measure",
        )?
        .query_map(params![before.exercise, key.session, key.set.entry.0, key.set.set], |row| {
            Ok((row.get(0)?, row.get(1)?))
        })?
        .collect::<Result<Vec<(String, String)>>>()?;
    if lost.is_empty() {
        return Ok(());
    }
    let sql = format!("SELECT {} FROM done_set WHERE exercise = ?1", code::SET);
    let mut statement = connection.prepare_cached(&sql)?;
    let sets = statement.query_map([&before.exercise], code::set)?;
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
