//! Years of a device: the engine with its real store on a disk that fails, clocks that are set, a
//! process that ends anywhere, a lifter who taps sense and nonsense, and plans that change. Every step
//! is held against a model of its own and against the rules; what fails is made as short as it gets.

mod clock;
mod device;
mod intents;
mod lifter;
mod model;
mod owners;
mod plans;
mod step;

use std::io::Write;
use std::panic::{AssertUnwindSafe, catch_unwind};
use std::time::Instant;

use lifter::Lifter;
use step::Step;

/// What came of it.
#[derive(Debug, Default, Clone, Copy)]
pub(crate) struct Years {
    /// Years without a fault.
    pub(crate) lived: u64,
    /// Years that failed.
    pub(crate) failed: u64,
    /// Steps of all of them.
    pub(crate) steps: u64,
}

impl Years {
    pub(crate) fn and(self, other: Self) -> Self {
        Self {
            lived: self.lived + other.lived,
            failed: self.failed + other.failed,
            steps: self.steps + other.steps,
        }
    }
}

/// The most time for making a failure shorter, in seconds.
const SHRINKS_FOR: u64 = 120;

/// The most steps that are printed.
const MOST_SHOWN: usize = 20;

pub(crate) fn one(_: u64, seed: u64) -> Years {
    let steps = step::year(seed);
    let count = steps.len() as u64;
    match live(seed, &steps) {
        Ok(()) => Years { lived: 1, failed: 0, steps: count },
        Err((at, wrong)) => {
            let err = &mut std::io::stderr();
            let _ = writeln!(err, "year {seed} fails at step {at} of {count}: {wrong}");
            let short = shortened(seed, &steps[..=at]);
            let again = live(seed, &short).err().map_or_else(String::new, |(_, wrong)| wrong);
            // A list that did not get short is no help to read; the seed finds it again.
            let shown = &short[short.len().saturating_sub(MOST_SHOWN)..];
            let _ = writeln!(
                err,
                "year {seed} in {} steps, the last of them {shown:?}\n  {again}",
                short.len()
            );
            Years { lived: 0, failed: 1, steps: at as u64 }
        }
    }
}

/// Lives the steps; where one fails, which, and why.
fn live(seed: u64, steps: &[Step]) -> Result<(), (usize, String)> {
    let mut at = 0;
    let lived = catch_unwind(AssertUnwindSafe(|| {
        let mut lifter = Lifter::new(seed)?;
        for (number, step) in steps.iter().enumerate() {
            at = number;
            lifter.step(*step)?;
        }
        lifter.end()
    }));
    lived.unwrap_or_else(|_| Err("a panic".to_owned())).map_err(|wrong| (at, wrong))
}

/// Fewer steps that fail too.
fn shortened(seed: u64, steps: &[Step]) -> Vec<Step> {
    #[expect(clippy::disallowed_methods, reason = "only how long shortening may take hangs on it")]
    let began = Instant::now();
    let mut steps = steps.to_vec();
    let mut size = steps.len() / 2;
    while size > 0 {
        let mut from = 0;
        while from < steps.len() {
            if began.elapsed().as_secs() > SHRINKS_FOR {
                return steps;
            }
            let mut fewer = steps.clone();
            fewer.drain(from..(from + size).min(steps.len()));
            match live(seed, &fewer) {
                Err((at, _)) => {
                    fewer.truncate(at + 1);
                    steps = fewer;
                }
                Ok(()) => from += size,
            }
        }
        size /= 2;
    }
    steps
}
