//! A max tested, by the textbook's protocol.
//!
//! NSCA Essentials, 1RM protocol: 5–10 easy repetitions, rest 1 min; 3–5 repetitions at 5–10 %
//! more (upper body) or 10–20 % more (lower), rest 2 min; 2–3 repetitions at the same step, rest
//! 2–4 min; then singles with 2–4 min between. After a miss 2.5–5 % less (upper) or 5–10 % less
//! (lower). The max within three to five tries. The last steps here are the plan's, 2.5–5 %.
//!
//! For multi-joint lifts only; pins or a spotter are asked for before.

use serde::{Deserialize, Serialize};

use super::makes::Makes;
use crate::catalogue::Region;
use crate::quantity::{Mass, Percent, Reps, Rounding, Seconds};

/// A step on the way to the first single.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct WarmUpStep {
    /// Share of the first single.
    pub share: Percent,
    /// Repetitions.
    pub reps: Reps,
    /// Rest after it.
    pub rest: Seconds,
}

/// The first single, as a share of the estimated max: heavy enough to leave few tries, light enough
/// to be made when the estimate is a little high. Common practice.
pub const FIRST_SINGLE: Percent = Percent::from_hundredths(9_250);

/// Rest between singles: 2–4 min.
pub const REST_BETWEEN_TRIES: Seconds = Seconds::new(240);

/// The most tries.
pub const MOST_TRIES: u8 = 5;

/// Up to this share of the estimated max a step between singles is 5 %, past it the plan's.
const NEAR_THE_MAX: Percent = Percent::whole(95);

/// One try of a single.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct Try {
    /// The load.
    pub load: Mass,
    /// Whether it was lifted.
    pub lifted: bool,
}

/// What is tested.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Test {
    /// The estimated max, or the reference max.
    pub expected: Mass,
    /// Upper or lower body; the trunk counts as upper.
    pub region: Region,
    /// The step between singles near the max, 2.5–5 %.
    pub step: Percent,
    /// The most tries.
    pub most_tries: u8,
}

/// What comes after the tries so far.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum After {
    /// Another single.
    Single {
        /// Its load, as the equipment makes it.
        load: Mass,
        /// What was asked of the equipment.
        asked: Mass,
        /// Why this load.
        because: Because,
    },
    /// The max is found.
    Max {
        /// The heaviest single lifted.
        max: Mass,
        /// Why it ends here.
        because: Over,
    },
    /// No single was lifted.
    NoMax,
}

/// Why a single has its load.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Because {
    /// The first: this share of what is expected.
    First(Percent),
    /// The last was lifted: this much more.
    Lifted(Percent),
    /// The last was missed: this much less.
    Missed(Percent),
    /// Halfway between the heaviest lifted and the lightest missed.
    Between {
        /// The heaviest that was lifted.
        lifted: Mass,
        /// The lightest that was missed.
        missed: Mass,
    },
    /// The next that the equipment makes above the heaviest lifted.
    Next {
        /// The heaviest that was lifted.
        lifted: Mass,
    },
}

/// Why a test is over.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Over {
    /// The tries are used up.
    Tries,
    /// Nothing that can be made lies between what was lifted and what was missed.
    NothingBetween,
}

/// The steps to the first single: 10 % apart for the upper body, 15 % for the lower, each with the
/// fewest repetitions of the protocol, so that the tries are what tires.
pub const fn warm_up(region: Region) -> [WarmUpStep; 3] {
    const fn step(hundredths: i32, reps: Reps, rest: u32) -> WarmUpStep {
        let share = Percent::from_hundredths(hundredths);
        WarmUpStep { share, reps, rest: Seconds::new(rest) }
    }
    match region {
        Region::Lower => [step(6_575, 5, 60), step(7_561, 3, 120), step(8_696, 2, 180)],
        Region::Upper | Region::Trunk => {
            [step(7_513, 5, 60), step(8_264, 3, 120), step(9_091, 2, 180)]
        }
    }
}

impl Test {
    /// What comes after the tries so far. `None` where the equipment can make nothing of it.
    pub fn after(&self, tries: &[Try], makes: &impl Makes) -> Option<After> {
        let best = tries.iter().filter(|a_try| a_try.lifted).map(|a_try| a_try.load).max();
        let Some(last) = tries.last() else {
            let asked = FIRST_SINGLE.of(self.expected)?;
            let load = makes.nearest(asked)?;
            return Some(After::Single { load, asked, because: Because::First(FIRST_SINGLE) });
        };
        let over = |because| match best {
            Some(max) => After::Max { max, because },
            None => After::NoMax,
        };
        if tries.len() >= usize::from(self.most_tries) {
            return Some(over(Over::Tries));
        }
        let missed = tries.iter().filter(|a_try| !a_try.lifted).map(|a_try| a_try.load).min();
        let (change, mut because) = if last.lifted {
            let near = last.load >= NEAR_THE_MAX.of(self.expected)?;
            let step = if near { self.step } else { Percent::whole(5).max(self.step) };
            (step, Because::Lifted(step))
        } else {
            // The smaller figure of the protocol where something lighter was lifted already.
            let off = match (self.region, best) {
                (Region::Lower, None) => Percent::whole(10),
                (Region::Lower, Some(_)) | (_, None) => Percent::whole(5),
                (_, Some(_)) => Percent::from_hundredths(250),
            };
            (Percent::from_hundredths(-off.hundredths()), Because::Missed(off))
        };
        let mut asked = last.load.checked_add(change.of(last.load)?)?;
        let mut load = makes.nearest(asked)?;
        // Neither what was missed again nor what was lifted: halfway between.
        if let (Some(best), Some(missed)) = (best, missed)
            && (load >= missed || load <= best)
        {
            let between = missed.checked_sub(best)?.ratio(1, 2, Rounding::Down)?;
            asked = best.checked_add(between)?;
            load = makes.nearest(asked)?;
            because = Because::Between { lifted: best, missed };
        }
        // The plates may make no more than was lifted: then the next they make.
        let load = match best {
            Some(best) if load <= best => {
                because = Because::Next { lifted: best };
                makes.above(best).inspect(|above| asked = *above)
            }
            _ => Some(load),
        };
        Some(match load {
            Some(load) if missed.is_none_or(|missed| load < missed) => {
                After::Single { load, asked, because }
            }
            _ => over(Over::NothingBetween),
        })
    }
}

#[cfg(test)]
mod tests {
    use super::super::makes::Multiples;
    use super::*;
    use crate::quantity::Numerals;

    fn kg(text: &str) -> Mass {
        Mass::read(&format!("{text} kg"), Numerals::Point).unwrap()
    }

    /// Plays a test of a lifter whose max is `real`, and gives the loads tried and the end.
    fn play(test: Test, real: &str) -> (Vec<String>, After) {
        let mut tries: Vec<Try> = Vec::new();
        loop {
            match test.after(&tries, &Multiples(kg("2.5"))).unwrap() {
                After::Single { load, .. } => {
                    tries.push(Try { load, lifted: load <= kg(real) });
                    assert!(tries.len() <= 5);
                }
                end => return (tries.iter().map(|a_try| a_try.load.kilograms()).collect(), end),
            }
        }
    }

    fn test(region: Region) -> Test {
        let step = Percent::from_hundredths(250);
        Test { expected: kg("160"), region, step, most_tries: MOST_TRIES }
    }

    #[test]
    fn as_expected() {
        // 148 asked, then 5 %, 2.5 % (158.875) and 2.5 % more; after the miss 2.5 kg less is left.
        let (tries, end) = play(test(Region::Lower), "160");
        assert_eq!(tries, ["147.5", "155", "160", "165", "162.5"]);
        assert_eq!(end, After::Max { max: kg("160"), because: Over::Tries });
        // Nothing can be made between 160 and 162.5.
        let (tries, end) = play(Test { expected: kg("170"), ..test(Region::Lower) }, "162.5");
        assert_eq!(tries, ["157.5", "165", "160", "162.5"]);
        assert_eq!(end, After::Max { max: kg("162.5"), because: Over::NothingBetween });
    }

    #[test]
    fn the_first_is_missed() {
        // Lower body: 10 % less, then up again.
        let (tries, end) = play(test(Region::Lower), "140");
        assert_eq!(tries, ["147.5", "132.5", "140", "142.5"]);
        assert!(matches!(end, After::Max { max, .. } if max == kg("140")));
        assert_eq!(play(test(Region::Upper), "50").1, After::NoMax);
    }

    #[test]
    fn never_more_than_the_tries() {
        let (tries, end) = play(test(Region::Upper), "400");
        assert_eq!(tries.len(), 5);
        assert!(matches!(end, After::Max { because: Over::Tries, .. }));
        let two = Test { most_tries: 2, ..test(Region::Upper) };
        assert_eq!(play(two, "400").0.len(), 2);
    }

    #[test]
    fn every_load_lies_between_what_was_lifted_and_missed() {
        for real in ["120", "141", "150", "153", "158", "161", "170", "200"] {
            for region in [Region::Upper, Region::Lower] {
                let (tries, end) = play(test(region), real);
                let lifted: Vec<_> = tries.iter().map(|load| kg(load) <= kg(real)).collect();
                for (nth, load) in tries.iter().enumerate() {
                    for (earlier, ok) in tries.iter().zip(&lifted).take(nth) {
                        let heavier = kg(load) > kg(earlier);
                        assert_eq!(heavier, *ok, "{real}: {tries:?}");
                    }
                }
                if let After::Max { max, .. } = end {
                    assert!(max <= kg(real));
                }
            }
        }
    }
}
