//! The model of one gym's equipment.

use serde::{Deserialize, Serialize};

use super::rig::Plate;
use super::{BELT, BODYWEIGHT, CABLE, PLATE};
use crate::quantity::{Length, Mass, MassUnit, Rounding};

/// What one gym has.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize)]
pub struct Equipment {
    /// The gym's name.
    pub name: String,
    /// The unit that loads are shown in here.
    pub unit: MassUnit,
    /// Bars; of several of one kind the first is the usual one.
    #[serde(default)]
    pub bars: Vec<Bar>,
    /// Plates, shared by bars, plate-loaded machines and the belt.
    #[serde(default)]
    pub plates: Vec<PlateStock>,
    /// Racks of loads held in the hand.
    #[serde(default)]
    pub dumbbells: Vec<Dumbbells>,
    /// Weight stacks.
    #[serde(default)]
    pub stacks: Vec<Stack>,
    /// Plate-loaded machines.
    #[serde(default)]
    pub machines: Vec<Machine>,
    /// Supports and whatever carries no load of its own: `rack`, `bench`, `pull-up-bar`, `box`,
    /// `belt`, `band`.
    #[serde(default)]
    pub also: Vec<String>,
}

/// A bar that takes plates on both ends.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Bar {
    /// Its name in this gym.
    pub name: String,
    /// Its implement slug: `barbell`, `trap-bar`, `ez-bar`.
    pub kind: String,
    /// The bar alone.
    pub mass: Mass,
    /// Both collars together.
    #[serde(default)]
    pub collars: Mass,
    /// The part of one sleeve that takes plates, the collar's place left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub sleeve: Option<Length>,
}

/// A size of plate, and how many there are.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct PlateStock {
    /// As it is written in the file: `25 kg`, `45 lb`.
    pub label: String,
    /// The mass of one: as it was weighed, where it was.
    pub mass: Mass,
    /// Pairs.
    pub pairs: u8,
    /// One more without a partner: 0 or 1.
    #[serde(default)]
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

/// A rack of loads held in the hand: dumbbells, kettlebells, bags, balls, a weighted vest.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Dumbbells {
    /// Its name in this gym.
    pub name: String,
    /// Its implement slug: `dumbbell`, `kettlebell`, `sandbag`, `vest`.
    pub kind: String,
    /// The masses to choose from, lightest first, none twice.
    pub loads: Vec<Mass>,
    /// Whether there are two of each.
    pub pairs: bool,
}

/// A weight stack with a pin.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Stack {
    /// Its name in this gym.
    pub name: String,
    /// Its implement slug: `cable`, `leg-curl`.
    pub kind: String,
    /// The places of the pin, lightest first. Either all of them state their load or none does.
    pub pins: Vec<Pin>,
    /// Weights that go on top.
    #[serde(default)]
    pub add_ons: Vec<AddOn>,
    /// What of the stack's load reaches the hand.
    #[serde(default)]
    pub ratio: Ratio,
}

/// A place of the pin.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Pin {
    /// What stands beside it: `35 kg`, `7`.
    pub label: String,
    /// What it lifts, before the ratio; nothing known of an unnumbered stack.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub load: Option<Mass>,
}

/// A weight that goes on top of a stack.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct AddOn {
    /// As it is written in the file: `2.5 kg`.
    pub label: String,
    /// The mass of one.
    pub mass: Mass,
    /// How many.
    pub count: u8,
}

/// Load at the hand to load on the stack: a cable that halves it is 1 : 2.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
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

impl Ratio {
    /// What of a stack's load reaches the hand, to the nanogram, half to even.
    pub fn at_hand(self, stack: Mass) -> Mass {
        stack
            .ratio(i64::from(self.hand), i64::from(self.stack), Rounding::HalfEven)
            .unwrap_or(stack)
    }
}

/// A machine or sled that plates are put on.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Machine {
    /// Its name in this gym.
    pub name: String,
    /// Its implement slug: by default its name's.
    pub kind: String,
    /// The load with no plate on.
    #[serde(default)]
    pub start: Mass,
    /// Posts that take plates: two are loaded alike, one alone.
    pub posts: u8,
    /// The part of one post that takes plates.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub sleeve: Option<Length>,
}

/// How an implement is on offer in a gym.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Offer {
    /// It isn't here.
    No,
    /// It makes loads that can be asked for by mass.
    Loads,
    /// It is set by a pin whose load nobody knows: history, but no figures.
    Pins,
    /// It is here and carries no load of its own.
    Bare,
}

impl Offer {
    /// Whether it is here at all.
    pub fn is_here(self) -> bool {
        self != Self::No
    }
}

impl AddOn {
    /// One of them.
    pub fn plate(&self) -> Plate {
        Plate { label: self.label.clone(), mass: self.mass }
    }
}

impl PlateStock {
    /// One of them.
    pub fn plate(&self) -> Plate {
        Plate { label: self.label.clone(), mass: self.mass }
    }

    /// From where a plate counts as full size: it sets a deadlift's height. Competition plates are
    /// 450 mm across (common practice; some older ones a few millimetres less).
    pub const FULL_SIZE: Length = Length::from_tenths(4_400);

    /// Whether it sets the height of a bar on the floor.
    pub fn is_full_size(&self) -> bool {
        self.diameter.is_some_and(|diameter| diameter >= Self::FULL_SIZE)
    }
}

impl Stack {
    /// Whether the pins state their loads.
    pub fn is_numbered(&self) -> bool {
        self.pins.iter().all(|pin| pin.load.is_some())
    }
}

/// Machines whose work a cable column can do as well.
const BY_CABLE: [&str; 2] = ["pulldown", "low-row"];

impl Equipment {
    /// The stacks that serve an implement: its own, and where there are none a cable column's for
    /// what one can do as well.
    pub fn stacks_for(&self, implement: &str) -> impl Iterator<Item = &Stack> {
        let own = self.stacks.iter().any(|stack| stack.kind == implement)
            || self.machines.iter().any(|machine| machine.kind == implement);
        let kind = if !own && BY_CABLE.contains(&implement) { CABLE } else { implement };
        self.stacks.iter().filter(move |stack| stack.kind == kind)
    }

    /// How an implement, or a support out of `also`, is on offer here.
    pub fn offers(&self, implement: &str) -> Offer {
        let numbered = |stack: &Stack| if stack.is_numbered() { Offer::Loads } else { Offer::Pins };
        let of_kind = |kind: &str| kind == implement;
        if implement == BODYWEIGHT {
            Offer::Bare
        } else if (implement == PLATE && !self.plates.is_empty())
            || self.bars.iter().any(|bar| of_kind(&bar.kind))
            || self.dumbbells.iter().any(|rack| of_kind(&rack.kind))
            || self.machines.iter().any(|machine| of_kind(&machine.kind))
        {
            Offer::Loads
        } else if let Some(stack) = self.stacks_for(implement).next() {
            numbered(stack)
        } else if self.also.iter().any(|slug| of_kind(slug)) {
            if implement == BELT && !self.plates.is_empty() { Offer::Loads } else { Offer::Bare }
        } else {
            Offer::No
        }
    }

    /// The implements here that a load can be put on or set with, in the file's order, none twice.
    pub fn implements(&self) -> Vec<&str> {
        let kinds = (self.bars.iter().map(|bar| bar.kind.as_str()))
            .chain(self.dumbbells.iter().map(|rack| rack.kind.as_str()))
            .chain(self.stacks.iter().map(|stack| stack.kind.as_str()))
            .chain(self.machines.iter().map(|machine| machine.kind.as_str()));
        let mut seen = Vec::new();
        for kind in kinds {
            if !seen.contains(&kind) {
                seen.push(kind);
            }
        }
        seen
    }
}
