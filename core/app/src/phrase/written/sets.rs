//! Which set of an exercise one is, by the names that a language has for its kinds.

use barwright_domain::call::Flow;
use barwright_domain::session::{EntryRun, SetKind, SetRun};

/// What sets are called.
pub struct SetNames {
    /// One of the ramp.
    pub ramp: &'static str,
    /// One of a test.
    pub attempt: &'static str,
    /// The heaviest one, which others go by.
    pub top: &'static str,
    /// One after it, lighter.
    pub back_off: &'static str,
    /// One for speed.
    pub speed: &'static str,
    /// Any other.
    pub work: &'static str,
    /// Between its number and how many there are.
    pub of: &'static str,
}

/// "Set 2 of 4", "Ramp set 1 of 3", "Top set 1", "Try 2".
pub fn which(entry: &EntryRun, set: &SetRun, names: &SetNames) -> String {
    let turn = entry.turn_of(set) + 1;
    let name = match set.call.kind {
        SetKind::Ramp => {
            let ramps: Vec<_> =
                entry.sets.iter().filter(|other| other.call.kind == SetKind::Ramp).collect();
            let at = ramps.iter().position(|other| std::ptr::eq(*other, set)).unwrap_or(0) + 1;
            return format!("{} {at} {} {}", names.ramp, names.of, ramps.len());
        }
        SetKind::Test => return format!("{} {turn}", names.attempt),
        SetKind::Top => names.top,
        SetKind::BackOff => names.back_off,
        SetKind::Speed => names.speed,
        SetKind::Work => names.work,
    };
    match set.call.flow {
        Flow::Listed | Flow::Clock { .. } => {
            format!("{name} {turn} {} {}", names.of, entry.turns())
        }
        // Nobody knows how many it will take.
        Flow::Climb { .. } | Flow::Repeat { .. } | Flow::Total { .. } | Flow::Test { .. } => {
            format!("{name} {turn}")
        }
    }
}
