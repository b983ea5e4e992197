//! Recording a part, and putting an earlier one right.

use super::super::command::Set;
use super::super::event::{Done, Event, PartDone};
use super::super::made::make;
use super::super::next::{Cursor, closes};
use super::super::reading::{Passed, Reading};
use super::super::reason::{Because, Reason};
use super::super::refusal::Refusal;
use super::super::sheet::{Call, CallLoad, Load};
use super::super::state::{EntryRun, Run, SetRun};
use super::guard::{kept, within_reserve};
use super::load::{after_top, drop_from, drops, load_of};
use super::{Course, MOST_SETS, arrange, rest, set_of};
use crate::call::{Amount, Ending, Flow, HowMany, SetKind, Structure};
use crate::call::{EntryId, SetId};
use crate::catalogue::{Counting, Region};
use crate::equipment::{Equipment, Fit, Rig};
use crate::progress::makes::Makes;
use crate::progress::test_day::{After, Test, Try};
use crate::quantity::{Mass, Percent, RepRange, Reserve, Seconds, bounds};

/// The work of the current set begins now.
pub(super) fn start(run: &Run) -> Result<Vec<Event>, Refusal> {
    let cursor = run.cursor().ok_or(Refusal::NothingLeft)?;
    if run.started.as_ref().is_some_and(|(set, _)| *set == cursor.set) {
        return Err(Refusal::AlreadyStarted);
    }
    Ok(resumed(run).into_iter().chain([Event::SetStarted { set: cursor.set }]).collect())
}

fn resumed(run: &Run) -> Option<Event> {
    run.paused.as_ref().map(|_| Event::Resumed)
}

/// The most taps of one part.
const MOST_TAPS: usize = 200;

/// A partner taps for a repetition of the current part.
pub(super) fn tap_rep(run: &Run) -> Result<Vec<Event>, Refusal> {
    let cursor = run.cursor().ok_or(Refusal::NothingLeft)?;
    let asked = run.how_many_at(&cursor).ok_or(Refusal::NoSuchPart)?;
    if !matches!(asked, HowMany::Reps(_) | HowMany::Open { .. }) {
        return Err(Refusal::WrongKind);
    }
    if set_of(run, cursor.set)?.taps.len() >= MOST_TAPS {
        return Err(Refusal::TooMany);
    }
    let tap = Event::RepTapped { set: cursor.set, part: cursor.part };
    Ok(resumed(run).into_iter().chain([tap]).collect())
}

/// The current part is over.
pub(super) fn record(run: &Run, said: &Set, at: &Reading) -> Result<Vec<Event>, Refusal> {
    let cursor = run.cursor().ok_or(Refusal::NothingLeft)?;
    let entry = run.entries.get(&cursor.set.entry).ok_or(Refusal::NoSuchEntry)?;
    let set = set_of(run, cursor.set)?;
    let asked = run.how_many_at(&cursor).ok_or(Refusal::NoSuchPart)?;

    let amount = match said.amount {
        Some(amount) => amount,
        None if fails_whole(&asked, said) => Amount::Reps(0),
        None => measured(run, &cursor, &asked, at)
            .unwrap_or_else(|| run.as_called_at(&cursor).unwrap_or_else(|| asked.as_called())),
    };
    check(&asked, &amount, said)?;
    let load = load_done(run, entry, set, &cursor, said)?;
    let done = Done { amount, load, left: said.left, ending: said.ending, helped: said.helped };

    let mut reps = set.done_reps();
    reps.push(amount.reps().unwrap_or(0));
    let closes = said.last
        || said.ending != Ending::AsCalled
        || closes(&set.call, &reps, cursor.part, &amount);
    let next_load = if closes { None } else { next_load(run, entry, set, &cursor, &done.load) };
    let top_load = done.load.clone();

    let mut course = Course::from(run, at);
    course.extend(resumed(run));
    let part = PartDone { set: cursor.set, part: cursor.part, done, closes, next_load };
    course.extend([Event::PartDone(part)]);
    if closes {
        let added = follow_on(&course.now, cursor.set)?;
        let climbing = added.is_some() && matches!(set.call.flow, Flow::Climb { .. });
        course.extend(added);
        if set.call.kind == SetKind::Top && !climbing {
            let shares = after_top(&course.now, cursor.set.entry, &top_load);
            course.extend(shares);
        }
    }
    // Nobody rests while a session is copied from paper.
    let rest = rest::after_part(&course.now, cursor.set, cursor.part, at).filter(|_| !run.paper);
    course.events.extend(rest.map(|rest| Event::RestBegan { rest }));
    Ok(course.events)
}

/// Everything left was done as called, of an exercise and its lane or of all; what was done to warm up
/// nobody writes down. Stops where a load has to be said.
pub(super) fn all(run: &Run, entry: Option<EntryId>, at: &Reading) -> Result<Vec<Event>, Refusal> {
    if !run.paper {
        return Err(Refusal::WrongKind);
    }
    let mut course = Course::from(run, at);
    if let Some(entry) = entry {
        let of = |cursor: Cursor| run.lane_of(cursor.set.entry).map(|lane| &lane.entries);
        if run.cursor().and_then(of) != run.lane_of(entry).map(|lane| &lane.entries) {
            course.extend(arrange::take_up(run, entry)?);
        }
    }
    let lane = entry.and_then(|entry| run.lane_of(entry)).map(|lane| lane.entries.clone());
    let before = course.events.len();
    while let Some(cursor) = course.now.cursor() {
        if lane.as_ref().is_some_and(|lane| !lane.contains(&cursor.set.entry)) {
            break;
        }
        let set = set_of(&course.now, cursor.set)?;
        let next = if set.call.kind == SetKind::Ramp && cursor.part == 0 {
            Ok(vec![Event::SetSkipped { set: cursor.set }])
        } else {
            record(&course.now, &Set::default(), at)
        };
        match next {
            Ok(events) => course.extend(events),
            Err(refusal) if course.events.len() == before => return Err(refusal),
            Err(_) => break,
        }
    }
    if course.events.len() == before { Err(Refusal::NothingLeft) } else { Ok(course.events) }
}

/// Puts an earlier part right. What is not said stays as it was, but for effort: a call taken back
/// is a call not made.
pub(super) fn correct(
    run: &Run,
    id: SetId,
    part: u16,
    to: &Set,
    sure: bool,
) -> Result<Vec<Event>, Refusal> {
    let entry = run.entries.get(&id.entry).ok_or(Refusal::NoSuchEntry)?;
    let set = set_of(run, id)?;
    let was = set.parts.get(usize::from(part)).ok_or(Refusal::NoSuchPart)?;
    let amount = to.amount.unwrap_or(was.done.amount);
    if std::mem::discriminant(&amount) != std::mem::discriminant(&was.done.amount) {
        return Err(Refusal::WrongKind);
    }
    check_bounds(&amount, to)?;
    let load = match to.load {
        Some(figure) => {
            check_correction(&was.done.load, figure, sure)?;
            load_of(run, entry, figure, true, Some(&was.done.load))?
        }
        None => was.done.load.clone(),
    };
    let done = Done { amount, load, left: to.left, ending: to.ending, helped: to.helped };
    if done == was.done {
        return Err(Refusal::AlreadySo);
    }
    let top = (set.call.kind == SetKind::Top && set.closed).then(|| done.load.clone());
    let mut events = vec![Event::Corrected { set: id, part, done }];
    // Shares of the top set that are still to come follow it.
    events.extend(top.and_then(|load| after_top(run, id.entry, &load)));
    Ok(events)
}

/// How many times the recorded load, or what part of it, a correction may come to unasked: a slip of
/// the thumb adds a digit or loses one (common practice: none).
const FAR: i64 = 2;

/// Whether a recorded load can be put right to this figure.
fn check_correction(was: &Load, figure: Mass, sure: bool) -> Result<(), Refusal> {
    let least = match (was.body, was.counting) {
        (Some(body), _) => body.share.of(body.mass).and_then(|body| Mass::ZERO.checked_sub(body)),
        // Of how much body help is taken off is not known.
        (None, Counting::Added) => Some(figure),
        (None, _) => Some(Mass::ZERO),
    };
    if figure < least.ok_or(Refusal::OutOfRange)? {
        return Err(Refusal::BelowNothing);
    }
    let recorded = was.figure.filter(|recorded| *recorded > Mass::ZERO && !sure);
    let Some(recorded) = recorded else { return Ok(()) };
    let double = |mass: Mass| mass.checked_mul(FAR).ok_or(Refusal::OutOfRange);
    // What hangs on a belt may go from a little to much, and to nothing.
    let is_far = match was.counting {
        Counting::Added => false,
        _ => figure > double(recorded)? || double(figure)? < recorded,
    };
    if is_far { Err(Refusal::FarFromRecorded { recorded }) } else { Ok(()) }
}

/// Of a single that failed nothing was done.
fn fails_whole(asked: &HowMany, said: &Set) -> bool {
    said.ending == Ending::Failed && *asked == HowMany::Reps(RepRange::just(1))
}

/// Seconds of a hold, where its start was said.
fn measured(run: &Run, cursor: &Cursor, asked: &HowMany, at: &Reading) -> Option<Amount> {
    let HowMany::Seconds(_) = asked else { return None };
    let (set, started) = run.started.as_ref()?;
    if *set != cursor.set {
        return None;
    }
    let seconds = Passed::between(started, at).ms().div_euclid(1000);
    Some(Amount::Seconds(Seconds::new(u32::try_from(seconds).ok()?)))
}

fn check(asked: &HowMany, amount: &Amount, said: &Set) -> Result<(), Refusal> {
    if !asked.same_kind(amount) {
        return Err(Refusal::WrongKind);
    }
    check_bounds(amount, said)
}

fn check_bounds(amount: &Amount, said: &Set) -> Result<(), Refusal> {
    let (size, bound) = match amount {
        Amount::Reps(reps) => (i128::from(*reps), bounds::REPS),
        Amount::Seconds(seconds) => (i128::from(seconds.count()), bounds::SECONDS),
        Amount::Metres(distance) => (i128::from(distance.millimetres()), bounds::DISTANCE),
    };
    if !bound.holds(size) || !bounds::REPS.holds(i128::from(said.helped)) {
        return Err(Refusal::OutOfRange);
    }
    if said.load.is_some_and(|load| !bounds::MASS.holds(i128::from(load.nanograms()))) {
        return Err(Refusal::OutOfRange);
    }
    // The last part of a set may come to nothing; a set as called can't.
    if size == 0 && said.ending == Ending::AsCalled && !said.last {
        return Err(Refusal::NothingDone);
    }
    Ok(())
}

/// The load that was on: what the lifter says, what was called, or what was on last.
fn load_done(
    run: &Run,
    entry: &EntryRun,
    set: &SetRun,
    cursor: &Cursor,
    said: &Set,
) -> Result<Load, Refusal> {
    let called = run.load_at(cursor);
    match (said.load, called) {
        (Some(figure), Some(load)) if load.figure == Some(figure) => Ok(load.clone()),
        (Some(figure), like) => load_of(run, entry, figure, true, like),
        (None, Some(load)) => Ok(load.clone()),
        (None, None) => last_load(entry).cloned().map_or_else(|| bare(&set.call), Ok),
    }
}

/// The load of the set before, where the lifter finds it and has found one.
fn last_load(entry: &EntryRun) -> Option<&Load> {
    entry.sets.iter().rev().find_map(|set| set.parts.last()).map(|part| &part.done.load)
}

/// A load of nothing: right for the body and for what has no number, else it has to be said.
fn bare(call: &Call) -> Result<Load, Refusal> {
    match &call.load {
        CallLoad::Chosen {
            counting: counting @ (Counting::Added | Counting::Unnumbered),
            body,
        } => Ok(Load {
            meant: None,
            figure: (*counting == Counting::Added).then(Default::default),
            counting: *counting,
            rig: Rig::Body,
            body: *body,
            set_up: None,
        }),
        CallLoad::Chosen { .. } | CallLoad::AfterTop { .. } | CallLoad::Known(_) => {
            Err(Refusal::LoadNeeded)
        }
    }
}

/// The load of the next part, where what was really on makes it another than the sheet's.
fn next_load(
    run: &Run,
    entry: &EntryRun,
    set: &SetRun,
    cursor: &Cursor,
    done: &Load,
) -> Option<Load> {
    let Structure::Drop { off } = &set.call.structure else { return None };
    let called = run.load_at(cursor).and_then(|load| load.figure);
    if called.is_some() && called == done.figure {
        return None;
    }
    drop_from(run, entry, done, *off.get(usize::from(cursor.part))?)
}

/// The set that a set leads to: the next step of a climb or a test, one more until hard enough or
/// until the total.
fn follow_on(run: &Run, id: SetId) -> Result<Option<Event>, Refusal> {
    let Some(entry) = run.entries.get(&id.entry) else { return Ok(None) };
    let set = set_of(run, id)?;
    let sets = || {
        entry.sets.iter().filter(|other| {
            other.call.round > 0
                && (other.call.row, other.call.side) == (set.call.row, set.call.side)
        })
    };
    let Some(next) = entry.next_set() else { return Ok(None) };
    // A set of the row that is still to come goes first.
    if set.call.round == 0 || usize::from(next.set) >= MOST_SETS || sets().any(SetRun::pending) {
        return Ok(None);
    }
    let Some(last) = set.parts.last() else { return Ok(None) };
    let ending = last.done.ending;
    let count = sets().filter(|other| other.begun()).count();
    let round = sets().map(|other| other.call.round).max().unwrap_or(0).saturating_add(1);
    let same =
        Call { round, load: CallLoad::Known(last.done.load.clone()), ..Call::clone(&set.call) };
    let call = match set.call.flow {
        Flow::Listed | Flow::Clock { .. } => None,
        _ if matches!(ending, Ending::Pain | Ending::Equipment) => None,
        Flow::Climb { to, step, most } => {
            let to = if entry.unguarded() { kept(to) } else { to };
            let reached = last.done.left.is_none_or(|left| left <= to.left.to);
            let goes_on = !reached && ending == Ending::AsCalled && count < usize::from(most);
            goes_on.then(|| moved(run, entry, set, same, step)).flatten()
        }
        Flow::Test { .. } if entry.unguarded() => None,
        Flow::Test { step, most } => single(run, entry, set, same, step, most),
        Flow::Repeat { until, most } => {
            let until = if entry.unguarded() { kept(until) } else { until };
            let reached = last.done.left.is_some_and(|left| left <= until.left.to);
            let goes_on = !reached && ending == Ending::AsCalled && count < usize::from(most);
            goes_on.then_some(same)
        }
        Flow::Total { reps, most } => {
            let so_far: u32 = sets().map(|other| u32::from(other.reps())).sum();
            let remaining = u32::from(reps).saturating_sub(so_far);
            let goes_on = remaining > 0 && count < usize::from(most);
            goes_on.then(|| Call { how_many: shortened(same.how_many, remaining), ..same })
        }
    };
    let call = call.map(|call| within_reserve(run, entry, call));
    Ok(call.map(|call| Event::SetAdded { set: next, call }))
}

/// A call with its load moved by a share of what was just lifted; none where this gym can't make a
/// load on that side of it.
fn moved(run: &Run, entry: &EntryRun, set: &SetRun, call: Call, by: Percent) -> Option<Call> {
    let last = &set.parts.last()?.done.load;
    let from = last.figure?;
    let to = by.of(from)?.checked_add(from)?;
    let load = load_of(run, entry, to, false, Some(last)).ok()?;
    let went = load.figure?;
    if (by.hundredths() > 0) != (went > from) || went == from {
        return None;
    }
    Some(Call {
        reason: Reason(vec![Because::ClimbStep { step: by, from }]),
        part_loads: drops(run, entry, set, &load),
        load: CallLoad::Known(load),
        ..call
    })
}

/// The next single of a test, by the protocol; none when the max is found or nothing is left to try.
fn single(
    run: &Run,
    entry: &EntryRun,
    set: &SetRun,
    call: Call,
    step: Percent,
    most: u8,
) -> Option<Call> {
    let last = set.parts.last()?;
    // With nothing left in the lifter there is nothing heavier to find.
    if is_lifted(&last.done) && last.done.left == Some(Reserve::NONE) {
        return None;
    }
    let tries: Vec<Try> = entry
        .sets
        .iter()
        .filter(|other| other.call.kind == SetKind::Test && other.call.row == set.call.row)
        .filter_map(|other| other.parts.last())
        // What was interrupted says neither that it goes nor that it does not: it is tried again.
        .filter(|part| part.done.ending != Ending::Interrupted)
        .filter_map(|part| {
            Some(Try { load: part.done.load.moved()?, lifted: is_lifted(&part.done) })
        })
        .collect();
    let Some(first) = tries.first() else { return Some(call) };
    let expected = entry.entry.test;
    let test = Test {
        // Where nothing was known the first single is all there is to go by.
        expected: expected.and_then(|expected| expected.max).unwrap_or(first.load),
        region: expected.map_or(Region::Upper, |expected| expected.region),
        step,
        most_tries: most,
    };
    let like = &last.done.load;
    let body = like.moved()?.checked_sub(like.figure?)?;
    let makes = Gym { equipment: &run.equipment, implement: &entry.entry.implement, like, body };
    let Some(After::Single { load, asked, because }) = test.after(&tries, &makes) else {
        return None;
    };
    let figure = load.checked_sub(body)?;
    let mut why =
        vec![Because::Single { rule: because, last: last.done.load.moved()?, gives: asked }];
    if body != Mass::ZERO {
        let gives = asked.checked_sub(body)?;
        why.push(Because::LessBody { moved: asked, body, gives });
    }
    if asked != load {
        why.push(Because::Made { asked: asked.checked_sub(body)?, made: figure });
    }
    let meant = asked.checked_sub(body);
    let load = Load { meant, ..load_of(run, entry, figure, false, Some(like)).ok()? };
    Some(Call { reason: Reason(why), part_loads: Vec::new(), load: CallLoad::Known(load), ..call })
}

/// Whether a single counts: done as called, by the lifter alone. Form that went is no lift.
fn is_lifted(done: &Done) -> bool {
    done.ending == Ending::AsCalled && done.helped == 0 && done.amount.reps().unwrap_or(0) > 0
}

/// What this gym makes for an exercise, as moved mass.
struct Gym<'a> {
    equipment: &'a Equipment,
    implement: &'a str,
    like: &'a Load,
    /// The body's part.
    body: Mass,
}

impl Gym<'_> {
    fn fit(&self, moved: Mass, fit: Fit) -> Option<Mass> {
        let figure = moved.checked_sub(self.body)?;
        let made = make(self.equipment, self.implement, self.like.counting, figure, fit, false);
        made.ok()?.0.checked_add(self.body)
    }
}

impl Makes for Gym<'_> {
    fn nearest(&self, load: Mass) -> Option<Mass> {
        self.fit(load, Fit::Nearest)
    }

    fn above(&self, load: Mass) -> Option<Mass> {
        let over = load.checked_add(Mass::from_nanograms(1))?;
        self.fit(over, Fit::Over).filter(|made| *made > load)
    }
}

/// The call of one more set toward a total: no more than what is left of it.
fn shortened(asked: HowMany, remaining: u32) -> HowMany {
    let remaining = u16::try_from(remaining).unwrap_or(u16::MAX);
    match asked {
        HowMany::Reps(range) => {
            HowMany::Reps(RepRange { from: range.from.min(remaining), to: range.to.min(remaining) })
        }
        HowMany::Open { at_least, stop } => {
            HowMany::Open { at_least: at_least.min(remaining), stop }
        }
        other @ (HowMany::Seconds(_) | HowMany::Metres(_)) => other,
    }
}
