//! What this gym makes of an exercise, in the terms the exercise counts in.

use super::made::make_in_steps;
use crate::catalogue::{Counting, Exercise};
use crate::equipment::{Equipment, Fit, Offer, Rig};
use crate::progress::makes::Makes;
use crate::quantity::{Mass, MassUnit};

/// A gym and an exercise.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Here<'a> {
    pub(crate) equipment: &'a Equipment,
    pub(crate) exercise: &'a Exercise,
    pub(crate) counting: Counting,
    /// Loads are multiples of this, where one is made.
    pub(crate) step: Option<Mass>,
}

impl<'a> Here<'a> {
    /// An exercise counted as a plan says, or as it usually is.
    pub(crate) fn new(
        equipment: &'a Equipment,
        exercise: &'a Exercise,
        said: Option<Counting>,
    ) -> Self {
        // An unnumbered stack has no figures, however the exercise is usually counted.
        let counting = match equipment.offers(&exercise.implement) {
            Offer::Pins => Counting::Unnumbered,
            Offer::Loads | Offer::Bare | Offer::No => said.unwrap_or(exercise.counting),
        };
        Self { equipment, exercise, counting, step: None }
    }

    /// What the exercise needs and this gym has not.
    pub(crate) fn lacks(&self) -> Vec<String> {
        std::iter::once(self.exercise.implement.as_ref())
            .chain(self.exercise.needs.iter())
            .filter(|need| !self.equipment.offers(need).is_here())
            .map(str::to_owned)
            .collect()
    }

    /// A figure as this gym makes it, and what it is made with.
    pub(crate) fn make(&self, figure: Mass, fit: Fit, full_size: bool) -> Option<(Mass, Rig)> {
        let implement = &self.exercise.implement;
        let of = (implement.as_ref(), self.counting);
        make_in_steps(self.equipment, of, figure, (fit, full_size), self.step).ok()
    }
}

impl Makes for Here<'_> {
    fn nearest(&self, load: Mass) -> Option<Mass> {
        self.make(load, Fit::Nearest, false).map(|(figure, _)| figure)
    }

    fn above(&self, load: Mass) -> Option<Mass> {
        let over = load.checked_add(Mass::from_nanograms(1))?;
        self.make(over, Fit::Over, false).map(|(figure, _)| figure).filter(|made| *made > load)
    }

    /// 2.5 kg or 5 lb where plates or a stack of help make finer steps (common practice); a rack of
    /// dumbbells and a stack go to the next that they have.
    fn usual_step(&self) -> Mass {
        match (self.counting, self.equipment.unit) {
            (Counting::Total | Counting::EachSide | Counting::Added, MassUnit::Kilogram) => {
                Mass::from_nanograms(MassUnit::Kilogram.nanograms() / 2 * 5)
            }
            (Counting::Total | Counting::EachSide | Counting::Added, MassUnit::Pound) => {
                Mass::whole(5, MassUnit::Pound)
            }
            (Counting::EachHand | Counting::One | Counting::Stack | Counting::Unnumbered, _) => {
                Mass::ZERO
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::catalogue::Catalogue;
    use crate::equipment::builtin_in;
    use crate::quantity::Numerals;

    fn kg(text: &str) -> Mass {
        Mass::read(&format!("{text} kg"), Numerals::Point).unwrap()
    }

    /// An exercise in the built-in kilogram gym: the figure made, and with what.
    fn made(exercise: &str, figure: &str, fit: Fit) -> Option<(Mass, Rig)> {
        let (gym, catalogue) = (builtin_in(MassUnit::Kilogram), Catalogue::builtin());
        Here::new(&gym, catalogue.get(exercise).unwrap(), None).make(kg(figure), fit, false)
    }

    fn figure(exercise: &str, asked: &str, fit: Fit) -> Option<Mass> {
        made(exercise, asked, fit).map(|(made, _)| made)
    }

    #[test]
    fn more_on_the_body_and_help_for_it() {
        assert_eq!(made("pull-up", "0", Fit::Nearest), Some((kg("0"), Rig::Body)));
        assert_eq!(figure("pull-up", "10", Fit::Nearest), Some(kg("10")));
        assert_eq!(figure("pull-up", "0.2", Fit::Nearest), Some(kg("0")));
        // A belt gives no help, and nothing hangs on a machine that does.
        assert_eq!(made("pull-up", "-20", Fit::Nearest), None);
        assert_eq!(made("assisted-pull-up", "10", Fit::Nearest), None);
        assert_eq!(figure("assisted-pull-up", "-21", Fit::Nearest), Some(kg("-20")));
        assert_eq!(figure("assisted-pull-up", "-21", Fit::Under), Some(kg("-25")));
        assert_eq!(figure("assisted-pull-up", "-4", Fit::Over), Some(kg("0")));
    }

    #[test]
    fn one_in_the_hand_or_one_in_each() {
        let one = made("goblet-squat", "25", Fit::Nearest).unwrap();
        assert!(matches!(one.1, Rig::Dumbbells { count: 1, .. }));
        let two = made("dumbbell-bench-press", "25", Fit::Nearest).unwrap();
        assert!(matches!(two.1, Rig::Dumbbells { count: 2, .. }));
        // This gym has one kettlebell of each.
        assert_eq!(made("double-kettlebell-squat", "16", Fit::Nearest), None);
    }

    #[test]
    fn the_next_step_of_help_is_less_of_it() {
        let (gym, catalogue) = (builtin_in(MassUnit::Kilogram), Catalogue::builtin());
        let here = Here::new(&gym, catalogue.get("assisted-pull-up").unwrap(), None);
        assert_eq!(here.above(kg("-20")), Some(kg("-15")));
        assert_eq!(here.above(kg("-5")), Some(kg("0")));
        assert_eq!(here.above(kg("0")), None);
    }
}
