//! Intents of every kind, with anything in them; and all that can be looked at.

use barwright_app::contract::{
    Arrange, Draft, Edit, FormOf, GuardChoice, HowEnded, Intent, KitChoice, LayAnew, Look,
    SessionChange, SwapReason,
};

use super::plans;
use crate::chance::Chance;

const TEXTS: [&str; 22] = [
    "",
    " ",
    "40 kg",
    "82.5",
    "82,5 kg",
    "-5 kg",
    "0",
    "0.000000000001 kg",
    "99999999999999 kg",
    "1e309",
    "NaN",
    "12 lb",
    "8",
    "5-8",
    "back-squat",
    "bench-press",
    "leg-extension",
    "no-such",
    "\u{0}\u{1b}[2J",
    "深蹲 🏋️",
    "0.0.0",
    "Boathouse",
];
const SLUGS: [&str; 8] =
    ["back-squat", "bench-press", "deadlift", "leg-press", "push-up", "barbell-row", "no-such", ""];
const FIELDS: [&str; 14] = [
    "body-mass",
    "max:back-squat",
    "max:deadlift",
    "max:no-such",
    "working:track:1",
    "working:track:2",
    "load:0",
    "load:1",
    "load:99",
    "note:0",
    "note",
    "set-up:0",
    "day",
    "",
];
const ROWS: [&str; 8] = ["1.1", "1.2", "2.1", "3.3", "8.3", "0.0", "99.1", ""];

fn of<T: Clone>(all: &[T], chance: &mut Chance) -> T {
    all[chance.below(all.len() as u64) as usize].clone()
}

fn text(chance: &mut Chance) -> String {
    if chance.below(20) == 0 {
        return "x".repeat(1 + chance.below(6_000) as usize);
    }
    of(&TEXTS, chance).to_owned()
}

fn entry(chance: &mut Chance) -> u32 {
    of(&[0, 0, 1, 1, 2, 3, 4, 5, 7, 99, u32::MAX], chance)
}

fn maybe<T>(chance: &mut Chance, some: impl FnOnce(&mut Chance) -> T) -> Option<T> {
    (chance.below(2) == 0).then(|| some(chance))
}

fn amount(chance: &mut Chance) -> u32 {
    of(&[0, 1, 3, 5, 5, 8, 30, 1_000, 65_536, u32::MAX], chance)
}

fn row(chance: &mut Chance) -> String {
    of(&ROWS, chance).to_owned()
}

fn slug(chance: &mut Chance) -> String {
    of(&SLUGS, chance).to_owned()
}

fn ended(chance: &mut Chance) -> HowEnded {
    use HowEnded::{AsCalled, Equipment, Failed, Form, Interrupted, Pain};
    of(&[AsCalled, AsCalled, Failed, Form, Pain, Interrupted, Equipment], chance)
}

fn day(chance: &mut Chance) -> i32 {
    of(&[20_780, 20_781, 20_800, 20_900, 0, -1, i32::MIN, i32::MAX], chance)
}

fn part(chance: &mut Chance) -> String {
    let entry = entry(chance);
    match chance.below(4) {
        0 => text(chance),
        _ => format!("{entry}.{}.{}", chance.below(4), chance.below(3)),
    }
}

fn form(chance: &mut Chance) -> FormOf {
    use FormOf::{Changes, Exercises, Gym, Liked, Maxes, Plan, Session, Start};
    of(&[Start, Gym, Maxes, Exercises, Plan, Session, Liked, Changes], chance)
}

fn arrange(chance: &mut Chance) -> Arrange {
    match chance.below(8) {
        0 => Arrange::Enter,
        1 | 2 => Arrange::LeaveOut { left_out: chance.below(2) == 0 },
        3 => Arrange::Move { day: maybe(chance, day) },
        4 => Arrange::Join { with: maybe(chance, row) },
        5 => Arrange::Again { again: chance.below(2) == 0 },
        6 => Arrange::Travel { weeks: of(&[0, 1, 2, 8, 9, u32::MAX], chance) },
        _ => Arrange::Change {
            change: match chance.below(7) {
                0 => SessionChange::Instead { of: slug(chance), exercise: slug(chance) },
                1 => SessionChange::Add { exercise: slug(chance) },
                2 => SessionChange::Leave { exercise: slug(chance) },
                3 => SessionChange::Earlier { exercise: slug(chance) },
                4 => SessionChange::Fit,
                5 => SessionChange::Back,
                _ => SessionChange::AsPlanned,
            },
        },
    }
}

fn edit(chance: &mut Chance) -> Edit {
    match chance.below(9) {
        0 => Edit::Open,
        1 => Edit::Put { text: text(chance) },
        2 => Edit::Add { what: text(chance) },
        3 => Edit::Remove,
        4 => Edit::Move { by: of(&[-1, 1, 0, i32::MIN, i32::MAX], chance) },
        5 => Edit::Undo,
        6 => Edit::Redo,
        7 => Edit::Drop,
        _ => Edit::TakeUp,
    }
}

/// What happens on the floor.
fn of_session(chance: &mut Chance) -> Intent {
    match chance.below(24) {
        0 => Intent::Start,
        1 => Intent::TapRep { part: part(chance) },
        2 | 3 => Intent::Record {
            part: maybe(chance, part),
            amount: maybe(chance, amount),
            left_halves: maybe(chance, |chance| of(&[0, 2, 4, 7, 20, u8::MAX], chance)),
            ended: ended(chance),
            helped: of(&[0, 0, 1, u32::MAX], chance),
            last: chance.below(4) == 0,
        },
        4 | 5 => Intent::Correct {
            part: part(chance),
            amount: maybe(chance, amount),
            load: maybe(chance, text),
            left_halves: maybe(chance, |chance| of(&[0, 2, 4, u8::MAX], chance)),
            ended: ended(chance),
            helped: of(&[0, 1, u32::MAX], chance),
            sure: chance.below(2) == 0,
        },
        6 => Intent::SkipSet,
        7 => Intent::SkipExercise { entry: entry(chance) },
        8 => {
            use SwapReason::{Lacking, Pain, Taken, Wish};
            let why = of(&[Lacking, Taken, Pain, Wish], chance);
            Intent::Swap { entry: entry(chance), exercise: slug(chance), why }
        }
        9 => Intent::AddExercise { exercise: slug(chance) },
        10 => Intent::Postpone { entry: entry(chance) },
        11 => Intent::TakeUp { entry: entry(chance) },
        12 => Intent::AddSet { entry: entry(chance) },
        13 | 14 => Intent::ChangeLoad {
            entry: entry(chance),
            load: text(chance),
            only_next: chance.below(2) == 0,
            sure: chance.below(2) == 0,
        },
        15 => Intent::BarHolds { side: (0..chance.below(4)).map(|_| text(chance)).collect() },
        16 => Intent::RestBy { seconds: of(&[-15, 15, 0, 3_600, i32::MIN, i32::MAX], chance) },
        17 => {
            use GuardChoice::{Neither, Pins, Spotter};
            let guard = of(&[Pins, Spotter, Neither], chance);
            Intent::GuardedBy { entry: entry(chance), guard }
        }
        18 => {
            use KitChoice::{Belt, Sleeves, Straps, Wraps};
            let kit = of(&[Belt, Wraps, Straps, Sleeves], chance);
            Intent::UseKit { entry: entry(chance), kit: vec![kit; chance.below(3) as usize] }
        }
        19 => Intent::Pause,
        20 => Intent::Resume,
        21 => Intent::AllAsCalled { entry: maybe(chance, entry) },
        22 => Intent::Undo,
        _ => Intent::Redo,
    }
}

/// An intent of any kind. The demo is another file's, and left alone.
pub(super) fn any(chance: &mut Chance) -> Intent {
    if chance.below(2) == 0 {
        return of_session(chance);
    }
    match chance.below(24) {
        0 => Intent::Begin {
            session: maybe(chance, row),
            minutes: maybe(chance, amount),
            sure: chance.below(2) == 0,
        },
        1 => Intent::EnterPaper { session: maybe(chance, row), day: day(chance) },
        2 => {
            let session = maybe(chance, |chance| of(&[0, 1, 4, 50, u64::MAX], chance));
            Intent::DateSession { session, day: day(chance) }
        }
        3 => {
            use LayAnew::{Drop, PushBack, Squeeze, SqueezeClose};
            let how = |chance: &mut Chance| of(&[PushBack, Drop, Squeeze, SqueezeClose], chance);
            Intent::LayAnew { how: maybe(chance, how) }
        }
        4 => Intent::Finish,
        5 => Intent::HoldBack { owner: owner(chance), held: chance.below(2) == 0 },
        6 => Intent::Accept { owner: owner(chance) },
        7 => Intent::AnswerPain { exercise: slug(chance), free: chance.below(2) == 0 },
        8 => Intent::PainOfJoint { exercise: slug(chance), of_joint: chance.below(2) == 0 },
        9 => Intent::WasIll,
        10 => Intent::Minor { under_18: chance.below(2) == 0, coached: chance.below(2) == 0 },
        11 => Intent::Wake,
        12 => Intent::AdoptPlan {
            text: if chance.below(2) == 0 { text(chance) } else { plans::text(chance) },
            from: maybe(chance, row),
            as_new: chance.below(2) == 0,
            all_rows: chance.below(2) == 0,
        },
        13..=15 => Intent::Arrange { session: row(chance), how: arrange(chance) },
        16 => Intent::TakeUpPlan { plan: of(&["1", "2", "0", "x"], chance).to_owned() },
        17 => Intent::AddGym { text: text(chance) },
        18 => Intent::ChooseGym { name: text(chance) },
        19..=21 => Intent::Edit {
            of: form(chance),
            place: text(chance),
            edit: edit(chance),
            step: maybe(chance, |chance| of(&[0, 1, 100, u64::MAX], chance)),
        },
        _ => Intent::Write { field: field(chance), text: text(chance), sure: chance.below(2) == 0 },
    }
}

fn owner(chance: &mut Chance) -> String {
    of(&["track:1", "track:2", "max:back-squat", "care:deadlift", "loose:x", ""], chance).to_owned()
}

/// The name of a field.
pub(super) fn field(chance: &mut Chance) -> String {
    of(&FIELDS, chance).to_owned()
}

/// What is written into a field.
pub(super) fn written(chance: &mut Chance) -> String {
    text(chance)
}

/// Something to look at.
pub(super) fn look(chance: &mut Chance) -> Look {
    let floor = |panel: Option<&str>| {
        let panel = panel.map(str::to_owned);
        Look::Floor { draft: Draft { panel, ..Draft::default() } }
    };
    match chance.below(16) {
        0..=2 => floor(None),
        3 | 4 => {
            let panels = ["more", "order", "ended", "swap", "pain", "pace", "correct", "no-such"];
            floor(Some(of(&panels, chance)))
        }
        5 => Look::Today { session: maybe(chance, row), minutes: maybe(chance, amount) },
        6 => Look::Tally,
        7 => Look::Weeks,
        8 => Look::Anew { how: LayAnew::Squeeze },
        9 => Look::Lift { exercise: slug(chance), page: 0, all: chance.below(2) == 0 },
        10 => Look::Balance { weeks: maybe(chance, amount) },
        11 => Look::Equipment,
        12 => Look::Care,
        13 => Look::Plan { text: maybe(chance, plans::text), week: maybe(chance, amount) },
        _ => Look::Form { of: form(chance), at: String::new(), text: String::new() },
    }
}
