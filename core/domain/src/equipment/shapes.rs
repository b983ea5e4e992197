//! The keys of the equipment file.

use super::bounds;
use super::model::Ratio;
use crate::quantity::Kind;
use crate::text::{Holds, Key, Shape};

use Holds::{Any, Flag, List, Quantity, Table, Text, Whole, Word};

const NAME: Holds = Text(bounds::NAME);
const MASS: Holds = Quantity(Kind::Mass);
const LENGTH: Holds = Quantity(Kind::Length);

/// The whole file.
pub static EQUIPMENT: Shape = Shape {
    name: "equipment",
    keys: &[
        Key::may("name", NAME),
        Key::may("unit", Word(UNITS)),
        Key::may("also", List(&NAME, bounds::SUPPORTS)),
        Key::may("bar", List(&Table(&BAR), bounds::OF_A_KIND)),
        Key::may("plate", List(&Table(&PLATE), bounds::PLATES)),
        Key::may("dumbbells", List(&Table(&DUMBBELLS), bounds::OF_A_KIND)),
        Key::may("stack", List(&Table(&STACK), bounds::OF_A_KIND)),
        Key::may("machine", List(&Table(&MACHINE), bounds::OF_A_KIND)),
    ],
};

/// One bar.
pub(super) static BAR: Shape = Shape {
    name: "bar",
    keys: &[
        Key::must("name", NAME),
        Key::may("kind", NAME),
        Key::must("mass", MASS),
        Key::may("collars", MASS),
        Key::may("sleeve", LENGTH),
    ],
};

/// One size of plate.
pub(super) static PLATE: Shape = Shape {
    name: "plate",
    keys: &[
        Key::must("mass", MASS),
        Key::may("weighs", MASS),
        Key::must("pairs", Whole(0, bounds::PAIRS as i64)),
        Key::may("single", Whole(0, 1)),
        Key::may("thickness", LENGTH),
        Key::may("diameter", LENGTH),
        Key::may("colour", NAME),
    ],
};

/// One rack.
pub(super) static DUMBBELLS: Shape = Shape {
    name: "dumbbells",
    keys: &[
        Key::must("name", NAME),
        Key::may("kind", NAME),
        Key::may("pairs", Flag),
        Key::may("loads", List(&MASS, bounds::STEPS)),
        Key::may("from", MASS),
        Key::may("to", MASS),
        Key::may("step", MASS),
    ],
};

/// One stack.
pub(super) static STACK: Shape = Shape {
    name: "stack",
    keys: &[
        Key::must("name", NAME),
        Key::may("kind", NAME),
        Key::may("loads", List(&MASS, bounds::STEPS)),
        Key::may("from", MASS),
        Key::may("to", MASS),
        Key::may("step", MASS),
        Key::may("pins", Any(&[Whole(1, bounds::STEPS as i64), List(&NAME, bounds::STEPS)])),
        Key::may("add_ons", List(&MASS, bounds::ADD_ONS)),
        Key::may("ratio", Word(RATIOS)),
    ],
};

/// One plate-loaded machine.
pub(super) static MACHINE: Shape = Shape {
    name: "machine",
    keys: &[
        Key::must("name", NAME),
        Key::may("kind", NAME),
        Key::may("start", MASS),
        Key::may("posts", Whole(1, 2)),
        Key::may("sleeve", LENGTH),
    ],
};

/// Units.
pub(super) const UNITS: &[&str] = &["kg", "lb"];

/// Ratios, load at the hand to load on the stack.
pub(super) const RATIOS: &[&str] = &["1:1", "1:2", "1:3", "1:4", "2:1"];

/// The ratios by their place in [`RATIOS`].
pub(super) const RATIO_VALUES: [Ratio; 5] = [
    Ratio { hand: 1, stack: 1 },
    Ratio { hand: 1, stack: 2 },
    Ratio { hand: 1, stack: 3 },
    Ratio { hand: 1, stack: 4 },
    Ratio { hand: 2, stack: 1 },
];
