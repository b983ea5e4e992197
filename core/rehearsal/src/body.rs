//! What training does to the muscles: fitness and fatigue from day to day, tiredness from set to
//! set.

use barwright_domain::catalogue::{Exercise, Muscle};

use crate::model;

/// Days in a week, as a number to divide by.
const WEEK: f64 = 7.0;

/// A figure for each muscle.
pub(crate) type Each = [f64; Muscle::ALL.len()];

/// The state of a lifter's muscles.
#[derive(Debug, Clone)]
pub(crate) struct Body {
    /// Hard sets that are still felt as strength, more slowly forgotten.
    fitness: Each,
    /// What fitness was when the maxes were what they are.
    at_first: Each,
    /// Sets that are still felt as weakness, sooner forgotten.
    fatigue: Each,
    /// What a hard set is worth: more where the plan has few.
    worth: Each,
    day: i32,
    /// How tired within the session, as a share of strength.
    tired: Each,
    at_ms: i64,
}

impl Body {
    /// A lifter before a plan with so many hard sets a week: who did a part of them until now, and
    /// is rested.
    pub(crate) fn rested(weekly: &Each, day: i32) -> Self {
        let worth = weekly.map(|sets| libm::sqrt(model::USUAL_WEEK / sets.max(1.0)));
        let mut held = weekly.map(|sets| model::BEFORE * sets / WEEK * model::FITNESS_DAYS);
        for (held, worth) in held.iter_mut().zip(&worth) {
            *held *= worth;
        }
        let none = [0.0; Muscle::ALL.len()];
        Self { fitness: held, at_first: held, fatigue: none, worth, day, tired: none, at_ms: 0 }
    }

    /// Lets days pass.
    pub(crate) fn wake(&mut self, day: i32) {
        let days = f64::from(day.saturating_sub(self.day).max(0));
        self.day = day;
        let keep = |constant: f64| libm::exp(-days / constant);
        let (fitness, fatigue) = (keep(model::FITNESS_DAYS), keep(model::FATIGUE_DAYS));
        self.fitness = self.fitness.map(|had| had * fitness);
        self.fatigue = self.fatigue.map(|had| had * fatigue);
        self.tired = [0.0; Muscle::ALL.len()];
    }

    /// The strength for an exercise against the first day's, rested between sets or not.
    pub(crate) fn strength(&self, exercise: &Exercise, answers: f64) -> f64 {
        let gained = self.mean(exercise, |at| {
            let gain = answers * model::FITNESS_A_SET;
            let more = get(&self.fitness, at) - get(&self.at_first, at);
            1.0 + gain * more - model::FATIGUE_A_SET * get(&self.fatigue, at)
        });
        let fresh = self.mean(exercise, |at| 1.0 - get(&self.tired, at));
        (gained * fresh).max(0.4)
    }

    fn mean(&self, exercise: &Exercise, one: impl Fn(Muscle) -> f64) -> f64 {
        let direct = exercise.direct.as_ref();
        if direct.is_empty() {
            return 1.0;
        }
        direct.iter().map(|muscle| one(*muscle)).sum::<f64>() / direct.len() as f64
    }

    /// Lets the time of a rest pass within a session.
    pub(crate) fn rest(&mut self, now_ms: i64) {
        let seconds = now_ms.saturating_sub(self.at_ms).max(0) as f64 / 1_000.0;
        self.at_ms = now_ms;
        let keep = libm::exp(-seconds / model::TIRED_SECONDS);
        self.tired = self.tired.map(|had| had * keep);
    }

    /// A set that took this share of the repetitions there were, 1 to failure, and is worth so much
    /// of a hard set.
    pub(crate) fn work(&mut self, exercise: &Exercise, taken: f64, worth: f64) {
        let taken = taken.clamp(0.0, 1.1);
        let near = taken * taken;
        let both = [(exercise.direct.as_ref(), 1.0), (exercise.indirect.as_ref(), 0.5)];
        for (muscles, part) in both {
            for muscle in muscles {
                add(&mut self.tired, *muscle, part * near * model::TIRED_A_SET);
                add(&mut self.fatigue, *muscle, part * near);
                let each = get(&self.worth, *muscle);
                add(&mut self.fitness, *muscle, part * worth * each);
            }
        }
    }
}

fn get(each: &Each, muscle: Muscle) -> f64 {
    each.get(muscle as usize).copied().unwrap_or_default()
}

fn add(each: &mut Each, muscle: Muscle, more: f64) {
    if let Some(had) = each.get_mut(muscle as usize) {
        *had += more;
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use barwright_domain::catalogue::Catalogue;

    /// Strength after so many weeks of `sets` sets of the squat to two left, one session a week,
    /// `rest` days after the last, where the plan was to have `planned`.
    fn after(weeks: i32, planned: f64, sets: u32, rest: i32) -> f64 {
        let catalogue = Catalogue::builtin();
        let squat = catalogue.get("back-squat").unwrap();
        let mut body = Body::rested(&[planned; Muscle::ALL.len()], 0);
        for week in 0..weeks {
            body.wake(week * 7);
            for _ in 0..sets {
                body.work(squat, 0.8, 1.0);
            }
        }
        body.wake((weeks - 1) * 7 + rest);
        body.strength(squat, 1.0)
    }

    #[test]
    fn more_than_before_makes_stronger_and_less_does_not() {
        // Ten where there were four: some 9 % in twelve weeks, less what ten days without cost.
        let gained = after(12, 10.0, 10, 10);
        assert!((1.04..1.09).contains(&gained), "{gained}");
        // Few sets make stronger too, and not in proportion less.
        let few = after(12, 3.0, 3, 10);
        assert!(few > 1.015 && few < gained, "{few}");
        assert!(after(12, 10.0, 3, 10) < 1.0);
        // Nothing for three weeks is felt.
        assert!(after(12, 10.0, 10, 28) < gained);
    }

    #[test]
    fn fatigue_hides_strength_for_some_days() {
        assert!(after(12, 10.0, 10, 1) < after(12, 10.0, 10, 6));
    }

    #[test]
    fn a_rest_gives_back_most_of_what_a_set_took() {
        let catalogue = Catalogue::builtin();
        let squat = catalogue.get("back-squat").unwrap();
        let mut body = Body::rested(&[0.0; Muscle::ALL.len()], 0);
        let fresh = body.strength(squat, 1.0);
        body.work(squat, 1.0, 1.0);
        let tired = body.strength(squat, 1.0);
        body.rest(180_000);
        let rested = body.strength(squat, 1.0);
        assert!(tired < rested && rested < fresh, "{tired} {rested} {fresh}");
        assert!(fresh - rested > 0.015, "three minutes are not enough for all of it");
    }
}
