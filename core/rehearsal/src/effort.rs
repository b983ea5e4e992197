//! One part of a set: how many the lifter does, and what they feel is left.

use barwright_domain::call::{Amount, EffortTarget, HowMany, Stop};
use barwright_domain::quantity::{Distance, Range, Reps, Reserve, Seconds};
use barwright_domain::session::Ending;

use crate::capacity::reps_of;
use crate::chance::Chance;
use crate::model;
use crate::person::Person;

/// What a part asks, and how far the lifter means to go.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Asked {
    pub(crate) how_many: HowMany,
    pub(crate) target: Option<EffortTarget>,
    /// The last set of a rule that looks at how far it goes: past the goal, while some are left.
    pub(crate) goes_on: bool,
    /// A further part of a set that is taken as far as it goes: nobody falls short of it.
    pub(crate) as_it_goes: bool,
    /// Sets of the row.
    pub(crate) sets: usize,
    /// Seconds that a repetition takes.
    pub(crate) a_rep: f64,
}

/// What it came to.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Came {
    pub(crate) amount: Amount,
    pub(crate) ending: Ending,
    /// What is called, where effort is asked.
    pub(crate) called: Option<Reserve>,
    /// Repetitions that were truly left.
    pub(crate) left: f64,
}

/// How a lifter judges one set.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Judgement {
    /// Repetitions off, where it is judged close to failure and far from it.
    near: f64,
    far: f64,
}

impl Judgement {
    /// The lifter's judgement of one set.
    pub(crate) fn of(person: &Person, chance: &mut Chance) -> Self {
        let own = model::CALL_BIAS_DEVIATION;
        let rest = libm::sqrt(model::CALL_DEVIATION * model::CALL_DEVIATION - own * own);
        let near = person.bias + rest * chance.normal();
        Self { near, far: near * model::CALL_DEVIATION_FAR / model::CALL_DEVIATION }
    }

    /// What is felt where so many are truly left.
    pub(crate) fn felt(&self, left: f64) -> f64 {
        let off = if left >= 7.0 {
            self.far
        } else if left > 5.0 {
            self.near + (self.far - self.near) * (left - 5.0) / 2.0
        } else {
            let close = model::CALL_AT_NONE + (1.0 - model::CALL_AT_NONE) * left.max(0.0) / 2.0;
            self.near * close.min(1.0)
        };
        (left + off).max(0.0)
    }

    /// The same as a call, by halves.
    pub(crate) fn call(&self, left: f64) -> Option<Reserve> {
        let halves = libm::rint(self.felt(left) * 2.0).clamp(0.0, 40.0);
        Reserve::from_halves(halves as u8)
    }
}

/// A part of repetitions, with so many to failure.
pub(crate) fn reps(asked: &Asked, possible: f64, judgement: Judgement) -> Came {
    let can = libm::floor(possible + 1e-9).max(0.0);
    let left_at = |reps: f64| possible - reps;
    // As far as the lifter feels that so many are left; the next would be felt as fewer.
    let while_left = |least: f64| {
        let mut reps = 0.0;
        while reps < can && judgement.felt(left_at(reps + 1.0)) >= least {
            reps += 1.0;
        }
        reps
    };
    let hardest = asked.target.map(|target| reps_of(target.left.from));
    let (least, wanted): (f64, f64) = match asked.how_many {
        HowMany::Reps(Range { from, to }) => {
            let (from, to) = (f64::from(from), f64::from(to));
            let least = hardest.unwrap_or(model::LEFT_UNASKED);
            if asked.goes_on {
                (from, while_left(least.max(model::LEFT_UNASKED)).max(from))
            } else {
                (from, while_left(least).clamp(from, to))
            }
        }
        HowMany::Open { at_least, stop } => {
            let from = f64::from(at_least);
            let by_time = match stop {
                Stop::Time(seconds) => f64::from(seconds.count()) / asked.a_rep.max(0.1),
                Stop::Reserve(_) | Stop::Form | Stop::Pace => f64::INFINITY,
            };
            let least = match stop {
                Stop::Reserve(left) => reps_of(left),
                Stop::Form | Stop::Time(_) => hardest.unwrap_or(model::LEFT_UNASKED),
                // The pace drops before the last ones do.
                Stop::Pace => hardest.unwrap_or(2.0 * model::LEFT_UNASKED),
            };
            (from, while_left(least).min(libm::floor(by_time)).max(from))
        }
        HowMany::Seconds(_) | HowMany::Metres(_) => (0.0, 0.0),
    };
    let done = wanted.min(can);
    let failed = done < least && !asked.as_it_goes;
    let left = if failed { 0.0 } else { left_at(done) };
    let called = (asked.target.is_some() && !failed).then(|| judgement.call(left)).flatten();
    Came {
        amount: Amount::Reps(done as Reps),
        ending: if failed { Ending::Failed } else { Ending::AsCalled },
        called,
        left,
    }
}

/// A hold or a carry, with so many seconds or metres in the lifter.
pub(crate) fn lasting(how_many: HowMany, possible: f64) -> Came {
    let (from, to) = match how_many {
        HowMany::Seconds(Range { from, to }) => (f64::from(from.count()), f64::from(to.count())),
        HowMany::Metres(Range { from, to }) => {
            let metres = |at: Distance| f64::from(at.millimetres()) / 1_000.0;
            (metres(from), metres(to))
        }
        HowMany::Reps(_) | HowMany::Open { .. } => (0.0, 0.0),
    };
    let done = libm::floor(possible).clamp(1.0, to.max(1.0));
    let amount = match how_many {
        HowMany::Metres(_) => Amount::Metres(Distance::from_millimetres((done * 1_000.0) as u32)),
        _ => Amount::Seconds(Seconds::new(done as u32)),
    };
    let ending = if done < from { Ending::Failed } else { Ending::AsCalled };
    Came { amount, ending, called: None, left: (possible - done).max(0.0) }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn judgements() -> Vec<Judgement> {
        (0..4_000)
            .map(|lifter| {
                let mut chance = Chance::of(5, lifter);
                let person = Person::drawn(&mut chance);
                Judgement::of(&person, &mut chance)
            })
            .collect()
    }

    /// Mean distance of the call from the truth, over lifters and the lefts given.
    fn off(lefts: &[f64]) -> f64 {
        let all = judgements();
        let sum: f64 = lefts
            .iter()
            .flat_map(|left| all.iter().map(move |one| (one, *left)))
            .map(|(one, left)| (reps_of(one.call(left).unwrap()) - left).abs())
            .sum();
        sum / (lefts.len() * all.len()) as f64
    }

    #[test]
    fn calls_are_as_far_off_as_published() {
        // Hackett et al. 2017, JSCR 31(8):2162–2168 (published): within about one repetition at 0–5
        // left, more than two off at 7–10.
        let near = off(&[0.0, 1.0, 2.0, 3.0, 4.0, 5.0]);
        assert!((0.5..=1.0).contains(&near), "{near}");
        let far = off(&[7.0, 8.0, 9.0, 10.0]);
        assert!((2.0..=3.0).contains(&far), "{far}");
        // A last repetition that crawls tells itself apart.
        assert!(off(&[0.0]) < 0.3);
    }

    fn asked(from: Reps, to: Reps) -> Asked {
        let left =
            Range { from: Reserve::from_halves(2).unwrap(), to: Reserve::from_halves(4).unwrap() };
        Asked {
            how_many: HowMany::Reps(Range { from, to }),
            target: Some(EffortTarget::left(left.from, left.to)),
            goes_on: false,
            as_it_goes: false,
            sets: 1,
            a_rep: 3.0,
        }
    }

    #[test]
    fn a_lifter_who_judges_well_stops_where_asked() {
        let exact = Judgement { near: 0.0, far: 0.0 };
        let done = |came: Came| (came.amount.reps().unwrap(), came.ending);
        // Nine and a half to failure: at eight one and a half are left, at nine half of one.
        assert_eq!(done(reps(&asked(6, 10), 9.5, exact)), (8, Ending::AsCalled));
        // The range ends it, or what can be done at all.
        assert_eq!(done(reps(&asked(6, 10), 20.0, exact)), (10, Ending::AsCalled));
        assert_eq!(done(reps(&asked(6, 10), 5.7, exact)), (5, Ending::Failed));
        // The least is done even where it leaves less than asked.
        assert_eq!(done(reps(&asked(6, 10), 6.2, exact)), (6, Ending::AsCalled));
        let drop = Asked { as_it_goes: true, ..asked(12, 12) };
        assert_eq!(done(reps(&drop, 6.5, exact)), (6, Ending::AsCalled));
        let goes_on = Asked { goes_on: true, ..asked(7, 7) };
        assert_eq!(done(reps(&goes_on, 10.5, exact)), (9, Ending::AsCalled));
    }

    #[test]
    fn a_hold_ends_with_its_range_or_with_the_lifter() {
        let range = Range { from: Seconds::new(30), to: Seconds::new(45) };
        let came = |possible| lasting(HowMany::Seconds(range), possible);
        assert_eq!(came(50.0).amount, Amount::Seconds(Seconds::new(45)));
        assert_eq!(came(38.9).amount, Amount::Seconds(Seconds::new(38)));
        assert_eq!(came(20.0).ending, Ending::Failed);
    }
}
