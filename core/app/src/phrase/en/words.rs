//! Small words and figures that every screen uses.

use barwright_domain::call::{Amount, EffortScale, EffortTarget, HowMany, Side, Stop, WeekKind};
use barwright_domain::catalogue::{Counting, Exercise, Tongue};
use barwright_domain::quantity::{Mass, MassUnit, Numerals, Reserve, Seconds};
use barwright_domain::session::{Ending, Kit};

use crate::phrase::written::figures::spread;
pub use crate::phrase::written::figures::{
    count, countdown, figure, how_many_short, mass, sentence_case,
};
pub(super) use crate::phrase::written::figures::{tenth, whole};

/// A load's figure as it is counted: "100 kg", "+10 kg", "20 kg assistance", "bodyweight".
pub fn load(figure: Mass, counting: Counting, unit: MassUnit, numerals: Numerals) -> String {
    match counting {
        Counting::Added if figure == Mass::ZERO => "bodyweight".to_owned(),
        Counting::Added if figure < Mass::ZERO => {
            format!("{} assistance", figure.distance(Mass::ZERO).print(unit, numerals))
        }
        Counting::Added => format!("+{}", figure.print(unit, numerals)),
        _ => figure.print(unit, numerals),
    }
}

/// An effort in the words of its scale: "2.5 in reserve", "none in reserve", "RPE 8".
pub(super) fn reserve(left: Reserve, scale: EffortScale, numerals: Numerals) -> String {
    match scale {
        EffortScale::Left if left == Reserve::NONE => "none in reserve".to_owned(),
        EffortScale::Left => format!("{} in reserve", left.print(numerals)),
        EffortScale::Rpe => format!("RPE {}", left.rpe().print(numerals)),
    }
}

/// A thing that is set up, by its key in a plan file.
pub fn part_set_up(key: &str) -> Option<&'static str> {
    Some(match key {
        "pins" => "pins",
        "seat" => "seat",
        "attachment" => "attachment",
        "bench" => "bench",
        _ => return None,
    })
}

/// A load that may be assistance, or nothing at all: "20 kg assistance", "no added load",
/// "102.5 kg".
pub fn or_help(load: Mass, unit: MassUnit, numerals: Numerals) -> String {
    match load.cmp(&Mass::ZERO) {
        std::cmp::Ordering::Less => {
            format!("{} assistance", mass(load.distance(Mass::ZERO), unit, numerals))
        }
        std::cmp::Ordering::Equal => "no added load".to_owned(),
        std::cmp::Ordering::Greater => mass(load, unit, numerals),
    }
}

/// "1 week", "4 weeks".
pub fn weeks(number: usize) -> String {
    count(number, "week", "weeks")
}

/// "1 session", "20 sessions".
pub fn sessions(number: usize) -> String {
    count(number, "session", "sessions")
}

/// Parts of a screen as they are read aloud, each a sentence.
pub fn spoken(parts: &[&str]) -> String {
    let parts: Vec<&str> = parts.iter().copied().filter(|part| !part.is_empty()).collect();
    parts.join(". ")
}

/// Rows read aloud: each text with its detail.
pub fn rows(rows: &[(&str, &str)]) -> String {
    let lines: Vec<String> = rows
        .iter()
        .map(|(text, detail)| match *detail {
            "" => format!("{text}."),
            detail => format!("{text}. {detail}."),
        })
        .collect();
    lines.join(" ")
}

/// An exercise by its name: a plan's own is called as the plan says.
pub fn exercise(exercise: &Exercise) -> String {
    exercise.name_in(Tongue::English).to_owned()
}

/// "5 reps", "30 s", "40 m".
pub fn amount(amount: &Amount, numerals: Numerals) -> String {
    match amount {
        Amount::Reps(reps) => count(usize::from(*reps), "rep", "reps"),
        Amount::Seconds(seconds) => seconds.print(),
        Amount::Metres(distance) => distance.print(numerals),
    }
}

/// The unit beside a figure: "reps", "s", "m".
pub fn unit(amount: &Amount) -> &'static str {
    match amount {
        Amount::Reps(1) => "rep",
        Amount::Reps(_) => "reps",
        Amount::Seconds(_) => "s",
        Amount::Metres(_) => "m",
    }
}

/// What is asked: "5 reps", "6–10 reps", "20–30 s", "as many reps as you can, at least 5".
pub fn how_many(asked: &HowMany, numerals: Numerals) -> String {
    match asked {
        HowMany::Reps(range) if range.is_single() => count(usize::from(range.from), "rep", "reps"),
        HowMany::Reps(range) => format!("{} reps", range.print()),
        HowMany::Seconds(range) => spread(*range, Seconds::print),
        HowMany::Metres(range) => spread(*range, |metres| metres.print(numerals)),
        HowMany::Open { at_least, stop } => {
            // "As many as you can" is said where it is meant, and nowhere else.
            match (stop, *at_least) {
                (Stop::Reserve(Reserve::NONE), 0) => "as many reps as you can".to_owned(),
                (Stop::Reserve(Reserve::NONE), least) => {
                    format!("as many reps as you can, at least {least}")
                }
                (stop, 0) => format!("reps, {}", stop_rule(stop, numerals)),
                (stop, least) => format!("{least} or more reps, {}", stop_rule(stop, numerals)),
            }
        }
    }
}

/// What ends an open set.
pub fn stop_rule(stop: &Stop, numerals: Numerals) -> String {
    match stop {
        Stop::Reserve(Reserve::NONE) => "to failure".to_owned(),
        Stop::Reserve(left) => format!("stop with {} in reserve", left.print(numerals)),
        Stop::Form => "stop when form goes".to_owned(),
        Stop::Pace => "stop when you slow down".to_owned(),
        Stop::Time(seconds) => format!("stop after {}", seconds.print()),
    }
}

/// "1–2 in reserve", or "RPE 8–9" for those who wrote it so.
pub fn effort(target: &EffortTarget, numerals: Numerals) -> String {
    let (from, to) = (target.left.from, target.left.to);
    match target.scale {
        EffortScale::Left if to == Reserve::NONE => "to failure".to_owned(),
        scale if from == to => reserve(from, scale, numerals),
        EffortScale::Left => {
            format!("{}–{} in reserve", from.print(numerals), to.print(numerals))
        }
        EffortScale::Rpe => {
            format!("RPE {}–{}", to.rpe().print(numerals), from.rpe().print(numerals))
        }
    }
}

/// "left" or "right".
pub fn side(side: Side) -> &'static str {
    match side {
        Side::Left => "left",
        Side::Right => "right",
    }
}

/// How a set ended, as a tally says it; nothing for as called.
pub fn ending(ending: Ending) -> Option<&'static str> {
    match ending {
        Ending::AsCalled => None,
        Ending::Failed => Some("failed a rep"),
        Ending::Form => Some("form went"),
        Ending::Pain => Some("pain"),
        Ending::Interrupted => Some("interrupted"),
        Ending::Equipment => Some("equipment"),
    }
}

/// What is worn.
pub fn kit(kit: Kit) -> &'static str {
    match kit {
        Kit::Belt => "belt",
        Kit::Wraps => "wraps",
        Kit::Straps => "straps",
        Kit::Sleeves => "sleeves",
    }
}

/// What a week is for.
pub fn week_kind(kind: WeekKind) -> &'static str {
    match kind {
        WeekKind::Ordinary => "ordinary",
        WeekKind::EaseIn => "ease-in",
        WeekKind::Deload => "deload",
        WeekKind::Test => "test",
    }
}

/// A duration in minutes: "about 52 min".
pub fn minutes(seconds: u64) -> String {
    format!("about {} min", seconds.div_ceil(60))
}
