//! Loading checked against every selection of plates there is, by brute force.

use barwright_domain::equipment::{
    AddOn, Ask, Bar, CannotMake, Dumbbells, Equipment, Fit, Machine, Made, Pin, PlateStock, Ratio,
    Rig, Stack,
};
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

fn bar(kind: &str, label: &str) -> Bar {
    Bar {
        name: format!("{kind} of {label}"),
        kind: kind.into(),
        mass: mass(label),
        collars: Mass::ZERO,
        sleeve: None,
    }
}

fn gym(bars: Vec<Bar>, plates: Vec<PlateStock>) -> Equipment {
    Equipment { name: "Boathouse".into(), bars, plates, ..Equipment::default() }
}

fn labels(made: &Made) -> Vec<&str> {
    made.rig.side().iter().map(|plate| plate.label.as_str()).collect()
}

/// Every selection for one end: counts of each stock, heaviest stock first.
fn selections(stocks: &[PlateStock]) -> Vec<Vec<u8>> {
    let mut all = vec![vec![]];
    for stock in stocks {
        all = all
            .into_iter()
            .flat_map(|counts| {
                (0..=stock.pairs).map(move |n| {
                    let mut counts = counts.clone();
                    counts.push(n);
                    counts
                })
            })
            .collect();
    }
    all
}

/// The order spelled out: the smaller miss, the lighter, the fewest, the heaviest first.
fn by_brute_force(
    bar: &Bar,
    stocks: &[PlateStock],
    asked: Mass,
    fit: Fit,
    full_size: bool,
) -> Option<(Mass, Vec<String>)> {
    let mut sorted = stocks.to_vec();
    sorted.sort_by_key(|stock| (std::cmp::Reverse(stock.mass), !stock.is_full_size()));
    selections(&sorted)
        .into_iter()
        .filter_map(|counts| {
            let with = |of: fn(&PlateStock) -> i64| -> i64 {
                sorted.iter().zip(&counts).map(|(stock, n)| of(stock) * i64::from(*n)).sum()
            };
            let side = with(|stock| stock.mass.nanograms());
            let thick = with(|stock| stock.thickness.map_or(0, |t| i64::from(t.tenths())));
            let full = with(|stock| i64::from(stock.is_full_size()));
            if bar.sleeve.is_some_and(|sleeve| thick > i64::from(sleeve.tenths())) {
                return None;
            }
            if full_size && full == 0 {
                return None;
            }
            let total = bar.mass.nanograms() + bar.collars.nanograms() + 2 * side;
            let miss = total - asked.nanograms();
            let wrong = match fit {
                Fit::Nearest => false,
                Fit::Under => miss > 0,
                Fit::Over => miss < 0,
            };
            let number: u32 = counts.iter().map(|n| u32::from(*n)).sum();
            let heavy: Vec<_> = counts.iter().map(|n| std::cmp::Reverse(*n)).collect();
            (!wrong).then_some(((miss.abs(), total, number, heavy), counts))
        })
        .min()
        .map(|((_, total, ..), counts)| {
            let side = sorted
                .iter()
                .zip(counts)
                .flat_map(|(stock, n)| std::iter::repeat_n(stock.label.clone(), usize::from(n)));
            (Mass::from_nanograms(total), side.collect())
        })
}

fn stock() -> impl Strategy<Value = PlateStock> {
    let label = prop::sample::select(vec![
        "25 kg", "20 kg", "15 kg", "10 kg", "5 kg", "2.5 kg", "1.25 kg", "0.5 kg", "45 lb",
        "35 lb", "25 lb", "10 lb", "5 lb", "2.5 lb",
    ])
    .prop_map(str::to_string);
    // Weighed plates: their sums hardly ever coincide.
    let weighed =
        (10..26_000_u32).prop_map(|grams| format!("{}.{:03} kg", grams / 1000, grams % 1000));
    let label = prop_oneof![4 => label, 1 => weighed];
    (label, 1..4_u8, 0..600_u16, any::<bool>()).prop_map(|(label, pairs, thickness, full)| {
        PlateStock {
            thickness: Some(Length::from_tenths(thickness)),
            diameter: full.then_some(PlateStock::FULL_SIZE),
            ..plates(&label, pairs)
        }
    })
}

fn distinct(mut stocks: Vec<PlateStock>) -> Vec<PlateStock> {
    stocks.sort_by_key(|stock| (std::cmp::Reverse(stock.mass), !stock.is_full_size()));
    stocks.dedup_by_key(|stock| stock.mass);
    stocks
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(400))]

    #[test]
    fn the_load_is_the_best_of_all(
        stocks in prop::collection::vec(stock(), 0..=7).prop_map(distinct),
        grams in 0..300_000_i64,
        pounds in any::<bool>(),
        collars in prop::sample::select(vec!["0 kg", "5 kg", "1 lb"]),
        sleeve in prop::option::weighted(0.4, 0..3000_u16),
        fit in prop::sample::select(vec![Fit::Nearest, Fit::Under, Fit::Over]),
        full_size in prop::bool::weighted(0.3),
    ) {
        let asked = if pounds {
            Mass::whole(grams as i32 / 500, MassUnit::Pound)
        } else {
            Mass::from_grams(grams).unwrap()
        };
        let sleeve = sleeve.map(Length::from_tenths);
        let bar = Bar { collars: mass(collars), sleeve, ..bar("barbell", "20 kg") };
        let gym = gym(vec![bar.clone()], stocks);
        let expected = by_brute_force(&bar, &gym.plates, asked, fit, full_size);
        let ask = Ask { full_size, ..Ask::new(asked, fit) };
        let made = gym.make_as("barbell", ask);
        match (&made, expected) {
            (Ok(made), Some((load, side))) => {
                prop_assert_eq!(made.made, load);
                prop_assert_eq!(labels(made), side);
            }
            (Err(_), None) => {}
            (made, expected) => prop_assert!(false, "{:?} for {:?}", made, expected),
        }
    }
}

#[test]
fn mixed_units_add_up_exactly() {
    let gym = gym(vec![bar("barbell", "20 kg")], vec![plates("20 kg", 1), plates("45 lb", 1)]);
    let made = gym.make("barbell", mass("100 kg"), Fit::Nearest).unwrap();
    assert_eq!(labels(&made), ["45 lb", "20 kg"]);
    assert_eq!(made.made.kilograms(), "100.8233133");
    assert_eq!(made.off_by().kilograms(), "0.8233133");
}

#[test]
fn the_ends_of_what_can_be_made_are_named() {
    let gym = gym(vec![bar("barbell", "20 kg")], vec![plates("20 kg", 1)]);
    let make = |load: &str, fit| gym.make("barbell", mass(load), fit);
    assert_eq!(make("19.9 kg", Fit::Under), Err(CannotMake::TooLight { least: mass("20 kg") }));
    assert_eq!(make("60.1 kg", Fit::Over), Err(CannotMake::TooHeavy { greatest: mass("60 kg") }));
    assert_eq!(make("200 kg", Fit::Nearest).unwrap().made, mass("60 kg"));
    assert_eq!(make("5 kg", Fit::Nearest).unwrap().made, mass("20 kg"));
    // Half-way the lighter.
    assert_eq!(make("40 kg", Fit::Nearest).unwrap().made, mass("20 kg"));
    assert_eq!(gym.step_above("barbell", mass("20 kg")).unwrap().made, mass("60 kg"));
    assert_eq!(gym.step_above("barbell", mass("60 kg")), None);
    assert_eq!(gym.step_below("barbell", mass("60 kg")).unwrap().made, mass("20 kg"));
    assert_eq!(
        gym.make("kettlebell", mass("8 kg"), Fit::Nearest),
        Err(CannotMake::NotHere { implement: "kettlebell".into() })
    );
}

#[test]
fn a_lighter_bar_is_taken_only_where_the_usual_one_is_too_heavy() {
    let bars = vec![bar("barbell", "20 kg"), bar("barbell", "15 kg")];
    let gym = gym(bars, vec![plates("10 kg", 2), plates("2.5 kg", 1), plates("1.25 kg", 1)]);
    let on = |load: &str| {
        let made = gym.make("barbell", mass(load), Fit::Nearest).unwrap();
        match made.rig {
            Rig::Bar { bar_mass, .. } => (bar_mass, made.made),
            other => panic!("{other:?}"),
        }
    };
    assert_eq!(on("60 kg"), (mass("20 kg"), mass("60 kg")));
    assert_eq!(on("17.5 kg"), (mass("15 kg"), mass("17.5 kg")));
    assert_eq!(on("10 kg"), (mass("15 kg"), mass("15 kg")));
}

#[test]
fn plates_of_one_mass_are_told_apart_only_by_their_labels() {
    let black = PlateStock { colour: Some("black".into()), ..plates("20.0 kg", 1) };
    let gym = gym(vec![bar("barbell", "20 kg")], vec![plates("20 kg", 1), black]);
    let made = gym.make("barbell", mass("100 kg"), Fit::Nearest).unwrap();
    assert_eq!(labels(&made), ["20 kg", "20.0 kg"]);
}

#[test]
fn one_post_takes_single_plates_too() {
    let odd = PlateStock { single: 1, ..plates("10 kg", 1) };
    let machine = |posts| Machine {
        name: "Calf sled".into(),
        kind: format!("calf-{posts}"),
        start: mass("7 kg"),
        posts,
        sleeve: None,
    };
    let machines = vec![machine(1), machine(2)];
    let gym = Equipment { machines, ..gym(vec![], vec![odd]) };
    let made = gym.make("calf-1", mass("36 kg"), Fit::Nearest).unwrap();
    assert_eq!((made.made, labels(&made).len()), (mass("37 kg"), 3));
    assert_eq!(gym.make("calf-2", mass("36 kg"), Fit::Nearest).unwrap().made, mass("27 kg"));
    let each = Ask { one_side: true, ..Ask::new(mass("9 kg"), Fit::Nearest) };
    let made = gym.make_as("calf-2", each).unwrap();
    assert_eq!((made.made, labels(&made).len()), (mass("10 kg"), 1));
}

#[test]
fn dumbbells_come_as_the_rack_has_them() {
    let loads = ["10 kg", "12 kg", "14 kg"].map(mass).to_vec();
    let rack = Dumbbells { name: "Rack".into(), kind: "dumbbell".into(), loads, pairs: true };
    let gym = Equipment { dumbbells: vec![rack], ..Equipment::default() };
    let made = gym.make("dumbbell", mass("13 kg"), Fit::Nearest).unwrap();
    let rig = Rig::Dumbbells { rack: "Rack".into(), each: mass("12 kg"), count: 2 };
    assert_eq!(made.rig, rig);
    assert_eq!(gym.step_above("dumbbell", mass("12 kg")).unwrap().made, mass("14 kg"));
}

#[test]
fn a_stack_takes_a_pin_and_what_goes_on_top() {
    let pins = (1..=10_i32).map(|n| Pin {
        label: format!("{} kg", 10 * n),
        load: Some(Mass::whole(10 * n, MassUnit::Kilogram)),
    });
    let add_ons = vec![AddOn { label: "2.5 kg".into(), mass: mass("2.5 kg"), count: 2 }];
    let ratio = Ratio { hand: 1, stack: 2 };
    let stack =
        Stack { name: "Cross".into(), kind: "cable".into(), pins: pins.collect(), add_ons, ratio };
    let unnumbered = Stack {
        kind: "leg-curl".into(),
        pins: vec![Pin { label: "1".into(), load: None }],
        ..stack.clone()
    };
    let gym = Equipment { stacks: vec![stack, unnumbered], ..Equipment::default() };
    // 32.5 at the hand is 65 on the stack.
    let made = gym.make("cable", mass("32.5 kg"), Fit::Nearest).unwrap();
    let Rig::Stack { pin, add_ons, .. } = made.rig else { panic!() };
    assert_eq!((made.made, pin.as_str(), add_ons.len()), (mass("32.5 kg"), "60 kg", 2));
    assert_eq!(
        gym.make("leg-curl", mass("30 kg"), Fit::Nearest),
        Err(CannotMake::NoFigures { implement: "leg-curl".into() })
    );
}

#[test]
fn a_belt_carries_plates_and_the_body_alone_nothing() {
    let mut gym = gym(vec![], vec![plates("10 kg", 1), plates("2.5 kg", 1)]);
    let bare = gym.make("bodyweight", Mass::ZERO, Fit::Nearest).unwrap();
    assert_eq!(bare.rig, Rig::Body);
    assert_eq!(
        gym.make("bodyweight", mass("10 kg"), Fit::Nearest),
        Err(CannotMake::CarriesNothing { implement: "bodyweight".into() })
    );
    gym.also.push("belt".into());
    let made = gym.make("bodyweight", mass("22.5 kg"), Fit::Nearest).unwrap();
    assert_eq!(labels(&made), ["10 kg", "10 kg", "2.5 kg"]);
    let made = gym.make("plate", mass("9 kg"), Fit::Nearest).unwrap();
    assert_eq!(labels(&made), ["10 kg"]);
}

#[test]
fn what_no_search_gets_through_is_refused() {
    // Twenty sizes that share no measure: their sums hardly ever coincide.
    let stocks =
        (0..20_u32).map(|n| plates(&format!("{}.{:03} kg", 2 + n, (n * n * 7 + 1) % 997), 9));
    let wild = gym(vec![bar("barbell", "20 kg")], stocks.collect());
    assert!(!wild.is_searchable());
    assert_eq!(wild.make("barbell", mass("300 kg"), Fit::Nearest), Err(CannotMake::TooManySums));
    let sizes = ["25 kg", "20 kg", "15 kg", "10 kg", "5 kg", "2.5 kg", "1.25 kg", "0.5 kg"];
    let pounds = ["45 lb", "35 lb", "25 lb", "10 lb", "5 lb", "2.5 lb", "1.25 lb"];
    let all = sizes.iter().chain(&pounds).map(|label| plates(label, 15)).collect();
    assert!(gym(vec![bar("barbell", "20 kg")], all).is_searchable());
}
