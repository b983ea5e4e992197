//! The form of a gym.

use barwright_domain::equipment::Reach;
use barwright_domain::quantity::{Mass, MassUnit, Numerals};

use super::words;
use crate::phrase::written::figures;

/// Its title.
pub fn title(name: &str) -> String {
    format!("Gym: {name}")
}

/// What a key of the file is called, and what would do there.
pub fn field(key: &str, unit: MassUnit) -> (&'static str, String) {
    let mass = |kilograms: &str, pounds: &str| {
        let figure = match unit {
            MassUnit::Kilogram => kilograms,
            MassUnit::Pound => pounds,
        };
        format!("{figure} {}", unit.symbol())
    };
    match key {
        "name" => ("Name", "Boathouse".to_owned()),
        "unit" => ("Loads are shown in", unit.symbol().to_owned()),
        "kind" => ("Kind", "barbell".to_owned()),
        "mass" => ("Mass", mass("20", "45")),
        "weighs" => ("Weighed, one is really", mass("19.8", "44.5")),
        "collars" => ("Both collars", mass("5", "10")),
        "sleeve" => ("Room on one sleeve", "415 mm".to_owned()),
        "pairs" => ("Pairs", "2".to_owned()),
        "single" => ("One more without a partner", "1".to_owned()),
        "thickness" => ("Thickness", "27 mm".to_owned()),
        "diameter" => ("Diameter, 450 mm is full size", "450 mm".to_owned()),
        "colour" => ("Colour", "red".to_owned()),
        "from" => ("Lightest", mass("2", "5")),
        "to" => ("Heaviest", mass("30", "70")),
        "step" => ("Step", mass("2", "5")),
        "pins" => ("Pins", "14".to_owned()),
        "ratio" => ("At the hand, to what is on the stack", "1:2".to_owned()),
        "start" => ("With no plate on", mass("20", "45")),
        "posts" => ("Posts", "2".to_owned()),
        _ => ("Value", String::new()),
    }
}

/// What can be added to a list.
pub fn add_to(list: &str) -> &'static str {
    match list {
        "bar" => "Add a bar",
        "plate" => "Add a size of plate",
        "dumbbells" => "Add what is held in the hand",
        "stack" => "Add a stack with a pin",
        "machine" => "Add a machine that takes plates",
        "loads" => "Add a load",
        "add_ons" => "Add a weight that goes on top",
        _ => "Add",
    }
}

/// One more of another kind or size.
pub fn add_other(list: &str, unit: MassUnit) -> (&'static str, String) {
    let mass = match unit {
        MassUnit::Kilogram => "7.5 kg",
        MassUnit::Pound => "15 lb",
    };
    match list {
        "plate" => ("Another size", mass.to_owned()),
        "loads" | "add_ons" => (add_to(list), mass.to_owned()),
        "also" => ("Something else that is here", "slant-board".to_owned()),
        "bar" => ("Another kind", "safety-bar".to_owned()),
        _ => ("Another kind", "calf-machine".to_owned()),
    }
}

/// A small set of plates.
pub fn a_set() -> (&'static str, &'static str) {
    ("A small set", "Add a small set of plates, the sizes that are not here yet")
}

/// The one that is taken.
pub fn usual_one() -> (&'static str, &'static str) {
    ("The usual one", "Make it the one that is taken first")
}

/// How many pairs.
pub fn pairs(count: u32) -> String {
    match count {
        0 => "no pair".to_owned(),
        1 => "1 pair".to_owned(),
        count => format!("{count} pairs"),
    }
}

/// Pairs, as a field asks for them.
pub fn pairs_field(plate: &str) -> (String, &'static str) {
    (format!("Pairs of {plate}"), "2")
}

/// A plate that was weighed.
pub fn weighs(mass: Mass, unit: MassUnit, numerals: Numerals) -> String {
    format!("weighs {}", words::mass(mass, unit, numerals))
}

/// The most loads that are named as missing.
const NAMED: usize = 5;

/// From where to where, in which steps, and what can't be made.
pub fn reach(reach: &Reach, unit: MassUnit, numerals: Numerals) -> String {
    let mass = |mass: Mass| words::mass(mass, unit, numerals);
    if reach.count == 1 {
        return format!("{} and nothing else", mass(reach.least));
    }
    let span = format!("{} to {}", mass(reach.least), mass(reach.most));
    let Some(step) = reach.step else {
        return format!("{span}, {} loads, not evenly apart", reach.count);
    };
    let every = format!("{span}, every {}", mass(step));
    if reach.missing.is_empty() {
        return every;
    }
    let figures = reach.missing.iter().take(NAMED).map(|load| load.figure(unit, numerals));
    let named = figures::in_a_row(&figures.collect::<Vec<_>>());
    let more = reach.missing.len().saturating_sub(NAMED);
    let more = if more > 0 { format!(" and {more} more") } else { String::new() };
    format!("{every}; {named}{more} can't be made")
}

/// More than is listed.
pub fn reach_unlisted() -> &'static str {
    "so many loads that they are not listed"
}

/// On top of a stack.
pub fn add_on(mass: &str) -> String {
    format!("{mass} on top")
}

/// Pins without loads.
pub fn pins(count: usize) -> String {
    format!("{}, no loads known", words::count(count, "pin", "pins"))
}

/// How a stack is set.
pub fn by(pins: bool) -> &'static str {
    if pins { "Numbers without loads" } else { "Loads are known" }
}

/// One or two of each.
pub fn flag(key: &str, on: bool) -> &'static str {
    match (key, on) {
        ("pairs", true) => "Two of each",
        ("pairs", false) => "One of each",
        (_, true) => "Yes",
        (_, false) => "No",
    }
}

/// A support.
pub fn support(slug: &str) -> String {
    words::sentence_case(&match slug {
        "pull-up-bar" => "pull-up bar".to_owned(),
        "band" => "bands".to_owned(),
        other => other.replace('-', " "),
    })
}

/// A word of the file that a line is of: English as it stands there.
pub fn file_word(_: &str, word: &str) -> String {
    word.to_owned()
}

/// Here or not.
pub fn here(here: bool) -> &'static str {
    if here { "here" } else { "not here" }
}

/// Said to be here, or not.
pub fn toggle(here: bool, what: &str) -> (&'static str, String) {
    if here {
        ("Not here", format!("{what} is not here"))
    } else {
        ("Here", format!("{what} is here"))
    }
}
