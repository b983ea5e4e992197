//! Plate changes checked against every walk through every loading there is, by brute force.

use barwright_domain::equipment::changes::{Changes, Ramp, Wanted, plan};
use barwright_domain::equipment::{Bar, Equipment, Plate, PlateStock, Rig, builtin_in};
use barwright_domain::quantity::{Length, Mass, MassUnit, Numerals};
use proptest::prelude::*;

fn mass(text: &str) -> Mass {
    Mass::read(text, Numerals::Point).expect("a mass")
}

fn plates(label: &str, pairs: u8) -> PlateStock {
    PlateStock {
        label: label.into(),
        mass: mass(label),
        pairs,
        single: 0,
        thickness: None,
        diameter: None,
        colour: None,
    }
}

fn gym(plates: Vec<PlateStock>, sleeve: Option<Length>) -> Equipment {
    let bar = Bar {
        name: "Long".into(),
        kind: "barbell".into(),
        mass: mass("20 kg"),
        collars: Mass::ZERO,
        sleeve,
    };
    Equipment { name: "Boathouse".into(), bars: vec![bar], plates, ..Equipment::default() }
}

fn on(gym: &Equipment, labels: &[&str]) -> Rig {
    let side = labels.iter().map(|label| Plate { label: (*label).into(), mass: mass(label) });
    gym.bars.first().expect("a bar").with(side.collect())
}

fn ramp(loads: &[&str], firm: usize) -> Vec<Wanted> {
    let first_firm = loads.len() - firm;
    let wanted = |(n, load): (usize, &&str)| Wanted { load: mass(load), firm: n >= first_firm };
    loads.iter().enumerate().map(wanted).collect()
}

fn planned(gym: &Equipment, now: &Rig, sets: &[Wanted], slack: &str) -> Changes {
    let slack = mass(slack);
    let ramp = Ramp { on_now: Some(now), sets, slack, full_size: false, one_side: false };
    plan(gym, "barbell", &ramp).expect("a plan")
}

fn labels(plates: &[Plate]) -> Vec<&str> {
    plates.iter().map(|plate| plate.label.as_str()).collect()
}

fn sides(changes: &Changes) -> Vec<Vec<&str>> {
    changes.steps.iter().map(|step| labels(step.made.rig.side())).collect()
}

/// Every way to load one end, the heavier inside: places of sizes, heaviest first.
fn loadings(stocks: &[PlateStock], sleeve: Option<Length>) -> Vec<Vec<usize>> {
    let mut all = vec![vec![]];
    for (at, stock) in stocks.iter().enumerate() {
        all = all
            .into_iter()
            .flat_map(|side: Vec<usize>| {
                (0..=stock.pairs).map(move |n| {
                    let mut side = side.clone();
                    side.extend(std::iter::repeat_n(at, n.into()));
                    side
                })
            })
            .collect();
    }
    let thick = |side: &[usize]| -> u32 {
        side.iter().map(|at| stocks[*at].thickness.map_or(0, |t| u32::from(t.tenths()))).sum()
    };
    all.retain(|side| sleeve.is_none_or(|sleeve| thick(side) <= u32::from(sleeve.tenths())));
    all
}

/// Moves, departure and plates of the best walk, by the words and nothing cleverer.
fn by_brute_force(
    gym: &Equipment,
    now: &[Mass],
    sets: &[Wanted],
    slack: Mass,
    full_size: bool,
) -> Option<(usize, i64, usize)> {
    let mut stocks = gym.plates.clone();
    stocks.sort_by_key(|stock| std::cmp::Reverse(stock.mass));
    let bar = gym.bars.first().expect("a bar");
    let mut all = loadings(&stocks, bar.sleeve);
    if full_size {
        all.retain(|side| side.iter().any(|at| stocks[*at].is_full_size()));
    }
    let masses: Vec<Vec<Mass>> =
        all.iter().map(|side| side.iter().map(|at| stocks[*at].mass).collect()).collect();
    let total = |side: &[Mass]| {
        let side: i64 = side.iter().map(|mass| mass.nanograms()).sum();
        Mass::from_nanograms(bar.mass.nanograms() + bar.collars.nanograms() + 2 * side)
    };
    let moves = |a: &[Mass], b: &[Mass]| {
        let shared = a.iter().zip(b).take_while(|(a, b)| a == b).count();
        a.len() + b.len() - 2 * shared
    };
    let mut costs: Vec<(Vec<Mass>, (usize, i64, usize))> = vec![(now.to_vec(), (0, 0, 0))];
    for wanted in sets {
        let miss = |side: &[Mass]| total(side).distance(wanted.load);
        let nearest = masses.iter().min_by_key(|side| (miss(side), total(side)))?;
        let within = |side: &[Mass]| {
            if wanted.firm || miss(nearest) > slack {
                total(side) == total(nearest)
            } else {
                miss(side) <= slack
            }
        };
        costs = masses
            .iter()
            .filter(|side| within(side))
            .filter_map(|side| {
                let cost = |(from, (m, d, p)): &(Vec<Mass>, (usize, i64, usize))| {
                    (m + moves(from, side), d + miss(side).nanograms(), p + side.len())
                };
                costs.iter().map(cost).min().map(|cost| (side.clone(), cost))
            })
            .collect();
    }
    costs.into_iter().map(|(_, cost)| cost).min()
}

fn stocks() -> impl Strategy<Value = Vec<PlateStock>> {
    let kilograms = vec!["25 kg", "20 kg", "15 kg", "10 kg", "5 kg", "2.5 kg", "1.25 kg"];
    let both = vec!["45 lb", "20 kg", "35 lb", "15 kg", "25 lb", "10 lb", "5 lb", "2.5 lb", "2 kg"];
    let labels = prop_oneof![
        prop::sample::subsequence(kilograms, 2..=6),
        prop::sample::subsequence(both, 2..=6)
    ];
    let more = prop::collection::vec((1..=3_u8, 50..300_u16, any::<bool>()), 6);
    (labels, more).prop_map(|(labels, more)| {
        labels
            .iter()
            .zip(more)
            .map(|(label, (pairs, thickness, full))| PlateStock {
                thickness: Some(Length::from_tenths(thickness)),
                diameter: full.then_some(PlateStock::FULL_SIZE),
                ..plates(label, pairs)
            })
            .collect()
    })
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(500))]

    #[test]
    fn no_walk_is_better(
        stocks in stocks(),
        sleeve in prop::option::weighted(0.3, 0..3000_u16),
        half_kilograms in prop::collection::vec((40..300_i64, any::<bool>()), 1..6),
        now in prop::collection::vec(0..9_usize, 0..4),
        slack in 0..6_000_i64,
        full_size in prop::bool::weighted(0.2),
    ) {
        let gym = gym(stocks, sleeve.map(Length::from_tenths));
        let mut sets: Vec<Wanted> = half_kilograms
            .iter()
            .map(|(half, firm)| Wanted { load: Mass::from_grams(half * 500).unwrap(), firm: *firm })
            .collect();
        sets.last_mut().unwrap().firm = true;
        let slack = Mass::from_grams(slack).unwrap();
        // What is on now may be in any order, and of plates that are not here.
        let masses = ["25 kg", "20 kg", "45 lb", "10 kg", "5 kg", "2.5 kg", "2.5 lb", "35 lb", "7 kg"];
        let now: Vec<&str> = now.into_iter().map(|at| masses[at]).collect();
        let rig = on(&gym, &now);
        let ramp = Ramp { on_now: Some(&rig), sets: &sets, slack, full_size, one_side: false };
        let now: Vec<Mass> = now.into_iter().map(mass).collect();
        let expected = by_brute_force(&gym, &now, &sets, slack, full_size);
        let Some(expected) = expected else {
            prop_assert!(plan(&gym, "barbell", &ramp).is_err());
            return Ok(());
        };
        let changes = plan(&gym, "barbell", &ramp).unwrap();
        let departure: i64 =
            changes.steps.iter().map(|step| step.made.off_by().distance(Mass::ZERO).nanograms()).sum();
        let number: usize = changes.steps.iter().map(|step| step.made.rig.side().len()).sum();
        prop_assert_eq!((changes.moves, departure, number), expected, "{:#?}", changes);
        prop_assert!(changes.fewest);
        // What is said to be taken off and put on leads from each step to the next.
        let mut side = rig.side().to_vec();
        let mut moves = 0;
        for step in &changes.steps {
            for off in &step.off {
                prop_assert_eq!(side.pop(), Some(off.clone()));
            }
            side.extend(step.on.iter().cloned());
            prop_assert_eq!(&side[..], step.made.rig.side());
            prop_assert!(side.is_sorted_by_key(|plate| std::cmp::Reverse(plate.mass)));
            moves += step.moves();
        }
        prop_assert_eq!(moves, changes.moves);
    }
}

#[test]
fn a_warm_up_gives_way_to_save_handling() {
    let gym = builtin_in(MassUnit::Kilogram);
    let empty = on(&gym, &[]);
    let sets = ramp(&["62.5 kg", "102.5 kg"], 1);
    // As asked: 20 + 1.25 first, then all off for 25 + 15 + 1.25.
    let strict = planned(&gym, &empty, &sets, "0 kg");
    let eased = planned(&gym, &empty, &sets, "2.5625 kg");
    assert!(eased.moves < strict.moves, "{} {}", eased.moves, strict.moves);
    assert_eq!(eased.steps[1].made.made, mass("102.5 kg"));
    assert_eq!(sides(&eased), [vec!["20 kg"], vec!["20 kg", "20 kg", "1.25 kg"]]);
    assert_eq!(labels(&eased.steps[1].on), ["20 kg", "1.25 kg"]);
    assert_eq!(eased.moves, 3);
}

#[test]
fn work_loads_stay_and_back_off_sets_are_planned_with_them() {
    let gym = builtin_in(MassUnit::Kilogram);
    let sets = ramp(&["60 kg", "100 kg", "130 kg", "110 kg", "110 kg"], 3);
    let changes = planned(&gym, &on(&gym, &[]), &sets, "3.25 kg");
    let made: Vec<_> = changes.steps.iter().skip(2).map(|step| step.made.made).collect();
    assert_eq!(made, [mass("130 kg"), mass("110 kg"), mass("110 kg")]);
    assert_eq!(changes.steps[4].moves(), 0);
}

#[test]
fn it_starts_from_what_is_on() {
    let gym = builtin_in(MassUnit::Kilogram);
    let now = on(&gym, &["25 kg", "10 kg", "5 kg"]);
    let changes = planned(&gym, &now, &ramp(&["90 kg"], 1), "0 kg");
    assert_eq!(labels(&changes.steps[0].off), ["5 kg"]);
    assert_eq!(changes.moves, 1);
}

#[test]
fn dumbbells_and_stacks_move_no_plates() {
    let gym = builtin_in(MassUnit::Kilogram);
    let sets = ramp(&["11 kg", "21 kg"], 1);
    for implement in ["dumbbell", "pulldown"] {
        let ramp = Ramp {
            on_now: None,
            sets: &sets,
            slack: mass("2 kg"),
            full_size: false,
            one_side: false,
        };
        let changes = plan(&gym, implement, &ramp).unwrap();
        assert_eq!((changes.steps.len(), changes.moves), (2, 0));
        assert_eq!(changes.steps[1].made.made, mass("20 kg"));
    }
}

#[test]
fn more_plates_than_anyone_owns_still_give_a_plan() {
    let labels = [
        "25 kg", "20 kg", "15 kg", "10 kg", "5 kg", "2.5 kg", "2 kg", "1.5 kg", "1.25 kg", "1 kg",
        "0.5 kg", "45 lb", "35 lb", "25 lb", "10 lb", "5 lb", "2.5 lb",
    ];
    let gym = gym(labels.iter().map(|label| plates(label, 12)).collect(), None);
    let loads = ["200 kg", "61.25 kg", "187.5 kg", "47 kg", "203.5 kg", "33 kg", "151 kg"];
    let changes = planned(&gym, &on(&gym, &[]), &ramp(&loads, 7), "0 kg");
    assert_eq!(changes.steps.len(), 7);
    for (step, load) in changes.steps.iter().zip(loads) {
        assert!(step.made.off_by().distance(Mass::ZERO) < mass("0.1 kg"), "{load}");
    }
}
