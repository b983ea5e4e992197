//! Exercises by their names in every language, through the engine: what was trained stays theirs.
#![allow(clippy::unwrap_used)] // helpers outside #[test] functions

use std::sync::Arc;

use barwright_app::Engine;
use barwright_app::contract::{HowEnded, Intent, LiftScreen, Look, Reading, Screen};

const ENGLISH: &str = r#"
name = "Off-season"
weeks = 8
[[session]]
name = "One"
[[session.exercise]]
name = "Back squat"
sets = 1
reps = 5
load = "60 kg"
ramp = "none"
"#;

fn now(minute: i64) -> Reading {
    Reading {
        wall_ms: 1_795_000_000_000 + minute * 60_000,
        offset_minutes: 60,
        boot_ms: None,
        boot_id: None,
    }
}

fn lift(engine: &Arc<Engine>, name: &str) -> LiftScreen {
    let look = Look::Lift { exercise: name.into(), page: 0, all: false };
    match engine.view(look, now(60)).unwrap().screen {
        Screen::Lift { lift } => lift,
        other => panic!("{other:?}"),
    }
}

#[test]
fn history_survives_a_change_of_language() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("records.db").to_str().unwrap().to_owned();
    let engine = Engine::open(path.clone(), "en-GB".into()).unwrap();
    engine.dispatch(Intent::adopt(ENGLISH), now(0)).unwrap();
    let begin = Intent::Begin { session: None, minutes: None, sure: false };
    engine.dispatch(begin, now(1)).unwrap();
    let made = Intent::Record {
        part: None,
        amount: Some(5),
        left_halves: None,
        ended: HowEnded::AsCalled,
        helped: 0,
        last: false,
    };
    engine.dispatch(made, now(2)).unwrap();
    engine.dispatch(Intent::Finish, now(3)).unwrap();
    let before = lift(&engine, "Kniebeuge").sessions.len();
    assert!(before > 0, "the session is shown");
    drop(engine);
    // In German, and with a plan that was written in German.
    let engine = Engine::open(path, "de-DE".into()).unwrap();
    engine.dispatch(Intent::adopt(ENGLISH.replace("Back squat", "Kniebeuge")), now(50)).unwrap();
    for name in ["Back squat", "back-squat", "Kniebeuge", "kniebeugen"] {
        assert_eq!(lift(&engine, name).sessions.len(), before, "{name}");
    }
    let look = Look::Lift { exercise: "Frontkniebeuge".into(), page: 0, all: false };
    match engine.view(look, now(60)).unwrap().screen {
        Screen::Lift { lift } => assert!(lift.sessions.is_empty(), "{:?}", lift.sessions),
        other => panic!("{other:?}"),
    }
}
