//! Plates as the search sees them: sizes, heaviest first, and how many one end can have.

use super::model::PlateStock;
use super::rig::Plate;
use crate::quantity::{Length, bounds};

/// Sizes a pool holds; a rank has room for no more.
pub(super) const SIZES: usize = 22;
/// Plates of one size on one end; a rank has room for no more.
const EACH: u8 = 31;
/// Bits that one size's count takes in a rank.
const COUNT_BITS: usize = 5;
/// The place of the number of plates in a rank.
const PLATES_AT: u32 = 110;

/// Plates that are alike to the bar: as heavy, as thick, full-size or not.
#[derive(Debug, Clone)]
pub(super) struct Size<'a> {
    /// Nanograms.
    pub(super) mass: i64,
    /// Tenths of a millimetre; 0 where it isn't known.
    pub(super) thickness: u32,
    /// How many one end can have.
    pub(super) count: u8,
    pub(super) full: bool,
    /// What one more of it adds to a rank.
    pub(super) weight: u128,
    stocks: Vec<(&'a PlateStock, u8)>,
}

/// The plates that one end, or the one post, can have.
#[derive(Debug)]
pub(super) struct Pool<'a> {
    /// Heaviest first; of the same mass full-size first, then as in the file.
    pub(super) sizes: Vec<Size<'a>>,
}

/// How many plates a selection has, and how the heavy ones go first, in one number that adds up:
/// the lower is the better. Fewest plates win; of as many the one with more of the heaviest, then
/// of the next heaviest.
pub(super) type Rank = u128;

impl<'a> Pool<'a> {
    /// The pool for something with so many posts; `None` for more or heavier
    /// plates than are searched.
    pub(super) fn of(plates: &'a [PlateStock], posts: i64) -> Option<Self> {
        let mut sizes: Vec<Size<'a>> = Vec::with_capacity(plates.len());
        for stock in plates {
            let count = if posts == 1 {
                stock.pairs.saturating_mul(2).saturating_add(stock.single)
            } else {
                stock.pairs.saturating_add(stock.single / 2)
            };
            let mass = stock.mass.nanograms();
            if count == 0 || mass <= 0 {
                continue;
            }
            if mass > bounds::MASS.greatest {
                return None;
            }
            let thickness = u32::from(stock.thickness.map_or(0, Length::tenths));
            let full = stock.is_full_size();
            let alike = sizes
                .iter_mut()
                .find(|size| (size.mass, size.thickness, size.full) == (mass, thickness, full));
            if let Some(size) = alike {
                let more = count.min(EACH - size.count);
                size.count += more;
                size.stocks.push((stock, more));
            } else {
                let count = count.min(EACH);
                let stocks = vec![(stock, count)];
                sizes.push(Size { mass, thickness, count, full, weight: 0, stocks });
            }
        }
        if sizes.len() > SIZES {
            return None;
        }
        sizes.sort_by_key(|size| (-size.mass, !size.full));
        for (at, size) in sizes.iter_mut().enumerate() {
            size.weight = (1 << PLATES_AT) - (1 << shift(at));
        }
        Some(Self { sizes })
    }

    /// One plate of the size at a place, and the pool without it.
    pub(super) fn take_one(&self, at: usize) -> Option<(Sum, Self)> {
        let mut sizes = self.sizes.clone();
        let size = sizes.get_mut(at)?;
        size.count = size.count.checked_sub(1)?;
        Some((size.times(1), Self { sizes }))
    }

    /// The size of a plate, looked for from a size outward; by its label where several sizes are
    /// as heavy.
    pub(super) fn find(&self, plate: &Plate, from: usize) -> Option<(usize, &Size<'a>)> {
        let mass = plate.mass.nanograms();
        let as_heavy =
            || self.sizes.iter().enumerate().skip(from).filter(|(_, size)| size.mass == mass);
        let labelled = |size: &Size<'_>| size.stocks.iter().any(|(s, _)| s.label == plate.label);
        as_heavy().find(|(_, size)| labelled(size)).or_else(|| as_heavy().next())
    }

    /// How many of each size a rank stands for.
    pub(super) fn counts(&self, rank: Rank) -> Vec<u8> {
        let plates = rank.div_ceil(1 << PLATES_AT);
        let counts = (plates << PLATES_AT) - rank;
        (0..self.sizes.len()).map(|at| ((counts >> shift(at)) & 0b1_1111) as u8).collect()
    }

    /// The plates from the inside out.
    pub(super) fn plates(&self, counts: &[u8]) -> Vec<Plate> {
        let mut side = Vec::new();
        for (size, count) in self.sizes.iter().zip(counts) {
            side.extend((0..*count).filter_map(|at| size.plate(at)));
        }
        side
    }

    /// How much sleeve the plates take, in tenths of a millimetre.
    pub(super) fn thickness(&self, counts: &[u8]) -> u32 {
        (self.sizes.iter().zip(counts)).map(|(size, n)| size.thickness * u32::from(*n)).sum()
    }
}

/// A selection of plates for one end.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Sum {
    pub(super) rank: Rank,
    /// Nanograms.
    pub(super) mass: i64,
    /// Tenths of a millimetre; 0 where no sleeve is looked at.
    pub(super) thickness: u32,
}

impl Size<'_> {
    /// So many of it.
    pub(super) fn times(&self, n: u8) -> Sum {
        Sum {
            rank: self.weight * Rank::from(n),
            mass: self.mass * i64::from(n),
            thickness: self.thickness * u32::from(n),
        }
    }

    /// The `at`-th plate of this size, counted from the inside.
    pub(super) fn plate(&self, at: u8) -> Option<Plate> {
        let mut at = at;
        for (stock, count) in &self.stocks {
            if at < *count {
                return Some(stock.plate());
            }
            at -= count;
        }
        None
    }
}

impl Size<'_> {
    /// One more plate of this size, with these on already: of several labels the first that isn't
    /// used up.
    pub(super) fn next_beside(&self, side: &[Plate]) -> Option<Plate> {
        let used = |stock: &PlateStock| {
            side.iter().filter(|on| on.label == stock.label && on.mass == stock.mass).count()
        };
        let left = self.stocks.iter().find(|(stock, count)| used(stock) < usize::from(*count));
        left.or(self.stocks.first()).map(|(stock, _)| stock.plate())
    }
}

fn shift(at: usize) -> usize {
    (SIZES - 1 - at) * COUNT_BITS
}
