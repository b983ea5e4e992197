//! Seeded cases, the same in every run.

use barwright_domain::equipment::{Bar, Equipment, PlateStock};
use barwright_domain::quantity::{Mass, Numerals};

/// A small generator of numbers (splitmix64).
#[derive(Debug)]
pub(crate) struct Random(u64);

impl Random {
    /// The generator that starts from a seed.
    pub(crate) const fn seeded(seed: u64) -> Self {
        Self(seed)
    }

    /// A number below `most`.
    pub(crate) fn below(&mut self, most: u64) -> u64 {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        (z ^ (z >> 31)) % most.max(1)
    }
}

/// A mass that is written down here.
pub(crate) fn mass(text: &str) -> Mass {
    Mass::read(text, Numerals::Point).expect("masses in the bench are in order")
}

/// A gym of one bar of 20 kg and these plates with their pairs.
pub(crate) fn gym(plates: &[(&str, u8)]) -> Equipment {
    let bar = Bar {
        name: "Bar".into(),
        kind: "barbell".into(),
        mass: mass("20 kg"),
        collars: Mass::ZERO,
        sleeve: None,
    };
    let stock = |(label, pairs): &(&str, u8)| PlateStock {
        label: (*label).into(),
        mass: mass(label),
        pairs: *pairs,
        single: 0,
        thickness: None,
        diameter: None,
        colour: None,
    };
    let plates = plates.iter().map(stock).collect();
    Equipment { name: "Bench".into(), bars: vec![bar], plates, ..Equipment::default() }
}

/// What a gym of some size has on its rack.
pub(crate) const USUAL: &[(&str, u8)] = &[
    ("25 kg", 4),
    ("20 kg", 2),
    ("15 kg", 1),
    ("10 kg", 2),
    ("5 kg", 2),
    ("2.5 kg", 2),
    ("1.25 kg", 2),
    ("0.5 kg", 1),
];
