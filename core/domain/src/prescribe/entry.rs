//! One exercise of the sheet.

use super::lifter::Need;
use super::slot::Slot;
use super::{past, ramp, row};
use crate::call::{LoadCall, SetKind};
use crate::catalogue::Muscle;
use crate::equipment::BELT;
use crate::plan;
use crate::quantity::Mass;
use crate::session::here::Here;
use crate::session::{
    Because, Call, CallLoad, Entry, EntryId, EntryPain, Expected, Kit, Substitute,
};

/// Lays an exercise out; `warm` are the muscles that earlier ones have trained.
pub(super) fn entry(slot: &Slot<'_>, id: EntryId, warm: &[Muscle], needs: &mut Vec<Need>) -> Entry {
    let exercise = slot.exercise;
    if exercise.body_share.hundredths() > 0 && slot.body.is_none() {
        needs.push(Need::BodyMass);
    }
    let mut work: Vec<Call> = Vec::new();
    let mut terms = Vec::new();
    for block in &slot.entry.blocks {
        let Some((row, calls)) = row::calls(slot, block, needs) else { continue };
        work.extend(calls);
        // Sets that take their load from the top set are no evidence of their own.
        if !block.sets.iter().all(|set| matches!(set.load, LoadCall::OfTopSet(_))) {
            terms.push(row);
        }
    }
    tops(slot, &mut work);
    let mut lacks = slot.here.lacks();
    if wants_belt(slot, &work) && !lacks.iter().any(|one| one == BELT) {
        lacks.push(BELT.to_owned());
    }
    let mut calls = ramp::calls(slot, warm, &mut work);
    calls.append(&mut work);
    let set_up = match slot.lifter.desk.set_ups.get(exercise.slug.as_ref()) {
        Some(noted) => noted.clone(),
        None => set_up_lines(&slot.entry.set_up),
    };
    let sets = || slot.entry.blocks.iter().flat_map(|block| &block.sets);
    Entry {
        id,
        exercise: exercise.slug.to_string(),
        name: exercise.name_in(slot.source.catalogue.tongue()).to_owned(),
        implement: exercise.implement.to_string(),
        optional: slot.entry.optional,
        main: exercise.main_lift,
        keep: slot.entry.keep,
        instead: substitutes(slot),
        wear: slot.entry.wear.iter().map(|gear| kit(*gear)).collect(),
        set_up,
        lacks,
        // None unless the plan says so: one side rests while the other works.
        rest_between_sides: sets().find_map(|set| set.rest.between_sides).unwrap_or_default(),
        last: past::last_time(slot.past()),
        over_body: exercise.bar_over(),
        supported: past::supported(slot, &calls),
        liked: slot.lifter.desk.liked(&slot.gym.name, &exercise.slug),
        stands_in_for: None,
        terms,
        pain: slot.care().pain.map(|pain| EntryPain {
            since: pain.since,
            running: pain.running,
            comes_back: pain.back.is_some(),
        }),
        test: calls.iter().any(|call| call.kind == SetKind::Test).then(|| Expected {
            max: past::expected(slot).map(|expected| expected.max),
            region: exercise.region(),
        }),
        calls,
    }
}

/// The set that a share of the top set is taken from is the last before it; with none before it
/// there is nothing to take a share of.
fn tops(slot: &Slot<'_>, work: &mut [Call]) {
    let mut top = None;
    let mut leads = Vec::new();
    for (at, call) in work.iter_mut().enumerate() {
        match (&call.load, top) {
            (CallLoad::AfterTop { .. }, Some(top)) => leads.push(top),
            (CallLoad::AfterTop { .. }, None) => {
                call.load = CallLoad::Chosen { counting: slot.here.counting, body: slot.body };
                call.reason.0.push(Because::NothingToGoBy);
            }
            (CallLoad::Known(_) | CallLoad::Chosen { .. }, _) => top = Some(at),
        }
    }
    for at in leads {
        if let Some(call) = work.get_mut(at).filter(|call| call.kind == SetKind::Work) {
            call.kind = SetKind::Top;
        }
    }
}

/// Whether load is asked on the body and there is nothing here to hang it from.
fn wants_belt(slot: &Slot<'_>, work: &[Call]) -> bool {
    let unmade = |call: &Call| {
        let asked = |why: &Because| match why {
            Because::PlanSays(load) | Because::LessBody { gives: load, .. } => *load > Mass::ZERO,
            Because::Carried { load, .. } => *load > Mass::ZERO,
            _ => false,
        };
        matches!(call.load, CallLoad::Chosen { .. }) && call.reason.0.iter().any(asked)
    };
    slot.exercise.implement == crate::equipment::BODYWEIGHT
        && work.iter().any(unmade)
        && !slot.source.equipment.offers(BELT).is_here()
}

fn substitutes(slot: &Slot<'_>) -> Vec<Substitute> {
    let substitutes = slot.entry.substitutes.iter().filter_map(|substitute| {
        let exercise = slot.source.catalogue.get(&substitute.exercise)?;
        Some(Substitute {
            exercise: exercise.slug.to_string(),
            name: exercise.name_in(slot.source.catalogue.tongue()).to_owned(),
            possible: Here::new(slot.source.equipment, exercise, None).lacks().is_empty(),
        })
    });
    substitutes.collect()
}

fn kit(gear: plan::Gear) -> Kit {
    match gear {
        plan::Gear::Belt => Kit::Belt,
        plan::Gear::Wraps => Kit::Wraps,
        plan::Gear::Straps => Kit::Straps,
        plan::Gear::Sleeves => Kit::Sleeves,
    }
}

/// The plan's settings as the lines that a lifter would note, in the plan's own words.
fn set_up_lines(set_up: &plan::SetUp) -> Vec<String> {
    set_up.parts().map(|(key, how)| format!("{key} {how}")).collect()
}
