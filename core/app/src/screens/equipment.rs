//! What this gym has.

use barwright_domain::desk::DraftOf;
use barwright_domain::equipment::{self, Equipment};
use barwright_domain::quantity::MassUnit;

use super::form::file_name;
use super::key::{does, shows};
use super::name;
use super::row::{aloud, row};
use crate::contract::{Edit, EquipmentScreen, FormFile, FormOf, Intent, Key, Look, Row};
use crate::facts::{GymFrom, Held, LikedOf};
use crate::phrase::Words;

/// The chosen gym.
pub(super) fn screen(held: &Held, words: Words) -> EquipmentScreen {
    let gym = held.gym();
    let rows = rows(&gym, words);
    let built_in = equipment::builtin();
    let others =
        built_in.iter().filter(|gym| held.desk.gyms.iter().all(|own| own.name != gym.name));
    let gyms = held
        .desk
        .gyms
        .iter()
        .chain(others)
        .map(|one| {
            let intent = Intent::ChooseGym { name: one.name.clone() };
            let chosen = one.name == gym.name;
            let name = name::gym(held, &one.name, words);
            does(format!("gym-{}", one.name), words.gym().choose(&name), intent)
                .chosen(chosen)
                .enabled(!chosen)
        })
        .collect();
    let title = name::gym(held, &gym.name, words);
    EquipmentScreen {
        aloud: words.words().spoken(&[&title, &aloud(&rows, words)]),
        title,
        subtitle: words.gym().subtitle(gym.unit),
        rows,
        gyms,
        file: Some(FormFile { name: file_name(&gym.name, "gym"), text: held.gym_file(&gym) }),
        keys: keys(held, &gym, words).into_iter().chain([liked(&gym, words)]).collect(),
    }
}

/// Which loads are liked here.
fn liked(gym: &Equipment, words: Words) -> Key {
    let at = LikedOf::Gym(gym.name.clone()).name();
    let look = Look::Form { of: FormOf::Liked, at, text: String::new() };
    shows("liked", words.liked().open(), look)
}

/// What is made by hand: the one that is being made is gone on with, or one is begun.
fn keys(held: &Held, gym: &Equipment, words: Words) -> Vec<Key> {
    let (say, of) = (words.gym(), FormOf::Gym);
    let form = Look::Form { of, at: String::new(), text: String::new() };
    if held.desk.drafts.contains_key(&DraftOf::Gym) {
        return vec![shows("go-on", say.go_on(), form)];
    }
    let begins = |id: &str, said: (String, String), from: GymFrom| {
        let (place, edit) = (from.place(), Edit::Open);
        does(id, said, Intent::Edit { of, place, edit, step: None })
    };
    let name = || gym.name.clone();
    let called = name::gym(held, &gym.name, words);
    let mut keys = vec![
        begins("mend", say.mend(&called), GymFrom::Own(name())),
        begins("copy", say.copy(&called), GymFrom::Copy(name())),
    ];
    for unit in [MassUnit::Kilogram, MassUnit::Pound] {
        let symbol = unit.symbol();
        keys.push(begins(&format!("usual-{symbol}"), say.usual(unit), GymFrom::Usual(unit)));
        keys.push(begins(&format!("empty-{symbol}"), say.empty(unit), GymFrom::Nothing(unit)));
    }
    keys
}

fn rows(gym: &Equipment, words: Words) -> Vec<Row> {
    let (say, unit, numerals) = (words.gym(), gym.unit, words.numerals);
    let mut rows = Vec::new();
    let heading = |rows: &mut Vec<Row>, id: &str, text: &str, any: bool| {
        if any {
            rows.push(row(id, 0, text));
        }
    };
    heading(&mut rows, "bars", say.bars(), !gym.bars.is_empty());
    for bar in &gym.bars {
        rows.push(row(format!("bar-{}", bar.name), 1, say.bar(bar, unit, numerals)));
    }
    heading(&mut rows, "plates", say.plates(), !gym.plates.is_empty());
    for plate in &gym.plates {
        rows.push(row(format!("plate-{}", plate.label), 1, say.plate(plate, numerals)));
    }
    heading(&mut rows, "held", say.held(), !gym.dumbbells.is_empty());
    for rack in &gym.dumbbells {
        rows.push(row(format!("held-{}", rack.name), 1, say.rack(rack, unit, numerals)));
    }
    heading(&mut rows, "stacks", say.stacks(), !gym.stacks.is_empty());
    for stack in &gym.stacks {
        rows.push(row(format!("stack-{}", stack.name), 1, say.stack(stack, numerals)));
    }
    heading(&mut rows, "machines", say.machines(), !gym.machines.is_empty());
    for machine in &gym.machines {
        let text = say.machine(machine, unit, numerals);
        rows.push(row(format!("machine-{}", machine.name), 1, text));
    }
    heading(&mut rows, "also", say.also(), !gym.also.is_empty());
    if !gym.also.is_empty() {
        rows.push(row("also-all", 1, say.others(&gym.also)));
    }
    rows
}
