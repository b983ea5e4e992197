//! What is wrong in a file, where, and what to write instead.

use barwright_domain::quantity::Kind;
use barwright_domain::text::{Expected, Fault, Found, Piece, Problem, RowKind, Syntax};

use super::{quantity, words};
use crate::contract::FileFault;
use crate::phrase::written::files;
pub use crate::phrase::written::files::lines;

/// A file was refused for its faults.
pub fn refused(count: usize) -> String {
    format!(
        "The file has {}. Nothing was changed; read it on the Plan screen or with plan check.",
        words::count(count, "fault", "faults")
    )
}

/// A fault in its place of the file's text.
pub fn in_place(fault: &Fault, text: &str) -> FileFault {
    let (place, said) = ((fault.line, fault.column), of(&fault.problem));
    files::in_place(place, fault.span.clone(), text, said, "fault")
}

/// What is wrong, and what to write instead.
fn of(problem: &Problem) -> (String, String) {
    match problem {
        Problem::TooManyBytes { most } => (
            format!("the file is larger than {} KiB", most / 1024),
            "Cut it into several files.".into(),
        ),
        Problem::TooDeep { most } => (
            format!("lists and tables lie more than {most} deep in each other"),
            "Nothing that is read here lies so deep. Take some brackets or dots out.".into(),
        ),
        Problem::TooManyItems { most } => (
            format!("there are more than {most} keys and list items"),
            "Cut it into several files.".into(),
        ),
        Problem::NotText => {
            ("this is not UTF-8 text".into(), "Save the file as plain text in UTF-8.".into())
        }
        Problem::MoreFaults { shown } => (
            format!("there are more faults than the {shown} shown"),
            "Mend these and read it again.".into(),
        ),
        Problem::Syntax(syntax) => of_syntax(syntax),
        Problem::UnknownKey { key, nearest, known } => (
            format!("“{key}” is no key here"),
            match nearest {
                Some(nearest) => format!("Write {nearest}."),
                None => format!("Read here: {}.", known.join(", ")),
            },
        ),
        Problem::MissingKey { key } => {
            (format!("“{key}” is missing here"), format!("Add a line {key} = …"))
        }
        Problem::MissingOneOf { keys } => {
            (format!("one of {} is missing here", any_of(keys)), format!("Add {}.", any_of(keys)))
        }
        Problem::Clash { key, with } => (
            format!("“{key}” can't stand together with “{with}”"),
            format!("Keep {key} or {with}."),
        ),
        Problem::Needs { key, needs } => {
            (format!("“{key}” says nothing without “{needs}”"), format!("Add {needs}."))
        }
        Problem::WrongType { expected, found } => (
            format!("{} stands here, and {} is read", found_words(*found), what(*expected).0),
            write(*expected),
        ),
        Problem::OutOfRange { least, greatest } => (
            "this number is out of range".into(),
            format!("Write a number from {least} to {greatest}."),
        ),
        Problem::Quantity(unreadable) => (
            quantity::problem(unreadable.kind, &unreadable.problem),
            write(match unreadable.kind {
                Kind::Mass => Expected::Mass,
                Kind::Percent => Expected::Percent,
                Kind::Reps => Expected::Reps,
                Kind::Reserve => Expected::Reserve,
                Kind::Rpe => Expected::Rpe,
                Kind::Tempo => Expected::Tempo,
                Kind::Seconds => Expected::Seconds,
                Kind::Distance => Expected::Distance,
                Kind::Length => Expected::Length,
            }),
        ),
        Problem::Unread { expected } => {
            (format!("this can't be read as {}", what(*expected).0), write(*expected))
        }
        Problem::UnknownWord { word, nearest, known } => (
            format!("“{word}” is not known here"),
            match nearest {
                Some(nearest) => format!("Write \"{nearest}\"."),
                None => format!("Write {}.", any_of_quoted(known)),
            },
        ),
        Problem::UnknownName { name, nearest, what } => (
            format!("no {what} is called “{name}”"),
            match nearest {
                Some(nearest) => format!("Write \"{nearest}\", or add your own to the file."),
                None => "Look up its name, or add your own to the file.".into(),
            },
        ),
        Problem::Empty => ("there is nothing in it".into(), "Fill it in, or take it out.".into()),
        Problem::Hidden { character } => (
            format!("“{}” can't stand in a text", character.escape_unicode()),
            "Take it out: it is not seen and changes what is.".into(),
        ),
        Problem::TooLong { most } => {
            ("this text is too long".into(), format!("Write at most {most} characters."))
        }
        Problem::TooMany { most } => {
            ("this list is too long".into(), format!("Write at most {most} items."))
        }
        Problem::WrongCount { expected, found } => (
            format!("{found} here don't go into {expected}"),
            format!("Write {expected} of them, or a number that goes into {expected}."),
        ),
        Problem::TooManySums => (
            "plates of so many different masses can't be searched".into(),
            "Write plates that are alike with one mass, or leave some out.".into(),
        ),
        Problem::OneJoint => (
            "a max is tested with lifts of several joints".into(),
            "Take the test out, or test the lift that this one helps.".into(),
        ),
        Problem::TwoOwners { row } => match row {
            RowKind::Percent => (
                "this rule adds load, and the row's load is a share of a max".into(),
                "Let the max carry it (raise_max, or a test), or write the load in kg.".into(),
            ),
            RowKind::ByWeek => (
                "this rule adds load, and a load is written for each week".into(),
                "Write one load to begin with, or drop the rule: next = \"as planned\".".into(),
            ),
        },
        Problem::Repeated { first_line } => (
            format!("this was given in line {first_line} already"),
            "Give it once, or call this one something else.".into(),
        ),
    }
}

fn of_syntax(syntax: &Syntax) -> (String, String) {
    let (problem, advice) = match syntax {
        Syntax::EndsEarly => {
            ("the file ends in the middle of this".to_owned(), "Close the bracket or the quotes.")
        }
        Syntax::Unexpected('\u{201C}' | '\u{201D}' | '\u{201E}' | '\u{2018}' | '\u{2019}') => {
            ("these are a book's quotes".to_owned(), "Write straight quotes: \"…\".")
        }
        Syntax::Unexpected(c) => {
            (format!("“{}” can't stand here", c.escape_default()), "Put text in quotes: \"…\".")
        }
        Syntax::CharInText('\n') => {
            ("the line ends before the closing quote".to_owned(), "Close it with a quote: \"…\".")
        }
        Syntax::CharInText(c) => {
            (format!("“{}” can't stand in a text", c.escape_default()), "Take it out of the text.")
        }
        Syntax::Escape => ("this is no escape".to_owned(), "Write a backslash twice: \\\\."),
        Syntax::OpenText => {
            ("the closing quote is missing".to_owned(), "Close it with a quote: \"…\".")
        }
        Syntax::NoQuotes => ("this text has no quotes".to_owned(), "Put it in quotes: \"…\"."),
        Syntax::Number => (
            "this is no number".to_owned(),
            "Put anything but a bare number in quotes: \"77.5 %\".",
        ),
        Syntax::Wanted(Piece::Value) => (
            "a value is missing here".to_owned(),
            "Write a text in quotes, a number, true or false, or a list.",
        ),
        Syntax::Wanted(Piece::Key) => ("a key was expected here".to_owned(), "Write key = value."),
        Syntax::Wanted(Piece::Equals) => {
            ("an equals sign was expected here".to_owned(), "Write key = value.")
        }
        Syntax::Wanted(Piece::LineEnd) => (
            "the line should have ended here".to_owned(),
            "Put a value with a unit or a space in quotes: \"77.5 %\".",
        ),
        Syntax::Wanted(Piece::CommaOrBracket) => (
            "a comma or the closing bracket was expected here".to_owned(),
            "Set a comma between items, and close the list with its bracket.",
        ),
        Syntax::Wanted(Piece::Other) => ("this can't be read".to_owned(), "Write key = value."),
        Syntax::Twice { name, first_line } => (
            format!("“{name}” was given in line {first_line} already"),
            "Give it once; for several of the same kind write [[…]].",
        ),
        Syntax::TableAndList => (
            "this is one table and a list of tables at once".to_owned(),
            "Write [[…]] each time, or [ ] once.",
        ),
        Syntax::NotATable => (
            "the key before the dot has a value already".to_owned(),
            "Write either the value or what stands behind the dot.",
        ),
        Syntax::TooDeep => ("this lies too deep".to_owned(), "Take some brackets or dots out."),
    };
    (problem, advice.to_owned())
}

fn write(expected: Expected) -> String {
    let (_, example) = what(expected);
    format!("Write {example}.")
}

/// What is read, and how it is written.
fn what(expected: Expected) -> (&'static str, &'static str) {
    match expected {
        Expected::Text => ("a text", "it in quotes: \"…\""),
        Expected::Whole => ("a whole number", "a number without decimals and quotes: 5"),
        Expected::Flag => ("true or false", "true or false, without quotes"),
        Expected::List => ("a list", "it in brackets: […]"),
        Expected::Table => ("a table", "it in braces: { … }"),
        Expected::Mass => ("a mass", "\"142.5 kg\" or \"45 lb\""),
        Expected::Percent => ("a percentage", "\"67.5 %\""),
        Expected::Reps => ("repetitions", "5 or \"6-10\""),
        Expected::Reserve => ("repetitions in reserve", "2, 1.5 or \"1-2\""),
        Expected::Rpe => ("an RPE", "8, 8.5 or \"7-8\""),
        Expected::Tempo => ("a tempo", "\"3-0-1-0\""),
        Expected::Seconds => ("a duration", "\"90 s\", \"2:30\" or \"2 min\""),
        Expected::Distance => ("a distance", "\"40 m\""),
        Expected::Length => ("a length", "\"415 mm\""),
        Expected::WholeOrList => ("a whole number or a list", "12 or [\"…\", \"…\"]"),
        Expected::TextOrList => ("a text or a list", "\"…\" or [\"…\", \"…\"]"),
        Expected::TextOrTable => ("a text or a table", "\"…\" or { … }"),
        Expected::WholeOrText => ("a whole number or a text", "5 or \"…\""),
        Expected::Load => (
            "a load",
            "\"77.5 %\", \"100 kg\", \"body\", \"body + 10 kg\", \"90 % of top set\", \"pin 7\", \"60 kg with \
             light chains\" or \"by feel\"",
        ),
        Expected::RepsOrOpen => {
            ("repetitions", "5, \"6-10\", \"8 or more\" or \"8 or more, stop at 1 left\"")
        }
        Expected::Weeks => ("weeks", "3, [1, 2] or \"1-3, 5\""),
        Expected::RampLoad => ("the load of a step", "\"bar\" or \"60 %\""),
        Expected::Miss => ("what follows a miss", "\"repeat\", \"5 % less\" or \"hold\""),
        Expected::Max => ("a max", "\"working max\" or \"Back squat\""),
        Expected::Sets => ("sets", "\"last\" or [2, 3]"),
        Expected::Dates => (
            "a way to write dates",
            "\"iso\", \"day first\", \"month first\", or a pattern such as \"%d.%m.%Y\"",
        ),
    }
}

fn found_words(found: Found) -> &'static str {
    match found {
        Found::Text => "a text",
        Found::Whole => "a whole number",
        Found::Decimal => "a number with decimals",
        Found::Flag => "true or false",
        Found::List => "a list",
        Found::Table => "a table",
    }
}

fn any_of(words: &[&str]) -> String {
    joined(words.iter().map(|word| (*word).to_owned()).collect())
}

fn any_of_quoted(words: &[&str]) -> String {
    joined(words.iter().map(|word| format!("\"{word}\"")).collect())
}

/// "a", "a or b", "a, b or c".
fn joined(mut words: Vec<String>) -> String {
    match words.pop() {
        None => String::new(),
        Some(last) if words.is_empty() => last,
        Some(last) => format!("{} or {last}", words.join(", ")),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::phrase::written::files::WINDOW;
    use barwright_domain::catalogue::Catalogue;
    use barwright_domain::plan::Plan;

    #[test]
    fn a_fault_shows_its_place_and_what_to_write() {
        let text = "name = \"Winter\"\nweeks = 2\n[[session]]\nname = \"A\"\n\
                    [[session.exercise]]\nname = \"Back sqat\"\nsets = 4\nreps = 5\n\
                    load = \"77.25 %\"\n";
        let faults = Plan::read(text, &Catalogue::builtin()).expect_err("the plan has faults");
        let shown: Vec<_> = faults.iter().map(|fault| in_place(fault, text)).collect();
        let fault = |line, text: &str, underline: &str, problem: &str, advice: &str| FileFault {
            line,
            column: 9,
            text: text.into(),
            underline: underline.into(),
            problem: problem.into(),
            advice: advice.into(),
            advises: false,
            label: "fault".into(),
            check: String::new(),
        };
        assert_eq!(
            shown,
            [
                fault(
                    6,
                    "name = \"Back sqat\"",
                    "        ^^^^^^^^^",
                    "no exercise is called “Back sqat”",
                    "Write \"Back squat\", or add your own to the file.",
                ),
                fault(
                    9,
                    "load = \"77.25 %\"",
                    "        ^^^^^^^",
                    "only whole and half steps are read",
                    "Write \"67.5 %\".",
                ),
            ]
        );
    }

    #[test]
    fn a_command_prints_the_place_before_the_problem() {
        let text = "name = \"Winter\"\nweeks = 0\n[[session]]\nname = \"A\"\nexercise = []";
        let faults = Plan::read(text, &Catalogue::builtin()).expect_err("the plan has faults");
        let shown = lines(&in_place(&faults[0], text), "plan.toml");
        assert_eq!(
            shown,
            "plan.toml:2:9: this number is out of range\n  |\n2 | weeks = 0\n  |         ^\n  = Write \
             a number from 1 to 104.\n"
        );
    }

    #[test]
    fn a_long_line_is_cut_around_the_place() {
        let text = format!("name = \"{}\"\n\tnme = 1", "x".repeat(5_000));
        for fault in Plan::read(&text, &Catalogue::builtin()).expect_err("the plan has faults") {
            let shown = in_place(&fault, &text);
            assert!(shown.text.chars().count() <= WINDOW, "{shown:?}");
            assert!(shown.underline.chars().count() <= WINDOW + 1, "{shown:?}");
            assert!(!shown.problem.is_empty() && !shown.text.contains('\t'));
        }
    }
}
