//! Zone one of the floor: the bar, or what stands for it.

use barwright_domain::catalogue::Counting;
use barwright_domain::equipment::{Equipment, Plate, Rig};
use barwright_domain::quantity::{Mass, MassUnit, Numerals};
use barwright_domain::session::{Cursor, Load, Run};

use super::key::opens;
use crate::contract::{BarZone, PlateDrawing};
use crate::phrase::en::words;

/// The bar zone at a cursor.
pub(super) fn zone(run: &Run, cursor: Option<&Cursor>, numerals: Numerals) -> BarZone {
    let load = cursor.and_then(|cursor| run.load_at(cursor));
    let Some(load) = load else {
        let chosen = cursor.is_some();
        return BarZone {
            total: String::new(),
            change: String::new(),
            counts: String::new(),
            drawn: false,
            line: if chosen { "Your choice of load".to_owned() } else { String::new() },
            bar: String::new(),
            plates: Vec::new(),
            collar: false,
            holds: None,
        };
    };
    let unit = run.equipment.unit;
    let drawn = matches!(load.rig, Rig::Bar { .. } | Rig::Posts { .. });
    BarZone {
        total: total(load, unit, numerals),
        change: change(run.on.as_ref(), &load.rig),
        counts: counts(load).to_owned(),
        drawn,
        line: line(load, unit, numerals),
        bar: bar_name(&load.rig, unit, numerals),
        plates: if drawn { drawing(&run.equipment, &load.rig) } else { Vec::new() },
        collar: matches!(&load.rig, Rig::Bar { collars, .. } if *collars > Mass::ZERO),
        holds: load
            .rig
            .holds_plates()
            .then(|| opens("holds", "The bar holds…", "bar").says("Say what is really on")),
    }
}

/// The load in large type.
pub(crate) fn total(load: &Load, unit: MassUnit, numerals: Numerals) -> String {
    let print = |mass: Mass| mass.print(unit, numerals);
    if let Some(set_up) = &load.set_up {
        return match load.figure {
            Some(figure) if figure > Mass::ZERO => format!("{} + {set_up}", print(figure)),
            _ => set_up.clone(),
        };
    }
    match (load.figure, &load.rig) {
        (Some(figure), _) => words::load(figure, load.counting, unit, numerals),
        (None, Rig::Stack { pin, .. }) => format!("Pin {pin}"),
        (None, _) => String::new(),
    }
}

fn counts(load: &Load) -> &'static str {
    match load.counting {
        Counting::EachHand => "each hand",
        Counting::One => "one, in one hand or both",
        Counting::EachSide => "each side",
        Counting::Stack => "on the stack",
        Counting::Total | Counting::Added | Counting::Unnumbered => {
            if load.rig.side().is_empty() {
                ""
            } else {
                "each side"
            }
        }
    }
}

fn bar_name(rig: &Rig, unit: MassUnit, numerals: Numerals) -> String {
    let print = |mass: &Mass| mass.print(unit, numerals);
    match rig {
        Rig::Bar { bar, bar_mass, collars, .. } if *collars > Mass::ZERO => {
            format!("{bar}, {} and collars {}", print(bar_mass), print(collars))
        }
        Rig::Bar { bar, bar_mass, .. } => format!("{bar}, {}", print(bar_mass)),
        Rig::Posts { machine, start, .. } if *start > Mass::ZERO => {
            format!("{machine}, starts at {}", print(start))
        }
        Rig::Posts { machine, .. } => machine.clone(),
        Rig::Dumbbells { rack, .. } => rack.clone(),
        Rig::Stack { stack, .. } => stack.clone(),
        Rig::Hung { .. } | Rig::Said | Rig::Body => String::new(),
    }
}

/// What stands in large type where no bar is drawn.
fn line(load: &Load, unit: MassUnit, numerals: Numerals) -> String {
    match &load.rig {
        Rig::Bar { .. } | Rig::Posts { .. } => String::new(),
        Rig::Dumbbells { rack, each, count } => {
            let each = each.print(unit, numerals);
            if *count > 1 {
                format!("{rack}: {count} × {each}")
            } else {
                format!("{rack}: {each}")
            }
        }
        Rig::Stack { stack, pin, add_ons } if add_ons.is_empty() => format!("{stack}: pin {pin}"),
        Rig::Stack { stack, pin, add_ons } => {
            format!("{stack}: pin {pin}, on top {}", labels(add_ons))
        }
        Rig::Hung { plates } if plates.is_empty() => String::new(),
        Rig::Hung { plates } => format!("Hang on {}", labels(plates)),
        Rig::Said => "As you said".to_owned(),
        // The total says so already.
        Rig::Body => String::new(),
    }
}

/// Labels of plates, without their unit where all share one.
pub(super) fn labels(plates: &[Plate]) -> String {
    numbers(plates).join(", ")
}

/// As [`labels`], one for each.
fn numbers(plates: &[Plate]) -> Vec<&str> {
    let parts: Vec<(&str, &str)> = plates
        .iter()
        .map(|plate| plate.label.split_once(' ').unwrap_or((plate.label.as_str(), "")))
        .collect();
    let one_unit = parts.windows(2).all(|pair| matches!(pair, [one, other] if one.1 == other.1));
    if one_unit {
        parts.iter().map(|(number, _)| *number).collect()
    } else {
        plates.iter().map(|plate| plate.label.as_str()).collect()
    }
}

/// What to do to what is on now. Plates inside stay; from the first that differs on they come off.
pub(super) fn change(on: Option<&Rig>, to: &Rig) -> String {
    let same_thing = match (on, to) {
        (Some(Rig::Bar { bar: a, .. }), Rig::Bar { bar: b, .. })
        | (Some(Rig::Posts { machine: a, .. }), Rig::Posts { machine: b, .. }) => a == b,
        (Some(Rig::Hung { .. }), Rig::Hung { .. }) => true,
        _ => false,
    };
    let side = match to {
        Rig::Bar { .. } => " each side",
        Rig::Posts { posts, .. } if *posts > 1 => " each side",
        _ => "",
    };
    let was = if same_thing { on.map(Rig::side).unwrap_or_default() } else { &[] };
    let is = to.side();
    let kept = was.iter().zip(is).take_while(|(a, b)| a == b).count();
    let off: Vec<Plate> = was.iter().skip(kept).rev().cloned().collect();
    let put: Vec<Plate> = is.iter().skip(kept).cloned().collect();
    let off = (!off.is_empty()).then(|| format!("take off {}", labels(&off)));
    let put = (!put.is_empty()).then(|| format!("put on {}", labels(&put)));
    let steps: Vec<String> = off.into_iter().chain(put).collect();
    if steps.is_empty() { String::new() } else { format!("{}{side}", steps.join(" · ")) }
}

/// A full-size plate is 450 mm across; a sleeve takes some 415 mm of plates. Tenths of a
/// millimetre.
const LARGEST: u32 = 4_500;
const SLEEVE: u32 = 4_150;

/// The plates of one side to scale. What a file does not say is drawn from the mass.
fn drawing(equipment: &Equipment, rig: &Rig) -> Vec<PlateDrawing> {
    let numbers = numbers(rig.side());
    rig.side()
        .iter()
        .zip(numbers)
        .map(|(plate, number)| {
            let known = equipment.plates.iter().find(|stock| stock.label == plate.label);
            let grams = u32::try_from(plate.mass.nanograms() / 1_000_000_000).unwrap_or(u32::MAX);
            let diameter = known
                .and_then(|stock| stock.diameter)
                .map_or_else(|| usual_diameter(grams), |length| u32::from(length.tenths()));
            let thickness = known
                .and_then(|stock| stock.thickness)
                .map_or_else(|| usual_thickness(grams), |length| u32::from(length.tenths()));
            let colour = known.and_then(|stock| stock.colour.as_deref()).map_or("", colour_of);
            PlateDrawing {
                label: number.to_owned(),
                colour: colour.to_owned(),
                ink: ink_on(colour).to_owned(),
                height: (diameter.saturating_mul(1000) / LARGEST).min(1000),
                width: (thickness.saturating_mul(1000) / SLEEVE).min(1000),
            }
        })
        .collect()
}

/// By mass, where the file says nothing: for drawing only.
fn usual_diameter(grams: u32) -> u32 {
    match grams {
        0..=600 => 1_350,
        601..=1_600 => 1_600,
        1_601..=3_000 => 1_900,
        3_001..=6_500 => 2_300,
        6_501..=12_000 => 3_250,
        12_001..=17_000 => 4_000,
        _ => 4_500,
    }
}

fn usual_thickness(grams: u32) -> u32 {
    match grams {
        0..=1_600 => 150,
        1_601..=3_000 => 180,
        3_001..=6_500 => 220,
        6_501..=17_000 => 280,
        17_001..=21_000 => 340,
        _ => 420,
    }
}

/// The colours that rule books name, as they are drawn here; any other is neutral.
fn colour_of(name: &str) -> &'static str {
    match name {
        "red" => "#B8342C",
        "blue" => "#2E5FA3",
        "yellow" => "#D9B02E",
        "green" => "#3B8150",
        "white" => "#EDEBE3",
        "black" => "#2B2F31",
        "grey" | "gray" => "#8A8F90",
        "orange" => "#C9742B",
        _ => "",
    }
}

/// Slate on light plates, chalk on dark ones.
fn ink_on(colour: &str) -> &'static str {
    match colour {
        "" | "#D9B02E" | "#EDEBE3" | "#8A8F90" | "#C9742B" => "#12181B",
        _ => "#F3F1E7",
    }
}
