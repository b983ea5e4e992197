//! Words of one exercise over time.

use barwright_domain::call::{Amount, HowMany, Side};
use barwright_domain::history::{Apart, DoneSet, Measure, MostAt, Record};
use barwright_domain::owners::MaxOrigin;
use barwright_domain::prescribe::MovedLoad;
use barwright_domain::progress::estimate::Estimate;
use barwright_domain::quantity::{Distance, Mass, MassUnit, Numerals, Seconds};
use barwright_domain::session::{Ending, Kit};

use super::{date, words};

/// "Maximum 142,5 kg, eingegeben Mo., 12. Okt.".
pub fn max(
    max: Option<(Mass, i32, &MaxOrigin)>,
    today: Option<i32>,
    unit: MassUnit,
    numerals: Numerals,
) -> String {
    match max {
        None => "Noch kein Maximum.".to_owned(),
        Some((mass, day, origin)) => {
            let mass = mass.print(unit, numerals);
            format!("Maximum {mass}, {} {}", known(origin), date::dated(day, today))
        }
    }
}

/// How a max came to be known.
pub(super) fn known(origin: &MaxOrigin) -> String {
    match origin {
        MaxOrigin::Entered => "eingegeben".to_owned(),
        MaxOrigin::Tested => "getestet".to_owned(),
        MaxOrigin::Raised { formula } => format!("angehoben aus Schätzungen ({formula})"),
    }
}

/// "Maximum Kniebeuge: 162,5 kg, getestet; zuvor 160 kg".
pub fn max_moved(
    name: &str,
    before: Option<Mass>,
    (after, origin): (Mass, &MaxOrigin),
    unit: MassUnit,
    numerals: Numerals,
) -> String {
    let was =
        before.map(|mass| format!("; zuvor {}", mass.print(unit, numerals))).unwrap_or_default();
    let after = after.print(unit, numerals);
    format!("Maximum {name}: {after}, {}{was}", known(origin))
}

/// A field: the working load of a row of the plan.
pub fn working_load(asked: &HowMany, numerals: Numerals) -> (String, String) {
    let asked = words::how_many(asked, numerals);
    (format!("Arbeitsgewicht für {asked}"), "Gilt ab der nächsten Einheit".to_owned())
}

/// "Maximum Kniebeuge: 160 kg": it stays.
pub fn max_of(name: &str, max: Option<Mass>, unit: MassUnit, numerals: Numerals) -> String {
    match max {
        Some(max) => format!("Maximum {name}: {}", max.print(unit, numerals)),
        None => format!("Maximum {name}: noch keins"),
    }
}

/// Under a max that moves nothing of the plan that is on.
pub fn again(moves: bool) -> &'static str {
    if moves {
        "In diesem Plan ändert sich kein Gewicht mehr; unten steht er, wie er noch einmal wäre."
    } else {
        "Kein Gewicht dieses Plans hängt davon ab."
    }
}

/// "Woche 7, Beine: Kniebeuge 122,5 kg, zuvor 120 kg".
pub fn moved(load: &MovedLoad, name: &str, unit: MassUnit, numerals: Numerals) -> String {
    format!(
        "Woche {}, {}: {name} {}, zuvor {}",
        load.at.week,
        load.session,
        load.after.print(unit, numerals),
        load.before.print(unit, numerals)
    )
}

/// "Schätzung 131 kg, 122–140"; "mit Körpergewicht" where the body's part is in it.
fn estimate(estimate: &Estimate, moved: bool, unit: MassUnit, numerals: Numerals) -> String {
    let whole = |mass: Mass| {
        let step = Mass::from_nanograms(unit.nanograms());
        let near = mass.to_multiple(step, barwright_domain::quantity::Rounding::HalfEven);
        near.unwrap_or(mass).figure(unit, numerals)
    };
    format!(
        "Schätzung {} {}{}, {}–{}",
        whole(estimate.max),
        unit.symbol(),
        if moved { " mit Körpergewicht" } else { "" },
        whole(estimate.low),
        whole(estimate.high)
    )
}

/// What was done of a set at one load: "5", each part of a set of several ("12 + 4 + 3"), and
/// "nicht geschafft" for a try that was not made.
fn done(set: &DoneSet, numerals: Numerals) -> String {
    if !set.made() && set.ending == Ending::Failed {
        return "nicht geschafft".to_owned();
    }
    let parts: Vec<String> =
        set.parts.iter().map(|part| words::figure(&part.amount, numerals)).collect();
    parts.join(" + ")
}

/// A set whose parts had loads of their own: "60 kg × 8, 47,5 kg × 6".
fn dropped(set: &DoneSet, unit: MassUnit, numerals: Numerals) -> String {
    let parts = set.parts.iter().map(|part| {
        let amount = words::figure(&part.amount, numerals);
        match part.figure {
            Some(figure) => {
                format!("{} × {amount}", words::load(figure, set.counting, unit, numerals))
            }
            None => amount,
        }
    });
    let side = set.side.map(|side| format!("{} ", words::side(side))).unwrap_or_default();
    format!("{side}{}", parts.collect::<Vec<_>>().join(", "))
}

/// Sets at one load: "110 kg: 5, 5, 4", "14 kg: 8, 8 je Seite", "30, 45 s"; those whose parts had
/// loads of their own part by part.
pub fn sets_at_load(sets: &[&DoneSet], unit: MassUnit, numerals: Numerals) -> String {
    if sets.iter().any(|set| !set.at_one_load()) {
        let each: Vec<String> = sets.iter().map(|set| dropped(set, unit, numerals)).collect();
        return each.join("; ");
    }
    let of = |side: Option<Side>| -> Vec<String> {
        let each = sets.iter().filter(|set| set.side == side);
        each.map(|set| done(set, numerals)).collect()
    };
    let both = of(None);
    let (left, right) = (of(Some(Side::Left)), of(Some(Side::Right)));
    let sides = match (left.is_empty(), right.is_empty()) {
        (true, true) => None,
        _ if left == right => Some(format!("{} je Seite", left.join(", "))),
        (false, true) => Some(format!("links {}", left.join(", "))),
        (true, false) => Some(format!("rechts {}", right.join(", "))),
        (false, false) => Some(format!("links {}; rechts {}", left.join(", "), right.join(", "))),
    };
    let both = (!both.is_empty()).then(|| both.join(", "));
    let amounts = [both, sides].into_iter().flatten().collect::<Vec<_>>().join("; ");
    let Some(first) = sets.first() else { return amounts };
    let unit_of_amount = match first.amount() {
        Amount::Reps(_) => String::new(),
        amount => format!(" {}", words::unit(&amount)),
    };
    let load = first.figure.filter(|figure| *figure != Mass::ZERO || first.bands.is_none());
    let load = load.map(|figure| words::load(figure, first.counting, unit, numerals));
    let on = [load, first.bands.clone()].into_iter().flatten().collect::<Vec<_>>().join(" + ");
    // The body alone is not said with every line.
    if on.is_empty() || on == "Körpergewicht" {
        format!("{amounts}{unit_of_amount}")
    } else {
        format!("{on}: {amounts}{unit_of_amount}")
    }
}

/// What was cut short, each reason once: "Wdh. nicht geschafft, Schmerz".
fn ended_otherwise(sets: &[&DoneSet]) -> Option<String> {
    let mut said: Vec<&str> = sets.iter().filter_map(|set| words::ending(set.ending)).collect();
    said.dedup();
    (!said.is_empty()).then(|| said.join(", "))
}

/// "mit Gürtel, Stulpen".
fn worn(kit: &[Kit]) -> Option<String> {
    let worn: Vec<&str> = kit.iter().map(|kit| words::kit(*kit)).collect();
    (!worn.is_empty()).then(|| format!("mit {}", worn.join(", ")))
}

/// "5 Wdh.: 120 kg, Mo., 12. Okt., mit Gürtel"
pub fn record(record: &Record, today: Option<i32>, unit: MassUnit, numerals: Numerals) -> String {
    let load = |mass| words::load(mass, record.apart.counting, unit, numerals);
    let at = |figure: &Option<Mass>| match figure {
        Some(figure) if *figure != Mass::ZERO => format!("{}: ", load(*figure)),
        _ => String::new(),
    };
    let value = u32::try_from(record.value).unwrap_or(u32::MAX);
    let what = match &record.measure {
        Measure::HeaviestFor(reps) => {
            format!("{}: {}", words::reps_of(*reps), load(Mass::from_nanograms(record.value)))
        }
        Measure::MostReps => format!("{value} Wdh."),
        Measure::LongestAt(figure) => format!("{}{}", at(figure), Seconds::new(value).print()),
        Measure::FarthestAt(figure) => {
            format!("{}{}", at(figure), Distance::from_millimetres(value).print(numerals))
        }
    };
    format!("{what}, {}{}", date::dated(record.day, today), apart(&record.apart))
}

/// "120 kg: 5 Wdh., Mo., 12. Okt., mit Gürtel"
pub fn most_at(most: &MostAt, today: Option<i32>, unit: MassUnit, numerals: Numerals) -> String {
    let load = words::load(most.figure, most.apart.counting, unit, numerals);
    let reps = words::reps_of(most.reps);
    format!("{load}: {reps}, {}{}", date::dated(most.day, today), apart(&most.apart))
}

fn apart(apart: &Apart) -> String {
    let side = apart.side.map(|side| words::side(side).to_string());
    let parts: Vec<String> = [side, worn(&apart.kit), apart.bands.clone(), apart.technique.clone()]
        .into_iter()
        .flatten()
        .collect();
    if parts.is_empty() { String::new() } else { format!(", {}", parts.join(", ")) }
}

/// A heading.
pub fn by_reps() -> &'static str {
    "Schwerstes nach Wiederholungen"
}

/// A heading.
pub fn by_load() -> &'static str {
    "Meiste Wiederholungen nach Gewicht"
}

/// A heading.
pub fn most_reps() -> &'static str {
    "Meiste Wiederholungen"
}

/// A heading.
pub fn longest() -> &'static str {
    "Längstes Halten"
}

/// A heading.
pub fn farthest() -> &'static str {
    "Weiteste Strecke"
}

/// A key.
pub fn newer() -> &'static str {
    "Neuere"
}

/// A key.
pub fn older() -> &'static str {
    "Ältere"
}

/// A session: its day, and its sets at each load: "Mo., 12. Okt. · 110 kg: 5, 5, 4".
pub fn session(day: i32, today: Option<i32>, loads: &[String]) -> String {
    format!("{} · {}", date::dated(day, today), loads.join(" · "))
}

/// Where an effort was asked for, and none was called.
pub(super) fn no_effort_called() -> &'static str {
    "ohne Angabe"
}

/// The quieter line below a session: the last set's effort, how it was cut short, what was worn,
/// and
/// what it estimates.
pub fn session_detail(
    work: &[&DoneSet],
    estimated: Option<&Estimate>,
    moved: bool,
    unit: MassUnit,
    numerals: Numerals,
) -> String {
    let mut detail: Vec<String> = Vec::new();
    detail.extend(work.last().and_then(|set| match (set.left, set.target) {
        (Some(left), target) => {
            let scale = target.map(|target| target.scale).unwrap_or_default();
            Some(words::reserve(left, scale, numerals))
        }
        (None, Some(_)) if set.ending == Ending::AsCalled => Some(no_effort_called().to_owned()),
        (None, _) => None,
    }));
    detail.extend(ended_otherwise(work));
    detail.extend(work.first().and_then(|set| worn(&set.kit)));
    detail.extend(work.first().and_then(|set| set.technique.clone()));
    detail.extend(estimated.map(|found| estimate(found, moved, unit, numerals)));
    detail.join(" · ")
}
