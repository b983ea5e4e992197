//! Rows that can never progress by their own rule.

use super::laid;
use super::{About, Check, Finding, Level, Look};
use crate::call::{HowMany, LoadCall};
use crate::plan::{RuleKind, SetCall, Step};
use crate::progress::makes::Makes;
use crate::quantity::Mass;
use crate::session::here::Here;

/// Exercises whose rule can do nothing in any week, one finding for each. Common practice: a rule
/// that can't act is a slip of the pen.
pub(super) fn rows(look: Look<'_>) -> Vec<Finding> {
    let mut found = Vec::new();
    for (session, written) in look.plan.sessions.iter().enumerate() {
        for (slot, of) in written.exercises.iter().enumerate() {
            let Some(exercise) = look.catalogue.get(&of.exercise) else { continue };
            let here = Here::new(look.equipment, exercise, of.counting);
            let at = (session, slot);
            let weeks = || look.laid.weeks().flat_map(|(.., sessions)| laid::rows(sessions, at));
            let sets: Vec<&SetCall> = weeks().flat_map(|row| &row.block.sets).collect();
            if sets.is_empty() {
                continue;
            }
            let about = of.next.iter().find_map(|rule| by_rule(&here, rule.kind, rule.step, &sets));
            if let Some(about) = about {
                let check = (Check::CannotProgress, Level::Change);
                found.push(look.at_exercise(check, at, 0, &["next"], about));
            }
        }
    }
    found
}

fn by_rule(
    here: &Here<'_>,
    kind: RuleKind,
    step: Option<Step>,
    sets: &[&SetCall],
) -> Option<About> {
    let all = |holds: &dyn Fn(&SetCall) -> bool| sets.iter().all(|set| holds(set));
    if kind == RuleKind::ByEffort {
        return all(&|set| set.effort.is_none()).then_some(About::NoTarget);
    }
    if kind == RuleKind::AsPlanned {
        return None;
    }
    if all(&|set| matches!(set.load, LoadCall::SetUp { load: None, .. })) {
        return Some(About::NoFigure);
    }
    let nothing = nothing_above(here, step, sets);
    if nothing.is_some() || kind != RuleKind::DoubleProgression {
        return nothing;
    }
    let one = |set: &SetCall| match set.how_many {
        HowMany::Reps(range) => range.from == range.to,
        HowMany::Seconds(range) => range.from == range.to,
        HowMany::Metres(range) => range.from == range.to,
        HowMany::Open { .. } => false,
    };
    all(&one).then_some(About::RangeOfOne)
}

/// A written load above which this gym makes nothing, or nothing by a whole step.
fn nothing_above(here: &Here<'_>, step: Option<Step>, sets: &[&SetCall]) -> Option<About> {
    if !here.lacks().is_empty() {
        return None;
    }
    let figures = sets.iter().map(|set| match set.load {
        LoadCall::Mass(mass) | LoadCall::Added(mass) => Some(mass),
        _ => None,
    });
    // The lightest of the row: while that can rise, something can.
    let load = figures.collect::<Option<Vec<Mass>>>()?.into_iter().min()?;
    let made = here.nearest(load)?;
    let Some(_) = here.above(made) else { return Some(About::NothingHeavier { load: made }) };
    let Some(Step::Mass(step)) = step else { return None };
    let almost = made.checked_add(step)?.checked_sub(Mass::from_nanograms(1))?;
    here.above(almost).is_none().then_some(About::StepTooFar { load: made, step })
}
