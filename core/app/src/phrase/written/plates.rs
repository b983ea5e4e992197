//! Plates by their labels.

use barwright_domain::equipment::Plate;

/// As [`labels`], one for each.
pub fn numbers(plates: &[Plate]) -> Vec<String> {
    let parts: Vec<(&str, &str)> = plates
        .iter()
        .map(|plate| plate.label.split_once(' ').unwrap_or((plate.label.as_str(), "")))
        .collect();
    let one_unit = parts.windows(2).all(|pair| matches!(pair, [one, other] if one.1 == other.1));
    if one_unit {
        parts.iter().map(|(number, _)| (*number).to_owned()).collect()
    } else {
        plates.iter().map(|plate| plate.label.clone()).collect()
    }
}

/// Labels of plates, without their unit where all share one.
pub fn labels(plates: &[Plate]) -> String {
    numbers(plates).join(", ")
}

/// One end's plates from the inside out: `─┤ 25 kg │ 10 kg ├─`.
pub fn drawn(side: &[Plate]) -> String {
    let labels: Vec<&str> = side.iter().map(|plate| plate.label.as_str()).collect();
    format!("──┤ {} ├──", labels.join(" │ "))
}

pub fn listed(plates: &[Plate]) -> String {
    let labels: Vec<&str> = plates.iter().map(|plate| plate.label.as_str()).collect();
    labels.join(", ")
}
