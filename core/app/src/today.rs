//! What is on: the session whose turn it is, its sheet, and what the next ones will be.

use std::collections::BTreeMap;
use std::sync::Arc;

use barwright_domain::catalogue::Muscle;
use barwright_domain::desk::{self, At, Calendar, Desk, DeskEvent, MaxFact, TrainedAt};
use barwright_domain::equipment::Equipment;
use barwright_domain::history::{DoneSet, Record, session_volume};
use barwright_domain::plan::Plan;
use barwright_domain::prescribe::{
    self, ENOUGH_PAST, LeftOut, Lifter, MOST_PAST, MovedLoad, Need, Past, Prescribed, RECENT_DAYS,
    Source,
};
use barwright_domain::session::{Command, Entry, EntryId, PlanPlace, Reading, Run, Sheet};
use barwright_domain::volume::Tally;
use barwright_store::StoreError;

use crate::contract::{EngineError, RefusalCode};
use crate::engine::Core;
use crate::phrase::en;

/// A session of the adopted plan, both counted from 0.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) struct Place {
    pub(crate) week: usize,
    pub(crate) session: usize,
}

impl Place {
    /// Its name as a row: "2.1", both from 1.
    pub(crate) fn name(self) -> String {
        format!("{}.{}", self.week + 1, self.session + 1)
    }

    /// The place of a row's name.
    pub(crate) fn of_name(name: &str) -> Option<Self> {
        let (week, session) = name.split_once('.')?;
        let from_one = |text: &str| text.parse::<usize>().ok()?.checked_sub(1);
        Some(Self { week: from_one(week)?, session: from_one(session)? })
    }

    /// A place of the calendar.
    pub(crate) fn of_at(at: At) -> Option<Self> {
        Some(Self {
            week: usize::from(at.week).checked_sub(1)?,
            session: usize::from(at.session).checked_sub(1)?,
        })
    }

    /// As the calendar names it.
    pub(crate) fn at(self) -> Option<At> {
        Some(At {
            week: u16::try_from(self.week + 1).ok()?,
            session: u16::try_from(self.session + 1).ok()?,
        })
    }

    fn of_plan(place: &PlanPlace) -> Option<Self> {
        Self::of_at(At { week: place.week, session: place.session })
    }
}

/// The places of the adopted plan, in order.
pub(crate) fn places(core: &Core) -> Vec<Place> {
    let Some(plan) = &core.plan else { return Vec::new() };
    (0..plan.weeks.len())
        .flat_map(|week| {
            (0..plan.sessions_of(week).len()).map(move |session| Place { week, session })
        })
        .collect()
}

/// The calendar of the adopted plan.
pub(crate) fn calendar(core: &Core) -> Result<Calendar, EngineError> {
    match (&core.desk.plan, &core.plan) {
        (Some(adopted), Some(plan)) => calendar_of(core, adopted.seq, adopted.day, plan),
        _ => Ok(Calendar::default()),
    }
}

/// The calendar of a plan that is on, or was.
pub(crate) fn calendar_of(
    core: &Core,
    seq: u64,
    day: i32,
    plan: &Plan,
) -> Result<Calendar, EngineError> {
    let mut store = core.store.borrow_mut();
    let mut rows = store
        .history()
        .and_then(|history| history.sessions_of_plan(seq, 0..=u16::MAX))
        .map_err(|error| en::storage::error(&error))?;
    rows.sort_by_key(|row| row.session);
    let trained: Vec<TrainedAt> = rows
        .into_iter()
        .filter(|row| row.outcome.is_some())
        .filter_map(|row| {
            let place = row.place.as_ref()?;
            let at = At { week: place.week, session: place.session };
            Some(TrainedAt { at, day: row.day, session: row.session })
        })
        .collect();
    let arranged = core.desk.arranged.get(&seq).cloned().unwrap_or_default();
    Ok(desk::calendar(plan, day, &arranged, &trained))
}

/// The session whose turn it is.
pub(crate) fn next_place(core: &Core) -> Result<Option<Place>, EngineError> {
    Ok(calendar(core)?.next.and_then(Place::of_at))
}

/// The sessions whose work is done with that of a place.
fn joined(core: &Core, place: Place) -> Vec<Place> {
    let arranged = core.desk.arranged();
    let to = |(at, other, _): &(At, At, u64)| {
        Place::of_at(*at).filter(|_| Place::of_at(*other) == Some(place))
    };
    arranged.with.iter().filter_map(to).collect()
}

/// Of a session and those joined to it, the one whose exercise it is.
fn place_with(core: &Core, plan: &Plan, place: Place, exercise: &str) -> Place {
    let joined = joined(core, place);
    if joined.is_empty() {
        return place;
    }
    std::iter::once(place)
        .chain(joined)
        .find(|place| exercises_of(plan, *place).iter().any(|one| one == exercise))
        .unwrap_or(place)
}

/// The place of a row's name, or the session whose turn it is.
pub(crate) fn place(core: &Core, session: Option<&str>) -> Result<Place, EngineError> {
    if core.plan.is_none() {
        return Err(en::refusal::coded(RefusalCode::NothingToGoBy));
    }
    match session {
        Some(name) => Place::of_name(name)
            .filter(|place| places(core).contains(place))
            .ok_or_else(|| en::refusal::coded(RefusalCode::NotHere)),
        None => next_place(core)?.ok_or_else(en::refusal::plan_is_over),
    }
}

/// What today's sheet is, and what was left out or is missing for it.
pub(crate) struct Today {
    pub(crate) sheet: Sheet,
    pub(crate) needs: Vec<Need>,
    pub(crate) left_out: Vec<LeftOut>,
}

/// The sheet of a session, cut to the minutes there are.
pub(crate) fn sheet(
    core: &Core,
    place: Place,
    minutes: Option<u32>,
    at: &Reading,
) -> Result<Today, EngineError> {
    let gym = core.gym();
    let plan = the_plan(core)?;
    let mut prescribed: Option<Prescribed> = None;
    for place in std::iter::once(place).chain(joined(core, place)) {
        let source = source(core, &plan, &gym, place);
        let lifter = lifter(core, &exercises_of(&plan, place), at, None)?;
        let Some(more) = prescribe::sheet(source, &lifter) else { continue };
        match &mut prescribed {
            None => prescribed = Some(more),
            Some(all) => all.join(more),
        }
    }
    let prescribed = prescribed.ok_or_else(|| en::refusal::coded(RefusalCode::NotHere))?;
    let (sheet, left_out) = match minutes {
        Some(minutes) => prescribe::fit_minutes(&prescribed.sheet, minutes),
        None => (prescribed.sheet, Vec::new()),
    };
    Ok(Today { sheet, needs: prescribed.needs, left_out })
}

/// The command that begins a session.
pub(crate) fn begin(
    core: &Core,
    session: Option<&str>,
    minutes: Option<u32>,
    at: &Reading,
) -> Result<Command, EngineError> {
    let today = sheet(core, place(core, session)?, minutes, at)?;
    Ok(Command::Begin {
        sheet: today.sheet,
        equipment: core.gym(),
        body_mass: core.desk.body_mass.map(|(mass, _)| mass),
    })
}

/// The sheet's entry for another exercise in the place of one.
pub(crate) fn substitute(
    core: &Core,
    entry: EntryId,
    exercise: &str,
    at: &Reading,
) -> Result<Entry, EngineError> {
    let not_here = || en::refusal::coded(RefusalCode::NotHere);
    let run = core.state.running().ok_or_else(not_here)?;
    let old = run.entries.get(&entry).ok_or_else(not_here)?;
    let plan = the_plan(core)?;
    let place = run.sheet.place.as_ref().and_then(Place::of_plan).ok_or_else(not_here)?;
    let lifter = lifter(core, &[exercise.to_owned()], at, Some(run.session))?;
    // What was swapped in may be swapped again: the plan knows the first.
    let first = old.entry.stands_in_for.as_deref().unwrap_or(&old.entry.exercise);
    let source = source(core, &plan, &run.equipment, place_with(core, &plan, place, first));
    prescribe::substitute(source, &lifter, first, exercise).ok_or_else(not_here)
}

/// What an exercise will be next time.
pub(crate) struct NextTime {
    pub(crate) exercise: String,
    pub(crate) name: String,
    pub(crate) entry: Entry,
}

/// What the exercises of a session will be the next time the plan has them.
pub(crate) fn next_times(
    core: &Core,
    run: &Run,
    at: &Reading,
) -> Result<Vec<NextTime>, EngineError> {
    let (Some(plan), Some(place)) =
        (core.plan.clone(), run.sheet.place.as_ref().and_then(Place::of_plan))
    else {
        return Ok(Vec::new());
    };
    if run.sheet.place.as_ref().map(|place| place.plan) != core.desk.plan.as_ref().map(|p| p.seq) {
        return Ok(Vec::new());
    }
    let slugs: Vec<String> = run
        .in_order()
        .filter(|(_, _, entry)| entry.sets.iter().any(|set| set.begun() && set.call.round > 0))
        .map(|(_, _, entry)| entry.entry.exercise.clone())
        .collect();
    let mut lifter = lifter(core, &slugs, at, None)?;
    settle(&mut lifter.desk, core, run);
    // What it will be is asked as of the next time, not of today.
    lifter.last_day = None;
    Ok(slugs
        .into_iter()
        .filter_map(|exercise| {
            let place = place_with(core, &plan, place, &exercise);
            let source = source(core, &plan, &run.equipment, place);
            let entry = prescribe::next_time(source, &lifter, &exercise)?;
            Some(NextTime { name: entry.name.clone(), exercise, entry })
        })
        .collect())
}

/// A reference max that a session changes, with what that moves.
pub(crate) struct MaxMoved {
    pub(crate) exercise: String,
    pub(crate) name: String,
    pub(crate) before: Option<MaxFact>,
    pub(crate) after: MaxFact,
    /// Loads of the sessions to come; of the plan done again where nothing of it is left.
    pub(crate) loads: Vec<MovedLoad>,
    pub(crate) again: bool,
}

/// The maxes that a session changes, and the loads that they move.
pub(crate) fn maxes_moved(
    core: &Core,
    run: &Run,
    at: &Reading,
) -> Result<Vec<MaxMoved>, EngineError> {
    let plan_of_run = run.sheet.place.as_ref().map(|place| place.plan);
    let on = core.desk.plan.as_ref().map(|plan| plan.seq);
    let place = run.sheet.place.as_ref().and_then(Place::of_plan);
    let (Some(plan), Some(place)) = (core.plan.clone(), place.filter(|_| plan_of_run == on)) else {
        return Ok(Vec::new());
    };
    let source = source(core, &plan, &run.equipment, place);
    let mut moved = Vec::new();
    for event in core.maxes_changed(run) {
        let DeskEvent::MaxKept { exercise, fact } = event else { continue };
        let slugs = prescribe::taking_from(source, &exercise);
        let mut after = lifter(core, &slugs, at, None)?;
        settle(&mut after.desk, core, run);
        after.last_day = None;
        let mut before = after.clone();
        before.desk.maxes.clone_from(&core.desk.maxes);
        let to_come = prescribe::moved_loads(source, &exercise, &before, &after, false);
        let again = to_come.is_empty();
        let loads = if again {
            prescribe::moved_loads(source, &exercise, &before, &after, true)
        } else {
            to_come
        };
        moved.push(MaxMoved {
            name: core
                .catalogue
                .get(&exercise)
                .map_or_else(|| exercise.clone(), |found| found.name.to_string()),
            before: core.desk.max_on(&exercise, fact.day).cloned(),
            exercise,
            after: fact,
            loads,
            again,
        });
    }
    Ok(moved)
}

/// The desk as it stands with what the last session leaves behind.
pub(crate) fn desk_now(core: &Core) -> Desk {
    let mut desk = core.desk.clone();
    if let Some(run) = core.state.run().filter(|run| run.finished.is_some()) {
        settle(&mut desk, core, run);
    }
    desk
}

fn the_plan(core: &Core) -> Result<Arc<Plan>, EngineError> {
    core.plan.clone().ok_or_else(|| en::refusal::coded(RefusalCode::NothingToGoBy))
}

fn source<'a>(core: &'a Core, plan: &'a Plan, gym: &'a Equipment, place: Place) -> Source<'a> {
    Source {
        plan,
        adopted: core.desk.plan.as_ref().map(|adopted| adopted.seq),
        week: place.week,
        index: place.session,
        catalogue: &core.catalogue,
        equipment: gym,
    }
}

/// The exercises of a session, by slug.
fn exercises_of(plan: &Plan, place: Place) -> Vec<String> {
    plan.session(place.week, place.session)
        .map(|session| session.exercises.into_iter().map(|entry| entry.exercise).collect())
        .unwrap_or_default()
}

/// What the session leaves behind for the next one: set-ups, what was held back, and maxes.
fn settle(desk: &mut Desk, core: &Core, run: &Run) {
    desk.settle(run);
    for event in core.maxes_changed(run) {
        desk.apply(0, &event);
    }
}

/// The lifter as the sheet sees them: the desk with what the last session leaves behind, and what
/// was done of these exercises before a session.
fn lifter(
    core: &Core,
    exercises: &[String],
    at: &Reading,
    before: Option<u64>,
) -> Result<Lifter, EngineError> {
    let desk = desk_now(core);
    let mut store = core.store.borrow_mut();
    let failed = |error: StoreError| en::storage::error(&error);
    let history = store.history().map_err(failed)?;
    let last_day =
        history.last_sessions(before, 1).map_err(failed)?.first().map(|session| session.day);
    let today = at.local_day();
    let since = history.first_since(today.saturating_sub(RECENT_DAYS)).map_err(failed)?;
    let mut past = BTreeMap::new();
    for exercise in exercises {
        let sets = history
            .recent_sets_of(exercise, before, [ENOUGH_PAST, MOST_PAST], since)
            .map_err(failed)?;
        let mut sessions: Vec<Past> = Vec::new();
        let mut of = None;
        for set in sets {
            if of != Some(set.key.session) {
                of = Some(set.key.session);
                let row = history.session(set.key.session).map_err(failed)?;
                let place = row.as_ref().and_then(|row| row.place.clone());
                sessions.push(Past {
                    day: set.day,
                    place: place.map(|place| own_place(core, place, exercise)),
                    week_kind: row.map(|row| row.week_kind).unwrap_or_default(),
                    sets: Vec::new(),
                });
            }
            if let Some(session) = sessions.last_mut() {
                session.sets.push(set);
            }
        }
        past.insert(exercise.clone(), sessions);
    }
    Ok(Lifter { desk, today, last_day, past })
}

/// Where the plan has an exercise that was done at a place: there, or in the session joined to it.
fn own_place(core: &Core, place: PlanPlace, exercise: &str) -> PlanPlace {
    let here = core.desk.plan.as_ref().is_some_and(|adopted| adopted.seq == place.plan);
    let (Some(plan), Some(at), true) = (&core.plan, Place::of_plan(&place), here) else {
        return place;
    };
    match place_with(core, plan, at, exercise).at() {
        Some(At { week, session }) => PlanPlace { week, session, ..place },
        None => place,
    }
}

/// Hard sets done in a run of the adopted plan's weeks, week by week, the running session's among
/// them.
pub(crate) fn done_volume(
    core: &Core,
    weeks: std::ops::RangeInclusive<usize>,
) -> Result<BTreeMap<usize, BTreeMap<Muscle, Tally>>, EngineError> {
    let mut done: BTreeMap<usize, BTreeMap<Muscle, Tally>> = BTreeMap::new();
    let (Some(adopted), Some(plan)) = (&core.desk.plan, &core.plan) else { return Ok(done) };
    let from_one = |week: &usize| u16::try_from(week + 1).unwrap_or(u16::MAX);
    let mut store = core.store.borrow_mut();
    let failed = |error: StoreError| en::storage::error(&error);
    let history = store.history().map_err(failed)?;
    let sessions = history
        .sessions_of_plan(adopted.seq, from_one(weeks.start())..=from_one(weeks.end()))
        .map_err(failed)?;
    for session in sessions {
        let volume = match session.outcome {
            Some(outcome) => outcome.volume,
            None => {
                let sets = history.sets_in(session.session).map_err(failed)?;
                session_volume(&sets, &core.catalogue, plan.hard_at_left)
            }
        };
        let Some(place) = session.place.as_ref().and_then(Place::of_plan) else { continue };
        let week = done.entry(place.week).or_default();
        for row in volume {
            let sum = week.entry(row.muscle).or_default();
            *sum = sum.and(row.tally);
        }
    }
    Ok(done)
}

/// Past sets of an exercise, a page of its sessions, the newest session first.
pub(crate) fn past_sets(
    core: &Core,
    exercise: &str,
    sessions: u32,
) -> Result<Vec<DoneSet>, EngineError> {
    let mut store = core.store.borrow_mut();
    store
        .history()
        .and_then(|history| history.sets_of(exercise, None, sessions))
        .map_err(|error| en::storage::error(&error))
}

/// The records of an exercise.
pub(crate) fn records(core: &Core, exercise: &str) -> Result<Vec<Record>, EngineError> {
    let mut store = core.store.borrow_mut();
    store
        .history()
        .and_then(|history| history.records(exercise))
        .map_err(|error| en::storage::error(&error))
}

/// The exercises that have a history, by slug, each with the day it was last done.
pub(crate) fn exercises_done(core: &Core) -> Result<Vec<(String, i32)>, EngineError> {
    let mut store = core.store.borrow_mut();
    store
        .history()
        .and_then(|history| history.exercises_done())
        .map_err(|error| en::storage::error(&error))
}
