//! Values of the domain as columns, and back.

use barwright_domain::call::Amount;
use barwright_domain::catalogue::Muscle;
use barwright_domain::history::{
    DonePart, DoneSet, MuscleTally, Outcome, SessionRow, SetKey, Turn,
};
use barwright_domain::quantity::{Distance, Mass, Reserve, Seconds};
use barwright_domain::session::{EntryId, PlanPlace, SetId};
use barwright_domain::volume::{Count, Sides, Tally};
use rusqlite::types::{Type, ValueRef};
use rusqlite::{Error, Result, Row};
use serde::de::DeserializeOwned;
use serde::{Deserialize, Serialize};

use crate::digest;

/// A value as JSON.
pub(super) fn json<T: Serialize>(value: &T) -> Result<String> {
    serde_json::to_string(value).map_err(|error| Error::ToSqlConversionFailure(error.into()))
}

/// As [`json`]; nothing for an empty list.
pub(super) fn list<T: Serialize>(values: &[T]) -> Result<Option<String>> {
    if values.is_empty() { Ok(None) } else { json(&values).map(Some) }
}

/// An enumeration's name, without quotes.
pub(super) fn word<T: Serialize>(value: &T) -> Result<String> {
    json(value).map(|text| text.trim_matches('"').to_owned())
}

fn unreadable(error: impl Into<Box<dyn std::error::Error + Send + Sync>>) -> Error {
    Error::FromSqlConversionFailure(0, Type::Text, error.into())
}

pub(super) fn from_json<T: DeserializeOwned>(text: &str) -> Result<T> {
    serde_json::from_str(text).map_err(unreadable)
}

fn from_word<T: DeserializeOwned>(text: &str) -> Result<T> {
    let text = serde::de::value::StrDeserializer::<serde::de::value::Error>::new(text);
    T::deserialize(text).map_err(unreadable)
}

fn from_list<T: DeserializeOwned>(text: Option<String>) -> Result<Vec<T>> {
    text.map_or(Ok(Vec::new()), |text| from_json(&text))
}

/// An amount as the three columns `reps`, `seconds`, `mm`, of which one holds it.
pub(super) fn amount(amount: Amount) -> [Option<u32>; 3] {
    match amount {
        Amount::Reps(reps) => [Some(reps.into()), None, None],
        Amount::Seconds(seconds) => [None, Some(seconds.count()), None],
        Amount::Metres(distance) => [None, None, Some(distance.millimetres())],
    }
}

/// Columns of a set that its digest stands for, as [`set`] takes them and as they are written; the
/// digest and the two numbers follow them.
pub(super) const SET: &str = "session, entry, number, day, exercise, kind, \"row\", round, side, \
     asked, target, meant_ng, figure_ng, counting, moved_ng, bands, technique, set_up, kit, \
     reps, seconds, mm, parts, left_halves, helped, ending";

/// How many those are.
pub(super) const SET_COLUMNS: usize = 26;

/// A set with its numbers.
#[derive(Debug)]
pub(super) struct Numbered {
    pub(super) set: DoneSet,
    pub(super) sum: u32,
    /// Among all sets.
    pub(super) nth: u64,
    /// Among those of its exercise.
    pub(super) nth_of_exercise: u64,
}

/// Reads a row of [`SET`] with `sum`, `nth` and `nth_of_exercise` behind it.
pub(super) fn numbered(row: &Row<'_>) -> Result<Numbered> {
    let sum = row.get(SET_COLUMNS)?;
    if digest::of_row(row, SET_COLUMNS)? != sum {
        return Err(digest::mismatch("a set"));
    }
    let (nth, nth_of_exercise) = (row.get(SET_COLUMNS + 1)?, row.get(SET_COLUMNS + 2)?);
    Ok(Numbered { set: set(row)?, sum, nth, nth_of_exercise })
}

/// Reads a row of [`SET`].
fn set(row: &Row<'_>) -> Result<DoneSet> {
    let mass = |at| row.get::<_, Option<i64>>(at).map(|ng| ng.map(Mass::from_nanograms));
    let text = |at| row.get_ref(at)?.as_str().map_err(unreadable);
    let figure = mass(12)?;
    let parts = match row.get::<_, Option<String>>(22)? {
        Some(parts) => from_json(&parts)?,
        None => {
            let amount = match (row.get(19)?, row.get(20)?, row.get(21)?) {
                (Some(reps), None, None) => Amount::Reps(reps),
                (None, Some(seconds), None) => Amount::Seconds(Seconds::new(seconds)),
                (None, None, Some(mm)) => Amount::Metres(Distance::from_millimetres(mm)),
                _ => return Err(unreadable("an amount in one of three columns")),
            };
            vec![DonePart { amount, figure, slowing: None }]
        }
    };
    let left = match row.get::<_, Option<u8>>(23)? {
        Some(halves) => {
            Some(Reserve::from_halves(halves).ok_or_else(|| unreadable("a reserve in range"))?)
        }
        None => None,
    };
    Ok(DoneSet {
        key: key(row, 0)?,
        day: row.get(3)?,
        exercise: row.get(4)?,
        kind: from_word(text(5)?)?,
        row: row.get(6)?,
        round: row.get(7)?,
        side: row.get::<_, Option<String>>(8)?.map(|side| from_word(&side)).transpose()?,
        asked: from_json(text(9)?)?,
        target: row.get::<_, Option<String>>(10)?.map(|text| from_json(&text)).transpose()?,
        meant: mass(11)?,
        figure,
        counting: from_word(text(13)?)?,
        moved: mass(14)?,
        bands: row.get(15)?,
        technique: row.get(16)?,
        set_up: from_list(row.get(17)?)?,
        kit: from_list(row.get(18)?)?,
        parts,
        left,
        helped: row.get(24)?,
        ending: from_word(text(25)?)?,
    })
}

/// Reads the three columns of a set's name.
pub(super) fn key(row: &Row<'_>, at: usize) -> Result<SetKey> {
    let entry = EntryId(row.get(at + 1)?);
    Ok(SetKey { session: row.get(at)?, set: SetId { entry, set: row.get(at + 2)? } })
}

/// Columns of a session that its digest stands for, as [`session`] takes them and as they are
/// written; the digest follows them.
pub(super) const SESSION: &str =
    "session, day, title, plan, week, number, week_kind, seconds, owed, done, volume";

/// How many those are.
const SESSION_COLUMNS: usize = 11;

/// Reads a row of [`SESSION`] with `sum` and one of its numbers behind it, as a calendar asks for it:
/// the counts of muscles are held against the digest with the rest, and not taken apart.
pub(super) fn turn(row: &Row<'_>) -> Result<(Turn, u64)> {
    if digest::of_row(row, SESSION_COLUMNS)? != row.get::<_, u32>(SESSION_COLUMNS)? {
        return Err(digest::mismatch("a session"));
    }
    let place = match row.get::<_, u64>(3)? {
        0 => None,
        plan => Some(PlanPlace { plan, week: row.get(4)?, session: row.get(5)? }),
    };
    let over = row.get_ref(10)? != ValueRef::Null;
    let turn = Turn { session: row.get(0)?, day: row.get(1)?, title: row.get(2)?, place, over };
    Ok((turn, row.get(SESSION_COLUMNS + 1)?))
}

/// Reads a row of [`SESSION`] with `sum` and one of its numbers behind it.
pub(super) fn session(row: &Row<'_>) -> Result<(SessionRow, u64)> {
    let (Turn { session, day, title, place, .. }, nth) = turn(row)?;
    let outcome = match row.get::<_, Option<String>>(10)? {
        Some(tallies) => Some(Outcome {
            seconds: row.get(7)?,
            owed: row.get(8)?,
            done: row.get(9)?,
            volume: from_volume(&tallies)?,
        }),
        None => None,
    };
    let week_kind = from_word(row.get_ref(6)?.as_str().map_err(unreadable)?)?;
    Ok((SessionRow { session, day, title, place, week_kind, outcome }, nth))
}

/// Tallies as text: a muscle and eight counts, for sets of six repetitions and more and then for
/// those under six, each left direct, left indirect, right direct, right indirect.
pub(super) fn volume(tallies: &[MuscleTally]) -> String {
    let rows = tallies.iter().map(|MuscleTally { muscle, tally }| {
        let counts = [tally.sets, tally.under_six].map(|Sides { left, right }| {
            format!("{} {} {} {}", left.direct, left.indirect, right.direct, right.indirect)
        });
        format!("{} {}", muscle.slug(), counts.join(" "))
    });
    rows.collect::<Vec<_>>().join(";")
}

/// Reads tallies from text.
pub(super) fn from_volume(text: &str) -> Result<Vec<MuscleTally>> {
    let rows = text.split(';').filter(|row| !row.is_empty());
    rows.map(|row| tally(row).ok_or_else(|| unreadable("tallies of muscles"))).collect()
}

fn tally(text: &str) -> Option<MuscleTally> {
    let mut words = text.split(' ');
    let muscle = Muscle::deserialize(
        serde::de::value::StrDeserializer::<serde::de::value::Error>::new(words.next()?),
    )
    .ok()?;
    let mut count = || words.next()?.parse::<u32>().ok();
    let mut counts = || Some(Count { direct: count()?, indirect: count()? });
    let mut sides = || Some(Sides { left: counts()?, right: counts()? });
    let tally = Tally { sets: sides()?, under_six: sides()? };
    words.next().is_none().then_some(MuscleTally { muscle, tally })
}
