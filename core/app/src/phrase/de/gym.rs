//! Words of what a gym has.

use barwright_domain::equipment::{Bar, Dumbbells, Machine, PlateStock, Stack};
use barwright_domain::quantity::{Mass, MassUnit, Numerals};

use super::{named, words};
use crate::phrase::written::plates::label;

/// A gym that comes with the program, by its English name.
pub fn built_in(name: &str) -> String {
    named::gear(name).to_owned()
}

/// What loads are in.
pub fn subtitle(unit: MassUnit) -> String {
    format!("Gewichte in {}", unit.symbol())
}

/// A heading.
pub fn bars() -> &'static str {
    "Stangen"
}

/// A heading.
pub fn plates() -> &'static str {
    "Scheiben"
}

/// A heading.
pub fn held() -> &'static str {
    "In der Hand gehalten"
}

/// A heading.
pub fn stacks() -> &'static str {
    "Gewichtsblöcke"
}

/// A heading.
pub fn machines() -> &'static str {
    "Maschinen"
}

/// A heading.
pub fn also() -> &'static str {
    "Außerdem"
}

/// "Langhantelstange · 20 kg · Verschlüsse 5 kg".
pub fn bar(bar: &Bar, unit: MassUnit, numerals: Numerals) -> String {
    let print = |mass: Mass| mass.print(unit, numerals);
    let collars = if bar.collars > Mass::ZERO {
        format!(" · Verschlüsse {}", print(bar.collars))
    } else {
        String::new()
    };
    format!("{} · {}{collars}", named::gear(&bar.name), print(bar.mass))
}

/// "25 kg · 4 Paare und 1 einzeln".
pub fn plate(plate: &PlateStock, numerals: Numerals) -> String {
    let pairs = words::count(usize::from(plate.pairs), "Paar", "Paare");
    let single =
        if plate.single > 0 { format!(" und {} einzeln", plate.single) } else { String::new() };
    format!("{} · {pairs}{single}", label(&plate.label, numerals))
}

/// "Kurzhanteln · 2 kg bis 40 kg · 20 Gewichte".
pub fn rack(rack: &Dumbbells, unit: MassUnit, numerals: Numerals) -> String {
    let print = |mass: Mass| mass.print(unit, numerals);
    let ends = rack.loads.first().zip(rack.loads.last());
    let span = ends
        .map(|(least, most)| format!(" · {} bis {}", print(*least), print(*most)))
        .unwrap_or_default();
    let count = words::count(rack.loads.len(), "Gewicht", "Gewichte");
    format!("{}{span} · {count}", named::gear(&rack.name))
}

/// "Latzug · Stift 1 bis 20".
pub fn stack(stack: &Stack, numerals: Numerals) -> String {
    let stamped = |text: &str| label(text, numerals);
    let ends = stack.pins.first().zip(stack.pins.last());
    let span = ends
        .map(|(least, most)| {
            format!(" · Stift {} bis {}", stamped(&least.label), stamped(&most.label))
        })
        .unwrap_or_default();
    format!("{}{span}", named::gear(&stack.name))
}

/// "Beinpresse · Startgewicht 45 kg".
pub fn machine(machine: &Machine, unit: MassUnit, numerals: Numerals) -> String {
    format!("{} · Startgewicht {}", named::gear(&machine.name), machine.start.print(unit, numerals))
}

/// What else it has: "Bank, Rack".
pub fn others(also: &[String]) -> String {
    named::things(also)
}

/// A key that chooses a gym: its label, and as it is read aloud.
pub fn choose(name: &str) -> (String, String) {
    (built_in(name), format!("In „{}“ trainieren", named::gear(name)))
}

/// A key that shows the gym that is being made.
pub fn go_on() -> (&'static str, &'static str) {
    ("Weiter am Entwurf", "Den Kraftraum zeigen, der in Arbeit ist")
}

/// A key: this gym is put right.
pub fn mend(name: &str) -> (String, String) {
    ("Ändern".to_owned(), format!("Ändern, was es in „{}“ gibt", named::gear(name)))
}

/// A key: one like it.
pub fn copy(name: &str) -> (String, String) {
    (
        "Kopieren".to_owned(),
        format!("Einen Kraftraum als Kopie von „{}“ beginnen", named::gear(name)),
    )
}

/// A key: a gym that has what most have.
pub fn usual(unit: MassUnit) -> (String, String) {
    let symbol = unit.symbol();
    (
        format!("Neuer Raum, voll, {symbol}"),
        format!(
            "Einen Kraftraum mit allem Üblichen beginnen, \
                                                     in {symbol}"
        ),
    )
}

/// A key: a gym with nothing in it.
pub fn empty(unit: MassUnit) -> (String, String) {
    let symbol = unit.symbol();
    (
        format!("Neuer Raum, leer, {symbol}"),
        format!(
            "Einen Kraftraum mit nichts darin beginnen, \
                                                     in {symbol}"
        ),
    )
}
