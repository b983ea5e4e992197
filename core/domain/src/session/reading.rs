//! What the shell knows of the time at a tap.

use serde::{Deserialize, Serialize};

/// A reading of the clocks. The domain never asks for the time: it comes in with every tap.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Reading {
    /// Milliseconds of wall time since 1970-01-01T00:00Z.
    pub wall_ms: i64,
    /// Minutes that local time is ahead of UTC.
    pub offset_minutes: i32,
    /// Milliseconds since the device started, counting sleep; a browser has none.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub boot_ms: Option<i64>,
    /// Tells one start of the device from another; a browser has none.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub boot_id: Option<String>,
}

/// Earliest wall time taken: 2000-01-01.
pub const EARLIEST_MS: i64 = 946_684_800_000;
/// Latest wall time taken: 2200-01-01.
pub const LATEST_MS: i64 = 7_258_118_400_000;

impl Reading {
    /// Whether every figure lies in its range: the years 2000 to 2199, an offset within a day, a
    /// boot clock under a century. What is outside is a broken clock or a broken caller.
    pub fn is_sound(&self) -> bool {
        let century = 100 * 366 * 86_400_000_i64;
        (EARLIEST_MS..LATEST_MS).contains(&self.wall_ms)
            && (-1439..=1439).contains(&self.offset_minutes)
            && self.boot_ms.is_none_or(|ms| (0..century).contains(&ms))
            && self.boot_id.as_ref().is_none_or(|id| !id.is_empty() && id.len() <= 64)
    }

    /// Days since 1970-01-01 of the local date.
    pub fn local_day(&self) -> i32 {
        let local = self.wall_ms.saturating_add(i64::from(self.offset_minutes) * 60_000);
        i32::try_from(local.div_euclid(86_400_000)).unwrap_or(i32::MAX)
    }

    /// The reading that would have been taken so many milliseconds before.
    #[must_use]
    pub(super) fn earlier_by(&self, ms: i64) -> Self {
        Self {
            wall_ms: self.wall_ms.saturating_sub(ms),
            boot_ms: self.boot_ms.map(|boot| boot.saturating_sub(ms).max(0)),
            ..self.clone()
        }
    }

    /// Milliseconds of boot clock from `earlier` to this reading, where both were taken in one
    /// boot of one device.
    fn boot_ms_since(&self, earlier: &Self) -> Option<i64> {
        match (&self.boot_id, &earlier.boot_id) {
            (Some(now), Some(then)) if now == then => {
                self.boot_ms?.checked_sub(earlier.boot_ms?).filter(|ms| *ms >= 0)
            }
            _ => None,
        }
    }
}

/// How much time passed between two readings, and what had to be believed for it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Passed {
    /// Milliseconds by the boot clock, whatever was done to the wall clock.
    Boot(i64),
    /// Milliseconds by the wall clock, the only one both readings share.
    Wall {
        /// Milliseconds, never negative.
        ms: i64,
        /// Both readings name their boot, and it is not the same: the device restarted.
        restarted: bool,
    },
    /// The wall clock went backwards, and there is no other.
    Backwards {
        /// The device restarted.
        restarted: bool,
    },
}

impl Passed {
    /// The time from `then` to `now`.
    pub fn between(then: &Reading, now: &Reading) -> Self {
        if let Some(ms) = now.boot_ms_since(then) {
            return Self::Boot(ms);
        }
        let restarted = matches!((&then.boot_id, &now.boot_id), (Some(a), Some(b)) if a != b);
        match now.wall_ms.saturating_sub(then.wall_ms) {
            ms if ms >= 0 => Self::Wall { ms, restarted },
            _ => Self::Backwards { restarted },
        }
    }

    /// Milliseconds; none where the clock went backwards.
    pub fn ms(self) -> i64 {
        match self {
            Self::Boot(ms) | Self::Wall { ms, .. } => ms,
            Self::Backwards { .. } => 0,
        }
    }
}

/// Milliseconds from each reading to the next.
pub(super) fn between(readings: &[Reading]) -> Vec<u32> {
    readings
        .iter()
        .zip(readings.iter().skip(1))
        .map(|(one, next)| u32::try_from(Passed::between(one, next).ms()).unwrap_or(u32::MAX))
        .collect()
}
