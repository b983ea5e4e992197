//! Planning the changes of a ramp.

use barwright_domain::equipment::changes::{Ramp, Wanted, plan};
use barwright_domain::quantity::{Mass, Percent};

use crate::clock::{best_of, median};
use crate::measure::{Measure, Outcome};
use crate::random::{Random, USUAL, gym};

/// The median over ramps.
pub(crate) const MEDIAN: Measure = Measure {
    name: "ramp",
    unit: "us",
    against: "seven steps on a usual set of plates, planned to the fewest moves, median",
    bar: Some(1_000.0),
    run: || Outcome { value: median(times()) },
};

/// The slowest ramp.
pub(crate) const WORST: Measure = Measure {
    name: "ramp-worst",
    unit: "us",
    against: "the slowest of the same ramps",
    bar: Some(5_000.0),
    run: || Outcome { value: times().into_iter().fold(0.0, f64::max) },
};

/// Seven steps: five up to a work load between 40 and 320 kg, and two more work sets of which
/// every other ramp has the last lighter; slack 2.5 % of the work load.
fn ramps() -> Vec<(Vec<Wanted>, Mass)> {
    let mut random = Random::seeded(2);
    let mut ramps = Vec::new();
    for n in 0..400_u64 {
        let work = 40_000 + 500 * random.below(560);
        let mut shares: Vec<u64> = (0..4).map(|_| 15 + random.below(80)).collect();
        shares.sort_unstable();
        let last = if n % 2 == 0 { 80 + random.below(15) } else { 100 };
        shares.extend([100, 100, last]);
        let wanted = |(at, share): (usize, u64)| Wanted {
            load: Mass::from_nanograms(i64::try_from(work * share).unwrap_or(0) * 10_000_000),
            firm: at >= 4,
        };
        let sets: Vec<Wanted> = shares.into_iter().enumerate().map(wanted).collect();
        let work = Mass::from_grams(work.try_into().unwrap_or(0)).unwrap_or_default();
        let slack = Percent::from_hundredths(250).of(work).unwrap_or_default();
        ramps.push((sets, slack));
    }
    ramps
}

fn times() -> Vec<f64> {
    let gym = gym(USUAL);
    best_of(&ramps(), 3, |(sets, slack)| {
        let ramp = Ramp { on_now: None, sets, slack: *slack, full_size: false, one_side: false };
        let changes = plan(&gym, "barbell", &ramp).expect("every ramp has a plan");
        assert!(changes.fewest, "the search is never cut short on a usual set");
    })
}
