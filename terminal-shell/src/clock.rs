//! The clocks of this machine: the one place of the program that asks for the time.

use barwright_app::contract::Reading;

/// A reading of them now.
pub(crate) fn read() -> Reading {
    let now = now();
    Reading {
        wall_ms: now.timestamp_millis(),
        offset_minutes: now.offset().local_minus_utc() / 60,
        boot_ms: boot::ms(),
        boot_id: boot::id(),
    }
}

#[allow(
    clippy::disallowed_methods,
    reason = "a shell takes the reading; everything behind it is handed one"
)]
fn now() -> chrono::DateTime<chrono::Local> {
    chrono::Local::now()
}

/// Milliseconds from a reading to a deadline; by the boot clock where both have it.
pub(crate) fn until(reading: &Reading, wall_ms: i64, boot_ms: Option<i64>) -> i64 {
    match (boot_ms, reading.boot_ms) {
        (Some(deadline), Some(now)) => deadline.saturating_sub(now),
        _ => wall_ms.saturating_sub(reading.wall_ms),
    }
}

/// Linux counts sleep into its boot clock and names each start.
#[cfg(any(target_os = "linux", target_os = "android"))]
mod boot {
    use std::sync::OnceLock;

    use rustix::time::{ClockId, clock_gettime};

    pub(super) fn ms() -> Option<i64> {
        id()?;
        let since = clock_gettime(ClockId::Boottime);
        Some(since.tv_sec.saturating_mul(1000).saturating_add(since.tv_nsec / 1_000_000))
    }

    pub(super) fn id() -> Option<String> {
        static ID: OnceLock<Option<String>> = OnceLock::new();
        ID.get_or_init(|| {
            let text = std::fs::read_to_string("/proc/sys/kernel/random/boot_id").ok()?;
            let id = text.trim();
            (1..=64).contains(&id.len()).then(|| id.to_owned())
        })
        .clone()
    }
}

/// Elsewhere the wall clock stands alone.
#[cfg(not(any(target_os = "linux", target_os = "android")))]
mod boot {
    pub(super) fn ms() -> Option<i64> {
        None
    }

    pub(super) fn id() -> Option<String> {
        None
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_reading_is_sound_and_goes_forward() {
        let first = read();
        let second = read();
        assert!(barwright_domain::session::Reading::from(first.clone()).is_sound());
        assert_eq!(first.boot_id, second.boot_id);
        assert_eq!(first.boot_ms.is_some(), first.boot_id.is_some());
        assert!(second.boot_ms >= first.boot_ms);
    }

    #[test]
    fn a_deadline_is_measured_by_the_boot_clock_where_there_is_one() {
        let at = |boot_ms| Reading { wall_ms: 5_000, offset_minutes: 0, boot_ms, boot_id: None };
        assert_eq!(until(&at(Some(1_000)), 90_000, Some(4_000)), 3_000);
        assert_eq!(until(&at(None), 90_000, Some(4_000)), 85_000);
        assert_eq!(until(&at(Some(1_000)), 90_000, None), 85_000);
    }
}
