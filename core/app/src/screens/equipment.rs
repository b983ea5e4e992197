//! What this gym has.

use barwright_domain::equipment::{self, Equipment};
use barwright_domain::quantity::{Mass, Numerals};

use super::key::does;
use super::row::{aloud, row};
use crate::contract::{EquipmentScreen, Intent, Row};
use crate::engine::Core;
use crate::phrase::en::words;

/// The chosen gym.
pub(super) fn screen(core: &Core) -> EquipmentScreen {
    let gym = core.gym();
    let rows = rows(&gym, core.locale.numerals);
    let built_in = equipment::builtin();
    let others =
        built_in.iter().filter(|gym| core.desk.gyms.iter().all(|own| own.name != gym.name));
    let gyms = core
        .desk
        .gyms
        .iter()
        .chain(others)
        .map(|one| {
            let intent = Intent::ChooseGym { name: one.name.clone() };
            let chosen = one.name == gym.name;
            does(format!("gym-{}", one.name), one.name.clone(), intent)
                .says(format!("Train in {}", one.name))
                .chosen(chosen)
                .enabled(!chosen)
        })
        .collect();
    let spoken = format!("{}. {}", gym.name, aloud(&rows));
    EquipmentScreen {
        title: gym.name.clone(),
        subtitle: format!("loads in {}", gym.unit.symbol()),
        rows,
        gyms,
        keys: Vec::new(),
        aloud: spoken,
    }
}

fn rows(gym: &Equipment, numerals: Numerals) -> Vec<Row> {
    let unit = gym.unit;
    let print = |mass: Mass| mass.print(unit, numerals);
    let mut rows = Vec::new();
    let heading = |rows: &mut Vec<Row>, id: &str, text: &str, any: bool| {
        if any {
            rows.push(row(id, 0, text));
        }
    };
    heading(&mut rows, "bars", "Bars", !gym.bars.is_empty());
    for bar in &gym.bars {
        let collars = if bar.collars > Mass::ZERO {
            format!(" · collars {}", print(bar.collars))
        } else {
            String::new()
        };
        let text = format!("{} · {}{collars}", bar.name, print(bar.mass));
        rows.push(row(format!("bar-{}", bar.name), 1, text));
    }
    heading(&mut rows, "plates", "Plates", !gym.plates.is_empty());
    for plate in &gym.plates {
        let pairs = words::count(usize::from(plate.pairs), "pair", "pairs");
        let single =
            if plate.single > 0 { format!(" and {} single", plate.single) } else { String::new() };
        let text = format!("{} · {pairs}{single}", plate.label);
        rows.push(row(format!("plate-{}", plate.label), 1, text));
    }
    heading(&mut rows, "held", "Held in the hand", !gym.dumbbells.is_empty());
    for rack in &gym.dumbbells {
        let ends = rack.loads.first().zip(rack.loads.last());
        let span = ends
            .map(|(least, most)| format!(" · {} to {}", print(*least), print(*most)))
            .unwrap_or_default();
        let count = words::count(rack.loads.len(), "load", "loads");
        rows.push(row(format!("held-{}", rack.name), 1, format!("{}{span} · {count}", rack.name)));
    }
    heading(&mut rows, "stacks", "Stacks", !gym.stacks.is_empty());
    for stack in &gym.stacks {
        let ends = stack.pins.first().zip(stack.pins.last());
        let span = ends
            .map(|(least, most)| format!(" · pin {} to {}", least.label, most.label))
            .unwrap_or_default();
        rows.push(row(format!("stack-{}", stack.name), 1, format!("{}{span}", stack.name)));
    }
    heading(&mut rows, "machines", "Machines", !gym.machines.is_empty());
    for machine in &gym.machines {
        let text = format!("{} · starts at {}", machine.name, print(machine.start));
        rows.push(row(format!("machine-{}", machine.name), 1, text));
    }
    heading(&mut rows, "also", "Also", !gym.also.is_empty());
    if !gym.also.is_empty() {
        rows.push(row("also-all", 1, gym.also.join(", ").replace('-', " ")));
    }
    rows
}
