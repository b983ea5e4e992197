//! `barwright drive` from outside, killed at every step.

#[path = "support/driver.rs"]
mod driver;
mod support;

use std::path::PathBuf;
use std::process::{Command, Stdio};

use driver::Driver;
use serde_json::{Value, json};
use support::PLAN;

fn reading(second: i64) -> Value {
    json!({
        "wall_ms": 1_795_510_800_000_i64 + second * 1000,
        "offset_minutes": 60,
        "boot_ms": 50_000 + second * 1000,
        "boot_id": "the same boot",
    })
}

fn store(dir: &tempfile::TempDir) -> PathBuf {
    dir.path().join("records.db")
}

/// The floor as it stands.
fn floor(driver: &mut Driver, second: i64) -> Value {
    driver.ask(&json!({ "reading": reading(second), "view": { "floor": {} } }))
}

/// The key that records the current part as a lifter would: the wide one, else two left.
fn recording(floor: &Value) -> Value {
    let thumb = &floor["answer"]["screen"]["floor"]["floor"]["thumb"];
    let key = match &thumb["main"] {
        Value::Null => &thumb["effort"][2]["key"],
        main => main,
    };
    key["action"].clone()
}

#[test]
fn a_session_with_every_kind_of_part_is_killed_after_every_tap_and_goes_on() {
    let dir = tempfile::tempdir().expect("a folder for the test");
    let path = store(&dir);
    let mut driver = Driver::start(&path);
    let mut second = 0;
    for intent in [json!({ "adopt_plan": { "text": PLAN } }), json!({ "begin": {} })] {
        let answer = driver.ask(&json!({ "reading": reading(second), "intent": intent }));
        assert!(answer["answer"].is_object(), "{answer}");
    }
    let mut said = Vec::new();
    loop {
        second += 7;
        let before = floor(&mut driver, second);
        if !before["answer"]["screen"]["floor"].is_object() {
            break;
        }
        let call = &before["answer"]["screen"]["floor"]["floor"]["call"];
        said.push(format!("{} {}", call["exercise"], call["sentence"]));
        let action = recording(&before);
        let answer = driver.ask(&json!({ "reading": reading(second), "action": action }));
        assert!(answer["answer"].is_object(), "{action}: {answer}");
        // What was answered is on disk: it stands as it stood, whatever happens now.
        let stands = floor(&mut driver, second + 1);
        driver.kill();
        driver = Driver::start(&path);
        assert_eq!(floor(&mut driver, second + 1), stands);
        if answer["answer"]["screen"]["tally"].is_object() {
            break;
        }
    }
    // Six blocks, three drops, an opening part and its short ones, a hold, two sets, the end.
    let with = |part: &str| said.iter().filter(|said| said.contains(part)).count();
    assert_eq!(with("block"), 6, "{said:#?}");
    assert_eq!(with("Bench press"), 3, "{said:#?}");
    assert!(with("mini-set") >= 2, "{said:#?}");
    assert_eq!(with("Plank"), 1, "{said:#?}");
    assert_eq!(with("Back squat"), 2, "{said:#?}");
    let tally = driver.ask(&json!({ "reading": reading(second), "view": "tally" }));
    let subtitle =
        tally["answer"]["screen"]["tally"]["tally"]["subtitle"].as_str().unwrap_or_default();
    assert!(subtitle.contains("7 work sets") && subtitle.contains("over"), "{subtitle}");
    assert!(driver.leave());
}

#[test]
fn a_line_that_cannot_be_read_is_named_and_the_next_one_works() {
    let dir = tempfile::tempdir().expect("a folder for the test");
    let mut driver = Driver::start(&store(&dir));
    let good = json!({ "reading": reading(0), "view": "equipment" });
    let mut too_long = vec![b' '; 9 << 20];
    too_long.extend_from_slice(good.to_string().as_bytes());
    let misspelt = json!({ "reading": reading(0), "intent": { "record": { "amuont": 3 } } });
    let bad: [(Vec<u8>, &str); 7] = [
        (b"{".to_vec(), "EOF"),
        (b"null".to_vec(), "null"),
        (b"\xff\xfe".to_vec(), "expected value"),
        (too_long, "longer than"),
        (json!({ "reading": reading(0) }).to_string().into_bytes(), "one of them"),
        (misspelt.to_string().into_bytes(), "amuont"),
        (b"[[[[[[[[".repeat(1000), ""),
    ];
    for (at, (line, why)) in bad.into_iter().enumerate() {
        driver.send(&line);
        let answer = driver.answer();
        assert_eq!(answer["error"]["kind"], "line", "{answer}");
        assert_eq!(answer["error"]["line"], at * 2 + 1, "{answer}");
        assert!(
            answer["error"]["text"].as_str().is_some_and(|text| text.contains(why)),
            "{answer}"
        );
        assert!(driver.ask(&good)["answer"]["screen"]["equipment"].is_object());
    }
    let refused = driver.ask(&json!({ "reading": reading(0), "intent": "undo" }));
    assert_eq!(refused["refused"]["code"], "nothing_to_undo", "{refused}");
    assert!(driver.leave());
}

#[test]
fn one_file_has_one_driver() {
    let dir = tempfile::tempdir().expect("a folder for the test");
    let mut first = Driver::start(&store(&dir));
    let good = json!({ "reading": reading(0), "view": "equipment" });
    assert!(first.ask(&good)["answer"]["screen"].is_object());
    let second = Command::new(env!("CARGO_BIN_EXE_barwright"))
        .args(["drive", "--locale", "en-GB", "--store"])
        .arg(store(&dir))
        .stdin(Stdio::null())
        .output()
        .expect("it starts");
    assert_eq!(second.status.code(), Some(1));
    assert!(String::from_utf8_lossy(&second.stderr).contains("open"), "{second:?}");
    assert!(first.ask(&good)["answer"]["screen"].is_object());
    assert!(first.leave());
}

#[test]
fn the_schema_knows_every_line_that_is_taken() {
    let output = Command::new(env!("CARGO_BIN_EXE_barwright"))
        .args(["drive", "--describe"])
        .output()
        .expect("it starts");
    assert!(output.status.success());
    let schema: Value = serde_json::from_slice(&output.stdout).expect("it is JSON");
    let names = |side: &str| -> Vec<String> {
        schema[side]["$defs"].as_object().expect("it has parts").keys().cloned().collect()
    };
    for name in ["Reading", "Intent", "Action", "Look", "Draft"] {
        assert!(names("in").contains(&name.to_owned()), "{name}");
    }
    for name in ["Answer", "Screen", "Effect", "FloorScreen", "RefusalCode"] {
        assert!(names("out").contains(&name.to_owned()), "{name}");
    }
    assert_eq!(schema["in"]["$defs"]["Draft"]["additionalProperties"], false);
}
