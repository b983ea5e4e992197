//! `barwright desk` over a folder of returns: a line each, worst first, and nothing that a file from
//! someone else can do but be read.

use std::path::{Path, PathBuf};
use std::process::{Command, Output};

use serde_json::Value;

fn barwright(arguments: &[&str]) -> Output {
    Command::new(env!("CARGO_BIN_EXE_barwright"))
        .args(arguments)
        .args(["--locale", "en-GB"])
        .output()
        .expect("the program starts")
}

fn ok(arguments: &[&str]) -> String {
    let output = barwright(arguments);
    assert!(output.status.success(), "{arguments:?}: {output:?}");
    String::from_utf8(output.stdout).expect("text")
}

fn text(path: &Path) -> &str {
    path.to_str().expect("a path")
}

/// A folder with the demo's lifter's return and one of a lifter who has a plan and did nothing yet.
fn returns() -> (tempfile::TempDir, PathBuf) {
    let folder = tempfile::tempdir().expect("a folder for the test");
    let demo = folder.path().join("demo.db");
    ok(&["today", "--demo", "--store", text(&demo)]);
    let returns = folder.path().join("returns");
    std::fs::create_dir(&returns).expect("it can be made");
    let trained = returns.join("trained.jsonl");
    let export = ["records", "export", "--jsonl"];
    ok(&[&export[..], &[text(&trained), "--demo", "--store", text(&demo)]].concat());
    let (plan, fresh) = (folder.path().join("plan.toml"), folder.path().join("fresh.db"));
    std::fs::write(
        &plan,
        "name = \"Two rows\"\nweeks = 2\n\n[[session]]\nname = \"Monday\"\n\n[[session.exercise]]\n\
         name = \"Back squat\"\nsets = 4\nreps = 5\nload = \"100 kg\"\n\n[[session.exercise]]\n\
         name = \"Plank\"\nsets = 2\nseconds = 30\noptional = true\n",
    )
    .expect("it can be written");
    ok(&["plan", "adopt", text(&plan), "--store", text(&fresh)]);
    let new = returns.join("fresh.jsonl");
    ok(&[&export[..], &[text(&new), "--store", text(&fresh)]].concat());
    (folder, returns)
}

fn lifters(found: &Value) -> Vec<&str> {
    let lifters = found["lifters"].as_array().expect("lifters").iter();
    lifters.map(|line| line["lifter"].as_str().expect("a name")).collect()
}

#[test]
fn a_line_a_lifter_worst_first_then_one_in_full() {
    let (_folder, returns) = returns();
    let found: Value =
        serde_json::from_str(&ok(&["desk", text(&returns), "--json"])).expect("JSON");
    assert_eq!(lifters(&found), ["trained", "fresh"], "{found:#}");
    let trained = &found["lifters"][0];
    let number = |key: &str| trained[key].as_u64().expect("a number");
    assert!(number("week") >= 5 && number("weeks") == 8, "{trained:#}");
    let sessions = &trained["sessions"];
    assert!(sessions["done"].as_u64() >= Some(1), "{trained:#}");
    assert!(sessions["done"].as_u64() <= sessions["planned"].as_u64(), "{trained:#}");
    assert!(trained["hard_sets"]["done"].as_u64() > Some(0), "{trained:#}");
    // Each thing that is counted is said as well.
    let said = trained["says"].as_array().expect("sentences").len() as u64;
    let counted = ["loads_off", "effort_off", "misses", "pain"].map(number).iter().sum::<u64>();
    assert_eq!(said, counted, "{trained:#}");
    // Of the plan's own numbers: four sets are owed, what is optional is not.
    let fresh = &found["lifters"][1];
    assert_eq!(fresh["hard_sets"], serde_json::json!({ "done": 0, "planned": 4 }));
    assert_eq!(fresh["sessions"], serde_json::json!({ "done": 0, "planned": 1 }));
    assert_eq!((&fresh["week"], &fresh["days_off"]), (&1.into(), &Value::Null));

    let lines = ok(&["desk", text(&returns)]);
    assert!(lines.starts_with("2 lifters\n\nlifter "), "{lines}");
    let at = |name: &str| lines.find(&format!("\n{name} ")).expect("a line");
    assert!(at("trained") < at("fresh"), "{lines}");
    let full = ok(&["desk", text(&returns), "--lifter", "trained"]);
    for text in trained["says"].as_array().expect("sentences") {
        let text = text.as_str().expect("a sentence");
        assert!(full.contains(text), "{text} is missing in\n{full}");
    }
    assert!(full.contains("Boathouse off-season") && full.contains("(this week)"), "{full}");
    let none = barwright(&["desk", text(&returns), "--lifter", "nobody"]);
    assert_eq!(none.status.code(), Some(2), "{none:?}");
}

#[test]
fn what_is_no_return_is_said_and_stops_no_other() {
    let (_folder, returns) = returns();
    let whole = std::fs::read_to_string(returns.join("trained.jsonl")).expect("it was written");
    let put = |name: &str, text: &str| {
        std::fs::write(returns.join(name), text).expect("it can be written");
    };
    // Cut off in the middle, one body changed, far too deep, nothing, and a name that would clear a
    // terminal.
    let cut: String = whole.lines().take(20).map(|line| format!("{line}\n")).collect();
    put("cut.jsonl", &cut);
    put("changed.jsonl", &whole.replacen("\"reps\":5", "\"reps\":6", 1));
    put("deep.jsonl", &"[".repeat(200_000));
    put("nothing.jsonl", "");
    put("\u{1b}[2Jname.jsonl", "{}");
    put("notes.txt", "no return by its ending");
    #[cfg(unix)]
    std::os::unix::fs::symlink("/etc/hostname", returns.join("link.jsonl")).expect("a link");
    let before: Vec<_> = listed(&returns);
    let found: Value =
        serde_json::from_str(&ok(&["desk", text(&returns), "--json"])).expect("JSON");
    assert_eq!(lifters(&found), ["trained", "fresh"], "{found:#}");
    let unread: Vec<&str> = found["unread"]
        .as_array()
        .expect("files")
        .iter()
        .map(|one| one["file"].as_str().expect("a name"))
        .collect();
    assert_eq!(
        unread,
        [" [2Jname.jsonl", "changed.jsonl", "cut.jsonl", "deep.jsonl", "nothing.jsonl"]
    );
    let lines = ok(&["desk", text(&returns)]);
    assert!(
        lines.starts_with("2 lifters, 5 files not read\n") && !lines.contains('\u{1b}'),
        "{lines}"
    );
    assert_eq!(listed(&returns), before, "looking leaves nothing behind");
}

/// The files of a folder with what is in them.
fn listed(folder: &Path) -> Vec<(PathBuf, Vec<u8>)> {
    let entries = folder.read_dir().expect("it is there");
    let mut files: Vec<_> = entries
        .map(|entry| entry.expect("it can be read").path())
        .map(|path| (path.clone(), std::fs::read(&path).unwrap_or_default()))
        .collect();
    files.sort();
    files
}
