//! Zone one of the floor: the bar, or what stands for it.

use barwright_domain::catalogue::Counting;
use barwright_domain::equipment::{Equipment, Plate, Ratio, Rig};
use barwright_domain::quantity::Mass;
use barwright_domain::session::{Cursor, Load, Run};

use super::key::opens;
use crate::contract::{BarZone, PlateDrawing};
use crate::phrase::Words;

/// The bar zone at a cursor.
pub(super) fn zone(run: &Run, cursor: Option<&Cursor>, words: Words) -> BarZone {
    let say = words.bar();
    let load = cursor.and_then(|cursor| run.load_at(cursor));
    let Some(load) = load else {
        let chosen = cursor.is_some();
        return BarZone {
            total: String::new(),
            change: String::new(),
            counts: String::new(),
            drawn: false,
            line: if chosen { say.your_choice().to_owned() } else { String::new() },
            bar: String::new(),
            plates: Vec::new(),
            collar: false,
            holds: None,
        };
    };
    let (unit, numerals) = (run.equipment.unit, words.numerals);
    let drawn = matches!(load.rig, Rig::Bar { .. } | Rig::Posts { .. });
    BarZone {
        total: say.total(load, unit, numerals),
        change: change(run.on.as_ref(), &load.rig, words),
        counts: say.counts(load, ratio(run, load).is_some()).to_owned(),
        drawn,
        line: say.line(load, unit, numerals),
        bar: match in_all(load) {
            Some(all) => say.in_all(all, unit, numerals),
            None => say.name(&load.rig, unit, numerals),
        },
        plates: if drawn { drawing(&run.equipment, &load.rig, words) } else { Vec::new() },
        collar: matches!(&load.rig, Rig::Bar { collars, .. } if *collars > Mass::ZERO),
        holds: load.rig.holds_plates().then(|| opens("holds", say.holds(), "bar")),
    }
}

/// All that is moved, the body's part in it, where a load is more or less than the body alone.
pub(super) fn in_all(load: &Load) -> Option<Mass> {
    let more = load.counting == Counting::Added && load.figure != Some(Mass::ZERO);
    load.moved().filter(|_| more)
}

/// What reaches the hand of what is on the stack, where that is not all of it.
pub(super) fn ratio(run: &Run, load: &Load) -> Option<(u8, u8)> {
    let Rig::Stack { stack, .. } = &load.rig else { return None };
    let stack = run.equipment.stacks.iter().find(|one| one.name == *stack)?;
    let Ratio { hand, stack } = stack.ratio;
    (hand != stack).then_some((hand, stack))
}

/// What to do to what is on now. Plates inside stay; from the first that differs on they come off.
fn change(on: Option<&Rig>, to: &Rig, words: Words) -> String {
    let same_thing = match (on, to) {
        (Some(Rig::Bar { bar: a, .. }), Rig::Bar { bar: b, .. })
        | (Some(Rig::Posts { machine: a, .. }), Rig::Posts { machine: b, .. }) => a == b,
        (Some(Rig::Hung { .. }), Rig::Hung { .. }) => true,
        _ => false,
    };
    let each_side = match to {
        Rig::Bar { .. } => true,
        Rig::Posts { posts, .. } => *posts > 1,
        _ => false,
    };
    let was = if same_thing { on.map(Rig::side).unwrap_or_default() } else { &[] };
    let is = to.side();
    let kept = was.iter().zip(is).take_while(|(a, b)| a == b).count();
    let off: Vec<Plate> = was.iter().skip(kept).rev().cloned().collect();
    let put: Vec<Plate> = is.iter().skip(kept).cloned().collect();
    words.bar().change(&off, &put, each_side, words.numerals)
}

/// A full-size plate is 450 mm across; a sleeve takes some 415 mm of plates. Tenths of a
/// millimetre.
const LARGEST: u32 = 4_500;
const SLEEVE: u32 = 4_150;

/// The plates of one side to scale. What a file does not say is drawn from the mass.
fn drawing(equipment: &Equipment, rig: &Rig, words: Words) -> Vec<PlateDrawing> {
    let numbers = words.bar().numbers(rig.side(), words.numerals);
    rig.side()
        .iter()
        .zip(numbers)
        .map(|(plate, number)| {
            let known = equipment.plates.iter().find(|stock| stock.label == plate.label);
            let grams = u32::try_from(plate.mass.nanograms() / 1_000_000_000).unwrap_or(u32::MAX);
            let diameter = known
                .and_then(|stock| stock.diameter)
                .map_or_else(|| usual_diameter(grams), |length| u32::from(length.tenths()));
            let thickness = known
                .and_then(|stock| stock.thickness)
                .map_or_else(|| usual_thickness(grams), |length| u32::from(length.tenths()));
            let colour = known.and_then(|stock| stock.colour.as_deref()).map_or("", colour_of);
            PlateDrawing {
                label: number,
                colour: colour.to_owned(),
                ink: ink_on(colour).to_owned(),
                height: (diameter.saturating_mul(1000) / LARGEST).min(1000),
                width: (thickness.saturating_mul(1000) / SLEEVE).min(1000),
            }
        })
        .collect()
}

/// By mass, where the file says nothing: for drawing only.
fn usual_diameter(grams: u32) -> u32 {
    match grams {
        0..=600 => 1_350,
        601..=1_600 => 1_600,
        1_601..=3_000 => 1_900,
        3_001..=6_500 => 2_300,
        6_501..=12_000 => 3_250,
        12_001..=17_000 => 4_000,
        _ => 4_500,
    }
}

fn usual_thickness(grams: u32) -> u32 {
    match grams {
        0..=1_600 => 150,
        1_601..=3_000 => 180,
        3_001..=6_500 => 220,
        6_501..=17_000 => 280,
        17_001..=21_000 => 340,
        _ => 420,
    }
}

/// The colours that rule books name, as they are drawn here; any other is neutral.
fn colour_of(name: &str) -> &'static str {
    match name {
        "red" => "#B8342C",
        "blue" => "#2E5FA3",
        "yellow" => "#D9B02E",
        "green" => "#3B8150",
        "white" => "#EDEBE3",
        "black" => "#2B2F31",
        "grey" | "gray" => "#8A8F90",
        "orange" => "#C9742B",
        _ => "",
    }
}

/// Slate on light plates, chalk on dark ones.
fn ink_on(colour: &str) -> &'static str {
    match colour {
        "" | "#D9B02E" | "#EDEBE3" | "#8A8F90" | "#C9742B" => "#12181B",
        _ => "#F3F1E7",
    }
}
