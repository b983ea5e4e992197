//! `barwright lift`, `balance` and `weeks` as a person or a script runs them, on the demo.

use std::path::PathBuf;
use std::process::{Command, Output};
use std::sync::{Mutex, OnceLock, PoisonError};

use serde_json::Value;

/// The demo's records, made once.
fn demo() -> &'static (tempfile::TempDir, PathBuf) {
    static DEMO: OnceLock<(tempfile::TempDir, PathBuf)> = OnceLock::new();
    DEMO.get_or_init(|| {
        let folder = tempfile::tempdir().expect("a folder for the test");
        let store = folder.path().join("demo.db");
        let made = Command::new(env!("CARGO_BIN_EXE_barwright"))
            .args(["today", "--demo", "--store"])
            .arg(&store)
            .output()
            .expect("the program starts");
        assert!(made.status.success(), "{made:?}");
        (folder, store)
    })
}

fn run(arguments: &[&str]) -> Output {
    // One program at a time has the file open.
    static TURN: Mutex<()> = Mutex::new(());
    let (_, store) = demo();
    let _turn = TURN.lock().unwrap_or_else(PoisonError::into_inner);
    Command::new(env!("CARGO_BIN_EXE_barwright"))
        .args(arguments)
        .args(["--demo", "--locale", "en-GB", "--store"])
        .arg(store)
        .output()
        .expect("the program starts")
}

fn text(arguments: &[&str]) -> String {
    let output = run(arguments);
    assert!(output.status.success(), "{output:?}");
    let text = String::from_utf8(output.stdout).expect("text");
    // A pipe is given no colours and nothing that moves a cursor.
    assert!(!text.contains('\x1b'), "{text:?}");
    text
}

fn json(arguments: &[&str]) -> Value {
    let output = run(&[arguments, &["--json"]].concat());
    assert!(output.status.success(), "{output:?}");
    serde_json::from_slice(&output.stdout).expect("JSON")
}

#[test]
fn a_lift_has_its_chart_records_and_every_session() {
    let shown = text(&["lift", "back squat"]);
    assert!(shown.starts_with("Back squat\nReference max 142.5 kg, entered "), "{shown}");
    // The chart: an axis with its unit, marks for loads, a band for the range of the estimates.
    for part in [" kg\n", "140 ┤", "●", "░", "Heaviest work load"] {
        assert!(shown.contains(part), "{part:?} is missing in\n{shown}");
    }
    assert!(shown.contains("\nRecords\n"), "{shown}");
    assert!(shown.contains("5 reps: 115 kg"), "{shown}");
    let (_, sessions) = shown.split_once("\nSessions\n").expect("sessions");
    assert_eq!(sessions.matches("kg: ").count(), 6, "{sessions}");
    assert!(sessions.contains("estimate 146 kg, 135–151"), "{sessions}");

    // The words are those of the screen that every shell shows.
    let screen = json(&["lift", "BACK SQUAT"]);
    let rows = screen["lift"]["lift"]["sessions"].as_array().expect("rows").clone();
    assert_eq!(rows.len(), 6);
    for row in rows {
        assert!(sessions.contains(row["text"].as_str().expect("a text")), "{row}");
    }
}

#[test]
fn records_stand_apart_by_what_was_worn_by_side_and_by_hold() {
    let deadlift = text(&["lift", "deadlift"]);
    assert!(deadlift.contains("with belt"), "{deadlift}");
    let split = text(&["lift", "rear-foot-raised split squat"]);
    for part in [" reps: 14 kg, ", "left side", "right side", "14 kg: 8, 8 each side"] {
        assert!(split.contains(part), "{part:?} is missing in\n{split}");
    }
    let plank = text(&["lift", "plank"]);
    for part in ["Longest hold\n", " s, Mon ", " s\n", "Most in one set"] {
        assert!(plank.contains(part), "{part:?} is missing in\n{plank}");
    }
    let carry = text(&["lift", "farmer's carry"]);
    assert!(carry.contains("28 kg: ") && carry.contains(" m, Wed "), "{carry}");
    // The body alone and help are said in words, not as a load of nothing or less.
    let chin_up = text(&["lift", "chin-up"]);
    assert!(chin_up.contains("4 reps: bodyweight") && !chin_up.contains("0 kg"), "{chin_up}");
    let assisted = text(&["lift", "assisted pull-up"]);
    assert!(assisted.contains("20 kg assistance: 6, 6"), "{assisted}");
    assert!(assisted.contains(" with bodyweight, "), "{assisted}");
}

#[test]
fn a_name_that_is_not_found_offers_the_nearest_and_ends_with_2() {
    let output = run(&["lift", "bakc squat"]);
    assert_eq!(output.status.code(), Some(2));
    assert!(output.stdout.is_empty());
    let said = String::from_utf8(output.stderr).expect("text");
    assert!(said.contains("No exercise is called “bakc squat”. Near it: Back squat"), "{said}");
    let output = run(&["lift", "xyzzy", "--json"]);
    assert_eq!(output.status.code(), Some(2));
    // Known, but never done: nothing is wrong.
    assert!(text(&["lift", "hack squat"]).contains("No session yet"));
}

#[test]
fn balance_counts_in_every_way_and_by_kind_of_week() {
    let shown = text(&["balance", "--weeks", "7"]);
    assert!(shown.contains("weeks 1 to 7\n"), "{shown}");
    for part in ["█ done   ▓ of it under six reps   ░ planned", "Quadriceps: ", " hard sets done, "]
    {
        assert!(shown.contains(part), "{part:?} is missing in\n{shown}");
    }
    // The evening when the river was low is missing, and the sentence says where a set could go.
    assert!(shown.contains("\n! ") || shown.contains("  ! "), "{shown}");
    assert!(shown.contains("a set could go into "), "{shown}");
    for kind in ["Ease-in: 1 week\n", "Full weeks: 4 weeks, average of one\n", "Deload: 1 week\n"] {
        assert!(shown.contains(kind), "{kind:?} is missing in\n{shown}");
    }
    let screen = json(&["balance", "--weeks", "7"]);
    for bar in screen["balance"]["balance"]["bars"].as_array().expect("bars") {
        let number = |key: &str| bar[key].as_u64().expect("a number");
        // Direct 1 and indirect a half, in half sets: what is direct counts two of them.
        assert_eq!(number("done_halves"), number("direct") + number("total"), "{bar}");
        assert!(number("under_six_halves") <= number("done_halves"), "{bar}");
        assert!(shown.contains(bar["text"].as_str().expect("a text")), "{bar}");
    }
    assert_eq!(run(&["balance", "--weeks", "0"]).status.code(), Some(2));
    assert_eq!(run(&["balance", "--weeks", "many"]).status.code(), Some(2));
}

#[test]
fn weeks_say_what_was_done_and_what_is_next() {
    let shown = text(&["weeks"]);
    assert!(shown.starts_with("Boathouse off-season\nweek 7 of 8"), "{shown}");
    assert!(shown.contains("Week 7 (this week)\n"), "{shown}");
    assert_eq!(shown.matches("(done)").count(), 17, "{shown}");
    assert!(shown.contains("missed") && shown.contains("next"), "{shown}");
    let screen = json(&["weeks"]);
    assert_eq!(screen["weeks"]["weeks"]["weeks"].as_array().map(Vec::len), Some(8));
}

#[test]
fn without_records_they_say_so_and_make_none() {
    let folder = tempfile::tempdir().expect("a folder");
    let store = folder.path().join("none.db");
    for command in [&["lift", "plank"][..], &["balance"], &["weeks"]] {
        let output = Command::new(env!("CARGO_BIN_EXE_barwright"))
            .args(command)
            .arg("--store")
            .arg(&store)
            .output()
            .expect("the program starts");
        assert_eq!(output.status.code(), Some(2), "{output:?}");
        assert!(!output.stderr.is_empty() && !store.exists());
    }
}
