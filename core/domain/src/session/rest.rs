//! Rest as a deadline that tells the truth.
//!
//! A rest is a reading and a length; its deadline is their sum on both clocks. Within one boot the
//! boot clock rules, so it is never early whatever is done to the wall clock. Across boots only the
//! wall clock is left: the rest stands by it, never longer than what remained when the device was
//! last heard of; a wall clock that went backwards restarts that remainder.

use serde::{Deserialize, Serialize};

use super::reading::{Passed, Reading};
use crate::quantity::Seconds;

/// What a rest is between.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum RestKind {
    /// Inside a set, between its parts.
    Pause,
    /// Between the two sides.
    Sides,
    /// Between the exercises of a superset.
    Within,
    /// After a round of a superset.
    Round,
    /// After a set.
    Set,
    /// Until the next set of a clock-driven series starts.
    Clock,
}

/// A rest that was begun.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Rest {
    /// What it is between.
    pub kind: RestKind,
    /// When it began: the tap that ended the work before it.
    pub began: Reading,
    /// How long it is to last, in milliseconds.
    pub length_ms: i64,
    /// What had passed of it when it was begun anew on another clock, in milliseconds.
    #[serde(default, skip_serializing_if = "is_nothing")]
    pub passed_ms: i64,
}

fn is_nothing(ms: &i64) -> bool {
    *ms == 0
}

/// How a rest stands at a reading.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Standing {
    /// Milliseconds left; negative when it is over, by so much.
    pub left_ms: i64,
    /// The device restarted since, so only the wall clock could be used.
    pub restarted: bool,
    /// The wall clock went backwards, so the remainder was begun again.
    pub clock_went_back: bool,
}

impl Rest {
    /// A rest of so many seconds from a reading.
    pub fn new(kind: RestKind, began: Reading, length: Seconds) -> Self {
        Self { kind, began, length_ms: i64::from(length.count()) * 1000, passed_ms: 0 }
    }

    /// The deadline as wall time, in milliseconds.
    pub fn deadline_wall_ms(&self) -> i64 {
        self.began.wall_ms.saturating_add(self.length_ms)
    }

    /// The deadline on the boot clock, where the reading had one.
    pub fn deadline_boot_ms(&self) -> Option<i64> {
        self.began.boot_ms.map(|ms| ms.saturating_add(self.length_ms))
    }

    /// How the rest stands now. `seen` is the last reading that was recorded since it began: what
    /// remained then is the most that can remain now.
    pub fn standing(&self, seen: Option<&Reading>, now: &Reading) -> Standing {
        let passed = Passed::between(&self.began, now);
        if let Passed::Boot(ms) = passed {
            return Standing {
                left_ms: self.length_ms.saturating_sub(ms),
                restarted: false,
                clock_went_back: false,
            };
        }
        let seen = seen.unwrap_or(&self.began);
        let remained = self.length_ms.saturating_sub(Passed::between(&self.began, seen).ms());
        match Passed::between(seen, now) {
            Passed::Boot(ms) => Standing {
                left_ms: remained.saturating_sub(ms),
                restarted: false,
                clock_went_back: false,
            },
            Passed::Wall { ms, restarted } => {
                Standing { left_ms: remained.saturating_sub(ms), restarted, clock_went_back: false }
            }
            Passed::Backwards { restarted } => {
                Standing { left_ms: remained, restarted, clock_went_back: true }
            }
        }
    }

    /// The same rest begun anew at `now` with what remains, for a clock that can no longer be
    /// compared with the one it began on.
    #[must_use]
    pub fn rebased(&self, seen: Option<&Reading>, now: &Reading) -> Self {
        let left_ms = self.standing(seen, now).left_ms;
        let passed = self.length_ms.saturating_sub(left_ms);
        Self {
            kind: self.kind,
            began: now.clone(),
            length_ms: left_ms,
            passed_ms: self.passed_ms.saturating_add(passed),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn at(wall_s: i64, boot_s: i64, boot: &str) -> Reading {
        Reading {
            wall_ms: 1_800_000_000_000 + wall_s * 1000,
            offset_minutes: 60,
            boot_ms: Some(boot_s * 1000),
            boot_id: Some(boot.into()),
        }
    }

    fn rest() -> Rest {
        Rest::new(RestKind::Set, at(0, 100, "a"), Seconds::new(180))
    }

    #[test]
    fn the_boot_clock_rules_within_one_boot() {
        // The wall clock jumps an hour either way; the rest does not care.
        for jump in [-3600, 0, 3600] {
            let standing = rest().standing(None, &at(60 + jump, 160, "a"));
            assert_eq!(standing.left_ms, 120_000);
            assert!(!standing.restarted && !standing.clock_went_back);
        }
        assert_eq!(rest().standing(None, &at(200, 300, "a")).left_ms, -20_000);
    }

    #[test]
    fn across_boots_the_wall_clock_stands_in() {
        let standing = rest().standing(None, &at(60, 5, "b"));
        assert_eq!((standing.left_ms, standing.restarted), (120_000, true));
    }

    #[test]
    fn a_clock_that_went_back_restarts_what_remained() {
        // 100 s were seen to pass, then a restart with a clock 90 s slow: 80 s remained.
        let seen = at(100, 200, "a");
        let standing = rest().standing(Some(&seen), &at(10, 3, "b"));
        assert_eq!((standing.left_ms, standing.clock_went_back), (80_000, true));
        let again = rest().rebased(Some(&seen), &at(10, 3, "b"));
        assert_eq!(again.standing(None, &at(30, 23, "b")).left_ms, 60_000);
    }

    #[test]
    fn without_a_boot_clock_the_wall_clock_rules() {
        let mut began = at(0, 0, "a");
        (began.boot_ms, began.boot_id) = (None, None);
        let mut now = began.clone();
        now.wall_ms += 50_000;
        let standing = Rest::new(RestKind::Set, began, Seconds::new(60)).standing(None, &now);
        assert_eq!((standing.left_ms, standing.restarted), (10_000, false));
    }
}
