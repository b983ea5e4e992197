//! How near failure a set was, from how its repetitions slowed.
//!
//! A partner taps at the end of each repetition (never the lifter under a bar), so each duration has
//! the lowering in it, and what is said of the velocity of the lifting alone is assumed to hold for
//! the whole of it. Velocity lost in a
//! set tracks the share of the possible repetitions that were done (R² 0.80–0.94: IJSPP 2020, doi
//! 10.1123/ijspp.2020-0214), but how far differs from lifter to lifter and lift to lift: so no
//! table is used, only a fit of the lifter's own calls on this exercise, with its uncertainty. It
//! is never a fact, and below [`LEAST_SETS`] sets nothing is said.
//!
//! The fit is the median of the slopes between all pairs of sets (Theil–Sen), which a few odd taps
//! or calls do not move. It computes with plain additions, products and quotients, so every platform
//! gives the same digits.
#![allow(
    clippy::float_arithmetic,
    reason = "medians of quotients; rounded once, and typed as estimates"
)]

use serde::{Deserialize, Serialize};

use crate::quantity::Reserve;

/// Sets with a call and taps that a fit needs before it says anything. Our own choice.
pub const LEAST_SETS: usize = 10;

/// The latest sets that a fit is made of.
pub const MOST_SETS: usize = 60;

/// Repetitions that a set needs for its slowing: two to begin with and two to end with.
pub const LEAST_REPS: usize = 4;

/// How much slower the last two repetitions were than the first two, in thousandths: 500 is half as
/// long again.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(transparent)]
pub struct Slowing(pub i32);

impl Slowing {
    /// From the durations of the repetitions in milliseconds, in order. `None` with fewer than
    /// four, or with one that took no time or more than a minute.
    pub fn of(durations_ms: &[u32]) -> Option<Self> {
        if durations_ms.len() < LEAST_REPS {
            return None;
        }
        if durations_ms.iter().any(|ms| !(1..=60_000).contains(ms)) {
            return None;
        }
        let pair = |pair: &[u32]| i64::from(pair.iter().sum::<u32>());
        let first = pair(durations_ms.first_chunk::<2>()?);
        let last = pair(durations_ms.last_chunk::<2>()?);
        i32::try_from((last - first) * 1_000 / first).ok().map(Self)
    }
}

/// Where a set that stops by pace is over: the last repetitions a fifth slower in velocity than the
/// first, and so a quarter longer (stopping at 20 % of velocity lost: Pareja-Blanco et al. 2017, Scand
/// J Med Sci Sports 27:724–735). Theirs is the velocity of the lifting; that the lowering slows as
/// much is assumed.
pub const STOP_AT: Slowing = Slowing(250);

/// One set: how it slowed and what the lifter called.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Point {
    /// How it slowed.
    pub slowing: Slowing,
    /// What was called.
    pub left: Reserve,
}

/// A lifter's own line for one exercise.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PaceFit {
    /// Half repetitions left for each thousandth of slowing; below nothing.
    slope: f64,
    /// Half repetitions left without slowing.
    intercept: f64,
    /// Half of the calls lie within so many half repetitions of the line.
    spread: f64,
    /// The sets it was made of.
    sets: usize,
}

/// What a fit says of a set. Never a fact.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct PaceEstimate {
    /// Tenths of repetitions left.
    pub left_tenths: u16,
    /// Tenths that it may be off, either way: the middle nine tenths of the lifter's own calls.
    pub off_tenths: u16,
    /// The sets the fit was made of.
    pub sets: u16,
}

impl PaceFit {
    /// The fit of a lifter's sets of one exercise, the latest last. `None` with fewer than
    /// [`LEAST_SETS`], or where slowing does not go with fewer repetitions left.
    pub fn of(points: &[Point]) -> Option<Self> {
        let points = points.get(points.len().saturating_sub(MOST_SETS)..)?;
        if points.len() < LEAST_SETS {
            return None;
        }
        let xy: Vec<(f64, f64)> = points
            .iter()
            .map(|point| (f64::from(point.slowing.0), f64::from(point.left.halves())))
            .collect();
        let mut slopes = Vec::with_capacity(xy.len() * xy.len() / 2);
        for (nth, (x, y)) in xy.iter().enumerate() {
            for (other_x, other_y) in xy.iter().skip(nth + 1) {
                if x != other_x {
                    slopes.push((other_y - y) / (other_x - x));
                }
            }
        }
        let slope = median(slopes)?;
        let intercept = median(xy.iter().map(|(x, y)| y - slope * x).collect())?;
        let spread =
            median(xy.iter().map(|(x, y)| libm::fabs(y - slope * x - intercept)).collect())?;
        (slope < 0.0).then_some(Self { slope, intercept, spread, sets: points.len() })
    }

    /// What the fit says of a set that slowed so much.
    pub fn estimate(&self, slowing: Slowing) -> PaceEstimate {
        // Halves times five are tenths; a line goes on for ever, repetitions left do not.
        let tenths = libm::rint(5.0 * (self.intercept + self.slope * f64::from(slowing.0)));
        // The median distance times 2.44 holds nine tenths of a normal spread (1.645 / 0.6745).
        let off = libm::rint(5.0 * 2.44 * self.spread);
        let within = |value: f64| value.clamp(0.0, 200.0) as u16;
        PaceEstimate {
            left_tenths: within(tenths),
            // Calls are made by halves: less than a half off nothing is known.
            off_tenths: within(off).max(5),
            sets: u16::try_from(self.sets).unwrap_or(u16::MAX),
        }
    }

    /// Half repetitions left for each thousandth of slowing.
    pub const fn slope(&self) -> f64 {
        self.slope
    }

    /// Half repetitions left without slowing.
    pub const fn intercept(&self) -> f64 {
        self.intercept
    }
}

fn median(mut values: Vec<f64>) -> Option<f64> {
    values.sort_unstable_by(f64::total_cmp);
    let upper = *values.get(values.len() / 2)?;
    if values.len() % 2 == 1 {
        return Some(upper);
    }
    let lower = *values.get((values.len() / 2).checked_sub(1)?)?;
    Some((lower + upper) / 2.0)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn point(slowing: i32, halves: u8) -> Point {
        Point { slowing: Slowing(slowing), left: Reserve::from_halves(halves).unwrap() }
    }

    #[test]
    fn slowing_of_the_last_two_against_the_first_two() {
        assert_eq!(Slowing::of(&[1000, 1000, 1200, 1400, 1600]), Some(Slowing(500)));
        assert_eq!(Slowing::of(&[1500, 1500, 1500, 1500]), Some(Slowing(0)));
        assert_eq!(Slowing::of(&[1500, 1500, 1500]), None);
        assert_eq!(Slowing::of(&[1500, 0, 1500, 1500]), None);
        assert_eq!(Slowing::of(&[1500, 1500, 1500, 60_001]), None);
    }

    #[test]
    fn nothing_is_said_of_too_few_sets_or_the_wrong_way_round() {
        let line: Vec<_> = (0..20).map(|nth| point(i32::from(nth) * 50, 20 - nth)).collect();
        assert!(PaceFit::of(&line[..LEAST_SETS - 1]).is_none());
        assert!(PaceFit::of(&line[..LEAST_SETS]).is_some());
        let wrong: Vec<_> = (0..20).map(|nth| point(i32::from(nth) * 50, nth)).collect();
        assert!(PaceFit::of(&wrong).is_none());
        let level = [point(100, 4); 20];
        assert!(PaceFit::of(&level).is_none());
    }

    #[test]
    fn a_line_comes_back_and_a_few_odd_calls_do_not_move_it() {
        // Eight halves without slowing, one fewer for each 100 thousandths.
        let mut points: Vec<_> = (0..16).map(|nth| point(nth * 50, 8 - (nth / 2) as u8)).collect();
        let before = PaceFit::of(&points).unwrap().estimate(Slowing(400));
        assert!(before.left_tenths.abs_diff(20) <= 2, "{before:?}");
        points[3] = point(150, 30);
        points[9] = point(4000, 8);
        let after = PaceFit::of(&points).unwrap().estimate(Slowing(400));
        assert!(after.left_tenths.abs_diff(before.left_tenths) <= 3, "{before:?} {after:?}");
        assert!(after.off_tenths >= 5 && after.sets == 16);
        // Far past the line there is none left, not fewer.
        assert_eq!(PaceFit::of(&points).unwrap().estimate(Slowing(9_000)).left_tenths, 0);
    }
}
