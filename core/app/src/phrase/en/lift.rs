//! Words of one exercise over time.

use barwright_domain::call::Side;
use barwright_domain::desk::{MaxFact, MaxOrigin};
use barwright_domain::history::{Apart, Measure, Record};
use barwright_domain::progress::estimate::Estimate;
use barwright_domain::quantity::{Distance, Mass, MassUnit, Numerals, Seconds};

use super::{date, words};

/// "Reference max 142.5 kg, entered Mon 12 Oct".
pub fn max(fact: Option<&MaxFact>, unit: MassUnit, numerals: Numerals) -> String {
    match fact {
        None => "No reference max.".to_owned(),
        Some(fact) => {
            let how = match &fact.origin {
                MaxOrigin::Entered => "entered".to_owned(),
                MaxOrigin::Tested => "tested".to_owned(),
                MaxOrigin::Raised { formula } => format!("raised by an estimate ({formula})"),
            };
            let mass = fact.mass.print(unit, numerals);
            format!("Reference max {mass}, {how} {}", date::day(fact.day))
        }
    }
}

/// "estimate 131 kg, 122 to 140".
pub fn estimate(estimate: &Estimate, unit: MassUnit, numerals: Numerals) -> String {
    let whole = |mass: Mass| {
        let step = Mass::from_nanograms(unit.nanograms());
        let near = mass.to_multiple(step, barwright_domain::quantity::Rounding::HalfEven);
        near.unwrap_or(mass).figure(unit, numerals)
    };
    format!(
        "estimate {} {}, {} to {}",
        whole(estimate.max),
        unit.symbol(),
        whole(estimate.low),
        whole(estimate.high)
    )
}

/// "Heaviest for 5: 120 kg, Mon 12 Oct, with belt".
pub fn record(record: &Record, unit: MassUnit, numerals: Numerals) -> String {
    let at = |figure: &Option<Mass>| match figure {
        Some(figure) if *figure != Mass::ZERO => format!(" at {}", figure.print(unit, numerals)),
        _ => String::new(),
    };
    let value = u32::try_from(record.value).unwrap_or(u32::MAX);
    let what = match &record.measure {
        Measure::HeaviestFor(reps) => format!(
            "{}: {}",
            words::count(usize::from(*reps), "rep", "reps"),
            Mass::from_nanograms(record.value).print(unit, numerals)
        ),
        Measure::MostReps => format!("most reps: {value}"),
        Measure::LongestAt(figure) => {
            format!("longest hold{}: {}", at(figure), Seconds::new(value).print())
        }
        Measure::FarthestAt(figure) => {
            let far = Distance::from_millimetres(value).print(numerals);
            format!("farthest{}: {far}", at(figure))
        }
    };
    let apart = apart(&record.apart);
    format!("{what}, {}{apart}", date::day(record.day))
}

fn apart(apart: &Apart) -> String {
    let side = apart.side.map(|side| match side {
        Side::Left => "left side".to_owned(),
        Side::Right => "right side".to_owned(),
    });
    let worn: Vec<&str> = apart.kit.iter().map(|kit| words::kit(*kit)).collect();
    let kit = (!worn.is_empty()).then(|| format!("with {}", worn.join(", ")));
    let parts: Vec<String> =
        [side, kit, apart.bands.clone(), apart.technique.clone()].into_iter().flatten().collect();
    if parts.is_empty() { String::new() } else { format!(", {}", parts.join(", ")) }
}
