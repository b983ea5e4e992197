//! The tree of loadings that a plan may pass through.

use super::super::pool::Pool;

/// One loading of one end: its parent's, and one plate of a size further out.
#[derive(Debug, Clone, Copy)]
pub(super) struct Node {
    /// The place of the parent; the root is its own.
    pub(super) parent: u32,
    /// The place after the last loading that has this one inside.
    pub(super) end: u32,
    /// The size of the outermost plate.
    pub(super) size: u8,
    /// How many plates.
    pub(super) depth: u8,
    /// Whether a full-size plate is among them.
    pub(super) full: bool,
    /// Nanograms.
    pub(super) mass: i64,
}

/// Loadings in the order of a walk from the root outward, the heavier branch first: each stands
/// after its parent, and those with it inside follow it without a gap.
#[derive(Debug)]
pub(super) struct Tree {
    pub(super) nodes: Vec<Node>,
    /// The loading that is on now, as far as it is one of the tree.
    pub(super) start: u32,
}

/// What keeps the tree small.
#[derive(Debug, Clone, Copy)]
pub(super) struct Limits {
    /// Moves: no loading is taken that can't be passed through within them.
    pub(super) moves: usize,
    /// Nothing heavier is ever stopped at.
    pub(super) most: i64,
    /// The last stop's range.
    pub(super) last: [i64; 2],
    /// Tenths of a millimetre.
    pub(super) sleeve: Option<u32>,
    /// Loadings past which the tree is given up.
    pub(super) nodes: usize,
}

/// The tree is larger than its limits.
#[derive(Debug)]
pub(super) struct TooLarge;

/// Grows the tree; `now` are the sizes of what is on, from the inside out, and `loose` how many
/// plates lie outside of them.
pub(super) fn grow(
    pool: &Pool<'_>,
    now: &[usize],
    loose: usize,
    limits: Limits,
) -> Result<Tree, TooLarge> {
    let mut growth =
        Growth { pool, now, loose, limits, tree: Tree { nodes: Vec::new(), start: 0 } };
    let root = Node { parent: 0, end: 0, size: 0, depth: 0, full: false, mass: 0 };
    let left = least_plates(0, pool.sizes.first().map_or(1, |size| size.mass), limits.last);
    growth.add(root, Outer { thickness: 0, same: 0, shared: 0, left })?;
    Ok(growth.tree)
}

/// The fewest plates, none heavier than `heaviest`, that bring a mass into a range; out of reach
/// where it is too heavy.
pub(super) fn least_plates(mass: i64, heaviest: i64, [least, most]: [i64; 2]) -> usize {
    const OUT_OF_REACH: usize = usize::MAX / 4;
    if mass > most {
        return OUT_OF_REACH;
    }
    let missing = least.saturating_sub(mass).max(0);
    let plates = missing / heaviest + i64::from(missing % heaviest != 0);
    usize::try_from(plates).unwrap_or(OUT_OF_REACH)
}

struct Growth<'p> {
    pool: &'p Pool<'p>,
    now: &'p [usize],
    loose: usize,
    limits: Limits,
    tree: Tree,
}

/// What is known of a loading beyond its node while the tree grows.
#[derive(Clone, Copy)]
struct Outer {
    /// Of all its plates.
    thickness: u32,
    /// Plates of its outermost size.
    same: u8,
    /// Its innermost plates that are on now.
    shared: u8,
    /// The least number of moves from it to the last stop.
    left: usize,
}

impl Growth<'_> {
    /// Adds a loading and those with it inside.
    fn add(&mut self, node: Node, outer: Outer) -> Result<(), TooLarge> {
        if self.tree.nodes.len() >= self.limits.nodes {
            return Err(TooLarge);
        }
        let at = self.tree.nodes.len();
        let parent = u32::try_from(at).map_err(|_| TooLarge)?;
        self.tree.nodes.push(node);
        if outer.shared == node.depth {
            self.tree.start = parent;
        }
        let pool = self.pool;
        for (index, size) in pool.sizes.iter().enumerate().skip(usize::from(node.size)) {
            let same = if index == usize::from(node.size) { outer.same } else { 0 };
            let mass = node.mass + size.mass;
            let thickness = outer.thickness + size.thickness;
            if same >= size.count
                || mass > self.limits.most
                || self.limits.sleeve.is_some_and(|sleeve| thickness > sleeve)
            {
                continue;
            }
            let Some(depth) = node.depth.checked_add(1) else { continue };
            let still_on = self.now.get(usize::from(node.depth)) == Some(&index);
            let shared = outer.shared + u8::from(outer.shared == node.depth && still_on);
            let left = (outer.left + 1).min(least_plates(mass, size.mass, self.limits.last));
            // Off what is on now, each plate further out is one move more from the start and at
            // most one less to the end: what is too far has nothing nearer outside it.
            if shared < depth && self.moved_by(shared, depth) + left > self.limits.moves {
                continue;
            }
            let full = node.full || size.full;
            let size = u8::try_from(index).map_err(|_| TooLarge)?;
            let child = Node { parent, end: 0, size, depth, full, mass };
            self.add(child, Outer { thickness, same: same + 1, shared, left })?;
        }
        let end = u32::try_from(self.tree.nodes.len()).map_err(|_| TooLarge)?;
        if let Some(node) = self.tree.nodes.get_mut(at) {
            node.end = end;
        }
        Ok(())
    }

    fn moved_by(&self, shared: u8, depth: u8) -> usize {
        self.loose + self.now.len() + usize::from(depth) - 2 * usize::from(shared)
    }
}

impl Tree {
    /// The loading that two have inside them in common.
    pub(super) fn meet(&self, mut a: u32, mut b: u32) -> u32 {
        let parent = |place: u32| self.nodes.get(place as usize).map_or(0, |node| node.parent);
        while a != b {
            // The later one in the walk is never inside the earlier.
            if a > b {
                a = parent(a);
            } else {
                b = parent(b);
            }
        }
        a
    }

    /// Plates on.
    pub(super) fn depth(&self, place: u32) -> usize {
        self.nodes.get(place as usize).map_or(0, |node| node.depth.into())
    }

    /// On one end, in nanograms.
    pub(super) fn mass(&self, place: u32) -> i64 {
        self.nodes.get(place as usize).map_or(0, |node| node.mass)
    }

    /// Whether a loading has another inside it.
    pub(super) fn is_inside(&self, inner: u32, outer: u32) -> bool {
        let end = self.nodes.get(inner as usize).map_or(0, |node| node.end);
        inner < outer && outer < end
    }

    /// The sizes on, from the inside out.
    pub(super) fn sizes(&self, mut place: u32) -> Vec<usize> {
        let mut sizes = Vec::with_capacity(self.depth(place));
        while let Some(node) = self.nodes.get(place as usize).filter(|node| node.depth > 0) {
            sizes.push(node.size.into());
            place = node.parent;
        }
        sizes.reverse();
        sizes
    }
}
