//! Chance that is the same for a seed, whatever the number of cores.

use rand_chacha::ChaCha8Rng;
use rand_chacha::rand_core::SeedableRng;
use rand_distr::{Distribution, StandardNormal, StandardUniform};

/// The stream of one lifter: its own by the seed and the lifter's number, so that no lifter's luck
/// hangs on who was played before.
#[derive(Debug, Clone)]
pub(crate) struct Chance(ChaCha8Rng);

impl Chance {
    /// The stream of a lifter.
    pub(crate) fn of(seed: u64, lifter: u32) -> Self {
        let mut stream = ChaCha8Rng::seed_from_u64(seed);
        stream.set_stream(u64::from(lifter));
        Self(stream)
    }

    /// Normally distributed, mean 0 and standard deviation 1.
    pub(crate) fn normal(&mut self) -> f64 {
        StandardNormal.sample(&mut self.0)
    }

    /// A factor that is above and below 1 as often, its logarithm with this standard deviation.
    pub(crate) fn factor(&mut self, deviation: f64) -> f64 {
        libm::exp(deviation * self.normal())
    }

    /// Even between 0 and 1.
    pub(crate) fn even(&mut self) -> f64 {
        StandardUniform.sample(&mut self.0)
    }

    /// Whether it happens.
    pub(crate) fn happens(&mut self, share: f64) -> bool {
        self.even() < share
    }
}
