//! What to change on the bar from set to set, planned across a whole ramp.
//!
//! Plates come off from the outside and the heavier lie inside, in every step. Under that rule the
//! ways to load one end form a tree: a step out of the root puts the innermost plate on, a step
//! further the next. To change one loading for another is to walk from the one to the other, and
//! every edge is a plate moved. [`plan`] finds the walk through all sets with the fewest moves.

mod search;
mod tree;

use serde::{Deserialize, Serialize};

use self::search::Stop;
use super::load::{CannotMake, Loader, around};
use super::model::Equipment;
use super::pool::Pool;
use super::rig::{Fit, Made, Plate, Rig};
use super::{Ask, bounds};
use crate::quantity::Mass;

/// A ramp and its work sets, in the order they are done.
#[derive(Debug, Clone, Copy)]
pub struct Ramp<'a> {
    /// What is on now; plates on anything but the implement itself don't count.
    pub on_now: Option<&'a Rig>,
    /// What is asked for.
    pub sets: &'a [Wanted],
    /// How far a load that isn't firm may lie from what was asked.
    pub slack: Mass,
    /// Only with a full-size plate on: the bar is lifted from the floor.
    pub full_size: bool,
    /// The loads are meant as one end's or one post's plates.
    pub one_side: bool,
}

/// One set's load.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Wanted {
    /// What was asked for.
    pub load: Mass,
    /// A work load: the nearest that can be made and no other. A warm-up load may move within the
    /// slack, and is the nearest where nothing lies within it.
    pub firm: bool,
}

/// A planned ramp.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Changes {
    /// One step a set.
    pub steps: Vec<Step>,
    /// Plates taken off and put on in all, on one end.
    pub moves: usize,
    /// Whether no plan has fewer moves. False only where plates are so many that the search was
    /// cut short; the plan can be carried out all the same.
    pub fewest: bool,
}

/// What to do before one set.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Step {
    /// The load and what is on for it.
    pub made: Made,
    /// Plates to take off one end, the outermost first.
    pub off: Vec<Plate>,
    /// Plates to put on one end, the innermost first.
    pub on: Vec<Plate>,
}

impl Step {
    /// Plates moved, on one end.
    pub fn moves(&self) -> usize {
        self.off.len() + self.on.len()
    }
}

/// Plans a ramp: the fewest moves, then the smallest departure from what was asked in all, then
/// the fewest plates over all steps, then the heaviest innermost, from the first step on.
///
/// Dumbbells and stacks are set anew for each load: each is the nearest, with no plate moved.
///
/// # Errors
/// [`CannotMake`] with the reason.
pub fn plan(gym: &Equipment, implement: &str, ramp: &Ramp<'_>) -> Result<Changes, CannotMake> {
    if ramp.sets.len() > bounds::SETS {
        return Err(CannotMake::TooManySets { most: bounds::SETS });
    }
    let ask = |wanted: &Wanted| Ask {
        full_size: ramp.full_size,
        one_side: ramp.one_side,
        ..Ask::new(wanted.load, Fit::Nearest)
    };
    let nearest: Vec<Made> = ramp
        .sets
        .iter()
        .map(|wanted| gym.make_as(implement, ask(wanted)))
        .collect::<Result<_, _>>()?;
    let Some(loader) = loader(gym, implement, ramp, &nearest)? else {
        let step = |made| Step { made, off: Vec::new(), on: Vec::new() };
        let steps = nearest.into_iter().map(step).collect();
        return Ok(Changes { steps, moves: 0, fewest: true });
    };
    plated(gym, &loader, ramp)
}

/// What holds the plates: what is loaded now, or what the heaviest set is made with. `None` where
/// the implement takes no plates.
fn loader<'g>(
    gym: &'g Equipment,
    implement: &str,
    ramp: &Ramp<'_>,
    nearest: &[Made],
) -> Result<Option<Loader<'g>>, CannotMake> {
    let heaviest = nearest.iter().max_by_key(|made| made.made).map(|made| &made.rig);
    let mut loaders: Vec<_> =
        gym.loaders(implement)?.into_iter().filter(|loader| loader.base().is_some()).collect();
    let holds = |rig: Option<&Rig>| {
        let rig = rig?;
        loaders.iter().position(|loader| loader.is_under(rig))
    };
    let at = holds(ramp.on_now).or_else(|| holds(heaviest));
    Ok(at.map(|at| loaders.swap_remove(at)))
}

fn plated(gym: &Equipment, loader: &Loader<'_>, ramp: &Ramp<'_>) -> Result<Changes, CannotMake> {
    let Some(base) = loader.base() else {
        return Ok(Changes { steps: Vec::new(), moves: 0, fewest: true });
    };
    let full_size = ramp.full_size && matches!(loader, Loader::Bar(_));
    let pool = Pool::of(&gym.plates, base.posts).ok_or(CannotMake::TooManySums)?;
    let base = if ramp.one_side { base.alone() } else { base };
    let mut stops = Vec::with_capacity(ramp.sets.len());
    for wanted in ramp.sets {
        let near = around(&pool, &base, wanted.load, full_size)
            .map_err(|_| CannotMake::TooManySums)?
            .nearest(|each| base.load(each).distance(wanted.load))
            .ok_or(CannotMake::NoFullSize)?;
        let miss = base.load(near.mass).distance(wanted.load);
        let [least, most] = if wanted.firm || miss > ramp.slack {
            [near.mass, near.mass]
        } else {
            let end = |mass: Option<Mass>| mass.unwrap_or(wanted.load);
            let heaviest = end(wanted.load.checked_add(ramp.slack));
            let lightest = end(wanted.load.checked_sub(ramp.slack));
            [base.each_over(lightest), base.each_under(heaviest)]
        };
        stops.push(Stop { least, most, asked: wanted.load, nearest: near });
    }
    let now = ramp.on_now.filter(|rig| loader.is_under(rig)).map_or(&[][..], Rig::side);
    let walk = search::walk(&pool, &base, full_size, now, &stops);
    let mut side = now.to_vec();
    let mut steps = Vec::with_capacity(walk.halts.len());
    for (stop, halt) in stops.iter().zip(walk.halts) {
        let off: Vec<Plate> = side.drain(halt.kept.min(side.len())..).rev().collect();
        let mut on = Vec::new();
        for size in halt.sizes.iter().skip(halt.kept).filter_map(|at| pool.sizes.get(*at)) {
            if let Some(plate) = size.next_beside(&side) {
                side.push(plate.clone());
                on.push(plate);
            }
        }
        let made = base.load(halt.mass);
        let made = Made { asked: stop.asked, made, rig: loader.with(side.clone()) };
        steps.push(Step { made, off, on });
    }
    Ok(Changes { steps, moves: walk.moves, fewest: walk.fewest })
}
