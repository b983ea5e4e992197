//! Words of the bar, or what stands for it.

use barwright_domain::catalogue::Counting;
use barwright_domain::equipment::{Plate, Rig};
use barwright_domain::quantity::{Mass, MassUnit, Numerals};
use barwright_domain::session::Load;

use super::words;
use crate::phrase::written::plates::label;
pub use crate::phrase::written::plates::{labels, numbers};

/// The load in large type.
pub fn total(load: &Load, unit: MassUnit, numerals: Numerals) -> String {
    words::sentence_case(&in_line(load, unit, numerals))
}

/// The load within a line.
pub(super) fn in_line(load: &Load, unit: MassUnit, numerals: Numerals) -> String {
    let print = |mass: Mass| mass.print(unit, numerals);
    if let Some(set_up) = &load.set_up {
        return match load.figure {
            Some(figure) if figure > Mass::ZERO => format!("{} + {set_up}", print(figure)),
            _ => set_up.clone(),
        };
    }
    match (load.figure, &load.rig) {
        (Some(figure), _) => words::load(figure, load.counting, unit, numerals),
        (None, Rig::Stack { pin, .. }) => format!("pin {}", label(pin, numerals)),
        (None, _) => String::new(),
    }
}

/// What the figure counts: "each side"; empty where it is plain. `geared`: a cable whose handle feels
/// another load than the stack.
pub fn counts(load: &Load, geared: bool) -> &'static str {
    match load.counting {
        Counting::Stack if geared => "at the handle",
        Counting::EachHand => "each hand",
        Counting::One => "one, in one or both hands",
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

/// "94.9 kg with bodyweight".
pub fn in_all(moved: Mass, unit: MassUnit, numerals: Numerals) -> String {
    format!("{} with bodyweight", words::tenth(moved, unit, numerals))
}

/// The bar's name and mass: "Long bar, 20 kg and collars 5 kg".
pub fn name(rig: &Rig, unit: MassUnit, numerals: Numerals) -> String {
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
pub fn line(load: &Load, unit: MassUnit, numerals: Numerals) -> String {
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
        Rig::Stack { stack, pin, add_ons } if add_ons.is_empty() => {
            format!("{stack}: pin {}", label(pin, numerals))
        }
        Rig::Stack { stack, pin, add_ons } => {
            let pin = label(pin, numerals);
            format!("{stack}: pin {pin}, on top {}", labels(add_ons, numerals))
        }
        Rig::Hung { plates } if plates.is_empty() => String::new(),
        Rig::Hung { plates } => format!("Hang on {}", labels(plates, numerals)),
        // The total says so already.
        Rig::Said | Rig::Body => String::new(),
    }
}

/// Why a stack's pin says another number than the set: "Pin 40 kg is 20 kg at the handle: this cable
/// gives 1 of 2."
pub fn geared(
    load: &Load,
    (hand, stack): (u8, u8),
    unit: MassUnit,
    numerals: Numerals,
) -> Option<String> {
    let Rig::Stack { pin, add_ons, .. } = &load.rig else { return None };
    let top = if add_ons.is_empty() {
        String::new()
    } else {
        format!(" with {} on top", labels(add_ons, numerals))
    };
    let (pin, here) = (label(pin, numerals), in_line(load, unit, numerals));
    Some(format!(
        "Pin {pin}{top} is {here} at the handle: of {stack} on the stack this cable gives {hand}."
    ))
}

/// What stands in the place of a load that the lifter is to find.
pub fn your_choice() -> &'static str {
    "Choose a load"
}

/// The key that says what is really on.
pub fn holds() -> (&'static str, &'static str) {
    ("The bar holds…", "Correct what is on the bar")
}

/// What to do to what is on: "take off 10 · put on 5, 2.5 each side"; empty for nothing.
pub fn change(off: &[Plate], on: &[Plate], each_side: bool, numerals: Numerals) -> String {
    let off = (!off.is_empty()).then(|| format!("take off {}", labels(off, numerals)));
    let on = (!on.is_empty()).then(|| format!("put on {}", labels(on, numerals)));
    let steps: Vec<String> = off.into_iter().chain(on).collect();
    let side = if each_side { " each side" } else { "" };
    if steps.is_empty() { String::new() } else { format!("{}{side}", steps.join(" · ")) }
}
