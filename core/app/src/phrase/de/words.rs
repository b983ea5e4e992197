//! Small words and figures that every screen uses.

use barwright_domain::call::{Amount, EffortScale, EffortTarget, HowMany, Side, Stop, WeekKind};
use barwright_domain::catalogue::{Counting, Exercise, Tongue};
use barwright_domain::quantity::{Mass, MassUnit, Numerals, Reps, Reserve, Seconds};
use barwright_domain::session::{Ending, Kit};

use crate::phrase::written::figures::spread;
pub use crate::phrase::written::figures::{
    count, countdown, figure, how_many_short, mass, sentence_case,
};
pub(super) use crate::phrase::written::figures::{tenth, whole};

/// A load's figure as it is counted: "100 kg", "+10 kg", "20 kg Unterstützung", "Körpergewicht".
pub fn load(figure: Mass, counting: Counting, unit: MassUnit, numerals: Numerals) -> String {
    match counting {
        Counting::Added if figure == Mass::ZERO => "Körpergewicht".to_owned(),
        Counting::Added if figure < Mass::ZERO => {
            format!("{} Unterstützung", figure.distance(Mass::ZERO).print(unit, numerals))
        }
        Counting::Added => format!("+{}", figure.print(unit, numerals)),
        _ => figure.print(unit, numerals),
    }
}

/// An effort in the words of its scale: "2,5 in Reserve", "keine in Reserve", "RPE 8".
pub(super) fn reserve(left: Reserve, scale: EffortScale, numerals: Numerals) -> String {
    match scale {
        EffortScale::Left if left == Reserve::NONE => "keine in Reserve".to_owned(),
        EffortScale::Left => format!("{} in Reserve", left.print(numerals)),
        EffortScale::Rpe => format!("RPE {}", left.rpe().print(numerals)),
    }
}

/// A thing that is set up, by its key in a plan file.
pub fn part_set_up(key: &str) -> Option<&'static str> {
    Some(match key {
        "pins" => "Ablagen",
        "seat" => "Sitz",
        "attachment" => "Griff",
        "bench" => "Bank",
        _ => return None,
    })
}

/// A load that may be assistance, or nothing at all: "20 kg Unterstützung", "ohne Zusatzgewicht",
/// "102,5 kg".
pub fn or_help(load: Mass, unit: MassUnit, numerals: Numerals) -> String {
    match load.cmp(&Mass::ZERO) {
        std::cmp::Ordering::Less => {
            format!("{} Unterstützung", mass(load.distance(Mass::ZERO), unit, numerals))
        }
        std::cmp::Ordering::Equal => "ohne Zusatzgewicht".to_owned(),
        std::cmp::Ordering::Greater => mass(load, unit, numerals),
    }
}

/// "1 Woche", "4 Wochen".
pub fn weeks(number: usize) -> String {
    count(number, "Woche", "Wochen")
}

/// "1 Einheit", "20 Einheiten".
pub fn sessions(number: usize) -> String {
    count(number, "Einheit", "Einheiten")
}

/// A text with its full stop; one that ends with a short form has it already: "5 Wdh.".
pub(super) fn end(text: String) -> String {
    if text.ends_with('.') { text } else { format!("{text}.") }
}

/// Parts of a screen as they are read aloud, each a sentence.
pub fn spoken(parts: &[&str]) -> String {
    let parts: Vec<&str> = parts.iter().copied().filter(|part| !part.is_empty()).collect();
    let mut text = String::new();
    for part in parts {
        if !text.is_empty() {
            text = format!("{} ", end(text));
        }
        text.push_str(part);
    }
    text
}

/// Rows read aloud: each text with its detail.
pub fn rows(rows: &[(&str, &str)]) -> String {
    let lines: Vec<String> = rows
        .iter()
        .map(|(text, detail)| match *detail {
            "" => end((*text).to_owned()),
            detail => format!("{} {}", end((*text).to_owned()), end(detail.to_owned())),
        })
        .collect();
    lines.join(" ")
}

/// An exercise by its name.
pub fn exercise(exercise: &Exercise) -> String {
    exercise.name_in(Tongue::German).to_owned()
}

/// "5 Wdh.": its short form is the same for one and for several.
pub(super) fn reps_of(reps: Reps) -> String {
    format!("{reps} Wdh.")
}

/// "5 Wdh.", "30 s", "40 m".
pub fn amount(amount: &Amount, numerals: Numerals) -> String {
    match amount {
        Amount::Reps(reps) => reps_of(*reps),
        Amount::Seconds(seconds) => seconds.print(),
        Amount::Metres(distance) => distance.print(numerals),
    }
}

/// The unit beside a figure: "Wdh.", "s", "m".
pub fn unit(amount: &Amount) -> &'static str {
    match amount {
        Amount::Reps(_) => "Wdh.",
        Amount::Seconds(_) => "s",
        Amount::Metres(_) => "m",
    }
}

/// What is asked: "5 Wdh.", "6–10 Wdh.", "20–30 s", "so viele Wdh. wie möglich, mindestens 5".
pub fn how_many(asked: &HowMany, numerals: Numerals) -> String {
    match asked {
        HowMany::Reps(range) => format!("{} Wdh.", range.print()),
        HowMany::Seconds(range) => spread(*range, Seconds::print),
        HowMany::Metres(range) => spread(*range, |metres| metres.print(numerals)),
        HowMany::Open { at_least, stop } => {
            // "So viele wie möglich" is said where it is meant, and nowhere else.
            match (stop, *at_least) {
                (Stop::Reserve(Reserve::NONE), 0) => "so viele Wdh. wie möglich".to_owned(),
                (Stop::Reserve(Reserve::NONE), least) => {
                    format!("so viele Wdh. wie möglich, mindestens {least}")
                }
                (stop, 0) => format!("Wdh., {}", stop_rule(stop, numerals)),
                (stop, least) => format!("mindestens {least} Wdh., {}", stop_rule(stop, numerals)),
            }
        }
    }
}

/// What ends an open set.
pub fn stop_rule(stop: &Stop, numerals: Numerals) -> String {
    match stop {
        Stop::Reserve(Reserve::NONE) => "bis zum Muskelversagen".to_owned(),
        Stop::Reserve(left) => format!("Schluss bei {} in Reserve", left.print(numerals)),
        Stop::Form => "Schluss, wenn die Technik nachlässt".to_owned(),
        Stop::Pace => "Schluss, wenn du langsamer wirst".to_owned(),
        Stop::Time(seconds) => format!("Schluss nach {}", seconds.print()),
    }
}

/// "1–2 in Reserve", or "RPE 8–9" for those who wrote it so.
pub fn effort(target: &EffortTarget, numerals: Numerals) -> String {
    let (from, to) = (target.left.from, target.left.to);
    match target.scale {
        EffortScale::Left if to == Reserve::NONE => "bis zum Muskelversagen".to_owned(),
        scale if from == to => reserve(from, scale, numerals),
        EffortScale::Left => {
            format!("{}–{} in Reserve", from.print(numerals), to.print(numerals))
        }
        EffortScale::Rpe => {
            format!("RPE {}–{}", to.rpe().print(numerals), from.rpe().print(numerals))
        }
    }
}

/// "links" or "rechts".
pub fn side(side: Side) -> &'static str {
    match side {
        Side::Left => "links",
        Side::Right => "rechts",
    }
}

/// How a set ended, as a tally says it; nothing for as called.
pub fn ending(ending: Ending) -> Option<&'static str> {
    match ending {
        Ending::AsCalled => None,
        Ending::Failed => Some("Wdh. nicht geschafft"),
        Ending::Form => Some("Technik ließ nach"),
        Ending::Pain => Some("Schmerz"),
        Ending::Interrupted => Some("unterbrochen"),
        Ending::Equipment => Some("Gerät"),
    }
}

/// What is worn.
pub fn kit(kit: Kit) -> &'static str {
    match kit {
        Kit::Belt => "Gürtel",
        Kit::Wraps => "Bandagen",
        Kit::Straps => "Zughilfen",
        Kit::Sleeves => "Stulpen",
    }
}

/// What a week is for.
pub fn week_kind(kind: WeekKind) -> &'static str {
    match kind {
        WeekKind::Ordinary => "normal",
        WeekKind::EaseIn => "Einstieg",
        WeekKind::Deload => "Entlastung",
        WeekKind::Test => "Test",
    }
}

/// A duration in minutes: "etwa 52 min".
pub fn minutes(seconds: u64) -> String {
    format!("etwa {} min", seconds.div_ceil(60))
}
