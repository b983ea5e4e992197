//! `barwright records` from outside: a file that is whole, one that is copied, one that is damaged.

#[path = "support/program.rs"]
mod program;
mod support;

use std::path::Path;

use program::{barwright, barwright_in, said};
use support::PLAN;

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

#[test]
fn what_is_worked_out_and_does_not_fit_is_made_anew_and_every_door_says_so() {
    let dir = tempfile::tempdir().expect("a folder for the test");
    let store = records(dir.path());
    let before = said(&barwright(&store, &["today"]));
    // The standing desk, which holds the plan's text, spoiled by itself; the log's own is left.
    let mut bytes = std::fs::read(&store).expect("it can be read");
    let page = bytes
        .chunks(16_384)
        .position(|page| page[0] == 10 && page.windows(4).any(|bytes| bytes == b"desk"))
        .expect("the facts have a page");
    let at = page * 16_384;
    let desk = bytes[at..].windows(4).position(|bytes| bytes == b"desk").expect("it is there");
    bytes[at + desk + 60] ^= 1;
    std::fs::write(&store, bytes).expect("it can be written");

    assert_eq!(said(&barwright(&store, &["today"])), before);
    let checked = said(&barwright(&store, &["records", "check"]));
    assert!(checked.contains("2 entries, all good."), "{checked}");
    let recovered = said(&barwright(&store, &["records", "recover"]));
    assert!(recovered.contains("Nothing is wrong with this file"), "{recovered}");
}

#[test]
fn backups_are_kept_and_one_is_put_back() {
    let dir = tempfile::tempdir().expect("a folder for the test");
    let store = records(dir.path());
    let backups = dir.path().join("backups");
    std::fs::create_dir(&backups).expect("it can be made");
    let folder = backups.to_str().expect("plain text");
    let kept = said(&barwright(&store, &["records", "keep", folder]));
    assert!(kept.contains("2 entries, a whole copy. 1 backup is kept."), "{kept}");
    let kept = said(&barwright(&store, &["records", "keep", folder]));
    assert!(kept.contains("No backup is due"), "{kept}");

    let backup = std::fs::read_dir(&backups)
        .expect("it is there")
        .next()
        .expect("one was made")
        .expect("it has a name")
        .path();
    let before = said(&barwright(&store, &["today"]));
    std::fs::write(&store, "spoiled by something else").expect("it can be written");
    let backup = backup.to_str().expect("plain text");
    let restored = barwright(&store, &["records", "restore", backup]);
    assert!(restored.status.success(), "{}", said(&restored));
    assert!(said(&restored).contains("2 entries, all good, are in its place."), "{restored:?}");
    assert_eq!(said(&barwright(&store, &["today"])), before);
    let aside = dir.path().join("records.db.before-1");
    assert_eq!(std::fs::read(aside).expect("it was kept"), b"spoiled by something else");
}

#[test]
fn a_file_with_nothing_to_read_is_no_success() {
    let dir = tempfile::tempdir().expect("a folder for the test");
    let store = records(dir.path());
    let mut bytes = std::fs::read(&store).expect("it can be read");
    // Every page but the header is gone.
    bytes[4_096..].fill(0);
    std::fs::write(&store, &bytes).expect("it can be written");
    let recovered = barwright(&store, &["records", "recover"]);
    assert_eq!(recovered.status.code(), Some(1), "{}", said(&recovered));
    assert!(said(&recovered).contains("Nothing in this file could be read."), "{recovered:?}");
    let aside = dir.path().join("records.db.damaged-1");
    assert_eq!(std::fs::read(aside).expect("it was kept"), bytes);
    assert!(!store.exists());
}

/// Where German is spoken, what goes wrong with files is said in German to its end: what was damaged
/// and read back, what is missing, what is there already, what the system refuses.
#[test]
fn what_goes_wrong_with_files_is_said_in_german() {
    let dir = tempfile::tempdir().expect("a folder for the test");
    let store = records(dir.path());
    let told = |args: &[&str]| said(&barwright_in("de_DE.UTF-8", &store, args));
    let path = |name: &str| dir.path().join(name).display().to_string();
    let says = |args: &[&str], words: &str| {
        let found = told(args);
        assert!(found.contains(words), "{args:?}: {found}");
    };
    says(&["records", "recover"], "Dieser Datei fehlt nichts; sie blieb, wie sie ist.");
    let copy = path("copy.db");
    says(&["records", "backup", &copy], "2 Einträge");
    says(&["records", "backup", &copy], "Eine Datei dieses Namens gibt es schon.");
    says(&["records", "restore", &copy], "2 Einträge, alle gut, sind an ihrem Platz.");
    says(&["records", "restore", &path("none.db")], "Diese Datei gibt es nicht.");

    let missing = path("none.jsonl");
    let not_read = format!("Die Datei {missing} lässt sich nicht lesen: Dort ist nichts.");
    says(&["records", "import", &missing], &not_read);
    says(&["records", "import", &missing, "--as-history"], &not_read);
    says(&["records", "columns", &missing], &not_read);
    let under_a_file = path("plan.toml/out");
    let on_the_way = "Auf dem Weg dorthin liegt eine Datei.";
    says(
        &["records", "export", "--jsonl", &under_a_file],
        &format!("Die Datei {under_a_file} lässt sich nicht schreiben: {on_the_way}"),
    );
    says(
        &["records", "export", "--csv", &under_a_file],
        &format!("Der Ordner {under_a_file} lässt sich nicht anlegen: {on_the_way}"),
    );

    spoil(&store, "Boathouse second", "Boathouse sec0nd");
    says(&["records", "check"], "Die Datei ist beschädigt.");
    says(&["records", "recover"], "Ihr erster Eintrag steht in der neuen Datei.");
}
