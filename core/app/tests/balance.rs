//! The Balance screen after a session that one side left early.

use barwright_app::contract::{Look, Screen};
use barwright_player::Player;
use barwright_player::clock::booted;

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
    let mut lifter = Player::at(booted()).taking(60).takes_up(PLAN);
    lifter.type_in("body-mass", "80 kg");
    lifter.begin();
    // Left, right, left: the right's second set is not done.
    for _ in 0..3 {
        let main = lifter.floor().thumb.main.expect("one wide key");
        lifter.press(&main);
    }
    lifter.finish();
    let look = Look::Balance { weeks: None };
    let Screen::Balance { balance } = lifter.see(look) else { panic!("the balance is shown") };
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
