//! Sets of muscles from week to week and against each other, and what a deload takes off.

use super::laid;
use super::{About, Check, Finding, Level, Look};
use crate::call::{LoadCall, WeekKind};
use crate::catalogue::Muscle;
use crate::plan::{SetCall, WeekSession};
use crate::volume::planned;

/// Half sets that a muscle's week may grow by whatever it was: four sets. Common practice.
const SOME_MORE: u32 = 8;
/// Half sets from which doubling is too much: eight sets. Common practice.
const MANY_MORE: u32 = 16;

/// The muscles whose weeks are held against each other: large ones that a whole-body plan trains.
/// Common practice; the small ones come and go with a plan's purpose.
const LARGE: [Muscle; 6] = [
    Muscle::Chest,
    Muscle::UpperBack,
    Muscle::Lats,
    Muscle::Glutes,
    Muscle::Quadriceps,
    Muscle::Hamstrings,
];
/// Tenths of sets a week from which a muscle is trained at all: four sets. Common practice.
const TRAINED: u32 = 40;
/// Tenths of sets a week over which volume is high (Baz-Valle et al. 2022, J Hum Kinet 81:199–210).
const HIGH: u32 = 200;

/// A deload leaves at most such a share of the sets, or of the load, in hundredths of a percent: it
/// usually takes 40–50 % of the sets and 0–10 % of the load off (common practice; in a survey of
/// Rogerson et al. 2024, Sports Med Open 10 (journal from memory), less of both, and less effort). Half of that is let pass.
const SETS_LEFT: i64 = 8_000;
const LOAD_LEFT: i64 = 9_500;

/// Half sets in the ordinary weeks, in the order of [`Muscle::ALL`].
fn ordinary(look: Look<'_>) -> Vec<(usize, Vec<u32>)> {
    let weeks = look.laid.of_kind(WeekKind::Ordinary).map(|(week, _)| week);
    let of = |week: usize| {
        let ledger = planned(look.plan, week, usize::MAX, look.catalogue, look.plan.hard_at_left);
        let number = i32::try_from(week).unwrap_or(i32::MAX);
        let tallies = Muscle::ALL.into_iter().map(|muscle| ledger.week(number, muscle));
        tallies.map(|tally| tally.sets.and(tally.under_six).both().halves()).collect()
    };
    weeks.map(|week| (week, of(week))).collect()
}

/// Jumps from an ordinary week to the next, one finding for each pair of weeks.
pub(super) fn jumps(look: Look<'_>) -> Vec<Finding> {
    let weeks = ordinary(look);
    let mut found = Vec::new();
    for (before, after) in weeks.iter().zip(weeks.iter().skip(1)) {
        let both = before.1.iter().zip(&after.1).zip(Muscle::ALL);
        let mut grown: Vec<(Muscle, u32, u32)> = both
            .map(|((one, other), muscle)| (muscle, *one, *other))
            .filter(|(_, one, other)| {
                other.saturating_sub(*one) >= SOME_MORE && 2 * other > 3 * one
            })
            .collect();
        grown.sort_by_key(|(_, one, other)| std::cmp::Reverse(other.saturating_sub(*one)));
        let Some((muscle, one, other)) = grown.first().copied() else { continue };
        let double = other.saturating_sub(one) >= MANY_MORE && other > 2 * one;
        let level = if double { Level::Change } else { Level::LookAt };
        let weeks = (before.0 + 1, after.0 + 1);
        let at = most_grown(look, muscle, before.0, after.0);
        let about = About::VolumeJump { weeks, muscles: grown };
        let check = (Check::VolumeJump, level);
        found.push(match at {
            Some(at) => look.at_exercise(check, at, 0, &["sets", "total", "weeks"], about),
            None => look.at_plan(check, &["weeks"], about),
        });
    }
    found
}

/// The exercise that trains the muscle and grew the most.
fn most_grown(look: Look<'_>, muscle: Muscle, from: usize, to: usize) -> Option<(usize, usize)> {
    let count = |week: usize, at: (usize, usize)| -> i64 {
        let rows = laid::rows(look.laid.week(week), at);
        rows.map(|row| i64::from(laid::sets(row.block))).sum()
    };
    exercises(look, muscle, look.laid.week(to))
        .max_by_key(|at| count(to, *at).saturating_sub(count(from, *at)))
}

/// The exercises of a week that train a muscle, by their places in the plan.
fn exercises<'a>(
    look: Look<'a>,
    muscle: Muscle,
    sessions: &'a [WeekSession],
) -> impl Iterator<Item = (usize, usize)> + 'a {
    sessions.iter().flat_map(move |session| {
        let trained = session.exercises.iter().filter(move |entry| {
            look.catalogue.get(&entry.exercise).is_some_and(|exercise| exercise.trains(muscle))
        });
        trained.map(|entry| (session.session, entry.slot))
    })
}

/// Large muscles far below or above the middle of them, over the ordinary weeks.
pub(super) fn muscles(look: Look<'_>) -> Vec<Finding> {
    let weeks = ordinary(look);
    let count = u32::try_from(weeks.len()).unwrap_or(u32::MAX);
    if count == 0 {
        return Vec::new();
    }
    // Tenths of sets in an ordinary week.
    let tenths = |muscle: Muscle| -> u32 {
        let all = weeks.iter().flat_map(|(_, all)| all.iter().zip(Muscle::ALL));
        let sum: u32 = all.filter(|(_, one)| *one == muscle).map(|(halves, _)| *halves).sum();
        sum * 5 / count
    };
    let all: Vec<(Muscle, u32)> =
        LARGE.into_iter().map(|muscle| (muscle, tenths(muscle))).collect();
    // A plan for one half of the body, or a few lifts, leaves the rest out on purpose.
    if all.iter().filter(|(_, tenths)| *tenths >= TRAINED).count() * 2 < LARGE.len() {
        return Vec::new();
    }
    let mut sorted: Vec<u32> = all.iter().map(|(_, tenths)| *tenths).collect();
    sorted.sort_unstable();
    let middle = sorted.iter().skip(LARGE.len() / 2 - 1).take(2).sum::<u32>() / 2;
    let mut found = Vec::new();
    for (muscle, tenths) in all {
        let about = About::Muscle { muscle, tenths, middle };
        if tenths * 3 < middle {
            let level = if tenths == 0 { Level::Change } else { Level::LookAt };
            found.push(look.at_plan((Check::MuscleLow, level), &["name"], about));
        } else if tenths > HIGH && tenths > middle * 2 {
            let week = weeks.first().map_or(0, |(week, _)| *week);
            let sets = |at: &(usize, usize)| -> u32 {
                laid::rows(look.laid.week(week), *at).map(|row| laid::sets(row.block)).sum()
            };
            let most = exercises(look, muscle, look.laid.week(week)).max_by_key(sets);
            let check = (Check::MuscleHigh, Level::LookAt);
            found.push(match most {
                Some(at) => look.at_exercise(check, at, 0, &["sets"], about),
                None => look.at_plan(check, &["name"], about),
            });
        }
    }
    found
}

/// Deload weeks that are hardly lighter than the ordinary week before, and exercises that stay as
/// they were in one that is.
pub(super) fn deloads(look: Look<'_>) -> Vec<Finding> {
    let mut found = Vec::new();
    for (week, sessions) in look.laid.of_kind(WeekKind::Deload) {
        let Some(before) = look.laid.ordinary_before(week) else { continue };
        let last = look.laid.week(before);
        let weeks = (before + 1, week + 1);
        let sets = (work_sets(last), work_sets(sessions));
        let load = load_left(last, sessions);
        let many = i64::from(sets.1) * 10_000 > i64::from(sets.0) * SETS_LEFT;
        let heavy = load.is_none_or(|load| i64::from(load) > LOAD_LEFT);
        if many && heavy && sets.0 > 0 {
            let nothing_off = sets.1 >= sets.0 && load.is_none_or(|load| load >= 10_000);
            let level = if nothing_off { Level::Change } else { Level::LookAt };
            let place = look.file.places.week(week).unwrap_or(look.file.places.plan());
            found.push(Finding {
                check: Check::DeloadNotLighter,
                level,
                session: None,
                exercise: None,
                span: place.at(&["kind", "number", "weeks"]),
                about: About::Deload { weeks, sets, load },
                accepted: None,
            });
            continue;
        }
        for session in sessions {
            for entry in session.exercises.iter().filter(|entry| !entry.optional) {
                let at = (session.session, entry.slot);
                if same(last, sessions, at) {
                    let check = (Check::DeloadNotLighter, Level::LookAt);
                    let keys = &["sets", "load"];
                    found.push(look.at_exercise(check, at, 0, keys, About::DeloadSame { weeks }));
                }
            }
        }
    }
    found
}

fn work_sets(sessions: &[WeekSession]) -> u32 {
    let entries = sessions.iter().flat_map(|session| &session.exercises);
    let owed = entries.filter(|entry| !entry.optional);
    owed.flat_map(|entry| &entry.blocks).map(laid::sets).fold(0, u32::saturating_add)
}

/// A load as a number to compare with another of its kind.
fn value(set: &SetCall) -> Option<i64> {
    match &set.load {
        LoadCall::Percent { share, .. } => Some(i64::from(share.from.hundredths())),
        LoadCall::Mass(mass) => Some(mass.nanograms()),
        _ => None,
    }
}

/// What is left of the loads on average, in hundredths of a percent; none where no load says.
fn load_left(before: &[WeekSession], after: &[WeekSession]) -> Option<i32> {
    let mut shares: Vec<i128> = Vec::new();
    for session in after {
        for entry in &session.exercises {
            for block in &entry.blocks {
                let same_row = laid::rows(before, (session.session, entry.slot))
                    .find(|row| row.block.line == block.line);
                let then = same_row.and_then(|row| row.block.sets.iter().filter_map(value).max());
                let now = block.sets.iter().filter_map(value).max();
                if let Some((then, now)) = then.filter(|then| *then > 0).zip(now) {
                    shares.push(i128::from(now) * 10_000 / i128::from(then));
                }
            }
        }
    }
    let count = i128::try_from(shares.len()).ok().filter(|count| *count > 0)?;
    i32::try_from(shares.iter().sum::<i128>() / count).ok()
}

/// Whether an exercise is asked for exactly as in the ordinary week: sets, repetitions, loads and
/// effort. What has neither load nor effort to take off, as a hold, is no matter.
fn same(before: &[WeekSession], after: &[WeekSession], at: (usize, usize)) -> bool {
    let then: Vec<_> = laid::rows(before, at).map(|row| row.block).collect();
    let now: Vec<_> = laid::rows(after, at).map(|row| row.block).collect();
    let loaded = now.iter().flat_map(|block| &block.sets).any(|set| value(set).is_some());
    loaded && then == now
}
