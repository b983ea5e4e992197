//! A gym's file changed a step at a time, as by hand: see [`crate::text::edit`].

use super::builtin::builtin_text;
use super::model::Equipment;
use super::shapes::EQUIPMENT;
use super::write::exactly;
use crate::quantity::{Mass, MassUnit};
use crate::text::edit::{NotEdited, Put, Written, add, put, remove};
use crate::text::typed;

/// What carries no load and is here or not.
pub const SUPPORTS: [&str; 11] = [
    "rack",
    "bench",
    "incline-bench",
    "pull-up-bar",
    "dip-bars",
    "rings",
    "box",
    "back-extension-bench",
    "belt",
    "band",
    "ab-wheel",
];

/// A gym with nothing in it.
pub fn bare(name: &str, unit: MassUnit) -> String {
    let named = put_or_same("", "name", &name.into());
    put_or_same(&named, "unit", &unit.symbol().into())
}

fn put_or_same(text: &str, place: &str, value: &Put) -> String {
    put(text, place, value).unwrap_or_else(|_| text.to_owned())
}

/// The file of the gym that comes with the program, under another name.
pub fn of_builtin(name: &str, unit: MassUnit) -> String {
    put_or_same(builtin_text(unit), "name", &name.into())
}

/// What a person typed at a place; nothing takes it away.
///
/// # Errors
/// [`NotEdited`].
pub fn write(text: &str, place: &str, said: &str) -> Result<String, NotEdited> {
    let text = one_by_one(text, place)?;
    if said.trim().is_empty() {
        return remove(&text, place);
    }
    let value = typed(&EQUIPMENT, place, said).ok_or(NotEdited::NoPlace)?;
    put(&text, place, &value)
}

/// Takes away what is at a place. A load out of a range leaves a gap in it.
///
/// # Errors
/// [`NotEdited`].
pub fn take_away(text: &str, place: &str) -> Result<String, NotEdited> {
    let text = one_by_one(text, place)?;
    // A list with nothing in it says nothing.
    let last = place.rsplit_once('.').filter(|(list, nth)| {
        nth.parse::<usize>().is_ok() && Written::of(&text).is_some_and(|it| it.count(list) == 1)
    });
    remove(&text, last.map_or(place, |(list, _)| list))
}

/// A mass as it is written in a file: exactly, in this unit where that goes.
pub fn mass_text(mass: Mass, unit: MassUnit) -> String {
    exactly(mass, unit)
}

/// The sizes of plates that most gyms have some of, heaviest first, with the pairs of a small set:
/// common practice.
pub const fn usual_plates(unit: MassUnit) -> &'static [(&'static str, i64)] {
    match unit {
        MassUnit::Kilogram => &[
            ("25 kg", 0),
            ("20 kg", 2),
            ("15 kg", 1),
            ("10 kg", 1),
            ("5 kg", 1),
            ("2.5 kg", 1),
            ("1.25 kg", 1),
            ("0.5 kg", 0),
        ],
        MassUnit::Pound => &[
            ("45 lb", 2),
            ("35 lb", 1),
            ("25 lb", 1),
            ("10 lb", 1),
            ("5 lb", 1),
            ("2.5 lb", 1),
            ("1.25 lb", 0),
        ],
    }
}

/// A small set of plates more: the sizes that are not here yet.
///
/// # Errors
/// [`NotEdited`].
pub fn a_set(text: &str, unit: MassUnit) -> Result<String, NotEdited> {
    let written = Written::of(text).ok_or(NotEdited::NotToml)?;
    let here: Vec<String> = (0..written.count("plate"))
        .filter_map(|at| written.said(&format!("plate.{at}.mass")))
        .collect();
    let mut text = text.to_owned();
    for (mass, pairs) in usual_plates(unit) {
        if *pairs > 0 && here.iter().all(|label| label != mass) {
            let keys = vec![("mass", Put::from(*mass)), ("pairs", Put::Whole(*pairs))];
            text = add(&text, "plate", &Put::Table(keys))?;
        }
    }
    Ok(text)
}

/// A stack set by pins whose loads nobody knows, or by their loads again.
///
/// # Errors
/// [`NotEdited`].
pub fn by_pins(text: &str, owner: &str, pins: bool, unit: MassUnit) -> Result<String, NotEdited> {
    let written = Written::of(text).ok_or(NotEdited::NotToml)?;
    let mut text = text.to_owned();
    for key in ["loads", "from", "to", "step", "pins", "add_ons", "ratio"] {
        let place = format!("{owner}.{key}");
        // What is a value or a list goes; what is not there is no fault.
        if written.said(&place).is_some() {
            text = remove(&text, &place)?;
        }
    }
    if pins {
        return put(&text, &format!("{owner}.pins"), &Put::Whole(10));
    }
    for (key, kilograms, pounds) in [("from", 5, 10), ("to", 100, 200), ("step", 5, 10)] {
        let figure = match unit {
            MassUnit::Kilogram => kilograms,
            MassUnit::Pound => pounds,
        };
        let mass = Put::Text(format!("{figure} {}", unit.symbol()));
        text = put(&text, &format!("{owner}.{key}"), &mass)?;
    }
    Ok(text)
}

/// One load more of a rack or a stack: `dumbbells.0.loads`, or one add-on more.
///
/// # Errors
/// [`NotEdited`].
pub fn one_load_more(text: &str, list: &str, load: &str) -> Result<String, NotEdited> {
    let (owner, key) = list.rsplit_once('.').ok_or(NotEdited::NoPlace)?;
    let text = match key {
        "loads" => one_by_one(text, &format!("{list}.0"))?,
        "add_ons" => text.to_owned(),
        _ => return Err(NotEdited::NoPlace),
    };
    match load {
        "" => Ok(text),
        load => add(&text, &format!("{owner}.{key}"), &load.into()),
    }
}

/// One more of a list: `plate` of a mass, any other of a kind, by the name that it gets.
///
/// # Errors
/// [`NotEdited`].
pub fn one_more(
    text: &str,
    list: &str,
    what: &str,
    name: &str,
    unit: MassUnit,
) -> Result<String, NotEdited> {
    let mass = |kilograms: i64, pounds: i64| -> Put {
        let figure = match unit {
            MassUnit::Kilogram => kilograms,
            MassUnit::Pound => pounds,
        };
        Put::Text(format!("{figure} {}", unit.symbol()))
    };
    let named = [("name", Put::from(name)), ("kind", Put::from(what))];
    let range = |from: (i64, i64), to: (i64, i64), step: (i64, i64)| {
        [("from", mass(from.0, from.1)), ("to", mass(to.0, to.1)), ("step", mass(step.0, step.1))]
    };
    let keys: Vec<(&'static str, Put)> = match list {
        "plate" => vec![("mass", what.into()), ("pairs", Put::Whole(1))],
        "bar" => {
            // Usual bars, by common practice: a curl bar of 10 kg, a hex bar of 25.
            let own = match what {
                "ez-bar" => mass(10, 25),
                "trap-bar" => mass(25, 55),
                _ => mass(20, 45),
            };
            named.into_iter().chain([("mass", own)]).collect()
        }
        "dumbbells" if what == super::DUMBBELL => {
            named.into_iter().chain(range((2, 5), (30, 70), (2, 5))).collect()
        }
        "dumbbells" => {
            let alone = [("pairs", Put::Flag(false))];
            named.into_iter().chain(alone).chain(range((4, 10), (32, 70), (4, 10))).collect()
        }
        "stack" => named.into_iter().chain(range((5, 10), (100, 200), (5, 10))).collect(),
        "machine" => named.into_iter().chain([("start", mass(20, 45))]).collect(),
        "also" => return add(text, list, &what.into()),
        _ => return Err(NotEdited::NoPlace),
    };
    add(text, list, &Put::Table(keys))
}

/// The text with a rack's or a stack's loads written one by one, where a place is one of them and they
/// are written as a range.
fn one_by_one(text: &str, place: &str) -> Result<String, NotEdited> {
    let Some((owner, _)) = place.split_once(".loads.") else { return Ok(text.to_owned()) };
    let written = Written::of(text).ok_or(NotEdited::NotToml)?;
    if written.count(&format!("{owner}.loads")) > 0 {
        return Ok(text.to_owned());
    }
    let gym = Equipment::read(text).map_err(|_| NotEdited::NoPlace)?;
    let (list, nth) = owner.split_once('.').ok_or(NotEdited::NoPlace)?;
    let nth: usize = nth.parse().map_err(|_| NotEdited::NoPlace)?;
    let labels: Option<Vec<String>> = match list {
        "dumbbells" => gym.dumbbells.get(nth).map(|rack| {
            let unit = unit_of(&written, owner).unwrap_or(gym.unit);
            rack.loads.iter().map(|load: &Mass| exactly(*load, unit)).collect()
        }),
        "stack" => gym
            .stacks
            .get(nth)
            .map(|stack| stack.pins.iter().map(|pin| pin.label.clone()).collect()),
        _ => None,
    };
    let labels = labels.ok_or(NotEdited::NoPlace)?.into_iter().map(Put::from).collect();
    let mut text = text.to_owned();
    for key in ["from", "to", "step"] {
        text = remove(&text, &format!("{owner}.{key}"))?;
    }
    put(&text, &format!("{owner}.loads"), &Put::List(labels))
}

/// The unit that a range is written in.
fn unit_of(written: &Written, owner: &str) -> Option<MassUnit> {
    let from = written.said(&format!("{owner}.from"))?;
    Mass::read_as_written(&from, crate::quantity::Numerals::Point).ok().map(|(_, unit)| unit)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_gym_is_made_step_by_step_and_reads_at_each() {
        let mut text = bare("Garage", MassUnit::Kilogram);
        let reads =
            |text: &str| Equipment::read(text).unwrap_or_else(|why| panic!("{why:?}\n{text}"));
        reads(&text);
        for (list, what, name) in [
            ("bar", "barbell", "Long bar"),
            ("plate", "20 kg", ""),
            ("plate", "1.25 kg", ""),
            ("dumbbells", "dumbbell", "Dumbbells"),
            ("dumbbells", "kettlebell", "Kettlebells"),
            ("stack", "pulldown", "Pulldown"),
            ("machine", "leg-press", "Leg press"),
            ("also", "band", ""),
        ] {
            text = one_more(&text, list, what, name, MassUnit::Kilogram).unwrap();
            reads(&text);
        }
        text = write(&text, "plate.0.pairs", "4").unwrap();
        text = write(&text, "bar.0.mass", "20.2 kg").unwrap();
        let gym = reads(&text);
        assert_eq!((gym.plates[0].pairs, gym.also.len()), (4, 1));
        assert_eq!(gym.dumbbells[0].loads.len(), 15);
        // A pair that is missing from the rack, and the pin's own figures.
        text = take_away(&text, "dumbbells.0.loads.3").unwrap();
        text = write(&text, "stack.0.loads.1", "11 kg").unwrap();
        let gym = reads(&text);
        assert_eq!(gym.dumbbells[0].loads.len(), 14);
        assert!(!gym.dumbbells[0].loads.contains(&Mass::whole(8, MassUnit::Kilogram)));
        assert_eq!(gym.stacks[0].pins[1].label, "11 kg");
        text = by_pins(&text, "stack.0", true, MassUnit::Kilogram).unwrap();
        assert_eq!(reads(&text).stacks[0].pins.len(), 10);
        text = by_pins(&text, "stack.0", false, MassUnit::Kilogram).unwrap();
        assert!(reads(&text).stacks[0].is_numbered());
        text = take_away(&text, "also.0").unwrap();
        assert!(reads(&text).also.is_empty());
        text = a_set(&text, MassUnit::Kilogram).unwrap();
        assert_eq!(reads(&text).plates.len(), 6);
        // What is wrong is kept and said by the reader.
        let wrong = write(&text, "plate.0.pairs", "many").unwrap();
        assert!(Equipment::read(&wrong).is_err());
        assert_eq!(write(&text, "plate.0.colours", "red"), Err(NotEdited::NoPlace));
    }

    #[test]
    fn those_that_come_with_the_program_keep_their_comments() {
        for unit in [MassUnit::Kilogram, MassUnit::Pound] {
            let text = of_builtin("Boathouse", unit);
            let gym = Equipment::read(&text).unwrap();
            assert_eq!(gym.name, "Boathouse");
            assert_eq!(text.lines().count(), builtin_text(unit).lines().count());
            let differ = text.lines().zip(builtin_text(unit).lines()).filter(|(a, b)| a != b);
            assert_eq!(differ.count(), 1);
        }
    }
}
