//! Muscles by name, and sentences of balance.

use barwright_domain::call::WeekKind;
use barwright_domain::catalogue::Muscle;
use barwright_domain::quantity::Numerals;
use barwright_domain::volume::{Behind, BehindSide};

use super::words;
use crate::phrase::written::figures::a_week;
pub use crate::phrase::written::figures::{sets, tenths};

/// The title.
pub fn title() -> &'static str {
    "Balance"
}

/// The plan and its weeks, from 1: "Winter base, week 3 of 8".
pub fn subtitle(plan: &str, first: u16, last: u16, weeks: usize) -> String {
    if first == last {
        format!("{plan}, week {last} of {weeks}")
    } else {
        format!("{plan}, weeks {first} to {last}")
    }
}

/// The whole screen read aloud.
pub fn aloud(subtitle: &str, bars: &[&str], sentences: &str) -> String {
    format!("Balance, {subtitle}. {}. {sentences}", bars.join(". "))
}

/// "Front deltoid".
pub fn name(muscle: Muscle) -> String {
    words::sentence_case(&muscle.slug().replace('-', " "))
}

/// A muscle's bar in words.
pub fn bar(muscle: Muscle, planned: u32, done: u32, numerals: Numerals) -> String {
    let (done, planned) = (sets(done, numerals), sets(planned, numerals));
    format!("{}: {done} hard sets done, {planned} planned", name(muscle))
}

/// What was done in the other counts: "8 direct · 11 with indirect · 4 under six reps".
pub fn counts(
    done: u32,
    both: (u32, u32),
    under_six: u32,
    sides: Option<(u32, u32)>,
    weeks: usize,
    numerals: Numerals,
) -> String {
    let (direct, total) = both;
    let mut parts = Vec::new();
    if weeks > 1 {
        parts.push(format!("{} a week", a_week(done, weeks, numerals)));
    }
    parts.push(format!("{direct} direct"));
    parts.push(format!("{total} with indirect"));
    if under_six > 0 {
        parts.push(format!("{} under six reps", sets(under_six, numerals)));
    }
    if let Some((left, right)) = sides {
        let (left, right) = (sets(left, numerals), sets(right, numerals));
        parts.push(format!("left {left}, right {right}"));
    }
    parts.join(" · ")
}

/// "Full weeks: 3, one on average", "Deload: 1 week".
pub fn week_kind(kind: WeekKind, weeks: usize) -> String {
    let kind = match kind {
        WeekKind::Ordinary => "Full weeks".to_owned(),
        kind => words::sentence_case(words::week_kind(kind)),
    };
    if weeks == 1 {
        format!("{kind}: 1 week")
    } else {
        format!("{kind}: {weeks} weeks, average of one")
    }
}

/// "Chest: 3.5 of 5 hard sets".
pub fn week_of_kind(
    muscle: Muscle,
    planned: u32,
    done: u32,
    weeks: usize,
    numerals: Numerals,
) -> String {
    let (done, planned) = (a_week(done, weeks, numerals), a_week(planned, weeks, numerals));
    format!("{}: {done} done, {planned} planned", name(muscle))
}

/// What falls behind, and where a set could go.
pub fn behind(behind: &Behind, places: &[String], numerals: Numerals) -> String {
    let short = behind.planned_halves.saturating_sub(behind.done_halves);
    let (name, short) = (name(behind.muscle), hard_sets(short, numerals));
    format!("{name}: {short} behind; {}.", could_go(places))
}

/// A side that falls behind, and where a set for it could go.
pub fn behind_side(behind: &BehindSide, places: &[String], numerals: Numerals) -> String {
    format!(
        "{}, {} side: {} less than the other; {}.",
        name(behind.muscle),
        words::side(behind.side),
        hard_sets(behind.by_halves, numerals),
        could_go(places)
    )
}

fn hard_sets(halves: u32, numerals: Numerals) -> String {
    format!("{} {}", sets(halves, numerals), if halves == 2 { "hard set" } else { "hard sets" })
}

fn could_go(places: &[String]) -> String {
    match places {
        [] => "no session left this week trains it directly".to_owned(),
        places => format!("a set could go into {}", places.join(" or ")),
    }
}
