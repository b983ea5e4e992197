//! The exercises there are, and one's own.

use barwright_domain::catalogue::{Exercise, Muscle, Tongue};
use barwright_domain::quantity::Numerals;

use super::{muscle, named, words};

/// The title of the list.
pub fn title() -> &'static str {
    "Übungen"
}

/// How many there are, or were found.
pub fn found(count: usize, words: &str) -> String {
    let count = words::count(count, "Übung", "Übungen");
    match words {
        "" => count,
        words => format!("{count} zu „{words}“"),
    }
}

/// Nothing has all the words.
pub fn near(words: &str, any: bool) -> String {
    let words: String = words.chars().take(60).collect();
    if any {
        format!("Keine zu „{words}“. Vielleicht ist eine von diesen gemeint.")
    } else {
        format!("Keine zu „{words}“. Such nach einem Namen, einem Muskel oder einem Gerät.")
    }
}

/// The field that looks for one.
pub fn find() -> (&'static str, &'static str) {
    ("Suchen", "Kniebeuge oder Trizeps Kurzhantel")
}

/// A key that shows the list.
pub fn open() -> (&'static str, &'static str) {
    ("Übungen", "Alle Übungen zeigen, zum Lesen oder um eine eigene anzulegen")
}

fn muscles(all: &[Muscle]) -> String {
    let names: Vec<String> = all.iter().map(|one| muscle::in_line(*one).to_owned()).collect();
    names.join(", ")
}

fn needs(exercise: &Exercise) -> String {
    let all = std::iter::once(exercise.implement.as_ref()).chain(exercise.needs.iter());
    all.map(named::thing).collect::<Vec<_>>().join(", ")
}

/// What it trains and needs, in a line.
pub fn detail(exercise: &Exercise) -> String {
    format!("{} · {}", words::sentence_case(&muscles(&exercise.direct)), needs(exercise))
}

/// A line of its page.
pub fn line(key: &str) -> &'static str {
    match key {
        "name" => "Name",
        "also" => "Auch genannt",
        "like" => "Wie",
        "movement" => "Bewegung",
        "implement" => "Gehoben mit",
        "needs" => "Braucht",
        "direct" => "Trainiert",
        "indirect" => "Es helfen",
        "one_sided" => "Eine Seite nach der anderen",
        "body_share" => "Anteil des Körpers, der bewegt wird",
        "counted" => "Das Gewicht ist",
        "measured_in" => "Ein Satz zählt",
        "main_lift" => "Hauptübung mit Langhantel, mit Maximum",
        "from_floor" => "Beginnt am Boden",
        "over_body" => "Das Gewicht ist über dem Körper",
        _ => "Wert",
    }
}

/// What is read of a line.
pub fn value(key: &str, exercise: &Exercise) -> String {
    match key {
        "name" => words::exercise(exercise),
        "also" => exercise.also_in(Tongue::German).collect::<Vec<_>>().join(", "),
        "movement" => words::sentence_case(&named::movement(exercise.movement.slug())),
        "implement" => words::sentence_case(&named::thing(&exercise.implement)),
        "needs" => words::sentence_case(
            &exercise.needs.iter().map(named::thing).collect::<Vec<_>>().join(", "),
        ),
        "direct" => words::sentence_case(&muscles(&exercise.direct)),
        "indirect" => words::sentence_case(&muscles(&exercise.indirect)),
        "one_sided" => flag(exercise.one_sided).to_owned(),
        "body_share" => exercise.body_share.print(Numerals::Point),
        "main_lift" => flag(exercise.main_lift).to_owned(),
        "from_floor" => flag(exercise.from_floor).to_owned(),
        "over_body" => flag(exercise.over_body).to_owned(),
        _ => String::new(),
    }
}

/// A word of the file as it is said.
pub fn word(word: &str) -> String {
    words::sentence_case(&named::any(word))
}

/// How a load is counted, or what a set is measured in.
pub fn counted(word: &str) -> String {
    match word {
        "total" => "alles, was gehoben wird".to_owned(),
        "each hand" => "was jede Hand hält".to_owned(),
        "one" => "das eine, das gehalten wird".to_owned(),
        "stack" => "was der Stift sagt".to_owned(),
        "each side" => "was auf einer Seite ist".to_owned(),
        "added" => "zum Körper dazu".to_owned(),
        "unnumbered" => "ohne Zahl".to_owned(),
        "reps" => "Wiederholungen".to_owned(),
        "seconds" => "Sekunden".to_owned(),
        "metres" => "Meter".to_owned(),
        other => other.replace('-', " "),
    }
}

/// Yes or no.
pub fn flag(on: bool) -> &'static str {
    if on { "ja" } else { "nein" }
}

/// What would do in a field.
pub fn hint(key: &str) -> &'static str {
    match key {
        "name" => "Kellerkniebeuge",
        "also" => "tiefe Beuge, Beuge auf den Kasten",
        "like" => "Kniebeuge",
        "implement" => "barbell",
        "needs" => "rack, bench",
        "body_share" => "65 %",
        _ => "",
    }
}

/// Its history.
pub fn history() -> &'static str {
    "Verlauf"
}

/// One like it.
pub fn like(name: &str) -> (&'static str, String) {
    ("Eine ähnliche anlegen", format!("Eine eigene Übung wie {name} anlegen"))
}

/// Put right.
pub fn mend(name: &str) -> (&'static str, String) {
    ("Ändern", format!("{name} ändern, deine eigene Übung"))
}

/// The one that is being made.
pub fn go_on() -> (&'static str, &'static str) {
    ("Weiter am Entwurf", "Die Übung zeigen, die in Arbeit ist")
}

/// The name of one that is begun like another.
pub fn own_name(like: &str) -> String {
    format!("{like}, meine")
}

/// The title of one that is being made.
pub fn making(name: &str) -> String {
    format!("Übung: {name}")
}
