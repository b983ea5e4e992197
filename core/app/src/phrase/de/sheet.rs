//! Lines of a sheet: the trade's own shorthand.

use barwright_domain::call::{Flow, Structure};
use barwright_domain::catalogue::Counting;
use barwright_domain::prescribe::{LeftOut, Need};
use barwright_domain::quantity::{Mass, MassUnit, Numerals};
use barwright_domain::session::{Call, CallLoad, Entry, SetKind};

use super::bar::in_line;
use super::{named, words};
use crate::phrase::written::figures;

/// Sets that stand alike on the sheet, as one line: "4 × 5 · 110 kg · Pause 3:00".
pub fn line(calls: &[&Call], unit: MassUnit, numerals: Numerals) -> String {
    let Some(call) = calls.first() else { return String::new() };
    let sets = calls.iter().filter(|one| one.side == call.side).count();
    let load = load(call, unit, numerals);
    let mut parts = vec![format!("{} × {}", count(call, sets), how_many(call, numerals))];
    parts.extend([load].into_iter().filter(|load| !load.is_empty()));
    if let Some(target) = &call.effort {
        parts.push(words::effort(target, numerals));
    }
    parts.extend(call.manner.tempo.map(|tempo| format!("Tempo {tempo}")));
    parts.extend(call.manner.technique.clone());
    if call.rest.count() > 0 && call.kind != SetKind::Ramp {
        parts.push(format!("Pause {}", call.rest.print()));
    }
    parts.join(" · ")
}

/// How many sets: "4", or the most that a flow comes to.
fn count(call: &Call, sets: usize) -> String {
    match call.flow {
        Flow::Listed => sets.to_string(),
        Flow::Clock { every } => format!("alle {}: {sets}", every.print()),
        Flow::Climb { most, .. } | Flow::Repeat { most, .. } | Flow::Test { most, .. } => {
            format!("bis zu {most}")
        }
        Flow::Total { most, .. } => format!("bis zu {most}"),
    }
}

/// How many of what: the parts too.
fn how_many(call: &Call, numerals: Numerals) -> String {
    let own = words::how_many_short(&call.how_many, numerals);
    let each_side = if call.side.is_some() { " je Seite" } else { "" };
    let parts = parts(&call.structure, own, numerals);
    let total = match call.flow {
        Flow::Total { reps, .. } => format!(", {reps} insgesamt"),
        _ => String::new(),
    };
    format!("{parts}{total}{each_side}")
}

/// The parts of a set; `own` is how many the set itself asks for.
pub(super) fn parts(structure: &Structure, own: String, numerals: Numerals) -> String {
    match structure {
        Structure::Straight => own,
        Structure::Cluster { blocks, pause } => {
            let blocks: Vec<String> = blocks.iter().map(ToString::to_string).collect();
            format!("({}), {} dazwischen", blocks.join(" + "), pause.print())
        }
        Structure::RestPause { pause, each, total, most } => {
            let end = match total {
                Some(total) => format!("{total} insgesamt"),
                None => format!("bis zu {most}"),
            };
            format!("{own}, dann Minisätze zu {each} nach {}, {end}", pause.print())
        }
        Structure::Drop { off } => {
            let off: Vec<String> =
                off.iter().map(|off| format!("Drop um {}", off.print(numerals))).collect();
            format!("{own}, {}", off.join(", "))
        }
        Structure::Ranges { parts } => {
            let parts: Vec<String> =
                parts.iter().map(|part| format!("{} {}", part.reps.print(), part.name)).collect();
            parts.join(" + ")
        }
        Structure::Continued { parts } => {
            let parts: Vec<String> = parts
                .iter()
                .map(|part| {
                    let name = named::exercise(&part.exercise);
                    format!("{} {name}", words::how_many_short(&part.how_many, numerals))
                })
                .collect();
            format!("{own}, dann {}", parts.join(", "))
        }
    }
}

/// The load of a call within a line.
pub(super) fn load(call: &Call, unit: MassUnit, numerals: Numerals) -> String {
    match &call.load {
        CallLoad::Known(load) => in_line(load, unit, numerals),
        CallLoad::AfterTop { share } => format!("{} des Topsatzes", share.print(numerals)),
        CallLoad::Chosen { .. } => "Gewicht wählen".to_owned(),
    }
}

/// The ramp in one line: "20 × 8, 40 × 4, 60 × 3, 80 × 2".
pub fn ramp(entry: &Entry, unit: MassUnit, numerals: Numerals) -> Option<String> {
    let steps: Vec<String> = entry
        .calls
        .iter()
        .filter(|call| call.kind == SetKind::Ramp)
        .filter_map(|call| {
            let CallLoad::Known(load) = &call.load else { return None };
            let figure = match (load.counting, load.figure?) {
                (Counting::Added, Mass::ZERO) => "Körpergewicht".to_owned(),
                (_, figure) => figure.figure(unit, numerals),
            };
            Some(format!("{figure} × {}", words::how_many_short(&call.how_many, numerals)))
        })
        .collect();
    (!steps.is_empty()).then(|| format!("Aufwärmen {}", figures::in_a_row(&steps)))
}

/// What is skipped for want of time.
pub fn left_out(left_out: &LeftOut) -> String {
    match left_out {
        LeftOut::Exercise(name) => format!("{name}, alle Sätze"),
        LeftOut::Sets { name, sets } => {
            format!("{name}, {}", words::count(usize::from(*sets), "Satz", "Sätze"))
        }
    }
}

/// What would let the sheet say more: the label of the field that takes it, and an example.
pub fn need(need: &Need, name: &str, unit: MassUnit) -> (String, String) {
    match need {
        Need::BodyMass => (
            "Körpergewicht".to_owned(),
            match unit {
                MassUnit::Kilogram => "80 kg".to_owned(),
                MassUnit::Pound => "175 lb".to_owned(),
            },
        ),
        Need::Max(_) | Need::NoPain(_) | Need::Coach(_) => (
            format!("Maximum {name}"),
            match unit {
                MassUnit::Kilogram => "140 kg".to_owned(),
                MassUnit::Pound => "315 lb".to_owned(),
            },
        ),
    }
}
