//! Words of a week on paper.

use barwright_domain::call::{Flow, Side, Structure};
use barwright_domain::quantity::{MassUnit, Numerals};
use barwright_domain::session::Call;

use super::{date, sheet, words};

/// The tag of the language, for a reader of screens.
pub fn language() -> &'static str {
    "en"
}

/// On which day the loads stood so.
pub fn as_of(day: i32) -> String {
    format!(
        "Loads as they stand on {}; what is done in one session moves those after it.",
        date::in_full(day)
    )
}

/// Over a column.
pub fn set() -> &'static str {
    "Set"
}

/// Over a column.
pub fn call() -> &'static str {
    "Call"
}

/// Over a column.
pub fn rest() -> &'static str {
    "Rest"
}

/// Over a column.
pub fn load() -> &'static str {
    "Load"
}

/// Over a column.
pub fn done() -> &'static str {
    "Done"
}

/// Over a column.
pub fn effort() -> &'static str {
    "Effort"
}

/// Beside a blank.
pub fn date() -> &'static str {
    "Date"
}

/// Beside a blank.
pub fn body_mass() -> &'static str {
    "Body mass"
}

/// Over empty lines.
pub fn note() -> &'static str {
    "Notes, and what hurt"
}

/// What would let the loads be worked out.
pub fn missing(label: &str) -> String {
    format!("Not known yet: {}.", label.to_lowercase())
}

/// Which set: "3", "3 left".
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
        all.push(format!("then {}", further.join(", ")));
    }
    all.extend(call.effort.as_ref().map(|target| words::effort(target, numerals)));
    all.extend(call.manner.tempo.map(|tempo| format!("tempo {tempo}")));
    all.extend(call.manner.technique.clone());
    all.extend(flow(&call.flow, numerals));
    all.join(" · ")
}

fn flow(flow: &Flow, numerals: Numerals) -> Option<String> {
    Some(match flow {
        Flow::Listed => return None,
        Flow::Climb { to, step, most } => {
            let (to, step) = (words::effort(to, numerals), step.print(numerals));
            format!("{step} more each set until {to}, up to {most} sets")
        }
        Flow::Repeat { until, most } => {
            format!("again until {}, up to {most} sets", words::effort(until, numerals))
        }
        Flow::Total { reps, most } => format!("{reps} in all, up to {most} sets"),
        Flow::Clock { every } => format!("a set every {}", every.print()),
        Flow::Test { step, most } => {
            format!("singles, {} more each, up to {most} tries", step.print(numerals))
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
            let off = off.iter().map(|off| format!("drop {}", off.print(numerals)));
            std::iter::once(own).chain(off).collect()
        }
        Structure::Ranges { parts } => {
            parts.iter().map(|part| format!("{} {}", part.reps.print(), part.name)).collect()
        }
        Structure::Continued { parts } => {
            let parts = parts.iter().map(|part| {
                let name = part.exercise.replace('-', " ");
                format!("{} {name}", words::how_many_short(&part.how_many, numerals))
            });
            std::iter::once(own).chain(parts).collect()
        }
    }
}
