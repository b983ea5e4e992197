//! `barwright load` and `barwright changes` from outside.

use std::process::{Command, Output};

use serde_json::{Value, json};

const BOATHOUSE: &str = r#"
name = "Boathouse"

[[bar]]
name = "Long bar"
mass = "20 kg"
collars = "5 kg"

[[plate]]
mass = "25 kg"
pairs = 4
[[plate]]
mass = "20kg"
pairs = 1
[[plate]]
mass = "10 kg"
pairs = 1
[[plate]]
mass = "5 kg"
pairs = 1
[[plate]]
mass = "2.5 kg"
pairs = 1
[[plate]]
mass = "1.25 kg"
pairs = 1
[[plate]]
mass = "45 lb"
pairs = 1
"#;

fn barwright(args: &[&str], file: &str) -> Output {
    let dir = tempfile::tempdir().expect("a folder for the test");
    let path = dir.path().join("gym.toml");
    std::fs::write(&path, file).expect("the file can be written");
    Command::new(env!("CARGO_BIN_EXE_barwright"))
        .args(args)
        .arg("--equipment")
        .arg(&path)
        .env("LC_ALL", "en_GB.UTF-8")
        .output()
        .expect("the program starts")
}

fn answer(args: &[&str]) -> Value {
    let output = barwright(&[args, &["--json"]].concat(), BOATHOUSE);
    assert!(output.status.success(), "{}", String::from_utf8_lossy(&output.stderr));
    serde_json::from_slice(&output.stdout).expect("JSON")
}

fn refusal(args: &[&str], file: &str) -> String {
    let output = barwright(args, file);
    assert_eq!(output.status.code(), Some(2));
    assert!(output.stdout.is_empty());
    String::from_utf8(output.stderr).expect("text")
}

#[test]
fn a_load_comes_with_its_side_from_the_inside_out() {
    let load = answer(&["load", "142.5kg"]);
    assert_eq!(load["target_kg"], "142.5");
    assert_eq!(load["made_kg"], "142.5");
    assert_eq!(load["off_by_kg"], "0");
    assert_eq!(load["side"], json!(["25 kg", "25 kg", "5 kg", "2.5 kg", "1.25 kg"]));
    let mixed = answer(&["load", "65.5kg", "--fit", "over"]);
    assert_eq!(mixed["made_kg"], "65.8233133");
    assert_eq!(mixed["off_by_kg"], "0.3233133");
    assert_eq!(mixed["side"], json!(["45 lb"]));
    let under = answer(&["load", "65.5kg", "--fit", "under"]);
    assert_eq!((&under["made_kg"], &under["off_by_kg"]), (&json!("65"), &json!("-0.5")));
}

#[test]
fn a_ramp_comes_with_what_to_take_off_and_put_on() {
    let plan = answer(&["changes", "--slack", "2.5%", "62.5kg", "80kg", "102.5 kg"]);
    let steps = plan["steps"].as_array().expect("steps");
    let all = |key: &str| steps.iter().map(|step| step[key].clone()).collect::<Vec<_>>();
    assert_eq!(all("asked_kg"), ["62.5", "80", "102.5"]);
    assert_eq!(steps[2]["made_kg"], "102.5");
    // Every step follows from the one before, and the moves add up.
    let mut side: Vec<Value> = Vec::new();
    let mut moves = 0;
    for step in steps {
        let list = |key: &str| step[key].as_array().expect("a list").clone();
        for off in list("off") {
            assert_eq!(side.pop(), Some(off));
            moves += 1;
        }
        moves += list("on").len();
        side.extend(list("on"));
        assert_eq!(side, list("side"));
    }
    assert_eq!(plan["moves"], moves);
    // 20 on; off, 25 and a small one on; that off, 10 and what is missing on: by hand 1 + 3 + 4.
    assert_eq!(moves, 8);
}

#[test]
fn people_read_plain_lines() {
    let output = barwright(&["load", "61 kg"], BOATHOUSE);
    let text = String::from_utf8(output.stdout).expect("text");
    assert!(text.starts_with("60 kg · Long bar, 20 kg, collars 5 kg · each side\n"), "{text}");
    assert!(text.contains("10 kg │ 5 kg │ 2.5 kg"), "{text}");
    assert!(text.contains("1 kg under the 61 kg asked for"), "{text}");
}

#[test]
fn what_cannot_be_is_refused_with_a_reason() {
    let text = refusal(&["load", "142.5"], BOATHOUSE);
    assert!(text.starts_with("142.5\n     ^ the unit is missing"), "{text}");
    assert!(refusal(&["load", "-5kg"], BOATHOUSE).contains("A load is nothing or more"));
    assert!(refusal(&["load", "20kg", "--fit", "under"], BOATHOUSE).contains("the least is 25 kg"));
    let heavy = refusal(&["load", "2t", "--fit", "over"], BOATHOUSE);
    assert!(heavy.contains("this unit is not known"), "{heavy}");
    assert!(refusal(&["load", "900kg", "--fit", "over"], BOATHOUSE).contains("the most is"));
    assert!(refusal(&["load", "60kg", "--implement", "sled"], BOATHOUSE).contains("no sled here"));
    assert!(refusal(&["changes", "--slack=-2%", "60kg"], BOATHOUSE).contains("Slack is nothing"));
    let faults = refusal(&["load", "60kg"], "[[bar]]\nnam = \"Long\"\nmass = \"20\"\n");
    assert!(faults.contains("gym.toml:2:1: “nam” is no key here"), "{faults}");
    assert!(faults.contains("gym.toml:3:"), "{faults}");
}

#[test]
fn without_a_file_a_built_in_gym_is_taken_in_the_unit_asked_in() {
    let run = |load: &str| {
        let output = Command::new(env!("CARGO_BIN_EXE_barwright"))
            .args(["load", load, "--json"])
            .output()
            .expect("the program starts");
        let load: Value = serde_json::from_slice(&output.stdout).expect("JSON");
        load["side"].clone()
    };
    assert_eq!(run("60kg"), json!(["20 kg"]));
    assert_eq!(run("135lb"), json!(["45 lb"]));
}
