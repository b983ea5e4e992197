//! `barwright records export` and `import` from outside: out without a loss, and in again.

#[path = "support/program.rs"]
mod program;
mod support;

use std::io::Write as _;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};
use std::sync::OnceLock;

use program::{does, refuses};

fn text(path: &Path) -> &str {
    path.to_str().expect("plain text")
}

/// The demo's six weeks as records of their own; played once for all tests.
fn season(dir: &Path) -> PathBuf {
    static PLAYED: OnceLock<Vec<u8>> = OnceLock::new();
    let played = PLAYED.get_or_init(|| {
        does(&dir.join("played.db"), &["today", "--demo"]);
        std::fs::read(dir.join("demo-played.db")).expect("it was played")
    });
    let store = dir.join("season.db");
    std::fs::write(&store, played).expect("it can be written");
    store
}

/// What a lifter sees of records.
fn screens(store: &Path) -> Vec<String> {
    let asked: [&[&str]; 6] = [
        &["today"],
        &["weeks"],
        &["balance"],
        &["balance", "--weeks", "4", "--json"],
        &["lift", "back squat", "--json"],
        &["lift", "bench press"],
    ];
    asked.iter().map(|args| does(store, args)).collect()
}

#[test]
fn out_and_in_again_gives_the_same_file_and_the_same_screens() {
    let dir = tempfile::tempdir().expect("a folder for the test");
    let store = season(dir.path());
    let file = dir.path().join("records.jsonl");
    let exported = does(&store, &["records", "export", "--jsonl", text(&file)]);
    assert!(exported.contains("17 sessions"), "{exported}");

    let new = dir.path().join("new.db");
    let looked = does(&new, &["records", "import", text(&file), "--dry-run"]);
    assert!(looked.contains("17 sessions") && looked.contains("Nothing was changed"), "{looked}");
    assert!(!new.exists(), "a look makes nothing");
    let taken = does(&new, &["records", "import", text(&file)]);
    assert!(taken.starts_with("Taken in: "), "{taken}");
    assert_eq!(screens(&new), screens(&store));
    let checked = does(&new, &["records", "check"]);
    assert!(checked.contains("all good"), "{checked}");

    let again = dir.path().join("again.jsonl");
    does(&new, &["records", "export", "--jsonl", text(&again)]);
    let read = |path: &Path| std::fs::read_to_string(path).expect("it was written");
    assert_eq!(read(&again), read(&file));

    // A second time nothing is new, and nothing is written.
    let before = std::fs::read(&new).expect("it is there");
    let twice = does(&new, &["records", "import", text(&file)]);
    assert!(twice.starts_with("Nothing is new"), "{twice}");
    assert_eq!(std::fs::read(&new).expect("it is there"), before);

    // Nothing is written over.
    let refused = refuses(&new, &["records", "export", "--jsonl", text(&file)]);
    assert!(refused.contains("is there already"), "{refused}");
}

#[test]
fn a_newer_file_goes_on_from_the_older_and_what_went_apart_is_refused() {
    let dir = tempfile::tempdir().expect("a folder for the test");
    let store = season(dir.path());
    let old = dir.path().join("old.jsonl");
    does(&store, &["records", "export", "--jsonl", text(&old)]);
    let phone = dir.path().join("phone.db");
    does(&phone, &["records", "import", text(&old)]);

    // The older phone goes on.
    let plan = dir.path().join("plan.toml");
    std::fs::write(&plan, support::PLAN).expect("it can be written");
    does(&store, &["plan", "adopt", text(&plan)]);
    let newer = dir.path().join("newer.jsonl");
    does(&store, &["records", "export", "--jsonl", text(&newer)]);
    let taken = does(&phone, &["records", "import", text(&newer)]);
    assert!(taken.contains("Taken in: 1 entry") && taken.contains("To go back"), "{taken}");
    assert_eq!(screens(&phone)[..2], screens(&store)[..2]);
    let older = does(&phone, &["records", "import", text(&old)]);
    assert!(older.starts_with("Nothing is new"), "{older}");

    // One step back, and the other way on from there.
    let copy = dir.path().join("phone.db.before-import-1");
    does(&phone, &["records", "restore", text(&copy)]);
    std::fs::write(&plan, support::PLAN.replace("Boathouse trial", "Another"))
        .expect("it can be written");
    does(&phone, &["plan", "adopt", text(&plan)]);
    let before = screens(&phone);
    let apart = refuses(&phone, &["records", "import", text(&newer)]);
    assert!(apart.contains("both went on"), "{apart}");
    assert_eq!(screens(&phone), before);

    // Other records are not mixed in.
    let other = dir.path().join("other.db");
    does(&other, &["plan", "adopt", text(&plan)]);
    let others = refuses(&other, &["records", "import", text(&newer)]);
    assert!(others.contains("other records"), "{others}");
}

#[test]
fn a_return_has_what_was_done_since_and_no_more_than_was_ticked() {
    let dir = tempfile::tempdir().expect("a folder for the test");
    let store = season(dir.path());
    let whole = dir.path().join("whole.jsonl");
    does(&store, &["records", "export", "--jsonl", text(&whole)]);
    let file = dir.path().join("return.jsonl");
    // Half way through the demo, which ends today.
    let days = |line: &str| -> i64 {
        let (_, rest) = line.split_once("\"wall_ms\":").expect("each has its time");
        let end = rest.find(',').expect("more follows");
        rest[..end].parse::<i64>().expect("a number") / 86_400_000
    };
    let read = |path: &Path| std::fs::read_to_string(path).expect("it was written");
    let all = read(&whole);
    let last = days(all.lines().last().expect("it has lines"));
    let day = chrono::NaiveDate::from_num_days_from_ce_opt(
        i32::try_from(last).expect("a day") + 719_163 - 14,
    )
    .expect("a date");
    let since = day.to_string();
    let export = ["records", "export", "--since", &since, "--jsonl"];
    let told = does(&store, &[&export[..], &[text(&file)]].concat());
    assert!(told.contains(" sessions") && !told.contains("17 sessions"), "{told}");
    let part = read(&file);
    assert!(part.len() < all.len(), "{} of {}", part.len(), all.len());
    assert!(part.contains("\"key\":\"owner:max:back-squat\""), "maxes are there");
    assert!(part.contains("\"plan_adopted\""), "the plan is there");
    for unsaid in ["body_mass\":\"", "\"body\":{\"mass\"", "82.4"] {
        assert!(!part.contains(unsaid), "{unsaid}");
        assert!(all.contains(unsaid), "{unsaid} is there to be left out");
    }
    // It is looked at, not taken for all that was recorded.
    let refused = refuses(&dir.path().join("new.db"), &["records", "import", text(&file)]);
    assert!(refused.contains("only a part"), "{refused}");
    let ticked = dir.path().join("ticked.jsonl");
    does(&store, &[&export[..], &[text(&ticked), "--with-body-mass", "--with-notes"]].concat());
    assert!(read(&ticked).contains("\"body\":{\"mass\""), "what is ticked is there");
}

#[test]
fn a_file_of_somebody_else_changes_nothing_where_it_breaks_a_rule() {
    let dir = tempfile::tempdir().expect("a folder for the test");
    let store = season(dir.path());
    let file = dir.path().join("records.jsonl");
    does(&store, &["records", "export", "--jsonl", text(&file)]);
    let good = std::fs::read_to_string(&file).expect("it was written");
    let lines: Vec<&str> = good.lines().collect();
    let deep = format!("{}1{}", "[".repeat(5_000), "]".repeat(5_000));
    let body = lines[1].find("\"body\":").expect("it has one");
    let cases = [
        ("empty", String::new(), "it is empty"),
        ("no records", "{\"a\":1}\n".to_owned(), "no file of records"),
        ("newer", good.replacen("records\":1", "records\":2", 1), "newer release"),
        ("cut off", lines[..lines.len() - 1].join("\n"), "cut off"),
        ("one too many", format!("{good}{}\n", lines[1]), "out of order"),
        ("changed", good.replacen("142.5", "152.5", 1), "checksum"),
        ("another kind", good.replacen("\"desk\"", "\"dusk\"", 1), "no kind of event"),
        (
            "too deep",
            good.replacen(&lines[1][body..], &format!("\"body\":{deep}}}"), 1),
            "too deep",
        ),
        ("not sound", good.replacen("\"offset_min\":", "\"offset_min\":9", 1), "Line 2"),
        ("too heavy", good.replacen("\"mass\":\"20\"", "\"mass\":\"20001\"", 1), "20 tonnes"),
        ("too long", format!("{}\n{}\n", lines[0], "x".repeat(5 << 20)), "too long"),
    ];
    for (what, hostile, why) in cases {
        assert_ne!(hostile, good, "{what}");
        let path = dir.path().join("hostile.jsonl");
        std::fs::write(&path, hostile).expect("it can be written");
        let new = dir.path().join("new.db");
        let refused = refuses(&new, &["records", "import", text(&path)]);
        assert!(refused.contains(why), "{what}: {refused}");
        assert!(!new.exists(), "{what}");
    }
}

#[test]
fn tables_have_a_row_a_thing_and_no_formula() {
    let dir = tempfile::tempdir().expect("a folder for the test");
    let store = season(dir.path());
    let folder = dir.path().join("tables");
    let told = does(&store, &["records", "export", "--csv", text(&folder)]);
    assert!(told.contains("sessions.csv: 17 rows"), "{told}");
    assert!(told.contains("body-mass.csv: 7 rows"), "{told}");
    let read = |name: &str| std::fs::read_to_string(folder.join(name)).expect("it was written");
    let page = std::fs::read_to_string(
        Path::new(env!("CARGO_MANIFEST_DIR")).join("../docs/records-format.md"),
    )
    .expect("the page is there");
    for name in ["sets.csv", "sessions.csv", "maxes.csv", "body-mass.csv"] {
        let table = read(name);
        let columns = table.lines().next().expect("a line of names");
        let (_, chapter) = page.split_once(&format!("### `{name}`")).expect("it is documented");
        let chapter = chapter.split("\n#").next().unwrap_or_default();
        let named: Vec<&str> = chapter
            .lines()
            .filter_map(|line| line.strip_prefix("| `")?.split('`').next())
            .collect();
        assert_eq!(columns.split(',').collect::<Vec<_>>(), named, "{name}");
        assert!(table.lines().count() > 1, "{name}");
    }
    assert!(read("body-mass.csv").contains(",82.4"), "{}", read("body-mass.csv"));
    assert!(read("maxes.csv").contains(",back-squat,142.5,"), "{}", read("maxes.csv"));
    let squats = read("sets.csv");
    let squats = squats.lines().filter(|line| line.contains(",back-squat,")).count();
    assert!(squats > 30, "{squats} sets of squats in six weeks");

    // A name that a spreadsheet would take for a formula.
    let plan = dir.path().join("plan.toml");
    let formula = "=HYPERLINK(1)";
    let made = support::PLAN.replacen(
        "[[session]]\nname = \"",
        &format!("[[session]]\nname = \"{formula}"),
        1,
    );
    assert!(made.contains(formula), "{made}");
    std::fs::write(&plan, made).expect("it can be written");
    let lifter = dir.path().join("lifter.db");
    does(&lifter, &["plan", "adopt", text(&plan)]);
    begin(&lifter);
    let tables = dir.path().join("of-the-lifter");
    does(&lifter, &["records", "export", "--csv", text(&tables)]);
    let sessions = std::fs::read_to_string(tables.join("sessions.csv")).expect("it was written");
    assert!(sessions.contains(&format!(",'{formula}")), "{sessions}");

    // Tables that are there are not written over.
    refuses(&store, &["records", "export", "--csv", text(&folder)]);
}

/// Begins a session by `drive`.
fn begin(store: &Path) {
    let mut child = Command::new(env!("CARGO_BIN_EXE_barwright"))
        .args(["drive", "--locale", "en-GB", "--store"])
        .arg(store)
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .spawn()
        .expect("it starts");
    let now = 1_795_900_000_000_i64;
    let line = format!(
        "{{\"reading\":{{\"wall_ms\":{now},\"offset_minutes\":0}},\"intent\":{{\"begin\":{{}}}}}}\n"
    );
    let mut input = child.stdin.take().expect("it is piped");
    input.write_all(line.as_bytes()).expect("it is read");
    drop(input);
    let output = child.wait_with_output().expect("it ends");
    let answer = String::from_utf8_lossy(&output.stdout);
    assert!(answer.contains("\"floor\""), "{answer}");
}
