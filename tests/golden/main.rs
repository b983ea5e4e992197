//! The golden log: a log that holds every kind of event of version 1, written once by a story that is
//! played through the public door (`story`), read for ever, replayed to the same screens.
//!
//! `BARWRIGHT_WRITE_GOLDEN=1 cargo test -p barwright-tests --test golden` plays the story and writes
//! `v1.jsonl` and `v1.screens.json` anew, as long as the log is not frozen; once it is, the same
//! switch leaves the log alone and writes the screens as that log shows them now. Screens may change,
//! with the words or with what is shown: the difference is read before it is committed.

mod looked;
mod plan;
mod story;

use std::collections::BTreeSet;
use std::path::{Path, PathBuf};
use std::sync::Arc;

use barwright_app::{Engine, Export};
use serde_json::Value;

/// The checksum of the last line of `v1.jsonl`, once version 1 is released: from then on the log is
/// never written again. None while it may still change.
const FROZEN: Option<u32> = Some(852_991_401);

const LOG: &str = "v1.jsonl";
const SCREENS: &str = "v1.screens.json";

fn file(name: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("golden").join(name)
}

fn read(name: &str) -> String {
    std::fs::read_to_string(file(name)).unwrap_or_else(|error| panic!("{name}: {error}"))
}

fn exported(engine: &Engine) -> Vec<u8> {
    let mut out = Vec::new();
    let all = engine.export_records(Export::default(), &mut out);
    all.unwrap_or_else(|error| panic!("{error:?}"));
    out
}

/// An empty engine that took the golden log in.
fn imported(log: &str) -> Arc<Engine> {
    let engine = Engine::in_memory("en-GB".into()).unwrap_or_else(|error| panic!("{error:?}"));
    let taken = engine.import_records(log.as_bytes(), false);
    taken.unwrap_or_else(|error| panic!("the golden log is not taken: {error:?}"));
    engine
}

/// The events of a log, each line as it stands.
fn events(log: &str) -> Vec<Value> {
    let lines = log.lines().skip(1);
    lines.map(|line| serde_json::from_str(line).expect("a line of JSON")).collect()
}

/// The name of a choice as the log writes it: alone, or as the only key of an object.
fn name(choice: &Value) -> String {
    match choice {
        Value::String(name) => name.clone(),
        Value::Object(one) => one.keys().next().expect("a choice has a name").clone(),
        other => panic!("no choice: {other}"),
    }
}

/// The names that the schema has for a choice.
fn known(schema: &Value, of: &str) -> BTreeSet<String> {
    let all = schema["$defs"][of]["oneOf"].as_array();
    let all = all.unwrap_or_else(|| panic!("the schema has no choice {of}"));
    let names = all.iter().flat_map(|one| {
        let alone = one["const"].as_str().into_iter();
        let listed = one["enum"].as_array().into_iter().flatten().filter_map(Value::as_str);
        let object = one["required"].as_array().into_iter().flatten().filter_map(Value::as_str);
        alone.chain(listed).chain(object).map(str::to_owned).collect::<Vec<_>>()
    });
    names.collect()
}

/// Writes the golden files where the switch asks for it, before anything is compared. Every test goes
/// by this, so that none reads a file that another is about to write.
fn golden() -> (String, Value) {
    static WRITTEN: std::sync::Once = std::sync::Once::new();
    WRITTEN.call_once(|| {
        if std::env::var_os("BARWRIGHT_WRITE_GOLDEN").is_none() {
            return;
        }
        if FROZEN.is_none() {
            let log = exported(&story::played().engine);
            std::fs::write(file(LOG), log).expect("the checkout can be written");
        }
        let mut screens = looked::pretty(&looked::screens(&read(LOG)));
        screens.push('\n');
        std::fs::write(file(SCREENS), screens).expect("the checkout can be written");
    });
    let screens = serde_json::from_str(&read(SCREENS)).expect("the screens are JSON");
    (read(LOG), screens)
}

#[test]
fn it_holds_every_kind_of_event() {
    let (log, _) = golden();
    let schema = Path::new(env!("CARGO_MANIFEST_DIR")).join("../core/log/schema/v1.json");
    let schema = std::fs::read_to_string(schema).expect("the schema is in the checkout");
    let schema: Value = serde_json::from_str(&schema).expect("it is JSON");
    let (mut session, mut desk) = (BTreeSet::new(), BTreeSet::new());
    let (mut arranged, mut for_once) = (BTreeSet::new(), BTreeSet::new());
    for line in events(&log) {
        let event = &line["body"]["event"];
        match line["kind"].as_str() {
            Some("session") => session.insert(name(event)),
            Some("desk") => desk.insert(name(event)),
            other => panic!("a line of kind {other:?}"),
        };
        if let Some(what) = event.pointer("/arranged/what") {
            arranged.insert(name(what));
            let changes = what.pointer("/for_once/changes").and_then(Value::as_array);
            for_once.extend(changes.into_iter().flatten().map(name));
        }
    }
    let choices =
        [("Event", session), ("DeskEvent", desk), ("Arrangement", arranged), ("ForOnce", for_once)];
    let mut missing = Vec::new();
    for (of, held) in choices {
        let known = known(&schema, of);
        assert!(known.len() >= 4, "the schema is read: {known:?}");
        missing.extend(known.difference(&held).map(|name| format!("{of}: {name}")));
        let strange: Vec<_> = held.difference(&known).collect();
        assert!(strange.is_empty(), "{of}: {strange:?} is in the log and not in the schema");
    }
    assert!(
        missing.is_empty(),
        "\nThe golden log lacks what the schema of version 1 knows:\n  {}\n\n\
         While version 1 is not frozen: play it in tests/golden/story.rs, by the key that gives it, run \
         BARWRIGHT_WRITE_GOLDEN=1 cargo test -p barwright-tests --test golden, read what changed, and \
         commit it.\n\
         Once it is frozen, nothing new belongs into version 1: a version 2 gets a golden file of its \
         own.\n",
        missing.join("\n  ")
    );
}

#[test]
fn it_is_taken_without_a_loss_and_needs_no_mending() {
    let (log, _) = golden();
    let engine = imported(&log);
    let again = exported(&engine);
    assert!(again == log.as_bytes(), "it goes out otherwise than it came in");
    assert_eq!(engine.count_records().ok(), Some(events(&log).len() as u64));
    let found = engine.examine_records().unwrap_or_else(|error| panic!("{error:?}"));
    assert_eq!((found.mended, found.entries), (0, events(&log).len() as u64), "{found:?}");
}

#[test]
fn it_is_replayed_to_the_same_screens() {
    let (log, written) = golden();
    let shown = looked::screens(&log);
    let of = |value: &Value| value.as_object().expect("screens by name").clone();
    let (written, shown) = (of(&written), of(&shown));
    let names = |of: &serde_json::Map<String, Value>| of.keys().cloned().collect::<BTreeSet<_>>();
    let different: Vec<String> = names(&written)
        .union(&names(&shown))
        .filter(|name| written.get(*name) != shown.get(*name))
        .map(|name| {
            let side = |of: &serde_json::Map<String, Value>| of.get(name).map(looked::pretty);
            looked::first_difference(name, side(&written), side(&shown))
        })
        .collect();
    assert!(
        different.is_empty(),
        "\nThe golden log shows otherwise than it did:\n{}\n\n\
         If words or a screen were meant to change: BARWRIGHT_WRITE_GOLDEN=1 writes {SCREENS} anew; read \
         the difference before it is committed. A load, a date or a count that changed is a log that is \
         read otherwise than it was: that is a defect.\n",
        different.join("\n")
    );
}

#[test]
fn once_frozen_it_is_never_written_again() {
    let (log, _) = golden();
    let last = events(&log).last().and_then(|line| line["checksum"].as_u64());
    assert!(last.is_some(), "each line has the checksum of the log up to it");
    let Some(frozen) = FROZEN else { return };
    assert_eq!(
        last,
        Some(u64::from(frozen)),
        "\n{LOG} is frozen: phones hold logs like it, and it is never rewritten. Restore it. A change of \
         what is written is a new version, which gets a golden file of its own beside it.\n"
    );
}

/// What is written anew before it is frozen differs in what changed alone.
#[test]
fn the_story_is_told_alike_each_time() {
    let [once, again] = [0; 2].map(|_| exported(&story::played().engine));
    let lines = once.split(|byte| *byte == b'\n').zip(again.split(|byte| *byte == b'\n'));
    for (one, other) in lines {
        let [one, other] = [one, other].map(String::from_utf8_lossy);
        assert_eq!(one, other, "something of the log is left to chance");
    }
}

#[test]
fn they_stay_small() {
    let (log, _) = golden();
    assert!(log.len() < 300_000, "{LOG} has {} bytes", log.len());
    let screens = read(SCREENS).len();
    assert!(screens < 1_000_000, "{SCREENS} has {screens} bytes");
}
