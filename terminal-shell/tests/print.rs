//! `--print`: every set of the sheet stands on the page, and names are text there and nothing else.

use std::path::{Path, PathBuf};
use std::process::{Command, Output};

use serde_json::Value;

fn barwright(store: &Path, arguments: &[&str]) -> Output {
    Command::new(env!("CARGO_BIN_EXE_barwright"))
        .args(arguments)
        .args(["--locale", "en-GB", "--store"])
        .arg(store)
        .output()
        .expect("the program starts")
}

fn text(store: &Path, arguments: &[&str]) -> String {
    let output = barwright(store, arguments);
    assert!(output.status.success(), "{output:?}");
    String::from_utf8(output.stdout).expect("text")
}

fn folder() -> (tempfile::TempDir, PathBuf) {
    let folder = tempfile::tempdir().expect("a folder for the test");
    let store = folder.path().join("records.db");
    (folder, store)
}

/// The rows of a page's tables, each as its cells.
fn rows(page: &str) -> Vec<Vec<String>> {
    let rows = page.split("<tr>").filter(|row| row.contains("<td>"));
    let rows = rows.map(|row| row.split("</tr>").next().unwrap_or_default());
    let cells = rows.map(|row| {
        let cells = row.split("<td>").skip(1);
        cells.map(|cell| cell.split("</td>").next().unwrap_or_default().to_owned()).collect()
    });
    cells.collect()
}

/// How many sets a line of a sheet stands for: "4 × 5 …", "up to 6 × 1 …", each side apart.
fn sets(line: &str) -> usize {
    let count = line.split(" × ").next().unwrap_or_default();
    let count = count.rsplit(' ').next().unwrap_or_default();
    let count: usize = count.parse().expect("a line begins with how many sets");
    if line.contains(" each side") { count * 2 } else { count }
}

#[test]
fn the_page_has_every_set_of_the_sheet_with_its_load_and_boxes() {
    let (_folder, store) = folder();
    let today: Value =
        serde_json::from_str(&text(&store, &["today", "--demo", "--json"])).expect("JSON");
    let page = text(&store, &["today", "--demo", "--print"]);
    let lines: Vec<&str> = today["today"]["today"]["rows"]
        .as_array()
        .expect("rows")
        .iter()
        .filter(|row| row["id"].as_str().expect("an id").starts_with("sets-"))
        .map(|row| row["text"].as_str().expect("a text"))
        .collect();
    let rows = rows(&page);
    assert!(lines.len() > 3, "{lines:?}");
    assert_eq!(rows.len(), lines.iter().map(|line| sets(line)).sum::<usize>(), "{lines:?}");
    for line in lines {
        // The load and the rest of a line stand in a row of the page.
        let load = line.split(" · ").nth(1).expect("a load");
        assert!(rows.iter().any(|row| row[1].contains(load)), "{load} of {line}");
        if let Some(rest) = line.split(" · ").find_map(|part| part.strip_prefix("rest ")) {
            assert!(rows.iter().any(|row| row[2] == rest), "{rest} of {line}");
        }
    }
    for row in &rows {
        assert_eq!(row.len(), 6, "{row:?}");
        assert!(row[3].contains("class=\"box\"") && row[5].contains("class=\"box\""), "{row:?}");
        // A cluster's call says its blocks: each has a box.
        let blocks = row[1].split(')').next().and_then(|call| call.strip_prefix('('));
        let parts = blocks.map_or(1, |blocks| blocks.split(" + ").count());
        assert!(row[4].matches("class=\"box\"").count() >= parts, "{row:?}");
    }
    for nothing in ["<script", "<img", "<link", "http:", "https:", "url("] {
        assert!(!page.contains(nothing), "{nothing} has no place on paper");
    }
    // Looking at paper records nothing.
    let again: Value =
        serde_json::from_str(&text(&store, &["today", "--demo", "--json"])).expect("JSON");
    assert_eq!(today, again);
}

#[test]
fn a_week_has_a_page_for_each_of_its_sessions() {
    let (_folder, store) = folder();
    let weeks: Value =
        serde_json::from_str(&text(&store, &["weeks", "--demo", "--json"])).expect("JSON");
    let current = weeks["weeks"]["weeks"]["weeks"]
        .as_array()
        .expect("weeks")
        .iter()
        .find(|week| week["current"] == true)
        .expect("the demo stands in a week");
    let sessions = current["rows"].as_array().expect("rows").len();
    let page = text(&store, &["plan", "show", "--print", "--demo"]);
    assert_eq!(page.matches("<section>").count(), sessions, "{page}");
    let none = barwright(&store, &["plan", "show", "--print", "--demo", "--week", "70000"]);
    assert_eq!(none.status.code(), Some(2), "{none:?}");
}

const HOSTILE: &str = r#"
name = "<script>alert(1)</script>"
weeks = 1

[[exercise]]
name = "\"><img src=x onerror=alert(2)>"
like = "Back squat"

[[session]]
name = "</title></style><b>Legs & co"

[[session.exercise]]
name = "\"><img src=x onerror=alert(2)>"
sets = 3
reps = 5
load = "100 kg"
technique = "<i>wide</i>"
cues = ["</td></tr><svg onload=alert(3)>", "&lt;b&gt;"]
"#;

#[test]
fn names_from_a_file_are_text_and_nothing_else() {
    let (folder, store) = folder();
    let file = folder.path().join("hostile.toml");
    std::fs::write(&file, HOSTILE).expect("it can be written");
    let file = file.to_str().expect("a path");
    let page = text(&store, &["plan", "show", file, "--print"]);
    assert!(!store.exists(), "looking makes no records");
    for tag in ["<script", "<img", "<svg", "<b>", "<i>"] {
        assert!(!page.contains(tag), "{tag} came through in\n{page}");
    }
    for told in ["&lt;script&gt;alert(1)", "Legs &amp; co", "&amp;lt;b&amp;gt;"] {
        assert!(page.contains(told), "{told} is missing in\n{page}");
    }
    let rows = rows(&page);
    assert_eq!(rows.len(), 3, "{rows:?}");
    assert!(rows.iter().all(|row| row[1].contains("100 kg")), "{rows:?}");
    assert_eq!((page.matches("<style>").count(), page.matches("</style>").count()), (1, 1));
}

#[test]
fn a_file_with_faults_is_refused_with_their_places() {
    let (folder, store) = folder();
    let file = folder.path().join("faults.toml");
    std::fs::write(&file, HOSTILE.replace("reps = 5", "rep = 5")).expect("it can be written");
    let refused = barwright(&store, &["plan", "show", file.to_str().expect("a path"), "--print"]);
    assert_eq!(refused.status.code(), Some(2), "{refused:?}");
    assert!(String::from_utf8_lossy(&refused.stderr).contains("faults.toml:"), "{refused:?}");
}
