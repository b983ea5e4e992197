//! `barwright rehearse` as a coach runs it: plans that stall, one that does not, and a file with
//! faults.

use std::process::{Command, Output};

fn barwright(arguments: &[&str], threads: &str) -> Output {
    Command::new(env!("CARGO_BIN_EXE_barwright"))
        .args(arguments)
        .env("LANG", "en_GB.UTF-8")
        .env("RAYON_NUM_THREADS", threads)
        .env_remove("LC_ALL")
        .output()
        .expect("the program starts")
}

fn file(name: &str, text: &str) -> String {
    let path = std::path::Path::new(env!("CARGO_TARGET_TMPDIR")).join(name);
    std::fs::write(&path, text).expect("the folder for tests can be written");
    path.to_str().expect("the path is text").to_owned()
}

/// Twelve weeks of one session with one press.
fn plan(reps: &str, left: &str, next: &str) -> String {
    format!(
        "name = \"Boathouse\"\nweeks = 12\nminutes = 45\n\n[[session]]\nname = \"Monday\"\n\n\
         [[session.exercise]]\nname = \"Floor press\"\nsets = 3\nreps = {reps}\nload = \"60 kg\"\n\
         left = \"{left}\"\nnext = {next}\n"
    )
}

fn found(path: &str) -> serde_json::Value {
    found_by(path, "80")
}

fn found_by(path: &str, lifters: &str) -> serde_json::Value {
    let output = barwright(&["rehearse", path, "--lifters", lifters, "--json"], "2");
    assert!(output.status.success(), "{output:?}");
    assert!(output.stderr.is_empty(), "no progress is shown where nobody looks: {output:?}");
    serde_json::from_slice(&output.stdout).expect("it prints JSON")
}

#[test]
fn a_step_that_is_too_big_for_the_range_stalls() {
    let text = plan("5", "1-2", "{ rule = \"double progression\", step = \"10 kg\" }");
    let path = file("too-big.toml", &text);
    let report = found(&path);
    assert_eq!(report["refused"], 0);
    let stalls = &report["findings"][0]["stalls"];
    assert!(stalls["share"].as_f64().expect("a share") >= 0.6, "{}", report["findings"]);
    assert_eq!(stalls["cause"]["step_too_big"]["step"], "10", "{stalls}");
    let weeks = report["lines"][0]["weeks"].as_array().expect("weeks");
    let (first, last) = (&weeks[0], &weeks[11]);
    assert_eq!((&first["load"]["low"], &first["stalled"]), (&"60".into(), &().into()));
    assert!(last["held"].as_f64() > Some(0.4), "{last}");

    let output = barwright(&["rehearse", &path, "--lifters", "80"], "2");
    let said = String::from_utf8_lossy(&output.stdout);
    let said = said.split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(said.contains("- Floor press (Monday): from week "), "{said}");
    assert!(said.contains("get no further: the step of 10 kg (17 %) would fall below"), "{said}");
}

#[test]
fn a_sensible_plan_does_not_stall() {
    let path = file("sensible.toml", &plan("\"6-10\"", "1-3", "\"double progression\""));
    let report = found(&path);
    assert_eq!(report["findings"], serde_json::json!([]));
    let weeks = report["lines"][0]["weeks"].as_array().expect("weeks");
    let kg = |at: usize, which: &str| -> f64 {
        let text = weeks[at]["load"][which].as_str().expect("a load");
        text.parse().expect("kilograms")
    };
    assert!(kg(11, "high") > kg(0, "high") && kg(11, "middle") >= kg(0, "middle"));
    assert!(weeks[11]["stalled"].as_f64() < Some(0.6), "{}", weeks[11]);
}

#[test]
fn a_load_that_nobody_has_runs_away() {
    // A kilogram a week by the plan's own numbers would be fine; five are not.
    let loads: Vec<String> = (0..12).map(|week| format!("\"{} kg\"", 60 + 5 * week)).collect();
    let text = plan("5", "1-2", "\"as planned\"")
        .replace("load = \"60 kg\"", &format!("load.by_week = [{}]", loads.join(", ")));
    let report = found(&file("away.toml", &text));
    let found = &report["findings"][0]["runs_away"];
    let from_week = found["from_week"].as_u64().expect("a week");
    assert!((2..=4).contains(&from_week), "{}", report["findings"]);
    assert!(found["share"].as_f64() > Some(0.5), "{found}");
}

#[test]
fn every_kind_of_set_is_played() {
    // The demo's plan has every kind of set in it, a test of a max at its end among them.
    let report = found_by(&file("demo.toml", barwright_app::demo::PLAN), "12");
    assert_eq!(report["refused"], 0);
    let lines = report["lines"].as_array().expect("lines");
    let test = lines.iter().find(|line| line["session"] == "Friday: squat test").expect("the test");
    let tested = &test["weeks"][0];
    // Singles near the max: heavier than any of the weeks before, and made or missed one by one.
    let squat = lines.iter().find(|line| line["exercise"] == "back-squat").expect("the squat");
    let kg = |week: &serde_json::Value| -> f64 {
        let text = week["load"]["middle"].as_str().expect("a load");
        text.parse().expect("kilograms")
    };
    assert!(kg(tested) > kg(&squat["weeks"][6]), "{tested}");
    for unit in ["reps", "seconds", "metres"] {
        assert!(lines.iter().any(|line| line["measure"] == unit), "{unit}");
    }
    // Every line is followed in every week that has it, and drawn in 80 columns.
    let path = file("demo.toml", barwright_app::demo::PLAN);
    let output = barwright(&["rehearse", &path, "--lifters", "12"], "2");
    let text = String::from_utf8(output.stdout).expect("it is text");
    assert!(text.contains("With fewer than 50 lifters"), "{text}");
    let widest = text.lines().map(|line| line.chars().count()).max();
    assert!(widest <= Some(80), "{widest:?}");
}

#[test]
fn the_same_lifters_on_one_core_and_on_three() {
    let path = file("same.toml", &plan("\"6-10\"", "1-2", "\"double progression\""));
    let run = |lifters, seed, threads| {
        let arguments = ["rehearse", &path, "--lifters", lifters, "--seed", seed];
        let output = barwright(&arguments, threads);
        assert!(output.status.success(), "{output:?}");
        output.stdout
    };
    assert_eq!(run("30", "5", "1"), run("30", "5", "3"));
    assert_ne!(run("30", "5", "1"), run("30", "6", "1"));
}

#[test]
fn a_plan_with_faults_is_refused_as_plan_check_does() {
    let path = file("faulty.toml", &plan("\"6-10\"", "1-2", "\"twice the load\""));
    let rehearsed = barwright(&["rehearse", &path], "2");
    assert_eq!(rehearsed.status.code(), Some(2));
    assert!(rehearsed.stdout.is_empty());
    let checked = barwright(&["plan", "check", &path], "2");
    assert_eq!(rehearsed.stderr, checked.stderr);
    assert!(String::from_utf8_lossy(&rehearsed.stderr).contains("faulty.toml:14:"));
    let none = barwright(&["rehearse", &path, "--lifters", "0"], "2");
    assert_eq!(none.status.code(), Some(2));
}

#[test]
fn the_sets_of_a_seed_are_the_same_on_any_number_of_cores_and_overwrite_nothing() {
    let path = file("sets.toml", &plan("5", "1-3", "\"two for two\""));
    let folder = tempfile::tempdir().expect("a folder for the test");
    let written = |name: &str, threads: &str| {
        let to = folder.path().join(name);
        let to = to.to_str().expect("a path");
        (barwright(&["rehearse", &path, "--lifters", "20", "--sets", to], threads), to.to_owned())
    };
    let read = |to: &str, file: &str| {
        std::fs::read_to_string(std::path::Path::new(to).join(file)).expect("it was written")
    };
    let ((one, at), (two, other)) = (written("one", "1"), written("two", "4"));
    assert!(one.status.success() && two.status.success(), "{one:?} {two:?}");
    let mut rows = 0;
    for part in 0..16 {
        let name = format!("sets-{part:02}.csv");
        let text = read(&at, &name);
        assert_eq!(text, read(&other, &name), "{name}");
        rows += text.lines().skip(1).count();
    }
    let told = String::from_utf8_lossy(&one.stdout).into_owned();
    assert!(told.contains(&format!("{rows} sets of 20 lifters")), "{told}");
    assert!(
        read(&at, "muscles.csv").contains("floor-press,triceps,1"),
        "as a general reader has it"
    );
    let before = read(&at, "sets-00.csv");
    let (again, _) = written("one", "1");
    assert_eq!(again.status.code(), Some(1), "{again:?}");
    assert_eq!(read(&at, "sets-00.csv"), before);
}

/// What it says is English whole where German is spoken; numbers are written as there.
#[test]
fn no_report_is_half_german() {
    let text = plan("5", "1-2", "{ rule = \"double progression\", step = \"2.5 kg\" }");
    let path = file("half-german.toml", &text);
    let said = |locale: &str| {
        let asked = ["rehearse", &path, "--lifters", "20", "--locale", locale];
        let output = barwright(&asked, "2");
        assert!(output.status.success(), "{output:?}");
        String::from_utf8_lossy(&output.stdout).into_owned()
    };
    let german = said("de-DE");
    assert!(german.contains("12 weeks by 20 invented lifters") && german.contains("62,5"));
    let words = |text: String| -> Vec<String> {
        text.split(|one: char| !one.is_alphabetic()).map(str::to_owned).collect()
    };
    assert_eq!(words(german), words(said("en-GB")));
}
