//! The sets that a plan's week asks for, as the count sees them.

use super::hard::Closeness;
use super::ledger::{Ledger, Set, Week};
use crate::call::{Flow, HowMany, Side, Structure};
use crate::catalogue::Catalogue;
use crate::plan::{Plan, SetCall, Sides};
use crate::quantity::{Reps, Reserve};

/// Hard sets that the first so many sessions of a plan's week ask for (all of them for
/// [`usize::MAX`]), under the number of the week (from 0). Optional exercises are not owed. A row
/// whose number of sets the day decides is counted at the sets it takes at the least.
pub fn planned(
    plan: &Plan,
    week: usize,
    sessions: usize,
    catalogue: &Catalogue,
    easiest: Reserve,
) -> Ledger {
    let mut ledger = Ledger::default();
    let number = Week::try_from(week).unwrap_or(Week::MAX);
    for index in 0..plan.sessions_of(week).len().min(sessions) {
        let Some(session) = plan.session(week, index) else { continue };
        for entry in session.exercises.iter().filter(|entry| !entry.optional) {
            let Some(exercise) = catalogue.get(&entry.exercise) else { continue };
            // Jumps and throws are no hard sets, nor is anything done for speed.
            if exercise.movement.is_speed_work() {
                continue;
            }
            let each_side = match entry.sides {
                Some(Sides::Together) => false,
                Some(_) => true,
                None => exercise.one_sided,
            };
            for block in &entry.blocks {
                for set in block.sets.iter().filter(|set| !set.speed) {
                    let sides: &[Option<Side>] = match (set.side, each_side) {
                        (Some(Side::Left), _) => &[Some(Side::Left)],
                        (Some(Side::Right), _) => &[Some(Side::Right)],
                        (None, true) => &[Some(Side::Left), Some(Side::Right)],
                        (None, false) => &[None],
                    };
                    let times = match block.flow {
                        // A total is owed in whole: its repetitions tell the sets.
                        Flow::Total { reps, .. } => {
                            reps.div_ceil(least(set).unwrap_or(1).max(1)).max(1)
                        }
                        _ => 1,
                    };
                    for side in sides.iter().flat_map(|side| (0..times).map(move |_| *side)) {
                        ledger.add(
                            easiest,
                            &Set {
                                week: number,
                                exercise,
                                side,
                                reps: least(set),
                                closeness: Closeness::NotCalled { target: set.effort },
                            },
                        );
                    }
                }
            }
        }
    }
    ledger
}

/// Repetitions of a set over its parts, at the least.
fn least(set: &SetCall) -> Option<Reps> {
    match (&set.structure, set.how_many) {
        (Structure::Cluster { blocks, .. }, _) => {
            Some(blocks.iter().fold(0, |sum: Reps, reps| sum.saturating_add(*reps)))
        }
        (_, HowMany::Reps(range)) => Some(range.from),
        (_, HowMany::Open { at_least, .. }) => Some(at_least),
        (_, HowMany::Seconds(_) | HowMany::Metres(_)) => None,
    }
}
