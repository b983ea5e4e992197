//! Our loading against a general solver of integer programs.

use barwright_domain::equipment::Fit;
use barwright_domain::quantity::Mass;
use barwright_tests::solver;

use crate::clock::{median, micros};
use crate::measure::{Measure, Outcome};
use crate::random::{Random, USUAL, gym};

/// The median of pairs run in turn: one load by us and by microlp, the smallest miss only.
pub(crate) const SOLVER: Measure = Measure {
    name: "solver",
    unit: "ratio",
    against: "one load on a usual set by us / by a general solver (microlp)",
    bar: None,
    run: ratio,
};

fn ratio() -> Outcome {
    let gym = gym(USUAL);
    let bar = solver::Bar::of(&gym).expect("the gym has a bar");
    let mut random = Random::seeded(3);
    let ratios = (0..200).map(|_| {
        let grams = 20_000 + 250 * random.below(1_000);
        let asked = Mass::from_grams(grams.try_into().unwrap_or(0)).unwrap_or_default();
        let ours = micros(|| gym.make("barbell", asked, Fit::Nearest));
        ours / micros(|| bar.nearest(asked))
    });
    Outcome { value: median(ratios.collect()) }
}
