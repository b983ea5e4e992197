//! Small words and figures that every screen uses.

use barwright_domain::call::{Amount, EffortScale, EffortTarget, HowMany, Side, Stop, WeekKind};
use barwright_domain::catalogue::{Counting, Exercise, Tongue};
use barwright_domain::quantity::{
    Mass, MassUnit, Numerals, Range, Reps, Reserve, Rounding, Seconds,
};
use barwright_domain::session::{Ending, Kit};

/// A mass with its unit.
pub fn mass(mass: Mass, unit: MassUnit, numerals: Numerals) -> String {
    mass.print(unit, numerals)
}

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

/// An estimate to a tenth of its unit: more would be a fiction.
pub(super) fn tenth(estimate: Mass, unit: MassUnit, numerals: Numerals) -> String {
    let step = Mass::from_nanograms(unit.nanograms() / 10);
    mass(estimate.to_multiple(step, Rounding::HalfEven).unwrap_or(estimate), unit, numerals)
}

/// An estimate in whole units, as it is said in a breath.
pub(super) fn whole(estimate: Mass, unit: MassUnit, numerals: Numerals) -> String {
    let step = Mass::from_nanograms(unit.nanograms());
    mass(estimate.to_multiple(step, Rounding::HalfEven).unwrap_or(estimate), unit, numerals)
}

/// An effort in the words of its scale: "2,5 in Reserve", "keine in Reserve", "RPE 8".
pub(super) fn reserve(left: Reserve, scale: EffortScale, numerals: Numerals) -> String {
    match scale {
        EffortScale::Left if left == Reserve::NONE => "keine in Reserve".to_owned(),
        EffortScale::Left => format!("{} in Reserve", left.print(numerals)),
        EffortScale::Rpe => format!("RPE {}", left.rpe().print(numerals)),
    }
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

/// "1 Satz", "3 Sätze".
pub fn count(number: usize, one: &str, many: &str) -> String {
    format!("{number} {}", if number == 1 { one } else { many })
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

/// The figure alone: "5", "30", "40".
pub fn figure(amount: &Amount, numerals: Numerals) -> String {
    match amount {
        Amount::Reps(reps) => reps.to_string(),
        Amount::Seconds(seconds) => seconds.count().to_string(),
        Amount::Metres(distance) => distance.print(numerals).trim_end_matches(" m").to_owned(),
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

/// As [`how_many`], in the shorthand of a sheet: "5", "6–10", "30 s", "5+".
pub fn how_many_short(asked: &HowMany, numerals: Numerals) -> String {
    match asked {
        HowMany::Reps(range) => range.print(),
        HowMany::Seconds(range) => spread(*range, Seconds::print),
        HowMany::Metres(range) => spread(*range, |metres| metres.print(numerals)),
        HowMany::Open { at_least, .. } => format!("{at_least}+"),
    }
}

/// One value, or from least to most with the unit once: "30–45 s".
fn spread<T: Copy + PartialOrd>(range: Range<T>, print: impl Fn(T) -> String) -> String {
    let to = print(range.to);
    if range.is_single() {
        return to;
    }
    let from = print(range.from);
    match (from.rsplit_once(' '), to.rsplit_once(' ')) {
        (Some((figure, unit)), Some((_, same))) if unit == same => format!("{figure}–{to}"),
        _ => format!("{from}–{to}"),
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

/// A countdown: "1:23", "0:05"; "+0:12" when over.
pub fn countdown(left_ms: i64) -> String {
    // A rest that is not over never shows nothing left: the last second counts as one.
    let over = left_ms <= 0;
    let seconds =
        if over { left_ms.unsigned_abs() / 1000 } else { left_ms.unsigned_abs().div_ceil(1000) };
    let sign = if over && seconds > 0 { "+" } else { "" };
    format!("{sign}{}:{:02}", seconds / 60, seconds % 60)
}

/// A duration in minutes: "etwa 52 min".
pub fn minutes(seconds: u64) -> String {
    format!("etwa {} min", seconds.div_ceil(60))
}

/// A text with its first letter large.
pub fn sentence_case(text: &str) -> String {
    let mut chars = text.chars();
    match chars.next() {
        Some(first) => first.to_uppercase().chain(chars).collect(),
        None => String::new(),
    }
}
