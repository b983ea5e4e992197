//! Reading a gym's equipment from TOML.

use super::bounds;
use super::model::{AddOn, Bar, Dumbbells, Equipment, Machine, Pin, PlateStock, Ratio, Stack};
use super::shapes;
use super::{BARBELL, CABLE, DUMBBELL};
use crate::quantity::{Kind, Length, Mass, MassUnit, Numerals, Problem as Wrong, Unreadable};
use crate::text::{self, Expected, Fault, Found, Item, Problem, Shape, Table};

impl Equipment {
    /// Reads an equipment file.
    ///
    /// # Errors
    /// Every fault at once, in the file's order.
    pub fn read(text: &str) -> Result<Self, Vec<Fault>> {
        text::read(text, &shapes::EQUIPMENT, equipment)
    }

    /// As [`Equipment::read`], from bytes that may not even be text.
    ///
    /// # Errors
    /// As [`Equipment::read`].
    pub fn read_bytes(bytes: &[u8]) -> Result<Self, Vec<Fault>> {
        text::read_bytes(bytes, &shapes::EQUIPMENT, equipment)
    }
}

fn equipment(root: &Table<'_>) -> Option<Equipment> {
    let name = root.get("name").and_then(|item| item.text(bounds::NAME)).unwrap_or("Gym");
    let also = root.get("also").and_then(|item| item.list(bounds::SUPPORTS)).unwrap_or_default();
    let also = also.iter().filter_map(slug_of).collect();
    // Without a word on it, loads are shown in the unit that the first bar or plate is written in.
    let mut written = None;
    let mut names = Names::default();
    let bars = tables(root, "bar", bounds::OF_A_KIND, &shapes::BAR, |table, line| {
        bar(table, &mut written).filter(|bar| names.first_time(table, &bar.name, line))
    });
    let mut sizes: Vec<(PlateStock, usize)> = Vec::new();
    let plates = tables(root, "plate", bounds::PLATES, &shapes::PLATE, |table, line| {
        let plate = plate(table, &mut written)?;
        // What is said to be on a bar is said by what stands on the plates.
        let other = |known: &&(PlateStock, usize)| {
            known.0.label == plate.label && known.0.mass != plate.mass
        };
        if let Some((_, first_line)) = sizes.iter().find(other) {
            table.fault_at("mass", Problem::Repeated { first_line: *first_line });
            return None;
        }
        sizes.push((plate.clone(), line));
        Some(plate)
    });
    let mut names = Names::default();
    let racks = tables(root, "dumbbells", bounds::OF_A_KIND, &shapes::DUMBBELLS, |table, line| {
        rack(table).filter(|rack| names.first_time(table, &rack.name, line))
    });
    let mut names = Names::default();
    let stacks = tables(root, "stack", bounds::OF_A_KIND, &shapes::STACK, |table, line| {
        stack(table).filter(|stack| names.first_time(table, &stack.name, line))
    });
    let mut names = Names::default();
    let machines = tables(root, "machine", bounds::OF_A_KIND, &shapes::MACHINE, |table, line| {
        machine(table).filter(|machine| names.first_time(table, &machine.name, line))
    });
    let unit = match root.get("unit").and_then(|item| item.word(shapes::UNITS)) {
        Some(0) => MassUnit::Kilogram,
        Some(_) => MassUnit::Pound,
        None => written.unwrap_or_default(),
    };
    let name = name.to_string();
    let made = Equipment { name, unit, bars, plates, dumbbells: racks, stacks, machines, also };
    if !made.is_searchable() {
        root.fault_at("plate", Problem::TooManySums);
    }
    Some(made)
}

/// Every table of a list that can be read; what can't be is a fault by then.
fn tables<T>(
    root: &Table<'_>,
    key: &'static str,
    most: usize,
    shape: &'static Shape,
    mut reader: impl FnMut(&Table<'_>, usize) -> Option<T>,
) -> Vec<T> {
    let list = root.get(key).and_then(|item| item.list(most)).unwrap_or_default();
    list.iter().filter_map(|item| item.table(shape, |table| reader(table, item.line()))).collect()
}

/// Names that were given, and where.
#[derive(Default)]
struct Names(Vec<(String, usize)>);

impl Names {
    /// Whether the name is given for the first time; otherwise that is a fault.
    fn first_time(&mut self, table: &Table<'_>, name: &str, line: usize) -> bool {
        let first = self.0.iter().find(|(known, _)| known == name).map(|(_, line)| *line);
        match first {
            Some(first_line) => table.fault_at("name", Problem::Repeated { first_line }),
            None => self.0.push((name.to_string(), line)),
        }
        first.is_none()
    }
}

fn bar(table: &Table<'_>, written: &mut Option<MassUnit>) -> Option<Bar> {
    let name = name(table);
    let kind = kind(table, BARBELL);
    let mass = table.need("mass").and_then(|item| {
        let (mass, unit) = item.mass_as_written()?;
        written.get_or_insert(unit);
        at_least(&item, mass, Mass::ZERO)
    });
    let collars = none_or_more(table, "collars");
    let sleeve = length(table, "sleeve");
    Some(Bar { name: name?, kind: kind?, mass: mass?, collars: collars?, sleeve: sleeve? })
}

fn plate(table: &Table<'_>, written: &mut Option<MassUnit>) -> Option<PlateStock> {
    let mass = table.need("mass").and_then(|item| {
        let (mass, unit) = item.mass_as_written()?;
        written.get_or_insert(unit);
        let mass = at_least(&item, mass, bounds::LIGHTEST_PLATE)?;
        Some((item.text(bounds::NAME)?.to_string(), mass))
    });
    // One that was weighed is called by what stands on it, and counted as what it is.
    let weighs = table
        .get("weighs")
        .map(|item| item.mass().and_then(|mass| at_least(&item, mass, bounds::LIGHTEST_PLATE)));
    let count = |item: Item<'_>, most: u8| {
        item.whole(0, most.into()).and_then(|count| u8::try_from(count).ok())
    };
    let pairs = table.need("pairs").and_then(|item| count(item, bounds::PAIRS));
    let single = table.get("single").map_or(Some(0), |item| count(item, 1));
    let thickness = length(table, "thickness");
    let diameter = length(table, "diameter");
    let colour = match table.get("colour") {
        Some(item) => Some(Some(item.text(bounds::NAME)?.to_string())),
        None => Some(None),
    };
    let (label, mass) = mass?;
    let mass = match weighs {
        Some(weighs) => weighs?,
        None => mass,
    };
    let (thickness, diameter, colour) = (thickness?, diameter?, colour?);
    Some(PlateStock { label, mass, pairs: pairs?, single: single?, thickness, diameter, colour })
}

fn rack(table: &Table<'_>) -> Option<Dumbbells> {
    let name = name(table);
    let kind = kind(table, DUMBBELL);
    let pairs = table.get("pairs").map_or(Some(true), |item| item.flag());
    let loads = loads(table);
    if !table.has("loads") && !table.has("from") {
        table.missing(Problem::MissingOneOf { keys: &["loads", "from"] });
    }
    let mut loads: Vec<Mass> = loads?.into_iter().map(|(_, mass)| mass).collect();
    loads.sort_unstable();
    loads.dedup();
    Some(Dumbbells { name: name?, kind: kind?, loads, pairs: pairs? })
}

fn stack(table: &Table<'_>) -> Option<Stack> {
    let name = name(table);
    let kind = kind(table, CABLE);
    let numbered = loads(table);
    let named = table.get("pins").map(|item| match item.found() {
        Found::List => {
            let list = item.list(bounds::STEPS)?;
            all(list.iter().map(|item| item.text(bounds::NAME).map(str::to_string)))
        }
        Found::Whole => {
            let count = item.whole(1, i64::try_from(bounds::STEPS).ok()?)?;
            Some((1..=count).map(|n| n.to_string()).collect())
        }
        _ => {
            item.wrong_type(Expected::WholeOrList);
            None
        }
    });
    table.clash("pins", &["loads", "from", "add_ons", "ratio"]);
    if !["loads", "from", "pins"].into_iter().any(|key| table.has(key)) {
        table.missing(Problem::MissingOneOf { keys: &["loads", "from", "pins"] });
    }
    let add_ons = table.get("add_ons").map_or(Some(Vec::new()), |item| {
        let list = item.list(bounds::ADD_ONS)?;
        all(list.iter().map(|item| labelled(item, bounds::LIGHTEST_PLATE)))
    });
    let ratio = table.get("ratio").map_or(Some(Ratio::default()), |item| {
        shapes::RATIO_VALUES.get(item.word(shapes::RATIOS)?).copied()
    });
    let pins = match named {
        Some(names) => {
            names?.into_iter().map(|label| Pin { label, load: None }).collect::<Vec<_>>()
        }
        None => {
            let mut pins: Vec<Pin> = numbered?
                .into_iter()
                .map(|(label, load)| Pin { label, load: Some(load) })
                .collect();
            pins.sort_by_key(|pin| pin.load);
            pins.dedup_by_key(|pin| pin.load);
            pins
        }
    };
    let mut tops: Vec<AddOn> = Vec::new();
    for (label, mass) in add_ons? {
        match tops.iter_mut().find(|top| top.label == label) {
            Some(top) => top.count += 1,
            None => tops.push(AddOn { label, mass, count: 1 }),
        }
    }
    Some(Stack { name: name?, kind: kind?, pins, add_ons: tops, ratio: ratio? })
}

fn machine(table: &Table<'_>) -> Option<Machine> {
    let name = name(table);
    let kind = match &name {
        Some(name) => kind(table, &text::slug(name)),
        None => kind(table, ""),
    };
    let start = none_or_more(table, "start");
    let posts = table.get("posts").map_or(Some(2), |item| item.whole(1, 2));
    let posts = posts.and_then(|posts| u8::try_from(posts).ok());
    let sleeve = length(table, "sleeve");
    Some(Machine { name: name?, kind: kind?, start: start?, posts: posts?, sleeve: sleeve? })
}

/// The loads of a rack or stack, as `loads` or by steps, each with how it is written.
fn loads(table: &Table<'_>) -> Option<Vec<(String, Mass)>> {
    table.clash("loads", &["from", "to", "step"]);
    for key in ["from", "to", "step"] {
        for needs in ["from", "to", "step"] {
            if table.has(key) && !table.has(needs) {
                table.fault_at(key, Problem::Needs { key, needs });
            }
        }
    }
    if let Some(item) = table.get("loads") {
        let list = item.list(bounds::STEPS)?;
        return all(list.iter().map(|item| labelled(item, Mass::ZERO)));
    }
    let read = |key: &'static str, least: Mass| {
        let item = table.get(key)?;
        let (mass, unit) = item.mass_as_written()?;
        Some((at_least(&item, mass, least)?, unit))
    };
    let from = read("from", Mass::ZERO);
    let to = read("to", from.map_or(Mass::ZERO, |(from, _)| from));
    let step = read("step", bounds::LIGHTEST_PLATE);
    let ((from, unit), (to, _), (step, _)) = (from?, to?, step?);
    let mut made = Vec::new();
    let mut load = Some(from);
    while let Some(mass) = load.filter(|mass| *mass <= to) {
        if made.len() == bounds::STEPS {
            table.fault_at("step", Problem::TooMany { most: bounds::STEPS });
            return None;
        }
        made.push((super::write::exactly(mass, unit), mass));
        load = mass.checked_add(step);
    }
    Some(made)
}

/// A mass and how it is written.
fn labelled(item: &Item<'_>, least: Mass) -> Option<(String, Mass)> {
    let mass = at_least(item, item.mass()?, least)?;
    Some((item.text(bounds::NAME)?.to_string(), mass))
}

fn at_least(item: &Item<'_>, mass: Mass, least: Mass) -> Option<Mass> {
    if mass >= least {
        return Some(mass);
    }
    let text = item.text(bounds::NAME)?;
    let least = least.print(MassUnit::Kilogram, Numerals::Point);
    item.unreadable(text, Unreadable::at(Kind::Mass, text, text, Wrong::TooSmall { least }));
    None
}

fn none_or_more(table: &Table<'_>, key: &'static str) -> Option<Mass> {
    table.get(key).map_or(Some(Mass::ZERO), |item| at_least(&item, item.mass()?, Mass::ZERO))
}

/// A length that may be left out: `None` only where it can't be read.
fn length(table: &Table<'_>, key: &'static str) -> Option<Option<Length>> {
    table.get(key).map_or(Some(None), |item| item.length().map(Some))
}

fn name(table: &Table<'_>) -> Option<String> {
    table.need("name").and_then(|item| item.text(bounds::NAME)).map(|name| name.trim().to_string())
}

fn kind(table: &Table<'_>, usual: &str) -> Option<String> {
    table.get("kind").map_or_else(|| Some(usual.to_string()), |item| slug_of(&item))
}

fn slug_of(item: &Item<'_>) -> Option<String> {
    let slug = text::slug(item.text(bounds::NAME)?);
    if slug.is_empty() {
        item.fault(Problem::Empty);
        return None;
    }
    Some(slug)
}

/// All of them, or none where one could not be read; each is asked, so that each fault is noted.
fn all<T>(items: impl Iterator<Item = Option<T>>) -> Option<Vec<T>> {
    let items: Vec<Option<T>> = items.collect();
    items.into_iter().collect()
}
