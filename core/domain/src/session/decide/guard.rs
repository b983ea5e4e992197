//! What is called once it is said what guards the lifter: with neither pins nor a spotter under a
//! bar no max is tried and two are kept in reserve.

use super::super::event::{Event, Guard};
use super::super::guard::{TWO_LEFT, goes_to_failure};
use super::super::reason::{Because, Reason};
use super::super::refusal::Refusal;
use super::super::sheet::{Call, CallLoad, Load};
use super::super::state::{EntryRun, Run, SetRun};
use super::exercise;
use super::load::load_of;
use crate::call::{EffortTarget, EntryId, Flow, HowMany, SetId, SetKind, Stop, Structure};
use crate::progress::percent;
use crate::progress::test_day::FIRST_SINGLE;
use crate::quantity::{Range, RepRange, Reps, Rounding};

/// What takes the place of a test: one set of so many (common practice).
const INSTEAD_OF_A_TEST: RepRange = RepRange { from: 3, to: 5 };

/// An open set that keeps two in reserve has a floor lower by as many.
const FEWER: Reps = 2;

/// Pins, a spotter, or neither; and what is still to come called by that.
pub(super) fn by(run: &Run, id: EntryId, guard: Guard) -> Result<Vec<Event>, Refusal> {
    let now = EntryRun { guard: Some(guard), ..exercise(run, id)?.clone() };
    let tried = now.sets.iter().any(|set| set.call.kind == SetKind::Test && set.begun());
    let to_come = (0_u16..).zip(&now.sets).filter(|(_, set)| set.pending() && !set.begun());
    let called = to_come.filter_map(|(at, set)| {
        let name = SetId { entry: id, set: at };
        let call = as_called(set);
        if now.unguarded() && tried && call.kind == SetKind::Test {
            return Some(Event::SetSkipped { set: name });
        }
        let other = if now.unguarded() {
            within_reserve(run, &now, call.clone())
        } else {
            as_laid_out(now.entry.calls.get(usize::from(at))?, call.clone())
        };
        (other != call).then_some(Event::SetCalled { set: name, call: other })
    });
    Ok([Event::Guarded { entry: id, guard }].into_iter().chain(called).collect())
}

/// A call with its load as it was resolved or changed since.
fn as_called(set: &SetRun) -> Call {
    let mut call = Call::clone(&set.call);
    if let Some(load) = &set.load {
        call.load = CallLoad::Known(load.clone());
        call.part_loads.clone_from(&set.part_loads);
    }
    call
}

/// As the sheet had it, with the load that it has come to.
fn as_laid_out(sheet: &Call, call: Call) -> Call {
    if sheet.kind == SetKind::Test && call.kind != SetKind::Test {
        return sheet.clone();
    }
    Call { how_many: sheet.how_many, effort: sheet.effort, flow: sheet.flow, ..call }
}

/// A call for a lifter whom nothing guards: two in reserve at the least, and one set of three to
/// five in place of a test. As it is for everyone else.
pub(super) fn within_reserve(run: &Run, entry: &EntryRun, call: Call) -> Call {
    if !entry.unguarded() || call.kind == SetKind::Ramp {
        return call;
    }
    if call.kind == SetKind::Test {
        return instead_of_a_test(run, entry, call);
    }
    let how_many = match call.how_many {
        HowMany::Open { stop: Stop::Reserve(left), .. } if left >= TWO_LEFT => call.how_many,
        HowMany::Open { at_least, .. } => HowMany::Open {
            at_least: at_least.saturating_sub(FEWER).max(1),
            stop: Stop::Reserve(TWO_LEFT),
        },
        other => other,
    };
    let unsaid = goes_to_failure(&call.structure).then_some(two_left());
    let effort = call.effort.map(kept).or(unsaid);
    let flow = match call.flow {
        Flow::Climb { to, step, most } => Flow::Climb { to: kept(to), step, most },
        Flow::Repeat { until, most } => Flow::Repeat { until: kept(until), most },
        other => other,
    };
    Call { how_many, effort, flow, ..call }
}

const fn two_left() -> EffortTarget {
    EffortTarget::left(TWO_LEFT, TWO_LEFT)
}

/// Two in reserve at the least.
pub(super) fn kept(target: EffortTarget) -> EffortTarget {
    let left = Range { from: target.left.from.max(TWO_LEFT), to: target.left.to.max(TWO_LEFT) };
    EffortTarget { left, ..target }
}

/// One set of three to five with two in reserve, at the table's share of what is expected: a work
/// set like any other, so that it is an estimate at the most.
fn instead_of_a_test(run: &Run, entry: &EntryRun, call: Call) -> Call {
    let lighter = match &call.load {
        CallLoad::Known(single) => lighter(run, entry, single, &call.reason),
        CallLoad::AfterTop { .. } | CallLoad::Chosen { .. } => None,
    };
    let (load, reason) = lighter
        .map_or((call.load, Reason(vec![Because::Unguarded])), |(load, reason)| {
            (CallLoad::Known(load), reason)
        });
    Call {
        kind: SetKind::Work,
        flow: Flow::Listed,
        load,
        part_loads: Vec::new(),
        how_many: HowMany::Reps(INSTEAD_OF_A_TEST),
        aim: None,
        effort: Some(two_left()),
        structure: Structure::Straight,
        reason,
        ..call
    }
}

/// The load of the most repetitions of that set, with two left: the table's share of the max that
/// is expected, or of what the single would be the first try for.
fn lighter(run: &Run, entry: &EntryRun, single: &Load, why: &Reason) -> Option<(Load, Reason)> {
    let (moved, figure) = (single.moved()?, single.figure?);
    let (reps, left) = (INSTEAD_OF_A_TEST.to, TWO_LEFT);
    let row = percent::for_reps(reps, left)?;
    let share = row.percent;
    let max = match entry.entry.test.and_then(|expected| expected.max) {
        Some(max) => max,
        None => moved.ratio(10_000, FIRST_SINGLE.hundredths().into(), Rounding::Down)?,
    };
    let asked = share.of(max)?.min(moved).checked_sub(moved.checked_sub(figure)?)?;
    let load = load_of(run, entry, asked, false, Some(single)).ok()?;
    let made = load.figure.filter(|made| *made <= figure)?;
    let gives = share.of(max)?;
    let of_max = why.0.iter().find_map(|because| match because {
        Because::ShareOfMax { max, day, of, .. } => {
            Some(Because::ShareOfMax { share, max: *max, day: *day, of: of.clone(), gives })
        }
        Because::ShareOfEstimate { max, day, .. } => {
            Some(Because::ShareOfEstimate { share, max: *max, day: *day, gives })
        }
        _ => None,
    });
    let by_table = Because::PercentForReps { reps, left, share, interpolated: row.interpolated };
    let rounded = (made != asked).then_some(Because::Made { asked, made });
    let reason = [Because::Unguarded].into_iter().chain(of_max).chain([by_table]).chain(rounded);
    Some((load, Reason(reason.collect())))
}
