//! From what a person typed at a place to what stands there, and from a byte back to its place.

use toml_span::value::{Table, ValueInner};

use super::edit::Put;
use super::shape::{Holds, Shape};

/// What a person typed at a place, as the place declares it: a number as a number, a list in commas.
/// What is none of what is read there stays a text, and the reader says what is wrong with it. None
/// where nothing of the kind is declared.
pub fn typed(shape: &'static Shape, place: &str, text: &str) -> Option<Put> {
    let mut steps = place.split('.');
    let first = steps.next()?;
    let mut here = &shape.keys.iter().find(|key| key.name == first)?.holds;
    for step in steps {
        here = inside(here, step)?;
    }
    Some(as_declared(here, text.trim()))
}

fn inside(holds: &'static Holds, step: &str) -> Option<&'static Holds> {
    match holds {
        Holds::Table(shape) => shape.keys.iter().find(|key| key.name == step).map(|key| &key.holds),
        Holds::List(of, _) => step.parse::<usize>().ok().map(|_| *of),
        Holds::Any(all) => all.iter().find_map(|holds| inside(holds, step)),
        Holds::Text(_) | Holds::Word(_) | Holds::Whole(..) | Holds::Flag | Holds::Quantity(_) => {
            None
        }
    }
}

fn as_declared(holds: &Holds, text: &str) -> Put {
    let whole = || text.parse().ok().map(Put::Whole);
    let as_one = |holds: &Holds| match holds {
        Holds::Whole(..) => whole(),
        Holds::Flag => text.parse().ok().map(Put::Flag),
        Holds::List(of, _) => {
            let items = text.split(',').map(str::trim).filter(|item| !item.is_empty());
            Some(Put::List(items.map(|item| as_declared(of, item)).collect()))
        }
        Holds::Text(_) | Holds::Word(_) | Holds::Quantity(_) | Holds::Table(_) | Holds::Any(_) => {
            None
        }
    };
    let one = match holds {
        // The first that it can be; a list only where there is more than one.
        Holds::Any(all) => all
            .iter()
            .filter(|one| !matches!(one, Holds::List(..)) || text.contains(','))
            .find_map(as_one),
        one => as_one(one),
    };
    one.unwrap_or_else(|| Put::Text(text.to_owned()))
}

/// The place that a byte of a text belongs to: the last key or item of a list that begins at it or
/// before it. Empty where it stands before all of them, or the text is not TOML.
pub fn place_at(text: &str, byte: usize) -> String {
    let Ok(root) = toml_span::parse(text) else { return String::new() };
    let mut best = (0, String::new());
    if let Some(table) = root.as_table() {
        walk(table, "", byte, &mut best);
    }
    best.1
}

fn walk(table: &Table<'_>, way: &str, byte: usize, best: &mut (usize, String)) {
    for (key, value) in table {
        let place = join(way, &key.name);
        let inner = value.as_ref();
        // A list of tables has its key at the first of them; each of them begins at its own heading.
        if !matches!(inner, ValueInner::Array(items) if items.iter().all(|it| it.as_table().is_some()))
        {
            take(key.span.start, &place, byte, best);
        }
        into(inner, &place, byte, best);
    }
}

fn into(value: &ValueInner<'_>, place: &str, byte: usize, best: &mut (usize, String)) {
    match value {
        ValueInner::Table(table) => walk(table, place, byte, best),
        ValueInner::Array(items) => {
            for (nth, item) in items.iter().enumerate() {
                let place = join(place, &nth.to_string());
                take(item.span.start, &place, byte, best);
                into(item.as_ref(), &place, byte, best);
            }
        }
        _ => {}
    }
}

fn take(start: usize, place: &str, byte: usize, best: &mut (usize, String)) {
    if start <= byte && (start >= best.0 || best.1.is_empty()) {
        *best = (start, place.to_owned());
    }
}

fn join(way: &str, step: &str) -> String {
    if way.is_empty() { step.to_owned() } else { format!("{way}.{step}") }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::equipment::{EQUIPMENT, Equipment};

    #[test]
    fn what_is_typed_is_what_the_place_declares() {
        let typed = |place, text| typed(&EQUIPMENT, place, text);
        assert_eq!(typed("plate.2.pairs", " 3 "), Some(Put::Whole(3)));
        assert_eq!(typed("plate.2.mass", "20 kg"), Some("20 kg".into()));
        assert_eq!(typed("plate.2.pairs", "a few"), Some("a few".into()));
        assert_eq!(typed("dumbbells.0.pairs", "false"), Some(Put::Flag(false)));
        assert_eq!(typed("stack.0.pins", "14"), Some(Put::Whole(14)));
        let named = Put::List(vec!["a".into(), "b".into()]);
        assert_eq!(typed("stack.0.pins", "a, b"), Some(named));
        assert_eq!(typed("stack.0.loads.1", "5 kg"), Some("5 kg".into()));
        assert_eq!(typed("plate.2.colours", "red"), None);
        assert_eq!(typed("plates.2.pairs", "3"), None);
        assert_eq!(typed("plate.x.pairs", "3"), None);
    }

    #[test]
    fn a_fault_is_at_the_place_that_is_wrong() {
        let gym = "name = \"a\"\n[[bar]]\nname = \"Long\"\nmass = \"20 stone\"\n[[plate]]\n\
                   mass = \"20 kg\"\n[[plate]]\nmass = \"5 kg\"\npairs = 99\ncolor = \"red\"\n\
                   [[stack]]\nname = \"s\"\nloads = [\"5 kg\", \"6 lbs?\"]\n";
        let faults = Equipment::read(gym).unwrap_err();
        let places: Vec<String> =
            faults.iter().map(|fault| place_at(gym, fault.span.start)).collect();
        let want = ["bar.0.mass", "plate.0", "plate.1.pairs", "plate.1.color", "stack.0.loads.1"];
        assert_eq!(places, want);
    }
}
