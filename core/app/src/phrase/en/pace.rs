//! Words of a partner's taps, and of tempo.

use barwright_domain::progress::pace::{LEAST_SETS, PaceEstimate, Slowing};
use barwright_domain::quantity::{Numerals, Phase, Reps, Tempo};

use super::words;
use crate::phrase::written::figures;

/// A key of the floor.
pub fn open() -> &'static str {
    "A partner taps the reps…"
}
/// A panel's title.
pub fn title() -> &'static str {
    "A partner taps each rep"
}
/// Over the taps.
pub fn who() -> &'static str {
    "A partner's tap, never the lifter's under a bar."
}
/// A key that takes the last tap back.
pub fn undo() -> &'static str {
    "Undo the last tap"
}

/// How it is done.
pub fn how() -> &'static str {
    "Tap as the first rep begins, then at the end of each."
}
/// Where a set stops by pace and has slowed so far.
pub fn stop() -> &'static str {
    "You have slowed: end the set."
}

/// What the tap says next: "The first rep begins", "Rep 3 over".
pub fn key(tapped: Option<Reps>) -> String {
    match tapped {
        None => "The first rep begins".to_owned(),
        Some(reps) => format!("Rep {} over", reps.saturating_add(1)),
    }
}

/// "3 reps tapped".
pub fn count(reps: Reps) -> String {
    format!("{} tapped", words::count(usize::from(reps), "rep", "reps"))
}

/// "The last two reps took 34 % longer than the first two."
pub fn slowed(slowing: Slowing) -> String {
    let percent = (slowing.0.saturating_add(5 * slowing.0.signum())) / 10;
    match percent {
        0 => "The last two reps took as long as the first two.".to_owned(),
        1.. => format!("The last two reps took {percent} % longer than the first two."),
        _ => {
            format!("The last two reps took {} % less than the first two.", percent.unsigned_abs())
        }
    }
}

/// As a tally says it: "slowed 34 %".
pub fn slowed_short(slowing: Slowing) -> String {
    match slowing.0 {
        ..5 => "did not slow".to_owned(),
        slowing => format!("slowed {} %", (slowing + 5) / 10),
    }
}

/// What the lifter's own calls say of it; never a fact.
pub fn estimate(estimate: Option<PaceEstimate>, sets: usize, numerals: Numerals) -> String {
    match estimate {
        Some(PaceEstimate { left_tenths, off_tenths, sets }) => format!(
            "By your own calls on {sets} such sets that is about {} in reserve, give or take {}: a \
             guess, not a fact.",
            figures::decimal(left_tenths.into(), numerals),
            figures::decimal(off_tenths.into(), numerals)
        ),
        None if sets < LEAST_SETS => format!(
            "{} with taps and an effort call so far; it takes {LEAST_SETS} to judge by.",
            words::count(sets, "set", "sets")
        ),
        None => "On this lift your effort calls do not go with rep speed: no estimate.".to_owned(),
    }
}

/// The beats of one repetition: what is said, and milliseconds; as fast as possible has none.
pub fn beats(tempo: Tempo) -> Vec<(&'static str, u32)> {
    [
        ("lower", tempo.lowering),
        ("pause", tempo.low_pause),
        ("lift", tempo.lifting),
        ("pause", tempo.high_pause),
    ]
    .into_iter()
    .filter_map(|(says, phase)| match phase {
        Phase::Tenths(0) => None,
        Phase::Tenths(tenths) => Some((says, u32::from(tenths) * 100)),
        Phase::Fast => Some((says, 0)),
    })
    .collect()
}
