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
