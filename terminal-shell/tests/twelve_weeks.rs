//! Twelve weeks by `barwright drive`, from the first session to the day of the test, with every rule
//! that a plan can name: each week's load of every lift worked out by hand below.
//!
//! One session a week, on Mondays. Week 1 is an ease-in, 6 a deload (10 % less of what is moved, and
//! none of it touches an owner), a week away comes before 9 (14 days with a week between the plan's
//! own sessions: seven beyond it, no lay-off), 12 is the test. The gym makes steps of 2.5 kg on the
//! bar, 1.25 kg on the belt and 5 kg of assistance. Body mass 82.4 kg.
//!
//! **Back squat**, as planned, max 160 kg: 65 % 104 → 105; 70 % 112 → 112.5; 72.5 % 116 → 115; 75 %
//! 120; 77.5 % 124 → 125; 65 % → 105; 75 % 120; 77.5 % → 125; 80 % 128 → 127.5; 82.5 % 132 → 132.5;
//! 85 % 136 → 135.
//!
//! **Front squat**, 1 × 5 at 75 % (120), RPE 6–7, as planned and by effort: 1: 90 % of it, 108 →
//! 107.5. 2: 120, called RPE 8, one point past the edge. 3: −4 % for that session, 115.2 → 115; on
//! target. 4, 5: 120 again; called 5 in reserve in 5, and percentages go up with the max alone. 6: 108 →
//! 107.5. 7: 120. 8: 120, a rep failed. 9: repeated, not above it, and made. 10: 120, failed. 11:
//! repeated.
//!
//! **Floor press**, 4 × 7 at 60 kg, two for two: 1: 54 → 55. 2: 60, last set 9. 3: 60, 9 again. 4:
//! 62.5, 8. 5: 62.5, 9. 6: 56.25 → 55, the lighter of two as near. 7: 62.5, 9: with that of 5 two
//! running, since 6 was under a cut and says nothing. 8: 65, 7. 9: 65. 10: 65, pain. 11: a tenth under
//! it, 58.5 → 57.5.
//!
//! **Assisted pull-up**, 3 × 6–10 with 20 kg of assistance, less of it: 1: 62.4 moved, 56.16 with 26.24 of
//! help → 25. 2: moved 62.4 × 10, none left, so 67.4 is good for 7.0 reps by Epley. 3: 15 of help; 7,
//! 7, 6. 4: aim 7, by one tap. 5: aim 8. 6: 67.4 less a tenth is 21.74 of help → 20, no aim. 7: aim 9.
//! 8: aim 10. 9: 10 of help. 10: aim 7. 11: aim 8.
//!
//! **Pull-up**, 4 × 5 with 10 kg more, more of it: 1: 92.4 less a tenth, 0.76 → 1.25. 2: 10. 3: 12.5,
//! one set of 4. 4: repeated, 4 again. 5: 94.9 − 5 % is 7.755 → 7.5, and made: the earlier load comes
//! back. 6: 94.9 less a tenth is 3.01 → 2.5. 7: 12.5. 8: 15. 9: 17.5. 10: 20. 11: 22.5.
//!
//! **Plank**, 30–45 s, double progression: 35 in week 3, then 40 and 45: a step on, the smallest on the
//! belt, 1.25 kg. 6: a tenth less, 1.125 → 1.25, from 30 s. 7: 30. 8: 35. 9: 40. 10: 45, a step on.
//! 11: 2.5, from 30 s.
//!
//! The numbers are our own rules (DEVELOPERS.md and docs/plan-format.md name their sources); the sums
//! were done on paper.

use std::io::{BufRead, BufReader, Write};
use std::process::{Child, ChildStdin, ChildStdout, Command, Stdio};

use barwright_player::gyms::CELLAR;
use serde_json::{Value, json};

const PLAN: &str = r#"
name = "Off-season"
weeks = 12

[warm_up]
ramp = "none"

[[week]]
number = 1
kind = "ease-in"

[[week]]
number = 6
kind = "deload"

[[week]]
number = 12
kind = "test"

[[session]]
name = "Boathouse"
day = "Monday"
weeks = "1-11"

[[session.exercise]]
name = "Back squat"
sets = 3
reps = 5
load.by_week = ["65 %", "70 %", "72.5 %", "75 %", "77.5 %", "65 %", "75 %", "77.5 %", "80 %", "82.5 %", "85 %", "85 %"]
next = "as planned"

[[session.exercise]]
name = "Front squat"
sets = 1
reps = 5
load = "75 %"
rpe = "6-7"
next = ["as planned", "by effort"]

[[session.exercise]]
name = "Floor press"
sets = 4
reps = 7
load = "60 kg"
next = "two for two"

[[session.exercise]]
name = "Assisted pull-up"
sets = 3
reps = "6-10"
load = "body - 20 kg"
next = "less assistance"

[[session.exercise]]
name = "Pull-up"
sets = 4
reps = 5
load = "body + 10 kg"
next = "more added load"

[[session.exercise]]
name = "Plank"
sets = 2
seconds = "30-45 s"
next = "double progression"

[[session]]
name = "Test"
day = "Monday"
weeks = 12

[[session.exercise]]
name = "Back squat"
test = { step = "2.5 %", most_tries = 5 }
"#;

/// The first load of each exercise, week by week.
const LOADS: [(&str, [&str; 11]); 6] = [
    (
        "Back squat",
        ["105", "112.5", "115", "120", "125", "105", "120", "125", "127.5", "132.5", "135"],
    ),
    (
        "Front squat",
        ["107.5", "120", "115", "120", "120", "107.5", "120", "120", "120", "120", "120"],
    ),
    ("Floor press", ["55", "60", "60", "62.5", "62.5", "55", "62.5", "65", "65", "65", "57.5"]),
    (
        "Assisted pull-up",
        ["-25", "-20", "-15", "-15", "-15", "-20", "-15", "-15", "-10", "-10", "-10"],
    ),
    ("Pull-up", ["1.25", "10", "12.5", "12.5", "7.5", "2.5", "12.5", "15", "17.5", "20", "22.5"]),
    (
        "Plank",
        [
            "Bodyweight",
            "Bodyweight",
            "Bodyweight",
            "Bodyweight",
            "Bodyweight",
            "1.25",
            "1.25",
            "1.25",
            "1.25",
            "1.25",
            "2.5",
        ],
    ),
];

/// What one tap records where the rule aims: repetitions of the assisted pull-up, seconds of the
/// plank.
const AIMS: [(&str, [u32; 11]); 2] = [
    ("Assisted pull-up", [6, 6, 6, 7, 8, 6, 9, 10, 6, 7, 8]),
    ("Plank", [30, 30, 35, 40, 45, 30, 30, 35, 40, 45, 30]),
];

/// What the lifter does otherwise than one tap says: amount, half repetitions left, ending.
fn done(week: usize, exercise: &str, set: usize) -> (Option<u32>, Option<u8>, &'static str) {
    match (exercise, week, set) {
        ("Front squat", 2, _) => (None, Some(4), "as_called"),
        ("Front squat", 3 | 7 | 9, _) => (None, Some(6), "as_called"),
        ("Front squat", 5, _) => (None, Some(10), "as_called"),
        ("Front squat", 8 | 10, _) => (Some(4), None, "failed"),
        ("Floor press", 2 | 3 | 5 | 7, 3) => (Some(9), None, "as_called"),
        ("Floor press", 4, 3) => (Some(8), None, "as_called"),
        ("Floor press", 10, 0) => (Some(5), None, "pain"),
        ("Assisted pull-up", 2, _) => (Some(10), Some(0), "as_called"),
        ("Assisted pull-up", 3, 0 | 1) => (Some(7), None, "as_called"),
        ("Pull-up", 3 | 4, 3) => (Some(4), None, "as_called"),
        _ => (None, None, "as_called"),
    }
}

struct Driver {
    child: Child,
    input: ChildStdin,
    output: BufReader<ChildStdout>,
    /// Minutes since the plan was adopted, on Monday 2 March 2026 at 18:00.
    minute: i64,
}

impl Driver {
    fn start(store: &std::path::Path) -> Self {
        let mut child = Command::new(env!("CARGO_BIN_EXE_barwright"))
            .args(["drive", "--locale", "en-GB", "--store"])
            .arg(store)
            .stdin(Stdio::piped())
            .stdout(Stdio::piped())
            .spawn()
            .expect("it starts");
        let input = child.stdin.take().expect("it is piped");
        let output = BufReader::new(child.stdout.take().expect("it is piped"));
        Self { child, input, output, minute: 0 }
    }

    fn ask(&mut self, what: &str, value: &Value) -> Value {
        let reading = json!({
            "wall_ms": 1_772_470_800_000_i64 + self.minute * 60_000,
            "offset_minutes": 60,
        });
        let line = json!({ "reading": reading, what: value });
        writeln!(self.input, "{line}").expect("it is read");
        self.input.flush().expect("it is read");
        let mut answer = String::new();
        self.output.read_line(&mut answer).expect("it answers");
        serde_json::from_str(&answer).unwrap_or_else(|error| panic!("{error}: {answer}"))
    }

    fn tap(&mut self, intent: Value) -> Value {
        let answer = self.ask("intent", &intent);
        assert!(answer["answer"].is_object(), "{intent}: {answer}");
        self.minute += 1;
        answer["answer"]["screen"].clone()
    }

    /// The floor; none when nothing is left to do.
    fn floor(&mut self) -> Option<Value> {
        let answer = self.ask("view", &json!({ "floor": {} }));
        let floor = answer["answer"]["screen"]["floor"]["floor"].clone();
        (!floor["part"].is_null()).then_some(floor)
    }

    fn record(&mut self, (amount, left, ended): (Option<u32>, Option<u8>, &str)) {
        self.tap(json!({ "record": { "amount": amount, "left_halves": left, "ended": ended } }));
    }
}

/// "+12.5 kg" and "15 kg of assistance" as signed figures.
fn figure(total: &str) -> String {
    let figure = total.trim_start_matches('+').split(' ').next().unwrap_or_default();
    if total.contains("assistance") {
        format!("-{}", figure.trim_start_matches(['-', '−']))
    } else {
        figure.to_owned()
    }
}

#[test]
fn every_rule_from_the_first_session_to_the_test() {
    let folder = tempfile::tempdir().expect("a folder for the test");
    let mut driver = Driver::start(&folder.path().join("records.db"));
    for intent in [
        json!({ "add_gym": { "text": CELLAR } }),
        json!({ "choose_gym": { "name": "Cellar" } }),
        json!({ "adopt_plan": { "text": PLAN } }),
        json!({ "write": { "field": "body-mass", "text": "82.4 kg" } }),
        json!({ "write": { "field": "max:back-squat", "text": "160 kg" } }),
        json!({ "write": { "field": "max:front-squat", "text": "160 kg" } }),
        json!({ "arrange": { "session": "9.1", "how": { "travel": { "weeks": 1 } } } }),
    ] {
        driver.tap(intent);
    }
    let mut wrong = Vec::new();
    let mut asked = String::new();
    for (week, mondays) in (1..=11_usize).zip(0_i64..) {
        // The week away lies before the ninth.
        let weeks = mondays + i64::from(week >= 9);
        driver.minute = weeks * 7 * 24 * 60 + 30;
        let today =
            driver.ask("view", &json!("weeks"))["answer"]["screen"]["weeks"]["weeks"].clone();
        let subtitle = today["subtitle"].as_str().unwrap_or_default();
        let here = format!("week {week} of 12, next Boathouse, ");
        assert!(subtitle.starts_with(&here) && subtitle.ends_with(", today"), "{subtitle}");
        driver.tap(json!({ "begin": {} }));
        let (mut exercise, mut set) = (String::new(), 0);
        while let Some(floor) = driver.floor() {
            let name = floor["call"]["exercise"].as_str().unwrap_or_default().to_owned();
            set = if name == exercise { set + 1 } else { 0 };
            exercise = name;
            if set == 0 {
                let total = floor["bar"]["total"].as_str().unwrap_or_default();
                for (_, loads) in LOADS.iter().filter(|(name, _)| *name == exercise) {
                    if figure(total) != loads[week - 1] {
                        let (want, why) = (loads[week - 1], &floor["call"]["why"]);
                        wrong.push(format!("week {week} {exercise}: {total}, not {want}: {why}"));
                    }
                }
                for (_, aims) in AIMS.iter().filter(|(name, _)| *name == exercise) {
                    let shown = floor["thumb"]["figure"]["text"].as_str().unwrap_or_default();
                    if shown != aims[week - 1].to_string() {
                        wrong.push(format!(
                            "week {week} {exercise} aims {shown}: {}",
                            floor["call"]["why"]
                        ));
                    }
                }
                if week == 11 && exercise == "Floor press" {
                    asked = floor["call"]["why"].to_string();
                }
            }
            driver.record(done(week, &exercise, set));
        }
        let tally = driver.tap(json!("finish"));
        let changes = tally["tally"]["tally"]["changes"].as_array().map_or(0, Vec::len);
        // Each exercise says what it will be and why, but after the last of them.
        assert!(changes >= 6, "week {week}: {tally}");
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
    assert!(asked.contains("pain since Mon 11 May"), "{asked}");

    // The test, of a max of 160 kg: 148 → 147.5, + 5 % 154.875 → 155, + 2.5 % 158.875 → 160, 164 → 165,
    // 169.125 → 170, missed: five tries. 65 % of 165 is 107.25 → 107.5, of 160 it was 105.
    driver.minute = 12 * 7 * 24 * 60;
    driver.tap(json!({ "begin": {} }));
    let mut singles = Vec::new();
    while let Some(floor) = driver.floor() {
        let total = floor["bar"]["total"].as_str().unwrap_or_default().to_owned();
        let warm_up =
            floor["call"]["sentence"].as_str().is_some_and(|said| said.starts_with("Ramp set"));
        if !warm_up {
            singles.push(figure(&total));
        }
        let missed = total == "170 kg";
        driver.record((None, None, if missed { "failed" } else { "as_called" }));
    }
    assert_eq!(singles, ["147.5", "155", "160", "165", "170"]);
    let tally = driver.tap(json!("finish"))["tally"]["tally"].clone();
    let rows: Vec<&str> = tally["changes"]
        .as_array()
        .map(|rows| rows.iter().filter_map(|row| row["text"].as_str()).collect())
        .unwrap_or_default();
    let max =
        rows.iter().position(|row| row.starts_with("Reference max")).expect("a row of the max");
    assert_eq!(rows[max], "Reference max of Back squat: 165 kg, tested; was 160 kg");
    assert_eq!(rows[max + 1], "Week 1, Boathouse: Back squat 107.5 kg, was 105 kg");
    let first = &tally["moved"][0];
    assert_eq!((&first["before"], &first["after"]), (&json!("105"), &json!("107.5")));
    drop(driver.input);
    assert!(driver.child.wait().expect("it ends").success());
}
