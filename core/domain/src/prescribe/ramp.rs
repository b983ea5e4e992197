//! The warm-up steps of an exercise, planned together with its work sets.

use super::slot::Slot;
use super::spread;
use crate::call::SetKind;
use crate::call::{Flow, HowMany, Manner, Structure};
use crate::catalogue::{Counting, Muscle};
use crate::equipment::changes::{self, Wanted};
use crate::equipment::{Fit, Rig, bounds};
use crate::plan::{Ramp, RampStep};
use crate::progress::test_day;
use crate::quantity::{Mass, Percent, RepRange, Reps, Seconds};
use crate::session::{Because, Call, CallLoad, Load, Reason};

/// One step, for a lift on muscles that are warm (common practice).
const SHORT: [RampStep; 1] = [RampStep { share: Some(Percent::whole(60)), reps: 5 }];

/// For a first lift with dumbbells, a stack or a machine (common practice).
const WITHOUT_A_BAR: [RampStep; 2] = [
    RampStep { share: Some(Percent::whole(50)), reps: 8 },
    RampStep { share: Some(Percent::whole(75)), reps: 4 },
];

/// Repetitions with the body alone, before work with load on it (common practice).
const BODY_ALONE: Reps = 5;

/// Repetitions with the empty bar (common practice).
const EMPTY_BAR: Reps = 8;

/// Repetitions of a first step from the floor: it is no light one (common practice).
const FROM_THE_FLOOR: Reps = 5;

/// Repetitions of the first step before a test: enough to feel the bar (common practice).
const BEFORE_A_TEST: Reps = 5;

/// How far a step that is written may move from its share to save handling plates, as a share of
/// the work load; a smallest pair at the least (common practice).
const SLACK: Percent = Percent::from_hundredths(250);

/// Rest after a step: 60 s, 90 s from three quarters of the work load, 120 s from nine tenths
/// (common practice); never longer than after the work.
fn rest_after(share: Option<Percent>) -> Seconds {
    Seconds::new(match share.map_or(0, Percent::hundredths) {
        9_000.. => 120,
        7_500.. => 90,
        _ => REST_AFTER_LIGHT,
    })
}

const REST_AFTER_LIGHT: u32 = 60;

/// A ramp as it is asked for.
#[derive(Default)]
struct Steps {
    steps: Vec<Asked>,
    /// How far one may move, where that is not said otherwise.
    slack: Option<Mass>,
    /// None is heavier.
    most: Option<Mass>,
}

/// A step as it is asked for.
struct Asked {
    figure: Mass,
    reps: Reps,
    rest: Seconds,
    why: Because,
}

impl Asked {
    /// A step that is what it is and may not move.
    const fn firm(&self) -> bool {
        matches!(self.why, Because::EmptyBar | Because::FullSizePlates)
    }
}

/// The ramp to the first work load of `work`; `warm` are the muscles that earlier exercises
/// trained. The plates of the work sets are put so that the whole takes the fewest changes; their
/// loads stay.
pub(super) fn calls(slot: &Slot<'_>, warm: &[Muscle], work: &mut [Call]) -> Vec<Call> {
    let first = work.iter().find_map(|call| match &call.load {
        CallLoad::Known(load) => Some((call.clone(), load.clone(), load.figure?)),
        CallLoad::AfterTop { .. } | CallLoad::Chosen { .. } => None,
    });
    let Some((first, load, figure)) = first else { return Vec::new() };
    if slot.here.counting == Counting::Added {
        return body_alone(slot, &first, load, figure).into_iter().collect();
    }
    let asked = if wants_ramp(slot, &first) {
        asked(slot, warm, &first, &load, figure)
    } else {
        Steps::default()
    };
    let full_size = from_the_floor(slot, &load).is_some();
    let steps = together(slot, &asked, full_size, figure, work)
        .unwrap_or_else(|| each_nearest(slot, &asked.steps, full_size));
    let mut calls: Vec<Call> = Vec::new();
    let mut heaviest: Option<Mass> = None;
    for (step_asked, made) in asked.steps.iter().zip(steps) {
        let Some((made, rig)) = made else { continue };
        // Steps that this gym can't tell apart are one.
        let too_heavy = made >= figure || asked.most.is_some_and(|most| made > most);
        if too_heavy || heaviest.is_some_and(|heaviest| made <= heaviest) {
            continue;
        }
        let asked = step_asked;
        heaviest = Some(made);
        let mut why = vec![asked.why.clone()];
        if made != asked.figure {
            let nearest = slot.here.make(asked.figure, Fit::Nearest, full_size);
            why.push(if nearest.is_some_and(|(nearest, _)| nearest == made) {
                Because::Made { asked: asked.figure, made }
            } else {
                Because::MovedWithinSlack { asked: asked.figure }
            });
        }
        let load = Load {
            meant: Some(asked.figure),
            figure: Some(made),
            rig,
            set_up: None,
            ..load.clone()
        };
        calls.push(step(&first, load, asked.reps, asked.rest, why));
    }
    calls
}

fn wants_ramp(slot: &Slot<'_>, first: &Call) -> bool {
    matches!(first.how_many, HowMany::Reps(_) | HowMany::Open { .. })
        && !slot.exercise.movement.is_speed_work()
}

/// Before work with load on the body: the body alone.
fn body_alone(slot: &Slot<'_>, first: &Call, load: Load, figure: Mass) -> Option<Call> {
    let ramp = slot.entry.ramp.as_ref().or(slot.session.warm_up.ramp.as_ref());
    if figure <= Mass::ZERO || ramp == Some(&Ramp::None) || !wants_ramp(slot, first) {
        return None;
    }
    let zero = Some(Mass::ZERO);
    let bare = Load { meant: zero, figure: zero, rig: Rig::Body, set_up: None, ..load };
    Some(step(first, bare, BODY_ALONE, rest_after(None), vec![Because::BodyAlone]))
}

/// The steps as plan, protocol or usage ask for them.
fn asked(slot: &Slot<'_>, warm: &[Muscle], first: &Call, load: &Load, figure: Mass) -> Steps {
    let of = load.meant.unwrap_or(figure);
    if let (Flow::Test { .. }, None) = (first.flow, &slot.entry.ramp) {
        return Steps { steps: to_a_test(slot, load, of), ..Steps::default() };
    }
    let bar = empty_bar(load);
    let ask = |step: &RampStep| match step.share {
        Some(share) => of_work(share, of, step.reps, rest_after(step.share)),
        // Only a bar can be empty and still be something to lift.
        None => bar.map(|bar| at_start(bar, step.reps, Because::EmptyBar)),
    };
    let (steps, as_written): (&[RampStep], bool) =
        match chosen(slot, warm, bar.is_some(), speed(slot)) {
            Ramp::None => return Steps::default(),
            Ramp::Short => (&SHORT, false),
            Ramp::Usual => match start(slot, load) {
                Some(start) => return usual(start, figure),
                None => (&WITHOUT_A_BAR, false),
            },
            Ramp::Steps(steps) => (steps, true),
        };
    let mut steps: Vec<Asked> = steps.iter().filter_map(ask).collect();
    if let Some(least) = from_the_floor(slot, load) {
        steps = at_height(least, steps);
    }
    let steps = if as_written { steps } else { thinned(steps, load, figure) };
    Steps { steps, ..Steps::default() }
}

/// A share of a load.
fn of_work(share: Percent, of: Mass, reps: Reps, rest: Seconds) -> Option<Asked> {
    let gives = share.of(of)?;
    Some(Asked { figure: gives, reps, rest, why: Because::RampShare { share, of, gives } })
}

/// What a ramp starts from.
const fn at_start(figure: Mass, reps: Reps, why: Because) -> Asked {
    Asked { figure, reps, rest: Seconds::new(REST_AFTER_LIGHT), why }
}

/// The lightest there is to lift with a bar: from the floor with full-size plates on, else empty.
fn start(slot: &Slot<'_>, load: &Load) -> Option<Asked> {
    match from_the_floor(slot, load) {
        Some(least) => Some(at_start(least, FROM_THE_FLOOR, Because::FullSizePlates)),
        None => empty_bar(load).map(|bar| at_start(bar, EMPTY_BAR, Because::EmptyBar)),
    }
}

/// The usual steps, spread between start and work load.
fn usual(start: Asked, figure: Mass) -> Steps {
    let (from, most_reps) = (start.figure, start.reps);
    let step = |step: spread::Spread| {
        let share = |whole| Percent::whole(whole).of(figure).is_some_and(|at| step.figure >= at);
        let why = Because::RampSpread {
            step: step.step,
            of: step.of,
            from,
            to: figure,
            gives: step.figure,
        };
        let heavy = share(75).then_some(Percent::whole(75));
        let (figure, reps) = (step.figure, step.reps.min(most_reps));
        Asked { figure, reps, rest: rest_after(heavy), why }
    };
    Steps {
        slack: spread::slack(from, figure),
        most: spread::LAST_SHARE.of(figure),
        steps: std::iter::once(start)
            .chain(spread::steps(from, figure).into_iter().map(step))
            .collect(),
    }
}

/// Whether it is done for speed, and so with light loads.
fn speed(slot: &Slot<'_>) -> bool {
    slot.entry.blocks.iter().flat_map(|block| &block.sets).all(|set| set.speed)
}

/// What the exercise says; else the session's for a first lift on these muscles, one step for a
/// later one with a bar or for speed work, and none for anything else (common practice). A session without a ramp has
/// none for any.
fn chosen<'a>(slot: &'a Slot<'_>, warm: &[Muscle], with_bar: bool, speed: bool) -> &'a Ramp {
    if let Some(ramp) = &slot.entry.ramp {
        return ramp;
    }
    if slot.session.warm_up.ramp == Some(Ramp::None) {
        return &Ramp::None;
    }
    let warmed = slot.exercise.direct.iter().any(|muscle| warm.contains(muscle));
    match (slot.exercise.is_compound(), warmed) {
        (true, false) if speed => &Ramp::Short,
        (true, false) => slot.session.warm_up.ramp.as_ref().unwrap_or(&Ramp::Usual),
        (true, true) if with_bar => &Ramp::Short,
        (true, true) | (false, _) => &Ramp::None,
    }
}

/// A light start, then the protocol's steps to the first single of a test.
fn to_a_test(slot: &Slot<'_>, load: &Load, single: Mass) -> Vec<Asked> {
    let ask = |step: test_day::WarmUpStep| of_work(step.share, single, step.reps, step.rest);
    let steps = test_day::warm_up(slot.exercise.region()).into_iter().filter_map(ask);
    let start = start(slot, load).map(|start| Asked { reps: BEFORE_A_TEST, ..start });
    let least = start.as_ref().map(|start| start.figure);
    start
        .into_iter()
        .chain(steps.filter(|step| least.is_none_or(|least| step.figure > least)))
        .collect()
}

/// The bar of a load with nothing on.
fn empty_bar(load: &Load) -> Option<Mass> {
    match &load.rig {
        Rig::Bar { bar_mass, collars, .. } => bar_mass.checked_add(*collars),
        _ => None,
    }
}

/// The bar of a load with the lightest pair of full-size plates, where it is lifted from the floor:
/// what gives it its height. `None` where there are none.
fn from_the_floor(slot: &Slot<'_>, load: &Load) -> Option<Mass> {
    let bar = empty_bar(load).filter(|_| slot.exercise.from_floor)?;
    let plates = slot.source.equipment.plates.iter();
    let pairs = plates.filter(|plate| plate.is_full_size() && plate.pairs > 0);
    let pair = pairs.filter_map(|plate| plate.mass.checked_mul(2)).min()?;
    bar.checked_add(pair)
}

/// What is lighter than the bar at its height becomes that, once.
fn at_height(least: Mass, steps: Vec<Asked>) -> Vec<Asked> {
    let base = steps.iter().any(|step| step.figure <= least);
    let base = base.then_some(at_start(least, FROM_THE_FLOOR, Because::FullSizePlates));
    base.into_iter().chain(steps.into_iter().filter(|step| step.figure > least)).collect()
}

/// Leaves out steps that are near the one before, by half the empty bar or, without a bar, an
/// eighth of the work load (common practice), so that a light load has fewer.
fn thinned(steps: Vec<Asked>, load: &Load, figure: Mass) -> Vec<Asked> {
    let gap = match &load.rig {
        Rig::Bar { bar_mass, .. } => Percent::whole(50).of(*bar_mass),
        _ => Percent::from_hundredths(1_250).of(figure),
    };
    let mut kept: Vec<Asked> = Vec::with_capacity(steps.len());
    for step in steps {
        let far =
            |last: &Asked| step.figure.checked_sub(last.figure).is_some_and(|by| Some(by) >= gap);
        if kept.last().is_none_or(far) {
            kept.push(step);
        }
    }
    kept
}

type Step = Option<(Mass, Rig)>;

fn each_nearest(slot: &Slot<'_>, asked: &[Asked], full_size: bool) -> Vec<Step> {
    asked.iter().map(|step| slot.here.make(step.figure, Fit::Nearest, full_size)).collect()
}

/// Ramp and work sets planned as one, where plates are handled: the steps, with the work sets'
/// plates put right in place. `None` where that can't be done.
fn together(
    slot: &Slot<'_>,
    asked: &Steps,
    full_size: bool,
    work_figure: Mass,
    work: &mut [Call],
) -> Option<Vec<Step>> {
    let mut wanted: Vec<Wanted> =
        asked.steps.iter().map(|step| Wanted { load: step.figure, firm: step.firm() }).collect();
    let mut loads: Vec<&mut Load> = work.iter_mut().flat_map(plated).collect();
    for load in &loads {
        let load = load.figure?;
        // The same again changes nothing.
        if wanted.last() != Some(&Wanted { load, firm: true }) {
            wanted.push(Wanted { load, firm: true });
        }
    }
    if loads.is_empty() || wanted.len() < 2 || wanted.len() > bounds::SETS {
        return None;
    }
    let smallest = slot.source.equipment.plates.iter().filter(|plate| plate.pairs > 0);
    let pair = smallest.filter_map(|plate| plate.mass.checked_mul(2)).min().unwrap_or_default();
    let slack = match (slot.session.warm_up.slack, asked.slack) {
        (None, Some(slack)) => slack,
        (said, _) => said.unwrap_or(SLACK).of(work_figure)?.max(pair),
    };
    let ramp = changes::Ramp {
        on_now: None,
        sets: &wanted,
        slack,
        full_size,
        one_side: slot.here.counting == Counting::EachSide,
    };
    let implement = &slot.exercise.implement;
    let planned = changes::plan(slot.source.equipment, implement, &ramp).ok()?.steps;
    let (steps, firm) = planned.split_at_checked(asked.steps.len())?;
    let mut next = firm.iter();
    let mut now = None;
    for load in &mut loads {
        if now.is_none_or(|now: &changes::Step| Some(now.made.made) != load.figure) {
            now = next.next();
        }
        let now = now.filter(|now| Some(now.made.made) == load.figure)?;
        load.rig = now.made.rig.clone();
    }
    Some(steps.iter().map(|step| Some((step.made.made, step.made.rig.clone()))).collect())
}

/// The loads of a set that plates are handled for, in the order of its parts.
fn plated(call: &mut Call) -> Vec<&mut Load> {
    let mut loads = Vec::new();
    if let CallLoad::Known(load) = &mut call.load {
        loads.push(load);
    }
    if matches!(call.structure, Structure::Drop { .. }) {
        loads.extend(&mut call.part_loads);
    }
    loads.retain(|load| matches!(load.rig, Rig::Bar { .. } | Rig::Posts { .. }));
    loads
}

fn step(first: &Call, load: Load, reps: Reps, rest: Seconds, why: Vec<Because>) -> Call {
    Call {
        kind: SetKind::Ramp,
        row: first.row,
        round: 0,
        flow: Flow::Listed,
        side: None,
        load: CallLoad::Known(load),
        part_loads: Vec::new(),
        how_many: HowMany::Reps(RepRange::just(reps)),
        aim: None,
        effort: None,
        structure: Structure::Straight,
        manner: Manner { technique: first.manner.technique.clone(), ..Manner::default() },
        rest: rest.min(first.rest),
        reason: Reason(why),
    }
}
