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
        "Die Datei hat {}. Nichts wurde geändert; lies sie auf der Seite „Plan“ oder mit plan \
         check.",
        words::count(count, "Fehler", "Fehler")
    )
}

/// A fault in its place of the file's text.
pub fn in_place(fault: &Fault, text: &str) -> FileFault {
    let (place, said) = ((fault.line, fault.column), of(&fault.problem));
    files::in_place(place, fault.span.clone(), text, said, "Fehler")
}

/// What is wrong, and what to write instead.
fn of(problem: &Problem) -> (String, String) {
    match problem {
        Problem::TooManyBytes { most } => (
            format!("die Datei ist größer als {} KiB", most / 1024),
            "Teil sie in mehrere Dateien.".into(),
        ),
        Problem::TooDeep { most } => (
            format!("Listen und Tabellen liegen mehr als {most} tief ineinander"),
            "Nichts, was hier gelesen wird, liegt so tief. Nimm Klammern oder Punkte heraus."
                .into(),
        ),
        Problem::TooManyItems { most } => (
            format!("es sind mehr als {most} Schlüssel und Listeneinträge"),
            "Teil sie in mehrere Dateien.".into(),
        ),
        Problem::NotText => (
            "das ist kein Text in UTF-8".into(),
            "Speichere die Datei als reinen Text in UTF-8.".into(),
        ),
        Problem::MoreFaults { shown } => (
            format!("es sind mehr Fehler als die {shown} gezeigten"),
            "Behebe diese und lies sie noch einmal.".into(),
        ),
        Problem::Syntax(syntax) => of_syntax(syntax),
        Problem::UnknownKey { key, nearest, known } => (
            format!("„{key}“ ist hier kein Schlüssel"),
            match nearest {
                Some(nearest) => format!("Schreib {nearest}."),
                None => format!("Hier wird gelesen: {}.", known.join(", ")),
            },
        ),
        Problem::MissingKey { key } => {
            (format!("„{key}“ fehlt hier"), format!("Füg eine Zeile {key} = … hinzu"))
        }
        Problem::MissingOneOf { keys } => (
            format!("eins von {} fehlt hier", any_of(keys)),
            format!("Füg {} hinzu.", any_of(keys)),
        ),
        Problem::Clash { key, with } => (
            format!("„{key}“ kann nicht neben „{with}“ stehen"),
            format!("Behalte {key} oder {with}."),
        ),
        Problem::Needs { key, needs } => {
            (format!("„{key}“ sagt nichts ohne „{needs}“"), format!("Füg {needs} hinzu."))
        }
        Problem::WrongType { expected, found } => {
            let many = matches!(
                expected,
                Expected::Reps
                    | Expected::Reserve
                    | Expected::RepsOrOpen
                    | Expected::Weeks
                    | Expected::Sets
            );
            let is = if many { "werden" } else { "wird" };
            let (found, what) = (found_words(*found), what(*expected).0);
            (format!("hier steht {found}, erwartet {is} {what}"), write(*expected))
        }
        Problem::OutOfRange { least, greatest } => (
            "diese Zahl liegt außerhalb des Möglichen".into(),
            format!("Schreib eine Zahl von {least} bis {greatest}."),
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
            (format!("das lässt sich nicht als {} lesen", what(*expected).0), write(*expected))
        }
        Problem::UnknownWord { word, nearest, known } => (
            format!("„{word}“ ist hier nicht bekannt"),
            match nearest {
                Some(nearest) => format!("Schreib \"{nearest}\"."),
                None => format!("Schreib {}.", any_of_quoted(known)),
            },
        ),
        Problem::UnknownName { name, nearest, .. } => (
            format!("nichts heißt hier „{name}“"),
            match nearest {
                Some(nearest) => format!(
                    "Schreib \"{nearest}\", oder füg der Datei dein eigenes \
                                          hinzu."
                ),
                None => "Sieh den Namen nach oder füg der Datei dein eigenes hinzu.".into(),
            },
        ),
        Problem::Empty => {
            ("es steht nichts darin".into(), "Füll es aus oder nimm es heraus.".into())
        }
        Problem::Hidden { character } => (
            format!("„{}“ kann nicht in einem Text stehen", character.escape_unicode()),
            "Nimm es heraus: Man sieht es nicht, und es verändert, was man sieht.".into(),
        ),
        Problem::TooLong { most } => {
            ("dieser Text ist zu lang".into(), format!("Schreib höchstens {most} Zeichen."))
        }
        Problem::TooMany { most } => {
            ("diese Liste ist zu lang".into(), format!("Schreib höchstens {most} Einträge."))
        }
        Problem::WrongCount { expected, found } => (
            format!("{found} gehen hier nicht in {expected} auf"),
            format!("Schreib {expected} davon oder eine Zahl, die in {expected} aufgeht."),
        ),
        Problem::TooManySums => (
            "Scheiben mit so vielen verschiedenen Gewichten lassen sich nicht durchsuchen".into(),
            "Schreib gleiche Scheiben mit einem Gewicht oder lass einige weg.".into(),
        ),
        Problem::OneJoint => (
            "ein Maximum wird mit mehrgelenkigen Übungen getestet".into(),
            "Nimm den Test heraus oder teste die Übung, der diese hilft.".into(),
        ),
        Problem::TwoOwners { row } => match row {
            RowKind::Percent => (
                "diese Regel legt Gewicht dazu, und das Gewicht der Zeile ist ein Anteil eines \
                 Maximums"
                    .into(),
                "Lass das Maximum es tragen (raise_max oder ein Test) oder schreib das Gewicht in \
                 kg."
                .into(),
            ),
            RowKind::ByWeek => (
                "diese Regel legt Gewicht dazu, und für jede Woche ist ein Gewicht geschrieben"
                    .into(),
                "Schreib ein Gewicht für den Anfang oder lass die Regel weg: next = \"as \
                 planned\"."
                    .into(),
            ),
        },
        Problem::Repeated { first_line } => (
            format!("das stand schon in Zeile {first_line}"),
            "Schreib es einmal oder nenne dieses anders.".into(),
        ),
    }
}

fn of_syntax(syntax: &Syntax) -> (String, String) {
    let (problem, advice) = match syntax {
        Syntax::EndsEarly => (
            "die Datei endet mitten darin".to_owned(),
            "Schließ die Klammer oder die \
                                                         Anführungszeichen.",
        ),
        Syntax::Unexpected('\u{201C}' | '\u{201D}' | '\u{201E}' | '\u{2018}' | '\u{2019}') => (
            "das sind typografische Anführungszeichen".to_owned(),
            "Schreib gerade \
                                                                     Anführungszeichen: \"…\".",
        ),
        Syntax::Unexpected(c) => (
            format!("„{}“ kann hier nicht stehen", c.escape_default()),
            "Setz Text in \
                                                                          Anführungszeichen: \
                                                                          \"…\".",
        ),
        Syntax::CharInText('\n') => (
            "die Zeile endet vor dem schließenden Anführungszeichen".to_owned(),
            "Schließ mit \
                                                                                   einem Anführungszeichen: \"…\".",
        ),
        Syntax::CharInText(c) => (
            format!("„{}“ kann nicht in einem Text stehen", c.escape_default()),
            "Nimm es aus \
                                                                                   dem Text heraus.",
        ),
        Syntax::Escape => (
            "das ist kein Sonderzeichen".to_owned(),
            "Schreib den Rückstrich \
                                                                     doppelt: \\\\.",
        ),
        Syntax::OpenText => (
            "das schließende Anführungszeichen fehlt".to_owned(),
            "Schließ mit einem \
                                                                    Anführungszeichen: \"…\".",
        ),
        Syntax::NoQuotes => (
            "dieser Text hat keine Anführungszeichen".to_owned(),
            "Setz ihn in \
                                                                                    Anführungszeichen: \"…\".",
        ),
        Syntax::Number => (
            "das ist keine Zahl".to_owned(),
            "Setz alles außer einer bloßen Zahl in Anführungszeichen: \"77.5 %\".",
        ),
        Syntax::Wanted(Piece::Value) => (
            "hier fehlt ein Wert".to_owned(),
            "Schreib einen Text in Anführungszeichen, eine Zahl, true oder false, oder eine Liste.",
        ),
        Syntax::Wanted(Piece::Key) => {
            ("hier wird ein Schlüssel erwartet".to_owned(), "Schreib Schlüssel = Wert.")
        }
        Syntax::Wanted(Piece::Equals) => {
            ("hier wird ein Gleichheitszeichen erwartet".to_owned(), "Schreib Schlüssel = Wert.")
        }
        Syntax::Wanted(Piece::LineEnd) => (
            "die Zeile hätte hier enden sollen".to_owned(),
            "Setz einen Wert mit Einheit oder Leerzeichen in Anführungszeichen: \"77.5 %\".",
        ),
        Syntax::Wanted(Piece::CommaOrBracket) => (
            "hier wird ein Komma oder die schließende Klammer erwartet".to_owned(),
            "Setz ein Komma zwischen Einträge und schließ die Liste mit ihrer Klammer.",
        ),
        Syntax::Wanted(Piece::Other) => {
            ("das lässt sich nicht lesen".to_owned(), "Schreib Schlüssel = Wert.")
        }
        Syntax::Twice { name, first_line } => (
            format!("„{name}“ stand schon in Zeile {first_line}"),
            "Schreib es einmal; für mehrere derselben Art schreib [[…]].",
        ),
        Syntax::TableAndList => (
            "das ist zugleich eine Tabelle und eine Liste von Tabellen".to_owned(),
            "Schreib jedes Mal [[…]] oder einmal [ ].",
        ),
        Syntax::NotATable => (
            "der Schlüssel vor dem Punkt hat schon einen Wert".to_owned(),
            "Schreib entweder den Wert oder das, was hinter dem Punkt steht.",
        ),
        Syntax::TooDeep => ("das liegt zu tief".to_owned(), "Nimm Klammern oder Punkte heraus."),
    };
    (problem, advice.to_owned())
}

fn write(expected: Expected) -> String {
    let (_, example) = what(expected);
    format!("Schreib {example}.")
}

/// What is read, and how it is written.
fn what(expected: Expected) -> (&'static str, &'static str) {
    match expected {
        Expected::Text => ("ein Text", "ihn in Anführungszeichen: \"…\""),
        Expected::Whole => (
            "eine ganze Zahl",
            "eine Zahl ohne Nachkommastellen und \
                                                Anführungszeichen: 5",
        ),
        Expected::Flag => ("true oder false", "true oder false, ohne Anführungszeichen"),
        Expected::List => ("eine Liste", "sie in Klammern: […]"),
        Expected::Table => ("eine Tabelle", "sie in geschweiften Klammern: { … }"),
        Expected::Mass => ("ein Gewicht", "\"142.5 kg\" oder \"45 lb\""),
        Expected::Percent => ("eine Prozentzahl", "\"67.5 %\""),
        Expected::Reps => ("Wiederholungen", "5 oder \"6-10\""),
        Expected::Reserve => ("Wiederholungen in Reserve", "2, 1.5 oder \"1-2\""),
        Expected::Rpe => ("eine RPE", "8, 8.5 oder \"7-8\""),
        Expected::Tempo => ("ein Tempo", "\"3-0-1-0\""),
        Expected::Seconds => ("eine Dauer", "\"90 s\", \"2:30\" oder \"2 min\""),
        Expected::Distance => ("eine Strecke", "\"40 m\""),
        Expected::Length => ("eine Länge", "\"415 mm\""),
        Expected::WholeOrList => ("eine ganze Zahl oder eine Liste", "12 oder [\"…\", \"…\"]"),
        Expected::TextOrList => ("ein Text oder eine Liste", "\"…\" oder [\"…\", \"…\"]"),
        Expected::TextOrTable => ("ein Text oder eine Tabelle", "\"…\" oder { … }"),
        Expected::WholeOrText => ("eine ganze Zahl oder ein Text", "5 oder \"…\""),
        Expected::Load => (
            "ein Gewicht",
            "\"77.5 %\", \"100 kg\", \"body\", \"body + 10 kg\", \"90 % of top set\", \"pin 7\", \
             \"60 kg with light chains\" oder \"by feel\"",
        ),
        Expected::RepsOrOpen => {
            ("Wiederholungen", "5, \"6-10\", \"8 or more\" oder \"8 or more, stop at 1 left\"")
        }
        Expected::Weeks => ("Wochen", "3, [1, 2] oder \"1-3, 5\""),
        Expected::RampLoad => ("das Gewicht eines Schritts", "\"bar\" oder \"60 %\""),
        Expected::Miss => (
            "was auf einen Fehlversuch folgt",
            "\"repeat\", \"5 % less\" oder \
                                                               \"hold\"",
        ),
        Expected::Max => ("ein Maximum", "\"working max\" oder \"Kniebeuge\""),
        Expected::Sets => ("Sätze", "\"last\" oder [2, 3]"),
        Expected::Dates => (
            "ein Datumsformat",
            "\"iso\", \"day first\" (Tag zuerst), \"month first\" (Monat zuerst) oder ein Muster wie \
             \"%d.%m.%Y\"",
        ),
    }
}

fn found_words(found: Found) -> &'static str {
    match found {
        Found::Text => "ein Text",
        Found::Whole => "eine ganze Zahl",
        Found::Decimal => "eine Zahl mit Nachkommastellen",
        Found::Flag => "true oder false",
        Found::List => "eine Liste",
        Found::Table => "eine Tabelle",
    }
}

fn any_of(words: &[&str]) -> String {
    joined(words.iter().map(|word| (*word).to_owned()).collect())
}

fn any_of_quoted(words: &[&str]) -> String {
    joined(words.iter().map(|word| format!("\"{word}\"")).collect())
}

/// "a", "a oder b", "a, b oder c".
fn joined(mut words: Vec<String>) -> String {
    match words.pop() {
        None => String::new(),
        Some(last) if words.is_empty() => last,
        Some(last) => format!("{} oder {last}", words.join(", ")),
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
            label: "Fehler".into(),
            check: String::new(),
        };
        assert_eq!(
            shown,
            [
                fault(
                    6,
                    "name = \"Back sqat\"",
                    "        ^^^^^^^^^",
                    "nichts heißt hier „Back sqat“",
                    "Schreib \"Back squat\", oder füg der Datei dein eigenes hinzu.",
                ),
                fault(
                    9,
                    "load = \"77.25 %\"",
                    "        ^^^^^^^",
                    "nur ganze und halbe Schritte werden gelesen",
                    "Schreib \"67.5 %\".",
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
            "plan.toml:2:9: diese Zahl liegt außerhalb des Möglichen\n  |\n2 | weeks = 0\n  |         \
             ^\n  = Schreib eine Zahl von 1 bis 104.\n"
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
