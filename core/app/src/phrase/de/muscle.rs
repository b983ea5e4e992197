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
    "Bilanz"
}

/// The plan and its weeks, from 1: "Wintergrundlage, Woche 3 von 8".
pub fn subtitle(plan: &str, first: u16, last: u16, weeks: usize) -> String {
    if first == last {
        format!("{plan}, Woche {last} von {weeks}")
    } else {
        format!("{plan}, Wochen {first} bis {last}")
    }
}

/// The whole screen read aloud.
pub fn aloud(subtitle: &str, bars: &[&str], sentences: &str) -> String {
    format!("Bilanz, {subtitle}. {}. {sentences}", bars.join(". "))
}

/// "Vordere Schulter".
pub fn name(muscle: Muscle) -> String {
    words::sentence_case(in_line(muscle))
}

/// As [`name`], within a line: "vordere Schulter".
pub(super) const fn in_line(muscle: Muscle) -> &'static str {
    match muscle {
        Muscle::Chest => "Brust",
        Muscle::FrontDeltoid => "vordere Schulter",
        Muscle::SideDeltoid => "seitliche Schulter",
        Muscle::RearDeltoid => "hintere Schulter",
        Muscle::RotatorCuff => "Rotatorenmanschette",
        Muscle::Serratus => "Sägemuskel",
        Muscle::Lats => "Latissimus",
        Muscle::UpperBack => "oberer Rücken",
        Muscle::UpperTrapezius => "oberer Trapezmuskel",
        Muscle::Biceps => "Bizeps",
        Muscle::Triceps => "Trizeps",
        Muscle::Forearms => "Unterarme",
        Muscle::Abdominals => "Bauch",
        Muscle::Obliques => "schräge Bauchmuskeln",
        Muscle::SpinalErectors => "Rückenstrecker",
        Muscle::Glutes => "Gesäß",
        Muscle::HipAbductors => "Abduktoren",
        Muscle::Adductors => "Adduktoren",
        Muscle::HipFlexors => "Hüftbeuger",
        Muscle::Quadriceps => "Quadrizeps",
        Muscle::Hamstrings => "Beinbeuger",
        Muscle::Calves => "Waden",
        Muscle::Shins => "Schienbeinmuskeln",
        Muscle::Neck => "Nacken",
    }
}

/// A muscle's bar in words.
pub fn bar(muscle: Muscle, planned: u32, done: u32, numerals: Numerals) -> String {
    let (done, planned) = (sets(done, numerals), sets(planned, numerals));
    let of = if planned == "1" { "hartem Satz" } else { "harten Sätzen" };
    format!("{}: {done} von {planned} {of}", name(muscle))
}

/// What was done in the other counts: "8 direkt · 11 mit indirekten · 4 unter sechs Wdh.".
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
        parts.push(format!("{} je Woche", a_week(done, weeks, numerals)));
    }
    parts.push(format!("{direct} direkt"));
    parts.push(format!("{total} mit indirekten"));
    if under_six > 0 {
        parts.push(format!("{} unter sechs Wdh.", sets(under_six, numerals)));
    }
    if let Some((left, right)) = sides {
        let (left, right) = (sets(left, numerals), sets(right, numerals));
        parts.push(format!("links {left}, rechts {right}"));
    }
    parts.join(" · ")
}

/// "Volle Wochen: 3 Wochen, im Mittel", "Entlastung: 1 Woche".
pub fn week_kind(kind: WeekKind, weeks: usize) -> String {
    let kind = match kind {
        WeekKind::Ordinary => "Volle Wochen".to_owned(),
        kind => words::sentence_case(words::week_kind(kind)),
    };
    if weeks == 1 {
        format!("{kind}: 1 Woche")
    } else {
        format!("{kind}: {weeks} Wochen, im Mittel")
    }
}

/// "Brust: 3,5 gemacht, 5 geplant".
pub fn week_of_kind(
    muscle: Muscle,
    planned: u32,
    done: u32,
    weeks: usize,
    numerals: Numerals,
) -> String {
    let (done, planned) = (a_week(done, weeks, numerals), a_week(planned, weeks, numerals));
    format!("{}: {done} gemacht, {planned} geplant", name(muscle))
}

/// What falls behind, and where a set could go.
pub fn behind(behind: &Behind, places: &[String], numerals: Numerals) -> String {
    let short = behind.planned_halves.saturating_sub(behind.done_halves);
    let (name, short) = (name(behind.muscle), hard_sets(short, numerals));
    format!("{name}: {short} im Rückstand; {}.", could_go(places))
}

/// A side that falls behind, and where a set for it could go.
pub fn behind_side(behind: &BehindSide, places: &[String], numerals: Numerals) -> String {
    format!(
        "{}, {}: {} weniger als die andere Seite; {}.",
        name(behind.muscle),
        words::side(behind.side),
        hard_sets(behind.by_halves, numerals),
        could_go(places)
    )
}

fn hard_sets(halves: u32, numerals: Numerals) -> String {
    format!(
        "{} {}",
        sets(halves, numerals),
        if halves == 2 { "harter Satz" } else { "harte Sätze" }
    )
}

fn could_go(places: &[String]) -> String {
    match places {
        [] => "diese Woche kommt keine Einheit mehr, die das direkt trainiert".to_owned(),
        places => format!("ein Satz ginge in {}", places.join(" oder ")),
    }
}
