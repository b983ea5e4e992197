//! The metronome of a tempo set: a bell at each beat of a repetition, until it is stopped or the set
//! is recorded. The beats are the core's; a terminal only waits for them.

use barwright_app::contract::{Beat, Reading};

use crate::clock;

/// Time to get set before the first repetition.
const LEAD_MS: i64 = 3_000;
/// What a movement "as fast as possible" is given before the next repetition begins.
const FAST_MS: i64 = 1_000;

/// A metronome that runs.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Metronome {
    beats: Vec<Beat>,
    /// The beat that is due next.
    next: usize,
    wall_ms: i64,
    boot_ms: Option<i64>,
}

impl Metronome {
    /// Starts it; none where a repetition has no beats.
    pub(crate) fn start(beats: &[Beat], now: &Reading) -> Option<Self> {
        let first = Self { beats: beats.to_vec(), next: 0, wall_ms: 0, boot_ms: None };
        (!beats.is_empty()).then(|| Self {
            wall_ms: now.wall_ms.saturating_add(LEAD_MS),
            boot_ms: now.boot_ms.map(|ms| ms.saturating_add(LEAD_MS)),
            ..first
        })
    }

    /// Milliseconds until the next beat.
    pub(crate) fn until(&self, now: &Reading) -> i64 {
        clock::until(now, self.wall_ms, self.boot_ms)
    }

    /// What is said at a beat that is due; the one after it is then waited for.
    pub(crate) fn beat(&mut self, now: &Reading) -> Option<String> {
        if self.until(now) > 0 {
            return None;
        }
        let beat = self.beats.get(self.next)?;
        let takes = if beat.ms == 0 { FAST_MS } else { i64::from(beat.ms) };
        // From where the beat was due, not from when it was heard: delays don't add up.
        self.wall_ms = self.wall_ms.saturating_add(takes);
        self.boot_ms = self.boot_ms.map(|ms| ms.saturating_add(takes));
        self.next = (self.next + 1) % self.beats.len();
        Some(beat.says.clone())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn at(ms: i64) -> Reading {
        Reading { wall_ms: ms, offset_minutes: 0, boot_ms: Some(ms), boot_id: None }
    }

    #[test]
    fn beats_follow_the_tempo_and_come_round() {
        // 3-1-X: lower three seconds, pause one, lift as fast as possible.
        let beat = |says: &str, ms| Beat { says: says.to_owned(), ms };
        let beats = [beat("lower", 3_000), beat("pause", 1_000), beat("lift", 0)];
        let mut metronome = Metronome::start(&beats, &at(0)).expect("it has beats");
        assert_eq!(metronome.beat(&at(2_999)), None);
        for (ms, says) in [
            (3_000, "lower"),
            // Heard late: what comes after is not.
            (6_180, "pause"),
            (7_000, "lift"),
            (8_000, "lower"),
            (11_000, "pause"),
        ] {
            assert_eq!(metronome.beat(&at(ms)).as_deref(), Some(says), "at {ms}");
            assert_eq!(metronome.beat(&at(ms)), None, "once at {ms}");
        }
        assert_eq!(Metronome::start(&[], &at(0)), None);
    }
}
