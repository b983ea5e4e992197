//! The walk through the tree that stops where each set wants it.
//!
//! From the last set back to the first, each loading's cost to the end is worked out: what it
//! costs to stop there, and the nearest next stop. "Nearest" is found for all loadings at once, in
//! one pass up the tree and one down. Then the walk is read off from the start.
//!
//! How far the tree must be grown depends on how many moves the best walk takes, which isn't known
//! before. So it is grown for few moves and then for more, until the best walk found needs no more
//! than it was grown for: a better one would have been in it.

use super::super::load::Base;
use super::super::pool::{Pool, Sum};
use super::super::rig::Plate;
use super::tree::{Limits, Node, Tree, grow, least_plates};
use crate::quantity::Mass;

/// Loadings past which the search is cut short.
const MOST_NODES: usize = 200_000;
/// Loadings that are looked through in a few milliseconds.
const FEW_NODES: usize = 6_000;

/// Where a set may stop: a range of masses on one end, and what was asked for in all.
#[derive(Debug, Clone, Copy)]
pub(super) struct Stop {
    pub(super) least: i64,
    pub(super) most: i64,
    pub(super) asked: Mass,
    /// The nearest there is.
    pub(super) nearest: Sum,
}

/// Where the walk stops for a set.
#[derive(Debug)]
pub(super) struct Halt {
    /// How many plates stay on from before.
    pub(super) kept: usize,
    /// The sizes on, from the inside out.
    pub(super) sizes: Vec<usize>,
    /// On one end, in nanograms.
    pub(super) mass: i64,
}

/// A walk through all stops.
#[derive(Debug, Default)]
pub(super) struct Walk {
    pub(super) halts: Vec<Halt>,
    pub(super) moves: usize,
    /// Whether none has fewer moves.
    pub(super) fewest: bool,
}

/// Moves, then departure in nanograms, then plates, in one number that adds up.
type Cost = u128;
const MOVE: Cost = 1 << 80;
const NANOGRAM: Cost = 1 << 16;
const PLATE: Cost = 1;
const NEVER: Cost = Cost::MAX / 4;

/// Finds the walk from what is on `now` through the stops.
pub(super) fn walk(
    pool: &Pool<'_>,
    base: &Base,
    full_size: bool,
    now: &[Plate],
    stops: &[Stop],
) -> Walk {
    let most = stops.iter().map(|stop| stop.most).max().unwrap_or_default();
    let last = stops.last().map_or([0, most], |stop| [stop.least, stop.most]);
    let on = sizes_of(pool, base, now, most);
    let loose = now.len() - on.len();
    let mut limits = Limits {
        moves: least_moves(pool, &on, loose, last),
        most,
        last,
        sleeve: base.sleeve,
        nodes: MOST_NODES,
    };
    let mut best = one_by_one(pool, &on, loose, stops);
    while let Ok(tree) = grow(pool, &on, loose, limits) {
        if let Some(found) = through(&tree, base, full_size, loose, stops) {
            if found.moves <= limits.moves {
                return Walk { fewest: true, ..found };
            }
            if found.moves < best.moves {
                best = found;
            }
        }
        // No walk needs more moves than the best so far: where a tree for as many stays small, one
        // more look ends the search.
        let whole = Limits { moves: best.moves, nodes: FEW_NODES, ..limits };
        if let Ok(tree) = grow(pool, &on, loose, whole)
            && let Some(found) = through(&tree, base, full_size, loose, stops)
        {
            return Walk { fewest: true, ..found };
        }
        if limits.moves >= best.moves {
            break;
        }
        limits.moves = best.moves.min(limits.moves + 2);
    }
    best
}

/// The sizes of what is on, from the inside out, as far as they are a loading of the tree.
fn sizes_of(pool: &Pool<'_>, base: &Base, now: &[Plate], most: i64) -> Vec<usize> {
    let mut sizes = Vec::new();
    let (mut mass, mut thickness, mut same) = (0_i64, 0_u32, 0_u8);
    for plate in now {
        let innermost = sizes.last().copied().unwrap_or(0);
        let Some((at, size)) = pool.find(plate, innermost) else { break };
        same = if sizes.last() == Some(&at) { same.saturating_add(1) } else { 1 };
        mass = mass.saturating_add(size.mass);
        thickness += size.thickness;
        let too_long = base.sleeve.is_some_and(|sleeve| thickness > sleeve);
        if same > size.count || mass > most || too_long || sizes.len() == usize::from(u8::MAX) {
            break;
        }
        sizes.push(at);
    }
    sizes
}

/// No walk from what is on to the last stop has fewer moves.
fn least_moves(pool: &Pool<'_>, on: &[usize], loose: usize, last: [i64; 2]) -> usize {
    let heaviest = pool.sizes.first().map_or(1, |size| size.mass);
    let mut mass = 0;
    let mut left = least_plates(0, heaviest, last);
    for size in on.iter().filter_map(|at| pool.sizes.get(*at)) {
        mass += size.mass;
        left = (left + 1).min(least_plates(mass, size.mass, last));
    }
    loose + left
}

/// The best walk within the tree; `None` where some set has no stop in it.
fn through(
    tree: &Tree,
    base: &Base,
    full_size: bool,
    loose: usize,
    stops: &[Stop],
) -> Option<Walk> {
    // For each loading the cost from there to the end, the stops so far done.
    let mut ahead: Vec<Cost> = vec![0; tree.nodes.len()];
    let mut halts: Vec<Vec<(u32, Cost)>> = Vec::with_capacity(stops.len());
    for (left, stop) in stops.iter().enumerate().rev() {
        let allowed = |node: &Node| {
            (stop.least..=stop.most).contains(&node.mass) && (node.full || !full_size)
        };
        let cost = |node: &Node, ahead: Cost| {
            let departure = base.load(node.mass).distance(stop.asked).nanograms();
            ahead + Cost::from(departure.unsigned_abs()) * NANOGRAM + Cost::from(node.depth) * PLATE
        };
        let here: Vec<(u32, Cost)> = (0_u32..)
            .zip(tree.nodes.iter().zip(&ahead))
            .filter(|(_, (node, _))| allowed(node))
            .map(|(place, (node, ahead))| (place, cost(node, *ahead)))
            .collect();
        if here.is_empty() {
            return None;
        }
        if left > 0 {
            spread(tree, &here, &mut ahead);
        }
        halts.push(here);
    }
    halts.reverse();
    Some(read_off(tree, loose, &halts))
}

/// For each loading the cost of moving to the best of these stops.
fn spread(tree: &Tree, here: &[(u32, Cost)], ahead: &mut [Cost]) {
    ahead.fill(NEVER);
    for (place, cost) in here {
        if let Some(ahead) = ahead.get_mut(*place as usize) {
            *ahead = *cost;
        }
    }
    let at = |ahead: &[Cost], place: usize| ahead.get(place).copied().unwrap_or(NEVER);
    let lower = |ahead: &mut [Cost], place: usize, cost: Cost| {
        if let Some(ahead) = ahead.get_mut(place) {
            *ahead = cost.min(*ahead);
        }
    };
    for (place, node) in tree.nodes.iter().enumerate().skip(1).rev() {
        lower(ahead, node.parent as usize, at(ahead, place) + MOVE);
    }
    for (place, node) in tree.nodes.iter().enumerate().skip(1) {
        lower(ahead, place, at(ahead, node.parent as usize) + MOVE);
    }
}

/// Follows the least cost from the start; of equal costs the heaviest innermost.
fn read_off(tree: &Tree, loose: usize, halts: &[Vec<(u32, Cost)>]) -> Walk {
    let mut now = tree.start;
    let mut loose = loose;
    let mut walk = Walk::default();
    for here in halts {
        let mut best: Option<(Cost, u32)> = None;
        for (place, cost) in here {
            let shared = tree.depth(tree.meet(now, *place));
            let moves = tree.depth(now) + tree.depth(*place) - 2 * shared;
            let cost = *cost + Cost::from(moves as u64) * MOVE;
            // The heavier branch comes first in the tree, and what has more outside it after it.
            let better = best.is_none_or(|(least, best)| {
                cost < least || cost == least && tree.is_inside(best, *place)
            });
            if better {
                best = Some((cost, *place));
            }
        }
        let Some((_, place)) = best else { continue };
        let kept = tree.depth(tree.meet(now, place));
        walk.moves += loose + tree.depth(now) + tree.depth(place) - 2 * kept;
        walk.halts.push(Halt { kept, sizes: tree.sizes(place), mass: tree.mass(place) });
        (now, loose) = (place, 0);
    }
    walk
}

/// Each set's nearest load with its fewest plates: what there is where the tree is too large.
fn one_by_one(pool: &Pool<'_>, on: &[usize], loose: usize, stops: &[Stop]) -> Walk {
    let mut on = on.to_vec();
    let mut loose = loose;
    let mut walk = Walk::default();
    for stop in stops {
        let counts = pool.counts(stop.nearest.rank);
        let sizes: Vec<usize> = (counts.iter().enumerate())
            .flat_map(|(at, count)| std::iter::repeat_n(at, usize::from(*count)))
            .collect();
        let kept = on.iter().zip(&sizes).take_while(|(a, b)| a == b).count();
        walk.moves += loose + on.len() + sizes.len() - 2 * kept;
        walk.halts.push(Halt { kept, sizes: sizes.clone(), mass: stop.nearest.mass });
        (on, loose) = (sizes, 0);
    }
    walk
}
