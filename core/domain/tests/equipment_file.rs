//! The equipment file: what it says, what it refuses, and that writing it reads back the same.

#![allow(clippy::unwrap_used)] // helpers outside #[test] functions

use barwright_domain::catalogue::IMPLEMENTS;
use barwright_domain::equipment::{
    AddOn, Bar, Dumbbells, Equipment, Fit, Machine, Offer, Pin, PlateStock, Ratio, Rig, Stack,
    builtin, builtin_in, builtin_text,
};
use barwright_domain::quantity::{Length, Mass, MassUnit, Numerals};
use barwright_domain::text::Problem;
use proptest::prelude::*;

fn mass(text: &str) -> Mass {
    Mass::read(text, Numerals::Point).expect("a mass")
}

#[test]
fn the_built_in_gyms_offer_nearly_everything_the_catalogue_uses() {
    for gym in builtin() {
        assert!(gym.is_searchable());
        let missing: Vec<_> =
            IMPLEMENTS.iter().filter(|implement| !gym.offers(implement).is_here()).collect();
        // Machines that many gyms lack: a plan says what to do instead.
        assert!(missing.len() <= 9, "{} lacks {missing:?}", gym.name);
        assert_eq!(gym.offers("leg-curl"), Offer::Pins);
        assert_eq!(gym.offers("barbell"), Offer::Loads);
        assert_eq!(gym.offers("rack"), Offer::Bare);
        assert_eq!(gym.offers("rowing-tank"), Offer::No);
    }
    for unit in [MassUnit::Kilogram, MassUnit::Pound] {
        assert_eq!(Equipment::read(builtin_text(unit)).unwrap().unit, unit);
    }
}

#[test]
fn the_shortest_file_is_a_bar_and_its_plates() {
    let text = "[[bar]]\nname = \"Boathouse bar\"\nmass = \"45lb\"\ncollars = \"1 lb\"\n\
                [[plate]]\nmass = \"2.50 lb\"\npairs = 2\n";
    let gym = Equipment::read(text).unwrap();
    assert_eq!(gym.unit, MassUnit::Pound);
    let bar = gym.bars.first().unwrap();
    assert_eq!(
        (bar.kind.as_str(), bar.mass, bar.collars),
        ("barbell", mass("45 lb"), mass("1 lb"))
    );
    let plates = gym.plates.first().unwrap();
    assert_eq!((plates.label.as_str(), plates.mass), ("2.50 lb", mass("2.5 lb")));
}

#[test]
fn a_plate_that_was_weighed_is_called_by_what_stands_on_it() {
    let text = "[[plate]]\nmass = \"25 kg\"\nweighs = \"24.7 kg\"\npairs = 1\n\
                [[plate]]\nmass = \"45 lb\"\nweighs = \"45.3 lb\"\npairs = 1\n";
    let gym = Equipment::read(text).unwrap();
    let plates: Vec<_> =
        gym.plates.iter().map(|plate| (plate.label.as_str(), plate.mass)).collect();
    assert_eq!(plates, [("25 kg", mass("24.7 kg")), ("45 lb", mass("45.3 lb"))]);
    assert_eq!(Equipment::read(&gym.write()).unwrap(), gym);
    let made = Equipment { bars: builtin_in(MassUnit::Kilogram).bars, ..gym.clone() };
    let made = made.make("barbell", mass("70 kg"), Fit::Nearest).unwrap();
    assert_eq!(made.made.distance(mass("69.4 kg")), Mass::ZERO);
    // One name for two masses would not say which is on the bar.
    let twice = format!("{text}[[plate]]\nmass = \"25 kg\"\npairs = 1\n");
    let faults = Equipment::read(&twice).unwrap_err();
    assert_eq!((faults.len(), faults[0].line), (1, 10));
    assert_eq!(faults[0].problem, Problem::Repeated { first_line: 1 });
}

#[test]
fn every_fault_comes_with_its_line() {
    let text = r#"
nme = "Boathouse"
[[bar]]
name = "Long"
mass = "20 stone"
[[bar]]
name = "Short"
mass = "-1 kg"
[[plate]]
mass = "0 kg"
pairs = 40
[[dumbbells]]
name = "Rack"
from = "5 kg"
[[stack]]
name = "Column"
loads = ["5 kg"]
pins = 4
[[machine]]
name = "Sled"
posts = 3
[[machine]]
name = "Sled"
"#;
    let faults = Equipment::read(text).unwrap_err();
    let lines: Vec<_> = faults.iter().map(|fault| fault.line).collect();
    assert_eq!(lines, [2, 5, 8, 10, 11, 14, 14, 18, 21], "{faults:#?}");
    let nearest =
        |fault: &Problem| matches!(fault, Problem::UnknownKey { nearest: Some("name"), .. });
    assert!(nearest(&faults.first().unwrap().problem));
}

#[test]
fn a_name_is_given_once_and_steps_are_bounded() {
    let twice =
        "[[bar]]\nname = \"A\"\nmass = \"20 kg\"\n[[bar]]\nname = \"A\"\nmass = \"15 kg\"\n";
    let faults = Equipment::read(twice).unwrap_err();
    assert_eq!(faults.first().unwrap().problem, Problem::Repeated { first_line: 1 });
    let steps =
        "[[dumbbells]]\nname = \"A\"\nfrom = \"1 kg\"\nto = \"500 kg\"\nstep = \"0.1 kg\"\n";
    let faults = Equipment::read(steps).unwrap_err();
    assert_eq!(faults.first().unwrap().problem, Problem::TooMany { most: 200 });
}

#[test]
fn plates_that_no_search_gets_through_are_refused_at_once() {
    let plates = (0..22_u32).map(|n| {
        format!("[[plate]]\nmass = \"{}.{:04} kg\"\npairs = 31\n", 2 + n, (n * n * 71 + 1) % 9973)
    });
    let faults = Equipment::read(&plates.collect::<String>()).unwrap_err();
    assert_eq!(faults.first().unwrap().problem, Problem::TooManySums);
}

fn name() -> impl Strategy<Value = String> {
    "[A-Za-zäß\"\\\\#=][A-Za-z0-9 äß\"\\\\#=\\[\\]]{0,20}[a-z]"
}

fn slug() -> impl Strategy<Value = String> {
    "[a-z]{1,5}(-[a-z0-9]{1,5})?"
}

fn any_mass() -> impl Strategy<Value = Mass> {
    prop_oneof![
        (1..20_000_i32).prop_map(|n| mass(&format!("{}.{:02} kg", n / 100, n % 100))),
        (3..20_000_i32).prop_map(|n| mass(&format!("{}.{:02} lb", n / 100, n % 100))),
        (10_000_000_000..5_000_000_000_000_i64).prop_map(Mass::from_nanograms),
    ]
}

fn written(mass: Mass) -> String {
    format!("{} kg", mass.kilograms())
}

fn length() -> impl Strategy<Value = Option<Length>> {
    prop::option::of((0..50_000_u16).prop_map(Length::from_tenths))
}

fn bars() -> impl Strategy<Value = Vec<Bar>> {
    let bar = (name(), slug(), any_mass(), any_mass(), length())
        .prop_map(|(name, kind, mass, collars, sleeve)| Bar { name, kind, mass, collars, sleeve });
    prop::collection::vec(bar, 0..4)
}

fn plates() -> impl Strategy<Value = Vec<PlateStock>> {
    let plate = (any_mass(), 0..4_u8, 0..2_u8, length(), length(), prop::option::of(name()))
        .prop_map(|(mass, pairs, single, thickness, diameter, colour)| {
            let label = written(mass);
            PlateStock { label, mass, pairs, single, thickness, diameter, colour }
        });
    prop::collection::vec(plate, 0..5)
}

fn racks() -> impl Strategy<Value = Vec<Dumbbells>> {
    let loads = prop::collection::btree_set(any_mass(), 1..6);
    let rack = (name(), slug(), loads, any::<bool>()).prop_map(|(name, kind, loads, pairs)| {
        Dumbbells { name, kind, loads: loads.into_iter().collect(), pairs }
    });
    prop::collection::vec(rack, 0..3)
}

fn stacks() -> impl Strategy<Value = Vec<Stack>> {
    let ratio = prop::sample::select(vec![(1, 1), (1, 2), (2, 1)]);
    let loads = prop::collection::btree_set(any_mass(), 1..6);
    let tops = prop::collection::btree_map(any_mass(), 1..3_u8, 0..3);
    let numbered = (name(), slug(), loads, tops, ratio).prop_map(
        |(name, kind, loads, tops, (hand, stack))| {
            let pins = loads.into_iter().map(|load| Pin { label: written(load), load: Some(load) });
            let add_ons =
                tops.into_iter().map(|(mass, count)| AddOn { label: written(mass), mass, count });
            let (pins, add_ons) = (pins.collect(), add_ons.collect());
            Stack { name, kind, pins, add_ons, ratio: Ratio { hand, stack } }
        },
    );
    let unnumbered =
        (name(), slug(), prop::collection::vec(name(), 1..6)).prop_map(|(name, kind, pins)| {
            let pins = pins.into_iter().map(|label| Pin { label, load: None }).collect();
            Stack { name, kind, pins, add_ons: vec![], ratio: Ratio::default() }
        });
    prop::collection::vec(prop_oneof![numbered, unnumbered], 0..3)
}

fn machines() -> impl Strategy<Value = Vec<Machine>> {
    let machine = (name(), slug(), any_mass(), 1..3_u8, length()).prop_map(
        |(name, kind, start, posts, sleeve)| Machine { name, kind, start, posts, sleeve },
    );
    prop::collection::vec(machine, 0..3)
}

fn gyms() -> impl Strategy<Value = Equipment> {
    let unit = prop::sample::select(vec![MassUnit::Kilogram, MassUnit::Pound]);
    let also = prop::collection::vec(slug(), 0..4);
    (name(), unit, bars(), plates(), racks(), stacks(), machines(), also).prop_map(
        |(name, unit, bars, plates, dumbbells, stacks, machines, also)| {
            let mut gym = Equipment { name, unit, bars, plates, dumbbells, stacks, machines, also };
            // Names are given once each.
            gym.bars.iter_mut().enumerate().for_each(|(n, bar)| bar.name.push_str(&n.to_string()));
            gym.dumbbells.iter_mut().enumerate().for_each(|(n, r)| r.name.push_str(&n.to_string()));
            gym.stacks.iter_mut().enumerate().for_each(|(n, s)| s.name.push_str(&n.to_string()));
            gym.machines.iter_mut().enumerate().for_each(|(n, m)| m.name.push_str(&n.to_string()));
            gym
        },
    )
}

proptest! {
    #[test]
    fn what_is_written_reads_back_the_same(gym in gyms()) {
        let text = gym.write();
        prop_assert_eq!(Equipment::read(&text), Ok(gym), "{}", text);
    }

    #[test]
    fn whatever_the_text_every_fault_has_its_place(text in "(\\[\\[(bar|plate|stack)\\]\\]\n|name|mass|pairs|=|\"[0-9]{0,3} ?(kg|lb)\"|[0-9]{1,3}|\n| ){0,60}") {
        match Equipment::read(&text) {
            Ok(gym) => prop_assert!(gym.is_searchable()),
            Err(faults) => {
                prop_assert!(!faults.is_empty());
                prop_assert!(faults.iter().all(|fault| text.get(fault.span.clone()).is_some()));
            }
        }
    }
}

#[test]
fn the_built_in_gyms_read_back_the_same() {
    for unit in [MassUnit::Kilogram, MassUnit::Pound] {
        let gym = builtin_in(unit);
        assert_eq!(Equipment::read(&gym.write()), Ok(gym));
    }
}

/// A pulldown and a seated row take their own stack, and a cable column's only where there is none.
#[test]
fn its_own_stack_before_a_cable_columns() {
    let mut gym = builtin_in(MassUnit::Kilogram);
    let stack = |gym: &Equipment, implement: &str| {
        let made = gym.make(implement, Mass::whole(30, MassUnit::Kilogram), Fit::Nearest).unwrap();
        let Rig::Stack { stack, .. } = made.rig else { panic!("{made:?}") };
        stack
    };
    assert_eq!(stack(&gym, "pulldown"), "Pulldown");
    assert_eq!(stack(&gym, "low-row"), "Low row");
    gym.stacks.retain(|one| !["pulldown", "low-row"].contains(&one.kind.as_str()));
    assert_eq!(stack(&gym, "pulldown"), "Cable column");
    assert_eq!(stack(&gym, "low-row"), "Cable column");
    // A column is no leg curl.
    gym.stacks.retain(|one| one.kind == "cable");
    assert!(gym.make("leg-extension", Mass::ZERO, Fit::Nearest).is_err());
}
