//! What is on a bar, a machine, a stack or in the hands.

use serde::{Deserialize, Serialize};

use crate::quantity::Mass;

/// One plate, as the equipment's file writes it.
#[derive(Debug, Clone, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub struct Plate {
    /// `25 kg`, `45 lb`.
    pub label: String,
    /// Its mass.
    pub mass: Mass,
}

/// What a lifter moves, as it stands now: recorded with every set.
#[derive(Debug, Clone, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(tag = "on", rename_all = "snake_case")]
pub enum Rig {
    /// A bar with the same plates on both ends.
    Bar {
        /// The bar's name.
        bar: String,
        /// The bar alone.
        bar_mass: Mass,
        /// Both collars together.
        collars: Mass,
        /// One end's plates from the inside out.
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
        add_ons: Vec<Plate>,
    },
    /// Plates hung from the lifter, or one held.
    Hung {
        /// All of them.
        plates: Vec<Plate>,
    },
    /// A load the lifter said was on, which this equipment can't make.
    Said,
    /// Nothing.
    Body,
}

impl Rig {
    /// Whether plates are put on it by hand, so that the next load starts from what is on.
    pub fn holds_plates(&self) -> bool {
        matches!(self, Self::Bar { .. } | Self::Posts { .. } | Self::Hung { .. })
    }

    /// The plates of one end, post or belt from the inside out; none for anything else.
    pub fn side(&self) -> &[Plate] {
        match self {
            Self::Bar { side: plates, .. } | Self::Posts { plates, .. } | Self::Hung { plates } => {
                plates
            }
            Self::Dumbbells { .. } | Self::Stack { .. } | Self::Said | Self::Body => &[],
        }
    }
}

/// Which load to make when the one asked for can't be.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Fit {
    /// The smaller miss; of two as small the lighter load.
    #[default]
    Nearest,
    /// The heaviest that is not heavier.
    Under,
    /// The lightest that is not lighter.
    Over,
}

/// A load that was asked for and what the equipment makes of it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Made {
    /// What was asked for.
    pub asked: Mass,
    /// What it comes to, exactly.
    pub made: Mass,
    /// What is on.
    pub rig: Rig,
}

impl Made {
    /// By how much it misses: above nothing when heavier than asked.
    pub fn off_by(&self) -> Mass {
        self.made.checked_sub(self.asked).unwrap_or_default()
    }
}
