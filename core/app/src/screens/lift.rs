//! One exercise over time: loads, estimates with their range, records.

use barwright_domain::call::Amount;
use barwright_domain::catalogue::Exercise;
use barwright_domain::history::{DoneSet, Measure, Record, most_at_loads};
use barwright_domain::progress::estimate::{Estimate, Formula, is_estimated};
use barwright_domain::progress::reference;
use barwright_domain::quantity::{Mass, MassUnit, Numerals};
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

/// Loads that the most repetitions are listed of, the heaviest.
const LOADS: usize = 12;
/// Names that are offered where none was found.
const NEAR: usize = 5;

/// An exercise by slug or name.
pub(super) fn screen(
    core: &Core,
    exercise: &str,
    page: u32,
    at: &Reading,
) -> Result<LiftScreen, EngineError> {
    let named = if exercise.is_empty() { at_hand(core)? } else { exercise.to_owned() };
    let found = core.catalogue.find(&named).ok_or_else(|| {
        let near = core.catalogue.alike(&named, NEAR);
        let near: Vec<&str> = near.iter().map(|exercise| exercise.name.as_ref()).collect();
        en::refusal::no_exercise(&named, &near)
    })?;
    let say = Say { exercise: found, unit: core.gym().unit, numerals: core.locale.numerals };
    let first = usize::try_from(page).unwrap_or(usize::MAX).saturating_mul(PAGE);
    // A page further back than the chart goes is read as well, and whether one lies behind it.
    let needed = u32::try_from(first.saturating_add(PAGE + 1)).unwrap_or(u32::MAX);
    let sets = today::past_sets(core, &found.slug, CHARTED.max(needed))?;
    let sessions: Vec<&[DoneSet]> =
        sets.chunk_by(|one, other| one.key.session == other.key.session).collect();
    let charted = usize::try_from(CHARTED).unwrap_or(usize::MAX);
    let days: Vec<Day> =
        sessions.iter().take(charted).rev().map(|sets| Day::of(sets, found)).collect();
    let rows: Vec<Row> =
        sessions.iter().skip(first).take(PAGE).map(|sets| session_row(sets, &say)).collect();
    let records = records(&today::records(core, &found.slug)?, &sets, &say);
    let desk = today::desk_now(core);
    let max = desk.max_on(&found.slug, at.local_day());
    let subtitle = if found.main_lift || max.is_some() {
        en::lift::max(max, say.unit, say.numerals)
    } else {
        words::count(sessions.len(), "session", "sessions")
    };
    let spoken = format!("{}. {subtitle}. {}", found.name, aloud(&rows));
    Ok(LiftScreen {
        title: found.name.to_string(),
        subtitle,
        chart: chart::of_lift(&found.name, &days, &say),
        records,
        sessions: rows,
        keys: keys(core, found, page, sessions.len() > first.saturating_add(PAGE))?,
        aloud: spoken,
    })
}

/// What figures are said in.
pub(super) struct Say<'a> {
    pub(super) exercise: &'a Exercise,
    pub(super) unit: MassUnit,
    pub(super) numerals: Numerals,
}

impl Say<'_> {
    /// Whether an estimate is of all that is moved, the body's part in it.
    pub(super) fn moves_body(&self) -> bool {
        self.exercise.body_share.hundredths() > 0
    }
}

/// Records under a heading for each kind: what is worn or done otherwise stands apart.
fn records(records: &[Record], sets: &[DoneSet], say: &Say<'_>) -> Vec<Row> {
    let mut rows = Vec::new();
    let mut group = |id: &str, heading: &str, texts: Vec<String>| {
        if !texts.is_empty() {
            rows.push(row(id, 0, heading));
            let each = texts.into_iter().enumerate();
            rows.extend(each.map(|(at, text)| row(format!("{id}-{at}"), 1, text)));
        }
    };
    let of = |wanted: fn(&Measure) -> bool| -> Vec<&Record> {
        let mut found: Vec<_> =
            records.iter().filter(|one| wanted(&one.measure) && !outdone(one, records)).collect();
        found.sort_by(|one, other| (&one.apart, one.measure).cmp(&(&other.apart, other.measure)));
        found
    };
    let say_each = |found: Vec<&Record>| -> Vec<String> {
        found.into_iter().map(|record| en::lift::record(record, say.unit, say.numerals)).collect()
    };
    let heaviest = of(|measure| matches!(measure, Measure::HeaviestFor(_)));
    group("by-reps", "Heaviest, by repetitions", say_each(heaviest));
    let loads: Vec<String> = most_at_loads(sets)
        .chunk_by(|one, other| one.apart == other.apart)
        .flat_map(|alike| alike.iter().take(LOADS))
        .map(|most| en::lift::most_at(most, say.unit, say.numerals))
        .collect();
    group("by-load", "Most repetitions, by load", loads);
    let open = of(|measure| matches!(measure, Measure::MostReps));
    group("reps", "Most repetitions", say_each(open));
    let held = of(|measure| matches!(measure, Measure::LongestAt(_)));
    group("hold", "Longest hold", say_each(held));
    let carried = of(|measure| matches!(measure, Measure::FarthestAt(_)));
    group("far", "Farthest", say_each(carried));
    rows
}

/// Whether as much or more was lifted for more repetitions: then the fewer say nothing new.
fn outdone(record: &Record, records: &[Record]) -> bool {
    let Measure::HeaviestFor(reps) = record.measure else { return false };
    records.iter().any(|other| {
        matches!(other.measure, Measure::HeaviestFor(more) if more > reps)
            && other.apart == record.apart
            && other.value >= record.value
    })
}

/// The exercise on the floor, else one of those done last: a main lift, if there was any.
fn at_hand(core: &Core) -> Result<String, EngineError> {
    let run = core.state.running();
    let current = run.and_then(|run| run.entries.get(&run.cursor()?.set.entry));
    if let Some(entry) = current {
        return Ok(entry.entry.exercise.clone());
    }
    let main = |slug: &str| core.catalogue.get(slug).is_some_and(|exercise| exercise.main_lift);
    let done = today::exercises_done(core)?.into_iter();
    let last = done.max_by_key(|(slug, day)| (*day, main(slug)));
    last.map(|(slug, _)| slug).ok_or_else(|| en::refusal::coded(RefusalCode::NothingToGoBy))
}

/// What a chart shows of one session.
pub(super) struct Day {
    /// Days since 1970-01-01.
    pub(super) day: i32,
    /// The heaviest work load: all that was moved, where the body's part counts.
    pub(super) figure: Option<Mass>,
    /// The best estimate of the session.
    pub(super) estimate: Option<Estimate>,
    /// The most in one set.
    pub(super) most: Option<Amount>,
}

impl Day {
    fn of(sets: &[DoneSet], exercise: &Exercise) -> Self {
        let work = || sets.iter().filter(|set| set.is_work());
        let body = exercise.body_share.hundredths() > 0;
        let amount = |set: &DoneSet| match set.amount() {
            Amount::Reps(reps) => u32::from(reps),
            Amount::Seconds(seconds) => seconds.count(),
            Amount::Metres(distance) => distance.millimetres(),
        };
        Self {
            day: sets.first().map_or(0, |set| set.day),
            figure: work().filter_map(|set| if body { set.moved } else { set.figure }).max(),
            estimate: if is_estimated(exercise) { best(work()) } else { None },
            most: work().max_by_key(|set| amount(set)).map(DoneSet::amount),
        }
    }
}

fn best<'a>(sets: impl Iterator<Item = &'a DoneSet>) -> Option<Estimate> {
    sets.filter_map(|set| reference::estimate(set, Formula::default()))
        .max_by_key(|estimate| estimate.max)
}

fn session_row(sets: &[DoneSet], say: &Say<'_>) -> Row {
    let work: Vec<&DoneSet> = sets.iter().filter(|set| set.is_work()).collect();
    // Sets at one load stand together: "110 kg: 5, 5, 4".
    let loads: Vec<String> = work
        .chunk_by(|one, other| one.figure == other.figure && one.bands == other.bands)
        .map(|sets| en::lift::sets_at_load(sets, say.unit, say.numerals))
        .collect();
    let day = sets.first().map_or(0, |set| set.day);
    let mut detail: Vec<String> = Vec::new();
    detail.extend(
        work.last()
            .and_then(|set| set.left)
            .map(|left| format!("{} left", left.print(say.numerals))),
    );
    detail.extend(en::lift::ended_otherwise(&work));
    detail.extend(work.first().and_then(|set| en::lift::worn(&set.kit)));
    detail.extend(work.first().and_then(|set| set.technique.clone()));
    let estimate = if is_estimated(say.exercise) { best(work.iter().copied()) } else { None };
    detail.extend(
        estimate.map(|estimate| {
            en::lift::estimate(&estimate, say.moves_body(), say.unit, say.numerals)
        }),
    );
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
