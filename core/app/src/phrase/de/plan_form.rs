//! Words of a plan that is made by hand.

use super::{date, words};

/// The title.
pub fn title(name: &str) -> String {
    format!("Plan: {name}")
}

/// A plan that is begun.
pub fn new_plan() -> &'static str {
    "Mein Plan"
}

/// A session that is begun, by how many there are.
pub fn new_session(count: usize) -> &'static str {
    ["A", "B", "C", "D", "E", "F", "G"].get(count).copied().unwrap_or("Eine mehr")
}

/// A key: what it comes to, before it is taken up.
pub fn see() -> (&'static str, &'static str) {
    ("Ansehen", "Ansehen, was herauskommt und welche Gewichte sich ändern, bevor er gilt")
}

/// A key.
pub fn add_session() -> &'static str {
    "Einheit hinzufügen"
}

/// A key of a session: another one like it.
pub fn session_again() -> &'static str {
    "Kopieren"
}

/// A key.
pub fn add_exercise() -> &'static str {
    "Übung hinzufügen"
}

/// A key.
pub fn add_row() -> &'static str {
    "Zeile mit Sätzen hinzufügen"
}

/// A key of an exercise that was found.
pub fn add_this() -> &'static str {
    "Hinzufügen"
}

/// A key.
pub fn earlier() -> &'static str {
    "Früher"
}

/// A heading.
pub fn weeks() -> &'static str {
    "Wochen"
}

/// A heading.
pub fn sessions() -> &'static str {
    "Einheiten"
}

/// A heading.
pub fn exercises() -> &'static str {
    "Übungen"
}

/// A week, from 1.
pub fn week(week: usize) -> String {
    format!("Woche {week}")
}

/// A week that the file writes together with others.
pub fn with_others() -> &'static str {
    "in der Datei zusammen mit anderen Wochen geschrieben: bleibt, wie es ist"
}

/// A session: its day, and how many exercises.
pub fn of_session(day: &str, exercises: usize) -> String {
    let day = match (day, day.parse()) {
        ("", _) => "reihum",
        (_, Ok(weekday)) => date::weekday(weekday),
        (as_written, Err(_)) => as_written,
    };
    format!("{day} · {}", words::count(exercises, "Übung", "Übungen"))
}

/// So many rows of sets.
pub fn of_rows(rows: usize) -> String {
    words::count(rows, "Zeile", "Zeilen")
}

/// A row of sets, from 1.
pub fn row(row: usize) -> String {
    format!("Zeile {row}")
}

/// A line that opens what else can be said.
pub fn more() -> &'static str {
    "Mehr: Tempo, Teile, Drops, Einstellung\u{2026}"
}

/// What this form shows and does not change.
pub fn kept() -> &'static str {
    "bleibt, wie es geschrieben ist; zu ändern in der Datei"
}

/// So many of something that is kept.
pub fn so_many(count: usize) -> String {
    words::count(count, "Eintrag", "Einträge")
}

/// What stands elsewhere in the plan.
pub fn elsewhere(count: usize) -> String {
    format!("{} anderswo im Plan.", words::count(count, "Hinweis steht", "Hinweise stehen"))
}

/// A key: one for each week.
pub fn week_by_week() -> &'static str {
    "Woche für Woche"
}

/// A key: the same in all weeks.
pub fn all_weeks() -> &'static str {
    "In allen Wochen gleich"
}

/// A line that is written week by week.
pub fn by_week(label: &str) -> String {
    format!("{label}, Woche für Woche")
}

/// How weeks are typed.
pub fn by_week_hint() -> &'static str {
    "70 %, 75 %, 80 %, 60 %; oder 5, 5, 5; 5, 3, 1 für Wochen aus Sätzen"
}

/// What a line is of, by its key in the file.
pub fn key(key: &str) -> String {
    let said = match key {
        "about" => "Beschreibung",
        "name" => "Name",
        "day" => "Tag",
        "minutes" => "Minuten",
        "weeks" => "Wochen",
        "goal" => "Ziel",
        "sets" => "Sätze",
        "seconds" => "Sekunden",
        "metres" => "Meter",
        "rest" => "Pause",
        "superset" => "Supersatz",
        "optional" => "Freiwillig",
        "substitutes" => "Ersatzübungen",
        "keep" => "Immer behalten",
        "tempo" => "Tempo",
        "technique" => "Technik",
        "cues" => "Hinweise",
        "speed" => "Auf Schnelligkeit",
        "side" => "Seite",
        "sides" => "Seiten",
        "track" => "Gewicht geteilt mit",
        "ramp" => "Aufwärmsätze",
        "warm_up" => "Aufwärmen",
        "wear" => "Getragen",
        "misses" => "Nach Fehlversuchen",
        "kind" => "Art",
        "climb" => "Hinauf",
        "cluster" => "Cluster",
        "rest_pause" => "Rest-Pause",
        "repeat" => "Wiederholt",
        "total" => "Insgesamt",
        "test" => "Test",
        "ranges" => "Teilbewegungen",
        "continued" => "Fortgesetzt mit",
        "part_techniques" => "Techniken der Teile",
        "set_up" => "Einstellung",
        "set_up.pins" => "Einstellung: Ablagen",
        "set_up.seat" => "Einstellung: Sitz",
        "set_up.attachment" => "Einstellung: Griff",
        "set_up.bench" => "Einstellung: Bank",
        "exercise" => "Eigene Übungen",
        "accept" => "Angenommene Hinweise",
        "deload" => "Entlastung",
        "ease_in" => "Einstieg",
        "lay_off" => "Trainingspause",
        "load_off" => "Gewicht weniger",
        "sets_off" => "Sätze weniger",
        "more_left" => "Mehr in Reserve",
        "max" => "Maximum",
        "raise_max" => "Maximum anheben",
        "working_max" => "Trainingsmaximum",
        "left" => "Wdh. in Reserve",
        "rpe" => "RPE",
        "reps" => "Wdh.",
        "load" => "Gewicht",
        "next" => "Nächstes Mal",
        "every" => "Ein Satz alle",
        "on_sets" => "Teile bei Sätzen",
        "drop" => "Drops",
        "cluster.blocks" => "Cluster: Blöcke",
        "cluster.pause" => "Cluster: Pause",
        "rest_pause.each" => "Rest-Pause: Wdh. je Minisatz",
        "rest_pause.pause" => "Rest-Pause: Pause",
        "rest_pause.total" => "Rest-Pause: insgesamt",
        "climb.step" => "Hinauf: Schritt",
        "climb.most_sets" => "Hinauf: höchstens Sätze",
        "repeat.most_sets" => "Wiederholt: höchstens Sätze",
        "total.reps" => "Wdh. insgesamt",
        "test.step" => "Test: Schritt",
        "counted" => "Wie die Zahl gemeint ist",
        "percent_of" => "Prozent von",
        key => return words::sentence_case(&key.replace(['.', '_'], " ")),
    };
    said.to_owned()
}

/// What would do at a key.
pub fn example(key: &str) -> &'static str {
    match key {
        "name" => "Kniebeuge",
        "reps" => "5, oder 6-10, oder 5, 3, 1 Satz für Satz",
        "seconds" | "metres" => "30",
        "load" => "100 kg, 77.5 %, by feel, body + 10 kg",
        "left" => "1-2",
        "rpe" => "8",
        "rest" | "every" | "cluster.pause" | "rest_pause.pause" => "2:30",
        "next" => "double progression",
        "superset" => "a",
        "substitutes" => "Frontkniebeuge, Beinpresse",
        "tempo" => "3-0-X-0",
        "cues" => "Brust raus, Knie nach außen",
        "on_sets" => "last",
        "drop" => "20 %, 20 %",
        "cluster.blocks" => "2, 2, 2",
        "weeks" => "4, oder 1-3, wo es gemacht wird",
        "day" => "Monday",
        "side" => "left",
        "climb.step" | "test.step" => "2.5 %",
        "misses" => "repeat, 5 % less, hold",
        "wear" => "belt",
        "percent_of" => "Kniebeuge",
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
        "sets" if said == "1" => "1 Satz".to_owned(),
        "sets" => format!("{said} Sätze"),
        "reps" => format!("{said} Wdh."),
        "seconds" => format!("{said} s"),
        "metres" => format!("{said} m"),
        "left" => format!("{said} in Reserve"),
        "rpe" => format!("RPE {said}"),
        _ => said.to_owned(),
    }
}

/// A word of the file that is stepped to, as it is shown.
pub fn word(word: &str) -> String {
    let said = match word {
        "true" => "ja",
        "false" => "nein",
        "ordinary" => "normal",
        "ease-in" => "Einstieg",
        "deload" => "Entlastung",
        "test" => "Test",
        "strength" => "Kraft",
        "size" => "Masse",
        "as planned" => "wie geplant",
        "double progression" => "doppelte Steigerung",
        "two for two" => "Zwei für zwei",
        "add when made" => "mehr, wenn geschafft",
        "by effort" => "nach Anstrengung",
        "less assistance" => "weniger Unterstützung",
        "more added load" => "mehr Zusatzgewicht",
        "Monday" => "Montag",
        "Tuesday" => "Dienstag",
        "Wednesday" => "Mittwoch",
        "Thursday" => "Donnerstag",
        "Friday" => "Freitag",
        "Saturday" => "Samstag",
        "Sunday" => "Sonntag",
        // What has no word of its own is the file's.
        other => other,
    };
    said.to_owned()
}

/// A key: the plan that is being made.
pub fn go_on() -> (&'static str, &'static str) {
    ("Weiter am Entwurf", "Weiter mit dem Plan, der in Arbeit ist")
}

/// A key.
pub fn make() -> (&'static str, &'static str) {
    ("Plan erstellen", "Einen Plan auf einem leeren Blatt erstellen")
}

/// A key.
pub fn mend() -> (&'static str, &'static str) {
    ("Diesen Plan ändern", "Den laufenden Plan ändern; was das ändert, wird zuerst gezeigt")
}

/// A key.
pub fn copy() -> (&'static str, &'static str) {
    ("Diesen Plan kopieren", "Aus einer Kopie dieses Plans einen anderen erstellen")
}
