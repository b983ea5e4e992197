//! The two gyms that come with the program, to start from.

use std::sync::LazyLock;

use super::model::Equipment;
use crate::quantity::MassUnit;

const KILOGRAMS: &str = include_str!("builtin/kilograms.toml");
const POUNDS: &str = include_str!("builtin/pounds.toml");

/// Read once: they are asked for with every screen that names a gym.
static GYMS: LazyLock<[Equipment; 2]> =
    LazyLock::new(|| [MassUnit::Kilogram, MassUnit::Pound].map(read));

fn read(unit: MassUnit) -> Equipment {
    Equipment::read(builtin_text(unit)).expect("a test reads both files")
}

/// The gyms that come with the program.
pub fn builtin() -> &'static [Equipment] {
    GYMS.as_slice()
}

/// The gym that comes with the program in a unit.
pub fn builtin_in(unit: MassUnit) -> Equipment {
    let [kilograms, pounds] = &*GYMS;
    match unit {
        MassUnit::Kilogram => kilograms.clone(),
        MassUnit::Pound => pounds.clone(),
    }
}

/// The files as they are written, for someone who wants to start from one.
pub fn builtin_text(unit: MassUnit) -> &'static str {
    match unit {
        MassUnit::Kilogram => KILOGRAMS,
        MassUnit::Pound => POUNDS,
    }
}
