//! One exercise over time: loads, estimates with their range, records.

use barwright_domain::catalogue::Exercise;
use barwright_domain::history::DoneSet;
use barwright_domain::progress::estimate::{Estimate, Formula, is_estimated};
use barwright_domain::progress::reference;
use barwright_domain::quantity::{Mass, MassUnit, Numerals, Reserve};
use barwright_domain::session::Reading;

use super::chart;
use super::key::shows;
use super::row::{aloud, row};
use crate::contract::{EngineError, Key, LiftScreen, Look, RefusalCode, Row};
use crate::engine::Core;
use crate::phrase::en::{self, date, words};
use crate::today;

/// Sessions on a page.
const PAGE: usize = 20;
/// Sessions that the chart goes back over: some years of one lift.
const CHARTED: u32 = 400;

/// An exercise by slug or name.
pub(super) fn screen(
    core: &Core,
    exercise: &str,
    page: u32,
    at: &Reading,
) -> Result<LiftScreen, EngineError> {
    let named = if exercise.is_empty() { at_hand(core)? } else { exercise.to_owned() };
    let found =
        core.catalogue.find(&named).ok_or_else(|| en::refusal::coded(RefusalCode::NotHere))?;
    let numerals = core.locale.numerals;
    let unit = core.gym().unit;
    let sets = today::past_sets(core, &found.slug, CHARTED)?;
    let sessions: Vec<&[DoneSet]> =
        sets.chunk_by(|one, other| one.key.session == other.key.session).collect();
    let days: Vec<Day> = sessions.iter().rev().map(|sets| Day::of(sets, found)).collect();
    let first = usize::try_from(page).unwrap_or(usize::MAX).saturating_mul(PAGE);
    let rows: Vec<Row> = sessions
        .iter()
        .skip(first)
        .take(PAGE)
        .map(|sets| session_row(sets, found, unit, numerals))
        .collect();
    let records: Vec<Row> = today::records(core, &found.slug)?
        .iter()
        .enumerate()
        .map(|(at, record)| {
            row(format!("record-{at}"), 1, en::lift::record(record, unit, numerals))
        })
        .collect();
    let max = core.desk.max_on(&found.slug, at.local_day());
    let subtitle = if is_estimated(found) || max.is_some() {
        en::lift::max(max, unit, numerals)
    } else {
        words::count(sessions.len(), "session", "sessions")
    };
    let spoken = format!("{}. {subtitle}. {}", found.name, aloud(&rows));
    Ok(LiftScreen {
        title: found.name.to_string(),
        subtitle,
        chart: chart::of_lift(&found.name, &days, unit),
        records,
        sessions: rows,
        keys: keys(core, found, page, sessions.len() > first + PAGE)?,
        aloud: spoken,
    })
}

/// The exercise on the floor, else the one done last.
fn at_hand(core: &Core) -> Result<String, EngineError> {
    let run = core.state.running();
    let current = run.and_then(|run| run.entries.get(&run.cursor()?.set.entry));
    if let Some(entry) = current {
        return Ok(entry.entry.exercise.clone());
    }
    let last = today::exercises_done(core)?.into_iter().max_by_key(|(_, day)| *day);
    last.map(|(slug, _)| slug).ok_or_else(|| en::refusal::coded(RefusalCode::NothingToGoBy))
}

/// What a chart shows of one session.
pub(super) struct Day {
    /// Days since 1970-01-01.
    pub(super) day: i32,
    /// The heaviest work load.
    pub(super) figure: Option<Mass>,
    /// The best estimate of the session.
    pub(super) estimate: Option<Estimate>,
}

impl Day {
    fn of(sets: &[DoneSet], exercise: &Exercise) -> Self {
        let work = || sets.iter().filter(|set| set.is_work());
        Self {
            day: sets.first().map_or(0, |set| set.day),
            figure: work().filter_map(|set| set.figure).max(),
            estimate: if is_estimated(exercise) { best(work()) } else { None },
        }
    }
}

fn best<'a>(sets: impl Iterator<Item = &'a DoneSet>) -> Option<Estimate> {
    sets.filter_map(|set| reference::estimate(set, Formula::default()))
        .max_by_key(|estimate| estimate.max)
}

fn session_row(sets: &[DoneSet], exercise: &Exercise, unit: MassUnit, numerals: Numerals) -> Row {
    let work: Vec<&DoneSet> = sets.iter().filter(|set| set.is_work()).collect();
    // Sets at one load stand together: "110 kg: 5, 5, 4".
    let loads: Vec<String> = work
        .chunk_by(|one, other| one.figure == other.figure && one.bands == other.bands)
        .map(|sets| {
            let amounts: Vec<String> =
                sets.iter().map(|set| words::figure(&set.amount(), numerals)).collect();
            let load = sets
                .first()
                .and_then(|set| set.figure)
                .filter(|figure| *figure != Mass::ZERO)
                .map(|figure| format!("{}: ", figure.print(unit, numerals)))
                .unwrap_or_default();
            format!("{load}{}", amounts.join(", "))
        })
        .collect();
    let day = sets.first().map_or(0, |set| set.day);
    let left = work
        .last()
        .and_then(|set| set.left)
        .map(|left: Reserve| format!("{} left", left.print(numerals)));
    let estimate = if is_estimated(exercise) { best(work.iter().copied()) } else { None }
        .map(|estimate| en::lift::estimate(&estimate, unit, numerals));
    let detail: Vec<String> = [left, estimate].into_iter().flatten().collect();
    let session = sets.first().map_or(0, |set| set.key.session);
    row(format!("session-{session}"), 1, format!("{} · {}", date::day(day), loads.join(" · ")))
        .detail(detail.join(" · "))
}

/// Pages, and the other exercises that have a history.
fn keys(core: &Core, exercise: &Exercise, page: u32, more: bool) -> Result<Vec<Key>, EngineError> {
    let look = |exercise: &str, page| Look::Lift { exercise: exercise.to_owned(), page };
    let mut keys = Vec::new();
    if page > 0 {
        keys.push(shows("newer", "Newer", look(&exercise.slug, page - 1)));
    }
    if more {
        keys.push(shows("older", "Older", look(&exercise.slug, page.saturating_add(1))));
    }
    for (slug, _) in today::exercises_done(core)? {
        let name = core.catalogue.get(&slug).map_or(slug.clone(), |found| found.name.to_string());
        keys.push(
            shows(format!("lift-{slug}"), name, look(&slug, 0)).chosen(slug == exercise.slug),
        );
    }
    Ok(keys)
}
