//! A naive, slow model of a session against the engine: random taps with kills and restarts between
//! them, and after each the same part to do, the same rest, the same sets done.
//!
//! The model keeps a plain list of the taps that stand and plays the whole list again for every
//! question; an undo takes the last one off, a redo puts it back. It shares no code with the
//! engine.
#![allow(clippy::unwrap_used)] // a model that can't go on is a failed test

mod model;

use barwright_app::contract::{Intent, Look, Reading, Screen};
use barwright_player::screens::at_floor;
use barwright_player::{Player, clock, intents};
use model::{Model, Tap};
use proptest::prelude::*;

const PLAN: &str = r#"
name = "Reference"
weeks = 1

[warm_up]
ramp = "none"

[[session]]
name = "All of it"

[[session.exercise]]
name = "Back squat"
sets = 2
reps = 5
load = "100 kg"
rest = "3:00"

[[session.exercise]]
name = "Deadlift"
sets = 2
load = "120 kg"
cluster = { blocks = [2, 2, 1], pause = "20 s" }
rest = "2:00"

[[session.exercise]]
name = "Barbell row"
superset = "row and press"
sets = 2
reps = 8
load = "60 kg"
rest = { in_superset = "15 s", after_superset = "90 s" }

[[session.exercise]]
name = "Overhead press"
superset = "row and press"
sets = 3
reps = 5
load = "40 kg"

[[session.exercise]]
name = "Rear-foot-raised split squat"
sides = "left first"
sets = 2
reps = 8
load = "16 kg"
rest = { after_set = "60 s", between_sides = "30 s" }
"#;

fn intent(tap: Tap) -> Intent {
    let record = |amount, last| Intent::Record {
        part: None,
        amount,
        left_halves: None,
        ended: Default::default(),
        helped: 0,
        last,
    };
    match tap {
        Tap::Begin => intents::begin(),
        Tap::AsCalled => record(None, false),
        Tap::Reps(reps) => record(Some(reps.into()), false),
        Tap::Short(reps) => record(Some(reps.into()), true),
        Tap::SkipSet => Intent::SkipSet,
        Tap::SkipExercise(entry) => Intent::SkipExercise { entry: entry as u32 },
        Tap::Postpone(entry) => Intent::Postpone { entry: entry as u32 },
        Tap::TakeUp(entry) => Intent::TakeUp { entry: entry as u32 },
        Tap::AddSet(entry) => Intent::AddSet { entry: entry as u32 },
        Tap::RestBy(seconds) => Intent::RestBy { seconds },
        Tap::Pause => Intent::Pause,
        Tap::Resume => Intent::Resume,
        Tap::Finish => Intent::Finish,
    }
}

/// What happens: a tap, or something to the device.
#[derive(Debug, Clone, Copy)]
enum Step {
    Tap(Tap),
    Undo,
    Redo,
    Wait(i64),
    Kill,
    Reboot,
}

fn step() -> impl Strategy<Value = Step> {
    let entry = 0_usize..6;
    let tap = prop_oneof![
        10 => Just(Tap::AsCalled),
        4 => (1_u16..10).prop_map(Tap::Reps),
        1 => (0_u16..4).prop_map(Tap::Short),
        1 => Just(Tap::SkipSet),
        1 => entry.clone().prop_map(Tap::SkipExercise),
        1 => entry.clone().prop_map(Tap::Postpone),
        1 => entry.clone().prop_map(Tap::TakeUp),
        1 => entry.prop_map(Tap::AddSet),
        2 => prop_oneof![Just(20), Just(-20), Just(-300), Just(4000)].prop_map(Tap::RestBy),
        1 => Just(Tap::Pause),
        1 => Just(Tap::Resume),
    ];
    prop_oneof![
        16 => tap.prop_map(Step::Tap),
        1 => Just(Step::Tap(Tap::Finish)),
        4 => Just(Step::Undo),
        3 => Just(Step::Redo),
        6 => (1_i64..120).prop_map(Step::Wait),
        4 => Just(Step::Kill),
        1 => Just(Step::Reboot),
    ]
}

/// Compares everything that can be seen with what the model says.
fn same(floor: &Player, model: &Model, seconds: i64) -> Result<(), TestCaseError> {
    let seen = match floor.see(at_floor(None)) {
        Screen::Floor { floor } => Some(floor),
        _ => None,
    };
    prop_assert_eq!(seen.is_some(), model.running(), "running");
    if let Some(seen) = &seen {
        // Behind the part stands the session it is of.
        let part = seen.part.as_deref().and_then(|part| part.split('@').next());
        prop_assert_eq!(part.map(str::to_owned), model.part(), "the part to be done");
        let rest = seen.rest.as_ref().map(|rest| rest.left_ms / 1000);
        prop_assert_eq!(rest, model.rest_left(seconds), "the rest");
        prop_assert_eq!(seen.thumb.undo.is_some(), model.can_undo());
        prop_assert_eq!(seen.thumb.redo.is_some(), model.can_redo());
    }
    let rows = match floor.see(Look::Tally) {
        Screen::Tally { tally } => tally.done,
        _ => Vec::new(),
    };
    let sets = rows.into_iter().filter(|row| row.depth == 2).map(|row| {
        // "Set 1 of 2, left: 16 kg × 8 + 3": what stands after the cross is what was done.
        let amounts = row.text.rsplit('×').next().unwrap_or_default().trim().to_owned();
        format!("{} {amounts}", row.id)
    });
    let mut done: Vec<String> = sets.collect();
    done.sort();
    prop_assert_eq!(done, model.done(), "the sets done");
    Ok(())
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 48, max_shrink_iters: 400, ..ProptestConfig::default() })]

    #[test]
    fn the_engine_does_what_the_model_says(steps in proptest::collection::vec(step(), 1..60)) {
        let now = Reading {
            offset_minutes: 0,
            boot_ms: Some(10_000_000),
            boot_id: Some("boot 0".into()),
            ..clock::wednesday()
        };
        let mut floor = Player::stored(now, "en-GB").taking(0).takes_up(PLAN);
        let mut model = Model::default();
        let mut seconds = 0;
        let mut boots = 0;
        prop_assert!(model.tap(Tap::Begin, seconds));
        floor.dispatch(intent(Tap::Begin));
        for step in steps {
            match step {
                Step::Tap(tap) => {
                    let answer = floor.try_dispatch(intent(tap));
                    let taken = model.tap(tap, seconds);
                    prop_assert_eq!(answer.is_ok(), taken, "{:?}: {:?}", tap, answer);
                }
                Step::Undo => {
                    let answer = floor.try_dispatch(Intent::Undo);
                    prop_assert_eq!(answer.is_ok(), model.undo(), "undo: {:?}", answer);
                }
                Step::Redo => {
                    let answer = floor.try_dispatch(Intent::Redo);
                    prop_assert_eq!(answer.is_ok(), model.redo(), "redo: {:?}", answer);
                }
                Step::Wait(by) => {
                    floor.wait(by);
                    seconds += by;
                }
                // The engine is dropped without a word: what it answered is on disk.
                Step::Kill => floor.killed(),
                Step::Reboot => {
                    floor.killed();
                    boots += 1;
                    floor.now.boot_id = Some(format!("boot {boots}"));
                    floor.now.boot_ms = Some(2_000);
                    floor.dispatch(Intent::Wake);
                }
            }
            same(&floor, &model, seconds)?;
        }
    }
}
