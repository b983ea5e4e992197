//! Amounts far from the call, and the loads that a lifter likes: by keys alone.
#![allow(clippy::unwrap_used)]

use barwright_app::contract::{Intent, Look};
use barwright_player::Player;

const PLAN: &str = r#"
name = "Base"
weeks = 4

[[session]]
name = "Lower"
[[session.exercise]]
name = "Back squat"
sets = 2
reps = "4 or more, stop at 1 left"
load = "101.25 kg"
ramp = "none"
[[session.exercise]]
name = "Plank"
sets = 1
seconds = 30
"#;

#[test]
fn an_open_set_of_eight_where_four_were_called_takes_two_presses() {
    let mut hand = Player::with(PLAN);
    hand.tap("begin");
    assert_eq!(hand.floor().thumb.figure.unwrap().text, "4");
    hand.presses = 0;
    hand.tap("near-8");
    assert_eq!(hand.floor().thumb.figure.unwrap().text, "8");
    hand.tap("record");
    assert_eq!(hand.presses, 2);
    hand.dispatch(Intent::Finish);
    assert!(format!("{:?}", hand.tally().done).contains('8'), "{:#?}", hand.tally().done);
}

#[test]
fn what_is_far_from_the_call_is_typed() {
    let mut hand = Player::with(PLAN);
    hand.tap("begin");
    let before = hand.engine.count_records().unwrap();
    let pad = hand.floor().thumb.figure.unwrap().pad;
    hand.press(&pad);
    assert!(!hand.key("set").enabled, "nothing is typed yet");
    for digit in ["digit-1", "digit-9", "digit-9"] {
        hand.tap(digit);
    }
    hand.tap("rub-out");
    assert_eq!(hand.panel().title, "19 reps");
    hand.tap("set");
    assert_eq!(hand.floor().thumb.figure.unwrap().text, "19");
    assert_eq!(hand.engine.count_records().unwrap(), before, "typing records nothing");
    hand.tap("record");
    hand.dispatch(Intent::SkipExercise { entry: 0 });
    // Seconds are typed as seconds.
    let pad = hand.floor().thumb.figure.unwrap().pad;
    hand.press(&pad);
    for digit in ["digit-7", "digit-5"] {
        hand.tap(digit);
    }
    hand.tap("set");
    assert_eq!(hand.floor().thumb.figure.unwrap().text, "75");
}

fn first_load(hand: &mut Player) -> (String, Vec<String>) {
    let today = hand.today();
    let row = today.rows.iter().find(|row| row.id.starts_with("sets-0")).unwrap();
    (row.text.clone(), row.why.clone())
}

#[test]
fn the_loads_a_lifter_likes_go_into_every_call_with_the_reason() {
    let mut hand = Player::with(PLAN);
    let (before, _) = first_load(&mut hand);
    assert!(
        before.contains("101.25") || before.contains("102.5") || before.contains("101"),
        "{before}"
    );
    hand.view(Look::Equipment);
    hand.tap("liked");
    hand.up("Whole steps of");
    hand.up("Whole steps of");
    hand.up("Whole steps of");
    assert_eq!(hand.row("Whole steps of").value, "5 kg");
    // What follows is shown where it is stepped.
    assert!(
        hand.form().notes.iter().any(|note| note.contains("100 kg")),
        "{:?}",
        hand.form().notes
    );
    let (now, why) = first_load(&mut hand);
    assert!(now.contains("100 kg"), "{now}");
    assert!(why.iter().any(|line| line.contains("as you like it")), "{why:?}");
    // A lift's own wish goes before the gym's, and the floor calls it too.
    hand.view(Look::Lift { exercise: "back-squat".into(), page: 0, all: false });
    let keys = match &hand.shown.screen {
        barwright_app::contract::Screen::Lift { lift } => lift.keys.clone(),
        other => panic!("{other:#?}"),
    };
    hand.press(keys.iter().find(|key| key.id == "liked").unwrap());
    for _ in 0..4 {
        hand.up("Whole steps of");
    }
    assert!(hand.row("Whole steps of").up.is_none_or(|key| !key.enabled));
    hand.up("Smallest plate");
    assert_eq!(hand.row("Smallest plate").value, "1.25 kg");
    hand.today();
    hand.tap("begin");
    assert_eq!(hand.floor().bar.total, "100 kg");
}
