//! Reading a plan: every fault at once.

mod line;
mod own;
mod places;
mod slot;
mod words;

use std::collections::BTreeMap;

use super::bounds;
use super::line::{Rests, Weeks};
use super::model::{
    Accepted, Goal, MaxRule, Plan, Ramp, RampStep, Session, USUAL_WORKING_MAX, WarmUp, Week,
};
use super::rules::{Cut, LayOff, Miss, RaiseMax, USUAL_LAY_OFF, USUAL_MISSES};
use super::shapes;
use crate::call::WeekKind;
use crate::catalogue::{Catalogue, Exercise, find};
use crate::quantity::{Percent, Reserve, Seconds};
use places::SessionPlace;
pub use places::{Place, Places, SlotPlace};

use crate::text::{self, Expected, Fault, Found, Item, Problem, Shape, Table};

/// A plan that was read, and where its parts stand in the text.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PlanFile {
    /// The plan.
    pub plan: Plan,
    /// Where its parts stand.
    pub places: Places,
}

/// The keys that an exercise of one's own may have, in a plan or by itself.
pub static OWN_EXERCISE: &Shape = &shapes::OWN_EXERCISE;

/// Reads an exercise of one's own from a text of its own, with the keys that one has in a plan; it may
/// be like one of `catalogue`.
///
/// # Errors
/// Every fault of the text, in its order.
pub fn read_exercise(text: &str, catalogue: &Catalogue) -> Result<Exercise, Vec<Fault>> {
    text::read(text, &shapes::OWN_EXERCISE, |root| own::exercise(root, &Names::of(catalogue)))
}

impl Plan {
    /// The keys that a plan file may have.
    pub fn shape() -> &'static Shape {
        &shapes::PLAN
    }

    /// Reads a plan; its exercises are looked up in `catalogue` and among its own.
    ///
    /// # Errors
    /// Every fault of the text, in its order.
    pub fn read(text: &str, catalogue: &Catalogue) -> Result<PlanFile, Vec<Fault>> {
        text::read(text, &shapes::PLAN, |root| plan(root, catalogue))
    }

    /// As [`Plan::read`], from bytes that may not even be text.
    ///
    /// # Errors
    /// As [`Plan::read`].
    pub fn read_bytes(bytes: &[u8], catalogue: &Catalogue) -> Result<PlanFile, Vec<Fault>> {
        text::read_bytes(bytes, &shapes::PLAN, |root| plan(root, catalogue))
    }
}

/// Exercises by name, looked up once for the whole plan.
struct Names<'c> {
    catalogue: &'c Catalogue,
    known: BTreeMap<String, &'c Exercise>,
}

impl<'c> Names<'c> {
    fn of(catalogue: &'c Catalogue) -> Self {
        let mut known = BTreeMap::new();
        for exercise in catalogue.iter() {
            for name in exercise.names() {
                known.entry(find::key(name)).or_insert(exercise);
            }
        }
        Self { catalogue, known }
    }

    fn find(&self, name: &str) -> Option<&'c Exercise> {
        self.known.get(&find::key(name)).copied()
    }

    fn exercise(&self, item: &Item<'_>) -> Option<&'c Exercise> {
        item.name("exercise", |name| self.find(name), |name| self.nearest(name))
    }

    /// The slug of an exercise named within a longer text.
    fn slug(&self, item: &Item<'_>, name: &str) -> Option<String> {
        let found = self.find(name).map(|exercise| exercise.slug.to_string());
        if found.is_none() {
            item.unknown_name("exercise", name, |name| self.nearest(name));
        }
        found
    }

    fn nearest(&self, name: &str) -> Option<String> {
        let found = self.catalogue.nearest(name)?;
        Some(found.name_in(self.catalogue.tongue()).to_owned())
    }
}

/// All of them, or none where one could not be read; each is asked, so that each fault is noted.
fn all<T>(items: impl Iterator<Item = Option<T>>) -> Option<Vec<T>> {
    let items: Vec<Option<T>> = items.collect();
    items.into_iter().collect()
}

/// Every item of a list of tables that could be read.
fn tables<T>(
    table: &Table<'_>,
    key: &'static str,
    most: usize,
    shape: &'static Shape,
    mut reader: impl FnMut(&Table<'_>) -> Option<T>,
) -> Vec<T> {
    let list = table.get(key).and_then(|item| item.list(most)).unwrap_or_default();
    list.iter().filter_map(|item| item.table(shape, &mut reader)).collect()
}

fn minutes(table: &Table<'_>) -> Option<u16> {
    let greatest = i64::try_from(bounds::MINUTES).unwrap_or(i64::MAX);
    table.get("minutes").and_then(|item| words::count(&item, 1, greatest))
}

fn name(table: &Table<'_>) -> Option<String> {
    table.need("name").and_then(|item| item.text(bounds::NAME)).map(str::to_string)
}

fn word<T: Copy>(
    table: &Table<'_>,
    key: &'static str,
    words: &'static [&'static str],
    meanings: &[T],
) -> Option<T> {
    let place = table.get(key).and_then(|item| item.word(words))?;
    meanings.get(place).copied()
}

/// Rests: one duration for after each work set, or a table of kinds.
fn rests(table: &Table<'_>) -> Rests {
    let Some(item) = table.get("rest") else { return Rests::default() };
    match item.found() {
        Found::Text => Rests { after_set: item.seconds(), ..Rests::default() },
        Found::Table => item
            .table(&shapes::REST, |rest| {
                let of = |key| rest.get(key).and_then(|item| item.seconds());
                Some(Rests {
                    after_set: of("after_set"),
                    in_set: of("in_set"),
                    between_sides: of("between_sides"),
                    in_superset: of("in_superset"),
                    after_superset: of("after_superset"),
                })
            })
            .unwrap_or_default(),
        _ => {
            item.wrong_type(Expected::Seconds);
            Rests::default()
        }
    }
}

fn warm_up(table: &Table<'_>) -> WarmUp {
    table
        .get("warm_up")
        .and_then(|item| {
            item.table(&shapes::WARM_UP, |warm_up| {
                Some(WarmUp {
                    minutes: minutes(warm_up),
                    ramp: ramp(warm_up),
                    again_after: warm_up.get("again_after").and_then(|item| item.seconds()),
                    slack: warm_up.get("slack").and_then(|item| item.percent()),
                })
            })
        })
        .unwrap_or_default()
}

fn ramp(table: &Table<'_>) -> Option<Ramp> {
    let item = table.get("ramp")?;
    if item.found() != Found::List {
        return match item.word(shapes::RAMPS)? {
            0 => Some(Ramp::None),
            1 => Some(Ramp::Short),
            _ => Some(Ramp::Usual),
        };
    }
    let step = |item: &Item<'_>| {
        item.table(&shapes::RAMP_STEP, |step| {
            let share = step.need("load").and_then(|item| words::ramp_load(&item));
            let reps = step.need("reps").and_then(|item| words::count(&item, 1, 100));
            Some(RampStep { share: share?, reps: reps? })
        })
    };
    all(item.list(bounds::STEPS)?.iter().map(step)).map(Ramp::Steps)
}

fn misses(table: &Table<'_>) -> Option<Vec<Miss>> {
    let list = table.get("misses")?.list(bounds::STEPS)?;
    all(list.iter().map(words::miss))
}

fn weeks(table: &Table<'_>, count: usize) -> Weeks {
    table.get("weeks").and_then(|item| words::weeks(&item, count)).unwrap_or_default()
}

/// The numbers of a lighter week, if any is written; the rest of them from `usual`.
fn cut(table: &Table<'_>, usual: Cut) -> Option<Cut> {
    let sets_off = table.get("sets_off").map(|item| share_off(&item));
    let load_off = table.get("load_off").map(|item| share_off(&item));
    let more_left = table.get("more_left").map(|item| words::count(&item, 0, 10));
    if sets_off.is_none() && load_off.is_none() && more_left.is_none() {
        return None;
    }
    Some(Cut {
        sets_off: sets_off.flatten().unwrap_or(usual.sets_off),
        load_off: load_off.flatten().unwrap_or(usual.load_off),
        more_left: more_left
            .flatten()
            .and_then(|left| u8::try_from(left).ok())
            .unwrap_or(usual.more_left),
    })
}

/// A share that is taken off: 0 to 100 %.
fn share_off(item: &Item<'_>) -> Option<Percent> {
    let percent = item.percent()?;
    if (0..=10_000).contains(&percent.hundredths()) {
        Some(percent)
    } else {
        item.fault(Problem::OutOfRange { least: 0, greatest: 100 });
        None
    }
}

fn plan(root: &Table<'_>, catalogue: &Catalogue) -> Option<PlanFile> {
    let name = name(root);
    let about = root.get("about").and_then(|item| item.text(bounds::ABOUT)).map(str::to_string);
    let most_weeks = i64::try_from(bounds::WEEKS).unwrap_or(i64::MAX);
    let written_weeks = root.need("weeks").and_then(|item| item.whole(1, most_weeks));
    // Where the number of weeks can't be read, nothing that is counted by it is a fault.
    let count = written_weeks.and_then(|count| usize::try_from(count).ok());
    let count_or_most = count.unwrap_or(bounds::WEEKS);

    let exercises = own::exercises(root, catalogue);
    let catalogue = catalogue.clone().with_own(exercises.iter().cloned());
    let names = Names::of(&catalogue);

    let rest = rests(root);
    let deload = lighter(root, "deload", Cut::DELOAD);
    let ease_in = lighter(root, "ease_in", Cut::EASE_IN);
    let mut places = Places { plan: Place::of(root), ..Places::default() };
    let mut weeks = vec![Week::default(); count_or_most];
    let mut numbered: Vec<(u16, usize)> = Vec::new();
    let list = root.get("week").and_then(|item| item.list(bounds::WEEKS)).unwrap_or_default();
    for item in list {
        item.table(&shapes::WEEK, |table| {
            let before = numbered.len();
            week(table, item.line(), &mut weeks, &mut numbered, (deload, ease_in));
            let new = numbered.get(before..).unwrap_or_default();
            let at = |(number, _): &(u16, usize)| usize::from(*number).saturating_sub(1);
            places.weeks.extend(new.iter().map(|week| (at(week), Place::of(table))));
            Some(())
        });
    }

    let mut sessions = Vec::new();
    let list =
        root.need("session").and_then(|item| item.list(bounds::SESSIONS)).unwrap_or_default();
    let mut seen: Vec<(String, usize)> = Vec::new();
    for item in &list {
        let read = item.table(&shapes::SESSION, |table| {
            session(table, (&names, count_or_most, rest), (&mut seen, item.line()))
        });
        if let Some((session, place)) = read {
            sessions.push(session);
            places.sessions.push(place);
        }
    }

    let maxes = tables(root, "max", bounds::NAMES, &shapes::MAX, |table| {
        let lift = table.need("lift").and_then(|item| names.exercise(&item));
        let working = table.get("working").and_then(|item| item.percent());
        let raise = word(table, "raise", shapes::RAISES, &RAISES);
        Some(MaxRule { lift: lift?.slug.to_string(), working, raise })
    });
    let accepted = tables(root, "accept", bounds::ACCEPTED, &shapes::ACCEPT, |table| {
        let text = |item: Option<Item<'_>>, most| {
            item.and_then(|item| item.text(most)).map(str::to_string)
        };
        let check = text(table.need("check"), bounds::NAME);
        let session = text(table.get("session"), bounds::NAME);
        let exercise = table
            .get("exercise")
            .and_then(|item| names.exercise(&item))
            .map(|exercise| exercise.slug.to_string());
        let because = text(table.need("because"), bounds::ABOUT);
        places.accepted.push(Place::of(table));
        Some(Accepted { check: check?, session, exercise, because: because? })
    });
    let plan = Plan {
        goal: word(root, "goal", shapes::GOALS, &GOALS).unwrap_or_default(),
        about,
        weeks,
        minutes: minutes(root),
        rest,
        rest_step: root
            .get("rest_step")
            .and_then(|item| item.seconds())
            .unwrap_or(Seconds::new(20)),
        warm_up: warm_up(root),
        working_max: root
            .get("working_max")
            .and_then(|item| item.percent())
            .unwrap_or(USUAL_WORKING_MAX),
        raise_max: word(root, "raise_max", shapes::RAISES, &RAISES).unwrap_or_default(),
        maxes,
        misses: misses(root).unwrap_or_else(|| USUAL_MISSES.to_vec()),
        lay_off: lay_off(root),
        deload,
        ease_in,
        hard_at_left: hard_at_left(root),
        seconds_a_rep: root
            .get("seconds_a_rep")
            .and_then(|item| item.whole(1, 20))
            .and_then(|seconds| u8::try_from(seconds).ok())
            .unwrap_or(3),
        exercises,
        sessions,
        accepted,
        name: name?,
    };
    count?;
    Some(PlanFile { plan, places })
}

const GOALS: [Goal; 2] = [Goal::Strength, Goal::Size];
const RAISES: [RaiseMax; 3] = [RaiseMax::Never, RaiseMax::Tests, RaiseMax::Estimates];
const KINDS: [WeekKind; 4] =
    [WeekKind::Ordinary, WeekKind::EaseIn, WeekKind::Deload, WeekKind::Test];

fn lighter(root: &Table<'_>, key: &'static str, usual: Cut) -> Cut {
    root.get(key)
        .and_then(|item| item.table(&shapes::CUT, |table| cut(table, usual)))
        .unwrap_or(usual)
}

fn hard_at_left(root: &Table<'_>) -> Reserve {
    let usual = Reserve::from_halves(8).unwrap_or(Reserve::NONE);
    let Some(item) = root.get("hard_at_left") else { return usual };
    match item.reserve() {
        Some(left) if left.is_single() => left.from,
        Some(_) => {
            item.fault(Problem::Unread { expected: Expected::Reserve });
            usual
        }
        None => usual,
    }
}

fn lay_off(root: &Table<'_>) -> Vec<LayOff> {
    if !root.has("lay_off") {
        return USUAL_LAY_OFF.to_vec();
    }
    let mut steps = tables(root, "lay_off", bounds::STEPS, &shapes::LAY_OFF, |table| {
        let over_days = table.need("over_days").and_then(|item| words::count(&item, 1, 1_000));
        let off = |key| table.get(key).and_then(|item| share_off(&item)).unwrap_or_default();
        let ease_in = table.get("ease_in").and_then(|item| item.flag()).unwrap_or_default();
        Some(LayOff {
            over_days: over_days?,
            load_off: off("load_off"),
            sets_off: off("sets_off"),
            ease_in,
        })
    });
    steps.sort_by_key(|step| step.over_days);
    steps
}

/// Reads what one or several weeks say of themselves.
fn week(
    table: &Table<'_>,
    line: usize,
    weeks: &mut [Week],
    numbered: &mut Vec<(u16, usize)>,
    (deload, ease_in): (Cut, Cut),
) {
    let kind = word(table, "kind", shapes::KINDS, &KINDS).unwrap_or_default();
    let name = table.get("name").and_then(|item| item.text(bounds::NAME)).map(str::to_string);
    let usual = match kind {
        WeekKind::Deload => deload,
        WeekKind::EaseIn => ease_in,
        WeekKind::Ordinary | WeekKind::Test => Cut::default(),
    };
    let cut = cut(table, usual);
    let greatest = i64::try_from(weeks.len()).unwrap_or(i64::MAX);
    let numbers =
        table.need("number").and_then(|item| item.one_or_list(bounds::WEEKS)).unwrap_or_default();
    for item in numbers {
        let Some(number) = words::count(&item, 1, greatest) else { continue };
        if let Some((_, first_line)) = numbered.iter().find(|(known, _)| *known == number) {
            item.fault(Problem::Repeated { first_line: *first_line });
            continue;
        }
        numbered.push((number, line));
        if let Some(week) = weeks.get_mut(usize::from(number).saturating_sub(1)) {
            *week = Week { kind, name: name.clone(), cut };
        }
    }
}

fn session(
    table: &Table<'_>,
    (names, count, plan_rest): (&Names<'_>, usize, Rests),
    (seen, line): (&mut Vec<(String, usize)>, usize),
) -> Option<(Session, SessionPlace)> {
    let name = name(table);
    if let Some(name) = &name {
        match seen.iter().find(|(known, _)| known == name) {
            Some((_, first_line)) => {
                table.fault_at("name", Problem::Repeated { first_line: *first_line });
            }
            None => seen.push((name.clone(), line)),
        }
    }
    let rest = rests(table);
    let mut exercises = Vec::new();
    let mut place = SessionPlace { own: Place::of(table), exercises: Vec::new() };
    let list =
        table.need("exercise").and_then(|item| item.list(bounds::EXERCISES)).unwrap_or_default();
    for item in &list {
        let read = item.table(&shapes::SLOT, |table| {
            let slot = slot::slot(table, names, count, rest.or(plan_rest))?;
            Some((slot, slot::place(table)))
        });
        if let Some((slot, own)) = read {
            exercises.push(slot);
            place.exercises.push(own);
        }
    }
    let session = Session {
        day: word(table, "day", shapes::DAYS, &slot::DAYS),
        weeks: weeks(table, count),
        minutes: minutes(table),
        warm_up: warm_up(table),
        rest,
        exercises,
        name: name?,
    };
    Some((session, place))
}
