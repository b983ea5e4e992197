//! The max that percentages are taken from, raised by tests or estimates as the plan lets it; and
//! what estimates support.

use std::collections::BTreeMap;

use super::estimate::{Estimate, Formula, MOST_REPS_FOR_REFERENCE, Nearness, is_estimated};
use crate::catalogue::Catalogue;
use crate::desk::{Desk, DeskEvent, MaxFact, MaxOrigin};
use crate::history::DoneSet;
use crate::plan::{Plan, RaiseMax};
use crate::quantity::{Mass, MassUnit, Reps, Reserve, Rounding};
use crate::session::{Ending, SetKind};
use crate::volume::EASIEST_HARD;

/// The maxes that a session changes, each by the plan's rule for its lift. Estimates count for the
/// lifts that are estimated unasked; a test counts for any.
pub fn changed_by<'a>(
    plan: &Plan,
    catalogue: &Catalogue,
    desk: &Desk,
    sets: impl IntoIterator<Item = &'a DoneSet>,
    step: Mass,
) -> Vec<DeskEvent> {
    let mut lifts: BTreeMap<&str, Vec<DoneSet>> = BTreeMap::new();
    for set in sets {
        lifts.entry(&set.exercise).or_default().push(set.clone());
    }
    let changed = lifts.into_iter().filter_map(|(lift, sets)| {
        let own = plan.maxes.iter().find(|rule| rule.lift == lift).and_then(|rule| rule.raise);
        let rule = match own.unwrap_or(plan.raise_max) {
            RaiseMax::Estimates if !catalogue.get(lift).is_some_and(is_estimated) => {
                RaiseMax::Tests
            }
            rule => rule,
        };
        let day = sets.first()?.day;
        let current = desk.max_on(lift, day).map(|fact| fact.mass);
        let fact = raised(current, rule, &sets, Formula::default(), step)?;
        Some(DeskEvent::MaxKept { exercise: lift.to_owned(), fact })
    });
    changed.collect()
}

/// What an estimate that raises a max is taken down to in a gym of that unit: a half kilogram or a
/// whole pound.
pub const fn step_in(unit: MassUnit) -> Mass {
    match unit {
        MassUnit::Kilogram => Mass::from_nanograms(MassUnit::Kilogram.nanograms() / 2),
        MassUnit::Pound => Mass::whole(1, MassUnit::Pound),
    }
}

/// The max that today's sets raise it to, if the plan lets them: the heaviest single of a test; or
/// the best estimate of a hard set with no more than ten repetitions to failure. Never lower than
/// it was by an estimate, which is taken down to a multiple of `step`.
///
/// The caller gives the sets of one lift of one day, its own history and no substitute's.
pub fn raised(
    current: Option<Mass>,
    rule: RaiseMax,
    sets: &[DoneSet],
    formula: Formula,
    step: Mass,
) -> Option<MaxFact> {
    if rule == RaiseMax::Never {
        return None;
    }
    let tested = sets
        .iter()
        .filter(|set| set.kind == SetKind::Test && set.helped == 0)
        .filter(|set| set.ending == Ending::AsCalled)
        .filter(|set| set.amount().reps().is_some_and(|reps| reps >= 1))
        .filter_map(|set| Some((set.moved?, set.day)))
        .max();
    if let Some((mass, day)) = tested {
        // A test says what the max is today, higher or lower; one that was cut short before
        // anything heavier was missed, or nothing was left, only that it is no less.
        let found = sets.iter().filter(|set| set.kind == SetKind::Test).any(|set| {
            let failed = set.ending == Ending::Failed && set.moved > Some(mass);
            failed || (set.moved == Some(mass) && set.left == Some(Reserve::NONE))
        });
        if !found && current.is_some_and(|current| mass < current) {
            return None;
        }
        let fact = MaxFact { mass, day, origin: MaxOrigin::Tested };
        return (current != Some(mass)).then_some(fact);
    }
    if rule != RaiseMax::Estimates {
        return None;
    }
    sets.iter()
        .filter_map(|set| {
            let (reps, nearness) = raising(set)?;
            let estimate = Estimate::of(set.moved?, reps, nearness, formula).ok()?;
            Some((estimate.max.to_multiple(step, Rounding::Down)?, set.day))
        })
        .max()
        .filter(|(max, _)| current.is_none_or(|current| *max > current))
        .map(|(mass, day)| {
            let origin = MaxOrigin::Raised { formula: formula.slug().into() };
            MaxFact { mass, day, origin }
        })
}

/// The estimate that a set gives, if it is evidence of one: called or failed, no parts, no help,
/// no bands, and not of a warm-up.
pub fn estimate(set: &DoneSet, formula: Formula) -> Option<Estimate> {
    let (reps, nearness) = evidence(set)?;
    Estimate::of(set.moved?, reps, nearness, formula).ok()
}

/// The figure that estimates support for so many repetitions with so many left: what is moved by
/// the best of them, less the body's part. `None` with none to go by, or outside their range.
pub fn supported(
    estimates: impl IntoIterator<Item = Estimate>,
    reps: Reps,
    left: Reserve,
    body: Mass,
) -> Option<Mass> {
    let best = estimates.into_iter().max_by_key(|estimate| estimate.max)?;
    best.formula.load_for(best.max, reps, left).ok()?.checked_sub(body)
}

/// As [`estimate`], of a hard set with few enough repetitions to raise a max.
pub fn hard_estimate(set: &DoneSet, formula: Formula) -> Option<Estimate> {
    let (reps, nearness) = raising(set)?;
    Estimate::of(set.moved?, reps, nearness, formula).ok()
}

fn evidence(set: &DoneSet) -> Option<(Reps, Nearness)> {
    let [part] = set.parts.as_slice() else { return None };
    if !set.is_work() || set.helped > 0 || set.bands.is_some() {
        return None;
    }
    let nearness = match (set.ending, set.left) {
        (Ending::Failed, _) => Nearness::Failed,
        (Ending::AsCalled | Ending::Form, Some(left)) => Nearness::Called(left),
        _ => return None,
    };
    Some((part.amount.reps()?, nearness))
}

/// As [`evidence`], of a hard set with few enough repetitions to failure to raise a max.
fn raising(set: &DoneSet) -> Option<(Reps, Nearness)> {
    let (reps, nearness) = evidence(set)?;
    let left = match nearness {
        Nearness::Failed => Reserve::NONE,
        Nearness::Called(left) => left,
    };
    let halves = reps.saturating_mul(2).saturating_add(u16::from(left.halves()));
    (left <= EASIEST_HARD && halves <= MOST_REPS_FOR_REFERENCE * 2).then_some((reps, nearness))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::call::{Amount, HowMany};
    use crate::catalogue::Counting;
    use crate::history::{DonePart, SetKey};
    use crate::quantity::{Numerals, Range};
    use crate::session::{EntryId, SetId};

    fn kg(text: &str) -> Mass {
        Mass::read(&format!("{text} kg"), Numerals::Point).unwrap()
    }

    fn set(moved: &str, reps: Reps, halves_left: Option<u8>) -> DoneSet {
        let figure = Some(kg(moved));
        DoneSet {
            key: SetKey { session: 1, set: SetId { entry: EntryId(0), set: 0 } },
            day: 20_000,
            exercise: "front-squat".into(),
            kind: SetKind::Work,
            row: 0,
            round: 1,
            side: None,
            asked: HowMany::Reps(Range::just(reps)),
            target: None,
            meant: figure,
            figure,
            counting: Counting::Total,
            moved: figure,
            bands: None,
            technique: None,
            set_up: Vec::new(),
            kit: Vec::new(),
            parts: vec![DonePart { amount: Amount::Reps(reps), figure, slowing: None }],
            left: halves_left.and_then(Reserve::from_halves),
            helped: 0,
            ending: Ending::AsCalled,
        }
    }

    fn raise(rule: RaiseMax, current: &str, sets: &[DoneSet]) -> Option<MaxFact> {
        raised(Some(kg(current)), rule, sets, Formula::Epley, kg("0.5"))
    }

    #[test]
    fn estimates_raise_and_never_lower() {
        // 140 · (1 + 6/30) = 168, five with one left.
        let sets = [set("140", 5, Some(2)), set("130", 5, Some(2))];
        let raised = raise(RaiseMax::Estimates, "160", &sets).unwrap();
        assert_eq!((raised.mass, raised.day), (kg("168"), 20_000));
        assert_eq!(raised.origin, MaxOrigin::Raised { formula: "epley".into() });
        assert_eq!(raise(RaiseMax::Estimates, "170", &sets), None);
        assert_eq!(raise(RaiseMax::Tests, "160", &sets), None);
        assert_eq!(raise(RaiseMax::Never, "160", &sets), None);
        // 142.5 · (1 + 6.5/30) = 173.375, taken down to a half kilogram.
        let sets = [set("142.5", 6, Some(1))];
        assert_eq!(raise(RaiseMax::Estimates, "160", &sets).unwrap().mass, kg("173"));
    }

    #[test]
    fn what_raises_no_max() {
        let usual = set("140", 5, Some(0));
        assert!(raise(RaiseMax::Estimates, "100", std::slice::from_ref(&usual)).is_some());
        for set in [
            set("140", 11, Some(0)),
            set("140", 9, Some(3)),
            set("140", 5, Some(9)),
            set("140", 5, None),
            DoneSet { helped: 1, ..usual.clone() },
            DoneSet { bands: Some("green band".into()), ..usual.clone() },
            DoneSet { kind: SetKind::Ramp, ..usual.clone() },
            DoneSet { ending: Ending::Pain, ..usual.clone() },
            DoneSet { parts: [usual.parts.clone(), usual.parts.clone()].concat(), ..usual.clone() },
        ] {
            assert_eq!(
                raise(RaiseMax::Estimates, "100", std::slice::from_ref(&set)),
                None,
                "{set:?}"
            );
        }
        let failed = DoneSet { ending: Ending::Failed, ..set("140", 10, None) };
        assert!(raise(RaiseMax::Estimates, "100", &[failed]).is_some());
    }

    #[test]
    fn a_test_says_what_it_is() {
        let try_of = |moved, reps| DoneSet { kind: SetKind::Test, ..set(moved, reps, None) };
        let missed = DoneSet { ending: Ending::Failed, ..try_of("162.5", 0) };
        let tries = [try_of("150", 1), try_of("157.5", 1), missed];
        let tested = raise(RaiseMax::Tests, "160", &tries).unwrap();
        assert_eq!((tested.mass, tested.origin), (kg("157.5"), MaxOrigin::Tested));
        assert_eq!(raise(RaiseMax::Never, "160", &tries), None);
        assert_eq!(raise(RaiseMax::Tests, "160", &[try_of("165", 0)]), None);
        // Cut short: what was lifted is no less than that, and lowers nothing.
        assert_eq!(raise(RaiseMax::Tests, "160", &tries[..2]), None);
        assert_eq!(raise(RaiseMax::Tests, "155", &tries[..2]).unwrap().mass, kg("157.5"));
        // A single that failed, or that form went in, is no lift, whatever figure stood beside it.
        for ending in [Ending::Failed, Ending::Form, Ending::Pain] {
            let failed = DoneSet { ending, ..try_of("170", 1) };
            assert_eq!(raise(RaiseMax::Tests, "160", &[failed]), None);
        }
    }

    #[test]
    fn each_lift_by_its_own_rule() {
        let text = r#"
            name = "Maxes"
            weeks = 1
            raise_max = "estimates"
            [[max]]
            lift = "Bench press"
            raise = "never"
            [[session]]
            name = "One"
            [[session.exercise]]
            name = "Front squat"
            sets = 1
            reps = 5
            load = "80 %"
        "#;
        let catalogue = Catalogue::builtin();
        let plan = Plan::read(text, &catalogue).unwrap().plan;
        let of =
            |exercise: &str| DoneSet { exercise: exercise.to_owned(), ..set("140", 5, Some(2)) };
        let sets = ["front-squat", "bench-press", "leg-press"].map(of);
        let changed = changed_by(&plan, &catalogue, &Desk::default(), &sets, kg("0.5"));
        let [DeskEvent::MaxKept { exercise, fact }] = changed.as_slice() else {
            panic!("{changed:?}")
        };
        assert_eq!((exercise.as_str(), fact.mass), ("front-squat", kg("168")));
        // What it was raised to is no news the next time.
        let mut desk = Desk::default();
        desk.apply(1, &changed[0]);
        assert_eq!(changed_by(&plan, &catalogue, &desk, &sets, kg("0.5")), []);
    }

    #[test]
    fn what_the_estimates_support() {
        let estimate = |load| Estimate::of(kg(load), 5, Nearness::Failed, Formula::Epley).unwrap();
        let left = Reserve::from_halves(2).unwrap();
        // The best is 120 · 7/6 = 140; for four with one left, 140 / (1 + 5/30) = 120.
        let figure = supported([estimate("110"), estimate("120")], 4, left, Mass::ZERO);
        assert_eq!(figure, Some(kg("120")));
        assert_eq!(supported([estimate("120")], 4, left, kg("80")), Some(kg("40")));
        assert_eq!(supported([estimate("120")], 1, Reserve::NONE, Mass::ZERO), Some(kg("140")));
        assert_eq!(supported([], 4, left, Mass::ZERO), None);
        assert_eq!(supported([estimate("120")], 30, left, Mass::ZERO), None);
    }
}
