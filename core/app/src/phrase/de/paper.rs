//! Words of a week on paper.

use barwright_domain::call::{Flow, Side, Structure};
use barwright_domain::quantity::{MassUnit, Numerals};
use barwright_domain::session::Call;

use super::{date, named, sheet, words};

/// The tag of the language, for a reader of screens.
pub fn language() -> &'static str {
    "de"
}

/// On which day the loads stood so.
pub fn as_of(day: i32) -> String {
    format!(
        "Gewichte mit Stand vom {}; was in einer Einheit gemacht wird, verschiebt die danach.",
        date::in_full(day)
    )
}

/// Over a column.
pub fn set() -> &'static str {
    "Satz"
}

/// Over a column.
pub fn call() -> &'static str {
    "Vorgabe"
}

/// Over a column.
pub fn rest() -> &'static str {
    "Pause"
}

/// Over a column.
pub fn load() -> &'static str {
    "Gewicht"
}

/// Over a column.
pub fn done() -> &'static str {
    "Gemacht"
}

/// Over a column.
pub fn effort() -> &'static str {
    "Anstrengung"
}

/// Beside a blank.
pub fn date() -> &'static str {
    "Datum"
}

/// Beside a blank.
pub fn body_mass() -> &'static str {
    "Körpergewicht"
}

/// Over empty lines.
pub fn note() -> &'static str {
    "Notizen, und was wehtat"
}

/// What would let the loads be worked out.
pub fn missing(label: &str) -> String {
    format!("Noch nicht bekannt: {label}.")
}

/// Which set: "3", "3 links".
pub fn set_name(round: u16, side: Option<Side>) -> String {
    match side {
        Some(side) => format!("{round} {}", words::side(side)),
        None => round.to_string(),
    }
}

/// What is called of a set, its number and rest apart.
pub fn set_call(call: &Call, unit: MassUnit, numerals: Numerals) -> String {
    let own = words::how_many_short(&call.how_many, numerals);
    let mut all = vec![sheet::parts(&call.structure, own, numerals)];
    all.extend([sheet::load(call, unit, numerals)].into_iter().filter(|load| !load.is_empty()));
    let further = call.part_loads.iter().map(|load| super::bar::in_line(load, unit, numerals));
    let further: Vec<String> = further.filter(|load| !load.is_empty()).collect();
    if !further.is_empty() {
        all.push(format!("dann {}", further.join(", ")));
    }
    all.extend(call.effort.as_ref().map(|target| words::effort(target, numerals)));
    all.extend(call.manner.tempo.map(|tempo| format!("Tempo {tempo}")));
    all.extend(call.manner.technique.clone());
    all.extend(flow(&call.flow, numerals));
    all.join(" · ")
}

fn flow(flow: &Flow, numerals: Numerals) -> Option<String> {
    Some(match flow {
        Flow::Listed => return None,
        Flow::Climb { to, step, most } => {
            let (to, step) = (words::effort(to, numerals), step.print(numerals));
            format!("je Satz {step} mehr bis {to}, höchstens {most} Sätze")
        }
        Flow::Repeat { until, most } => {
            format!("noch einmal bis {}, höchstens {most} Sätze", words::effort(until, numerals))
        }
        Flow::Total { reps, most } => format!("{reps} insgesamt, höchstens {most} Sätze"),
        Flow::Clock { every } => format!("ein Satz alle {}", every.print()),
        Flow::Test { step, most } => {
            format!("einzelne, je {} mehr, höchstens {most} Versuche", step.print(numerals))
        }
    })
}

/// What stands small in the box of each part; one empty text where the set is one stretch of work.
pub fn parts(call: &Call, numerals: Numerals) -> Vec<String> {
    let own = words::how_many_short(&call.how_many, numerals);
    match &call.structure {
        Structure::Straight => vec![String::new()],
        Structure::Cluster { blocks, .. } => blocks.iter().map(ToString::to_string).collect(),
        Structure::RestPause { each, most, .. } => {
            std::iter::once(own).chain((0..*most).map(|_| each.to_string())).collect()
        }
        Structure::Drop { off } => {
            let off = off.iter().map(|off| format!("Drop um {}", off.print(numerals)));
            std::iter::once(own).chain(off).collect()
        }
        Structure::Ranges { parts } => {
            parts.iter().map(|part| format!("{} {}", part.reps.print(), part.name)).collect()
        }
        Structure::Continued { parts } => {
            let parts = parts.iter().map(|part| {
                let name = named::exercise(&part.exercise);
                format!("{} {name}", words::how_many_short(&part.how_many, numerals))
            });
            std::iter::once(own).chain(parts).collect()
        }
    }
}
