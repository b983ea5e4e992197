//! Readings of a device's clocks.

use barwright_app::contract::Reading;

/// Milliseconds of a day.
pub const DAY_MS: i64 = 86_400_000;
/// 2026-11-23, a Monday, in days since 1970-01-01.
pub const MONDAY: i32 = 20_780;
/// Wednesday 18 November 2026, a little after noon in a zone an hour ahead of UTC.
pub const WEDNESDAY_MS: i64 = 1_795_000_000_000;

/// The wall clock alone, at a time in milliseconds since 1970 and so many minutes ahead of UTC.
#[must_use]
pub fn wall(wall_ms: i64, offset_minutes: i32) -> Reading {
    Reading { wall_ms, offset_minutes, boot_ms: None, boot_id: None }
}

/// 18:00 UTC of a day, in days since 1970-01-01, by the wall clock alone.
#[must_use]
pub fn at_day(day: i32) -> Reading {
    wall(i64::from(day) * DAY_MS + 18 * 3_600_000, 0)
}

/// [`WEDNESDAY_MS`] by the wall clock alone.
#[must_use]
pub fn wednesday() -> Reading {
    wall(WEDNESDAY_MS, 60)
}

/// [`WEDNESDAY_MS`] on a device that was started some while before.
#[must_use]
pub fn booted() -> Reading {
    Reading { boot_ms: Some(1_000_000), boot_id: Some("boot".into()), ..wednesday() }
}

/// Both clocks go on by so many milliseconds.
pub fn pass(now: &mut Reading, ms: i64) {
    now.wall_ms += ms;
    now.boot_ms = now.boot_ms.map(|boot| boot + ms);
}
