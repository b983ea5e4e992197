//! `barwright plan check` and `plan show` as a person or a script runs them.

use std::process::{Command, Output};

fn barwright(arguments: &[&str]) -> Output {
    Command::new(env!("CARGO_BIN_EXE_barwright"))
        .args(arguments)
        .env("LANG", "en_GB.UTF-8")
        .env_remove("LC_ALL")
        .output()
        .expect("the program starts")
}

fn file(name: &str, text: &str) -> String {
    let path = std::path::Path::new(env!("CARGO_TARGET_TMPDIR")).join(name);
    std::fs::write(&path, text).expect("the folder for tests can be written");
    path.to_str().expect("the path is text").to_owned()
}

const PLAN: &str = "name = \"Boathouse\"\nweeks = 2\n\n[[session]]\nname = \"Monday\"\n\n\
                    [[session.exercise]]\nname = \"Back squat\"\nsets = 4\nreps = 5\n\
                    load.by_week = [\"75 %\", \"77.5 %\"]\nrest = \"2:30\"\n";

#[test]
fn a_plan_in_order_is_said_to_be_so_and_shown_by_week() {
    let path = file("in-order.toml", PLAN);
    let check = barwright(&["plan", "check", &path]);
    assert!(check.status.success(), "{check:?}");
    assert!(String::from_utf8_lossy(&check.stdout).contains("2 weeks · 1 session"));
    let show = barwright(&["plan", "show", &path, "--week", "2"]);
    assert_eq!(
        String::from_utf8_lossy(&show.stdout),
        "Boathouse\nWeek 2, of 2\n\nMonday\n\n  Back squat\n    4 × 5 · 77.5 % · rest 2:30\n"
    );
}

#[test]
fn faults_go_to_standard_error_with_exit_2() {
    let path = file("faults.toml", &PLAN.replace("reps", "rep").replace("\"75 %\"", "75 %"));
    for command in ["check", "show"] {
        let output = barwright(&["plan", command, &path]);
        assert_eq!(output.status.code(), Some(2), "{output:?}");
        assert!(output.stdout.is_empty());
        let said = String::from_utf8_lossy(&output.stderr);
        assert!(said.contains("The plan has 2 faults"), "{said}");
        assert!(said.contains("faults.toml:10:1: “rep” is no key here"), "{said}");
        assert!(said.contains("10 | rep = 5\n   | ^^^\n   = Write reps."), "{said}");
        assert!(said.contains("faults.toml:11:"), "{said}");
    }
    let missing = barwright(&["plan", "check", "no-such-file.toml"]);
    assert_eq!(missing.status.code(), Some(1));
    assert!(String::from_utf8_lossy(&missing.stderr).contains("no-such-file.toml"));
}

/// Escapes written as such reach the terminal in no form: not by a name, a key, nor an error about them.
#[test]
fn what_is_not_seen_is_refused_and_never_written_out() {
    let bad = "\\u001b]0;owned\\u0007\\u202e\\nforged";
    let in_a_name = PLAN.replace("Monday", bad);
    let in_a_lift = PLAN.replace("Back squat", bad);
    let in_a_key = PLAN.replace("rest =", &format!("\"{bad}\" ="));
    let in_a_quantity = PLAN.replace("75 %", &format!("75{bad} %"));
    for (nth, text) in [in_a_name, in_a_lift, in_a_key, in_a_quantity].iter().enumerate() {
        let path = file(&format!("hidden-{nth}.toml"), text);
        for command in [["plan", "check"], ["plan", "show"], ["plan", "adopt"]] {
            let folder = tempfile::tempdir().expect("a folder for the test");
            let store = folder.path().join("records.db").display().to_string();
            let output = barwright(&[command[0], command[1], &path, "--store", &store]);
            assert_eq!(output.status.code(), Some(2), "{output:?}");
            let said = String::from_utf8(output.stderr).expect("it is text");
            let hidden = |c: &char| *c != '\n' && barwright_domain::shown::is_hidden(*c);
            assert_eq!(said.chars().find(hidden), None, "{said:?}");
            assert!(!said.lines().any(|line| line.starts_with("forged")), "{said}");
            assert!(output.stdout.is_empty());
        }
    }
    // And where the file quotes it raw in a comment, the line that is shown has it not.
    let raw = PLAN.replace("reps = 5", "rep = 5 # \u{202e}raw");
    let output = barwright(&["plan", "check", &file("hidden-raw.toml", &raw)]);
    let said = String::from_utf8(output.stderr).expect("it is text");
    assert!(said.contains("rep = 5 #  raw"), "{said}");
}

const JUMPS: &str = "name = \"Boathouse\"\nweeks = 2\n\n[[session]]\nname = \"Monday\"\n\n\
                     [[session.exercise]]\nname = \"Back squat\"\nsets = 4\nreps = 5\n\
                     load.by_week = [\"60 %\", \"70 %\"]\n";

#[test]
fn remarks_of_a_coach_stand_in_their_places_and_fail_only_when_asked_to() {
    let path = file("jumps.toml", JUMPS);
    let check = |more: &[&str]| barwright(&[&["plan", "check", &path], more].concat());
    let said = check(&[]);
    assert_eq!(said.status.code(), Some(0), "{said:?}");
    assert!(said.stderr.is_empty(), "{said:?}");
    let text = String::from_utf8_lossy(&said.stdout).into_owned();
    let place = "jumps.toml:11:1: look at: from week 1 to week 2 the load goes from 60 % to 70 %: \
                 17 % harder with its repetitions\n   |\n11 | load.by_week = [\"60 %\", \"70 %\"]\n   \
                 | ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^\n   = ";
    assert!(text.contains(place), "{text}");
    assert!(text.contains("Or accept load-jump with a reason.\n"), "{text}");
    assert!(text.ends_with("Boathouse: 2 weeks · 1 session · 1 remark, no fault\n"), "{text}");

    assert_eq!(check(&["--hold-to", "change"]).status.code(), Some(0));
    let held = check(&["--hold-to", "look-at"]);
    assert_eq!(held.status.code(), Some(3));
    assert_eq!(held.stdout, said.stdout);
    assert_eq!(check(&["--hold-to", "everything"]).status.code(), Some(2));

    let json = check(&["--json"]);
    let found: serde_json::Value = serde_json::from_slice(&json.stdout).expect("JSON");
    let remark = &found["remarks"][0];
    assert_eq!(
        (&remark["check"], &remark["label"], &remark["line"], &remark["column"]),
        (&"load-jump".into(), &"look at".into(), &11.into(), &1.into())
    );
    assert_eq!(found["faults"].as_array().map(Vec::len), Some(0));
}

#[test]
fn what_the_file_accepts_is_said_with_its_reason() {
    let accepted = "[[accept]]\ncheck = \"load-jump\"\nexercise = \"Back squat\"\n\
                    because = \"They were ill in week 1.\"\n";
    let path = file("accepted.toml", &format!("{JUMPS}{accepted}"));
    let said = barwright(&["plan", "check", &path, "--hold-to", "look-at"]);
    assert_eq!(said.status.code(), Some(0), "{said:?}");
    assert_eq!(
        String::from_utf8_lossy(&said.stdout),
        "accepted:\n  load-jump, Back squat: They were ill in week 1.\nBoathouse: 2 weeks · 1 \
         session, no fault\n"
    );
    let misspelt = file("misspelt.toml", &format!("{JUMPS}{}", accepted.replace("jump", "jmp")));
    let said = barwright(&["plan", "check", &misspelt, "--hold-to", "change"]);
    assert_eq!(said.status.code(), Some(3));
    let text = String::from_utf8_lossy(&said.stdout);
    assert!(text.contains("change: no check is called “load-jmp”"), "{text}");
    assert!(text.contains("Write \"load-jump\"."), "{text}");
}

#[test]
fn a_plan_with_faults_has_them_as_json_too() {
    let path = file("faults.json.toml", &PLAN.replace("reps", "rep"));
    let output = barwright(&["plan", "check", &path, "--json"]);
    assert_eq!(output.status.code(), Some(2));
    let found: serde_json::Value = serde_json::from_slice(&output.stdout).expect("JSON");
    assert_eq!(found["faults"][0]["problem"], "“rep” is no key here");
    assert_eq!(found["remarks"].as_array().map(Vec::len), Some(0));
}

/// The demo's plan is what a coach would hand out: what is unusual in it has its reason.
#[test]
fn the_plan_of_the_demo_is_in_order() {
    let path = file("demo.toml", barwright_app::demo::PLAN);
    let gym = file("demo-gym.toml", barwright_app::demo::GYM);
    let held = barwright(&["plan", "check", &path, "--equipment", &gym, "--hold-to", "look-at"]);
    assert_eq!(held.status.code(), Some(0), "{held:?}");
    assert!(String::from_utf8_lossy(&held.stdout).contains("muscle-low: A rower pulls"));
}
