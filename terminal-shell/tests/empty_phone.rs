//! Two weeks from an empty phone through `barwright drive`: a gym, a plan and its sessions by the keys
//! that the screens show, and no text file. The program is killed between any two evenings.

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
    /// None while it is off.
    driver: Option<Driver>,
    now_ms: i64,
    presses: u32,
    /// The kind of screen, and the screen.
    kind: String,
    screen: Value,
}

impl Thumb {
    fn new(folder: &tempfile::TempDir) -> Self {
        let path = folder.path().join("records.db");
        let driver = Some(Driver::start(&path));
        let (kind, screen) = (String::new(), Value::Null);
        let mut thumb = Self { path, driver, now_ms: MONDAY_MS, presses: 0, kind, screen };
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

    fn row(&self, text: &str) -> Value {
        let row = found(&self.screen["rows"], &|one| one["text"] == text && one["id"].is_string());
        row.unwrap_or_else(|| panic!("{text}: {:#}", self.screen)).clone()
    }

    /// A key of a row, by the row's text.
    fn of_row(&mut self, text: &str, id: &str) {
        let row = self.row(text);
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
        self.driver = Some(Driver::start(&self.path));
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

#[test]
fn two_weeks_are_trained_from_an_empty_phone() {
    let folder = tempfile::tempdir().expect("a folder for the test");
    let mut thumb = Thumb::new(&folder);
    // A gym: a bar, a usual set of plates, a rack, a bench and a bar to hang from.
    thumb.tap("start");
    thumb.of_row("Say what your gym has", "gym");
    thumb.tap("empty-kg");
    thumb.of_row("Add a bar", "add-barbell");
    thumb.of_row("Add a size of plate", "add-set");
    for support in ["Rack", "Bench", "Pull-up bar"] {
        thumb.of_row(support, "toggle");
    }
    thumb.tap("take-up");
    // A plan of three exercises, the first in fives with a load.
    thumb.look("today", json!({ "today": {} }));
    thumb.tap("make");
    thumb.of_row("A", "open");
    for (words, name) in
        [("back squat", "Back squat"), ("bench press", "Bench press"), ("pull-up", "Pull-up")]
    {
        thumb.tap("add");
        thumb.write("Look for", words);
        thumb.of_row(name, "add");
    }
    thumb.of_row("Back squat", "open");
    thumb.write("Reps", "5");
    thumb.write("Load", "80 kg");
    thumb.of_row("Next time", "up");
    thumb.of_row("Next time", "up");
    for key in ["leave", "leave", "see", "adopt"] {
        thumb.tap(key);
    }
    thumb.look("today", json!({ "today": {} }));
    // From the empty phone to the first set, the walk to the floor counted.
    assert!(thumb.presses < 60, "{} presses", thumb.presses);
    let mut loads = Vec::new();
    for day in [0, 3, 7, 10] {
        thumb.another_evening(day);
        assert!(thumb.session() >= 6);
        thumb.look("today", json!({ "today": {} }));
        loads.push(thumb.screen["rows"].to_string());
    }
    thumb.look("weeks", json!("weeks"));
    let weeks = thumb.screen["weeks"].as_array().expect("weeks").clone();
    let rows = weeks.iter().flat_map(|week| week["rows"].as_array().cloned().unwrap_or_default());
    assert_eq!(rows.filter(|row| row["done"] == json!(true)).count(), 4);
    // The weeks add up: each evening calls otherwise than the one before.
    assert!(loads.windows(2).any(|two| two[0] != two[1]), "{loads:#?}");
    assert!(thumb.driver.take().expect("it is on").leave());
}
