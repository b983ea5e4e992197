//! Which sums the plates of one end can make: the nearest below and above a target.
//!
//! The sizes are dealt into two halves. Each half's sums are listed in order, of equal sums only
//! the best selection (fewest plates, then heaviest first: an order that adding the same plates to
//! both sides keeps), and one walk over both lists finds the target's neighbours. Kilograms go to
//! one half and pounds to the other, so that in each most sums coincide and the lists stay short.
//!
//! Where a sleeve is too short for the best selection, thickness becomes a second count: of equal
//! sums a worse selection stays in the list if it is thinner.

use std::collections::BTreeMap;

use super::pool::{Pool, Rank, Size, Sum};
use crate::quantity::MassUnit;

/// Sums of one half past which the search is refused rather than slow.
const MOST_SUMS: usize = 40_000;
/// Sums of one half up to which the next size goes where its unit belongs.
const BALANCED: usize = 4_096;
/// Sums of one half from which it is shorter to walk than to list.
const WORTH_A_WALK: usize = 60;
/// No plates weigh as much: a pool's bounds keep every sum below half of it.
const HEAVIER_THAN_ALL: i64 = i64::MAX / 2;

/// More different sums than are searched.
#[derive(Debug)]
pub(super) struct TooMany;

const NOTHING: Sum = Sum { rank: 0, mass: 0, thickness: 0 };

/// The heaviest sum up to a target and the lightest above it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub(super) struct Bracket {
    pub(super) under: Option<Sum>,
    pub(super) above: Option<Sum>,
}

impl Bracket {
    fn take(&mut self, target: i64, sum: Sum) {
        if sum.mass > target {
            if self.above.is_none_or(|best| (sum.mass, sum.rank) < (best.mass, best.rank)) {
                self.above = Some(sum);
            }
        } else if self.under.is_none_or(|best| {
            sum.mass > best.mass || sum.mass == best.mass && sum.rank < best.rank
        }) {
            self.under = Some(sum);
        }
    }
}

impl Bracket {
    /// The one that misses less; of two that miss alike the lighter.
    pub(super) fn nearest<M: Ord>(self, miss: impl Fn(i64) -> M) -> Option<Sum> {
        match (self.under, self.above) {
            (Some(under), Some(above)) if miss(above.mass) < miss(under.mass) => Some(above),
            (under, above) => under.or(above),
        }
    }

    /// Takes what another search found for the rest of the target, with `one` plate beside it.
    pub(super) fn join(&mut self, target: i64, one: &Sum, rest: Self) {
        for sum in [rest.under, rest.above].into_iter().flatten() {
            self.take(target, one.with(&sum));
        }
    }
}

/// The target's neighbours, on a sleeve of so many tenths of a millimetre where that is known.
pub(super) fn bracket(
    pool: &Pool<'_>,
    target: i64,
    sleeve: Option<u32>,
) -> Result<Bracket, TooMany> {
    let found = on_any_sleeve(pool, target)?;
    let Some(sleeve) = sleeve else { return Ok(found) };
    let fits =
        |sum: Option<Sum>| sum.is_none_or(|sum| pool.thickness(&pool.counts(sum.rank)) <= sleeve);
    if fits(found.under) && fits(found.above) {
        return Ok(found);
    }
    on_sleeve(pool, target, sleeve)
}

fn on_any_sleeve(pool: &Pool<'_>, target: i64) -> Result<Bracket, TooMany> {
    let mut found = Bracket::default();
    let Some((last, rest)) = pool.sizes.split_last() else {
        found.take(target, NOTHING);
        return Ok(found);
    };
    let dealing = Dealing::of(&pool.sizes);
    let mut halves = halves(rest, dealing, |list, size| list.add(size, target))?;
    if halves.iter().all(|half| half.grown_by(last) > WORTH_A_WALK) {
        // Where hardly any sums coincide, a walk for each number of the last size costs less than
        // a list with all of them.
        for n in 0..=last.count {
            walk(&halves, target, Sum { thickness: 0, ..last.times(n) }, &mut found);
        }
    } else {
        dealing.choose(&mut halves, last, |list, size| list.add(size, target))?;
        walk(&halves, target, NOTHING, &mut found);
    }
    Ok(found)
}

/// Takes the target's neighbours among the sums of both halves with `more` on top.
fn walk([left, right]: &[Sums; 2], target: i64, more: Sum, found: &mut Bracket) {
    let mut down = right.sums.iter().rev();
    let mut low = down.next();
    let mut high: Option<&Sum> = None;
    for a in &left.sums {
        let rest = target - a.mass - more.mass;
        while let Some(b) = low
            && b.mass > rest
        {
            high = low;
            low = down.next();
        }
        for b in [low, high].into_iter().flatten() {
            found.take(target, a.with(b).with(&more));
        }
    }
}

fn on_sleeve(pool: &Pool<'_>, target: i64, sleeve: u32) -> Result<Bracket, TooMany> {
    // A selection above the target that stays above it without its lightest plate is not the
    // lightest above, and the one without that plate fits too.
    let heaviest = pool.sizes.first().map_or(0, |size| size.mass);
    let most = target.saturating_add(heaviest).max(heaviest);
    let dealing = Dealing::of(&pool.sizes);
    let [mut left, mut right] =
        halves(&pool.sizes, dealing, |list, size| list.add_thin(size, most, sleeve))?;
    // The less sleeve one half leaves, the fewer of the other's selections may go with it.
    left.sums.sort_unstable_by_key(|sum| std::cmp::Reverse(sum.thickness));
    right.sums.sort_unstable_by_key(|sum| sum.thickness);
    let mut thin = right.sums.iter().peekable();
    let mut by_mass: BTreeMap<i64, Sum> = BTreeMap::new();
    let mut found = Bracket::default();
    for a in &left.sums {
        while let Some(b) = thin.next_if(|b| a.thickness + b.thickness <= sleeve) {
            let best = by_mass.entry(b.mass).or_insert(*b);
            if b.rank < best.rank {
                *best = *b;
            }
        }
        let rest = target - a.mass;
        let low = by_mass.range(..=rest).next_back();
        let high = by_mass.range(rest + 1..).next();
        for (_, b) in [low, high].into_iter().flatten() {
            found.take(target, a.with(b));
        }
    }
    Ok(found)
}

/// How sizes are dealt into two halves: where plates of both units are there, each unit has a half
/// to itself; what else there is goes where it makes the lists least longer.
#[derive(Clone, Copy)]
struct Dealing {
    mixed: bool,
}

impl Dealing {
    fn of(sizes: &[Size<'_>]) -> Self {
        let any = |unit| sizes.iter().any(|size| is_of(size, unit));
        Self { mixed: any(MassUnit::Kilogram) && any(MassUnit::Pound) }
    }

    /// Adds a size to the half where it belongs.
    fn choose(
        self,
        [kilograms, pounds]: &mut [Sums; 2],
        size: &Size<'_>,
        add: impl Fn(&mut Sums, &Size<'_>) -> Result<(), TooMany>,
    ) -> Result<(), TooMany> {
        let grown = [kilograms.grown_by(size), pounds.grown_by(size)];
        let shorter = grown[0] + pounds.sums.len() <= grown[1] + kilograms.sums.len();
        let first = if self.mixed && is_of(size, MassUnit::Kilogram) && grown[0] < BALANCED {
            true
        } else if self.mixed && is_of(size, MassUnit::Pound) && grown[1] < BALANCED {
            false
        } else {
            shorter
        };
        add(if first { kilograms } else { pounds }, size)
    }
}

/// Whether a size is a multiple of a quarter of the unit.
fn is_of(size: &Size<'_>, unit: MassUnit) -> bool {
    size.mass % (unit.nanograms() / 4) == 0
}

/// Lists each half's sums.
fn halves(
    sizes: &[Size<'_>],
    dealing: Dealing,
    add: impl Fn(&mut Sums, &Size<'_>) -> Result<(), TooMany> + Copy,
) -> Result<[Sums; 2], TooMany> {
    let mut halves = [Sums::nothing(), Sums::nothing()];
    for size in sizes {
        dealing.choose(&mut halves, size, add)?;
    }
    Ok(halves)
}

/// Whether a search among these plates stays within its bounds, whatever is asked for.
pub(super) fn is_searchable(pool: &Pool<'_>, sleeve: Option<u32>) -> bool {
    let dealing = Dealing::of(&pool.sizes);
    halves(&pool.sizes, dealing, |list, size| list.add(size, HEAVIER_THAN_ALL)).is_ok()
        && sleeve.is_none_or(|sleeve| {
            halves(&pool.sizes, dealing, |list, size| list.add_thin(size, HEAVIER_THAN_ALL, sleeve))
                .is_ok()
        })
}

/// The sums of one half in rising order; of equal sums the best, and the thinner ones behind it
/// where thickness counts.
struct Sums {
    sums: Vec<Sum>,
    spare: Vec<Sum>,
    /// What every sum is a multiple of; 0 before there is any.
    measure: i64,
    /// All plates together.
    all: i64,
}

impl Sums {
    fn nothing() -> Self {
        Self { sums: vec![NOTHING], spare: Vec::new(), measure: 0, all: 0 }
    }

    /// About how many sums there are with this size too: no more than selections, and no more than
    /// multiples of the common measure.
    fn grown_by(&self, size: &Size<'_>) -> usize {
        let count = i64::from(size.count);
        let multiples = (self.all + size.mass * count) / measure(self.measure, size.mass) + 1;
        let selections = self.sums.len() * (usize::from(size.count) + 1);
        selections.min(usize::try_from(multiples).unwrap_or(usize::MAX))
    }

    fn note(&mut self, size: &Size<'_>) {
        self.measure = measure(self.measure, size.mass);
        self.all += size.mass * i64::from(size.count);
    }

    /// Adds up to `size.count` plates of a size; of the sums above `target` only the least is
    /// kept, since adding to it or to any other leads further away.
    fn add(&mut self, size: &Size<'_>, target: i64) -> Result<(), TooMany> {
        self.note(size);
        let base = self.sums.clone();
        for n in 1..=size.count {
            let more = Sum { thickness: 0, ..size.times(n) };
            // One plate less is above the target already.
            if n > 1 && more.mass - size.mass > target {
                break;
            }
            self.merge(&base, more, |sum| sum.mass > target, |_| false)?;
        }
        Ok(())
    }

    /// As [`Sums::add`], up to a mass and within a sleeve.
    fn add_thin(&mut self, size: &Size<'_>, most: i64, sleeve: u32) -> Result<(), TooMany> {
        self.note(size);
        let base = self.sums.clone();
        for n in 1..=size.count {
            let more = size.times(n);
            let out = |sum: Sum| sum.mass > most || sum.thickness > sleeve;
            self.merge(&base, more, |_| false, out)?;
        }
        Ok(())
    }

    /// Merges `base` with `more` on top into the list, leaves out what is `out`, and ends after
    /// the first sum that is `last`.
    fn merge(
        &mut self,
        base: &[Sum],
        more: Sum,
        last: impl Fn(Sum) -> bool,
        out: impl Fn(Sum) -> bool,
    ) -> Result<(), TooMany> {
        std::mem::swap(&mut self.sums, &mut self.spare);
        self.sums.clear();
        let mut old = self.spare.iter().copied().peekable();
        let mut new = base.iter().map(|sum| sum.with(&more)).peekable();
        let mut kept: Option<Sum> = None;
        loop {
            let next = match (old.peek(), new.peek()) {
                (Some(a), Some(b)) if b.order() < a.order() => new.next(),
                (Some(_), _) => old.next(),
                (None, _) => new.next(),
            };
            let Some(sum) = next else { break };
            if out(sum) {
                continue;
            }
            match kept {
                // Sorted by mass, then thickness: what comes later at the same mass is no thinner.
                Some(best) if best.mass == sum.mass && best.rank <= sum.rank => continue,
                Some(best) if best.mass < sum.mass && last(best) => break,
                _ => {}
            }
            kept = Some(sum);
            self.sums.push(sum);
        }
        if self.sums.len() > MOST_SUMS { Err(TooMany) } else { Ok(()) }
    }
}

/// The greatest common measure of two masses.
fn measure(mut a: i64, mut b: i64) -> i64 {
    while a != 0 {
        (a, b) = (b % a, a);
    }
    b
}

impl Sum {
    fn with(&self, other: &Self) -> Self {
        Self {
            rank: self.rank + other.rank,
            mass: self.mass + other.mass,
            thickness: self.thickness + other.thickness,
        }
    }

    fn order(&self) -> (i64, u32, Rank) {
        (self.mass, self.thickness, self.rank)
    }
}
