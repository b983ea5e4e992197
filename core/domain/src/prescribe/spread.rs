//! The usual ramp, spread between what it starts from and the work load.
//!
//! The steps lie evenly between the start (the empty bar, or the bar with its lightest full-size
//! plates where it is lifted from the floor) and the first work load. How many there are goes by
//! how many times the start the work load is; repetitions fall by one from step to step. Each may
//! lie a quarter of the way to its neighbour from its even place, and of the loads that can be made
//! there those are taken that need the fewest plates moved up to the work load. Common practice.

use crate::quantity::{Mass, Percent, Reps, Rounding};

/// Steps between start and work load: so many from so many tenths of the start on.
///
/// Common practice: a jump is about as heavy as the start at the most, up to ten times the start.
const STEPS: [(i64, u8); 5] = [(20, 1), (30, 2), (45, 3), (70, 4), (100, 5)];

/// Repetitions of the last step; each one before it has one more. Common practice.
const LAST_REPS: Reps = 2;

/// No step is heavier than this share of the work load. Evenly spread the last is 85 % at the most;
/// plates may move it further. Common practice.
pub(super) const LAST_SHARE: Percent = Percent::whole(90);

/// One step.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Spread {
    /// Which it is, from 1.
    pub(super) step: u8,
    /// Of how many.
    pub(super) of: u8,
    /// Where it lies evenly.
    pub(super) figure: Mass,
    /// Its repetitions.
    pub(super) reps: Reps,
}

/// The steps between `from` and `to`, without either.
pub(super) fn steps(from: Mass, to: Mass) -> Vec<Spread> {
    let count = count(from, to);
    let step = |step: u8| {
        let way = way(from, to)?.ratio(step.into(), i64::from(count) + 1, Rounding::Down)?;
        let reps = LAST_REPS + Reps::from(count - step);
        Some(Spread { step, of: count, figure: from.checked_add(way)?, reps })
    };
    (1..=count).filter_map(step).collect()
}

/// How far a step may lie from its even place: a quarter of the way to the next, so that no two
/// meet.
pub(super) fn slack(from: Mass, to: Mass) -> Option<Mass> {
    way(from, to)?.ratio(1, 4 * (i64::from(count(from, to)) + 1), Rounding::Down)
}

fn way(from: Mass, to: Mass) -> Option<Mass> {
    to.checked_sub(from).filter(|way| *way > Mass::ZERO)
}

fn count(from: Mass, to: Mass) -> u8 {
    let reached = |tenths| from.ratio(tenths, 10, Rounding::Up).is_some_and(|least| to >= least);
    STEPS.iter().rev().find(|(tenths, _)| reached(*tenths)).map_or(0, |(_, count)| *count)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::MassUnit;

    #[test]
    fn never_past_its_last_share_and_never_out_of_order() {
        let kg = |count| Mass::whole(count, MassUnit::Kilogram);
        for from in [15, 20, 25, 40, 60] {
            for to in 1..=400 {
                let steps = steps(kg(from), kg(to));
                let slack = slack(kg(from), kg(to)).unwrap_or_default();
                let most = LAST_SHARE.of(kg(to)).unwrap();
                let mut before = (kg(from), Reps::MAX);
                for step in steps {
                    let lightest = step.figure.checked_sub(slack).unwrap();
                    let heaviest = step.figure.checked_add(slack).unwrap();
                    assert!(before.0 < lightest && heaviest <= most, "{from} to {to}: {step:?}");
                    assert!(step.reps < before.1, "{from} to {to}: {step:?}");
                    before = (heaviest, step.reps);
                }
            }
        }
    }

    #[test]
    fn more_steps_the_more_times_the_start_it_is() {
        let kg = |count| Mass::whole(count, MassUnit::Kilogram);
        let counts =
            [20, 39, 40, 60, 90, 139, 140, 199, 200, 500].map(|to| steps(kg(20), kg(to)).len());
        assert_eq!(counts, [0, 0, 1, 2, 3, 3, 4, 4, 5, 5]);
    }
}
