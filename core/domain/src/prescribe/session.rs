//! The whole sheet, a substitute, and what an exercise will be next time.

use super::entry;
use super::instead;
use super::lifter::{Lifter, Need};
use super::slot::{Slot, liked_gym};
use super::source::Source;
use crate::catalogue::{Catalogue, Exercise, Muscle};
use crate::desk::ForOnce;
use crate::plan::{self, WeekSession};
use crate::quantity::{Mass, Seconds};
use crate::session::{Block, Call, CallLoad, Entry, EntryId, PlanPlace, Sheet};

/// A sheet, and what would let it say more.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Prescribed {
    /// The sheet.
    pub sheet: Sheet,
    /// What is missing, each once.
    pub needs: Vec<Need>,
}

impl Prescribed {
    /// Another session's work after this one's, each exercise once.
    pub fn join(&mut self, other: Self) {
        let here: Vec<String> = self.sheet.entries().map(|entry| entry.exercise.clone()).collect();
        let mut id = self.sheet.entries().map(|entry| entry.id.0).max().unwrap_or(0);
        let mut joined = false;
        for mut block in other.sheet.blocks {
            block.entries.retain(|entry| !here.contains(&entry.exercise));
            for entry in &mut block.entries {
                id = id.saturating_add(1);
                entry.id = EntryId(id);
            }
            joined |= !block.entries.is_empty();
            self.sheet.blocks.extend((!block.entries.is_empty()).then_some(block));
        }
        if joined {
            self.sheet.title = format!("{} + {}", self.sheet.title, other.sheet.title);
            self.needs.extend(other.needs);
            self.needs.sort();
            self.needs.dedup();
        }
    }
}

/// Lays a session out. None where the plan has no such session.
pub fn sheet(source: Source<'_>, lifter: &Lifter) -> Option<Prescribed> {
    let session = source.session()?;
    let mut needs = Vec::new();
    let mut warm: Vec<Muscle> = Vec::new();
    let mut blocks: Vec<(Option<usize>, Block)> = Vec::new();
    let changes = changes(source, lifter);
    let asked = instead::asked(source.plan, &session, source.catalogue, lifter, &changes);
    for (id, asked) in (0_u16..).zip(&asked) {
        let entry = &asked.entry;
        let Some(exercise) = source.catalogue.get(&entry.exercise) else { continue };
        let gym = liked_gym(source, lifter, exercise);
        let here = Source { equipment: &gym, ..source };
        let slot = Slot::new(here, lifter, &session, entry, exercise);
        let slot = Slot { stands_in: asked.own, gym: source.equipment, ..slot };
        let mut built = entry::entry(&slot, EntryId(id), &warm, &mut needs);
        built.stands_in_for.clone_from(&asked.of);
        if built.calls.is_empty() {
            continue;
        }
        // Jumps and work with the body alone warm nothing up for a heavy lift.
        let loaded = |call: &Call| match &call.load {
            CallLoad::Known(load) => load.figure.is_some_and(|figure| figure > Mass::ZERO),
            CallLoad::AfterTop { .. } | CallLoad::Chosen { .. } => true,
        };
        if built.calls.iter().any(loaded) {
            warm.extend(exercise.direct.iter().copied());
        }
        match blocks.last_mut() {
            Some((superset, block)) if superset.is_some() && *superset == entry.superset => {
                block.entries.push(built);
            }
            _ => {
                let (rest_within, rest_after_round) = superset_rests(entry, exercise);
                let block = Block { entries: vec![built], rest_within, rest_after_round };
                blocks.push((entry.superset, block));
            }
        }
    }
    needs.sort();
    needs.dedup();
    Some(Prescribed {
        sheet: Sheet {
            title: session.name.clone(),
            place: source.adopted.map(|plan| PlanPlace {
                plan,
                week: source.at.week,
                session: source.at.session,
            }),
            week_kind: session.kind,
            warm_up: session.warm_up.minutes.map(|minutes| Seconds::new(u32::from(minutes) * 60)),
            rest_step: source.plan.rest_step,
            seconds_a_rep: source.plan.seconds_a_rep,
            again_after: session.warm_up.again_after,
            blocks: blocks.into_iter().map(|(_, block)| block).collect(),
        },
        needs,
    })
}

/// What is changed for once in the session, where the plan is the one that is on.
fn changes(source: Source<'_>, lifter: &Lifter) -> Vec<ForOnce> {
    let on = lifter.desk.plan.as_ref().map(|plan| plan.seq);
    if source.adopted.is_some() && source.adopted == on {
        lifter.desk.arranged().changes_of(source.at).to_vec()
    } else {
        Vec::new()
    }
}

/// One more exercise for the session that runs, which the plan has not. None where there is no such
/// exercise.
pub fn added(source: Source<'_>, lifter: &Lifter, exercise: &str) -> Option<Entry> {
    substitute(source, lifter, "", exercise)
}

/// What is done instead of an exercise of the session: the substitute as the plan says it, or any
/// exercise of the catalogue. It has its own history and never inherits a load. None where there
/// is no such exercise.
pub fn substitute(
    source: Source<'_>,
    lifter: &Lifter,
    instead_of: &str,
    exercise: &str,
) -> Option<Entry> {
    let session = source.session()?;
    let found = source.catalogue.get(exercise)?;
    let old = session.exercises.iter().find(|entry| entry.exercise == instead_of);
    let entry = match old {
        Some(old) => instead::stand_in(old, found),
        // In the place of one that was added: added itself.
        None => instead::extra(source.plan, found, lifter),
    };
    let warm = warm_before(source.catalogue, &session, entry.slot);
    let gym = liked_gym(source, lifter, found);
    let here = Source { equipment: &gym, ..source };
    let slot = Slot::new(here, lifter, &session, &entry, found);
    let slot = Slot { stands_in: true, gym: source.equipment, ..slot };
    let mut built = entry::entry(&slot, EntryId(0), &warm, &mut Vec::new());
    built.stands_in_for = old.map(|_| instead_of.to_owned());
    (!built.calls.is_empty()).then_some(built)
}

/// An exercise as it will be the next time the plan has it after this place; none where the plan
/// has it no more.
pub fn next_time(source: Source<'_>, lifter: &Lifter, exercise: &str) -> Option<Entry> {
    for there in source.everywhere().filter(|there| there.at > source.at) {
        let Some(session) = there.session() else { continue };
        if let Some(entry) = session.exercises.iter().find(|entry| entry.exercise == exercise) {
            let found = source.catalogue.get(exercise)?;
            let gym = liked_gym(source, lifter, found);
            let here = Source { equipment: &gym, ..there };
            let slot = Slot::new(here, lifter, &session, entry, found);
            let slot = Slot { gym: source.equipment, ..slot };
            let id = EntryId(u16::try_from(entry.slot).unwrap_or(u16::MAX));
            let warm = warm_before(source.catalogue, &session, entry.slot);
            return Some(entry::entry(&slot, id, &warm, &mut Vec::new()));
        }
    }
    None
}

/// Muscles that the exercises before a place in a session train.
fn warm_before(catalogue: &Catalogue, session: &WeekSession, slot: usize) -> Vec<Muscle> {
    let before = session.exercises.iter().take_while(|other| other.slot < slot);
    before
        .filter_map(|other| catalogue.get(&other.exercise))
        .filter(|other| !other.movement.is_speed_work())
        .flat_map(|other| other.direct.iter().copied())
        .collect()
}

/// Rests of a superset: within a round nothing unless said, after it what a set of it would have.
fn superset_rests(entry: &plan::Entry, exercise: &Exercise) -> (Seconds, Seconds) {
    let rests = entry.blocks.iter().flat_map(|block| &block.sets).map(|set| set.rest);
    let said = rests.reduce(|one, other| one.or(other)).unwrap_or_default();
    let after = said
        .after_superset
        .or(said.after_set)
        .unwrap_or_else(|| entry.goal.rest(exercise.is_compound()));
    (said.in_superset.unwrap_or_default(), after)
}
