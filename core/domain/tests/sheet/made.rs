//! Whatever the plan and the gym, every load on a sheet can be made there.

use barwright_domain::catalogue::Counting;
use barwright_domain::equipment::{
    AddOn, Bar, Dumbbells, Equipment, Machine, Pin, PlateStock, Rig, Stack,
};
use barwright_domain::quantity::{Mass, MassUnit};
use barwright_domain::session::{Load, SetKind};
use proptest::prelude::*;

use crate::desk::{Table, kg, load};

/// What a rig weighs by what lies on it, as the exercise counts; `None` where the gym has not got
/// that. Written anew here: nothing of the loading is used.
fn weighs(gym: &Equipment, load: &Load) -> Option<Mass> {
    let sum = |plates: &[barwright_domain::equipment::Plate]| {
        plates.iter().try_fold(Mass::ZERO, |sum, plate| sum.checked_add(plate.mass))
    };
    let stock = |plates: &[barwright_domain::equipment::Plate], ends: usize| {
        gym.plates.iter().all(|size| {
            let used = plates.iter().filter(|plate| plate.label == size.label).count();
            used * ends <= usize::from(size.pairs) * 2 + usize::from(size.single)
        }) && plates.iter().all(|plate| gym.plates.iter().any(|size| size.label == plate.label))
            && plates.windows(2).all(|pair| pair[0].mass >= pair[1].mass)
    };
    match &load.rig {
        Rig::Bar { bar, bar_mass, collars, side } => {
            let here = gym.bars.iter().any(|one| one.name == *bar && one.mass == *bar_mass);
            let ends = sum(side)?.checked_mul(2)?;
            let all = bar_mass.checked_add(*collars)?.checked_add(ends)?;
            (here && stock(side, 2)).then_some(all)
        }
        Rig::Posts { machine, start, posts, plates } => {
            let here = gym.machines.iter().any(|one| one.name == *machine);
            let one = sum(plates)?;
            let all = start.checked_add(one.checked_mul(i64::from(*posts))?)?;
            let counted = if load.counting == Counting::EachSide { one } else { all };
            (here && stock(plates, usize::from(*posts))).then_some(counted)
        }
        Rig::Dumbbells { rack, each, count } => {
            let rack = gym.dumbbells.iter().find(|one| one.name == *rack)?;
            let enough = *count == 1 || rack.pairs;
            let as_held = match load.counting {
                Counting::One => *count == 1,
                Counting::EachHand => *count == 2,
                _ => true,
            };
            (enough && as_held && rack.loads.contains(each)).then_some(*each)
        }
        Rig::Stack { stack, pin, add_ons } => {
            let stack = gym.stacks.iter().find(|one| one.name == *stack)?;
            let pin = stack.pins.iter().find(|one| one.label == *pin)?.load?;
            let hand = stack.ratio.at_hand(pin.checked_add(sum(add_ons)?)?);
            if load.counting == Counting::Added { Mass::ZERO.checked_sub(hand) } else { Some(hand) }
        }
        Rig::Hung { plates } => {
            let one_each = gym.plates.iter().all(|size| {
                let used = plates.iter().filter(|plate| plate.label == size.label).count();
                used <= usize::from(size.pairs) * 2 + usize::from(size.single)
            });
            one_each.then_some(sum(plates)?)
        }
        Rig::Body => Some(Mass::ZERO),
        Rig::Said => None,
    }
}

fn plates() -> impl Strategy<Value = Vec<PlateStock>> {
    let sizes = [
        ("25", true),
        ("20", true),
        ("15", true),
        ("10", false),
        ("5", false),
        ("2.5", false),
        ("1.25", false),
        ("11.3", false),
        ("20.4", true),
    ];
    proptest::collection::vec((0_usize..sizes.len(), 0_u8..=4, 0_u8..=1), 0..=6).prop_map(
        move |picked| {
            let mut stock: Vec<PlateStock> = Vec::new();
            for (at, pairs, single) in picked {
                let (mass, full) = sizes[at];
                let label = format!("{mass} kg");
                if stock.iter().any(|one| one.label == label) {
                    continue;
                }
                let diameter = full.then(|| barwright_domain::quantity::Length::from_tenths(4_500));
                stock.push(PlateStock {
                    label,
                    mass: kg(mass),
                    pairs,
                    single,
                    thickness: None,
                    diameter,
                    colour: None,
                });
            }
            stock
        },
    )
}

fn gym() -> impl Strategy<Value = Equipment> {
    let bar = prop_oneof![Just("20"), Just("15"), Just("17.5")];
    let rack = (1_i64..=6, 1_i64..=12, any::<bool>());
    let stack = (1_i64..=7, 1_i64..=15, 1_u8..=2, 0_u8..=2);
    (plates(), bar, rack, stack, 1_u8..=2, any::<[bool; 6]>()).prop_map(
        |(plates, bar, rack, stack, posts, here)| {
            let grams = |kg: i64| Mass::from_grams(kg * 1000).unwrap();
            let (step, count, pairs) = rack;
            let dumbbells = |kind: &str| Dumbbells {
                name: kind.to_owned(),
                kind: kind.to_owned(),
                loads: (1..=count).map(|n| grams(n * step)).collect(),
                pairs,
            };
            let (stack_step, pins, ratio, add_ons) = stack;
            let stacks = ["cable", "leg-extension", "assisted-pull-up", "pulldown"];
            let stacks = stacks.map(|kind| Stack {
                name: kind.to_owned(),
                kind: kind.to_owned(),
                pins: (1..=pins)
                    .map(|n| Pin { label: n.to_string(), load: Some(grams(n * stack_step)) })
                    .collect(),
                add_ons: vec![AddOn { label: "1 kg".to_owned(), mass: kg("1"), count: add_ons }],
                ratio: barwright_domain::equipment::Ratio { hand: 1, stack: ratio },
            });
            let supports = ["rack", "bench", "pull-up-bar", "dip-bars", "belt", "box"];
            Equipment {
                name: "Invented".to_owned(),
                unit: MassUnit::Kilogram,
                bars: [here[0]]
                    .into_iter()
                    .filter(|here| *here)
                    .map(|_| Bar {
                        name: "Bar".to_owned(),
                        kind: "barbell".to_owned(),
                        mass: kg(bar),
                        collars: Mass::ZERO,
                        sleeve: None,
                    })
                    .collect(),
                plates,
                dumbbells: if here[1] {
                    vec![dumbbells("dumbbell"), dumbbells("kettlebell")]
                } else {
                    Vec::new()
                },
                stacks: if here[2] { stacks.to_vec() } else { Vec::new() },
                machines: ["leg-press", "hack-squat"]
                    .map(|kind| Machine {
                        name: kind.to_owned(),
                        kind: kind.to_owned(),
                        start: kg("30"),
                        posts,
                        sleeve: None,
                    })
                    .into_iter()
                    .filter(|_| here[3])
                    .collect(),
                also: supports.into_iter().filter(|_| here[4]).map(str::to_owned).collect(),
            }
        },
    )
}

/// An exercise of a plan: a load that it may have, and how its sets are made.
fn exercise() -> impl Strategy<Value = String> {
    let totals = prop_oneof![
        Just("Back squat"),
        Just("Bench press"),
        Just("Deadlift"),
        Just("Leg press"),
        Just("Power clean"),
        Just("Hip thrust"),
    ];
    let held = prop_oneof![
        Just("Dumbbell bench press"),
        Just("Goblet squat"),
        Just("Split squat"),
        Just("Leg extension"),
        Just("Seated cable row"),
        Just("Pulldown"),
    ];
    let hung = prop_oneof![Just("Pull-up"), Just("Dip"), Just("Chin-up")];
    let made = prop_oneof![
        Just(""),
        Just("drop = [\"20 %\", \"25 %\"]"),
        Just("rest_pause = { each = 3, most_parts = 3 }"),
        Just("continued = [{ name = \"Push-up\", load = \"body\", reps = 5 }]"),
        Just("tempo = \"3-0-1-0\""),
    ];
    let percent = (totals, 30_i32..=110, 0_i32..=8).prop_map(|(name, from, wide)| {
        let load =
            if wide == 0 { format!("{from} %") } else { format!("{from}-{} %", from + wide) };
        (name.to_owned(), load)
    });
    let fixed =
        (held, 1_i32..=90).prop_map(|(name, mass)| (name.to_owned(), format!("{mass}.5 kg")));
    let added =
        (hung, 1_i32..=40).prop_map(|(name, mass)| (name.to_owned(), format!("body + {mass} kg")));
    let helped =
        (1_i32..=60).prop_map(|mass| ("Assisted pull-up".to_owned(), format!("body - {mass} kg")));
    let sides = (1_i32..=60)
        .prop_map(|mass| ("Hack squat\"\ncounted = \"each side".to_owned(), format!("{mass} kg")));
    (prop_oneof![percent, fixed, added, helped, sides], 1_u8..=4, 1_u16..=12, made).prop_map(
        |((name, load), sets, reps, made)| {
            format!(
                "[[session.exercise]]\nname = \"{name}\"\nsets = {sets}\nreps = {reps}\n\
                 left = 1\nload = \"{load}\"\n{made}\n"
            )
        },
    )
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(160))]

    #[test]
    fn every_load_of_a_sheet_can_be_made(
        gym in gym(),
        body in proptest::collection::vec(exercise(), 1..=5),
        max in 40_i64..=260,
    ) {
        let mut table = Table::of(&body.concat()).weighs("82.4");
        table.gym = gym;
        let max = Mass::from_grams(max * 1000).unwrap().kilograms();
        for lift in ["back-squat", "bench-press", "deadlift", "leg-press", "power-clean", "hip-thrust"] {
            table = table.max(lift, &max);
        }
        for entry in table.entries() {
            let mut below = None;
            for call in &entry.calls {
                let loads = load(call).into_iter().chain(&call.part_loads);
                for load in loads {
                    prop_assert_eq!(weighs(&table.gym, load), load.figure, "{:?}", load);
                }
                // A ramp rises, and stays under the work.
                if call.kind == SetKind::Ramp {
                    let figure = load(call).and_then(|load| load.figure);
                    prop_assert!(figure > below, "{:#?}", entry);
                    below = figure;
                } else if let (Some(below), Some(load)) = (below.take(), load(call)) {
                    prop_assert!(Some(below) < load.figure, "{:#?}", entry);
                }
            }
        }
    }
}
