//! What this gym makes of an exercise, in the terms the exercise counts in.

use crate::catalogue::{Counting, Exercise};
use crate::equipment::{Equipment, Fit};
use crate::progress::makes::Makes;
use crate::quantity::Mass;
use crate::session::made;

/// A gym and an exercise.
#[derive(Debug, Clone, Copy)]
pub(super) struct Here<'a> {
    pub(super) equipment: &'a Equipment,
    pub(super) exercise: &'a Exercise,
    pub(super) counting: Counting,
}

impl<'a> Here<'a> {
    pub(super) fn new(
        equipment: &'a Equipment,
        exercise: &'a Exercise,
        counting: Option<Counting>,
    ) -> Self {
        Self { equipment, exercise, counting: counting.unwrap_or(exercise.counting) }
    }

    /// What the exercise needs and this gym has not.
    pub(super) fn lacks(&self) -> Vec<String> {
        std::iter::once(self.exercise.implement.as_ref())
            .chain(self.exercise.needs.iter())
            .filter(|need| !self.equipment.offers(need).is_here())
            .map(str::to_owned)
            .collect()
    }
}

impl Makes for Here<'_> {
    fn nearest(&self, load: Mass) -> Option<Mass> {
        made(self.equipment, &self.exercise.implement, self.counting, load)
            .ok()
            .map(|(figure, _)| figure)
    }

    fn above(&self, load: Mass) -> Option<Mass> {
        let over = load.checked_add(Mass::from_nanograms(1))?;
        // Less help than the least is none at all.
        if self.counting == Counting::Added && load < Mass::ZERO && over >= Mass::ZERO {
            return Some(Mass::ZERO);
        }
        let made = crate::session::make(
            self.equipment,
            &self.exercise.implement,
            self.counting,
            over,
            Fit::Over,
            false,
        );
        match made {
            Ok((figure, _)) => Some(figure),
            Err(_) if self.counting == Counting::Added && load < Mass::ZERO => Some(Mass::ZERO),
            Err(_) => None,
        }
    }
}
