//! What many lifters did, put together week by week.

use std::collections::BTreeMap;

use barwright_domain::call::{HowMany, WeekKind};
use barwright_domain::catalogue::{Measure, Muscle};
use barwright_domain::owners::Why;
use barwright_domain::plan::{RuleKind, Slot};
use barwright_domain::quantity::{Mass, Reserve};
use barwright_domain::volume::{self, Tally};

use crate::played::{Played, Seen, Stage};
use crate::report::{Kilograms, Line, LineWeek, Session, SessionWeek, Spread, Volume, VolumeWeek};

/// Names a line: a session of the plan and an exercise of it, by their places.
pub(crate) type Key = (usize, usize);

/// One line in one week, as all lifters did it.
#[derive(Debug, Default)]
pub(crate) struct Cell {
    pub(crate) lifters: u32,
    loads: Vec<Mass>,
    amounts: Vec<u32>,
    pub(crate) missed: u32,
    pub(crate) held: u32,
    /// Of how many it can be said whether they stall, and how many do.
    pub(crate) stalled: Option<(u32, u32)>,
    pub(crate) heavy: u32,
    pub(crate) light: u32,
    /// What the rules said of those who stall.
    pub(crate) said: Vec<(Why, Option<Mass>)>,
}

/// A line over the weeks, as all lifters did it.
#[derive(Debug, Default)]
pub(crate) struct Followed {
    pub(crate) weeks: BTreeMap<usize, Cell>,
    /// Sessions that missed a set, and those of them whose load had just gone up.
    pub(crate) misses: u32,
    pub(crate) after_steps: u32,
    /// Steps up that were missed, each with the load before it.
    pub(crate) steps: Vec<(Mass, Mass)>,
}

/// Every line of a plan, as all lifters did it.
pub(crate) fn followed(stage: &Stage<'_>, all: &[Played]) -> BTreeMap<Key, Followed> {
    let mut lines: BTreeMap<Key, Followed> = BTreeMap::new();
    for played in all {
        let mut own: BTreeMap<Key, Vec<(usize, &Seen)>> = BTreeMap::new();
        for seen in &played.seen {
            let Some((date, session)) = at(stage, seen.date) else { continue };
            let key = (session, usize::from(seen.slot));
            own.entry(key).or_default().push((date, seen));
        }
        for (key, seen) in own {
            lines.entry(key).or_default().add(stage, key, &seen);
        }
    }
    lines
}

/// The week and the session, by its place in the plan, of a date.
fn at(stage: &Stage<'_>, date: u32) -> Option<(usize, usize)> {
    let date = usize::try_from(date).ok()?;
    Some((stage.dates.get(date)?.week, stage.sessions.get(date)?.session))
}

impl Followed {
    /// Adds what one lifter did, in its order.
    fn add(&mut self, stage: &Stage<'_>, key: Key, seen: &[(usize, &Seen)]) {
        let slot = slot(stage, key);
        let moves = slot.is_some_and(is_moved);
        let mut before: Vec<(Mass, u32)> = Vec::new();
        for (week, seen) in seen {
            let cell = self.weeks.entry(*week).or_default();
            cell.lifters += 1;
            cell.loads.extend(seen.load);
            cell.amounts.push(seen.each);
            cell.missed += u32::from(seen.missed);
            cell.heavy += u32::from(seen.too_heavy);
            cell.light += u32::from(seen.too_light);
            let held = seen.found.is_some_and(|found| {
                matches!(
                    found,
                    Why::Missed { .. }
                        | Why::StepTooBig { .. }
                        | Why::Rough { .. }
                        | Why::NothingHeavier
                )
            });
            cell.held += u32::from(held);
            let ordinary =
                stage.plan.weeks.get(*week).is_some_and(|week| week.kind == WeekKind::Ordinary);
            if !ordinary {
                continue;
            }
            let now = (seen.load.unwrap_or_default(), seen.each);
            if seen.missed {
                self.misses += 1;
                if let Some((was, _)) = before.last()
                    && now.0 > *was
                {
                    self.after_steps += 1;
                    self.steps.push((*was, now.0));
                }
            }
            before.push(now);
            if moves && let Some((earlier, last)) = before.split_last_chunk::<RUN>() {
                let Some(best) = earlier.iter().max() else { continue };
                let stalls = last.iter().all(|one| one <= best);
                let (of, stalled) = cell.stalled.unwrap_or_default();
                cell.stalled = Some((of + 1, stalled + u32::from(stalls)));
                if stalls && let Some(found) = seen.found {
                    cell.said.push((found, seen.load));
                }
            }
        }
    }
}

/// Sessions running without progress that are a stall.
const RUN: usize = 3;

/// The exercise of a line as the plan has it.
fn slot<'a>(stage: &Stage<'a>, (session, slot): Key) -> Option<&'a Slot> {
    stage.plan.sessions.get(session)?.exercises.get(slot)
}

/// Whether a rule is to move the load up, and the plan leaves it to it. By effort it follows the
/// lifter, down as well as up: that it stays is no stall.
fn is_moved(slot: &Slot) -> bool {
    let by_week = slot.lines.first().is_some_and(|line| line.load.by_week());
    let moves_up = |kind: RuleKind| !matches!(kind, RuleKind::AsPlanned | RuleKind::ByEffort);
    !by_week && slot.next.iter().any(|rule| moves_up(rule.kind))
}

/// The share that so many are of so many.
pub(crate) fn share(some: u32, of: u32) -> f64 {
    if of == 0 { 0.0 } else { f64::from(some) / f64::from(of) }
}

/// The 10th, 50th and 90th of a hundred, by the nearest rank.
pub(crate) fn spread<T: Ord + Copy>(values: impl IntoIterator<Item = T>) -> Option<Spread<T>> {
    let mut all: Vec<T> = values.into_iter().collect();
    all.sort_unstable();
    let at = |percent: usize| {
        let rank = (all.len() * percent).div_ceil(100).max(1);
        all.get(rank - 1).copied()
    };
    Some(Spread { low: at(10)?, middle: at(50)?, high: at(90)? })
}

impl<T: Copy> Spread<T> {
    pub(crate) fn map<U>(self, to: impl Fn(T) -> U) -> Spread<U> {
        Spread { low: to(self.low), middle: to(self.middle), high: to(self.high) }
    }
}

/// A line for the report.
pub(crate) fn line(stage: &Stage<'_>, key: Key, followed: &Followed) -> Option<Line> {
    let session = stage.plan.sessions.get(key.0)?;
    let slot = slot(stage, key)?;
    let exercise = stage.catalogue.get(&slot.exercise)?;
    let weeks = followed.weeks.iter().filter_map(|(week, cell)| {
        Some(LineWeek {
            week: week + 1,
            lifters: cell.lifters,
            load: spread(cell.loads.iter().copied()).map(|loads| loads.map(Kilograms)),
            amount: spread(cell.amounts.iter().copied())?.map(|each| f64::from(each) / 100.0),
            missed: share(cell.missed, cell.lifters),
            held: share(cell.held, cell.lifters),
            stalled: cell.stalled.map(|(of, stalled)| share(stalled, of)),
            too_heavy: share(cell.heavy, cell.lifters),
            too_light: share(cell.light, cell.lifters),
        })
    });
    Some(Line {
        session: session.name.clone(),
        exercise: slot.exercise.clone(),
        name: exercise.name_in(stage.catalogue.tongue()).to_owned(),
        counting: slot.counting.unwrap_or(exercise.counting),
        measure: measure(stage, key).unwrap_or(exercise.measure),
        rules: slot.next.iter().map(|rule| rule.kind).collect(),
        weeks: weeks.collect(),
    })
}

/// What the sets of a line's first row are measured in.
fn measure(stage: &Stage<'_>, (session, slot): Key) -> Option<Measure> {
    let of = stage.sessions.iter().filter(|one| one.session == session);
    let mut entries = of.flat_map(|one| &one.exercises);
    let entry = entries.find(|entry| entry.slot == slot)?;
    Some(match entry.blocks.first()?.sets.first()?.how_many {
        HowMany::Reps(_) | HowMany::Open { .. } => Measure::Reps,
        HowMany::Seconds(_) => Measure::Seconds,
        HowMany::Metres(_) => Measure::Metres,
    })
}

/// How long the sessions took.
pub(crate) fn sessions(stage: &Stage<'_>, all: &[Played]) -> Vec<Session> {
    type Minutes = (Vec<u32>, Vec<u32>);
    let mut took: BTreeMap<(usize, usize), Minutes> = BTreeMap::new();
    for trained in all.iter().flat_map(|played| &played.trained) {
        let Some((week, session)) = at(stage, trained.date) else { continue };
        let minutes = |seconds: u32| (seconds + 30) / 60;
        let (reckoned, real) = took.entry((session, week)).or_default();
        reckoned.push(minutes(trained.reckoned));
        real.push(minutes(trained.took));
    }
    let plan = stage.plan;
    let of = |(at, session): (usize, &barwright_domain::plan::Session)| {
        let weeks = took.range((at, 0)..(at + 1, 0)).filter_map(|((_, week), (reckoned, real))| {
            Some(SessionWeek {
                week: week + 1,
                reckoned: spread(reckoned.iter().copied())?,
                took: spread(real.iter().copied())?,
            })
        });
        Session {
            name: session.name.clone(),
            planned: session.minutes.or(plan.minutes),
            weeks: weeks.collect(),
        }
    };
    plan.sessions.iter().enumerate().map(of).collect()
}

/// Half sets that the plan has for a muscle in a week, counted from 0.
pub(crate) fn planned(stage: &Stage<'_>, week: usize, muscle: Muscle) -> u32 {
    let easiest: Reserve = stage.plan.hard_at_left;
    let ledger = volume::planned(stage.plan, week, usize::MAX, stage.catalogue, easiest);
    halves(ledger.week(i32::try_from(week).unwrap_or(i32::MAX), muscle))
}

fn halves(tally: Tally) -> u32 {
    tally.sets.and(tally.under_six).both().halves()
}

/// Hard sets of each muscle that the plan trains.
pub(crate) fn volume(stage: &Stage<'_>, all: &[Played]) -> Vec<Volume> {
    let weeks = stage.plan.weeks.len();
    let sets = |halves: u32| f64::from(halves) / 2.0;
    let of = |muscle: &Muscle| {
        let weeks = (0..weeks).filter_map(|week| {
            let done = all
                .iter()
                .filter_map(|played| played.volume.get(week)?.get(*muscle as usize).copied());
            let planned = sets(planned(stage, week, *muscle));
            Some(VolumeWeek { planned, done: spread(done)?.map(sets) })
        });
        Volume { muscle: *muscle, weeks: weeks.collect() }
    };
    let trained = |volume: &Volume| {
        volume.weeks.iter().any(|week| week.planned > 0.0 || week.done.middle > 0.0)
    };
    Muscle::ALL.iter().map(of).filter(trained).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_spread_is_of_figures_that_were_there() {
        assert_eq!(spread(1..=10), Some(Spread { low: 1, middle: 5, high: 9 }));
        assert_eq!(spread([7]), Some(Spread { low: 7, middle: 7, high: 7 }));
        assert_eq!(spread(std::iter::empty::<u32>()), None);
    }
}
