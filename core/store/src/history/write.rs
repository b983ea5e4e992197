//! Writing the derived rows.

use std::collections::BTreeMap;
use std::sync::LazyLock;

use barwright_domain::catalogue::Muscle;
use barwright_domain::history::{
    Change, DoneSet, MuscleTally, Record, SessionRow, SetKey, claims, first_day, week_of,
};
use barwright_domain::session::SetId;
use barwright_domain::volume::{Tally, Week};
use rusqlite::types::Value;
use rusqlite::{Connection, OptionalExtension, Result, params};

use super::code::{self, Numbered};
use super::order::{self, Order};
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
    // A set that became another exercise's, or another day's, leaves its place there.
    let stays =
        |before: &Numbered| (&before.set.exercise, before.set.day) == (&set.exercise, set.day);
    if let Some(before) = before.as_ref().filter(|before| !stays(before)) {
        take_out(connection, before)?;
    }
    let kept = before.as_ref().filter(|before| stays(before));
    let (nth, nth_of_exercise) = match kept {
        Some(kept) => (kept.nth, kept.nth_of_exercise),
        None => (
            order::make_room(connection, &SETS, &key_of(set))?,
            order::make_room(connection, &SETS_OF_EXERCISE, &key_in_exercise(set))?,
        ),
    };
    let sum = write_set(connection, set, [nth, nth_of_exercise])?;
    total::changed(connection, "done_set", kept.map(|kept| kept.sum), Some(sum))?;
    count_exercise(connection, &set.exercise, [i64::from(kept.is_none()), 0])?;
    if let Some(before) = before {
        settle_records(connection, &before.set)?;
    }
    claims(set).try_for_each(|claim| offer(connection, &claim))
}

/// How [`write_set`] writes a set.
static WRITE_SET: LazyLock<String> = LazyLock::new(|| {
    format!(
        "INSERT OR REPLACE INTO done_set ({}, sum, nth, nth_of_exercise) VALUES (?1, ?2, ?3, ?4, \
         ?5, ?6, ?7, ?8, ?9, ?10, ?11, ?12, ?13, ?14, ?15, ?16, ?17, ?18, ?19, ?20, ?21, ?22, \
         ?23, ?24, ?25, ?26, ?27, ?28, ?29)",
        code::SET
    )
});

/// Writes a set's row with its numbers, and answers its digest.
pub(super) fn write_set(connection: &Connection, set: &DoneSet, nths: [u64; 2]) -> Result<u32> {
    let [reps, seconds, mm] = code::amount(set.amount());
    let parts = match set.parts.as_slice() {
        // What the columns say already.
        [part] if part.figure == set.figure && part.slowing.is_none() => None,
        parts => Some(code::json(&parts)?),
    };
    let values = params![
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
    ];
    let sum = digest::of(values)?;
    let [nth, nth_of_exercise] = &nths;
    digest::execute(connection, &WRITE_SET, values, &[&sum, nth, nth_of_exercise])?;
    Ok(sum)
}

/// Numbers a set anew.
pub(super) fn number_set(connection: &Connection, key: SetKey, nths: [u64; 2]) -> Result<()> {
    let SetKey { session, set: SetId { entry, set } } = key;
    let [nth, nth_of_exercise] = nths;
    connection
        .prepare_cached(
            "UPDATE done_set SET nth = ?4, nth_of_exercise = ?5
             WHERE session = ?1 AND entry = ?2 AND number = ?3",
        )?
        .execute(params![session, entry.0, set, nth, nth_of_exercise])?;
    Ok(())
}

fn remove_set(connection: &Connection, key: SetKey) -> Result<()> {
    let Some(before) = set_at(connection, key)? else { return Ok(()) };
    take_out(connection, &before)?;
    settle_records(connection, &before.set)
}

/// Takes a set out, and numbers those behind it anew.
fn take_out(connection: &Connection, before: &Numbered) -> Result<()> {
    erase_set(connection, before.set.key)?;
    total::changed(connection, "done_set", Some(before.sum), None)?;
    order::close_up(connection, &SETS, &key_of(&before.set))?;
    order::close_up(connection, &SETS_OF_EXERCISE, &key_in_exercise(&before.set))?;
    count_exercise(connection, &before.set.exercise, [-1, 0])
}

/// Takes a set's row out, and nothing else.
pub(super) fn erase_set(connection: &Connection, key: SetKey) -> Result<()> {
    connection
        .prepare_cached("DELETE FROM done_set WHERE session = ?1 AND entry = ?2 AND number = ?3")?
        .execute(params![key.session, key.set.entry.0, key.set.set])?;
    Ok(())
}

/// All sets, by their names.
const SETS: Order = Order { table: "done_set", nth: "nth", by: "session, entry, number" };

/// Those of one exercise.
const SETS_OF_EXERCISE: Order =
    Order { nth: "nth_of_exercise", by: "exercise = ?; day, session, entry, number", ..SETS };

/// Sessions, by each of the orders that they are read in.
const SESSIONS: [Order; 3] = [
    Order { table: "session", nth: "nth", by: "session" },
    Order { table: "session", nth: "nth_by_day", by: "day, session" },
    Order { table: "session", nth: "nth_by_place", by: "plan, week, number, session" },
];

/// Weeks, in their order.
const WEEKS: Order = Order { table: "week_volume", nth: "nth", by: "week" };

fn key_of(set: &DoneSet) -> Vec<Value> {
    let SetKey { session, set: SetId { entry, set } } = set.key;
    vec![number(session), Value::Integer(entry.0.into()), Value::Integer(set.into())]
}

fn key_in_exercise(set: &DoneSet) -> Vec<Value> {
    let mut key = vec![Value::Text(set.exercise.clone()), Value::Integer(set.day.into())];
    key.extend(key_of(set));
    key
}

/// The keys of a session in each of their orders.
fn keys_of(session: u64, day: i32, [plan, week, place]: [u64; 3]) -> [Vec<Value>; 3] {
    let session = || number(session);
    let place = [plan, week, place].into_iter().map(number).chain([session()]);
    [vec![session()], vec![Value::Integer(day.into()), session()], place.collect()]
}

/// A number of the log, which never goes as far as SQLite's do.
fn number(number: u64) -> Value {
    Value::Integer(i64::try_from(number).unwrap_or(i64::MAX))
}

/// Counts an exercise's sets and records, and keeps the day of the last set.
fn count_exercise(
    connection: &Connection,
    exercise: &str,
    [more_sets, more_records]: [i64; 2],
) -> Result<()> {
    let before = connection
        .prepare_cached("DELETE FROM exercise WHERE exercise = ?1 RETURNING sets, records, sum")?
        .query_row([exercise], |row| Ok((row.get(0)?, row.get(1)?, row.get::<_, u32>(2)?)))
        .optional()?;
    let (sets, records) = before.map_or((0_i64, 0_i64), |(sets, records, _)| (sets, records));
    let (sets, records) = (sets + more_sets, records + more_records);
    let mut sum = None;
    if sets > 0 || records > 0 {
        let day = connection
            .prepare_cached(
                "SELECT day FROM done_set WHERE exercise = ?1 ORDER BY day DESC LIMIT 1",
            )?
            .query_row([exercise], |row| row.get::<_, i32>(0))
            .optional()?;
        sum = Some(write_exercise(connection, exercise, [sets, records], day.unwrap_or(0))?);
    }
    total::changed(connection, "exercise", before.map(|(_, _, sum)| sum), sum)
}

/// Writes an exercise's row: how many sets and records, and the day of the last set.
pub(super) fn write_exercise(
    connection: &Connection,
    exercise: &str,
    [sets, records]: [i64; 2],
    day: i32,
) -> Result<u32> {
    total::put(
        connection,
        "INSERT INTO exercise (exercise, sets, records, day, sum) VALUES (?1, ?2, ?3, ?4, ?5)",
        params![exercise, sets, records, day],
    )
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
    let place = place_of(row);
    let mut nths = [0; 3];
    let keys = keys_of(row.session, row.day, place);
    for ((order, key), nth) in SESSIONS.iter().zip(&keys).zip(&mut nths) {
        *nth = order::make_room(connection, order, key)?;
    }
    let sum = write_session(connection, row, nths)?;
    total::changed(connection, "session", None, Some(sum))?;
    if row.outcome.is_some() {
        sum_week(connection, week_of(row.day))?;
    }
    Ok(())
}

/// Where a session stands in a plan, as its row says it.
pub(super) fn place_of(row: &SessionRow) -> [u64; 3] {
    let place = row.place.as_ref();
    place.map_or([0; 3], |place| [place.plan, place.week.into(), place.session.into()])
}

/// Writes a session's row with its numbers, and answers its digest.
pub(super) fn write_session(
    connection: &Connection,
    row: &SessionRow,
    nths: [u64; 3],
) -> Result<u32> {
    let (place, outcome) = (place_of(row), row.outcome.as_ref());
    let values = params![
        row.session,
        row.day,
        row.title,
        place[0],
        place[1],
        place[2],
        code::word(&row.week_kind)?,
        outcome.map(|outcome| outcome.seconds),
        outcome.map(|outcome| outcome.owed),
        outcome.map(|outcome| outcome.done),
        outcome.map(|outcome| code::volume(&outcome.volume)),
    ];
    let sum = digest::of(values)?;
    let sql = format!(
        "INSERT INTO session ({}, sum, nth, nth_by_day, nth_by_place)
         VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11, ?12, ?13, ?14, ?15)",
        code::SESSION
    );
    let [nth, by_day, by_place] = &nths;
    digest::execute(connection, &sql, values, &[&sum, nth, by_day, by_place])?;
    Ok(sum)
}

fn remove_session(connection: &Connection, session: u64) -> Result<()> {
    let removed = connection
        .prepare_cached(
            "DELETE FROM session WHERE session = ?1
             RETURNING day, volume IS NOT NULL, sum, plan, week, number",
        )?
        .query_row([session], |row| {
            let place = [row.get(3)?, row.get(4)?, row.get(5)?];
            Ok((row.get(0)?, row.get(1)?, row.get::<_, u32>(2)?, place))
        })
        .optional()?;
    let Some((day, ended, sum, place)) = removed else { return Ok(()) };
    total::changed(connection, "session", Some(sum), None)?;
    for (order, key) in SESSIONS.iter().zip(&keys_of(session, day, place)) {
        order::close_up(connection, order, key)?;
    }
    if ended { sum_week(connection, week_of(day)) } else { Ok(()) }
}

/// Sums the volume of a week's sessions.
pub(super) fn volume_of(connection: &Connection, week: Week) -> Result<Vec<MuscleTally>> {
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
    Ok(sum.into_iter().map(|(muscle, tally)| MuscleTally { muscle, tally }).collect())
}

/// Brings a week's row to what its sessions come to.
fn sum_week(connection: &Connection, week: Week) -> Result<()> {
    let sum = volume_of(connection, week)?;
    let key = [Value::Integer(week.into())];
    let before = connection
        .prepare_cached("DELETE FROM week_volume WHERE week = ?1 RETURNING sum")?
        .query_row([week], |row| row.get(0))
        .optional()?;
    if before.is_some() {
        order::close_up(connection, &WEEKS, &key)?;
    }
    let mut after = None;
    if !sum.is_empty() {
        let nth = order::make_room(connection, &WEEKS, &key)?;
        after = Some(write_week(connection, week, &sum, nth)?);
    }
    total::changed(connection, "week_volume", before, after)
}

/// Writes a week's row with its number, and answers its digest.
pub(super) fn write_week(
    connection: &Connection,
    week: Week,
    volume: &[MuscleTally],
    nth: u64,
) -> Result<u32> {
    let values = params![week, code::volume(volume)];
    let sum = digest::of(values)?;
    let sql = "INSERT INTO week_volume (week, volume, sum, nth) VALUES (?1, ?2, ?3, ?4)";
    digest::execute(connection, sql, values, &[&sum, &nth])?;
    Ok(sum)
}

/// Gives a claim its place where it beats the record that stands.
fn offer(connection: &Connection, claim: &Record) -> Result<()> {
    let (apart, measure) = (code::json(&claim.apart)?, code::json(&claim.measure)?);
    let standing = connection
        .prepare_cached(
            "SELECT value, session, entry, number, day, sum FROM record
             WHERE exercise = ?1 AND apart = ?2 AND measure = ?3",
        )?
        .query_row(params![claim.exercise, apart, measure], |row| {
            let (value, set, day) = (row.get(0)?, code::key(row, 1)?, row.get(4)?);
            Ok((Record { value, set, day, ..claim.clone() }, row.get::<_, u32>(5)?))
        })
        .optional()?;
    if standing.as_ref().is_some_and(|(standing, _)| !claim.beats(standing)) {
        return Ok(());
    }
    let sum = write_record(connection, claim)?;
    if standing.is_none() {
        count_exercise(connection, &claim.exercise, [0, 1])?;
    }
    total::changed(connection, "record", standing.map(|(_, sum)| sum), Some(sum))
}

/// Writes a record's row, and answers its digest.
pub(super) fn write_record(connection: &Connection, record: &Record) -> Result<u32> {
    let SetKey { session, set: SetId { entry, set } } = record.set;
    total::put(
        connection,
        "INSERT OR REPLACE INTO record
         (exercise, apart, measure, value, session, entry, number, day, sum)
         VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9)",
        params![
            record.exercise,
            code::json(&record.apart)?,
            code::json(&record.measure)?,
            record.value,
            session,
            entry.0,
            set,
            record.day
        ],
    )
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
    let fewer = -i64::try_from(lost.len()).unwrap_or(i64::MAX);
    count_exercise(connection, &before.exercise, [0, fewer])?;
    let mut best: Vec<Record> = Vec::new();
    each_set_of(connection, &before.exercise, |set| {
        for claim in claims(&set) {
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
        Ok(())
    })?;
    best.iter().try_for_each(|claim| offer(connection, claim))
}

/// Reads the sets of an exercise, in no order.
pub(super) fn each_set_of(
    connection: &Connection,
    exercise: &str,
    mut take: impl FnMut(DoneSet) -> Result<()>,
) -> Result<()> {
    let sql = format!(
        "SELECT {}, sum, nth, nth_of_exercise FROM done_set WHERE exercise = ?1",
        code::SET
    );
    let mut statement = connection.prepare_cached(&sql)?;
    for set in statement.query_map([exercise], code::numbered)? {
        take(set?.set)?;
    }
    Ok(())
}
