//! Making a load with what a gym has.

use std::rc::Rc;

use serde::{Deserialize, Serialize};

use super::model::{Bar, Dumbbells, Equipment, Machine, Offer, Stack};
use super::pool::{Pool, Sum};
use super::rig::{Fit, Made, Plate, Rig};
use super::sums::{self, Bracket, TooMany};
use super::{BELT, BODYWEIGHT, PLATE};
use crate::quantity::{Mass, bounds};

/// Ways to put add-on weights on a stack past which the search is refused rather than slow.
const MOST_TOPS: usize = 1_000;

/// Why a load can't be made.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, thiserror::Error)]
#[serde(tag = "why", rename_all = "snake_case")]
pub enum CannotMake {
    /// Nothing of that kind is here.
    #[error("no {implement} here")]
    NotHere {
        /// The implement asked for.
        implement: String,
    },
    /// It is here, but nobody knows its loads: it is set by a pin's label.
    #[error("the {implement}'s loads are not known")]
    NoFigures {
        /// The implement asked for.
        implement: String,
    },
    /// It is here and carries no load of its own.
    #[error("the {implement} carries no load")]
    CarriesNothing {
        /// The implement asked for.
        implement: String,
    },
    /// The lightest load is heavier than what was asked for.
    #[error("nothing so light: {least:?} is the least")]
    TooLight {
        /// The lightest load.
        least: Mass,
    },
    /// The heaviest load is lighter than what was asked for.
    #[error("nothing so heavy: {greatest:?} is the most")]
    TooHeavy {
        /// The heaviest load.
        greatest: Mass,
    },
    /// There is no full-size plate to set the bar's height, or it fits on no bar.
    #[error("no full-size plate")]
    NoFullSize,
    /// Below nothing, or past what is read of a mass.
    #[error("not a load")]
    NotALoad,
    /// More sets than are planned at once.
    #[error("more than {most} sets")]
    TooManySets {
        /// The most.
        most: usize,
    },
    /// More different sums of plates than are searched; the reader of equipment refuses such a
    /// file.
    #[error("too many different plates")]
    TooManySums,
}

/// A load to be made.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Ask {
    /// What was asked for: with dumbbells the mass of each, with a stack what reaches the hand.
    pub load: Mass,
    /// Which load to make when this one can't be.
    pub fit: Fit,
    /// Only with a full-size plate on: the bar is lifted from the floor.
    pub full_size: bool,
    /// The load is meant as one end's or one post's plates, bar or start weight not counted.
    pub one_side: bool,
}

impl Ask {
    /// A load, by its fit alone.
    pub fn new(load: Mass, fit: Fit) -> Self {
        Self { load, fit, full_size: false, one_side: false }
    }
}

impl Equipment {
    /// Makes a load with the first of this implement's bars, racks, stacks or machines whose range
    /// holds it, or with the one that misses it least.
    ///
    /// On plates: the smaller miss, then the lighter load, then the fewest plates, then the
    /// heaviest innermost.
    ///
    /// # Errors
    /// [`CannotMake`] with the reason.
    pub fn make(&self, implement: &str, asked: Mass, fit: Fit) -> Result<Made, CannotMake> {
        self.make_as(implement, Ask::new(asked, fit))
    }

    /// As [`Equipment::make`], with all that can be asked.
    ///
    /// # Errors
    /// [`CannotMake`] with the reason.
    pub fn make_as(&self, implement: &str, ask: Ask) -> Result<Made, CannotMake> {
        let load = ask.load.nanograms();
        if !(0..=bounds::MASS.greatest).contains(&load) {
            return Err(CannotMake::NotALoad);
        }
        if implement == BODYWEIGHT && ask.load == Mass::ZERO {
            return Ok(Made { asked: ask.load, made: ask.load, rig: Rig::Body });
        }
        let mut best: Option<(Mass, Rig)> = None;
        let mut refused = None;
        for loader in self.loaders(implement)? {
            let picked = loader.pair(self, ask).and_then(|pair| {
                let holds = pair.holds(ask.load);
                pair.pick(ask).map(|picked| (holds, picked))
            });
            match picked {
                Ok((holds, (made, rig))) => {
                    let miss = |mass: Mass| (mass.distance(ask.load), mass);
                    if holds || best.as_ref().is_none_or(|(so_far, _)| miss(made) < miss(*so_far)) {
                        best = Some((made, rig));
                    }
                    if holds {
                        break;
                    }
                }
                Err(why) => refused = Some(farthest(refused, why)),
            }
        }
        match (best, refused) {
            (Some((made, rig)), _) => Ok(Made { asked: ask.load, made, rig }),
            (None, Some(why)) => Err(why),
            (None, None) => Err(CannotMake::NotHere { implement: implement.to_string() }),
        }
    }

    /// The lightest load above `from` that can be made; `None` where there is none.
    pub fn step_above(&self, implement: &str, from: Mass) -> Option<Made> {
        let above = from.checked_add(Mass::from_nanograms(1))?;
        self.make(implement, above, Fit::Over).ok()
    }

    /// The heaviest load below `from` that can be made; `None` where there is none.
    pub fn step_below(&self, implement: &str, from: Mass) -> Option<Made> {
        let below = from.checked_sub(Mass::from_nanograms(1))?;
        self.make(implement, below, Fit::Under).ok()
    }

    /// Whether plates are few or alike enough that every search among them stays quick. The reader
    /// of equipment refuses what is not.
    pub fn is_searchable(&self) -> bool {
        let bars = self.bars.iter().map(Base::of_bar);
        bars.chain(self.machines.iter().map(Base::of_machine)).chain([Base::HUNG]).all(|base| {
            Pool::of(&self.plates, base.posts)
                .is_some_and(|pool| sums::is_searchable(&pool, base.sleeve))
        })
    }

    /// Everything here that makes loads for an implement, in the file's order.
    pub(super) fn loaders(&self, implement: &str) -> Result<Vec<Loader<'_>>, CannotMake> {
        let mut found = Vec::new();
        found.extend(self.bars.iter().filter(|bar| bar.kind == implement).map(Loader::Bar));
        let racks = |kind: &str| {
            let racks: Vec<_> = self.dumbbells.iter().filter(|rack| rack.kind == kind).collect();
            (!racks.is_empty()).then_some(Loader::Racks(racks))
        };
        found.extend(racks(implement));
        let stacks = self.stacks_for(implement);
        found.extend(stacks.filter(|stack| stack.is_numbered()).map(Loader::Stack));
        found.extend(self.machines.iter().filter(|m| m.kind == implement).map(Loader::Posts));
        let belt = self.offers(BELT) == Offer::Loads;
        if implement == BODYWEIGHT || implement == BELT {
            found.extend(belt.then_some(Loader::Hung));
        }
        if implement == BODYWEIGHT {
            found.extend(racks("vest"));
        }
        if implement == PLATE && !self.plates.is_empty() {
            found.push(Loader::OnePlate);
        }
        let implement = implement.to_string();
        match self.offers(&implement) {
            _ if !found.is_empty() => Ok(found),
            Offer::No | Offer::Loads => Err(CannotMake::NotHere { implement }),
            Offer::Pins => Err(CannotMake::NoFigures { implement }),
            Offer::Bare => Err(CannotMake::CarriesNothing { implement }),
        }
    }
}

/// Of two reasons the one that leaves more room: the lightest least, the heaviest most.
fn farthest(first: Option<CannotMake>, then: CannotMake) -> CannotMake {
    match (first, then) {
        (Some(CannotMake::TooLight { least: a }), CannotMake::TooLight { least: b }) => {
            CannotMake::TooLight { least: a.min(b) }
        }
        (Some(CannotMake::TooHeavy { greatest: a }), CannotMake::TooHeavy { greatest: b }) => {
            CannotMake::TooHeavy { greatest: a.max(b) }
        }
        (_, then) => then,
    }
}

/// Something that loads are made with.
pub(super) enum Loader<'a> {
    Bar(&'a Bar),
    Posts(&'a Machine),
    /// All racks of a kind together.
    Racks(Vec<&'a Dumbbells>),
    Stack(&'a Stack),
    Hung,
    OnePlate,
}

impl Bar {
    /// The bar with these plates on each end.
    pub fn with(&self, side: Vec<Plate>) -> Rig {
        let bar = self.name.clone();
        Rig::Bar { bar, bar_mass: self.mass, collars: self.collars, side }
    }
}

impl Machine {
    /// The machine with these plates on each post.
    pub fn with(&self, plates: Vec<Plate>) -> Rig {
        let machine = self.name.clone();
        Rig::Posts { machine, start: self.start, posts: self.posts, plates }
    }
}

/// The heaviest load up to what was asked for, and the lightest above it.
#[derive(Default)]
struct Pair<'a> {
    under: Option<(Mass, Way<'a>)>,
    above: Option<(Mass, Way<'a>)>,
}

/// How a load is made, drawn up once it is chosen.
type Way<'a> = Box<dyn FnOnce() -> Rig + 'a>;

impl<'a> Pair<'a> {
    /// Whether the load lies within what can be made.
    fn holds(&self, load: Mass) -> bool {
        self.under.as_ref().is_some_and(|(mass, _)| *mass == load || self.above.is_some())
    }

    fn pick(self, ask: Ask) -> Result<(Mass, Rig), CannotMake> {
        let miss = |made: &(Mass, Way<'_>)| made.0.distance(ask.load);
        let (made, way) = match (self.under, self.above) {
            (None, None) => return Err(CannotMake::NoFullSize),
            (Some(under), None) => match ask.fit {
                Fit::Over if under.0 < ask.load => {
                    return Err(CannotMake::TooHeavy { greatest: under.0 });
                }
                _ => under,
            },
            (None, Some(above)) => match ask.fit {
                Fit::Under => return Err(CannotMake::TooLight { least: above.0 }),
                Fit::Nearest | Fit::Over => above,
            },
            (Some(under), Some(above)) => match ask.fit {
                Fit::Under => under,
                Fit::Over if under.0 == ask.load => under,
                Fit::Over => above,
                Fit::Nearest if miss(&above) < miss(&under) => above,
                Fit::Nearest => under,
            },
        };
        Ok((made, way()))
    }

    /// Takes a load that can be made, if it is nearer than what was there.
    fn offer(&mut self, load: Mass, made: Mass, way: impl FnOnce() -> Rig + 'a) {
        let (place, nearer): (_, fn(Mass, Mass) -> bool) = if made > load {
            (&mut self.above, |made, best| made < best)
        } else {
            (&mut self.under, |made, best| made > best)
        };
        if place.as_ref().is_none_or(|(best, _)| nearer(made, *best)) {
            *place = Some((made, Box::new(way)));
        }
    }
}

/// What weighs so much with no plate on, and so many posts that are loaded alike.
#[derive(Clone, Copy)]
pub(super) struct Base {
    pub(super) mass: i64,
    pub(super) posts: i64,
    pub(super) sleeve: Option<u32>,
}

impl Base {
    /// Plates hung from the lifter.
    const HUNG: Self = Self { mass: 0, posts: 1, sleeve: None };

    pub(super) fn of_bar(bar: &Bar) -> Self {
        let mass = bar.mass.nanograms().saturating_add(bar.collars.nanograms());
        Self { mass, posts: 2, sleeve: bar.sleeve.map(|sleeve| u32::from(sleeve.tenths())) }
    }

    pub(super) fn of_machine(machine: &Machine) -> Self {
        let sleeve = machine.sleeve.map(|sleeve| u32::from(sleeve.tenths()));
        let posts = if machine.posts == 1 { 1 } else { 2 };
        Self { mass: machine.start.nanograms(), posts, sleeve }
    }

    /// The plates of one post alone.
    pub(super) fn alone(self) -> Self {
        Self { mass: 0, posts: 1, ..self }
    }

    /// The load with so much on each post.
    pub(super) fn load(&self, each: i64) -> Mass {
        Mass::from_nanograms(self.mass.saturating_add(each.saturating_mul(self.posts)))
    }

    /// The most on each post that isn't heavier than a load.
    pub(super) fn each_under(&self, load: Mass) -> i64 {
        load.nanograms().saturating_sub(self.mass).div_euclid(self.posts)
    }

    /// The least on each post that isn't lighter than a load.
    pub(super) fn each_over(&self, load: Mass) -> i64 {
        let all = load.nanograms().saturating_sub(self.mass);
        all.div_euclid(self.posts) + i64::from(all.rem_euclid(self.posts) != 0)
    }
}

impl<'a> Loader<'a> {
    /// What plates are put on, where they are.
    pub(super) fn base(&self) -> Option<Base> {
        match self {
            Self::Bar(bar) => Some(Base::of_bar(bar)),
            Self::Posts(machine) => Some(Base::of_machine(machine)),
            Self::Hung => Some(Base::HUNG),
            Self::Racks(_) | Self::Stack(_) | Self::OnePlate => None,
        }
    }

    /// Whether a rig is this with plates on.
    pub(super) fn is_under(&self, rig: &Rig) -> bool {
        match (self, rig) {
            (Self::Bar(bar), Rig::Bar { bar: name, .. }) => bar.name == *name,
            (Self::Posts(machine), Rig::Posts { machine: name, .. }) => machine.name == *name,
            (Self::Hung, Rig::Hung { .. }) => true,
            _ => false,
        }
    }

    /// This with plates on; nothing where it takes none.
    pub(super) fn with(&self, plates: Vec<Plate>) -> Rig {
        match self {
            Self::Bar(bar) => bar.with(plates),
            Self::Posts(machine) => machine.with(plates),
            Self::Hung => Rig::Hung { plates },
            Self::Racks(_) | Self::Stack(_) | Self::OnePlate => Rig::Body,
        }
    }

    fn pair(&self, gym: &'a Equipment, ask: Ask) -> Result<Pair<'a>, CannotMake> {
        match *self {
            Self::Bar(bar) => plated(gym, &Base::of_bar(bar), ask, |plates| bar.with(plates)),
            Self::Posts(machine) => {
                let ask = Ask { full_size: false, ..ask };
                plated(gym, &Base::of_machine(machine), ask, |plates| machine.with(plates))
            }
            Self::Hung => {
                let ask = Ask { full_size: false, ..ask };
                plated(gym, &Base::HUNG, ask, |plates| Rig::Hung { plates })
            }
            Self::Racks(ref racks) => {
                let mut pair = Pair::default();
                for rack in racks.iter().copied() {
                    for each in rack.loads.iter().copied() {
                        let count = if rack.pairs { 2 } else { 1 };
                        pair.offer(ask.load, each, move || Rig::Dumbbells {
                            rack: rack.name.clone(),
                            each,
                            count,
                        });
                    }
                }
                Ok(pair)
            }
            Self::OnePlate => {
                let mut pair = Pair::default();
                for stock in gym.plates.iter().filter(|stock| stock.pairs > 0 || stock.single > 0) {
                    pair.offer(ask.load, stock.mass, || Rig::Hung { plates: vec![stock.plate()] });
                }
                Ok(pair)
            }
            Self::Stack(stack) => pinned(stack, ask),
        }
    }
}

fn plated<'a>(
    gym: &'a Equipment,
    base: &Base,
    ask: Ask,
    rig: impl Fn(Vec<Plate>) -> Rig + Copy + 'a,
) -> Result<Pair<'a>, CannotMake> {
    let pool = Pool::of(&gym.plates, base.posts).ok_or(CannotMake::TooManySums)?;
    let pool = Rc::new(pool);
    let base = if ask.one_side { base.alone() } else { *base };
    let found =
        around(&pool, &base, ask.load, ask.full_size).map_err(|_| CannotMake::TooManySums)?;
    let way = |sum: Sum| -> (Mass, Way<'a>) {
        let pool = Rc::clone(&pool);
        (base.load(sum.mass), Box::new(move || rig(pool.plates(&pool.counts(sum.rank)))))
    };
    Ok(Pair { under: found.under.map(way), above: found.above.map(way) })
}

/// A load's neighbours on these posts, with a full-size plate on where that is asked.
pub(super) fn around(
    pool: &Pool<'_>,
    base: &Base,
    load: Mass,
    full_size: bool,
) -> Result<Bracket, TooMany> {
    let target = base.each_under(load);
    if !full_size {
        return sums::bracket(pool, target, base.sleeve);
    }
    let mut found = Bracket::default();
    let full_sizes = pool.sizes.iter().enumerate().filter(|(_, size)| size.full);
    for (one, rest) in full_sizes.filter_map(|(at, _)| pool.take_one(at)) {
        let left = base.sleeve.map(|sleeve| sleeve.checked_sub(one.thickness));
        let sleeve = match left {
            Some(None) => continue,
            Some(left) => left,
            None => None,
        };
        found.join(target, &one, sums::bracket(&rest, target - one.mass, sleeve)?);
    }
    Ok(found)
}

fn pinned(stack: &Stack, ask: Ask) -> Result<Pair<'_>, CannotMake> {
    let mut tops: Vec<(Mass, Vec<u8>)> = vec![(Mass::ZERO, Vec::new())];
    for add_on in &stack.add_ons {
        let base = std::mem::take(&mut tops);
        for (mass, counts) in base {
            for n in 0..=add_on.count {
                let more = add_on.mass.checked_mul(i64::from(n));
                let Some(sum) = more.and_then(|more| mass.checked_add(more)) else { continue };
                let mut counts = counts.clone();
                counts.push(n);
                tops.push((sum, counts));
            }
        }
        if tops.len() > MOST_TOPS {
            return Err(CannotMake::TooManySums);
        }
    }
    // Of equal loads the one with the fewest on top: it is offered first.
    tops.sort_by_key(|(_, counts)| counts.iter().map(|n| u32::from(*n)).sum::<u32>());
    let mut pair = Pair::default();
    for (top, counts) in tops {
        let counts = Rc::new(counts);
        for pin in &stack.pins {
            let Some(made) = pin.load.and_then(|load| load.checked_add(top)) else { continue };
            let counts = Rc::clone(&counts);
            pair.offer(ask.load, stack.ratio.at_hand(made), move || Rig::Stack {
                stack: stack.name.clone(),
                pin: pin.label.clone(),
                add_ons: (stack.add_ons.iter().zip(counts.iter()))
                    .flat_map(|(add_on, n)| std::iter::repeat_n(add_on.plate(), usize::from(*n)))
                    .collect(),
            });
        }
    }
    Ok(pair)
}
