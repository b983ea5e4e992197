//! What a gym has.

use barwright_domain::equipment;
#[cfg(any(test, feature = "schema"))]
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::quantity::{Length, Mass, MassUnit};
use crate::mirror::is_default;

/// What one gym has.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(any(test, feature = "schema"), derive(JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Equipment {
    /// The gym's name.
    pub name: String,
    /// The unit that loads are shown in here.
    pub unit: MassUnit,
    /// Bars; of several of one kind the first is the usual one.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub bars: Vec<Bar>,
    /// Plates, shared by bars, plate-loaded machines and the belt.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub plates: Vec<PlateStock>,
    /// Racks of loads held in the hand.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub dumbbells: Vec<Dumbbells>,
    /// Weight stacks.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub stacks: Vec<Stack>,
    /// Plate-loaded machines.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub machines: Vec<Machine>,
    /// Supports and whatever carries no load of its own: `rack`, `bench`, `pull-up-bar`, `box`,
    /// `belt`, `band`.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub also: Vec<String>,
}

mirror!(struct Equipment = equipment::Equipment { name, unit, bars, plates, dumbbells, stacks, machines, also });

/// A bar that takes plates on both ends.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(any(test, feature = "schema"), derive(JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Bar {
    /// Its name in this gym.
    pub name: String,
    /// Its implement slug: `barbell`, `trap-bar`, `ez-bar`.
    pub kind: String,
    /// The bar alone.
    pub mass: Mass,
    /// Both collars together.
    #[serde(default, skip_serializing_if = "is_default")]
    pub collars: Mass,
    /// The part of one sleeve that takes plates, the collar's place left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub sleeve: Option<Length>,
}

mirror!(struct Bar = equipment::Bar { name, kind, mass, collars, sleeve });

/// A size of plate, and how many there are.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(any(test, feature = "schema"), derive(JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct PlateStock {
    /// As it is written in the file: `25 kg`, `45 lb`.
    pub label: String,
    /// The mass of one.
    pub mass: Mass,
    /// Pairs.
    pub pairs: u8,
    /// One more without a partner: 0 or 1.
    #[serde(default, skip_serializing_if = "is_default")]
    pub single: u8,
    /// How much sleeve it takes.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub thickness: Option<Length>,
    /// How high it stands: 450 mm for a full-size plate.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub diameter: Option<Length>,
    /// Its colour in a word: `red`.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub colour: Option<String>,
}

mirror!(struct PlateStock = equipment::PlateStock { label, mass, pairs, single, thickness, diameter, colour });

/// A rack of loads held in the hand: dumbbells, kettlebells, bags, balls, a weighted vest.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(any(test, feature = "schema"), derive(JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Dumbbells {
    /// Its name in this gym.
    pub name: String,
    /// Its implement slug: `dumbbell`, `kettlebell`, `sandbag`, `vest`.
    pub kind: String,
    /// The masses to choose from, lightest first, none twice.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub loads: Vec<Mass>,
    /// Whether there are two of each.
    #[serde(default, skip_serializing_if = "is_default")]
    pub pairs: bool,
}

mirror!(struct Dumbbells = equipment::Dumbbells { name, kind, loads, pairs });

/// A weight stack with a pin.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(any(test, feature = "schema"), derive(JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Stack {
    /// Its name in this gym.
    pub name: String,
    /// Its implement slug: `cable`, `leg-curl`.
    pub kind: String,
    /// The places of the pin, lightest first. Either all of them state their load or none does.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub pins: Vec<Pin>,
    /// Weights that go on top.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub add_ons: Vec<AddOn>,
    /// What of the stack's load reaches the hand.
    #[serde(default, skip_serializing_if = "is_default")]
    pub ratio: Ratio,
}

mirror!(struct Stack = equipment::Stack { name, kind, pins, add_ons, ratio });

/// A place of the pin.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(any(test, feature = "schema"), derive(JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Pin {
    /// What stands beside it: `35 kg`, `7`.
    pub label: String,
    /// What it lifts, before the ratio; nothing known of an unnumbered stack.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub load: Option<Mass>,
}

mirror!(struct Pin = equipment::Pin { label, load });

/// A weight that goes on top of a stack.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(any(test, feature = "schema"), derive(JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct AddOn {
    /// As it is written in the file: `2.5 kg`.
    pub label: String,
    /// The mass of one.
    pub mass: Mass,
    /// How many.
    pub count: u8,
}

mirror!(struct AddOn = equipment::AddOn { label, mass, count });

/// Load at the hand to load on the stack: a cable that halves it is 1 : 2.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(any(test, feature = "schema"), derive(JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Ratio {
    /// At the hand.
    pub hand: u8,
    /// On the stack; not 0.
    pub stack: u8,
}

impl Default for Ratio {
    fn default() -> Self {
        Self { hand: 1, stack: 1 }
    }
}

mirror!(struct Ratio = equipment::Ratio { hand, stack });

/// A machine or sled that plates are put on.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(any(test, feature = "schema"), derive(JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Machine {
    /// Its name in this gym.
    pub name: String,
    /// Its implement slug: by default its name's.
    pub kind: String,
    /// The load with no plate on.
    #[serde(default, skip_serializing_if = "is_default")]
    pub start: Mass,
    /// Posts that take plates: two are loaded alike, one alone.
    pub posts: u8,
    /// The part of one post that takes plates.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub sleeve: Option<Length>,
}

mirror!(struct Machine = equipment::Machine { name, kind, start, posts, sleeve });

/// Which of the loads that a gym makes a lifter likes called.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize)]
#[cfg_attr(any(test, feature = "schema"), derive(JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Liked {
    /// Plates smaller than this stay where they are.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub smallest: Option<Mass>,
    /// Loads are multiples of this, where one is made.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub step: Option<Mass>,
}

mirror!(struct Liked = equipment::Liked { smallest, step });
