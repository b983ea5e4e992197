//! The two gyms that come with the program, to start from.

use super::model::Equipment;
use crate::quantity::MassUnit;

const KILOGRAMS: &str = include_str!("builtin/kilograms.toml");
const POUNDS: &str = include_str!("builtin/pounds.toml");

/// The gyms that come with the program.
pub fn builtin() -> Vec<Equipment> {
    vec![builtin_in(MassUnit::Kilogram), builtin_in(MassUnit::Pound)]
}

/// The gym that comes with the program in a unit.
pub fn builtin_in(unit: MassUnit) -> Equipment {
    Equipment::read(builtin_text(unit)).expect("a test reads both files")
}

/// The files as they are written, for someone who wants to start from one.
pub fn builtin_text(unit: MassUnit) -> &'static str {
    match unit {
        MassUnit::Kilogram => KILOGRAMS,
        MassUnit::Pound => POUNDS,
    }
}
