//! Words of a plan that is made by hand.

use super::words;

/// The title.
pub fn title(name: &str) -> String {
    format!("Plan: {name}")
}

/// A plan that is begun.
pub fn new_plan() -> &'static str {
    "My plan"
}

/// A session that is begun, by how many there are.
pub fn new_session(count: usize) -> &'static str {
    ["A", "B", "C", "D", "E", "F", "G"].get(count).copied().unwrap_or("One more")
}

/// A key: what it comes to, before it is taken up.
pub fn see() -> (&'static str, &'static str) {
    ("See it", "See what it comes to, and which loads change, before it is taken up")
}

/// A key.
pub fn add_session() -> &'static str {
    "Add a session"
}

/// A key of a session: another one like it.
pub fn session_again() -> &'static str {
    "Copy"
}

/// A key.
pub fn add_exercise() -> &'static str {
    "Add an exercise"
}

/// A key.
pub fn add_row() -> &'static str {
    "Add a row of sets"
}

/// A key of an exercise that was found.
pub fn add_this() -> &'static str {
    "Add it"
}

/// A key.
pub fn earlier() -> &'static str {
    "Earlier"
}

/// A heading.
pub fn weeks() -> &'static str {
    "Weeks"
}

/// A heading.
pub fn sessions() -> &'static str {
    "Sessions"
}

/// A heading.
pub fn exercises() -> &'static str {
    "Exercises"
}

/// A week, from 1.
pub fn week(week: usize) -> String {
    format!("Week {week}")
}

/// A week that the file writes together with others.
pub fn with_others() -> &'static str {
    "written together with other weeks in the file: kept as it is"
}

/// A session: its day, and how many exercises.
pub fn of_session(day: &str, exercises: usize) -> String {
    let day = if day.is_empty() { "in turn" } else { day };
    format!("{day} · {}", words::count(exercises, "exercise", "exercises"))
}

/// So many rows of sets.
pub fn of_rows(rows: usize) -> String {
    words::count(rows, "row", "rows")
}

/// A row of sets, from 1.
pub fn row(row: usize) -> String {
    format!("Row {row}")
}

/// A line that opens what else can be said.
pub fn more() -> &'static str {
    "More: tempo, parts, drops, set-up\u{2026}"
}

/// What this form shows and does not change.
pub fn kept() -> &'static str {
    "kept as it is written; changed in the file"
}

/// So many of something that is kept.
pub fn so_many(count: usize) -> String {
    words::count(count, "entry", "entries")
}

/// What stands elsewhere in the plan.
pub fn elsewhere(count: usize) -> String {
    format!("{} elsewhere in the plan.", words::count(count, "remark stands", "remarks stand"))
}

/// A key: one for each week.
pub fn week_by_week() -> &'static str {
    "Week by week"
}

/// A key: the same in all weeks.
pub fn all_weeks() -> &'static str {
    "The same in all weeks"
}

/// A line that is written week by week.
pub fn by_week(label: &str) -> String {
    format!("{label}, week by week")
}

/// How weeks are typed.
pub fn by_week_hint() -> &'static str {
    "70 %, 75 %, 80 %, 60 %; or 5, 5, 5; 5, 3, 1 for weeks of sets"
}

/// What a line is of, by its key in the file.
pub fn key(key: &str) -> String {
    let said = match key {
        "left" => "Reps in reserve",
        "rpe" => "RPE",
        "reps" => "Reps",
        "load" => "Load",
        "next" => "Next time",
        "every" => "A set every",
        "on_sets" => "Parts on sets",
        "drop" => "Drops",
        "cluster.blocks" => "Cluster: blocks",
        "cluster.pause" => "Cluster: pause",
        "rest_pause.each" => "Rest-pause: reps a mini-set",
        "rest_pause.pause" => "Rest-pause: pause",
        "rest_pause.total" => "Rest-pause: total",
        "climb.step" => "Climb: step",
        "climb.most_sets" => "Climb: most sets",
        "repeat.most_sets" => "Repeat: most sets",
        "total.reps" => "Total reps",
        "test.step" => "Test: step",
        "counted" => "How the number is meant",
        "percent_of" => "Percent of",
        key => return words::sentence_case(&key.replace(['.', '_'], " ")),
    };
    said.to_owned()
}

/// What would do at a key.
pub fn example(key: &str) -> &'static str {
    match key {
        "name" => "Back squat",
        "reps" => "5, or 6-10, or 5, 3, 1 set by set",
        "seconds" | "metres" => "30",
        "load" => "100 kg, 77.5 %, by feel, body + 10 kg",
        "left" => "1-2",
        "rpe" => "8",
        "rest" | "every" | "cluster.pause" | "rest_pause.pause" => "2:30",
        "next" => "double progression",
        "superset" => "a",
        "substitutes" => "Front squat, Leg press",
        "tempo" => "3-0-X-0",
        "cues" => "chest up, knees out",
        "on_sets" => "last",
        "drop" => "20 %, 20 %",
        "cluster.blocks" => "2, 2, 2",
        "weeks" => "4, or 1-3 where it is done",
        "day" => "Monday",
        "side" => "left",
        "climb.step" | "test.step" => "2.5 %",
        "misses" => "repeat, 5 % less, hold",
        "wear" => "belt",
        "percent_of" => "Back squat",
        _ => "",
    }
}

/// What is written at a key, in an exercise's short line.
pub fn said(key: &str, said: &str) -> String {
    // What is written with its own unit, or as words, says it itself.
    let bare =
        said.chars().all(|one| one.is_ascii_digit() || matches!(one, '-' | '.' | ',' | ' ' | '+'));
    match key {
        _ if !bare => said.to_owned(),
        "sets" if said == "1" => "1 set".to_owned(),
        "sets" => format!("{said} sets"),
        "reps" if said == "1" => "1 rep".to_owned(),
        "reps" => format!("{said} reps"),
        "seconds" => format!("{said} s"),
        "metres" => format!("{said} m"),
        "left" => format!("{said} in reserve"),
        "rpe" => format!("RPE {said}"),
        _ => said.to_owned(),
    }
}

/// A word of the file that is stepped to, as it is shown.
pub fn word(word: &str) -> String {
    match word {
        "true" => "yes".to_owned(),
        "false" => "no".to_owned(),
        _ => word.to_owned(),
    }
}

/// A key: the plan that is being made.
pub fn go_on() -> (&'static str, &'static str) {
    ("Go on with the draft", "Go on with the plan that is being made")
}

/// A key.
pub fn make() -> (&'static str, &'static str) {
    ("Make a plan", "Make a plan from an empty sheet")
}

/// A key.
pub fn mend() -> (&'static str, &'static str) {
    ("Mend this plan", "Change the plan that is on; what that changes is shown first")
}

/// A key.
pub fn copy() -> (&'static str, &'static str) {
    ("Copy this plan", "Make another plan from a copy of this one")
}
