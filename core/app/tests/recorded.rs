//! What is recorded is told apart from what is shown: a tap that is on disk says so, whatever happens
//! to its screen.
#![allow(clippy::unwrap_used)] // helpers outside #[test] functions

use std::sync::Arc;

use barwright_app::Engine;
use barwright_app::contract::{Action, Effect, EngineError, Intent, Look, Reading, Screen};

const PLAN: &str = r#"
name = "Two evenings"
weeks = 4

[[session]]
name = "Legs"

[[session.exercise]]
name = "Back squat"
sets = 3
reps = 5
load = "100 kg"
ramp = "none"
"#;

fn at(minute: i64) -> Reading {
    Reading {
        wall_ms: 1_795_000_000_000 + minute * 60_000,
        offset_minutes: 60,
        boot_ms: None,
        boot_id: None,
    }
}

fn tap(engine: &Engine, minute: i64, intent: Intent) -> Vec<Effect> {
    engine.dispatch(intent, at(minute)).unwrap().effects
}

fn record() -> Intent {
    Intent::Record {
        part: None,
        amount: None,
        left_halves: None,
        ended: Default::default(),
        helped: 0,
        last: false,
    }
}

/// Entries in the log of a file that nobody has open.
fn entries(path: &std::path::Path) -> u64 {
    let file = rusqlite::Connection::open(path).unwrap();
    file.query_row("SELECT count(*) FROM event", [], |row| row.get(0)).unwrap()
}

/// A file with a session behind it and one that runs. The rows of the first were spoiled, and so was
/// its entry in the log, further back than opening looks: they can't be made anew.
fn spoiled(path: &std::path::Path) -> Arc<Engine> {
    let open = || Engine::open(path.display().to_string(), "en-GB".into()).unwrap();
    let engine = open();
    tap(&engine, 0, Intent::adopt(PLAN));
    tap(&engine, 1, Intent::Begin { session: None, minutes: None, sure: false });
    (2..5).for_each(|minute| drop(tap(&engine, minute, record())));
    for _ in 0..barwright_store::CHECKED_ON_OPEN / 2 {
        tap(&engine, 5, Intent::Undo);
        tap(&engine, 5, Intent::Redo);
    }
    tap(&engine, 10, Intent::Finish);
    tap(&engine, 3_000, Intent::Begin { session: None, minutes: None, sure: false });
    tap(&engine, 3_001, record());
    engine.shut_down().unwrap();
    let file = rusqlite::Connection::open(path).unwrap();
    let rows = file.execute("UPDATE done_set SET asked = 'spoiled'", []).unwrap();
    assert!(rows > 0);
    let name = "event_is_never_changed";
    let guard = "SELECT sql FROM sqlite_schema WHERE name = ?1";
    let guard: String = file.query_row(guard, [name], |row| row.get(0)).unwrap();
    file.execute_batch(&format!("DROP TRIGGER {name}")).unwrap();
    let logged = file.execute("UPDATE event SET body = body || ' ' WHERE seq = 2", []).unwrap();
    assert_eq!(logged, 1);
    file.execute_batch(&guard).unwrap();
    drop(file);
    open()
}

#[test]
fn a_tap_whose_screen_cannot_be_made_is_recorded_and_says_so() {
    let dir = tempfile::tempdir().unwrap();
    let path = dir.path().join("records.db");
    let engine = spoiled(&path);
    engine.suspend().unwrap();
    let before = entries(&path);

    // The tally reads what was done before, and can't.
    let answer = engine.dispatch(Intent::Finish, at(3_002)).unwrap();
    let Screen::NotShown { not_shown } = &answer.screen else { panic!("{answer:?}") };
    assert!(not_shown.reason.contains("is recorded"), "{not_shown:?}");
    assert!(not_shown.report.is_empty(), "the file is at fault, not the program");
    assert!(answer.effects.contains(&Effect::KeepAwake { on: false }), "{:?}", answer.effects);
    assert!(answer.effects.contains(&Effect::CancelRing), "{:?}", answer.effects);
    assert_eq!((answer.look, answer.wakes_at), (Look::Tally, None));
    // The end, and what it comes to for the owners of loads.
    engine.suspend().unwrap();
    assert_eq!(entries(&path), before + 2, "it is in the log");

    // A look has recorded nothing: it fails as such. What reads no rows is still there.
    let looked = engine.view(Look::Tally, at(3_003));
    assert!(matches!(looked, Err(EngineError::Storage { .. })), "{looked:?}");
    let equipment = engine.view(Look::Equipment, at(3_003)).unwrap().screen;
    assert!(matches!(equipment, Screen::Equipment { .. }));

    // Nothing blocks the taps that follow: the end is taken back, and the session goes on.
    let answer = engine.dispatch(Intent::Undo, at(3_004)).unwrap();
    assert!(matches!(answer.screen, Screen::Floor { .. }), "{answer:?}");
    let answer = engine.dispatch(record(), at(3_005)).unwrap();
    assert!(matches!(answer.screen, Screen::Floor { .. }), "{answer:?}");
}

#[test]
fn from_where_nothing_is_shown_a_key_leads_on() {
    let dir = tempfile::tempdir().unwrap();
    let engine = spoiled(&dir.path().join("records.db"));
    // A chart of the spoiled exercise after a tap that leads nowhere near it.
    let then = Some(Look::Lift { exercise: "back-squat".into(), page: 0, all: false });
    let action = Action::Do { intent: record(), session: None, then };
    let answer = engine.act(action, at(3_002)).unwrap();
    let Screen::NotShown { not_shown } = answer.screen else { panic!("{answer:?}") };
    let floor = not_shown.keys.iter().find(|key| key.id == "floor").unwrap();
    let answer = engine.act(floor.action.clone(), at(3_003)).unwrap();
    assert!(matches!(answer.screen, Screen::Floor { .. }));
}
