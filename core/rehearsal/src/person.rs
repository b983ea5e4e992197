//! Who an invented lifter is.

use crate::chance::Chance;
use crate::model;

/// What stays of a lifter through the whole plan.
#[derive(Debug, Clone)]
pub(crate) struct Person {
    /// Body mass in kilograms.
    pub(crate) body_kg: f64,
    /// How strong against the typical lifter of the same mass, in every lift.
    pub(crate) strong: f64,
    /// How many repetitions short of the max against the typical lifter.
    pub(crate) enduring: f64,
    /// How much training does against the typical lifter.
    pub(crate) answers: f64,
    /// How far off the calls are on the whole: above 0 feels more left than there is.
    pub(crate) bias: f64,
    /// Share of the sessions that are missed.
    pub(crate) misses: f64,
}

impl Person {
    pub(crate) fn drawn(chance: &mut Chance) -> Self {
        let kg = model::BODY_MASS_KG + model::BODY_MASS_DEVIATION_KG * chance.normal();
        Self {
            body_kg: kg.clamp(model::LIGHTEST_KG, model::HEAVIEST_KG),
            strong: chance.factor(model::STRENGTH_DEVIATION),
            enduring: enduring(chance),
            answers: chance.factor(model::ANSWER_DEVIATION),
            bias: model::CALL_BIAS_DEVIATION * chance.normal(),
            misses: 2.0 * model::MISSED_SHARE * chance.even(),
        }
    }
}

/// A factor on the repetitions beyond the first with mean 1 and the standard deviation that the
/// published one at 80 % comes to.
fn enduring(chance: &mut Chance) -> f64 {
    let share = model::REPS_AT_80_DEVIATION / (model::REPS_AT_80 - 1.0);
    let variance = libm::log(1.0 + share * share);
    libm::exp(libm::sqrt(variance) * chance.normal() - variance / 2.0)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::capacity::reps_at;

    /// 4 000 lifters; a mean is then within four standard errors, 0.0632 deviations, in all but one
    /// of some 16 000 runs, and the seed is fixed.
    const MANY: u32 = 4_000;

    fn mean_and_deviation(values: &[f64]) -> (f64, f64) {
        let count = f64::from(MANY);
        let mean = values.iter().sum::<f64>() / count;
        let square = values.iter().map(|value| (value - mean) * (value - mean)).sum::<f64>();
        (mean, libm::sqrt(square / (count - 1.0)))
    }

    fn of_all(one: impl Fn(&Person) -> f64) -> (f64, f64) {
        let persons = (0..MANY).map(|lifter| Person::drawn(&mut Chance::of(11, lifter)));
        mean_and_deviation(&persons.map(|person| one(&person)).collect::<Vec<_>>())
    }

    #[test]
    fn repetitions_at_80_and_70_percent_are_the_published_ones() {
        // Nuzzo et al. 2024, Sports Med 54:303–321 (published at second hand): bench press, mean
        // 8.8 repetitions at 80 % and 14.08 at 70 %; between people 2.51 at 80 %.
        let at = |share: f64| {
            move |person: &Person| reps_at(share, model::FREE_WEIGHTS, person.enduring)
        };
        let (mean, deviation) = of_all(at(0.8));
        assert!((mean - 8.8).abs() < 0.16, "{mean}");
        // The deviation's own standard error is wider for a lopsided distribution.
        assert!((deviation - 2.51).abs() < 0.25, "{deviation}");
        let (mean, _) = of_all(at(0.7));
        assert!((mean - 14.08).abs() < 0.6, "{mean}");
        // Leg press: 13.1 and 18.96; one slope can't have both, and lies between.
        let machine =
            |share| move |person: &Person| reps_at(share, model::MACHINES, person.enduring);
        assert!((of_all(machine(0.8)).0 - 13.1).abs() < 1.5);
        assert!((of_all(machine(0.7)).0 - 18.96).abs() < 1.8);
    }

    #[test]
    fn lifters_are_as_the_model_says() {
        let (mass, deviation) = of_all(|person| person.body_kg);
        assert!((mass - model::BODY_MASS_KG).abs() < 0.8, "{mass}");
        assert!((deviation - model::BODY_MASS_DEVIATION_KG).abs() < 0.8, "{deviation}");
        let (missed, _) = of_all(|person| person.misses);
        assert!((missed - model::MISSED_SHARE).abs() < 0.003, "{missed}");
        let (strong, _) = of_all(|person| libm::log(person.strong));
        assert!(strong.abs() < 0.013, "{strong}");
    }
}
