//! What something can make as a whole: from where to where, in which steps, and what is missing
//! between them.

use std::collections::{BTreeMap, BTreeSet};

use super::model::{Bar, Dumbbells, Equipment, Machine, PlateStock, Stack};
use crate::quantity::{Mass, MassUnit};

/// Sums of one end past which they are not listed.
const MOST_SUMS: usize = 20_000;

/// What something can make.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Reach {
    /// The lightest.
    pub least: Mass,
    /// The heaviest.
    pub most: Mass,
    /// The step that nearly all between them are apart: three in four at the least. None where they
    /// are apart in no such way.
    pub step: Option<Mass>,
    /// Loads by that step that can't be made, lightest first.
    pub missing: Vec<Mass>,
    /// How many can be made.
    pub count: usize,
}

impl Reach {
    /// Of loads, and the steps that they may be apart in, the smallest first.
    fn of(loads: &BTreeSet<Mass>, steps: &[Mass]) -> Option<Self> {
        let (least, most) = (*loads.first()?, *loads.last()?);
        let by = |step: Mass| -> Option<Vec<Mass>> {
            let (mut missing, mut all, mut at) = (Vec::new(), 1_usize, least);
            while let Some(next) = at.checked_add(step).filter(|next| *next <= most) {
                all += 1;
                if !loads.contains(&next) {
                    missing.push(next);
                }
                at = next;
            }
            // One step alone is no row of them.
            (all > 2 && missing.len() * 4 <= all).then_some(missing)
        };
        let fits = steps.iter().find_map(|step| Some((*step, by(*step)?)));
        let (step, missing) = fits.map_or((None, Vec::new()), |(step, out)| (Some(step), out));
        Some(Self { least, most, step, missing, count: loads.len() })
    }
}

impl Equipment {
    /// What a bar makes with the plates here; none where there are too many to list.
    pub fn reach_of_bar(&self, bar: &Bar) -> Option<Reach> {
        let base = bar.mass.checked_add(bar.collars)?;
        self.with_plates(base, 2, bar.sleeve.map(|sleeve| sleeve.tenths().into()))
    }

    /// What a plate-loaded machine makes with the plates here; none where there are too many to list.
    pub fn reach_of_machine(&self, machine: &Machine) -> Option<Reach> {
        let sleeve = machine.sleeve.map(|sleeve| sleeve.tenths().into());
        self.with_plates(machine.start, machine.posts, sleeve)
    }

    fn with_plates(&self, base: Mass, posts: u8, sleeve: Option<u32>) -> Option<Reach> {
        let sums = sums(&self.plates, posts)?;
        let fits = |thick: &u32| sleeve.is_none_or(|sleeve| *thick <= sleeve);
        let ends = i64::from(posts);
        let loads: BTreeSet<Mass> = sums
            .iter()
            .filter(|(_, thick)| fits(thick))
            .filter_map(|(sum, _)| base.checked_add(Mass::from_nanograms(sum.checked_mul(ends)?)))
            .collect();
        let unit = self.unit;
        // Usual steps: what two of the usual small plates come to (common practice).
        let tenths: [i64; 6] = match unit {
            MassUnit::Kilogram => [10, 20, 25, 50, 100, 200],
            MassUnit::Pound => [10, 25, 50, 100, 200, 450],
        };
        let steps = tenths.map(|tenths| Mass::from_nanograms(unit.nanograms() / 10 * tenths));
        Reach::of(&loads, &steps)
    }
}

/// What one end can carry: each sum of plates with the least room it takes, in tenths of a millimetre.
fn sums(plates: &[PlateStock], posts: u8) -> Option<BTreeMap<i64, u32>> {
    let mut sums = BTreeMap::from([(0_i64, 0_u32)]);
    for stock in plates {
        let each = stock.mass.nanograms();
        let thick = stock.thickness.map_or(0, |thickness| u32::from(thickness.tenths()));
        let count = match posts {
            1 => u32::from(stock.pairs) * 2 + u32::from(stock.single),
            _ => u32::from(stock.pairs),
        };
        let before = sums.clone();
        for number in 1..=count {
            for (sum, room) in &before {
                let sum = sum.checked_add(each.checked_mul(number.into())?)?;
                let room = room.saturating_add(thick.saturating_mul(number));
                let least = sums.entry(sum).or_insert(room);
                *least = room.min(*least);
            }
            if sums.len() > MOST_SUMS {
                return None;
            }
        }
    }
    Some(sums)
}

impl Dumbbells {
    /// What the rack has; none where it is empty.
    pub fn reach(&self) -> Option<Reach> {
        spaced(self.loads.iter().copied().collect())
    }
}

impl Stack {
    /// What reaches the hand, add-ons on and off; none where its pins have no figures.
    pub fn reach(&self) -> Option<Reach> {
        let mut loads: BTreeSet<Mass> =
            self.pins.iter().map(|pin| pin.load).collect::<Option<_>>()?;
        for add_on in &self.add_ons {
            for _ in 0..add_on.count {
                let more: Vec<Mass> =
                    loads.iter().filter_map(|load| load.checked_add(add_on.mass)).collect();
                loads.extend(more);
            }
        }
        spaced(loads.into_iter().map(|load| self.ratio.at_hand(load)).collect())
    }
}

/// By the step that most neighbours are apart in; of two as common the smaller.
fn spaced(loads: BTreeSet<Mass>) -> Option<Reach> {
    let mut apart: BTreeMap<Mass, usize> = BTreeMap::new();
    for (one, next) in loads.iter().zip(loads.iter().skip(1)) {
        *apart.entry(one.distance(*next)).or_default() += 1;
    }
    let step = apart.iter().max_by_key(|(step, times)| (**times, std::cmp::Reverse(**step)));
    let step: Vec<Mass> = step.into_iter().map(|(step, _)| *step).collect();
    Reach::of(&loads, &step)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::equipment::{Fit, builtin};
    use crate::quantity::Numerals;

    fn mass(text: &str) -> Mass {
        Mass::read(text, Numerals::Point).unwrap()
    }

    fn gym(text: &str) -> Equipment {
        Equipment::read(text).unwrap()
    }

    const BAR: &str = "[[bar]]\nname = \"Long bar\"\nmass = \"20 kg\"\n";

    #[test]
    fn what_is_missing_between_the_steps_is_named() {
        let text = format!(
            "{BAR}[[plate]]\nmass = \"20 kg\"\npairs = 1\n[[plate]]\nmass = \"10 kg\"\npairs = 1\n\
             [[plate]]\nmass = \"5 kg\"\npairs = 1\n[[plate]]\nmass = \"1.25 kg\"\npairs = 1\n"
        );
        let gym = gym(&text);
        let reach = gym.reach_of_bar(&gym.bars[0]).unwrap();
        assert_eq!((reach.least, reach.most), (mass("20 kg"), mass("92.5 kg")));
        // Without a 2.5 pair half of the steps of 2.5 are missing: it goes in tens.
        assert_eq!((reach.step, reach.missing.len()), (Some(mass("10 kg")), 0));
        assert_eq!(reach.count, 16);
        let with = text.replace("\"1.25 kg\"\npairs = 1", "\"1.25 kg\"\npairs = 3");
        let gym = super::super::Equipment::read(&with).unwrap();
        let reach = gym.reach_of_bar(&gym.bars[0]).unwrap();
        assert_eq!((reach.step, reach.missing.len()), (Some(mass("2.5 kg")), 0));
    }

    #[test]
    fn a_reach_is_what_can_be_made_and_nothing_else() {
        for gym in builtin() {
            for bar in &gym.bars {
                let alone = Equipment { bars: vec![bar.clone()], ..gym.clone() };
                let reach = gym.reach_of_bar(bar).unwrap();
                let (mut at, mut count) = (reach.least, 1);
                while let Some(above) = alone.step_above(&bar.kind, at) {
                    (at, count) = (above.made, count + 1);
                }
                assert_eq!((at, count), (reach.most, reach.count), "{}", bar.name);
                for missing in &reach.missing {
                    let made = alone.make(&bar.kind, *missing, Fit::Nearest).unwrap();
                    assert_ne!(made.made, *missing);
                }
            }
            for machine in &gym.machines {
                let alone = Equipment { machines: vec![machine.clone()], ..gym.clone() };
                let reach = gym.reach_of_machine(machine).unwrap();
                assert_eq!(alone.step_above(&machine.kind, reach.most), None);
            }
        }
    }

    #[test]
    fn racks_and_stacks_name_their_gaps() {
        let text = "[[dumbbells]]\nname = \"Dumbbells\"\n\
                    loads = [\"2 kg\", \"4 kg\", \"6 kg\", \"10 kg\", \"12 kg\", \"14 kg\"]\n\
                    [[stack]]\nname = \"Pulldown\"\nfrom = \"5 kg\"\nto = \"50 kg\"\n\
                    step = \"5 kg\"\nadd_ons = [\"2.5 kg\"]\nratio = \"1:2\"\n\
                    [[stack]]\nname = \"Curl\"\npins = 5\n";
        let gym = gym(text);
        let rack = gym.dumbbells[0].reach().unwrap();
        assert_eq!((rack.step, rack.missing), (Some(mass("2 kg")), vec![mass("8 kg")]));
        let stack = gym.stacks[0].reach().unwrap();
        assert_eq!((stack.least, stack.most), (mass("2.5 kg"), mass("26.25 kg")));
        assert_eq!((stack.step, stack.missing.len()), (Some(mass("1.25 kg")), 0));
        assert_eq!(gym.stacks[1].reach(), None);
    }
}
