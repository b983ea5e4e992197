//! The exercises there are, and one's own.

use barwright_domain::catalogue::{Exercise, Muscle, Tongue};
use barwright_domain::quantity::Numerals;

use super::{muscle, words};

/// The title of the list.
pub fn title() -> &'static str {
    "Exercises"
}

/// How many there are, or were found.
pub fn found(count: usize, words: &str) -> String {
    let count = words::count(count, "exercise", "exercises");
    match words {
        "" => count,
        words => format!("{count} for “{words}”"),
    }
}

/// Nothing has all the words.
pub fn near(words: &str, any: bool) -> String {
    let words: String = words.chars().take(60).collect();
    if any {
        format!("None for “{words}”. These may be meant.")
    } else {
        format!("None for “{words}”. Look for a name, a muscle or what it needs.")
    }
}

/// The field that looks for one.
pub fn find() -> (&'static str, &'static str) {
    ("Look for", "squat, or triceps dumbbell")
}

/// A key that shows the list.
pub fn open() -> (&'static str, &'static str) {
    ("Exercises", "Show every exercise, to read or to make one")
}

fn muscles(all: &[Muscle]) -> String {
    let names: Vec<String> = all.iter().map(|one| muscle::name(*one).to_lowercase()).collect();
    names.join(", ")
}

fn needs(exercise: &Exercise) -> String {
    let all = std::iter::once(exercise.implement.as_ref()).chain(exercise.needs.iter());
    all.map(|slug| slug.replace('-', " ")).collect::<Vec<_>>().join(", ")
}

/// What it trains and needs, in a line.
pub fn detail(exercise: &Exercise) -> String {
    format!("{} · {}", words::sentence_case(&muscles(&exercise.direct)), needs(exercise))
}

/// A line of its page.
pub fn line(key: &str) -> &'static str {
    match key {
        "name" => "Name",
        "also" => "Also called",
        "like" => "Like",
        "movement" => "Movement",
        "implement" => "Lifted with",
        "needs" => "Needs",
        "direct" => "Trains",
        "indirect" => "Helped by",
        "one_sided" => "One side at a time",
        "body_share" => "Share of the body that moves",
        "counted" => "The load is",
        "measured_in" => "A set counts",
        "main_lift" => "A barbell main lift, with a max",
        "from_floor" => "Begins on the floor",
        "over_body" => "The load is over the body",
        _ => "Value",
    }
}

/// What is read of a line.
pub fn value(key: &str, exercise: &Exercise) -> String {
    match key {
        "name" => words::exercise(exercise),
        "also" => exercise.also_in(Tongue::English).collect::<Vec<_>>().join(", "),
        "movement" => word(exercise.movement.slug()),
        "implement" => word(&exercise.implement),
        "needs" => words::sentence_case(
            &exercise.needs.iter().map(|one| one.replace('-', " ")).collect::<Vec<_>>().join(", "),
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
    words::sentence_case(&word.replace('-', " "))
}

/// How a load is counted, or what a set is measured in.
pub fn counted(word: &str) -> String {
    match word {
        "total" => "all that is lifted".to_owned(),
        "each hand" => "what each hand holds".to_owned(),
        "one" => "the one that is held".to_owned(),
        "stack" => "what the pin says".to_owned(),
        "each side" => "what is on one side".to_owned(),
        "added" => "added to the body".to_owned(),
        "unnumbered" => "without a number".to_owned(),
        "reps" => "repetitions".to_owned(),
        other => other.replace('-', " "),
    }
}

/// Yes or no.
pub fn flag(on: bool) -> &'static str {
    if on { "yes" } else { "no" }
}

/// What would do in a field.
pub fn hint(key: &str) -> &'static str {
    match key {
        "name" => "Cellar squat",
        "also" => "deep squat, squat to the box",
        "like" => "Back squat",
        "implement" => "barbell",
        "needs" => "rack, bench",
        "body_share" => "65 %",
        _ => "",
    }
}

/// Its history.
pub fn history() -> &'static str {
    "Over time"
}

/// One like it.
pub fn like(name: &str) -> (&'static str, String) {
    ("Make one like it", format!("Make an exercise of your own like {name}"))
}

/// Put right.
pub fn mend(name: &str) -> (&'static str, String) {
    ("Change it", format!("Change {name}, which is your own"))
}

/// The one that is being made.
pub fn go_on() -> (&'static str, &'static str) {
    ("Go on making one", "Show the exercise that is being made")
}

/// The name of one that is begun like another.
pub fn own_name(like: &str) -> String {
    format!("{like}, my own")
}

/// The title of one that is being made.
pub fn making(name: &str) -> String {
    format!("Exercise: {name}")
}
