//! The least and greatest value of every quantity, in the unit its type counts in.
//!
//! One table: readers check against it, errors quote it, and the generators of the tests draw
//! from it.

/// Least and greatest value, both included.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Bounds {
    /// Least value.
    pub least: i64,
    /// Greatest value.
    pub greatest: i64,
}

impl Bounds {
    const fn new(least: i64, greatest: i64) -> Self {
        Self { least, greatest }
    }

    /// Whether the value lies within.
    pub const fn holds(self, value: i128) -> bool {
        value >= self.least as i128 && value <= self.greatest as i128
    }
}

/// A mass as a person types it, in nanograms: 5 tonnes either way (assistance is negative).
pub const MASS: Bounds = Bounds::new(-5_000_000_000_000_000, 5_000_000_000_000_000);
/// A percentage in hundredths of a percent: −100 % to 300 %.
pub const PERCENT: Bounds = Bounds::new(-10_000, 30_000);
/// Repetitions of one set.
pub const REPS: Bounds = Bounds::new(0, 1_000);
/// Half repetitions left.
pub const RESERVE: Bounds = Bounds::new(0, 40);
/// Half points of RPE.
pub const RPE: Bounds = Bounds::new(2, 20);
/// Tenths of a second of one tempo phase.
pub const PHASE: Bounds = Bounds::new(0, 600);
/// A duration in seconds: a day.
pub const SECONDS: Bounds = Bounds::new(0, 86_400);
/// A distance in millimetres: 100 km.
pub const DISTANCE: Bounds = Bounds::new(0, 100_000_000);
/// A sleeve's length or a plate's thickness in tenths of a millimetre: 5 m.
pub const LENGTH: Bounds = Bounds::new(0, 50_000);
