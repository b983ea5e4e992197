//! What is wrong with a figure that was typed, and what to write instead.

use barwright_domain::quantity::{Kind, Problem, Unreadable};

/// What was being read, with an example of what would do.
fn example(kind: Kind) -> (&'static str, &'static str) {
    match kind {
        Kind::Mass => ("ein Gewicht", "140 kg oder 45 lb"),
        Kind::Percent => ("eine Prozentzahl", "70 %"),
        Kind::Reps => ("Wiederholungen", "5 oder 6-10"),
        Kind::Reserve => ("Wiederholungen in Reserve", "2 oder 1-2"),
        Kind::Rpe => ("eine RPE", "8 oder 7-8"),
        Kind::Tempo => ("ein Tempo", "3-0-1-0 oder 2-1-X-0"),
        Kind::Seconds => ("eine Dauer", "90 s, 2:30 oder 2 min"),
        Kind::Distance => ("eine Strecke", "40 m"),
        Kind::Length => ("eine Länge", "415 mm"),
    }
}

/// What is wrong at the place.
pub fn problem(kind: Kind, problem: &Problem) -> String {
    let (what, example) = example(kind);
    match problem {
        Problem::Empty => format!("hier fehlt {what}"),
        Problem::NotANumber => "hier wird eine Zahl erwartet".to_owned(),
        Problem::CommaHere => {
            "ein Komma gilt hier als Tausenderzeichen: schreib einen Punkt".to_owned()
        }
        Problem::MissingUnit => format!("die Einheit fehlt: schreib sie wie in {example}"),
        Problem::UnknownUnit => format!("diese Einheit ist für {what} nicht bekannt"),
        Problem::TooFine => "das ist feiner, als genau festgehalten werden kann".to_owned(),
        Problem::NotAHalf => "nur ganze und halbe Schritte werden gelesen".to_owned(),
        Problem::TooSmall { least } => format!("das ist weniger als {least}"),
        Problem::TooLarge { greatest } => format!("das ist mehr als {greatest}"),
        Problem::Backwards => "ein Bereich geht vom Kleineren zum Größeren".to_owned(),
        Problem::Trailing => "hier sollte nichts stehen".to_owned(),
        Problem::FourPhases => "ein Tempo hat vier Phasen: senken, Halt, heben, Halt".to_owned(),
    }
}

/// What would do instead.
pub fn advice(kind: Kind) -> String {
    let (_, example) = example(kind);
    format!("Schreib {example}.")
}

/// A refusal in a sentence: "142,5 kg", the place, the problem, what would do.
pub fn unreadable(unreadable: &Unreadable) -> String {
    let Unreadable { kind, text, at, problem: what } = unreadable;
    format!("„{text}“, Zeichen {}: {}. {}", at + 1, problem(*kind, what), advice(*kind))
}

/// As [`unreadable`], with the text underlined at the place, for a terminal.
pub fn underlined(unreadable: &Unreadable) -> String {
    let Unreadable { kind, text, at, problem: what } = unreadable;
    format!("{text}\n{}^ {}\n{}", " ".repeat(*at), problem(*kind, what), advice(*kind))
}
