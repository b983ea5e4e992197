//! Words of a session that is changed for once.

use barwright_domain::catalogue::Exercise;
use barwright_domain::prescribe::Candidate;

use super::{floor, muscle, words};

/// The title.
pub fn title(session: &str) -> String {
    format!("{session}, changed for once")
}

/// How many changes there are.
pub fn subtitle(changes: usize) -> String {
    match changes {
        0 => "As the plan has it.".to_owned(),
        _ => format!(
            "{}, for this once. The plan stays as it is.",
            words::count(changes, "change", "changes")
        ),
    }
}

/// A key on Today.
pub fn open() -> (&'static str, &'static str) {
    ("Change it", "Change this session for once: swap, add, leave out, another order")
}

/// A key: this gym lacks something.
pub fn fit() -> (&'static str, &'static str) {
    ("Fit it to this gym", "Do what this gym has in the place of what it lacks")
}

/// A key.
pub fn add() -> (&'static str, &'static str) {
    ("Add an exercise", "Add an exercise at the end")
}

/// A key.
pub fn back() -> (&'static str, &'static str) {
    ("Undo", "Take the last change back")
}

/// A key.
pub fn as_planned() -> (&'static str, &'static str) {
    ("As planned", "Take all changes back")
}

/// A key.
pub fn to_session() -> &'static str {
    "Back to the session"
}

/// A key of an exercise.
pub fn instead(name: &str) -> (&'static str, String) {
    ("Swap", format!("Another exercise instead of {name}"))
}

/// A key of an exercise.
pub fn earlier(name: &str) -> (&'static str, String) {
    ("Earlier", format!("{name} a place earlier"))
}

/// A key of an exercise.
pub fn leave_out(name: &str) -> (&'static str, String) {
    ("Leave out", format!("Leave {name} out"))
}

/// The title of the list.
pub fn swap_title(name: &str) -> String {
    format!("Instead of {name}")
}

/// Under it.
pub fn swap_subtitle() -> &'static str {
    "The likeliest first: the same movement, the same muscles, what this gym has. A load is never \
     carried over: each exercise has its own history."
}

/// The title of the list.
pub fn add_title() -> &'static str {
    "Add an exercise"
}

/// Under it.
pub fn add_subtitle() -> &'static str {
    "It comes last, is counted, and is owed by nobody."
}

/// A key: for this session alone.
pub fn once(name: &str) -> (&'static str, String) {
    ("For once", format!("{name}, for this once"))
}

/// A key: the plan is mended.
pub fn always(name: &str) -> (&'static str, String) {
    ("From now on", format!("{name} from now on: see what that changes in the plan first"))
}

/// The field that looks, and an example.
pub fn find() -> (&'static str, &'static str) {
    ("Look for", "hamstrings dumbbell")
}

/// Nothing has these words.
pub fn none_found(text: &str) -> String {
    format!("No exercise for \u{201c}{text}\u{201d}: try a muscle, a movement or what it needs.")
}

/// What an exercise is, in short.
pub fn candidate(one: &Candidate<'_>) -> String {
    let planned = one.planned.then(|| "the plan's own choice".to_owned());
    planned.into_iter().chain([what(one.exercise)]).collect::<Vec<_>>().join(" \u{b7} ")
}

/// What an exercise is: its movement, its muscles.
pub fn what(exercise: &Exercise) -> String {
    let movement = exercise.movement.slug().replace('-', " ");
    let muscles: Vec<String> =
        exercise.direct.iter().map(|one| muscle::name(*one).to_lowercase()).collect();
    format!("{movement} \u{b7} {}", muscles.join(", "))
}

/// What this gym lacks for an exercise.
pub fn lacks(lacks: &[String]) -> String {
    format!("{}.", words::sentence_case(&floor::lacks_here(lacks)))
}

/// A session that was done without the tool.
pub fn paper_title(session: &str) -> String {
    format!("{session}, from paper")
}

/// Under it.
pub fn paper_subtitle() -> &'static str {
    "On which day was it done? It is evidence as of that day: what was said or trained since stands."
}

/// A session whose date is wrong.
pub fn date_title(session: &str) -> String {
    format!("{session}, another date")
}

/// Under it.
pub fn date_subtitle() -> &'static str {
    "On which day was it done? History, records and weeks follow; the sets stay as they are."
}

/// A key.
pub fn on_day(date: &str) -> (&'static str, String) {
    ("This day", format!("It was done on {date}"))
}

/// The field for any other day, and an example.
pub fn other_day() -> (&'static str, &'static str) {
    ("Another day", "2026-11-23")
}

/// What was typed is no date.
pub fn not_a_day() -> &'static str {
    "That is no date. Write year, month and day: 2026-11-23."
}

/// A key of a session of the plan.
pub fn from_paper() -> (&'static str, &'static str) {
    ("From paper\u{2026}", "It was done without the tool: enter it")
}

/// A key of a session that was done.
pub fn other_date() -> (&'static str, &'static str) {
    ("Another date\u{2026}", "It was done on another day than it says")
}

/// While a session is entered from paper.
pub fn paper(date: &str) -> String {
    format!("From paper: {date}. Nobody rests; what is left can be taken as called.")
}

/// A key.
pub fn as_called(name: &str) -> (String, String) {
    ("All as called".to_owned(), format!("Every set left of {name} was done as called"))
}

/// A key.
pub fn everything_as_called() -> (&'static str, &'static str) {
    ("Everything as called", "Every set left was done as called")
}
