//! What the equipment can make, as far as the rules ask.

use crate::quantity::{Mass, Rounding};

/// The loads that can be made, in the terms an exercise counts in: on the bar, in each hand,
/// added to the body; help is negative.
pub trait Makes {
    /// The nearest; none where nothing can be made.
    fn nearest(&self, load: Mass) -> Option<Mass>;
    /// The least that is heavier.
    fn above(&self, load: Mass) -> Option<Mass>;
    /// The usual step where the plan names none: smaller ones that could be made are passed over.
    /// Nothing where the next that can be made is the usual step.
    fn usual_step(&self) -> Mass {
        Mass::ZERO
    }
}

/// Every multiple of a step can be made; a tie goes to the lighter.
#[derive(Debug, Clone, Copy)]
pub struct Multiples(pub Mass);

impl Makes for Multiples {
    fn nearest(&self, load: Mass) -> Option<Mass> {
        let below = load.to_multiple(self.0, Rounding::Down)?;
        let above = load.to_multiple(self.0, Rounding::Up)?;
        Some(if load.distance(above) < load.distance(below) { above } else { below })
    }

    fn above(&self, load: Mass) -> Option<Mass> {
        load.to_multiple(self.0, Rounding::Down)?.checked_add(self.0)
    }
}
