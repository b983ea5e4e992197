//! The outcomes of a session for maxes: a test, or estimates above it.

use std::collections::BTreeMap;

use super::ground::{Ground, outcome};
use crate::call::{Ending, Flow, SetId, SetKind, WeekKind};
use crate::history::{DoneSet, hard_estimate};
use crate::owners::{Change, MaxOrigin, Outcome, Owner, Proposal, Question, Why};
use crate::plan::RaiseMax;
use crate::progress::estimate::{Formula, is_estimated};
use crate::quantity::{Mass, MassUnit, Percent, Reserve, Rounding};
use crate::session::{EntryRun, Run};

/// Sets at this share of the max or more say something of it (common practice).
const HEAVY_ENOUGH: Percent = Percent::whole(70);
/// Estimates raise a max by this at most at once (common practice).
const MOST_AT_ONCE: Percent = Percent::from_hundredths(10_250);

/// What an estimate that raises a max is taken down to in a gym of that unit: a half kilogram or a
/// whole pound.
pub(super) const fn step_in(unit: MassUnit) -> Mass {
    match unit {
        MassUnit::Kilogram => Mass::from_nanograms(MassUnit::Kilogram.nanograms() / 2),
        MassUnit::Pound => Mass::whole(1, MassUnit::Pound),
    }
}

/// An outcome for each exercise whose sets say something of its max; sets in `spent` have said it
/// already.
pub(super) fn outcomes(
    run: &Run,
    sets: &[DoneSet],
    spent: &[SetId],
    ground: &Ground<'_>,
) -> Vec<Outcome> {
    let mut lifts: BTreeMap<&str, (Vec<&EntryRun>, Vec<&DoneSet>)> = BTreeMap::new();
    for entry in run.entries.values().filter(|entry| !entry.entry.terms.is_empty()) {
        lifts.entry(&entry.entry.exercise).or_default().0.push(entry);
    }
    for set in sets.iter().filter(|set| set.is_work()) {
        if let Some((_, all)) = lifts.get_mut(set.exercise.as_str()) {
            all.push(set);
        }
    }
    let found = lifts.into_iter().filter_map(|(lift, (entries, sets))| {
        let raise = entries.iter().flat_map(|entry| &entry.entry.terms).map(|terms| terms.raise);
        let raise = raise.reduce(|one, _| one)?;
        let owner = Owner::Max(lift.to_owned());
        let max = ground.owners.max(lift);
        let now = max.now.as_ref().map(|(mass, ..)| *mass);
        if sets.iter().any(|set| set.kind == SetKind::Test) {
            let guarded = !entries.iter().any(|entry| entry.unguarded());
            return (raise != RaiseMax::Never)
                .then(|| tested(&owner, now, &entries, &sets, guarded))
                .flatten();
        }
        let estimates = raise == RaiseMax::Estimates
            && ground.catalogue.get(lift).is_some_and(is_estimated)
            && run.sheet.week_kind == WeekKind::Ordinary
            && entries.iter().all(|entry| entry.entry.pain.is_none())
            && sets.iter().all(|set| set.ending != Ending::Pain)
            && entries
                .iter()
                .flat_map(|entry| &entry.entry.terms)
                .all(|terms| terms.cut.is_none_or(|cut| cut.keep >= Percent::WHOLE));
        if !estimates {
            return None;
        }
        estimated(&owner, run.equipment.unit, now, max.above, &sets, spent)
    });
    found.collect()
}

/// A test sets the max where it was ended by a miss, the last try, or nothing left; what is lower
/// than the max that stands, or was not ended, is asked first; and so is what was lifted before
/// nothing guarded the lifter any more.
fn tested(
    owner: &Owner,
    now: Option<Mass>,
    entries: &[&EntryRun],
    sets: &[&DoneSet],
    guarded: bool,
) -> Option<Outcome> {
    let tries = || sets.iter().filter(|set| set.kind == SetKind::Test);
    let lifted = |set: &&&DoneSet| {
        set.helped == 0
            && set.ending == Ending::AsCalled
            && set.amount().reps().is_some_and(|reps| reps >= 1)
    };
    let singles = tries().filter(lifted).filter(|set| set.amount().reps() == Some(1));
    let best = singles.filter_map(|set| Some((set.moved?, set.key.set))).max()?;
    let ended = tries().any(|set| {
        let failed = set.ending == Ending::Failed && set.moved > Some(best.0);
        failed || (set.moved == Some(best.0) && set.left == Some(Reserve::NONE))
    }) || entries.iter().any(|entry| enough(entry));
    let mut found = Outcome { sets: vec![best.1], ..outcome(owner, Why::Tested) };
    if guarded && ended && now.is_none_or(|now| best.0 >= now) {
        if now != Some(best.0) {
            found.changes.push(Change::Max { mass: best.0, origin: MaxOrigin::Tested });
        }
    } else if now != Some(best.0) {
        found.proposal = Some(Proposal { question: Question::Test, to: Some(best.0) });
    }
    Some(found)
}

/// Whether the tries were used up, or the lifter said that it was enough by leaving the next out.
fn enough(entry: &EntryRun) -> bool {
    let tests: Vec<_> = entry.sets.iter().filter(|set| set.call.kind == SetKind::Test).collect();
    let begun = tests.iter().filter(|set| set.begun()).count();
    let most = tests.iter().find_map(|set| match set.call.flow {
        Flow::Test { most, .. } => Some(usize::from(most)),
        _ => None,
    });
    most.is_some_and(|most| begun >= most)
        || (begun > 0 && (entry.skipped || tests.iter().any(|set| set.skipped)))
        || (begun > 0 && tests.iter().all(|set| !set.pending()))
}

/// Two sessions whose best estimates both lie above the max raise it: the smaller counts, and the
/// pair is spent.
fn estimated(
    owner: &Owner,
    unit: MassUnit,
    now: Option<Mass>,
    above: Option<Mass>,
    sets: &[&DoneSet],
    spent: &[SetId],
) -> Option<Outcome> {
    let formula = Formula::default();
    let heavy = |set: &DoneSet| {
        now.is_none_or(|now| {
            set.moved.zip(HEAVY_ENOUGH.of(now)).is_some_and(|(moved, least)| moved >= least)
        })
    };
    let best = sets
        .iter()
        .filter(|set| !spent.contains(&set.key.set) && heavy(set))
        .filter_map(|set| Some((hard_estimate(set, formula)?.max, set.key.set)))
        .max()?;
    let (estimate, set) = best;
    let found = |why| Outcome { sets: vec![set], ..outcome(owner, why) };
    if now.is_some_and(|now| estimate <= now) {
        return Some(found(Why::NotAbove { estimate }));
    }
    let Some(before) = above else {
        let change = Change::AboveMax(estimate);
        return Some(Outcome { changes: vec![change], ..found(Why::AboveOnce { estimate }) });
    };
    let smaller = estimate.min(before);
    let most = now.and_then(|now| MOST_AT_ONCE.of(now));
    let capped = most.map_or(smaller, |most| smaller.min(most));
    let mass = capped.to_multiple(step_in(unit), Rounding::Down)?;
    let mut found = found(Why::AboveTwice { estimate: smaller });
    if now.is_none_or(|now| mass > now) {
        let origin = MaxOrigin::Raised { formula: formula.slug().into() };
        found.changes.push(Change::Max { mass, origin });
    }
    Some(found)
}
