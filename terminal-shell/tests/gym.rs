//! `barwright gym` and `barwright exercises` as a person or a script runs them.

#[path = "support/program.rs"]
mod program;

use std::path::Path;
use std::process::{Command, Output};

fn barwright(store: &Path, arguments: &[&str]) -> Output {
    Command::new(env!("CARGO_BIN_EXE_barwright"))
        .args(arguments)
        .env("LANG", "en_GB.UTF-8")
        .env("BARWRIGHT_STORE", store)
        .env_remove("LC_ALL")
        .output()
        .expect("the program starts")
}

fn said(output: &Output) -> String {
    assert!(output.status.success(), "{output:?}");
    String::from_utf8_lossy(&output.stdout).into_owned()
}

const GYM: &str = "# By the water.\nname = \"Boathouse\" # since spring\n\n[[bar]]\n\
                   name = \"Long bar\"\nmass = \"20 kg\"\n\n[[plate]]\nmass = \"10 kg\"\npairs = 2\n";

#[test]
fn a_gym_comes_from_a_file_and_goes_into_one_with_its_comments() {
    let folder = tempfile::tempdir().expect("a folder for the test");
    let (store, file) = (folder.path().join("records.db"), folder.path().join("gym.toml"));
    std::fs::write(&file, GYM).expect("it can be written");
    let file = file.to_str().expect("text");
    assert_eq!(said(&barwright(&store, &["gym", "check", file])), "Boathouse: no fault.\n");
    let added = said(&barwright(&store, &["gym", "add", file]));
    assert_eq!(added, "Trained in from now on: Boathouse.\n");
    assert_eq!(said(&barwright(&store, &["gym", "show"])), GYM);
    let list = said(&barwright(&store, &["gym", "use"]));
    assert!(list.starts_with("Boathouse (trained in)\n"), "{list}");
    let saved = folder.path().join("saved.toml");
    said(&barwright(&store, &["gym", "save", saved.to_str().expect("text")]));
    assert_eq!(std::fs::read_to_string(&saved).expect("it is there"), GYM);
    // One that is there already is left as it is.
    let again = barwright(&store, &["gym", "save", saved.to_str().expect("text")]);
    assert_eq!(again.status.code(), Some(1));
    said(&barwright(&store, &["gym", "use", "Pound gym"]));
    assert!(said(&barwright(&store, &["gym", "show"])).contains("name = \"Pound gym\""));
}

#[test]
fn what_is_wrong_is_said_and_nothing_is_changed() {
    let folder = tempfile::tempdir().expect("a folder for the test");
    let (store, file) = (folder.path().join("records.db"), folder.path().join("gym.toml"));
    std::fs::write(&file, GYM.replace("pairs = 2", "pairs = 200")).expect("it can be written");
    let file = file.to_str().expect("text");
    let before = said(&barwright(&store, &["gym", "show"]));
    for command in ["check", "add"] {
        let output = barwright(&store, &["gym", command, file]);
        assert_eq!(output.status.code(), Some(2), "{output:?}");
        let error = String::from_utf8_lossy(&output.stderr).into_owned();
        assert!(error.contains("gym.toml:10:9"), "{error}");
    }
    let unknown = barwright(&store, &["gym", "use", "Boathouse"]);
    assert_eq!(unknown.status.code(), Some(2));
    let error = String::from_utf8_lossy(&unknown.stderr).into_owned();
    assert!(error.contains("There are: ") && error.contains("Pound gym"), "{error}");
    assert_eq!(said(&barwright(&store, &["gym", "show"])), before);
}

#[test]
fn exercises_are_found_in_words_before_there_are_any_records() {
    let folder = tempfile::tempdir().expect("a folder for the test");
    let store = folder.path().join("records.db");
    let found = said(&barwright(&store, &["exercises", "front", "squat"]));
    assert!(found.starts_with("Exercises\n") && found.contains("Front squat\n"), "{found}");
    assert!(found.contains("barbell, rack"), "{found}");
    let near = said(&barwright(&store, &["exercises", "frnt squat"]));
    assert!(near.contains("None for “frnt squat”. These may be meant."), "{near}");
    assert!(near.contains("Front squat"), "{near}");
    assert!(said(&barwright(&store, &["exercises"])).lines().count() > 200);
    let json = said(&barwright(&store, &["exercises", "plank", "--json"]));
    assert!(json.contains("\"form\""), "{json}");
    assert!(!store.exists(), "looking makes no records");
}

/// A gym that comes with the program is chosen by the name it is listed with, and by its own; what it
/// has is called so where a load is made of it.
#[test]
fn what_comes_with_the_program_has_german_names() {
    let folder = tempfile::tempdir().expect("a folder for the test");
    let store = folder.path().join("records.db");
    let said = |args: &[&str]| {
        let output = program::barwright_in("de_DE.UTF-8", &store, args);
        assert!(output.status.success(), "{args:?}: {}", program::said(&output));
        program::said(&output)
    };
    assert!(said(&["gym", "use"]).contains("Kraftraum in Pfund\n"));
    for name in ["Kraftraum in Pfund", "Pound gym"] {
        assert_eq!(said(&["gym", "use", "Kraftraum in Kilogramm"]).lines().count(), 1);
        let pounds = said(&["gym", "use", name]);
        assert_eq!(pounds, "Trainiert wird von jetzt an hier: Kraftraum in Pfund.\n");
        assert!(said(&["gym", "show"]).contains("name = \"Pound gym\""));
    }
    let load = said(&["load", "102,5kg"]);
    let bar = "102,5 kg · Langhantelstange, 20 kg · je Seite\n  ──┤ 25 kg │ 15 kg │ 1,25 kg ├──\n";
    assert_eq!(load, bar);
    let changes = said(&["changes", "40kg", "93,5kg"]);
    assert!(
        changes.contains("10 kg abnehmen · 25 kg; 10 kg; 1,25 kg; 0,5 kg auflegen"),
        "{changes}"
    );
}
