//! What is wrong with a figure that was typed, and what to write instead.

use barwright_domain::quantity::{Kind, Problem, Unreadable};

/// What was being read, with an example of what would do.
fn example(kind: Kind) -> (&'static str, &'static str) {
    match kind {
        Kind::Mass => ("a mass", "142.5 kg or 45 lb"),
        Kind::Percent => ("a percentage", "67.5 %"),
        Kind::Reps => ("repetitions", "5 or 6-10"),
        Kind::Reserve => ("repetitions in reserve", "2, 1.5 or 1-2"),
        Kind::Rpe => ("an RPE", "8, 8.5 or 7-8"),
        Kind::Tempo => ("a tempo", "3-0-1-0 or 2-1-X-0"),
        Kind::Seconds => ("a duration", "90 s, 2:30 or 2 min"),
        Kind::Distance => ("a distance", "40 m"),
        Kind::Length => ("a length", "415 mm"),
    }
}

/// What is wrong at the place.
pub fn problem(kind: Kind, problem: &Problem) -> String {
    let (what, example) = example(kind);
    match problem {
        Problem::Empty => format!("{what} is missing here"),
        Problem::NotANumber => "a number was expected here".to_owned(),
        Problem::CommaHere => "a comma is read as a thousands mark here: write a point".to_owned(),
        Problem::MissingUnit => format!("the unit is missing: write it as in {example}"),
        Problem::UnknownUnit => format!("this unit is not known for {what}"),
        Problem::TooFine => "that is finer than can be kept exactly".to_owned(),
        Problem::NotAHalf => "only whole and half steps are read".to_owned(),
        Problem::TooSmall { least } => format!("that is less than {least}"),
        Problem::TooLarge { greatest } => format!("that is more than {greatest}"),
        Problem::Backwards => "a range runs from less to more".to_owned(),
        Problem::Trailing => "nothing should stand here".to_owned(),
        Problem::FourPhases => {
            "a tempo has four phases: lowering, pause, lifting, pause".to_owned()
        }
    }
}

/// What would do instead.
pub fn advice(kind: Kind) -> String {
    let (_, example) = example(kind);
    format!("Write {example}.")
}

/// A refusal in a sentence: "142,5 kg", the place, the problem, what would do.
pub fn unreadable(unreadable: &Unreadable) -> String {
    let Unreadable { kind, text, at, problem: what } = unreadable;
    format!("“{text}”, character {}: {}. {}", at + 1, problem(*kind, what), advice(*kind))
}

/// As [`unreadable`], with the text underlined at the place, for a terminal.
pub fn underlined(unreadable: &Unreadable) -> String {
    let Unreadable { kind, text, at, problem: what } = unreadable;
    format!("{text}\n{}^ {}\n{}", " ".repeat(*at), problem(*kind, what), advice(*kind))
}
