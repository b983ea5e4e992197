//! Loads and what to put on for them.

use barwright_domain::equipment::changes::{Changes, Step};
use barwright_domain::equipment::{CannotMake, Made, Rig};
use barwright_domain::quantity::{Mass, MassUnit, Numerals};

use super::{named, words};
use crate::phrase::written::plates::{drawn, label, listed};

/// Why a load can't be made, and what to do.
pub fn cannot_make(why: &CannotMake, unit: MassUnit, numerals: Numerals) -> String {
    let mass = |mass: &Mass| words::mass(*mass, unit, numerals);
    match why {
        CannotMake::NotHere { implement } => {
            format!(
                "{}: gibt es hier nicht. Nenne etwas, das dieser Kraftraum hat.",
                named::thing(implement)
            )
        }
        CannotMake::NoFigures { implement } => {
            format!(
                "{}: Was die Stifte wiegen, weiß niemand. Richte dich nach dem Stift.",
                named::thing(implement)
            )
        }
        CannotMake::CarriesNothing { implement } => {
            format!("{}: trägt selbst kein Gewicht.", named::thing(implement))
        }
        CannotMake::TooLight { least } => {
            format!("So leicht geht es hier nicht: Das Leichteste ist {}.", mass(least))
        }
        CannotMake::TooHeavy { greatest } => {
            format!("So schwer geht es hier nicht: Das Schwerste ist {}.", mass(greatest))
        }
        CannotMake::NoFullSize => {
            "Es passt keine große Scheibe darauf, und ohne eine liegt die Stange zu tief.".into()
        }
        CannotMake::NotALoad => "Ein Gewicht ist null oder mehr und höchstens 5000 kg.".into(),
        CannotMake::TooManySets { most } => format!(
            "Höchstens {most} Sätze werden auf einmal \
                                                     geplant."
        ),
        CannotMake::TooManySums => {
            "Die Scheiben hier haben zu viele verschiedene Gewichte, um sie durchzusuchen. \
             Schreib gleiche mit einem Gewicht."
                .into()
        }
    }
}

/// A slack that makes no sense.
pub fn slack_below_nothing() -> String {
    "Der Spielraum ist null oder mehr: schreib 2 % oder 0 %.".into()
}

/// A load, what it is made with, and by how much it misses.
pub fn made(made: &Made, unit: MassUnit, numerals: Numerals) -> String {
    let mass = |mass: Mass| words::mass(mass, unit, numerals);
    let mut text = format!("{} · {}\n", mass(made.made), on(&made.rig, unit, numerals));
    if !made.rig.side().is_empty() {
        text.push_str(&format!("  {}\n", drawn(made.rig.side(), numerals)));
    }
    if made.off_by() != Mass::ZERO {
        let by = mass(made.off_by().distance(Mass::ZERO));
        let way = if made.off_by() > Mass::ZERO { "über" } else { "unter" };
        text.push_str(&format!("  {by} {way} den verlangten {}\n", mass(made.asked)));
    }
    text
}

/// What is on, in a line.
fn on(rig: &Rig, unit: MassUnit, numerals: Numerals) -> String {
    let mass = |mass: Mass| words::mass(mass, unit, numerals);
    match rig {
        Rig::Bar { bar, bar_mass, collars, side } => {
            let mut text = format!("{}, {}", named::gear(bar), mass(*bar_mass));
            if *collars != Mass::ZERO {
                text.push_str(&format!(", Verschlüsse {}", mass(*collars)));
            }
            text.push_str(if side.is_empty() { ", nichts darauf" } else { " · je Seite" });
            text
        }
        Rig::Posts { machine, start, posts, plates } => {
            let mut text = format!("{}, Startgewicht {}", named::gear(machine), mass(*start));
            text.push_str(match (plates.is_empty(), *posts) {
                (true, _) => ", nichts darauf",
                (false, 1) => " · auf dem Dorn",
                (false, _) => " · je Seite",
            });
            text
        }
        Rig::Dumbbells { rack, count: 1, .. } => format!("{}, eine", named::gear(rack)),
        Rig::Dumbbells { rack, .. } => format!("{}, eine je Hand", named::gear(rack)),
        Rig::Stack { stack, pin, add_ons } if add_ons.is_empty() => {
            format!("{}, Stift auf {}", named::gear(stack), label(pin, numerals))
        }
        Rig::Stack { stack, pin, add_ons } => {
            let (stack, pin) = (named::gear(stack), label(pin, numerals));
            format!("{stack}, Stift auf {pin}, {} obenauf", listed(add_ons, numerals))
        }
        Rig::Hung { .. } => "alles zusammen".into(),
        Rig::Said => "wie genannt".into(),
        Rig::Body => "nichts darauf".into(),
    }
}

/// What to change before each set, and how much handling that is.
pub fn changes(changes: &Changes, unit: MassUnit, numerals: Numerals) -> String {
    let mut text = String::new();
    for (at, step) in changes.steps.iter().enumerate() {
        text.push_str(&format!("{}. {}", at + 1, made(&step.made, unit, numerals)));
        text.push_str(&format!("  {}\n", change(step, numerals)));
    }
    let moves = words::count(changes.moves, "Scheibe", "Scheiben");
    text.push_str(&format!("{moves} je Seite bewegt"));
    if !changes.fewest {
        text.push_str("; bei so vielen Scheiben gibt es vielleicht einen kürzeren Weg");
    }
    text.push('\n');
    text
}

/// "10 kg abnehmen · 5 kg; 2,5 kg auflegen"
pub fn change(step: &Step, numerals: Numerals) -> String {
    match (step.off.is_empty(), step.on.is_empty()) {
        (true, true) => "nichts zu ändern".into(),
        (false, true) => format!("{} abnehmen", listed(&step.off, numerals)),
        (true, false) => format!("{} auflegen", listed(&step.on, numerals)),
        (false, false) => {
            format!(
                "{} abnehmen · {} auflegen",
                listed(&step.off, numerals),
                listed(&step.on, numerals)
            )
        }
    }
}
