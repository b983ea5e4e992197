//! What a lifter could lift, rested, on the first day of the plan.

use std::collections::BTreeMap;

use barwright_domain::call::{EffortTarget, HowMany, LoadCall, MaxOf, Stop, Structure};
use barwright_domain::catalogue::{Catalogue, Counting, Exercise, Measure, Movement};
use barwright_domain::equipment::{Equipment, Offer};
use barwright_domain::plan::{Plan, SetCall};
use barwright_domain::quantity::{Mass, Percent, Range, Reserve};

use crate::chance::Chance;
use crate::model;
use crate::person::Person;

/// The most repetitions that are reckoned with.
const MOST_REPS: f64 = 60.0;

/// Repetitions to failure at a share of the max: 1 at the whole of it, `slope` more for each whole
/// that the max is above the load. Below 1 the load can't be moved once.
pub(crate) fn reps_at(share: f64, slope: f64, enduring: f64) -> f64 {
    if share <= 0.0 {
        return MOST_REPS;
    }
    (1.0 + slope * enduring * (1.0 / share - 1.0)).clamp(0.0, MOST_REPS)
}

/// The share of the max at which the typical lifter makes so many repetitions to failure.
fn share_at(reps: f64, slope: f64) -> f64 {
    1.0 / (1.0 + (reps.max(1.0) - 1.0) / slope)
}

/// What a lifter has for an exercise.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) enum Capacity {
    /// A max, in kilograms moved as the exercise counts them.
    Max { kg: f64, slope: f64 },
    /// Repetitions, where the load has no number.
    Reps(f64),
    /// Seconds held.
    Seconds(f64),
    /// Metres carried.
    Metres(f64),
}

/// What the typical lifter has, as far as the plan tells.
#[derive(Debug, Clone, PartialEq)]
enum Typical {
    /// A share of body mass.
    OfBody(f64),
    /// What makes this load right for so many repetitions to failure: kilograms beside the body's
    /// share.
    Written {
        kg: f64,
        body: f64,
        reps: f64,
    },
    /// The same, with the load a share of another lift's max.
    OfLift {
        lift: String,
        share: f64,
        reps: f64,
    },
    /// So many repetitions at whatever is on.
    Reps(f64),
    Seconds(f64),
    Metres(f64),
}

/// An exercise by its slug, and how the plan counts it.
#[derive(Debug, Clone, Copy)]
struct Named<'a> {
    slug: &'a str,
    said: Option<Counting>,
}

/// What a plan's lifters have in each exercise. A coach writes a load for those who are to lift it:
/// where the plan gives kilograms, they are about right for each; where it takes shares of the lift's
/// own max, or the load is found, strength follows body mass.
#[derive(Debug)]
pub(crate) struct Lifts<'a> {
    exercises: BTreeMap<String, (&'a Exercise, Typical)>,
    /// Lifts whose max the plan asks for.
    asked: Vec<String>,
}

impl<'a> Lifts<'a> {
    pub(crate) fn of(plan: &Plan, catalogue: &'a Catalogue, gym: &Equipment) -> Self {
        let mut found = Self { exercises: BTreeMap::new(), asked: Vec::new() };
        let ordinary = |week: &usize| {
            use barwright_domain::call::WeekKind::Ordinary;
            plan.weeks.get(*week).is_some_and(|week| week.kind == Ordinary)
        };
        // What a lighter week says is no guide where an ordinary one says something.
        let all = 0..plan.weeks.len();
        let weeks = all.clone().filter(ordinary).chain(all.filter(|week| !ordinary(week)));
        for week in weeks {
            for index in 0..plan.sessions_of(week).len() {
                let Some(session) = plan.session(week, index) else { continue };
                for entry in &session.exercises {
                    for block in &entry.blocks {
                        for set in &block.sets {
                            let exercise = Named { slug: &entry.exercise, said: entry.counting };
                            found.set(gym, plan, catalogue, exercise, set, block.sets.len());
                        }
                    }
                    for substitute in &entry.substitutes {
                        let Some(block) = entry.blocks.first() else { continue };
                        let Some(set) = block.sets.first() else { continue };
                        let sets = substitute.sets.map_or(block.sets.len(), usize::from);
                        let set = SetCall {
                            how_many: substitute.how_many.unwrap_or(set.how_many),
                            load: substitute.load.clone().unwrap_or(LoadCall::ByFeel),
                            effort: substitute.effort.or(set.effort),
                            structure: Structure::Straight,
                            ..set.clone()
                        };
                        let exercise = Named { slug: &substitute.exercise, said: None };
                        found.set(gym, plan, catalogue, exercise, &set, sets);
                    }
                }
            }
        }
        found.asked.sort_unstable();
        found.asked.dedup();
        found
    }

    fn set(
        &mut self,
        gym: &Equipment,
        plan: &Plan,
        catalogue: &'a Catalogue,
        Named { slug, said }: Named<'_>,
        set: &SetCall,
        sets: usize,
    ) {
        let lift_of = |load: &LoadCall| match load {
            LoadCall::Percent { of: MaxOf::Own | MaxOf::Working, .. } => Some(slug.to_owned()),
            LoadCall::Percent { of: MaxOf::Lift(lift) | MaxOf::WorkingOf(lift), .. } => {
                Some(lift.clone())
            }
            _ => None,
        };
        if let Some(lift) = lift_of(&set.load) {
            if !self.exercises.contains_key(&lift)
                && let Some(exercise) = catalogue.get(&lift)
            {
                let typical = Typical::OfBody(of_body(exercise, exercise.counting));
                self.exercises.insert(lift.clone(), (exercise, typical));
            }
            self.asked.push(lift);
        }
        if let Structure::Continued { parts } = &set.structure {
            for part in parts {
                let further = SetCall {
                    how_many: part.how_many,
                    load: part.load.clone(),
                    structure: Structure::Straight,
                    ..set.clone()
                };
                let exercise = Named { slug: &part.exercise, said: None };
                self.set(gym, plan, catalogue, exercise, &further, sets);
            }
        }
        let Some(exercise) = catalogue.get(slug) else { return };
        // What its own max was asked for stands, whatever came before.
        if lift_of(&set.load).as_deref() == Some(slug) {
            let counting = said.unwrap_or(exercise.counting);
            let typical = Typical::OfBody(of_body(exercise, counting));
            self.exercises.insert(slug.to_owned(), (exercise, typical));
        }
        if !self.exercises.contains_key(slug) {
            let typical = typical(plan, gym, exercise, said, set, sets);
            self.exercises.insert(slug.to_owned(), (exercise, typical));
        }
    }

    /// What one lifter has of each exercise, and the maxes they enter.
    pub(crate) fn drawn(
        &self,
        person: &Person,
        chance: &mut Chance,
    ) -> (BTreeMap<String, Capacity>, Vec<(String, Mass)>) {
        let mut own: BTreeMap<String, Capacity> = BTreeMap::new();
        let mut entered = Vec::new();
        let mut later = Vec::new();
        for (slug, (exercise, typical)) in &self.exercises {
            let off = chance.factor(model::LIFT_DEVIATION);
            let right = chance.factor(model::WRITTEN_DEVIATION);
            let slope = slope(exercise);
            let max = |kg: f64| Capacity::Max { kg, slope };
            let capacity = match typical {
                Typical::OfBody(share) => max(share * person.body_kg * person.strong * off),
                Typical::Written { kg, body, reps } => {
                    let moved = (kg + body * person.body_kg).max(1.0);
                    max(moved / share_at(*reps, slope * person.enduring) * right)
                }
                Typical::OfLift { lift, share, reps } => {
                    later.push((slug, slope, lift, *share, *reps, right));
                    continue;
                }
                Typical::Reps(typical) => Capacity::Reps(typical * off),
                Typical::Seconds(seconds) => Capacity::Seconds(seconds * off * off),
                Typical::Metres(metres) => Capacity::Metres(metres * off * off),
            };
            own.insert(slug.clone(), capacity);
        }
        for (slug, slope, lift, share, reps, right) in later {
            let Some(Capacity::Max { kg, .. }) = own.get(lift) else { continue };
            let kg = kg * share / share_at(reps, slope * person.enduring) * right;
            own.insert(slug.clone(), Capacity::Max { kg, slope });
        }
        for lift in &self.asked {
            let Some(Capacity::Max { kg, .. }) = own.get(lift) else { continue };
            let mass = halves(kg * chance.factor(model::ENTERED_DEVIATION));
            entered.push((lift.clone(), mass));
        }
        (own, entered)
    }
}

/// Kilograms as a mass, down to the half.
pub(crate) fn halves(kg: f64) -> Mass {
    const HALF: i64 = 500;
    let whole = libm::floor(kg.clamp(0.5, 1_000.0) * 2.0);
    Mass::from_grams(whole as i64 * HALF).unwrap_or_default()
}

/// A mass in kilograms.
pub(crate) fn kg(mass: Mass) -> f64 {
    mass.nanograms() as f64 / 1e12
}

fn slope(exercise: &Exercise) -> f64 {
    let free = ["barbell", "dumbbell", "kettlebell", "bodyweight", "belt", "trap-bar", "ez-bar"];
    if free.contains(&exercise.implement.as_ref()) { model::FREE_WEIGHTS } else { model::MACHINES }
}

fn typical(
    plan: &Plan,
    gym: &Equipment,
    exercise: &Exercise,
    said: Option<Counting>,
    set: &SetCall,
    sets: usize,
) -> Typical {
    let middle = |from: f64, to: f64| (from + to) / 2.0;
    let reps = match set.how_many {
        // Room above the range's middle, so that it can be held as asked.
        HowMany::Seconds(Range { from, to }) => {
            return Typical::Seconds(1.2 * middle(from.count().into(), to.count().into()));
        }
        HowMany::Metres(Range { from, to }) => {
            let metres = |at: u32| f64::from(at) / 1_000.0;
            let middle = middle(metres(from.millimetres()), metres(to.millimetres()));
            return Typical::Metres(1.2 * middle);
        }
        HowMany::Reps(Range { from, to }) => middle(from.into(), to.into()),
        HowMany::Open { at_least, .. } => f64::from(at_least) + 2.0,
    };
    let reps = match &set.structure {
        Structure::Ranges { parts } => {
            parts.iter().map(|part| middle(part.reps.from.into(), part.reps.to.into())).sum()
        }
        _ => reps,
    };
    let to_failure = reps + left(set.effort, &set.how_many) + for_later(sets);
    let bare = gym.offers(&exercise.implement) == Offer::Pins;
    let counting = if bare { Counting::Unnumbered } else { said.unwrap_or(exercise.counting) };
    if counting == Counting::Unnumbered || exercise.measure != Measure::Reps {
        return Typical::Reps(to_failure);
    }
    let body = f64::from(exercise.body_share.hundredths()) / 10_000.0;
    let written = |kg: f64| Typical::Written { kg, body, reps: to_failure };
    match &set.load {
        LoadCall::Mass(mass) | LoadCall::SetUp { load: Some(mass), .. } => written(kg(*mass)),
        LoadCall::Added(mass) => written(kg(*mass)),
        LoadCall::Assisted(mass) => written(-kg(*mass)),
        LoadCall::Body if body > 0.0 => written(0.0),
        LoadCall::Percent { share, of: MaxOf::Lift(lift) } => {
            Typical::OfLift { lift: lift.clone(), share: of_whole(share.from), reps: to_failure }
        }
        LoadCall::Percent { share, of: MaxOf::WorkingOf(lift) } => {
            let own = plan.maxes.iter().find(|rule| rule.lift == *lift);
            let working = own.and_then(|rule| rule.working).unwrap_or(plan.working_max);
            Typical::OfLift {
                lift: lift.clone(),
                share: of_whole(share.from) * of_whole(working),
                reps: to_failure,
            }
        }
        LoadCall::Body | LoadCall::Pin(_) | LoadCall::SetUp { load: None, .. } => {
            Typical::Reps(to_failure)
        }
        LoadCall::ByFeel | LoadCall::OfTopSet(_) | LoadCall::Percent { .. } => {
            Typical::OfBody(of_body(exercise, counting))
        }
    }
}

/// Repetitions that a load for so many sets is lighter by.
pub(crate) fn for_later(sets: usize) -> f64 {
    model::LATER_SET * sets.saturating_sub(1).min(model::MOST_LATER) as f64
}

fn of_whole(share: Percent) -> f64 {
    f64::from(share.hundredths()) / 10_000.0
}

/// Repetitions left as a number.
pub(crate) fn reps_of(left: Reserve) -> f64 {
    f64::from(left.halves()) / 2.0
}

/// What a set leaves the lifter it is written for.
fn left(effort: Option<EffortTarget>, how_many: &HowMany) -> f64 {
    match (effort, how_many) {
        (Some(target), _) => f64::midpoint(reps_of(target.left.from), reps_of(target.left.to)),
        (None, HowMany::Open { stop: Stop::Reserve(left), .. }) => reps_of(*left),
        (None, HowMany::Open { .. }) => model::LEFT_UNASKED,
        (None, _) => model::LEFT_MEANT,
    }
}

/// The max of the typical lifter as a share of body mass, as the exercise counts it. All assumed:
/// someone who has trained for some years beside another sport.
fn of_body(exercise: &Exercise, counting: Counting) -> f64 {
    if exercise.implement == "leg-press" {
        return 2.6;
    }
    let body = of_whole(exercise.body_share);
    let all: f64 = match exercise.movement {
        Movement::Squat => 1.45,
        Movement::Hinge | Movement::Shrug => 1.75,
        Movement::Bridge => 1.8,
        Movement::Lunge | Movement::QuickLift => 1.0,
        Movement::HorizontalPush => 1.05,
        Movement::HorizontalPull => 0.95,
        Movement::VerticalPush if body > 0.0 => 1.4,
        Movement::VerticalPush => 0.68,
        Movement::VerticalPull if body > 0.0 => 1.3,
        Movement::VerticalPull => 1.0,
        Movement::CalfRaise => 1.6,
        Movement::Carry | Movement::Sled => 1.2,
        Movement::KneeExtension | Movement::HipExtension | Movement::TrunkExtension => 0.9,
        Movement::KneeFlexion | Movement::HipAdduction | Movement::HipAbduction => 0.7,
        Movement::ElbowFlexion | Movement::ElbowExtension | Movement::ChestFly => 0.45,
        Movement::TrunkFlexion | Movement::TrunkSide | Movement::TrunkRotation => 0.6,
        Movement::ShoulderAbduction
        | Movement::ShoulderFlexion
        | Movement::ShoulderExtension
        | Movement::RearFly
        | Movement::ShoulderRotation
        | Movement::Wrist
        | Movement::Neck
        | Movement::HipFlexion
        | Movement::ToeRaise
        | Movement::TrunkBrace
        | Movement::Jump
        | Movement::Throw => 0.3,
    };
    let held: f64 = match counting {
        // Two in the hands come to less than a bar.
        Counting::EachHand => 0.42,
        Counting::EachSide => 0.5,
        // One for both hands is what the arms can hold; one for one hand is half of two.
        Counting::One if exercise.one_sided => 0.42,
        Counting::One => 0.45,
        Counting::Total | Counting::Stack | Counting::Added | Counting::Unnumbered => 1.0,
    };
    // A leg by itself of what both do; a lunge is one already.
    let one = exercise.one_sided
        && !matches!(counting, Counting::One | Counting::EachHand)
        && exercise.movement != Movement::Lunge;
    let sides = if one { 0.55 } else { 1.0 };
    (all * held * sides).max(body * 1.05)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_share_is_where_the_repetitions_come_out() {
        for reps in [1.0, 3.0, 8.8, 14.0] {
            let share = share_at(reps, model::FREE_WEIGHTS);
            assert!((reps_at(share, model::FREE_WEIGHTS, 1.0) - reps).abs() < 1e-9, "{reps}");
        }
        assert!((reps_at(0.8, model::FREE_WEIGHTS, 1.0) - 8.8).abs() < 1e-9);
        assert!(reps_at(1.05, model::FREE_WEIGHTS, 1.0) < 1.0);
    }
}
