//! Two weeks from an empty phone through `barwright drive`: a gym, a plan and its sessions by the keys
//! that the screens show, and no text file. The program is killed between any two evenings. Rows and
//! keys are found by their ids: whatever the language, the walk is the same.

#[path = "support/driver.rs"]
mod driver;

use std::path::PathBuf;

use driver::Driver;
use serde_json::{Value, json};

/// 2026-11-23, a Monday, at 18:00.
const MONDAY_MS: i64 = 1_795_456_800_000;
const DAY_MS: i64 = 86_400_000;

/// A thumb on what is shown.
struct Thumb {
    path: PathBuf,
    locale: &'static str,
    /// None while it is off.
    driver: Option<Driver>,
    now_ms: i64,
    presses: u32,
    /// The kind of screen, and the screen.
    kind: String,
    screen: Value,
}

impl Thumb {
    fn new(folder: &tempfile::TempDir, locale: &'static str) -> Self {
        let path = folder.path().join("records.db");
        let driver = Some(Driver::start_in(&path, locale));
        let (kind, screen) = (String::new(), Value::Null);
        let mut thumb = Self { path, locale, driver, now_ms: MONDAY_MS, presses: 0, kind, screen };
        thumb.look("today", json!({ "today": {} }));
        thumb
    }

    fn ask(&mut self, what: &str, of: &Value) -> Value {
        self.now_ms += 1_000;
        let reading = json!({ "wall_ms": self.now_ms, "offset_minutes": 0 });
        let line = json!({ "reading": reading, what: of });
        self.driver.as_mut().expect("it is on").ask(&line)
    }

    /// What is shown from now on.
    fn shows(&mut self, answer: &Value) {
        let screen = answer["answer"]["screen"].as_object();
        let screen = screen.unwrap_or_else(|| panic!("{answer:#}"));
        let (kind, screen) = screen.iter().next().expect("one screen");
        self.kind.clone_from(kind);
        self.screen = screen[kind.as_str()].clone();
    }

    fn look(&mut self, kind: &str, look: Value) {
        let answer = self.ask("view", &look);
        self.shows(&answer);
        assert_eq!(self.kind, kind);
    }

    /// Whether a key was taken; what it refuses changes nothing.
    fn press(&mut self, key: &Value) -> bool {
        assert_eq!(key["enabled"], json!(true), "{key:#}");
        self.presses += 1;
        let answer = self.ask("action", &key["action"]);
        let taken = answer["answer"].is_object();
        if taken {
            self.shows(&answer);
        }
        taken
    }

    /// The first key of that name, wherever it stands on the screen.
    fn key(&self, id: &str) -> Option<Value> {
        found(&self.screen, &|one| one["id"] == id && one["action"].is_object()).cloned()
    }

    fn tap(&mut self, id: &str) {
        let key = self.key(id).unwrap_or_else(|| panic!("{id}: {:#}", self.screen));
        assert!(self.press(&key), "{key:#}");
    }

    fn row(&self, id: &str) -> Value {
        let row = found(&self.screen["rows"], &|one| one["id"] == id && one["text"].is_string());
        row.unwrap_or_else(|| panic!("{id}: {:#}", self.screen)).clone()
    }

    /// A key of a row, both by their ids.
    fn of_row(&mut self, row: &str, id: &str) {
        let row = self.row(row);
        let key = found(&row, &|one| one["id"] == id && one["action"].is_object());
        let key = key.unwrap_or_else(|| panic!("{id}: {row:#}")).clone();
        assert!(self.press(&key), "{key:#}");
    }

    /// Typing into a field is one press to open it, and one to take it.
    fn types(&mut self, field: &Value, text: &str) {
        self.presses += 2;
        let intent = json!({ "write": { "field": field["id"], "text": text } });
        let answer = self.ask("intent", &intent);
        self.shows(&answer);
    }

    fn write(&mut self, row: &str, text: &str) {
        let field = self.row(row)["field"].clone();
        self.types(&field, text);
    }

    /// The battery dies, and is charged by another evening.
    fn another_evening(&mut self, day: i64) {
        self.driver.take().expect("it is on").kill();
        self.driver = Some(Driver::start_in(&self.path, self.locale));
        self.now_ms = MONDAY_MS + day * DAY_MS;
        self.look("today", json!({ "today": {} }));
    }

    /// A session to its tally: what was called is done, and where nothing is known yet a load is said.
    fn session(&mut self) -> u32 {
        self.tap("begin");
        let mut sets = 0;
        while self.kind == "floor" {
            self.now_ms += 200_000;
            let keys = ["record", "start", "left-2", "finish"];
            let key = keys.iter().find_map(|id| self.key(id)).expect("something is next");
            if self.press(&key) {
                sets += u32::from(key["id"] != "finish" && key["id"] != "start");
                assert!(sets < 60, "it ends");
                continue;
            }
            self.tap("more");
            self.tap("load");
            let field = self.screen["panel"]["fields"][0].clone();
            self.types(&field, "40");
        }
        assert_eq!(self.kind, "tally", "{:#}", self.screen);
        sets
    }
}

/// The first value within another for which that holds, from the outside in.
fn found<'a>(within: &'a Value, holds: &dyn Fn(&Value) -> bool) -> Option<&'a Value> {
    if holds(within) {
        return Some(within);
    }
    match within {
        Value::Array(all) => all.iter().find_map(|one| found(one, holds)),
        Value::Object(all) => all.values().find_map(|one| found(one, holds)),
        _ => None,
    }
}

/// A gym and a plan from nothing, then a session on each of these days after Monday. The exercises as
/// this lifter looks for them: back squat, bench press, pull-up.
fn trained(folder: &tempfile::TempDir, locale: &'static str, names: [&str; 3], days: &[i64]) {
    let mut thumb = Thumb::new(folder, locale);
    // A gym: a bar, a usual set of plates, a rack, a bench and a bar to hang from.
    thumb.tap("start");
    thumb.of_row("gym", "gym");
    thumb.tap("empty-kg");
    thumb.of_row("add-bar", "add-barbell");
    thumb.of_row("add-plate", "add-set");
    for support in ["support-rack", "support-bench", "support-pull-up-bar"] {
        thumb.of_row(support, "toggle");
    }
    thumb.tap("take-up");
    // A plan of three exercises, the first in fives with a load.
    thumb.look("today", json!({ "today": {} }));
    thumb.tap("make");
    thumb.of_row("session.0", "open");
    for (words, exercise) in names.into_iter().zip(["back-squat", "bench-press", "pull-up"]) {
        thumb.tap("add");
        thumb.write("find", words);
        thumb.of_row(exercise, "add");
    }
    let of = |field: &str| format!("session.0.exercise.0.{field}");
    thumb.of_row("session.0.exercise.0", "open");
    thumb.write(&of("reps"), "5");
    thumb.write(&of("load"), "80 kg");
    thumb.of_row(&of("next"), "up");
    thumb.of_row(&of("next"), "up");
    for key in ["leave", "leave", "see", "adopt"] {
        thumb.tap(key);
    }
    thumb.look("today", json!({ "today": {} }));
    // From the empty phone to the first set, the walk to the floor counted.
    assert!(thumb.presses < 60, "{} presses", thumb.presses);
    let mut loads = Vec::new();
    for day in days {
        thumb.another_evening(*day);
        assert!(thumb.session() >= 6);
        thumb.look("today", json!({ "today": {} }));
        loads.push(thumb.screen["rows"].to_string());
    }
    thumb.look("weeks", json!("weeks"));
    let weeks = thumb.screen["weeks"].as_array().expect("weeks").clone();
    let rows = weeks.iter().flat_map(|week| week["rows"].as_array().cloned().unwrap_or_default());
    assert_eq!(rows.filter(|row| row["done"] == json!(true)).count(), days.len());
    // The weeks add up: each evening calls otherwise than the one before.
    assert!(loads.windows(2).any(|two| two[0] != two[1]), "{loads:#?}");
    assert!(thumb.driver.take().expect("it is on").leave());
}

#[test]
fn two_weeks_are_trained_from_an_empty_phone() {
    let folder = tempfile::tempdir().expect("a folder for the test");
    trained(&folder, "en-GB", ["back squat", "bench press", "pull-up"], &[0, 3, 7, 10]);
}

#[cfg(feature = "german")]
mod german {
    use std::collections::BTreeSet;
    use std::path::Path;
    use std::process::Command;

    use super::trained;

    /// The words of a text, of four letters at least: shorter ones are in any language.
    fn words(text: &str) -> BTreeSet<String> {
        let words = text.split(|one: char| !one.is_alphabetic());
        words.filter(|word| word.chars().count() >= 4).map(str::to_lowercase).collect()
    }

    /// The words of the texts in a source, which has no quotation mark within one.
    fn texts(source: &str) -> BTreeSet<String> {
        let quoted = source.split('"').skip(1).step_by(2);
        let fields = |text: &str| -> String {
            text.split('{')
                .map(|part| part.split_once('}').map_or(part, |(_, rest)| rest))
                .collect()
        };
        quoted.flat_map(|text| words(&fields(text))).collect()
    }

    /// What a command prints of some records, on both of its outputs.
    fn printed(store: &Path, locale: &str, command: &[&str]) -> String {
        let run = Command::new(env!("CARGO_BIN_EXE_barwright"))
            .args(command)
            .args(["--locale", locale, "--store"])
            .arg(store)
            .output()
            .expect("it runs");
        // Where the records are is nobody's language.
        String::from_utf8_lossy(&[run.stdout, run.stderr].concat())
            .replace(&store.display().to_string(), "")
    }

    /// A week without a word of English: what is read on the screens that are printed is German, and so
    /// is what the terminal says of its own where there are no records.
    #[test]
    fn a_week_is_trained_by_one_who_reads_no_english() {
        let folder = tempfile::tempdir().expect("a folder for the test");
        trained(&folder, "de-DE", ["Kniebeuge", "Bankdrücken", "Klimmzug"], &[0, 2, 4]);
        let english = texts(include_str!("../src/words/en.rs"));
        let german = texts(include_str!("../src/words/de.rs"));
        let only: BTreeSet<&String> = english.difference(&german).collect();
        assert!(only.len() > 100, "{only:?}");
        let (store, none) = (folder.path().join("records.db"), folder.path().join("none.db"));
        let commands: [&[&str]; 7] = [
            &["today"],
            &["today", "--minutes", "10"],
            &["weeks"],
            &["lift", "Kniebeuge"],
            &["lift", "Kreuzheben"],
            &["balance"],
            &["plan", "show"],
        ];
        for (records, command) in
            commands.iter().map(|one| (&store, one)).chain([(&none, &commands[0])])
        {
            let said = words(&printed(records, "de-DE", command));
            assert!(said.len() > 5, "{command:?}: {said:?}");
            let strange: Vec<_> = said.iter().filter(|word| only.contains(word)).collect();
            assert!(strange.is_empty(), "{command:?} says {strange:?}");
        }
        // The search finds what it looks for: in English the same screens have many of them.
        let said = words(&printed(&store, "en-GB", &["lift", "back squat"]));
        assert!(said.iter().any(|word| only.contains(word)), "{said:?}");
    }
}
