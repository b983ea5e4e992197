//! `barwright desk --change … --out` and `barwright records changes`: from a return to a file, and from
//! the file into the lifter's records.

use std::path::{Path, PathBuf};
use std::process::{Command, Output};

/// The page with its example.
const PAGE: &str = include_str!("../../docs/desk.md");

/// The demo's lifter, and a folder with what they sent.
struct Lifter {
    folder: tempfile::TempDir,
}

impl Lifter {
    fn new() -> Self {
        let lifter = Self { folder: tempfile::tempdir().expect("a folder for the test") };
        let returns = lifter.path("returns");
        std::fs::create_dir(&returns).expect("it can be made");
        lifter.ok(&["today"]);
        let file = returns.join("anna.jsonl");
        let since = ["--since", "2026-01-01"];
        lifter.ok(&[&["records", "export", "--jsonl", text(&file)][..], &since].concat());
        lifter
    }

    fn path(&self, name: &str) -> PathBuf {
        self.folder.path().join(name)
    }

    /// The program on the lifter's records.
    fn run(&self, arguments: &[&str]) -> Output {
        let store = self.path("records.db");
        program(&[arguments, &["--demo", "--store", text(&store)]].concat())
    }

    fn ok(&self, arguments: &[&str]) -> String {
        said(&self.run(arguments))
    }

    /// The program at the coach's desk.
    fn desk(&self, changes: &[&str], file: &Path) -> Output {
        let returns = self.path("returns");
        let mut arguments = vec!["desk", text(&returns), "--lifter", "anna", "--out", text(file)];
        arguments.extend(changes.iter().flat_map(|change| ["--change", change]));
        program(&arguments)
    }

    fn entries(&self) -> String {
        let found = self.ok(&["records", "check"]);
        found.split_once(" entries").expect("a count").0.to_owned()
    }
}

fn program(arguments: &[&str]) -> Output {
    Command::new(env!("CARGO_BIN_EXE_barwright"))
        .args(arguments)
        .args(["--locale", "en-GB"])
        .output()
        .expect("the program starts")
}

fn said(output: &Output) -> String {
    assert!(output.status.success(), "{output:?}");
    let said = String::from_utf8(output.stdout.clone()).expect("text");
    assert!(!said.contains('\u{1b}'), "{said:?}");
    said
}

fn text(path: &Path) -> &str {
    path.to_str().expect("a path")
}

#[test]
fn a_change_goes_out_as_a_file_and_is_taken_once() {
    let lifter = Lifter::new();
    let file = lifter.path("for-anna.toml");
    let changes = ["max back squat -5 %", "hold overhead press"];
    let written = said(&lifter.desk(&changes, &file));
    for part in ["142.5 kg → 135.5 kg", "Overhead press: working load: stays "] {
        assert!(written.contains(part), "{written}");
    }
    // Nothing is written over.
    let first = std::fs::read(&file).expect("it is there");
    assert_eq!(lifter.desk(&["week 1"], &file).status.code(), Some(2));
    assert_eq!(std::fs::read(&file).expect("it is there"), first);

    let weeks = lifter.ok(&["weeks"]);
    let before = lifter.entries();
    let shown = lifter.ok(&["records", "changes", text(&file)]);
    assert!(shown.contains("142.5 kg → 135.5 kg") && shown.contains("--yes"), "{shown}");
    assert_eq!(lifter.entries(), before, "looking records nothing");
    let taken = lifter.ok(&["records", "changes", text(&file), "--yes"]);
    assert_eq!(taken.matches("  taken\n").count(), 2, "{taken}");
    assert!(lifter.ok(&["lift", "back squat"]).contains("Reference max 135.5 kg"));
    assert_eq!(lifter.ok(&["weeks"]), weeks, "the week is kept");
    let after = lifter.entries();
    for again in [&["--yes"][..], &["--take", "1"], &["--take", "7"]] {
        let output = lifter.run(&[&["records", "changes", text(&file)], again].concat());
        assert_eq!(output.status.code(), Some(2), "{output:?}");
    }
    assert_eq!(lifter.entries(), after);
}

#[test]
fn what_the_lifter_did_since_stands_until_they_say_otherwise() {
    let lifter = Lifter::new();
    let (first, second) = (lifter.path("first.toml"), lifter.path("second.toml"));
    said(&lifter.desk(&["max back squat 150 kg"], &first));
    said(&lifter.desk(&["max back squat 130 kg", "week 6"], &second));
    lifter.ok(&["records", "changes", text(&first), "--yes"]);
    let shown = lifter.ok(&["records", "changes", text(&second), "--yes"]);
    assert!(shown.contains("it is 150 kg now. It is taken only if you say so."), "{shown}");
    assert_eq!(shown.matches("  taken\n").count(), 1, "{shown}");
    assert!(lifter.ok(&["weeks"]).contains("\nweek 6 of 8"));
    assert!(lifter.ok(&["lift", "back squat"]).contains("Reference max 150 kg"));
    lifter.ok(&["records", "changes", text(&second), "--take", "1"]);
    assert!(lifter.ok(&["lift", "back squat"]).contains("Reference max 130 kg"));
}

/// The example of the page is what the program reads: with the lifter's own ids it can be taken.
#[test]
fn the_example_of_the_page_is_read() {
    let lifter = Lifter::new();
    let (_, rest) = PAGE.split_once("```toml\n").expect("an example");
    let (example, _) = rest.split_once("```").expect("its end");
    let file = lifter.path("example.toml");
    std::fs::write(&file, example).expect("it can be written");
    // It is for somebody else's records.
    let output = lifter.run(&["records", "changes", text(&file), "--yes"]);
    assert_eq!(output.status.code(), Some(2), "{output:?}");
    let own = lifter.path("own.toml");
    said(&lifter.desk(&["week 6"], &own));
    let own = std::fs::read_to_string(&own).expect("it was written");
    let store = |text: &str| {
        let line = text.lines().find(|line| line.starts_with("store")).expect("a store");
        line.to_owned()
    };
    let here = example.replace(&store(example), &store(&own));
    std::fs::write(&file, here).expect("it can be written");
    let shown = lifter.ok(&["records", "changes", text(&file)]);
    for part in ["142.5 kg → 135.5 kg", "stays 42.5 kg", "Front squat in the place", "Week 6"] {
        assert!(shown.contains(part), "{part:?} is missing in\n{shown}");
    }
    assert!(!shown.contains("nothing here"), "{shown}");
}

#[test]
fn a_file_from_anyone_is_read_or_refused_and_harms_nothing() {
    let lifter = Lifter::new();
    let file = lifter.path("good.toml");
    said(&lifter.desk(&["max back squat 150 kg"], &file));
    let good = std::fs::read_to_string(&file).expect("it was written");
    let before = lifter.entries();
    let hostile = [
        String::new(),
        "[".repeat(200_000),
        good.replace("150 kg", "1e9 kg"),
        good.replace("150 kg", "-150 kg"),
        good.replace("anna", "an\\u001b[2Jna"),
        good.replace("back-squat", "../../records"),
        good.replace("id = \"1\"", "id = \"1\"\nrun = \"rm\""),
        good.clone() + &"\n[[change]]\nid = \"x\"\nweek = 1\n".repeat(51),
        good.clone() + &"# ".repeat(100_000),
        good.replace("changes = ", "name = "),
    ];
    for (at, text_of) in hostile.iter().enumerate() {
        let path = lifter.path(&format!("{at}.toml"));
        std::fs::write(&path, text_of).expect("it can be written");
        let output = lifter.run(&["records", "changes", text(&path), "--yes"]);
        assert_eq!(output.status.code(), Some(2), "{at}: {output:?}");
        let heard = String::from_utf8_lossy(&output.stderr).into_owned();
        assert!(!heard.is_empty() && !heard.contains('\u{1b}'), "{at}: {heard:?}");
    }
    assert_eq!(lifter.entries(), before);
    // It is no plan, and says how it is taken.
    let adopted = lifter.run(&["plan", "adopt", text(&file)]);
    let heard = String::from_utf8_lossy(&adopted.stderr).into_owned();
    assert!(adopted.status.code() == Some(2) && heard.contains("records changes"), "{heard}");
    assert_eq!(lifter.entries(), before);
    // At the desk, too, what is no change is refused, and no file is left.
    let none = lifter.path("none.toml");
    for change in ["max", "max back squat -80 %", "week 99", "load deadlift 9", "erase everything"]
    {
        assert_eq!(lifter.desk(&[change], &none).status.code(), Some(2), "{change}");
    }
    assert!(!none.exists());
}
