//! The outcomes of a session for what is careful of an exercise: pain, and coming back after days
//! without it.

use std::collections::BTreeMap;

use super::evidence::Row;
use super::ground::{Ground, outcome};
use crate::call::{Ending, EntryId, SetKind, WeekKind};
use crate::owners::{Change, Cutting, Outcome, Owner, Why};
use crate::quantity::{Mass, Percent};
use crate::session::{EntryRun, Run, SwapCause};

/// What comes back in a session that is made after a lay-off: 10 % in two, 20 % in four (common
/// practice).
const BACK: i32 = 500;
/// What comes back in a session without pain: a tenth more (common practice).
const AFTER_PAIN: Percent = Percent::whole(110);

pub(super) fn outcomes(run: &Run, ground: &Ground<'_>) -> Vec<Outcome> {
    let mut lifts: BTreeMap<&str, Vec<(EntryId, &EntryRun)>> = BTreeMap::new();
    for (id, entry) in &run.entries {
        lifts.entry(&entry.entry.exercise).or_default().push((*id, entry));
    }
    let mut all: Vec<Outcome> = Vec::new();
    for (lift, entries) in lifts {
        let Some(found) = of_lift(run, lift, &entries, ground) else { continue };
        let joint = ground.catalogue.get(lift).map(|exercise| exercise.movement.joint());
        if let Some(joint) = joint.filter(|_| run.pain_of_joint.iter().any(|one| one == lift)) {
            let owner = Owner::Care(joint.key().to_owned());
            all.push(Outcome { owner, ..found.clone() });
        }
        all.push(found);
    }
    all
}

fn of_lift(
    run: &Run,
    lift: &str,
    entries: &[(EntryId, &EntryRun)],
    ground: &Ground<'_>,
) -> Option<Outcome> {
    let owner = Owner::Care(lift.to_owned());
    let care = ground.owners.care(lift);
    let parts = || {
        entries.iter().flat_map(|(id, entry)| {
            (0_u16..)
                .zip(&entry.sets)
                .flat_map(move |(at, set)| set.parts.iter().map(move |part| (*id, at, set, part)))
        })
    };
    let hurt: Vec<_> = parts().filter(|(.., part)| part.done.ending == Ending::Pain).collect();
    if !hurt.is_empty() {
        let at: Option<Mass> = hurt.iter().filter_map(|(.., part)| part.done.load.figure).min();
        let sets =
            hurt.iter().map(|(entry, set, ..)| crate::call::SetId { entry: *entry, set: *set });
        let changes = vec![Change::Hurt { at }];
        return Some(Outcome { changes, sets: sets.collect(), ..outcome(&owner, Why::Pain) });
    }
    // Given up in pain, whatever its sets were called.
    if entries.iter().any(|(_, entry)| entry.left_for == Some(SwapCause::Pain)) {
        let at = parts().filter_map(|(.., part)| part.done.load.figure).max();
        let changes = vec![Change::Hurt { at }];
        return Some(Outcome { changes, ..outcome(&owner, Why::Pain) });
    }
    let cut = entries.iter().flat_map(|(_, entry)| &entry.entry.terms).find_map(|terms| terms.cut);
    if let Some(pain) = care.pain {
        let ordinary = run.sheet.week_kind == WeekKind::Ordinary;
        let work = |set: &&crate::session::SetRun| set.call.kind != SetKind::Ramp;
        let called = entries.iter().flat_map(|(_, entry)| &entry.sets).filter(work).count();
        let done = entries
            .iter()
            .flat_map(|(_, entry)| &entry.sets)
            .filter(work)
            .filter(|set| set.begun())
            .count();
        let enough = done > 0 && done * 2 >= called;
        let kept = cut.map_or(Percent::WHOLE, |cut| cut.keep);
        if pain.back.is_some() {
            let next = after_pain(kept);
            let change = if next >= Percent::WHOLE {
                Change::Whole
            } else {
                Change::PainFree { keep: kept }
            };
            return enough
                .then(|| Outcome { changes: vec![change], ..outcome(&owner, Why::PainFree) });
        }
        // It stands until half the work sets of an ordinary week's session were done and "no pain"
        // was answered.
        let free = run.pain_free.get(lift) == Some(&true);
        return (free && ordinary && enough).then(|| {
            let change = Change::PainFree { keep: kept };
            Outcome { changes: vec![change], ..outcome(&owner, Why::PainFree) }
        });
    }
    let Some(Cutting::LayOff { .. } | Cutting::EaseIn) = cut.map(|cut| cut.why) else {
        return None;
    };
    let cut = cut?;
    let rows: Vec<Row<'_>> = entries
        .iter()
        .flat_map(|(id, entry)| entry.entry.terms.iter().map(|terms| Row::of(*id, entry, terms)))
        .filter(|row| !row.silent())
        .collect();
    // An ease-in week of the plan is the plan's own matter.
    if rows.is_empty() || (cut.why == Cutting::EaseIn && run.sheet.week_kind == WeekKind::EaseIn) {
        return None;
    }
    let made = rows.iter().all(|row| !row.missed() && !row.lighter());
    let keep = if made {
        Percent::from_hundredths(cut.keep.hundredths().saturating_add(BACK))
    } else {
        cut.keep
    };
    let change = if keep >= Percent::WHOLE { Change::Back } else { Change::LaidOff { keep } };
    Some(Outcome { changes: vec![change], ..outcome(&owner, Why::Back) })
}

/// A tenth more of a share.
pub(crate) fn after_pain(kept: Percent) -> Percent {
    kept.of_share(AFTER_PAIN)
}
