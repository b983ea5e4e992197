//! Loading and planning against a general solver of integer programs (microlp, by good_lp) on
//! random inventories.

use barwright_domain::equipment::changes::{Ramp, Wanted, plan};
use barwright_domain::equipment::{Bar, Equipment, Fit, PlateStock};
use barwright_domain::quantity::{Mass, Numerals};
use barwright_tests::solver;
use proptest::prelude::*;
use proptest::test_runner::{Config, RngAlgorithm, TestRng, TestRunner};

fn mass(text: &str) -> Mass {
    Mass::read(text, Numerals::Point).unwrap()
}

fn inventory(sizes: usize, pairs: u8) -> impl Strategy<Value = Equipment> {
    let labels = vec![
        "25 kg", "20 kg", "15 kg", "10 kg", "5 kg", "2.5 kg", "2 kg", "1.25 kg", "0.5 kg", "45 lb",
        "35 lb", "25 lb", "10 lb", "5 lb", "2.5 lb",
    ];
    let plates = prop::sample::subsequence(labels, 1..=sizes);
    let pairs = prop::collection::vec(1..=pairs, sizes);
    let bar = prop::sample::select(vec!["20 kg", "15 kg", "45 lb"]);
    let collars = prop::sample::select(vec!["0 kg", "5 kg"]);
    (bar, collars, plates, pairs).prop_map(|(bar, collars, plates, pairs)| {
        let bar = Bar {
            name: "Bar".into(),
            kind: "barbell".into(),
            mass: mass(bar),
            collars: mass(collars),
            sleeve: None,
        };
        let stock = |(label, pairs): (&str, u8)| PlateStock {
            label: label.into(),
            mass: mass(label),
            pairs,
            single: 0,
            thickness: None,
            diameter: None,
            colour: None,
        };
        let plates = plates.into_iter().zip(pairs).map(stock).collect();
        Equipment { name: "Boathouse".into(), bars: vec![bar], plates, ..Equipment::default() }
    })
}

/// A runner whose cases are the same in every run.
fn seeded(cases: u32) -> TestRunner {
    let config = Config { cases, failure_persistence: None, ..Config::default() };
    TestRunner::new_with_rng(config, TestRng::deterministic_rng(RngAlgorithm::ChaCha))
}

/// What floats can't tell apart.
fn alike(a: Mass, b: Mass) -> bool {
    a.distance(b) <= mass("0.00001 kg")
}

#[test]
fn a_thousand_inventories_are_loaded_as_the_solver_does() {
    let case = (inventory(6, 4), 0..=600_i32).prop_map(|(gym, half)| (gym, half * 500));
    let checked = seeded(1_000).run(&case, |(gym, grams)| {
        let asked = Mass::from_grams(grams.into()).unwrap();
        let ours = gym.make("barbell", asked, Fit::Nearest).unwrap();
        let miss = ours.off_by().distance(Mass::ZERO);
        let bar = solver::Bar::of(&gym).unwrap();
        let theirs = bar.load(&bar.nearest(asked).unwrap());
        prop_assert!(miss <= theirs.distance(asked), "{ours:?} {theirs:?}");
        prop_assert!(alike(miss, theirs.distance(asked)), "{ours:?} {theirs:?}");
        let lightest = bar.load(&bar.lightest(asked, miss).unwrap());
        prop_assert!(ours.made <= lightest || alike(ours.made, lightest), "{ours:?} {lightest:?}");
        let fewest = bar.fewest(ours.made).unwrap();
        prop_assert!(alike(bar.load(&fewest), ours.made));
        let fewest: usize = fewest.iter().map(|count| usize::from(*count)).sum();
        prop_assert_eq!(ours.rig.side().len(), fewest);
        Ok(())
    });
    checked.unwrap();
}

#[test]
fn small_ramps_take_as_few_moves_as_the_solver_finds() {
    let shares = prop::collection::vec(10..95_i64, 1..4);
    let case = (inventory(5, 3), shares, 30..150_i64);
    let checked = seeded(150).run(&case, |(gym, mut shares, work)| {
        shares.sort_unstable();
        // Firm loads that can be made, so that both are asked the same.
        let made = |grams: i64| {
            let asked = Mass::from_grams(grams).unwrap();
            gym.make("barbell", asked, Fit::Nearest).unwrap().made
        };
        let slack = Mass::from_grams(work * 25).unwrap();
        let mut sets: Vec<Wanted> = shares
            .iter()
            .map(|share| Wanted { load: made(work * share * 10), firm: false })
            .collect();
        sets.push(Wanted { load: made(work * 1_000), firm: true });
        let ramp = Ramp { on_now: None, sets: &sets, slack, full_size: false, one_side: false };
        let ours = plan(&gym, "barbell", &ramp).unwrap();
        let theirs = solver::Bar::of(&gym).unwrap().moves(&sets, slack).unwrap();
        prop_assert!(ours.fewest);
        prop_assert_eq!(ours.moves, theirs, "{:#?}", ours);
        Ok(())
    });
    checked.unwrap();
}
