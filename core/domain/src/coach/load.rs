//! Loads from week to week, and percentages with their repetitions.

use super::laid::{self, Row};
use super::{About, Check, Figure, Finding, Level, Look};
use crate::call::{Flow, LoadCall, MaxOf, WeekKind};
use crate::catalogue::Exercise;
use crate::plan::SetCall;
use crate::progress::percent;
use crate::quantity::{Percent, Reserve};

/// A rise of more than a tenth from week to week, in hundredths of a percent: a load that goes up
/// goes up by 2–10 % (ACSM Position Stand 2009, MSSE 41(3):687–708).
const MUCH: i32 = 1_000;
/// Twice that: common practice.
const FAR_TOO_MUCH: i32 = 2_000;

/// Hundredths of a percent by which a load may lie over the table for its repetitions to failure:
/// people differ (at 80 % by 2.5 repetitions one way and the other: Nuzzo et al. 2024, Sports
/// Med 54:303–321); how much is
/// let pass is common practice.
const OVER_TABLE: i32 = 250;
/// The same where some are to be left: common practice.
const OVER_EFFORT: i32 = 500;
/// Hundredths of a percent by which a load may lie under what its effort asks for in an ordinary
/// week: common practice.
const UNDER_EFFORT: i32 = 1_500;

/// Each exercise's greatest jump from an ordinary week to the next.
pub(super) fn jumps(look: Look<'_>) -> Vec<Finding> {
    let mut found = Vec::new();
    for (session, written) in look.plan.sessions.iter().enumerate() {
        for (slot, of) in written.exercises.iter().enumerate() {
            let Some(exercise) = look.catalogue.get(&of.exercise) else { continue };
            let mut worst: Option<(i32, usize, About)> = None;
            for line in 0..of.lines.len() {
                let mut before: Option<(usize, Top<'_>)> = None;
                for (week, sessions) in look.laid.of_kind(WeekKind::Ordinary) {
                    let row =
                        laid::rows(sessions, (session, slot)).find(|row| row.block.line == line);
                    let Some(top) = row.and_then(|row| top(row, exercise)) else { continue };
                    if let Some((then, last)) = before
                        && let Some(rise) = rise(last, top).filter(|rise| *rise > MUCH)
                        && worst.as_ref().is_none_or(|(worst, ..)| rise > *worst)
                    {
                        let about = About::LoadJump {
                            weeks: (then + 1, week + 1),
                            loads: (last.figure, top.figure),
                            rise,
                        };
                        worst = Some((rise, line, about));
                    }
                    before = Some((week, top));
                }
            }
            if let Some((rise, line, about)) = worst {
                let level = if rise > FAR_TOO_MUCH { Level::Change } else { Level::LookAt };
                let at = (session, slot);
                found.push(look.at_exercise((Check::LoadJump, level), at, line, &["load"], about));
            }
        }
    }
    found
}

/// The heaviest set of a row.
#[derive(Clone, Copy)]
struct Top<'a> {
    figure: Figure,
    of: Option<&'a MaxOf>,
    /// Hundredths of a percent that the table gives for its repetitions; nothing where none tells.
    table: i32,
}

fn top<'a>(row: Row<'a>, exercise: &Exercise) -> Option<Top<'a>> {
    let value = |set: &SetCall| match &set.load {
        LoadCall::Percent { share, .. } => Some(i64::from(share.from.hundredths())),
        LoadCall::Mass(mass) => Some(mass.nanograms()),
        _ => None,
    };
    let set = row.block.sets.iter().filter(|set| value(set).is_some()).max_by_key(|s| value(s))?;
    let (figure, of) = match &set.load {
        LoadCall::Percent { share, of } => (Figure::Share(share.from), Some(of)),
        LoadCall::Mass(mass) => (Figure::Mass(*mass), None),
        _ => return None,
    };
    // Fewer repetitions carry more load: the table reckons that in, where it is made for the lift.
    let left = set.effort.map_or(Reserve::NONE, |effort| effort.left.from);
    let table = laid::reps(set).filter(|_| exercise.main_lift && !set.speed);
    let table = table.and_then(|reps| percent::for_reps(reps, left));
    Some(Top { figure, of, table: table.map_or(0, |row| row.percent.hundredths()) })
}

/// The rise in hundredths of a percent, each load against what its repetitions allow.
fn rise(before: Top<'_>, after: Top<'_>) -> Option<i32> {
    let (one, other) = match (before.figure, after.figure) {
        (Figure::Share(one), Figure::Share(other)) if before.of == after.of => {
            (i128::from(one.hundredths()), i128::from(other.hundredths()))
        }
        (Figure::Mass(one), Figure::Mass(other)) => {
            (i128::from(one.nanograms()), i128::from(other.nanograms()))
        }
        _ => return None,
    };
    let (table_before, table_after) = match (before.table, after.table) {
        (0, _) | (_, 0) => (1, 1),
        (one, other) => (i128::from(one), i128::from(other)),
    };
    let whole = one * table_after;
    let rise = (other * table_before - whole) * 10_000;
    i32::try_from(rise.checked_div(whole)?).ok()
}

/// Each exercise's worst set of a percentage and repetitions that don't go together. Main lifts
/// alone: the table is made for them.
pub(super) fn percent_and_reps(look: Look<'_>) -> Vec<Finding> {
    let mut found = Vec::new();
    for (session, written) in look.plan.sessions.iter().enumerate() {
        for (slot, of) in written.exercises.iter().enumerate() {
            if !look.catalogue.get(&of.exercise).is_some_and(|exercise| exercise.main_lift) {
                continue;
            }
            let mut worst: Option<((Level, i32), usize, About)> = None;
            for (week, kind, sessions) in look.laid.weeks() {
                for row in laid::rows(sessions, (session, slot)) {
                    if matches!(row.block.flow, Flow::Test { .. }) {
                        continue;
                    }
                    for set in row.block.sets.iter().filter(|set| !set.speed) {
                        let Some((level, off, about)) = apart(look, row, set, (week, kind)) else {
                            continue;
                        };
                        if worst.as_ref().is_none_or(|(worst, ..)| (level, off) > *worst) {
                            worst = Some(((level, off), row.block.line, about));
                        }
                    }
                }
            }
            if let Some(((level, _), line, about)) = worst {
                let keys = &["load", "reps", "rpe", "left"];
                let check = (Check::PercentAndReps, level);
                found.push(look.at_exercise(check, (session, slot), line, keys, about));
            }
        }
    }
    found
}

/// How far a set's numbers lie apart, in hundredths of a percent, where that is too far.
fn apart(
    look: Look<'_>,
    row: Row<'_>,
    set: &SetCall,
    (week, kind): (usize, WeekKind),
) -> Option<(Level, i32, About)> {
    let share = laid::share(look.plan, &row.entry.exercise, set)?;
    let reps = laid::reps(set).filter(|reps| *reps > 0)?;
    let week = week + 1;
    let over = |table: Percent| share.hundredths() - table.hundredths();
    let to_failure = percent::for_reps(reps, Reserve::NONE)?.percent;
    if over(to_failure) > OVER_TABLE {
        let about = About::TooHeavy { week, share, reps, table: to_failure };
        return Some((Level::Change, over(to_failure), about));
    }
    // A climb begins light; its effort is the top set's.
    let effort = set.effort.filter(|_| !matches!(row.block.flow, Flow::Climb { .. }))?;
    let with = |left: Reserve| percent::for_reps(reps, left).map(|row| row.percent);
    let of = |left, table, heavy| About::EffortApart { week, share, reps, left, table, heavy };
    let hardest = with(effort.left.from);
    if let Some(table) = hardest.filter(|table| over(*table) > OVER_EFFORT) {
        return Some((Level::LookAt, over(table), of(effort.left.from, table, true)));
    }
    let easiest = with(effort.left.to).filter(|_| kind == WeekKind::Ordinary);
    let table = easiest.filter(|table| -over(*table) > UNDER_EFFORT)?;
    Some((Level::LookAt, -over(table), of(effort.left.to, table, false)))
}
