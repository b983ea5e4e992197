//! Words of what a gym has.

use barwright_domain::equipment::{Bar, Dumbbells, Machine, PlateStock, Stack};
use barwright_domain::quantity::{Mass, MassUnit, Numerals};

use super::words;
use crate::phrase::written::plates::label;

/// A gym that comes with the program, by its English name.
pub fn built_in(name: &str) -> String {
    name.to_owned()
}

/// What loads are in.
pub fn subtitle(unit: MassUnit) -> String {
    format!("loads in {}", unit.symbol())
}

/// A heading.
pub fn bars() -> &'static str {
    "Bars"
}

/// A heading.
pub fn plates() -> &'static str {
    "Plates"
}

/// A heading.
pub fn held() -> &'static str {
    "Held in the hand"
}

/// A heading.
pub fn stacks() -> &'static str {
    "Stacks"
}

/// A heading.
pub fn machines() -> &'static str {
    "Machines"
}

/// A heading.
pub fn also() -> &'static str {
    "Also"
}

/// "Long bar · 20 kg · collars 5 kg".
pub fn bar(bar: &Bar, unit: MassUnit, numerals: Numerals) -> String {
    let print = |mass: Mass| mass.print(unit, numerals);
    let collars = if bar.collars > Mass::ZERO {
        format!(" · collars {}", print(bar.collars))
    } else {
        String::new()
    };
    format!("{} · {}{collars}", bar.name, print(bar.mass))
}

/// "25 kg · 4 pairs and 1 single".
pub fn plate(plate: &PlateStock, numerals: Numerals) -> String {
    let pairs = words::count(usize::from(plate.pairs), "pair", "pairs");
    let single =
        if plate.single > 0 { format!(" and {} single", plate.single) } else { String::new() };
    format!("{} · {pairs}{single}", label(&plate.label, numerals))
}

/// "Dumbbells · 2 kg to 40 kg · 20 loads".
pub fn rack(rack: &Dumbbells, unit: MassUnit, numerals: Numerals) -> String {
    let print = |mass: Mass| mass.print(unit, numerals);
    let ends = rack.loads.first().zip(rack.loads.last());
    let span = ends
        .map(|(least, most)| format!(" · {} to {}", print(*least), print(*most)))
        .unwrap_or_default();
    let count = words::count(rack.loads.len(), "load", "loads");
    format!("{}{span} · {count}", rack.name)
}

/// "Pulldown · pin 1 to 20".
pub fn stack(stack: &Stack, numerals: Numerals) -> String {
    let stamped = |text: &str| label(text, numerals);
    let ends = stack.pins.first().zip(stack.pins.last());
    let span = ends
        .map(|(least, most)| {
            format!(" · pin {} to {}", stamped(&least.label), stamped(&most.label))
        })
        .unwrap_or_default();
    format!("{}{span}", stack.name)
}

/// "Leg press · starts at 45 kg".
pub fn machine(machine: &Machine, unit: MassUnit, numerals: Numerals) -> String {
    format!("{} · starts at {}", machine.name, machine.start.print(unit, numerals))
}

/// What else it has: "bench, rack".
pub fn others(also: &[String]) -> String {
    also.join(", ").replace('-', " ")
}

/// A key that chooses a gym: its label, and as it is read aloud.
pub fn choose(name: &str) -> (String, String) {
    (name.to_owned(), format!("Train in {name}"))
}

/// A key that shows the gym that is being made.
pub fn go_on() -> (&'static str, &'static str) {
    ("Go on making a gym", "Show the gym that is being made")
}

/// A key: this gym is put right.
pub fn mend(name: &str) -> (String, String) {
    ("Change it".to_owned(), format!("Change what {name} has"))
}

/// A key: one like it.
pub fn copy(name: &str) -> (String, String) {
    ("Copy it".to_owned(), format!("Begin a gym as a copy of {name}"))
}

/// A key: a gym that has what most have.
pub fn usual(unit: MassUnit) -> (String, String) {
    let symbol = unit.symbol();
    (format!("New gym, full, {symbol}"), format!("Begin a gym with all that is usual, in {symbol}"))
}

/// A key: a gym with nothing in it.
pub fn empty(unit: MassUnit) -> (String, String) {
    let symbol = unit.symbol();
    (format!("New gym, empty, {symbol}"), format!("Begin a gym with nothing in it, in {symbol}"))
}
