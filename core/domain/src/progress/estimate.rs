//! Estimates of a one-repetition max from a set, by seven published formulas.
//!
//! This is the one module that computes with floating point: powers and exponentials come from the
//! `libm` crate, so that every platform gives the same digits, and each result is rounded once, to
//! the milligram. What comes out says that it is an estimate and how wide it is.
//!
//! # Range
//! No source at hand prints the range its formula was made for, so one is stated here for all
//! seven: 1 to 15 repetitions to failure ([`Formula::MOST_REPS`]). Fifteen is the last row of the
//! textbook's percent table (NSCA Essentials, 4th ed. 2016, Table 17.7); there the formulas
//! already lie a quarter apart, and well past it Brzycki's has a pole at 37 repetitions and
//! Lander's at 37.92. Outside is an error, never a number.
//!
//! # A single
//! At one repetition only two of the formulas give back the load, so a single to failure is a case
//! of its own: the load is the max.
#![allow(
    clippy::float_arithmetic,
    reason = "estimates need powers and exponentials; rounded once, and typed as estimates"
)]

use serde::{Deserialize, Serialize};

use crate::catalogue::{Counting, Exercise};
use crate::quantity::{Mass, Reps, Reserve};

/// A published formula for the one-repetition max. With `w` the load and `r` the repetitions to
/// failure:
#[derive(
    Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Default, Serialize, Deserialize,
)]
#[serde(rename_all = "snake_case")]
pub enum Formula {
    /// `w (1 + r/30)`. Epley 1985. The default: a coach can check it in the head, it is neither
    /// the highest nor the lowest of the seven from 2 to 10 repetitions, and it has no pole.
    #[default]
    Epley,
    /// `36 w / (37 − r)`. Brzycki 1993.
    Brzycki,
    /// `100 w / (101.3 − 2.67123 r)`. Lander 1985.
    Lander,
    /// `w r^0.10`. Lombardi 1989.
    Lombardi,
    /// `100 w / (52.2 + 41.9 e^(−0.055 r))`. Mayhew et al. 1992.
    Mayhew,
    /// `w (1 + 0.025 r)`. O'Conner et al. 1989.
    Oconner,
    /// `100 w / (48.8 + 53.8 e^(−0.075 r))`. Wathan 1994.
    Wathan,
}

/// How near failure a set ended.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Nearness {
    /// The next repetition was tried and missed.
    Failed,
    /// The lifter called so many left.
    Called(Reserve),
}

/// An estimated max: never a fact. Kept with the formula and the version of this arithmetic.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct Estimate {
    /// By the formula named.
    pub max: Mass,
    /// The least that any formula gives, with the call one repetition off.
    pub low: Mass,
    /// The most that any formula gives, with the call one repetition off.
    pub high: Mass,
    /// The formula of `max`.
    pub formula: Formula,
    /// The version of this arithmetic.
    pub version: u8,
}

/// Repetitions that a load allows, in hundredths, by an estimate.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(transparent)]
pub struct EstimatedReps(u16);

/// Why there is no estimate.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize, thiserror::Error)]
#[serde(rename_all = "snake_case")]
pub enum NoEstimate {
    /// No repetition was made.
    #[error("no repetition, no estimate")]
    NoReps,
    /// More repetitions to failure than the formulas are used for.
    #[error("more than {most} repetitions to failure are outside the formula's range")]
    TooManyReps {
        /// The most.
        most: Reps,
    },
    /// So much was left that the call says too little: past ten left it is more than two off
    /// from seven on (Hackett et al. 2017, JSCR 31(8):2162–2168).
    #[error("with more than {most} repetitions left there is no estimate")]
    TooMuchLeft {
        /// The most, in whole repetitions.
        most: u8,
    },
    /// Nothing was lifted, or the result is past what a mass can hold.
    #[error("no estimate of this load")]
    NoLoad,
}

/// The most repetitions to failure of a set that may raise a reference max. Common practice.
pub const MOST_REPS_FOR_REFERENCE: Reps = 10;

/// The most repetitions left that an estimate is made from.
const MOST_LEFT: u8 = 10;

impl Formula {
    /// All seven.
    pub const ALL: [Self; 7] = [
        Self::Epley,
        Self::Brzycki,
        Self::Lander,
        Self::Lombardi,
        Self::Mayhew,
        Self::Oconner,
        Self::Wathan,
    ];

    /// The most repetitions to failure that a formula is used for here.
    pub const MOST_REPS: Reps = 15;

    /// The version of the arithmetic, kept beside every estimate.
    pub const VERSION: u8 = 1;

    /// As it is written: `epley`.
    pub const fn slug(self) -> &'static str {
        match self {
            Self::Epley => "epley",
            Self::Brzycki => "brzycki",
            Self::Lander => "lander",
            Self::Lombardi => "lombardi",
            Self::Mayhew => "mayhew",
            Self::Oconner => "oconner",
            Self::Wathan => "wathan",
        }
    }

    /// The formula of that name.
    pub fn read(text: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|formula| formula.slug().eq_ignore_ascii_case(text.trim()))
    }

    /// Where it was published.
    pub const fn source(self) -> &'static str {
        match self {
            Self::Epley => "Epley 1985, Poundage chart",
            Self::Brzycki => "Brzycki 1993, JOPERD 64(1):88–90",
            Self::Lander => "Lander 1985, NSCA J 6(6):60–61",
            Self::Lombardi => "Lombardi 1989, Beginning Weight Training",
            Self::Mayhew => "Mayhew et al. 1992, J Appl Sport Sci Res 6(4):200–206",
            Self::Oconner => "O'Conner, Simmons, O'Shea 1989, Weight Training Today",
            Self::Wathan => "Wathan 1994, in Baechle (ed.), Essentials",
        }
    }

    /// The formula itself, with no case for a single: what the load is multiplied by at so many
    /// repetitions.
    fn factor(self, r: f64) -> f64 {
        match self {
            Self::Epley => 1.0 + r / 30.0,
            Self::Brzycki => 36.0 / (37.0 - r),
            Self::Lander => 100.0 / (101.3 - 2.67123 * r),
            Self::Lombardi => libm::pow(r, 0.10),
            Self::Mayhew => 100.0 / (52.2 + 41.9 * libm::exp(-0.055 * r)),
            Self::Oconner => 1.0 + 0.025 * r,
            Self::Wathan => 100.0 / (48.8 + 53.8 * libm::exp(-0.075 * r)),
        }
    }

    /// The repetitions at which the factor comes out; the inverse of [`Formula::factor`].
    fn reps_for_factor(self, factor: f64) -> f64 {
        match self {
            Self::Epley => 30.0 * (factor - 1.0),
            Self::Brzycki => 37.0 - 36.0 / factor,
            Self::Lander => (101.3 - 100.0 / factor) / 2.67123,
            Self::Lombardi => libm::pow(factor, 10.0),
            // Neither exponential formula reaches past a share of the max; the logarithm is then
            // of nothing or less, and gives an infinity or no number.
            Self::Mayhew => -libm::log((100.0 / factor - 52.2) / 41.9) / 0.055,
            Self::Wathan => -libm::log((100.0 / factor - 48.8) / 53.8) / 0.075,
            Self::Oconner => 40.0 * (factor - 1.0),
        }
    }

    /// What the formula as published gives for so many repetitions to failure, a single included
    /// (where it may differ from the load).
    ///
    /// # Errors
    /// [`NoEstimate`] outside the range, see the module.
    pub fn published(self, load: Mass, reps: Reps) -> Result<Mass, NoEstimate> {
        scaled(load, self.factor(in_range(u32::from(reps) * 2)?))
    }

    /// The load at which a lifter with this max would make so many repetitions with so many left.
    ///
    /// # Errors
    /// [`NoEstimate`] outside the range, see the module.
    pub fn load_for(self, max: Mass, reps: Reps, left: Reserve) -> Result<Mass, NoEstimate> {
        let halves = u32::from(reps) * 2 + u32::from(left.halves());
        let r = in_range(halves)?;
        if halves == 2 { Ok(max) } else { scaled(max, 1.0 / self.factor(r)) }
    }

    /// The repetitions that a load allows a lifter with this max, as the formula sees it; less
    /// than one where the load is above the max.
    ///
    /// # Errors
    /// [`NoEstimate::TooManyReps`] where they are more than the formula is used for,
    /// [`NoEstimate::NoLoad`] for a load or max of nothing.
    pub fn reps_at(self, max: Mass, load: Mass) -> Result<EstimatedReps, NoEstimate> {
        if max <= Mass::ZERO || load <= Mass::ZERO {
            return Err(NoEstimate::NoLoad);
        }
        if load > max {
            return Ok(EstimatedReps(0));
        }
        let r = self.reps_for_factor(max.nanograms() as f64 / load.nanograms() as f64);
        // A formula that is above the load at one repetition would give a single less than one.
        let r = if r < 1.0 { 1.0 } else { r };
        // Down: a repetition that is not there is not promised. The nudge keeps a whole number
        // whole where the microgram that the max was rounded to put it a hair below.
        let hundredths = libm::floor(r * 100.0 + 1e-3);
        if hundredths <= f64::from(Self::MOST_REPS) * 100.0 {
            Ok(EstimatedReps(hundredths as u16))
        } else {
            Err(NoEstimate::TooManyReps { most: Self::MOST_REPS })
        }
    }
}

impl Estimate {
    /// Estimates the max from a set of at least one repetition. `load` is what was moved: for
    /// bodyweight lifts the share of body mass with what was added or taken off.
    ///
    /// The range runs from the lowest formula to the highest. A call of up to five left counts as
    /// one repetition off either way, a call of more as three (Hackett et al. 2017, JSCR
    /// 31(8):2162–2168: within about one at 0–5 left, more than two off at 7–10).
    ///
    /// # Errors
    /// [`NoEstimate`] outside the range of the formula or of the call.
    pub fn of(
        load: Mass,
        reps: Reps,
        nearness: Nearness,
        formula: Formula,
    ) -> Result<Self, NoEstimate> {
        if reps == 0 {
            return Err(NoEstimate::NoReps);
        }
        if load <= Mass::ZERO {
            return Err(NoEstimate::NoLoad);
        }
        let (left, off) = match nearness {
            Nearness::Failed => (0, 0),
            Nearness::Called(left) if left.halves() > 2 * MOST_LEFT => {
                return Err(NoEstimate::TooMuchLeft { most: MOST_LEFT });
            }
            Nearness::Called(left) => {
                (u32::from(left.halves()), if left.halves() <= 10 { 2 } else { 6 })
            }
        };
        let done = u32::from(reps) * 2;
        let halves = done + left;
        let max = at(load, halves, formula)?;
        let (mut low, mut high) = (max, max);
        // The repetitions made are a fact: no call can be so far off as to take one back.
        let ends = [halves.saturating_sub(off).max(done), halves, halves + off];
        for halves in ends {
            for formula in Formula::ALL {
                // An end that is out of range cannot widen it.
                if let Ok(max) = at(load, halves, formula) {
                    low = low.min(max);
                    high = high.max(max);
                }
            }
        }
        Ok(Self { max, low, high, formula, version: Formula::VERSION })
    }
}

impl EstimatedReps {
    /// Hundredths of a repetition.
    pub const fn hundredths(self) -> u16 {
        self.0
    }

    /// Whole repetitions that can be expected.
    pub const fn whole(self) -> Reps {
        self.0 / 100
    }
}

/// Whether estimates are shown for an exercise unasked: the barbell main lifts, and lifts of the
/// body, by the mass moved. Machines and single joints differ far too much.
pub fn is_estimated(exercise: &Exercise) -> bool {
    exercise.main_lift
        || (exercise.counting == Counting::Added
            && exercise.is_compound()
            && exercise.body_share.hundredths() > 0)
}

/// The estimate at so many half repetitions to failure; a single is the load itself.
fn at(load: Mass, halves: u32, formula: Formula) -> Result<Mass, NoEstimate> {
    let r = in_range(halves)?;
    if halves == 2 { Ok(load) } else { scaled(load, formula.factor(r)) }
}

fn in_range(halves: u32) -> Result<f64, NoEstimate> {
    if halves < 2 {
        return Err(NoEstimate::NoReps);
    }
    if halves > u32::from(Formula::MOST_REPS) * 2 {
        return Err(NoEstimate::TooManyReps { most: Formula::MOST_REPS });
    }
    Ok(f64::from(halves) / 2.0)
}

/// The load times a factor, rounded once, to the microgram.
fn scaled(load: Mass, factor: f64) -> Result<Mass, NoEstimate> {
    const MICROGRAM: f64 = 1e3;
    // Up to 9 t a mass in nanograms is a whole number that an f64 holds exactly.
    let micrograms = libm::rint(load.nanograms() as f64 * factor / MICROGRAM);
    if micrograms > 0.0 && micrograms < 9e15 {
        Ok(Mass::from_nanograms(micrograms as i64 * 1_000))
    } else {
        Err(NoEstimate::NoLoad)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::catalogue::Catalogue;
    use crate::quantity::Numerals;

    fn kg(text: &str) -> Mass {
        Mass::read(&format!("{text} kg"), Numerals::Point).unwrap()
    }

    fn left(halves: u8) -> Nearness {
        Nearness::Called(Reserve::from_halves(halves).unwrap())
    }

    #[test]
    fn a_single_to_failure_is_the_load_itself() {
        for formula in Formula::ALL {
            let single = Estimate::of(kg("102.5"), 1, Nearness::Failed, formula).unwrap();
            assert_eq!(
                (single.max, single.low, single.high),
                (kg("102.5"), kg("102.5"), kg("102.5"))
            );
        }
        // With two left it is a set of three.
        let single = Estimate::of(kg("100"), 1, left(4), Formula::Epley).unwrap();
        assert_eq!(single.max, kg("110"));
    }

    #[test]
    fn what_is_left_counts_as_repetitions() {
        let six = Estimate::of(kg("100"), 6, left(4), Formula::Brzycki).unwrap();
        let eight = Estimate::of(kg("100"), 8, Nearness::Failed, Formula::Brzycki).unwrap();
        assert_eq!(six.max, eight.max);
        // Eight by every formula spans 120 (O'Conner) to 127.67142 (Wathan); the call may be one
        // off, so seven to nine count too.
        assert_eq!((eight.low, eight.high), (kg("120"), kg("127.67141908")));
        assert!(six.low < eight.low && six.high > eight.high);
        // Half a repetition: Epley at 6.5.
        let half = Estimate::of(kg("120"), 6, left(1), Formula::Epley).unwrap();
        assert_eq!(half.max, kg("146"));
    }

    #[test]
    fn a_call_takes_back_no_repetition_that_was_made() {
        let five = Estimate::of(kg("100"), 5, left(0), Formula::Epley).unwrap();
        let failed = Estimate::of(kg("100"), 5, Nearness::Failed, Formula::Epley).unwrap();
        assert_eq!(five.low, failed.low);
        assert!(five.high > failed.high);
    }

    #[test]
    fn outside_the_range_is_an_error() {
        let of = |reps, nearness| Estimate::of(kg("100"), reps, nearness, Formula::Brzycki);
        assert_eq!(of(0, Nearness::Failed), Err(NoEstimate::NoReps));
        assert!(of(15, Nearness::Failed).is_ok());
        let too_many = Err(NoEstimate::TooManyReps { most: 15 });
        assert_eq!(of(16, Nearness::Failed), too_many);
        assert_eq!(of(37, Nearness::Failed), too_many);
        assert_eq!(of(15, left(1)), too_many);
        assert_eq!(of(3, left(21)), Err(NoEstimate::TooMuchLeft { most: 10 }));
        let nothing = Estimate::of(Mass::ZERO, 5, Nearness::Failed, Formula::Epley);
        assert_eq!(nothing, Err(NoEstimate::NoLoad));
    }

    #[test]
    fn the_default_is_never_the_extreme_from_two_to_ten() {
        for reps in 2..=10 {
            let all = Formula::ALL.map(|formula| formula.published(kg("100"), reps).unwrap());
            let default = Formula::default().published(kg("100"), reps).unwrap();
            assert!(all.iter().any(|max| *max < default), "{reps}");
            assert!(all.iter().any(|max| *max > default), "{reps}");
        }
    }

    #[test]
    fn repetitions_come_back_from_the_estimate() {
        for formula in Formula::ALL {
            for reps in 2..=15 {
                let max = formula.published(kg("100"), reps).unwrap();
                let back = formula.reps_at(max, kg("100")).unwrap().hundredths();
                assert_eq!(back, reps * 100, "{formula:?}");
            }
            assert_eq!(formula.reps_at(kg("100"), kg("100")).unwrap().whole(), 1);
            assert_eq!(formula.reps_at(kg("100"), kg("101")).unwrap().whole(), 0);
            assert!(formula.reps_at(kg("100"), kg("20")).is_err());
        }
    }

    #[test]
    fn the_assisted_pull_up() {
        // 82.4 kg with 20 kg of help moves 62.4 kg, ten times with none left; five less help
        // moves 67.4: 30 · (62.4 · 4/3 / 67.4 − 1) = 7.03.
        let set = Estimate::of(kg("62.4"), 10, left(0), Formula::Epley).unwrap();
        assert_eq!(set.max, kg("83.2"));
        let reps = Formula::Epley.reps_at(set.max, kg("67.4")).unwrap();
        assert_eq!(reps.hundredths(), 703);
    }

    #[test]
    fn main_lifts_and_body_lifts_are_estimated_unasked() {
        let catalogue = Catalogue::builtin();
        let estimated = |slug| is_estimated(catalogue.get(slug).unwrap());
        assert!(estimated("front-squat") && estimated("pull-up") && estimated("assisted-pull-up"));
        assert!(!estimated("leg-press") && !estimated("lateral-raise") && !estimated("dead-hang"));
        assert!(!estimated("band-assisted-pull-up") && !estimated("power-clean"));
    }
}
