//! Writing a gym's equipment as TOML that reads back the same.

use std::fmt::{self, Write};

use super::model::{Bar, Dumbbells, Equipment, Machine, PlateStock, Ratio, Stack};
use crate::quantity::{Length, Mass, MassUnit, Numerals};
use crate::text::quoted;

impl Equipment {
    /// The equipment as a TOML file.
    pub fn write(&self) -> String {
        let mut out = String::new();
        // Writing to a text can't fail.
        let _ = self.write_to(&mut out);
        out
    }

    fn write_to(&self, out: &mut String) -> fmt::Result {
        let unit = self.unit;
        writeln!(out, "name = {}", quoted(&self.name))?;
        writeln!(out, "unit = {}", quoted(unit.symbol()))?;
        if !self.also.is_empty() {
            writeln!(out, "also = {}", list(self.also.iter().map(String::as_str)))?;
        }
        for bar in &self.bars {
            bar.write_to(out, unit)?;
        }
        for plates in &self.plates {
            plates.write_to(out)?;
        }
        for rack in &self.dumbbells {
            rack.write_to(out, unit)?;
        }
        for stack in &self.stacks {
            stack.write_to(out)?;
        }
        for machine in &self.machines {
            machine.write_to(out, unit)?;
        }
        Ok(())
    }
}

impl Bar {
    fn write_to(&self, out: &mut String, unit: MassUnit) -> fmt::Result {
        head(out, "bar", &self.name, &self.kind)?;
        writeln!(out, "mass = {}", quoted(exactly(self.mass, unit)))?;
        if self.collars != Mass::ZERO {
            writeln!(out, "collars = {}", quoted(exactly(self.collars, unit)))?;
        }
        length(out, "sleeve", self.sleeve)
    }
}

impl PlateStock {
    fn write_to(&self, out: &mut String) -> fmt::Result {
        writeln!(out, "\n[[plate]]")?;
        writeln!(out, "mass = {}", quoted(&self.label))?;
        let stamped = Mass::read_as_written(&self.label, Numerals::Point).ok();
        if let Some((_, unit)) = stamped.filter(|(stamped, _)| *stamped != self.mass) {
            writeln!(out, "weighs = {}", quoted(exactly(self.mass, unit)))?;
        }
        writeln!(out, "pairs = {}", self.pairs)?;
        if self.single > 0 {
            writeln!(out, "single = {}", self.single)?;
        }
        length(out, "thickness", self.thickness)?;
        length(out, "diameter", self.diameter)?;
        match &self.colour {
            Some(colour) => writeln!(out, "colour = {}", quoted(colour)),
            None => Ok(()),
        }
    }
}

impl Dumbbells {
    fn write_to(&self, out: &mut String, unit: MassUnit) -> fmt::Result {
        head(out, "dumbbells", &self.name, &self.kind)?;
        if !self.pairs {
            writeln!(out, "pairs = false")?;
        }
        let loads: Vec<String> = self.loads.iter().map(|load| exactly(*load, unit)).collect();
        writeln!(out, "loads = {}", list(loads.iter().map(String::as_str)))
    }
}

impl Stack {
    fn write_to(&self, out: &mut String) -> fmt::Result {
        head(out, "stack", &self.name, &self.kind)?;
        let key = if self.is_numbered() { "loads" } else { "pins" };
        writeln!(out, "{key} = {}", list(self.pins.iter().map(|pin| pin.label.as_str())))?;
        if !self.add_ons.is_empty() {
            let add_ons = self.add_ons.iter().flat_map(|add_on| {
                std::iter::repeat_n(add_on.label.as_str(), usize::from(add_on.count))
            });
            writeln!(out, "add_ons = {}", list(add_ons))?;
        }
        if self.ratio != Ratio::default() {
            writeln!(out, "ratio = \"{}:{}\"", self.ratio.hand, self.ratio.stack)?;
        }
        Ok(())
    }
}

impl Machine {
    fn write_to(&self, out: &mut String, unit: MassUnit) -> fmt::Result {
        head(out, "machine", &self.name, &self.kind)?;
        writeln!(out, "start = {}", quoted(exactly(self.start, unit)))?;
        writeln!(out, "posts = {}", self.posts)?;
        length(out, "sleeve", self.sleeve)
    }
}

fn head(out: &mut String, table: &str, name: &str, kind: &str) -> fmt::Result {
    writeln!(out, "\n[[{table}]]\nname = {}\nkind = {}", quoted(name), quoted(kind))
}

fn length(out: &mut String, key: &str, length: Option<Length>) -> fmt::Result {
    match length {
        Some(length) => writeln!(out, "{key} = {}", quoted(length.print(Numerals::Point))),
        None => Ok(()),
    }
}

fn list<'a>(texts: impl Iterator<Item = &'a str>) -> String {
    let texts: Vec<String> = texts.map(quoted).collect();
    format!("[{}]", texts.join(", "))
}

/// A mass in a unit where that is exact, in the other where that is, in kilograms otherwise.
pub(crate) fn exactly(mass: Mass, unit: MassUnit) -> String {
    match [unit, MassUnit::Kilogram, MassUnit::Pound].into_iter().find(|u| mass.prints_exactly(*u))
    {
        Some(unit) => mass.print(unit, Numerals::Point),
        None => format!("{} kg", mass.kilograms()),
    }
}
