//! Making one load, without a memo between calls.

use barwright_domain::equipment::{Equipment, Fit};
use barwright_domain::quantity::Mass;

use crate::clock::{best_of, median};
use crate::measure::{Measure, Outcome};
use crate::random::{Random, USUAL as PLATES, gym};

/// The median over loads on a usual set of plates.
pub(crate) const USUAL: Measure = Measure {
    name: "plates",
    unit: "us",
    against: "one load on a usual set of plates, median",
    bar: Some(20.0),
    run: usual,
};

/// The slowest load on nine sizes of four pairs.
pub(crate) const WORST: Measure = Measure {
    name: "plates-worst",
    unit: "us",
    against: "the slowest load on nine sizes of four pairs in mixed units",
    bar: Some(100.0),
    run: worst,
};

/// Loads from 20 to 320 kg by grams, so that most are no sum of plates.
fn loads(count: u64) -> Vec<Mass> {
    let mut random = Random::seeded(1);
    let grams = (0..count).map(|_| 20_000 + random.below(300_000));
    grams.filter_map(|grams| Mass::from_grams(grams.try_into().ok()?)).collect()
}

fn times(gym: &Equipment, count: u64) -> Vec<f64> {
    best_of(&loads(count), 5, |load| {
        gym.make("barbell", *load, Fit::Nearest).expect("every load has a nearest");
    })
}

fn usual() -> Outcome {
    Outcome { value: median(times(&gym(PLATES), 2_000)) }
}

fn worst() -> Outcome {
    let mixes: [&[&str]; 4] = [
        &["25 kg", "20 kg", "15 kg", "10 kg", "1.25 kg", "45 lb", "35 lb", "10 lb", "2.5 lb"],
        &["25 kg", "20 kg", "10 kg", "5 kg", "2.5 kg", "1.25 kg", "45 lb", "25 lb", "5 lb"],
        &["20 kg", "45 lb", "35 lb", "25 lb", "10 lb", "5 lb", "2.5 lb", "1.25 lb", "0.5 kg"],
        // Weighed plates: no two sums coincide.
        &[
            "25.013 kg",
            "20.007 kg",
            "14.989 kg",
            "9.998 kg",
            "5.003 kg",
            "45.11 lb",
            "34.87 lb",
            "10.03 lb",
            "2.49 lb",
        ],
    ];
    let slowest = mixes.iter().flat_map(|labels| {
        let plates: Vec<(&str, u8)> = labels.iter().map(|label| (*label, 4)).collect();
        times(&gym(&plates), 500)
    });
    Outcome { value: slowest.fold(0.0, f64::max) }
}
