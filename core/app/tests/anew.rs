//! After an absence, a wrong clock, a session on paper: through the public door, by keys alone.
#![allow(clippy::unwrap_used)]

use barwright_app::contract::{Action, EngineError, Look, RefusalCode, Row};
use barwright_player::Player;
use barwright_player::clock::{MONDAY, at_day};

const PLAN: &str = r#"
name = "Base"
weeks = 4

[[session]]
name = "Squat"
day = "Monday"
[[session.exercise]]
name = "Back squat"
sets = 3
reps = 5
load = "100 kg"
next = { rule = "add when made", step = "2.5 kg" }

[[session]]
name = "Press"
day = "Wednesday"
[[session.exercise]]
name = "Bench press"
sets = 3
reps = 5
load = "70 kg"

[[session]]
name = "Squat again"
day = "Friday"
[[session.exercise]]
name = "Back squat"
sets = 3
reps = 3
load = "110 kg"
"#;

fn rows(hand: &mut Player) -> Vec<Row> {
    hand.weeks().weeks.into_iter().flat_map(|week| week.rows).collect()
}

fn detail(hand: &mut Player, id: &str) -> String {
    rows(hand).into_iter().find(|row| row.id == id).unwrap().detail
}

/// Does the session that is on, all of it as called.
fn train(hand: &mut Player) {
    hand.today();
    hand.tap("begin");
    while hand.has("record") {
        hand.tap("record");
    }
    hand.tap("finish");
}

#[test]
fn the_rest_is_laid_anew_by_one_press_and_shown_before() {
    let mut hand = Player::with(PLAN);
    train(&mut hand);
    // Nothing lies behind on the day.
    hand.weeks();
    assert!(!hand.has("anew-push-back"), "{:#?}", hand.keys());
    // Back on the Thursday of the week after: Press, Squat again, Squat, Press lie behind.
    hand.on_day(MONDAY + 10);
    hand.weeks();
    let recorded = hand.engine.count_records().unwrap();
    hand.tap("anew-push-back");
    let shown = hand.as_weeks();
    assert!(
        shown.subtitle.starts_with("11 sessions come later, nothing is left out."),
        "{shown:#?}"
    );
    assert_eq!(hand.engine.count_records().unwrap(), recorded, "a look records nothing");
    hand.tap("lay-so");
    // Wednesday comes on the next Wednesday, and weekdays stay.
    assert_eq!(detail(&mut hand, "1.2"), "next, Wed 9 Dec");
    assert_eq!(detail(&mut hand, "2.1"), "Mon 14 Dec");
    hand.tap("take-back");
    assert_eq!(detail(&mut hand, "1.2"), "next, Wed 25 Nov, 8 days late");
    assert!(!hand.has("take-back"));
    hand.tap("anew-drop");
    assert!(hand.as_weeks().subtitle.starts_with("4 sessions are left out."));
    hand.tap("lay-so");
    assert_eq!(detail(&mut hand, "1.2"), "skipped");
    assert_eq!(detail(&mut hand, "2.3"), "next, Fri 4 Dec");
    hand.tap("take-back");
    assert_eq!(detail(&mut hand, "1.2"), "next, Wed 25 Nov, 8 days late");
}

#[test]
fn squeezed_never_heavy_on_neighbouring_days_unasked() {
    let mut hand = Player::with(PLAN);
    train(&mut hand);
    hand.on_day(MONDAY + 10);
    hand.weeks();
    hand.tap("anew-squeeze");
    let days: Vec<(String, i32)> = {
        hand.tap("lay-so");
        let fields = |row: &Row| (row.text.clone(), day_in(&row.detail));
        rows(&mut hand).iter().filter_map(|row| Some((fields(row).0, fields(row).1?))).collect()
    };
    let squats: Vec<i32> =
        days.iter().filter(|(name, _)| name.starts_with("Squat")).map(|(_, day)| *day).collect();
    for one in &squats {
        assert!(!squats.contains(&(one + 1)), "{days:?}");
    }
    let mut all: Vec<i32> = days.iter().map(|(_, day)| *day).collect();
    all.sort_unstable();
    all.windows(2).for_each(|pair| assert_ne!(pair[0], pair[1], "{days:?}"));
}

/// The day of a row's detail, as days since 1970-01-01.
fn day_in(detail: &str) -> Option<i32> {
    (MONDAY - 30..MONDAY + 90).find(|day| detail.contains(&short(*day)))
}

fn short(day: i32) -> String {
    let date = chrono::NaiveDate::default() + chrono::TimeDelta::days(day.into());
    date.format("%a %-d %b").to_string()
}

#[test]
fn what_was_recorded_on_a_wrong_date_is_moved() {
    let mut hand = Player::with(PLAN);
    train(&mut hand);
    // The last one says so on its tally, and it can be undone.
    hand.tap("date");
    hand.tap_row("Sun 22 Nov 2026", "day");
    assert_eq!(detail(&mut hand, "1.1"), "Sun 22 Nov");
    hand.view(Look::Tally);
    hand.tap("undo");
    assert_eq!(detail(&mut hand, "1.1"), "Mon 23 Nov");
    hand.on_day(MONDAY + 2);
    train(&mut hand);
    // An earlier one by its row of Weeks, on a day that is typed.
    hand.weeks();
    hand.tap_row("Squat", "date");
    hand.write("Another day", "the other day");
    assert_eq!(hand.row("Another day").faults.len(), 1);
    hand.write("Another day", "2026-11-21");
    hand.tap_row("Sat 21 Nov 2026", "day");
    assert_eq!(detail(&mut hand, "1.1"), "Sat 21 Nov");
    // What is derived is what the log gives again.
    assert!(hand.engine.check_records().is_ok());
    assert_eq!(hand.engine.examine_records().unwrap().mended, 0);
    hand.view(Look::Lift { exercise: "back-squat".into(), page: 0, all: false });
    let text = format!("{:?}", hand.shown.screen);
    assert!(text.contains("Sat 21 Nov") && !text.contains("Mon 23 Nov"), "{text}");
}

#[test]
fn a_session_without_the_tool_is_entered_from_paper() {
    let mut hand = Player::with(PLAN);
    hand.on_day(MONDAY + 5);
    hand.weeks();
    hand.presses = 0;
    hand.tap_row("Squat", "paper");
    // The day that it was meant for comes first.
    assert_eq!(hand.form().rows[0].text, "Mon 23 Nov 2026");
    hand.tap_row("Mon 23 Nov 2026", "day");
    assert!(hand.floor().notices.iter().any(|notice| notice.contains("23 Nov")));
    hand.tap("all-as-called");
    assert!(hand.floor().rest.is_none());
    hand.tap("finish");
    assert_eq!(hand.presses, 4);
    assert_eq!(detail(&mut hand, "1.1"), "Mon 23 Nov");
    // It steps like any other that was made, as of its day.
    hand.view(Look::Today { session: Some("2.1".into()), minutes: None });
    let today = hand.as_today();
    assert!(today.rows.iter().any(|row| row.text.contains("102.5")), "{today:#?}");
    assert_eq!(hand.engine.examine_records().unwrap().mended, 0);
}

#[test]
fn paper_says_nothing_over_a_later_word() {
    let mut hand = Player::with(PLAN);
    hand.on_day(MONDAY + 7);
    hand.view(Look::Today { session: Some("2.1".into()), minutes: None });
    hand.tap("begin");
    while hand.has("record") {
        hand.tap("record");
    }
    hand.tap("finish");
    let load = |hand: &mut Player| {
        hand.view(Look::Today { session: Some("3.1".into()), minutes: None });
        hand.as_today().rows.iter().find(|row| row.id.starts_with("sets-")).unwrap().text.clone()
    };
    let before = load(&mut hand);
    hand.weeks();
    hand.tap_row("Squat", "paper");
    hand.tap_row("Mon 23 Nov 2026", "day");
    hand.tap("all-as-called");
    hand.tap("finish");
    assert_eq!(load(&mut hand), before);
}

#[test]
fn a_clock_far_from_what_the_log_knows_is_asked_about() {
    let mut hand = Player::with(PLAN);
    train(&mut hand);
    let right = hand.now.clone();
    hand.now = at_day(MONDAY + 1500);
    hand.today();
    let recorded = hand.engine.count_records().unwrap();
    let refused = hand.act(&hand.key("begin").action.clone()).unwrap_err();
    let EngineError::Refused { code: RefusalCode::Ask, reason, ask: Some(yes) } = refused else {
        panic!("{refused:?}")
    };
    assert!(reason.contains("23 Nov 2026") && reason.contains("2031"), "{reason}");
    assert_eq!(hand.engine.count_records().unwrap(), recorded);
    // Said yes to by mistake, and trained: its loads are cut.
    hand.act(&yes).unwrap();
    while hand.has("record") {
        hand.tap("record");
    }
    hand.tap("finish");
    // The clock is right again: it is asked about once more, since it lies far before the last one;
    // the day is the right one and no lay-off is seen.
    hand.now = right;
    hand.on_day(MONDAY + 4);
    let today = hand.today();
    let why: Vec<String> = today.rows.iter().flat_map(|row| row.why.clone()).collect();
    assert!(why.iter().all(|line| !line.contains("days")), "{why:#?}");
    let refused = hand.act(&hand.key("begin").action.clone()).unwrap_err();
    assert!(matches!(refused, EngineError::Refused { code: RefusalCode::Ask, .. }));
    // Moved to its day, nobody is asked any more.
    hand.view(Look::Tally);
    hand.tap("date");
    hand.tap_row("Wed 25 Nov 2026", "day");
    hand.today();
    let action: Action = hand.key("begin").action.clone();
    hand.act(&action).unwrap();
}
