//! Plates by their labels.

use barwright_domain::equipment::Plate;
use barwright_domain::quantity::{Mass, MassUnit, Numerals};

use super::figures::in_a_row;

/// What a gym's file says stands on a plate or beside a pin, with its number as this lifter writes
/// one: "1,25 kg" for "1.25 kg". Only a number, with its unit or without; a name stays as written.
pub fn label(written: &str, numerals: Numerals) -> String {
    let reads = |text: &str| Mass::read(text, Numerals::Point).is_ok();
    if reads(written) || reads(&format!("{written} {}", MassUnit::Kilogram.symbol())) {
        written.replacen(Numerals::Point.mark(), &numerals.mark().to_string(), 1)
    } else {
        written.to_owned()
    }
}

/// As [`labels`], one for each.
pub fn numbers(plates: &[Plate], numerals: Numerals) -> Vec<String> {
    let all = each(plates, numerals);
    let parts: Vec<(&str, &str)> =
        all.iter().map(|label| label.split_once(' ').unwrap_or((label.as_str(), ""))).collect();
    let one_unit = parts.windows(2).all(|pair| matches!(pair, [one, other] if one.1 == other.1));
    if one_unit { parts.iter().map(|(number, _)| (*number).to_owned()).collect() } else { all }
}

/// Labels of plates, without their unit where all share one.
pub fn labels(plates: &[Plate], numerals: Numerals) -> String {
    in_a_row(&numbers(plates, numerals))
}

/// One end's plates from the inside out: `─┤ 25 kg │ 10 kg ├─`.
pub fn drawn(side: &[Plate], numerals: Numerals) -> String {
    format!("──┤ {} ├──", each(side, numerals).join(" │ "))
}

/// Labels of plates, each with its unit.
pub fn listed(plates: &[Plate], numerals: Numerals) -> String {
    in_a_row(&each(plates, numerals))
}

fn each(plates: &[Plate], numerals: Numerals) -> Vec<String> {
    plates.iter().map(|plate| label(&plate.label, numerals)).collect()
}
