//! What this equipment can step.

use super::{About, Check, Finding, Level, Look};
use crate::call::{HowMany, LoadCall, WeekKind};
use crate::catalogue::Counting;
use crate::coach::laid;
use crate::plan::{Rule, RuleKind, SetCall, Step};
use crate::progress::makes::Makes;
use crate::quantity::{Mass, MassUnit, Percent};
use crate::session::here::Here;

/// A step of more than a tenth, in hundredths of a percent, is more than one takes: 2–10 % (ACSM
/// Position Stand 2009, MSSE 41(3):687–708).
const MUCH: i64 = 1_000;

/// Exercises whose rule wants steps that this gym can't make, one finding for each.
pub(super) fn coarse(look: Look<'_>) -> Vec<Finding> {
    let mut found = Vec::new();
    for (session, written) in look.plan.sessions.iter().enumerate() {
        for (slot, of) in written.exercises.iter().enumerate() {
            let Some(exercise) = look.catalogue.get(&of.exercise) else { continue };
            let here = Here::new(look.equipment, exercise, of.counting);
            if here.counting == Counting::Unnumbered || !here.lacks().is_empty() {
                continue;
            }
            let at = (session, slot);
            let rule = of.next.iter().find(|rule| steps(rule.kind));
            let about = match rule {
                Some(rule) => by_rule(look, &here, rule, at).map(|about| (about, &["next"][..])),
                None => made_the_same(look, &here, at).map(|about| (about, &["load"][..])),
            };
            if let Some((about, keys)) = about {
                let check = (Check::CoarseSteps, Level::LookAt);
                found.push(look.at_exercise(check, at, 0, keys, about));
            }
        }
    }
    found
}

/// Whether a rule adds load by steps of its own.
fn steps(kind: RuleKind) -> bool {
    match kind {
        RuleKind::DoubleProgression
        | RuleKind::TwoForTwo
        | RuleKind::AddWhenMade
        | RuleKind::MoreAddedLoad => true,
        // Help is stepped by the machine; a plan's own numbers and efforts ask for what they ask.
        RuleKind::AsPlanned | RuleKind::ByEffort | RuleKind::LessAssistance => false,
    }
}

/// A load of the exercise that the plan names, or one to measure the rule's own step at.
fn by_rule(look: Look<'_>, here: &Here<'_>, rule: &Rule, at: (usize, usize)) -> Option<About> {
    let (_, sessions) = look.laid.of_kind(WeekKind::Ordinary).next()?;
    let sets: Vec<&SetCall> = laid::rows(sessions, at).flat_map(|row| &row.block.sets).collect();
    let named = sets.iter().filter_map(|set| match &set.load {
        LoadCall::Mass(mass) => Some((*mass, *set)),
        _ => None,
    });
    let named = named.max_by_key(|(mass, _)| *mass);
    let measured = match here.counting {
        Counting::Added => Mass::ZERO,
        Counting::EachHand | Counting::One => Mass::whole(12, MassUnit::Kilogram),
        _ => Mass::whole(60, MassUnit::Kilogram),
    };
    let load = here.nearest(named.map_or(measured, |(mass, _)| mass))?;
    let smallest = here.above(load)?.checked_sub(load)?;
    if let Some(Step::Mass(asked)) = rule.step
        && smallest > asked
    {
        return Some(About::StepUnmade { asked, step: smallest, load });
    }
    let (_, set) = named.filter(|_| load > Mass::ZERO)?;
    let wanted = match rule.step {
        Some(Step::Mass(mass)) => mass,
        Some(Step::Share(_)) => return None,
        None => here.usual_step(),
    };
    let step = smallest.max(wanted);
    let share = i64::try_from(i128::from(step.nanograms()) * 10_000 / i128::from(load.nanograms()));
    let share = share.ok().filter(|share| *share > MUCH)?;
    if rule.kind == RuleKind::DoubleProgression && range_carries(set, load, step) {
        return None;
    }
    let share = Percent::from_hundredths(i32::try_from(share).ok()?);
    Some(About::Coarse { load, step, share })
}

/// Whether the range of repetitions is wide enough for the step: from its top, the estimate (Epley
/// 1985) leaves its bottom at least. `w (1 + top/30) = (w + step) (1 + reps/30)`.
fn range_carries(set: &SetCall, load: Mass, step: Mass) -> bool {
    let HowMany::Reps(range) = set.how_many else { return true };
    let (top, bottom) = (i128::from(range.to) + 30, i128::from(range.from) + 30);
    let (load, step) = (i128::from(load.nanograms()), i128::from(step.nanograms()));
    top * load >= bottom * (load + step)
}

/// Two ordinary weeks one after the other whose loads differ and come to the same here.
fn made_the_same(look: Look<'_>, here: &Here<'_>, at: (usize, usize)) -> Option<About> {
    let mut before: Option<(usize, Mass)> = None;
    for (week, sessions) in look.laid.of_kind(WeekKind::Ordinary) {
        let masses = laid::rows(sessions, at).flat_map(|row| &row.block.sets);
        let heaviest = masses.filter_map(|set| match &set.load {
            LoadCall::Mass(mass) => Some(*mass),
            _ => None,
        });
        let Some(load) = heaviest.max() else { continue };
        if let Some((then, last)) = before
            && last != load
            && let Some(made) = here.nearest(load)
            && here.nearest(last) == Some(made)
        {
            let loads = (last, load);
            return Some(About::MadeTheSame { weeks: (then + 1, week + 1), loads, made });
        }
        before = Some((week, load));
    }
    None
}
