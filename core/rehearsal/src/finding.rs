//! What stands out: where a rule stalls or runs away, what is missed, what takes too long.

use std::collections::BTreeMap;

use barwright_domain::call::WeekKind;
use barwright_domain::owners::Why;
use barwright_domain::quantity::Mass;

use crate::gather::{Cell, Followed, share};
use crate::played::Played;
use crate::report::{Cause, Finding, Kilograms, Report, Session, Volume, VolumeWeek};

/// This share of the lifters who stall to the end is a rule that stalls.
const STALL: f64 = 0.6;
/// This share with more called than they have is a rule that runs away, or a week too heavy.
const HEAVY: f64 = 1.0 / 3.0;
/// This share that miss a set in a week is worth a word.
const MISSES: f64 = 0.4;
/// This share with far more left than asked, to the end, is a load that falls behind.
const LIGHT: f64 = 0.5;
/// Ordinary weeks that something must last.
const WEEKS: usize = 2;
/// Minutes over the plan's that are worth a word.
const MINUTES: u32 = 5;
/// A muscle with less than this of what was planned falls short.
const SHORT: f64 = 0.75;

/// All that stands out, the gravest first.
pub(crate) fn findings(
    report: &Report,
    followed: &[&Followed],
    all: &[Played],
    names: impl Fn(&str) -> String,
) -> Vec<Finding> {
    let mut found = Vec::new();
    let mut later = Vec::new();
    for (line, followed) in followed.iter().enumerate() {
        let ordinary: Vec<(usize, &Cell)> = followed
            .weeks
            .iter()
            .filter(|(week, _)| report.weeks.get(**week) == Some(&WeekKind::Ordinary))
            .map(|(week, cell)| (*week, cell))
            .collect();
        let heavy = |cell: &Cell| Some((cell.heavy, cell.lifters));
        let light = |cell: &Cell| Some((cell.light, cell.lifters));
        let stalled = |cell: &Cell| cell.stalled.map(|(of, some)| (some, of));
        let stalls = to_the_end(&ordinary, STALL, stalled);
        let runs = longest(&ordinary, HEAVY, heavy);
        if let Some((from_week, share)) = runs {
            found.push(Finding::RunsAway { line, from_week: from_week + 1, share });
        }
        if let Some((from_week, share)) = stalls {
            let cause = cause(followed, from_week);
            found.push(Finding::Stalls { line, from_week: from_week + 1, share, cause });
        }
        if stalls.is_none() && runs.is_none() {
            later.extend(missed(line, &ordinary));
        }
        if stalls.is_none()
            && let Some((from_week, share)) = to_the_end(&ordinary, LIGHT, light)
        {
            later.push(Finding::TooLight { line, from_week: from_week + 1, share });
        }
    }
    found.extend(later);
    found.extend(too_long(report));
    found.extend(short(report));
    let mut lacking: Vec<&String> = all.iter().flat_map(|played| &played.lacking).collect();
    lacking.sort_unstable();
    lacking.dedup();
    found.extend(lacking.into_iter().map(|slug| Finding::Lacking { exercise: names(slug) }));
    found
}

/// From which week on, to the last, and for what mean share something holds for this share at the
/// least.
fn to_the_end(
    weeks: &[(usize, &Cell)],
    least: f64,
    some: impl Fn(&Cell) -> Option<(u32, u32)>,
) -> Option<(usize, f64)> {
    let holds = |cell: &Cell| some(cell).is_some_and(|(some, of)| share(some, of) >= least);
    let run: Vec<_> = weeks.iter().rev().take_while(|(_, cell)| holds(cell)).collect();
    mean(&run, some)
}

/// The same for the longest run of weeks.
fn longest(
    weeks: &[(usize, &Cell)],
    least: f64,
    some: impl Fn(&Cell) -> Option<(u32, u32)>,
) -> Option<(usize, f64)> {
    let holds = |cell: &Cell| some(cell).is_some_and(|(some, of)| share(some, of) >= least);
    let runs = weeks.chunk_by(|one, other| holds(one.1) == holds(other.1));
    let best = runs
        .filter(|run| run.first().is_some_and(|(_, cell)| holds(cell)))
        .max_by_key(|run| run.len())?;
    let run: Vec<_> = best.iter().rev().collect();
    mean(&run, some)
}

/// The first week and the mean share of a run, its last week first; none of one too short.
fn mean(
    run: &[&(usize, &Cell)],
    some: impl Fn(&Cell) -> Option<(u32, u32)>,
) -> Option<(usize, f64)> {
    if run.len() < WEEKS {
        return None;
    }
    let shares = run.iter().filter_map(|(_, cell)| some(cell));
    let (sum, count) =
        shares.fold((0.0, 0.0), |(sum, count), (some, of)| (sum + share(some, of), count + 1.0));
    Some((run.last()?.0, sum / count))
}

/// What the rules mostly said of those who stall from a week on.
fn cause(followed: &Followed, from_week: usize) -> Cause {
    let said: Vec<&(Why, Option<Mass>)> =
        followed.weeks.range(from_week..).flat_map(|(_, cell)| &cell.said).collect();
    // A step up among them leads nowhere: what came after it tells why.
    let kind = |reason: &Why| match reason {
        Why::StepTooBig { .. } | Why::Rough { .. } => Some(0_u8),
        Why::Missed { .. } => Some(1),
        Why::NothingHeavier => Some(2),
        Why::BelowTop { .. } => Some(3),
        Why::NotYetTwo { .. } => Some(4),
        _ => None,
    };
    let mut counts: BTreeMap<u8, usize> = BTreeMap::new();
    for kind in said.iter().filter_map(|(reason, _)| kind(reason)) {
        *counts.entry(kind).or_default() += 1;
    }
    // A miss is said only in the session after it: a third as often is enough.
    let missed = counts.get(&1).copied().unwrap_or_default();
    let most = counts.iter().max_by_key(|(_, count)| **count).map(|(kind, _)| *kind);
    let most = if missed * 3 >= said.len() && missed > 0 { Some(1) } else { most };
    // While a range goes on for a step that is too big, what is said is that its top is not reached.
    let all: Vec<&(Why, Option<Mass>)> =
        followed.weeks.values().flat_map(|cell| &cell.said).collect();
    let too_big = all.iter().filter(|(reason, _)| kind(reason) == Some(0)).count();
    let most = if most == Some(3) && too_big * 6 >= said.len() { Some(0) } else { most };
    match most {
        Some(0) => {
            let steps = all.iter().filter_map(|(reason, load)| match (reason, load) {
                (Why::StepTooBig { step_to, .. } | Why::Rough { step_to }, Some(load)) => {
                    Some((*load, *step_to))
                }
                _ => None,
            });
            step(steps).map_or(Cause::Other, |(step, percent)| Cause::StepTooBig { step, percent })
        }
        Some(1) if followed.after_steps * 2 >= followed.misses => {
            match step(followed.steps.iter().copied()) {
                Some((step, percent)) => Cause::MissedAfterSteps { step, percent },
                None => Cause::Missed,
            }
        }
        Some(1) => Cause::Missed,
        Some(2) => Cause::NothingHeavier,
        Some(3) => Cause::BelowTop,
        Some(4) => Cause::NotYetTwo,
        _ => Cause::Other,
    }
}

/// The middle of some steps from one load to another, and of what they come to in percent.
fn step(steps: impl Iterator<Item = (Mass, Mass)>) -> Option<(Kilograms, f64)> {
    let mut all: Vec<(Mass, Mass)> =
        steps.filter_map(|(from, to)| Some((to.checked_sub(from)?, from))).collect();
    all.sort_unstable();
    let (step, from) = *all.get(all.len() / 2)?;
    let percent = match from.nanograms() {
        from if from > 0 => 100.0 * step.nanograms() as f64 / from as f64,
        _ => 0.0,
    };
    Some((Kilograms(step), percent))
}

/// Weeks that many miss.
fn missed(line: usize, ordinary: &[(usize, &Cell)]) -> Option<Finding> {
    let shares: Vec<(usize, f64)> = ordinary
        .iter()
        .map(|(week, cell)| (week + 1, share(cell.missed, cell.lifters)))
        .filter(|(_, share)| *share >= MISSES)
        .collect();
    let share = shares.iter().map(|(_, share)| *share).fold(0.0, f64::max);
    let weeks: Vec<usize> = shares.into_iter().map(|(week, _)| week).collect();
    (!weeks.is_empty()).then_some(Finding::Missed { line, weeks, share })
}

fn too_long(report: &Report) -> Vec<Finding> {
    let of = |(session, of): (usize, &Session)| {
        let planned = u32::from(of.planned?);
        let long = || of.weeks.iter().filter(|week| week.took.middle > planned + MINUTES);
        let minutes = long().map(|week| week.took.middle).max()?;
        let weeks = long().map(|week| week.week).collect();
        Some(Finding::TooLong { session, weeks, minutes })
    };
    report.sessions.iter().enumerate().filter_map(of).collect()
}

fn short(report: &Report) -> Vec<Finding> {
    let of = |volume: &Volume| {
        let sum = |one: fn(&VolumeWeek) -> f64| -> f64 { volume.weeks.iter().map(one).sum() };
        let (planned, done) = (sum(|week| week.planned), sum(|week| week.done.middle));
        // A set or two here and there are no news.
        let share = done / planned.max(1.0);
        (planned >= 2.0 * volume.weeks.len() as f64 && share < SHORT)
            .then_some(Finding::FallsShort { muscle: volume.muscle, share })
    };
    report.muscles.iter().filter_map(of).collect()
}
