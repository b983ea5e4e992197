//! Loads and what to put on for them.

use barwright_domain::equipment::changes::{Changes, Step};
use barwright_domain::equipment::{CannotMake, Made, Rig};
use barwright_domain::quantity::{Mass, MassUnit, Numerals};

use super::words;
use crate::phrase::written::plates::{drawn, label, listed};

/// Why a load can't be made, and what to do.
pub fn cannot_make(why: &CannotMake, unit: MassUnit, numerals: Numerals) -> String {
    let mass = |mass: &Mass| words::mass(*mass, unit, numerals);
    match why {
        CannotMake::NotHere { implement } => {
            format!("There is no {implement} here. Name something that this gym has.")
        }
        CannotMake::NoFigures { implement } => {
            format!("Nobody knows what the pins of the {implement} weigh. Go by the pin.")
        }
        CannotMake::CarriesNothing { implement } => {
            format!("The {implement} carries no load of its own.")
        }
        CannotMake::TooLight { least } => {
            format!("Nothing here is so light: the least is {}.", mass(least))
        }
        CannotMake::TooHeavy { greatest } => {
            format!("Nothing here is so heavy: the most is {}.", mass(greatest))
        }
        CannotMake::NoFullSize => {
            "No full-size plate goes on, and without one the bar lies too low.".into()
        }
        CannotMake::NotALoad => "A load is nothing or more, and at most 5000 kg.".into(),
        CannotMake::TooManySets { most } => format!("At most {most} sets are planned at once."),
        CannotMake::TooManySums => {
            "The plates here have too many different masses to search. Write those that are alike \
             with one mass."
                .into()
        }
    }
}

/// A slack that makes no sense.
pub fn slack_below_nothing() -> String {
    "Slack is nothing or more: write 2.5 % or 0 %.".into()
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
        let way = if made.off_by() > Mass::ZERO { "over" } else { "under" };
        text.push_str(&format!("  {by} {way} the {} asked for\n", mass(made.asked)));
    }
    text
}

/// What is on, in a line.
fn on(rig: &Rig, unit: MassUnit, numerals: Numerals) -> String {
    let mass = |mass: Mass| words::mass(mass, unit, numerals);
    match rig {
        Rig::Bar { bar, bar_mass, collars, side } => {
            let mut text = format!("{bar}, {}", mass(*bar_mass));
            if *collars != Mass::ZERO {
                text.push_str(&format!(", collars {}", mass(*collars)));
            }
            text.push_str(if side.is_empty() { ", nothing on it" } else { " · each side" });
            text
        }
        Rig::Posts { machine, start, posts, plates } => {
            let mut text = format!("{machine}, {} to start with", mass(*start));
            text.push_str(match (plates.is_empty(), *posts) {
                (true, _) => ", nothing on it",
                (false, 1) => " · on the post",
                (false, _) => " · each side",
            });
            text
        }
        Rig::Dumbbells { rack, count: 1, .. } => format!("{rack}, one"),
        Rig::Dumbbells { rack, .. } => format!("{rack}, one in each hand"),
        Rig::Stack { stack, pin, add_ons } if add_ons.is_empty() => {
            format!("{stack}, pin at {}", label(pin, numerals))
        }
        Rig::Stack { stack, pin, add_ons } => {
            let pin = label(pin, numerals);
            format!("{stack}, pin at {pin}, {} on top", listed(add_ons, numerals))
        }
        Rig::Hung { .. } => "all together".into(),
        Rig::Said => "as named".into(),
        Rig::Body => "nothing on".into(),
    }
}

/// What to change before each set, and how much handling that is.
pub fn changes(changes: &Changes, unit: MassUnit, numerals: Numerals) -> String {
    let mut text = String::new();
    for (at, step) in changes.steps.iter().enumerate() {
        text.push_str(&format!("{}. {}", at + 1, made(&step.made, unit, numerals)));
        text.push_str(&format!("  {}\n", change(step, numerals)));
    }
    let moves = words::count(changes.moves, "plate", "plates");
    text.push_str(&format!("{moves} moved each side"));
    if !changes.fewest {
        text.push_str("; with so many plates there may be a shorter way");
    }
    text.push('\n');
    text
}

/// "take off 10 kg · put on 5 kg, 2.5 kg"
pub fn change(step: &Step, numerals: Numerals) -> String {
    match (step.off.is_empty(), step.on.is_empty()) {
        (true, true) => "nothing to change".into(),
        (false, true) => format!("take off {}", listed(&step.off, numerals)),
        (true, false) => format!("put on {}", listed(&step.on, numerals)),
        (false, false) => {
            format!(
                "take off {} · put on {}",
                listed(&step.off, numerals),
                listed(&step.on, numerals)
            )
        }
    }
}
