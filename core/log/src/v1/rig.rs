//! What is on.

use barwright_domain::equipment;
#[cfg(any(test, feature = "schema"))]
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::quantity::Mass;
use crate::mirror::is_default;

/// One plate, as the equipment's file writes it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(any(test, feature = "schema"), derive(JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Plate {
    /// `25 kg`, `45 lb`.
    pub label: String,
    /// Its mass.
    pub mass: Mass,
}

mirror!(struct Plate = equipment::Plate { label, mass });

/// What a lifter moves, as it stands now: recorded with every set.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(any(test, feature = "schema"), derive(JsonSchema))]
#[serde(tag = "on", rename_all = "snake_case", deny_unknown_fields)]
pub enum Rig {
    /// A bar with the same plates on both ends.
    Bar {
        /// The bar's name.
        bar: String,
        /// The bar alone.
        bar_mass: Mass,
        /// Both collars together; nothing where there are none.
        #[serde(default, skip_serializing_if = "is_default")]
        collars: Mass,
        /// One end's plates from the inside out.
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        side: Vec<Plate>,
    },
    /// A plate-loaded machine, every post alike.
    Posts {
        /// The machine's name.
        machine: String,
        /// Its load with no plate on.
        start: Mass,
        /// How many posts take plates.
        posts: u8,
        /// One post's plates from the inside out.
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        plates: Vec<Plate>,
    },
    /// Dumbbells, kettlebells or whatever else is held.
    Dumbbells {
        /// The rack's name.
        rack: String,
        /// The mass of each.
        each: Mass,
        /// How many are held: 1 or 2.
        count: u8,
    },
    /// A weight stack.
    Stack {
        /// The stack's name.
        stack: String,
        /// What stands beside the pin.
        pin: String,
        /// What is on top.
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        add_ons: Vec<Plate>,
    },
    /// Plates hung from the lifter, or one held.
    Hung {
        /// All of them.
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        plates: Vec<Plate>,
    },
    /// A load the lifter said was on, which this equipment can't make.
    Said {},
    /// Nothing.
    Body {},
}

mirror!(enum Rig = equipment::Rig {
    Bar { bar, bar_mass, collars, side },
    Posts { machine, start, posts, plates },
    Dumbbells { rack, each, count },
    Stack { stack, pin, add_ons },
    Hung { plates },
    Said {},
    Body {},
});
