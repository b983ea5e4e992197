//! The clocks of a device.

use barwright_app::contract::Reading;

/// 2026-11-23 at 18:00.
const BEGINNING: i64 = 1_795_456_800_000;

/// What time it is, and what the device says of it.
#[derive(Debug, Clone)]
pub(super) struct Clock {
    /// Milliseconds since the beginning: the truth.
    pub(super) passed: i64,
    /// What the wall clock is ahead of the truth.
    pub(super) ahead: i64,
    /// Minutes that local time is ahead of UTC.
    pub(super) offset: i32,
    /// When the device started, and how often it did; a browser has no such clock.
    pub(super) boot: Option<(i64, u32)>,
}

impl Clock {
    pub(super) fn new(with_boot: bool) -> Self {
        Self { passed: 0, ahead: 0, offset: 60, boot: with_boot.then_some((-5_000_000, 1)) }
    }

    pub(super) fn wait(&mut self, ms: i64) {
        self.passed += ms.max(0);
    }

    pub(super) fn reboot(&mut self) {
        self.wait(40_000);
        if let Some((began, number)) = &mut self.boot {
            *began = self.passed - 9_000;
            *number += 1;
        }
    }

    pub(super) fn reading(&self) -> Reading {
        Reading {
            wall_ms: BEGINNING + self.passed + self.ahead,
            offset_minutes: self.offset,
            boot_ms: self.boot.map(|(began, _)| self.passed - began),
            boot_id: self.boot.map(|(_, number)| format!("boot-{number}")),
        }
    }
}
