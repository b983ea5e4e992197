//! Words of a partner's taps, and of tempo.

use barwright_domain::progress::pace::{LEAST_SETS, PaceEstimate, Slowing};
use barwright_domain::quantity::{Numerals, Phase, Reps, Tempo};

use super::words;
use crate::phrase::written::figures;

/// A key of the floor.
pub fn open() -> &'static str {
    "Ein Partner tippt mit…"
}
/// A panel's title.
pub fn title() -> &'static str {
    "Ein Partner tippt jede Wiederholung"
}
/// Over the taps.
pub fn who() -> &'static str {
    "Ein Partner tippt, nie der Sportler unter der Stange."
}
/// A key that takes the last tap back.
pub fn undo() -> &'static str {
    "Letztes Tippen zurücknehmen"
}

/// How it is done.
pub fn how() -> &'static str {
    "Tippe, wenn die erste Wiederholung beginnt, dann am Ende jeder."
}
/// Where a set stops by pace and has slowed so far.
pub fn stop() -> &'static str {
    "Du bist langsamer geworden: Satz beenden."
}

/// What the tap says next: "Die erste Wiederholung beginnt", "Wiederholung 3 fertig".
pub fn key(tapped: Option<Reps>) -> String {
    match tapped {
        None => "Die erste Wiederholung beginnt".to_owned(),
        Some(reps) => format!("Wiederholung {} fertig", reps.saturating_add(1)),
    }
}

/// "3 Wdh. getippt".
pub fn count(reps: Reps) -> String {
    format!("{} getippt", words::reps_of(reps))
}

/// "Die letzten zwei Wiederholungen dauerten 34 % länger als die ersten zwei."
pub fn slowed(slowing: Slowing) -> String {
    let percent = (slowing.0.saturating_add(5 * slowing.0.signum())) / 10;
    match percent {
        0 => "Die letzten zwei Wiederholungen dauerten so lange wie die ersten zwei.".to_owned(),
        1.. => format!(
            "Die letzten zwei Wiederholungen dauerten {percent} % länger als die \
                        ersten zwei."
        ),
        _ => {
            format!(
                "Die letzten zwei Wiederholungen dauerten {} % kürzer als die ersten zwei.",
                percent.unsigned_abs()
            )
        }
    }
}

/// As a tally says it: "34 % langsamer geworden".
pub fn slowed_short(slowing: Slowing) -> String {
    match slowing.0 {
        ..5 => "nicht langsamer geworden".to_owned(),
        slowing => format!("{} % langsamer geworden", (slowing + 5) / 10),
    }
}

/// What the lifter's own calls say of it; never a fact.
pub fn estimate(estimate: Option<PaceEstimate>, sets: usize, numerals: Numerals) -> String {
    match estimate {
        Some(PaceEstimate { left_tenths, off_tenths, sets }) => format!(
            "Nach deinen eigenen Angaben zu {sets} solchen Sätzen sind das etwa {} in Reserve, \
             auf {} mehr oder weniger: geschätzt, nicht gemessen.",
            figures::decimal(left_tenths.into(), numerals),
            figures::decimal(off_tenths.into(), numerals)
        ),
        None if sets < LEAST_SETS => format!(
            "Bisher {} mit Tippen und Angabe zur Anstrengung; für ein Urteil braucht es \
             {LEAST_SETS}.",
            words::count(sets, "Satz", "Sätze")
        ),
        None => "Bei dieser Übung folgen deine Angaben nicht dem Tempo der Wiederholungen: keine \
                 Schätzung."
            .to_owned(),
    }
}

/// The beats of one repetition: what is said, and milliseconds; as fast as possible has none.
pub fn beats(tempo: Tempo) -> Vec<(&'static str, u32)> {
    [
        ("senken", tempo.lowering),
        ("Halt", tempo.low_pause),
        ("heben", tempo.lifting),
        ("Halt", tempo.high_pause),
    ]
    .into_iter()
    .filter_map(|(says, phase)| match phase {
        Phase::Tenths(0) => None,
        Phase::Tenths(tenths) => Some((says, u32::from(tenths) * 100)),
        Phase::Fast => Some((says, 0)),
    })
    .collect()
}
