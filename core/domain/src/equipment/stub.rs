//! Stands in until loading lands.
use super::Equipment;
use crate::quantity::MassUnit;
use crate::text::Fault;

impl Equipment {
    /// stub
    pub fn read(_text: &str) -> Result<Equipment, Vec<Fault>> {
        Ok(builtin_in(MassUnit::Kilogram))
    }
}
/// stub
pub fn builtin() -> Vec<Equipment> {
    vec![builtin_in(MassUnit::Kilogram)]
}
/// stub
pub fn builtin_in(unit: MassUnit) -> Equipment {
    Equipment {
        name: "A gym".into(),
        unit,
        bars: vec![],
        plates: vec![],
        dumbbells: vec![],
        stacks: vec![],
        machines: vec![],
        also: vec![],
    }
}
