//! What stands in for an exercise, what is added for once, and which exercises would do.

use super::lifter::Lifter;
use crate::call::{EffortTarget, Flow, HowMany, LoadCall, Manner, Structure};
use crate::catalogue::{Catalogue, Exercise, Measure, Muscle};
use crate::desk::ForOnce;
use crate::equipment::{BODYWEIGHT, Equipment};
use crate::owners::Owner;
use crate::plan::{self, Plan, WeekSession};
use crate::quantity::{Distance, Range, Reserve, Seconds};
use crate::session::here::Here;

/// Sets, repetitions and repetitions left of an exercise that nothing is known of: common practice
/// for an accessory.
const SETS: usize = 3;
const REPS: Range<u16> = Range { from: 8, to: 12 };
const LEFT: u8 = 2;
/// As long a hold, and as far a carry: common practice.
const HOLD: Seconds = Seconds::new(30);
const CARRY: Distance = Distance::from_millimetres(20_000);
/// Repetitions in the place of singles to a max.
const FOR_A_TEST: Range<u16> = Range { from: 5, to: 5 };

/// An exercise of a session that is to be laid out.
pub(super) struct Asked {
    pub(super) entry: plan::Entry,
    /// The exercise it stands in for.
    pub(super) of: Option<String>,
    /// It stands in no row of the plan.
    pub(super) own: bool,
}

/// The exercises of a session with what is changed in it for once.
pub(super) fn asked(
    plan: &Plan,
    session: &WeekSession,
    catalogue: &Catalogue,
    lifter: &Lifter,
    changes: &[ForOnce],
) -> Vec<Asked> {
    let as_planned = session.exercises.iter().cloned();
    let mut all: Vec<Asked> =
        as_planned.map(|entry| Asked { entry, of: None, own: false }).collect();
    for change in changes {
        match change {
            ForOnce::Instead { of, exercise } => {
                let place = all.iter_mut().find(|asked| asked.entry.exercise == *of);
                if let (Some(asked), Some(found)) = (place, catalogue.get(exercise)) {
                    asked.entry = if asked.own && asked.of.is_none() {
                        extra(plan, found, lifter)
                    } else {
                        stand_in(&asked.entry, found)
                    };
                    // What stands in for a stand-in stands in for the plan's own.
                    if !asked.own {
                        asked.of = Some(of.clone());
                    }
                    asked.own = true;
                }
            }
            ForOnce::Added { exercise } => all.extend(catalogue.get(exercise).map(|found| Asked {
                entry: extra(plan, found, lifter),
                of: None,
                own: true,
            })),
            ForOnce::LeftOut { exercise } => {
                if let Some(at) = all.iter().position(|asked| asked.entry.exercise == *exercise) {
                    all.remove(at);
                }
            }
            ForOnce::Earlier { exercise } => earlier(&mut all, exercise),
        }
    }
    all
}

/// Moves the block of an exercise before the block that precedes it.
fn earlier(all: &mut Vec<Asked>, exercise: &str) {
    let together = |one: &Asked, other: &Asked| {
        one.entry.superset.is_some() && one.entry.superset == other.entry.superset
    };
    let mut blocks: Vec<Vec<Asked>> = Vec::new();
    for asked in all.drain(..) {
        match blocks.last_mut() {
            Some(block) if block.last().is_some_and(|last| together(last, &asked)) => {
                block.push(asked);
            }
            _ => blocks.push(vec![asked]),
        }
    }
    let has = |block: &Vec<Asked>| block.iter().any(|asked| asked.entry.exercise == exercise);
    if let Some(at) = blocks.iter().position(has).filter(|at| *at > 0) {
        blocks.swap(at, at - 1);
    }
    all.extend(blocks.into_iter().flatten());
}

/// An exercise in the place of the plan's: the substitute as the plan says it, or any other. It has
/// its own history and never inherits a load.
pub(super) fn stand_in(old: &plan::Entry, found: &Exercise) -> plan::Entry {
    let exercise = found.slug.as_ref();
    let said = old.substitutes.iter().find(|substitute| substitute.exercise == exercise);
    let how_many = said.and_then(|said| said.how_many);
    let effort = said.and_then(|said| said.effort);
    let load = said.and_then(|said| said.load.clone()).unwrap_or_else(|| unknown(found));
    let mut entry = plan::Entry {
        exercise: exercise.to_owned(),
        counting: None,
        set_up: plan::SetUp::default(),
        wear: Vec::new(),
        cues: Vec::new(),
        substitutes: old
            .substitutes
            .iter()
            .filter(|substitute| substitute.exercise != exercise)
            .cloned()
            .collect(),
        sides: None,
        ..old.clone()
    };
    for block in &mut entry.blocks {
        if let Some(sets) = said.and_then(|said| said.sets)
            && let Some(first) = block.sets.first().cloned()
        {
            block.sets.resize(usize::from(sets.max(1)), first);
        }
        let mut as_usual = None;
        // A max is tested on a barbell's main lifts alone.
        if matches!(block.flow, Flow::Test { .. }) && !found.main_lift {
            block.flow = Flow::Listed;
            if let Some(first) = block.sets.first().cloned() {
                block.sets.resize(SETS, first);
            }
            as_usual = Some(HowMany::Reps(FOR_A_TEST));
        }
        for set in &mut block.sets {
            set.load = load.clone();
            set.how_many = how_many.or(as_usual).unwrap_or(set.how_many);
            set.effort = effort.or(set.effort);
            // A technique or a range of movement belongs to the exercise it was written for.
            set.manner.technique = None;
            if how_many.is_none() && !measured_so(found, &set.how_many) {
                set.how_many = usual(found);
                (set.structure, set.effort) = (Structure::Straight, None);
                if !matches!(block.flow, Flow::Listed | Flow::Clock { .. }) {
                    block.flow = Flow::Listed;
                }
            }
        }
    }
    // Sets that follow a top set have none here: one row is enough.
    entry.blocks.truncate(1);
    entry
}

/// An exercise that the plan has not: as many sets as were asked of it last, outside any plan.
pub(super) fn extra(plan: &Plan, found: &Exercise, lifter: &Lifter) -> plan::Entry {
    let before = lifter.desk.owners.track(&Owner::Loose(found.slug.to_string())).asked;
    let how_many = before.filter(|asked| measured_so(found, asked)).unwrap_or_else(|| usual(found));
    let left = Reserve::from_halves(LEFT * 2).unwrap_or(Reserve::NONE);
    let counted = matches!(how_many, HowMany::Reps(_)) && !found.movement.is_speed_work();
    let set = plan::SetCall {
        how_many,
        load: unknown(found),
        effort: counted.then(|| EffortTarget::left(left, left)),
        structure: Structure::Straight,
        manner: Manner::default(),
        side: None,
        speed: false,
        rest: plan.rest,
    };
    plan::Entry {
        exercise: found.slug.to_string(),
        // In no place of the plan's own.
        slot: usize::MAX,
        goal: plan.goal,
        superset: None,
        // Nobody owes what they added themselves.
        optional: true,
        keep: false,
        sides: None,
        counting: None,
        ramp: None,
        set_up: plan::SetUp::default(),
        wear: Vec::new(),
        cues: Vec::new(),
        substitutes: Vec::new(),
        next: Vec::new(),
        misses: plan.misses.clone(),
        blocks: vec![plan::Block {
            line: 0,
            flow: Flow::Listed,
            sets: vec![set; SETS],
            cut: plan::Cut::default(),
            by_week: false,
        }],
    }
}

/// The body alone is itself a load; a machine that helps has to be set.
fn unknown(found: &Exercise) -> LoadCall {
    if found.implement == BODYWEIGHT { LoadCall::Body } else { LoadCall::ByFeel }
}

fn measured_so(found: &Exercise, how_many: &HowMany) -> bool {
    match (found.measure, how_many) {
        (Measure::Reps, HowMany::Reps(_) | HowMany::Open { .. }) => true,
        (Measure::Seconds, HowMany::Seconds(_)) | (Measure::Metres, HowMany::Metres(_)) => true,
        (
            Measure::Reps | Measure::Seconds | Measure::Metres,
            HowMany::Reps(_) | HowMany::Open { .. } | HowMany::Seconds(_) | HowMany::Metres(_),
        ) => false,
    }
}

fn usual(found: &Exercise) -> HowMany {
    match found.measure {
        Measure::Reps => HowMany::Reps(REPS),
        Measure::Seconds => HowMany::Seconds(Range::just(HOLD)),
        Measure::Metres => HowMany::Metres(Range::just(CARRY)),
    }
}

/// An exercise that could be done in the place of one.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Candidate<'a> {
    /// It.
    pub exercise: &'a Exercise,
    /// What it needs and this gym has not.
    pub lacks: Vec<String>,
    /// The plan names it.
    pub planned: bool,
    /// It is the same movement.
    pub same_movement: bool,
    /// How many of the muscles trained directly it trains directly too.
    pub shared: usize,
}

impl Candidate<'_> {
    /// Whether this gym has what it needs.
    pub fn possible(&self) -> bool {
        self.lacks.is_empty()
    }

    /// Whether it would train something of the same.
    pub const fn would_do(&self) -> bool {
        self.planned || self.same_movement || self.shared > 0
    }
}

/// Every other exercise, the likeliest to do in the place of one first: what this gym can do, then
/// the plan's own substitutes in their order, the same movement, as many joints, the muscles. None in
/// the place of nothing ranks by what this gym can do alone.
pub fn candidates<'a>(
    catalogue: &'a Catalogue,
    equipment: &Equipment,
    of: Option<&Exercise>,
    planned: &[String],
    here: &[String],
) -> Vec<Candidate<'a>> {
    let none: &[Muscle] = &[];
    let direct = of.map_or(none, |of| of.direct.as_ref());
    let also = |exercise: &Exercise| {
        let indirect = of.map_or(none, |of| of.indirect.as_ref());
        let in_part = exercise.indirect.iter().filter(|one| direct.contains(one)).count();
        in_part + exercise.direct.iter().filter(|one| indirect.contains(one)).count()
    };
    let mut all: Vec<_> = catalogue
        .iter()
        .filter(|exercise| {
            !here.iter().any(|slug| exercise.slug == *slug)
                && of.is_none_or(|of| of.slug != exercise.slug)
        })
        .map(|exercise| {
            let place = planned.iter().position(|slug| exercise.slug == *slug);
            let candidate = Candidate {
                exercise,
                lacks: Here::new(equipment, exercise, None).lacks(),
                planned: place.is_some(),
                same_movement: of.is_some_and(|of| of.movement == exercise.movement),
                shared: exercise.direct.iter().filter(|one| direct.contains(one)).count(),
            };
            let compound = of.is_none_or(|of| of.is_compound() == exercise.is_compound());
            let rank = (
                !candidate.possible(),
                place.unwrap_or(usize::MAX),
                !candidate.same_movement,
                std::cmp::Reverse(candidate.shared),
                !compound,
                std::cmp::Reverse(also(exercise)),
            );
            (rank, candidate)
        })
        .collect();
    // Stable: of equals the catalogue's order stands.
    all.sort_by_key(|(rank, _)| *rank);
    all.into_iter().map(|(_, candidate)| candidate).collect()
}
