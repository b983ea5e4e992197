//! A session changed for once and from now on, through the public door: by keys alone.
#![allow(clippy::unwrap_used)]

use barwright_app::contract::{Action, Intent, Look, Screen};
use barwright_player::Player;

const PLAN: &str = r#"# ours
name = "Base"
weeks = 4

[[session]]
name = "Lower"

[[session.exercise]]
name = "Back squat" # first
sets = 3
reps = 5
load = "100 kg"

[[session.exercise]]
name = "Romanian deadlift"
sets = 3
reps = 8
load = "80 kg"

[[session.exercise]]
name = "Leg curl"
sets = 2
reps = "10-12"

[[session]]
name = "Upper"

[[session.exercise]]
name = "Bench press"
sets = 3
reps = 5
load = "70 kg"
"#;

const HOTEL: &str = r#"
name = "Hotel"
unit = "kg"
also = ["bench"]
[[dumbbells]]
name = "Rack"
from = "5 kg"
to = "25 kg"
step = "2.5 kg"
"#;

#[test]
fn a_hotel_gym_without_a_barbell_ends_in_a_session_in_eight_presses() {
    let mut hand = Player::with(PLAN);
    hand.dispatch(Intent::AddGym { text: HOTEL.into() });
    hand.view(Look::Equipment);
    hand.presses = 0;
    let hotel = hand.keys().iter().find(|key| key.label.contains("Hotel")).cloned().unwrap();
    hand.press(&hotel);
    // Wherever choosing leads, Today is a press away.
    hand.today();
    hand.presses += 1;
    let lacking = hand.as_today().rows.iter().filter(|row| row.warns).count();
    assert!(lacking >= 2, "{:#?}", hand.as_today());
    hand.tap("fit");
    let today = hand.as_today();
    assert!(today.rows.iter().all(|row| !row.warns), "{today:#?}");
    let names: Vec<_> =
        today.rows.iter().filter(|row| row.id.starts_with("entry-")).map(|row| &row.text).collect();
    assert!(names.iter().all(|name| *name != "Back squat"), "{names:?}");
    assert!(names.len() >= 2, "{names:?}");
    let first = (*names[0]).clone();
    hand.tap("begin");
    // The floor calls what Today said.
    assert_eq!(hand.floor().call.exercise, first);
    assert!(hand.floor().notices.is_empty(), "{:?}", hand.floor().notices);
    assert!(hand.presses <= 8, "{}", hand.presses);
}

#[test]
fn changes_for_once_have_a_way_back_and_leave_the_plan_alone() {
    let mut hand = Player::with(PLAN);
    let planned = ["Back squat", "Romanian deadlift", "Leg curl"];
    assert_eq!(hand.exercises(), planned);
    hand.tap("change");
    hand.tap_row("Leg curl", "earlier");
    assert_eq!(hand.exercises(), ["Back squat", "Leg curl", "Romanian deadlift"]);
    hand.tap("change");
    hand.tap_row("Romanian deadlift", "leave-out");
    hand.tap("add");
    hand.write("Look for", "plank");
    hand.tap_row("Plank", "once");
    assert_eq!(hand.exercises(), ["Back squat", "Leg curl", "Plank (optional)"]);
    hand.tap("change");
    hand.tap("back");
    assert_eq!(hand.exercises(), ["Back squat", "Leg curl"]);
    // The list of what would do begins with the same movement.
    hand.tap_row("Back squat", "instead");
    let first = hand.form().rows[1].clone();
    assert!(first.detail.contains("squat"), "{first:#?}");
    hand.tap_row("Front squat", "once");
    assert_eq!(hand.form().subtitle, "3 changes, for this once. The plan stays as it is.");
    assert_eq!(hand.exercises(), ["Front squat", "Leg curl"]);
    // The next session of the same name is as the plan has it, once this one is done.
    hand.tap("begin");
    assert_eq!(hand.floor().call.exercise, "Front squat");
    hand.dispatch(Intent::Finish);
    let third = Look::Today { session: Some("2.1".into()), minutes: None };
    hand.view(third);
    let rows = hand.as_today().rows;
    assert!(rows.iter().any(|row| row.text == "Back squat"), "{rows:#?}");
    // And as planned is one press.
    hand.dispatch(Intent::Undo);
    hand.dispatch(Intent::Undo);
    hand.today();
    hand.tap("change");
    hand.tap("as-planned");
    assert_eq!(hand.exercises(), planned);
}

#[test]
fn from_now_on_mends_the_plan_and_keeps_its_comments() {
    let mut hand = Player::with(PLAN);
    hand.tap_row("Back squat", "instead");
    hand.tap_row("Front squat", "always");
    let plan = hand.plan();
    assert!(plan.faults.iter().all(|fault| !fault.problem.contains("fault")), "{plan:#?}");
    assert!(plan.rows[0].text.contains('1'), "{:?}", plan.rows[0]);
    let adopt = hand.key("adopt");
    let Action::Do { intent: Intent::AdoptPlan { text, .. }, .. } = &adopt.action else {
        panic!("{adopt:?}")
    };
    assert!(text.starts_with("# ours\n") && text.contains("\"Front squat\" # first"), "{text}");
    assert!(!text.contains("100 kg") && text.contains("80 kg"), "{text}");
    hand.press(&adopt);
    assert!(matches!(hand.shown.screen, Screen::Weeks { .. }));
    assert_eq!(hand.exercises()[0], "Front squat");
}

#[test]
fn the_floor_swaps_for_any_exercise_and_asks_why_only_where_it_matters() {
    let mut hand = Player::with(PLAN);
    hand.tap("begin");
    hand.tap("more");
    hand.tap("swap");
    // Nothing was done of it: nobody is asked whether it hurt.
    assert!(!hand.has("hurts"), "{:#?}", hand.panel());
    let field = hand.panel().fields[0].id.clone();
    let before = hand.engine.count_records().unwrap();
    hand.type_in(&field, "leg press");
    assert_eq!(hand.engine.count_records().unwrap(), before, "a search records nothing");
    hand.tap("swap-leg-press");
    assert_eq!(hand.floor().call.exercise, "Leg press");
    hand.tap("more");
    hand.tap("order");
    hand.tap("add");
    hand.type_in(&hand.panel().fields[0].id.clone(), "plank");
    hand.tap("add-plank");
    hand.tap("more");
    hand.tap("order");
    let last = hand.panel().rows.last().unwrap().text.clone();
    assert!(last.starts_with("Plank"), "{last}");
}

#[test]
fn what_is_swapped_because_it_hurts_stands_as_pain() {
    let mut hand = Player::with(PLAN);
    hand.tap("begin");
    while hand.floor().call.exercise == "Back squat" {
        hand.tap("record");
        if hand.floor().call.sentence.contains("Set 2 of 3") {
            break;
        }
    }
    hand.tap("more");
    hand.tap("swap");
    hand.tap("hurts");
    hand.tap("swap-leg-press");
    hand.dispatch(Intent::Finish);
    hand.view(Look::Today { session: Some("2.1".into()), minutes: None });
    let rows = hand.as_today().rows;
    let squat = rows.iter().position(|row| row.text == "Back squat").unwrap();
    let why = rows[squat + 1..].iter().flat_map(|row| row.why.clone());
    assert!(
        why.into_iter().any(|line| line.to_lowercase().contains("pain") || line.contains("hurt")),
        "{rows:#?}"
    );
}
