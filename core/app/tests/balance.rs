//! The Balance screen after a session that one side left early.

use barwright_app::Engine;
use barwright_app::contract::{Action, Intent, Look, Reading, Screen};

const PLAN: &str = r#"
name = "One side at a time"
weeks = 1
[[session]]
name = "Monday"
[[session.exercise]]
name = "Rear-foot-raised split squat"
sides = "left first"
ramp = "none"
sets = 2
reps = 8
load = "20 kg"
[[session]]
name = "Wednesday"
[[session.exercise]]
name = "Back squat"
sets = 2
reps = 8
load = "60 kg"
[[session]]
name = "Friday"
[[session.exercise]]
name = "Rear-foot-raised split squat"
sides = "left first"
ramp = "none"
sets = 2
reps = 8
load = "20 kg"
"#;

#[test]
fn a_side_that_falls_behind_is_named_with_the_session_that_could_make_it_up() {
    let mut now = Reading {
        wall_ms: 1_795_000_000_000,
        offset_minutes: 60,
        boot_ms: Some(1_000_000),
        boot_id: Some("boot".into()),
    };
    let engine = Engine::in_memory("en-GB".into()).expect("a store in memory");
    let mut tap = |intent| {
        now.wall_ms += 60_000;
        now.boot_ms = now.boot_ms.map(|ms| ms + 60_000);
        engine.dispatch(intent, now.clone()).expect("it is taken")
    };
    tap(Intent::adopt(PLAN));
    tap(Intent::Write { field: "body-mass".into(), text: "80 kg".into(), sure: false });
    let mut screen = tap(Intent::Begin { session: None, minutes: None, sure: false }).screen;
    // Left, right, left: the right's second set is not done.
    for _ in 0..3 {
        let Screen::Floor { floor } = screen else { panic!("the session runs: {screen:?}") };
        let Some(Action::Do { intent, .. }) = floor.thumb.main.map(|key| key.action) else {
            panic!("one wide key")
        };
        screen = tap(intent).screen;
    }
    tap(Intent::Finish);
    let look = Look::Balance { weeks: None };
    let Screen::Balance { balance } = engine.view(look, now.clone()).unwrap().screen else {
        panic!("the balance is shown")
    };
    let said: Vec<&str> = balance.sentences.iter().map(|row| row.text.as_str()).collect();
    assert!(
        said.contains(
            &"Quadriceps, right side: 1 hard set less than the other; a set could go into Friday."
        ),
        "{said:#?}"
    );
    let bar = balance.bars.iter().find(|bar| bar.muscle == "Quadriceps").expect("legs are done");
    assert_eq!((bar.left_halves, bar.right_halves), (Some(4), Some(2)));
    assert!(bar.detail.ends_with("left 2, right 1"), "{}", bar.detail);
}
