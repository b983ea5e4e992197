//! Times of repeated runs.

use std::hint::black_box;
use std::time::Instant;

/// Microseconds that one run takes.
#[expect(clippy::disallowed_methods, reason = "a bench measures time")]
pub(crate) fn micros<T>(run: impl FnOnce() -> T) -> f64 {
    let start = Instant::now();
    black_box(run());
    start.elapsed().as_secs_f64() * 1e6
}

/// The middle of the values; the lower of two middles.
pub(crate) fn median(mut values: Vec<f64>) -> f64 {
    values.sort_by(f64::total_cmp);
    values.get(values.len().saturating_sub(1) / 2).copied().unwrap_or(f64::NAN)
}

/// For each case the best of `times` runs, so that what else the machine does counts for little.
pub(crate) fn best_of<C>(cases: &[C], times: usize, run: impl Fn(&C)) -> Vec<f64> {
    let best =
        |case| (0..times).map(|_| micros(|| run(black_box(case)))).fold(f64::INFINITY, f64::min);
    cases.iter().map(best).collect()
}

/// Microseconds of processor time that one run takes on this thread, in the program and in the
/// system for it; waiting is not in it.
pub(crate) fn cpu_micros<T>(run: impl FnOnce() -> T) -> (T, f64) {
    let now = || {
        let at = rustix::time::clock_gettime(rustix::time::ClockId::ThreadCPUTime);
        at.tv_sec as f64 * 1e6 + at.tv_nsec as f64 / 1e3
    };
    let start = now();
    let answer = black_box(run());
    (answer, now() - start)
}
