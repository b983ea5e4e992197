//! A plan made and mended by hand, by the keys of the screens alone: nobody sees a text file.
#![allow(clippy::unwrap_used)]

use barwright_app::contract::{Action, Intent, Look, Screen};
use barwright_player::Player;
use barwright_player::clock::MONDAY;

/// A plan of three exercises from an empty sheet, seen and adopted.
fn made(hand: &mut Player) {
    hand.today();
    hand.tap("make");
    hand.tap_row("A", "open");
    for (words, name) in
        [("back squat", "Back squat"), ("bench press", "Bench press"), ("pull-up", "Pull-up")]
    {
        hand.tap("add");
        hand.write("Look for", words);
        hand.tap_row(name, "add");
    }
    // The squat in fives at a load; the rest as it came.
    hand.tap_row("Back squat", "open");
    hand.write("Reps", "5");
    hand.write("Load", "80 kg");
    hand.up("Next time");
    hand.up("Next time");
    hand.tap("leave");
    hand.tap("leave");
    hand.tap("see");
    hand.tap("adopt");
}

#[test]
fn from_an_empty_phone_to_the_first_set() {
    let mut hand = Player::new();
    hand.presses = 0;
    made(&mut hand);
    hand.today();
    hand.presses += 1;
    hand.tap("begin");
    assert_eq!(hand.floor().call.exercise, "Back squat");
    // A new gym adds at most some twenty to it.
    assert!(hand.presses <= 35, "{}", hand.presses);
}

#[test]
fn two_weeks_are_trained_without_a_text_file() {
    let mut hand = Player::new();
    made(&mut hand);
    for day in [0, 3, 7, 10] {
        hand.on_day(MONDAY + day);
        hand.today();
        hand.tap("begin");
        let mut sets = 0;
        loop {
            // What has no load yet is said before it is done.
            if hand.has("record") {
                let key = hand.key("record").action.clone();
                if hand.act(&key).is_err() {
                    hand.tap("more");
                    hand.tap("load");
                    let field = hand.panel().fields[0].id.clone();
                    hand.type_in(&field, "40");
                    continue;
                }
            } else if hand.has("left-2") {
                let key = hand.key("left-2").action.clone();
                if hand.act(&key).is_err() {
                    hand.tap("more");
                    hand.tap("load");
                    let field = hand.panel().fields[0].id.clone();
                    hand.type_in(&field, "40");
                    continue;
                }
            } else {
                break;
            }
            sets += 1;
            assert!(sets < 60);
        }
        hand.tap("finish");
        assert!(matches!(hand.shown.screen, Screen::Tally { .. }));
    }
    let weeks = hand.weeks();
    let done = weeks.weeks.iter().flat_map(|week| &week.rows).filter(|row| row.done).count();
    assert_eq!(done, 4);
}

#[test]
fn faults_and_remarks_stand_beside_their_rows_and_a_draft_has_steps_back() {
    let mut hand = Player::new();
    hand.today();
    hand.tap("make");
    // A session without an exercise can't be taken up.
    assert!(!hand.key("see").enabled);
    assert!(!hand.row("A").faults.is_empty(), "{:#?}", hand.form());
    hand.tap_row("A", "open");
    hand.tap("add");
    hand.write("Look for", "squat");
    hand.tap_row("Back squat", "add");
    hand.tap_row("Back squat", "open");
    hand.write("Load", "a lot");
    let load = hand.row("Load");
    assert!(load.warns && load.faults.len() == 1, "{load:#?}");
    hand.tap("undo");
    assert!(hand.row("Load").faults.is_empty());
    hand.tap("redo");
    assert!(hand.row("Load").warns);
    hand.tap("undo");
    // By set, by week, and parts.
    hand.write("Load", "70 %");
    let key = hand.row("Load").keys[0].clone();
    hand.press(&key);
    hand.write("Load", "70 %, 75 %, 80 %, 60 %");
    assert_eq!(hand.row("Load").value, "70 %, 75 %, 80 %, 60 %");
    hand.write("Reps", "5, 3, 1");
    assert!(hand.row("Load").faults.is_empty(), "{:#?}", hand.form());
    hand.tap_row("More: tempo, parts, drops, set-up…", "open");
    hand.write("Drops", "20 %");
    hand.write("Parts on sets", "last");
    hand.tap("leave");
    // What it says is shown with the rest from now on.
    assert_eq!(hand.row("Drops").value, "20 %");
    hand.tap("leave");
    hand.tap("leave");
    hand.up("Week 4");
    hand.up("Week 4");
    assert_eq!(hand.row("Week 4").value, "deload");
    // What a coach would look at stands beside its row.
    hand.write("Minutes", "5");
    let remarks: Vec<_> = hand.form().rows.into_iter().flat_map(|row| row.remarks).collect();
    assert!(!remarks.is_empty());
    assert!(hand.key("see").enabled, "{:#?}", hand.form());
}

#[test]
fn a_session_is_copied_within_its_plan() {
    let mut hand = Player::new();
    hand.today();
    hand.tap("make");
    hand.tap_row("A", "open");
    hand.tap("add");
    hand.write("Look for", "back squat");
    hand.tap_row("Back squat", "add");
    hand.tap("leave");
    hand.tap_row("A", "again");
    hand.tap_row("B", "open");
    assert!(hand.row("Back squat").detail.contains("3"), "{:#?}", hand.form());
    hand.tap("leave");
    hand.tap("undo");
    assert!(!hand.form().rows.iter().any(|row| row.text == "B"));
}

const FILE: &str = r#"# written at a desk
name = "Winter" # ours
weeks = 4
lay_off = [{ over_days = 14, load_off = "10 %" }] # after a holiday

[[session]]
name = "Legs"
[[session.exercise]]
name = "Back squat" # the main lift
sets = 3
reps = 5
load = "100 kg" # since spring
"#;

#[test]
fn a_plan_that_is_on_is_mended_and_its_comments_stay() {
    let mut hand = Player::with(FILE);
    hand.weeks();
    hand.presses = 0;
    hand.tap("mend-plan");
    // What the form does not change it shows, and says so.
    assert!(hand.row("lay_off").detail.contains("kept"), "{:#?}", hand.form());
    hand.tap_row("Legs", "open");
    hand.tap_row("Back squat", "open");
    hand.up("Load");
    hand.up("Load");
    assert_eq!(hand.row("Load").value, "105 kg");
    let text = hand.form().file.unwrap().text;
    assert_eq!(text, FILE.replace("100 kg", "105 kg"));
    hand.tap("leave");
    hand.tap("leave");
    hand.tap("see");
    // Which loads start anew, before it is taken up.
    let plan = hand.plan();
    assert!(plan.rows.iter().any(|row| row.text.contains("Back squat")), "{plan:#?}");
    let adopt = hand.key("adopt");
    assert!(matches!(&adopt.action, Action::Do { intent: Intent::AdoptPlan { .. }, .. }));
    hand.press(&adopt);
    assert!(matches!(hand.shown.screen, Screen::Weeks { .. }));
    // The draft went with it.
    assert!(hand.has("mend-plan"));
    hand.view(Look::Today { session: None, minutes: None });
    let today = hand.as_today();
    assert!(today.rows.iter().any(|row| row.text.contains("105 kg")), "{today:#?}");
}
