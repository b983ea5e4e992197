//! Cautions, once and where they matter. The tool advises; lifter, coach and clinician decide.

use barwright_domain::call::{HowMany, Stop};
use barwright_domain::quantity::Reserve;
use barwright_domain::session::{EntryRun, Guard, SetKind, SetRun};

/// Shown on a first sheet, and whenever it is asked for.
pub const BEFORE_ALL: &[&str] = &[
    "Ask a clinician first with a heart condition, high blood pressure, an eye condition, a hernia, \
     a pregnancy, or joints that hurt.",
    "A brief brace is usual on heavy loads; breathe between reps.",
    "Stop and get help at chest pain or pressure, faintness, sudden severe headache, numbness or \
     unusual breathlessness.",
];

/// For the days after a session.
pub const AFTER: &str = "Dark urine in the days after hard work: see a clinician at once.";

/// Asked before failure work or a test with a bar over the body.
pub const GUARDED: &str = "A bar over the body, near failure: pins or a spotter?";
const UNGUARDED: &str =
    "Neither pins nor a spotter: keep two in reserve, or swap. No collars on a lone bench press.";

/// Whether a set is near enough failure, under a bar, to ask what guards the lifter.
pub fn asks_guard(entry: &EntryRun, set: &SetRun) -> bool {
    let near = set.call.effort.is_some_and(|target| target.left.from.halves() < 4);
    let open = matches!(
        set.call.how_many,
        HowMany::Open { stop: Stop::Reserve(Reserve::NONE) | Stop::Form | Stop::Pace, .. }
    );
    entry.entry.over_body && (near || open || set.call.kind == SetKind::Test)
}

/// What to say before a set.
pub fn before_set(entry: &EntryRun, set: &SetRun) -> Vec<String> {
    if !asks_guard(entry, set) || set.call.kind == SetKind::Ramp {
        return Vec::new();
    }
    match entry.guard {
        None => vec![GUARDED.to_owned()],
        Some(Guard::Neither) => vec![UNGUARDED.to_owned()],
        Some(Guard::Pins | Guard::Spotter) => Vec::new(),
    }
}
