//! Muscles by name, and sentences of balance.

use barwright_domain::call::Side;
use barwright_domain::catalogue::Muscle;
use barwright_domain::volume::{Behind, BehindSide};

use super::words;

/// "Front deltoid".
pub fn name(muscle: Muscle) -> String {
    words::sentence_case(&muscle.slug().replace('-', " "))
}

/// Half sets as sets: "3", "3.5".
pub fn sets(halves: u32) -> String {
    if halves.is_multiple_of(2) { (halves / 2).to_string() } else { format!("{}.5", halves / 2) }
}

/// A muscle's bar in words.
pub fn bar(muscle: Muscle, planned: u32, done: u32, under_six: u32) -> String {
    let short = if under_six > 0 {
        format!(", {} of them under six reps", sets(under_six))
    } else {
        String::new()
    };
    format!("{}: {} of {} hard sets{short}", name(muscle), sets(done), sets(planned))
}

/// What falls behind, and where a set could go.
pub fn behind(behind: &Behind, places: &[String]) -> String {
    let short = behind.planned_halves.saturating_sub(behind.done_halves);
    let place = match places {
        [] => "no session of the week trains it directly".to_owned(),
        places => format!("a set could go into {}", places.join(" or ")),
    };
    format!("{}: {} hard sets behind; {place}.", name(behind.muscle), sets(short))
}

/// A side that falls behind.
pub fn behind_side(behind: &BehindSide) -> String {
    let side = match behind.side {
        Side::Left => "left",
        Side::Right => "right",
    };
    format!(
        "{}, {side} side: {} hard sets less than the other.",
        name(behind.muscle),
        sets(behind.by_halves)
    )
}
