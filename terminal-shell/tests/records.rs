//! `barwright records` from outside: a file that is whole, one that is copied, one that is damaged.

mod support;

use std::path::Path;
use std::process::{Command, Output};

use support::PLAN;

fn barwright(store: &Path, args: &[&str]) -> Output {
    Command::new(env!("CARGO_BIN_EXE_barwright"))
        .args(args)
        .arg("--store")
        .arg(store)
        .env("LC_ALL", "en_GB.UTF-8")
        .output()
        .expect("the program starts")
}

fn said(output: &Output) -> String {
    format!(
        "{}{}",
        String::from_utf8_lossy(&output.stdout),
        String::from_utf8_lossy(&output.stderr)
    )
}

/// Records with one plan adopted, and then a second.
fn records(dir: &Path) -> std::path::PathBuf {
    let store = dir.join("records.db");
    for name in ["Boathouse trial", "Boathouse second"] {
        let plan = dir.join("plan.toml");
        std::fs::write(&plan, PLAN.replace("Boathouse trial", name)).expect("it can be written");
        let adopted = barwright(&store, &["plan", "adopt", plan.to_str().expect("plain text")]);
        assert!(adopted.status.success(), "{}", said(&adopted));
    }
    store
}

/// Spoils a word wherever it stands in a file, as a failing disk would: no length changes.
fn spoil(file: &Path, word: &str, with: &str) {
    assert_eq!(word.len(), with.len());
    let mut bytes = std::fs::read(file).expect("it can be read");
    let places: Vec<usize> = (0..bytes.len() - word.len())
        .filter(|at| bytes[*at..].starts_with(word.as_bytes()))
        .collect();
    assert!(!places.is_empty(), "{word} is in the file");
    for at in places {
        bytes[at..at + word.len()].copy_from_slice(with.as_bytes());
    }
    std::fs::write(file, bytes).expect("it can be written");
}

#[test]
fn a_copy_is_whole_and_opens_by_itself() {
    let dir = tempfile::tempdir().expect("a folder for the test");
    let store = records(dir.path());
    let checked = barwright(&store, &["records", "check"]);
    assert!(said(&checked).contains("2 entries, all good."), "{}", said(&checked));

    let copy = dir.path().join("copy.db");
    let copied = barwright(&store, &["records", "backup", copy.to_str().expect("plain text")]);
    assert!(said(&copied).ends_with("2 entries, a whole copy\n"), "{}", said(&copied));
    assert_eq!(said(&barwright(&copy, &["today"])), said(&barwright(&store, &["today"])));

    // A second copy does not write over the first.
    let before = std::fs::read(&copy).expect("it is there");
    let again = barwright(&store, &["records", "backup", copy.to_str().expect("plain text")]);
    assert_eq!(again.status.code(), Some(1));
    assert!(said(&again).contains("There is a file of this name already"), "{}", said(&again));
    assert_eq!(std::fs::read(&copy).expect("it is there"), before);
}

#[test]
fn what_is_good_in_a_damaged_file_comes_back_and_the_file_is_kept() {
    let dir = tempfile::tempdir().expect("a folder for the test");
    let store = records(dir.path());
    spoil(&store, "Boathouse second", "Boathouse sec0nd");
    let damaged = std::fs::read(&store).expect("it is there");

    let checked = barwright(&store, &["records", "check"]);
    assert_eq!(checked.status.code(), Some(1));
    assert!(said(&checked).contains("The file is damaged"), "{}", said(&checked));

    let recovered = barwright(&store, &["records", "recover"]);
    assert!(recovered.status.success(), "{}", said(&recovered));
    assert!(
        said(&recovered).contains("Its first entry is in the new file."),
        "{}",
        said(&recovered)
    );
    let aside = dir.path().join("records.db.damaged-1");
    assert_eq!(std::fs::read(&aside).expect("it was set aside"), damaged);

    // The first plan is back.
    let today = barwright(&store, &["today"]);
    assert!(said(&today).contains("Boathouse trial"), "{}", said(&today));
}

#[test]
fn a_file_that_is_good_or_not_there_is_left_alone() {
    let dir = tempfile::tempdir().expect("a folder for the test");
    let missing = dir.path().join("none.db");
    let output = barwright(&missing, &["records", "recover"]);
    assert_eq!(output.status.code(), Some(2));
    assert!(said(&output).contains("Nothing was made"), "{}", said(&output));
    assert!(!missing.exists());

    let store = records(dir.path());
    let output = barwright(&store, &["records", "recover"]);
    assert_eq!(output.status.code(), Some(2));
    assert!(said(&output).contains("Nothing is wrong with this file"), "{}", said(&output));
    assert!(!dir.path().join("records.db.damaged-1").exists());
}
