//! One exercise over time: loads, estimates with their range, records.

use barwright_domain::call::Amount;
use barwright_domain::catalogue::Exercise;
use barwright_domain::desk::Desk;
use barwright_domain::history::{DoneSet, Measure, Record, estimate, most_at_loads};
use barwright_domain::owners::Owner;
use barwright_domain::prescribe::Need;
use barwright_domain::progress::estimate::{Estimate, Formula, is_estimated};
use barwright_domain::quantity::Mass;
use barwright_domain::session::Ending;

use super::chart::{Day, Say};
use super::form::{exercises, maxes};
use super::key::shows;
use super::row::{aloud, row};
use super::{chart, name, today};
use crate::contract::{Field, FormOf, Key, LiftScreen, Look, Row};
use crate::facts::{Held, Lift, LikedOf};
use crate::gather::{CHARTED, PAGE};
use crate::phrase::Words;

/// Loads that the most repetitions are listed of, the heaviest.
const LOADS: usize = 12;

/// An exercise's screen: a page of its sessions, or all of them.
pub(super) fn screen(
    held: &Held,
    lift: &Lift<'_>,
    (page, all): (u32, bool),
    words: Words,
) -> LiftScreen {
    let exercise = lift.exercise;
    let say = Say { exercise, unit: held.gym().unit, words };
    let (first, on_page) = if all {
        (0, usize::MAX)
    } else {
        (usize::try_from(page).unwrap_or(usize::MAX).saturating_mul(PAGE), PAGE)
    };
    let sessions: Vec<&[DoneSet]> =
        lift.sets.chunk_by(|one, other| one.key.session == other.key.session).collect();
    let charted = usize::try_from(CHARTED).unwrap_or(usize::MAX);
    let days: Vec<Day> =
        sessions.iter().take(charted).rev().map(|sets| Day::of(sets, exercise)).collect();
    let rows: Vec<Row> =
        sessions.iter().skip(first).take(on_page).map(|sets| session_row(sets, &say)).collect();
    let desk = held.desk_now();
    let max = desk.owners.max(&exercise.slug).now;
    let subtitle = if exercise.main_lift || max.is_some() {
        let max = max.as_ref().map(|(mass, day, origin)| (*mass, *day, origin));
        words.lift().max(max, words.today, say.unit, words.numerals)
    } else {
        words.words().sessions(sessions.len())
    };
    let title = words.words().exercise(exercise);
    let more = sessions.len() > first.saturating_add(on_page);
    LiftScreen {
        aloud: words.words().spoken(&[&title, &subtitle, &aloud(&rows, words)]),
        subtitle,
        chart: chart::of_lift(&title, &days, &say),
        records: records(&lift.records, &lift.sets, &say),
        sessions: rows,
        fields: fields(held, &desk, &say),
        keys: keys(held, lift, page, more, words),
        title,
    }
}

/// Records under a heading for each kind: what is worn or done otherwise stands apart.
fn records(records: &[Record], sets: &[DoneSet], say: &Say<'_>) -> Vec<Row> {
    let (words, today) = (say.words.lift(), say.words.today);
    let (unit, numerals) = (say.unit, say.words.numerals);
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
        found.into_iter().map(|record| words.record(record, today, unit, numerals)).collect()
    };
    let heaviest = of(|measure| matches!(measure, Measure::HeaviestFor(_)));
    group("by-reps", words.by_reps(), say_each(heaviest));
    let loads: Vec<String> = most_at_loads(sets)
        .chunk_by(|one, other| one.apart == other.apart)
        .flat_map(|alike| alike.iter().take(LOADS))
        .map(|most| words.most_at(most, today, unit, numerals))
        .collect();
    group("by-load", words.by_load(), loads);
    let open = of(|measure| matches!(measure, Measure::MostReps));
    group("reps", words.most_reps(), say_each(open));
    let held = of(|measure| matches!(measure, Measure::LongestAt(_)));
    group("hold", words.longest(), say_each(held));
    let carried = of(|measure| matches!(measure, Measure::FarthestAt(_)));
    group("far", words.farthest(), say_each(carried));
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

impl Day {
    fn of(sets: &[DoneSet], exercise: &Exercise) -> Self {
        let work = || sets.iter().filter(|set| set.is_work());
        let body = exercise.body_share.hundredths() > 0;
        let load = |set: &DoneSet| if body { set.moved } else { set.figure };
        let amount = |set: &DoneSet| match set.amount() {
            Amount::Reps(reps) => u32::from(reps),
            Amount::Seconds(seconds) => seconds.count(),
            Amount::Metres(distance) => distance.millimetres(),
        };
        Self {
            day: sets.first().map_or(0, |set| set.day),
            figure: work().filter(|set| set.made()).filter_map(load).max(),
            failed: work()
                .filter(|set| !set.made() && set.ending == Ending::Failed)
                .filter_map(load)
                .max(),
            estimate: if is_estimated(exercise) { best(work()) } else { None },
            most: work()
                .filter(|set| set.made())
                .max_by_key(|set| amount(set))
                .map(DoneSet::amount),
        }
    }
}

fn best<'a>(sets: impl Iterator<Item = &'a DoneSet>) -> Option<Estimate> {
    let mut best: Option<Estimate> = None;
    let mut before: Option<&DoneSet> = None;
    for set in sets {
        // Sets made alike estimate alike, and most of a session are.
        let alike = before.is_some_and(|before| {
            let says = |set: &DoneSet| (set.moved, set.left, set.helped, set.ending);
            says(before) == says(set) && before.parts == set.parts && before.bands == set.bands
        });
        before = Some(set);
        let found = if alike { None } else { estimate(set, Formula::default()) };
        if let Some(estimate) = found.filter(|one| best.is_none_or(|best| one.max >= best.max)) {
            best = Some(estimate);
        }
    }
    best
}

/// What a person may write: the max, and the working load of each track of its rows in the plan.
fn fields(held: &Held, desk: &Desk, say: &Say<'_>) -> Vec<Field> {
    let (exercise, words, numerals) = (say.exercise, say.words, say.words.numerals);
    let figure =
        |mass: Option<Mass>| mass.map(|mass| mass.figure(say.unit, numerals)).unwrap_or_default();
    let mut fields = Vec::new();
    if is_estimated(exercise) {
        let need = Need::Max(exercise.slug.to_string());
        let max = desk.owners.max(&exercise.slug).now;
        let value = figure(max.map(|(mass, ..)| mass));
        fields.push(Field {
            value,
            ..today::field(held, &need, &words.words().exercise(exercise), say.unit, words)
        });
    }
    let rows = desk.plan.iter().flat_map(|plan| &plan.rows);
    let of_exercise = rows.filter(|row| {
        let session =
            held.plan.as_deref().and_then(|plan| plan.sessions.get(usize::from(row.session)));
        let slot = session.and_then(|session| session.exercises.get(usize::from(row.slot)));
        slot.is_some_and(|slot| slot.exercise == *exercise.slug)
    });
    let mut tracks: Vec<Owner> = of_exercise.map(|row| Owner::Track(row.track)).collect();
    tracks.dedup();
    for owner in tracks {
        let track = desk.owners.track(&owner);
        let Some(asked) = track.asked.filter(|_| track.load.is_some()) else { continue };
        let (label, hint) = words.lift().working_load(&asked, numerals);
        let id = format!("working:{}", owner.name());
        if fields.iter().all(|field| field.id != id) {
            fields.push(Field { id, label, value: figure(track.load), hint, numeric: true });
        }
    }
    fields
}

fn session_row(sets: &[DoneSet], say: &Say<'_>) -> Row {
    let (words, today) = (say.words.lift(), say.words.today);
    let (unit, numerals) = (say.unit, say.words.numerals);
    let work: Vec<&DoneSet> = sets.iter().filter(|set| set.is_work()).collect();
    // Sets at one load stand together: "110 kg: 5, 5, 4".
    let loads: Vec<String> = work
        .chunk_by(|one, other| {
            let alike = one.figure == other.figure && one.bands == other.bands;
            alike && one.at_one_load() == other.at_one_load()
        })
        .map(|sets| words.sets_at_load(sets, unit, numerals))
        .collect();
    let (session, day) = sets.first().map_or((0, 0), |set| (set.key.session, set.day));
    let estimate = if is_estimated(say.exercise) { best(work.iter().copied()) } else { None };
    let moved = say.moves_body();
    row(format!("session-{session}"), 1, words.session(day, today, &loads))
        .detail(words.session_detail(&work, estimate.as_ref(), moved, unit, numerals))
}

/// Pages, and the other exercises that have a history.
fn keys(held: &Held, lift: &Lift<'_>, page: u32, more: bool, words: Words) -> Vec<Key> {
    let look = |exercise: &str, page| {
        let exercise = exercise.to_owned();
        Look::Lift { exercise, page, all: false }
    };
    let own = &lift.exercise.slug;
    let mut keys = Vec::new();
    if page > 0 {
        keys.push(shows("newer", words.lift().newer(), look(own, page - 1)));
    }
    if more {
        keys.push(shows("older", words.lift().older(), look(own, page.saturating_add(1))));
    }
    let mut place = Owner::Max(own.to_string()).name();
    if !is_estimated(lift.exercise) {
        place.clear();
    }
    keys.push(shows("maxes", words.maxes().open(), maxes::look(&place)));
    keys.push(shows("exercises", words.exercises().open(), exercises::look(own)));
    keys.extend(lift.done.iter().map(|(slug, _)| {
        let name = name::exercise(held, slug, slug, words);
        shows(format!("lift-{slug}"), name, look(slug, 0)).chosen(*slug == **own)
    }));
    let at = LikedOf::Lift(own.to_string()).name();
    let look = Look::Form { of: FormOf::Liked, at, text: String::new() };
    keys.push(shows("liked", words.liked().open(), look));
    keys
}
